//! What can be typed after `tidecount export`.

use std::path::PathBuf;

use jiff::ZonedDateTime;
use jiff::civil::Date;

use crate::options::DataFolder;
use export::{TABLES, Table};
use files::error::Failure;
use files::exports::calendar::CalendarExport;
use files::exports::out::Target;
use files::exports::read::{Selection, Sources};
use record::Source;

/// Arguments of `tidecount export`.
#[derive(Debug, Clone, clap::Args)]
pub struct ExportArgs {
    #[command(subcommand)]
    pub what: What,
}

/// The formats.
#[derive(Debug, Clone, clap::Subcommand)]
pub enum What {
    /// Write tables: trials, steps, practices, events, goals. A folder gets all of them with their data dictionary
    Csv(CsvArgs),
    /// Write JSON Lines: a line for each practice, then one for each entry of its journal, and one for each goal
    #[command(alias = "jsonl")]
    Json(JsonArgs),
    /// Write HL7 FHIR R4: a Bundle of one client's plans, goals, practices and trials
    Fhir(FhirArgs),
    /// Write iCalendar: the agreed times of a routine, with alarms
    #[command(alias = "ics")]
    Calendar(CalendarArgs),
    /// Write Praat TextGrids: holds and commands beside stored sound or a recording
    Textgrid(TextGridArgs),
    /// Explain each column of the tables
    Dictionary(DictionaryArgs),
}

/// Where the file goes.
#[derive(Debug, Clone, clap::Args)]
pub struct TargetArgs {
    /// Write to this file, or to standard output with `-` [default: -]
    #[arg(long, short, value_name = "FILE|-")]
    out: Option<PathBuf>,
    #[command(flatten)]
    force: Force,
}

impl From<&TargetArgs> for Target {
    fn from(typed: &TargetArgs) -> Self {
        Self { out: typed.out.clone(), force: typed.force.force }
    }
}

/// Leave to write over files.
#[derive(Debug, Clone, clap::Args)]
pub struct Force {
    /// Replace files that are already there
    #[arg(long)]
    force: bool,
}

/// Which practices.
#[derive(Debug, Clone, clap::Args)]
pub struct SelectionArgs {
    /// Take only this client's practices [default: everybody's; FHIR takes one client at a time]
    #[arg(long, value_name = "NAME")]
    client: Option<String>,
    /// Begin with this day
    #[arg(long, value_name = "YYYY-MM-DD")]
    from: Option<Date>,
    /// End with this day
    #[arg(long, value_name = "YYYY-MM-DD")]
    to: Option<Date>,
    /// Take practices at a microphone, from recordings, with the simulated client, or all [default: live; all where none is live]
    #[arg(long, value_name = "live|replay|rehearsal|all", value_parser = sources)]
    source: Option<Sources>,
    #[command(flatten)]
    data: DataFolder,
}

impl SelectionArgs {
    /// What was meant.
    ///
    /// # Errors
    /// This computer has no folder for the data of programs, and none was named.
    pub fn meant(&self) -> Result<Selection, Failure> {
        Ok(Selection { client: self.client.clone(), from: self.from, to: self.to, source: self.source, data: self.data.folder()? })
    }
}

fn sources(text: &str) -> Result<Sources, String> {
    match text {
        "all" => Ok(Sources::All),
        "live" => Ok(Sources::Only(Source::Live)),
        "replay" => Ok(Sources::Only(Source::Replay)),
        "rehearsal" => Ok(Sources::Only(Source::Rehearsal)),
        _ => Err("name live, replay, rehearsal or all".to_owned()),
    }
}

/// Arguments of `tidecount export csv`.
#[derive(Debug, Clone, clap::Args)]
pub struct CsvArgs {
    #[command(flatten)]
    pub selection: SelectionArgs,
    /// Write all tables with their data dictionary to a folder, or one table to a file that ends in .csv or to standard output with `-` [default: -]
    #[arg(long, short, value_name = "FOLDER|FILE.csv|-")]
    out: Option<PathBuf>,
    /// Choose the one table for a file or standard output
    #[arg(long, value_name = "NAME", default_value = "trials", value_parser = table_named)]
    pub table: &'static Table,
    #[command(flatten)]
    force: Force,
}

impl From<&CsvArgs> for Target {
    fn from(typed: &CsvArgs) -> Self {
        Self { out: typed.out.clone(), force: typed.force.force }
    }
}

fn table_named(name: &str) -> Result<&'static Table, String> {
    let names: Vec<&str> = TABLES.iter().map(|table| table.name).collect();
    TABLES.into_iter().find(|table| table.name == name).ok_or_else(|| format!("the tables are: {}", names.join(", ")))
}

/// Arguments of `tidecount export json`.
#[derive(Debug, Clone, clap::Args)]
pub struct JsonArgs {
    #[command(flatten)]
    pub selection: SelectionArgs,
    #[command(flatten)]
    pub target: TargetArgs,
}

/// Arguments of `tidecount export fhir`.
#[derive(Debug, Clone, clap::Args)]
pub struct FhirArgs {
    #[command(flatten)]
    pub selection: SelectionArgs,
    /// Make a transaction to send to a server, which keeps each resource under its own identifier, instead of a collection to hand over
    #[arg(long)]
    pub transaction: bool,
    #[command(flatten)]
    pub target: TargetArgs,
}

/// Arguments of `tidecount export dictionary`.
#[derive(Debug, Clone, clap::Args)]
pub struct DictionaryArgs {
    /// Write metadata for programs (W3C "CSV on the Web") instead of a table
    #[arg(long)]
    pub csvw: bool,
    #[command(flatten)]
    pub target: TargetArgs,
}

/// Weeks where nothing is said: common practice for the length of a programme, no source.
const WEEKS: u16 = 6;

/// Arguments of `tidecount export calendar`.
#[derive(Debug, Clone, clap::Args)]
pub struct CalendarArgs {
    /// Take these routines, TOML files with a `plan`; this needs no record [default: those of the household, of the packages in force, or of the record]
    routines: Vec<PathBuf>,
    /// Take the routines of this household file [default: household.toml in the data folder]
    #[arg(long, value_name = "FILE.toml", conflicts_with = "routines")]
    household: Option<PathBuf>,
    /// Take only this client's routines
    #[arg(long, value_name = "NAME")]
    client: Option<String>,
    /// Begin with this day [default: today]
    #[arg(long, value_name = "YYYY-MM-DD")]
    from: Option<Date>,
    /// End with this day [default: as --weeks says]
    #[arg(long, value_name = "YYYY-MM-DD", conflicts_with = "weeks")]
    to: Option<Date>,
    /// Cover this many weeks [default: 6]
    #[arg(long, value_name = "N", value_parser = clap::value_parser!(u16).range(1..=260))]
    weeks: Option<u16>,
    /// Ring this many minutes before each practice; repeat the option for more alarms [default: 10]
    #[arg(long, value_name = "MINUTES", value_parser = clap::value_parser!(u32).range(0..=10080), conflicts_with = "no_alarm")]
    alarm: Vec<u32>,
    /// Set no alarm
    #[arg(long)]
    no_alarm: bool,
    /// Show this text in the calendar. Calendars are copied to other computers and shown on locked screens: write nothing about health
    #[arg(long, value_name = "TEXT", default_value = "Practice")]
    summary: String,
    #[command(flatten)]
    data: DataFolder,
    #[command(flatten)]
    target: TargetArgs,
}

impl CalendarArgs {
    /// What was meant.
    ///
    /// # Errors
    /// This computer has no folder for the data of programs, and none was named.
    pub fn meant(&self) -> Result<CalendarExport, Failure> {
        let alarms_min = match (&self.alarm[..], self.no_alarm) {
            (_, true) => Vec::new(),
            ([], false) => vec![10],
            (given, false) => given.to_vec(),
        };
        Ok(CalendarExport {
            routines: self.routines.clone(),
            household: self.household.clone(),
            client: self.client.clone(),
            from: self.from.unwrap_or_else(|| ZonedDateTime::now().date()),
            to: self.to,
            weeks: self.weeks.unwrap_or(WEEKS),
            alarms_min,
            summary: self.summary.clone(),
            data: self.data.folder()?,
            target: (&self.target).into(),
        })
    }
}

/// Arguments of `tidecount export textgrid`.
#[derive(Debug, Clone, clap::Args)]
pub struct TextGridArgs {
    #[command(flatten)]
    pub selection: SelectionArgs,
    /// Take a recording instead of stored sound: the journal of its practice (`tidecount practise --mic FILE.wav --journal FILE.jsonl`)
    #[arg(long, value_name = "FILE.jsonl", requires = "sound", conflicts_with_all = ["client", "from", "to", "source"])]
    pub journal: Option<PathBuf>,
    /// Take this sound file with --journal
    #[arg(long, value_name = "FILE.wav", requires = "journal")]
    pub sound: Option<PathBuf>,
    /// Choose the part that the sound belongs to, from 1, where the practice was interrupted and continued
    #[arg(long, value_name = "N", requires = "journal")]
    pub part: Option<usize>,
    /// Write stored sounds and their TextGrids to a folder; write a recording's TextGrid to a file, or to standard output with `-` [default: -]
    #[arg(long, short, value_name = "FOLDER|FILE.TextGrid|-")]
    out: Option<PathBuf>,
    #[command(flatten)]
    force: Force,
}

impl From<&TextGridArgs> for Target {
    fn from(typed: &TextGridArgs) -> Self {
        Self { out: typed.out.clone(), force: typed.force.force }
    }
}
