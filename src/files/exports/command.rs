//! `tidecount export`: what is in the record, in open standards.

use std::io::Write;
use std::path::{Path, PathBuf};
use std::process::ExitCode;

use jiff::ZonedDateTime;

use crate::error::AppError;
use crate::exports::calendar::{self, CalendarArgs};
use crate::exports::out::{NewFile, Target, failed, free};
use crate::exports::read::{Chosen, Selection};
use crate::exports::textgrid::{self, TextGridArgs};
use crate::number_words::counted;
use export::fhir::{BundleKind, FhirExport};
use export::{TABLES, Table, Writer, as_csvw, as_table, event_row, iso, practice_row, step_row, trial_row, write_practice};
use record::{Store, create_folder};
use session::{Arg, Line};
use speak::Words;

/// Arguments of `tidecount export`.
#[derive(Debug, Clone, clap::Args)]
pub struct ExportArgs {
    #[command(subcommand)]
    pub what: What,
}

/// The formats.
#[derive(Debug, Clone, clap::Subcommand)]
pub enum What {
    /// Tables: trials, steps, practices, events. A folder gets all of them with their data dictionary
    Csv(CsvArgs),
    /// JSON Lines: a line for each practice, then one for each entry of its journal
    #[command(alias = "jsonl")]
    Json(JsonArgs),
    /// HL7 FHIR R4: a Bundle of one client's plans, practices and trials
    Fhir(FhirArgs),
    /// iCalendar: the agreed times of a routine with alarms
    #[command(alias = "ics")]
    Calendar(CalendarArgs),
    /// Praat TextGrid: holds and commands beside stored sound or a recording
    Textgrid(TextGridArgs),
    /// What stands in each column of the tables
    Dictionary(DictionaryArgs),
}

/// Arguments of `tidecount export csv`.
#[derive(Debug, Clone, clap::Args)]
pub struct CsvArgs {
    #[command(flatten)]
    pub selection: Selection,
    /// A folder for all tables with their data dictionary, a file that ends in .csv for one table, or `-` for standard output (default)
    #[arg(long, short, value_name = "FOLDER|FILE.csv|-")]
    pub out: Option<PathBuf>,
    /// For a file and standard output: which table
    #[arg(long, value_name = "NAME", default_value = "trials", value_parser = table_named)]
    pub table: &'static Table,
    /// Write over files that are there
    #[arg(long)]
    pub force: bool,
}

fn table_named(name: &str) -> Result<&'static Table, String> {
    let names: Vec<&str> = TABLES.iter().map(|table| table.name).collect();
    TABLES.into_iter().find(|table| table.name == name).ok_or_else(|| format!("there are: {}", names.join(", ")))
}

/// Arguments of `tidecount export json`.
#[derive(Debug, Clone, clap::Args)]
pub struct JsonArgs {
    #[command(flatten)]
    pub selection: Selection,
    #[command(flatten)]
    pub target: Target,
}

/// Arguments of `tidecount export fhir`.
#[derive(Debug, Clone, clap::Args)]
pub struct FhirArgs {
    #[command(flatten)]
    pub selection: Selection,
    /// A bundle to be sent to a server, which puts each resource under its own identifier, instead of a collection to be handed over
    #[arg(long)]
    pub transaction: bool,
    #[command(flatten)]
    pub target: Target,
}

/// Arguments of `tidecount export dictionary`.
#[derive(Debug, Clone, clap::Args)]
pub struct DictionaryArgs {
    /// As metadata for programs (W3C "CSV on the Web") instead of a table
    #[arg(long)]
    pub csvw: bool,
    #[command(flatten)]
    pub target: Target,
}

/// Runs the command.
///
/// # Errors
/// There is nothing to export, or it cannot be read or written.
pub fn run(args: &ExportArgs) -> Result<ExitCode, AppError> {
    match &args.what {
        What::Csv(args) => csv(args)?,
        What::Json(args) => json(args)?,
        What::Fhir(args) => fhir(args)?,
        What::Calendar(args) => calendar::run(args)?,
        What::Textgrid(args) => textgrid::run(args)?,
        What::Dictionary(args) => dictionary(args)?,
    }
    Ok(ExitCode::SUCCESS)
}

fn csv(args: &CsvArgs) -> Result<(), AppError> {
    let to_folder = args
        .out
        .as_deref()
        .filter(|path| *path != Path::new("-") && path.extension().is_none_or(|ending| !ending.eq_ignore_ascii_case("csv")));
    if let Some(folder) = to_folder {
        return csv_folder(args, folder);
    }
    let chosen = Chosen::find(&args.selection)?;
    let target = Target { out: args.out.clone(), force: args.force };
    spare_record(&target, chosen.store())?;
    target.write(|to| {
        let mut tables = Tables { writers: vec![(args.table, Writer::new(args.table, to).map_err(failed)?)] };
        chosen.each(|practice| tables.take(practice))?;
        tables.finish()
    })
}

/// The tables that are being written.
struct Tables<W: Write> {
    writers: Vec<(&'static Table, Writer<W>)>,
}

impl<W: Write> Tables<W> {
    fn take(&mut self, practice: &export::Practice<'_>) -> Result<(), AppError> {
        for (table, writer) in &mut self.writers {
            let mut put = |row| writer.row(&row).map_err(failed);
            match table.name {
                "trials" => practice.trials.iter().try_for_each(|trial| put(trial_row(practice, trial)))?,
                "steps" => practice.steps.iter().try_for_each(|step| put(step_row(practice, step)))?,
                "practices" => put(practice_row(practice))?,
                _ => practice.entries().filter_map(|(part, kept)| event_row(practice, part, kept)).try_for_each(put)?,
            }
        }
        Ok(())
    }

    fn finish(self) -> Result<(), AppError> {
        self.writers.into_iter().try_for_each(|(_, writer)| writer.finish().map_err(failed))
    }
}

fn csv_folder(args: &CsvArgs, folder: &Path) -> Result<(), AppError> {
    if folder.is_file() {
        return Err(AppError::Usage(format!("{}: this is a file; name a folder, or a file that ends in .csv", folder.display())));
    }
    let dictionary =
        [("data-dictionary.csv", as_table().map_err(failed)?), ("csv-metadata.json", format!("{:#}\n", as_csvw()).into_bytes())];
    let names = TABLES.iter().map(|table| table.file()).chain(dictionary.iter().map(|(name, _)| (*name).to_owned()));
    for name in names {
        free(&folder.join(name), args.force)?;
    }
    let chosen = Chosen::find(&args.selection)?;
    create_folder(folder)?;
    let mut files = TABLES.iter().map(|table| NewFile::begin(&folder.join(table.file()), args.force)).collect::<Result<Vec<_>, _>>()?;
    let writers =
        TABLES.into_iter().zip(&mut files).map(|(table, file)| Ok((table, Writer::new(table, &mut file.writer).map_err(failed)?)));
    let mut tables = Tables { writers: writers.collect::<Result<Vec<_>, AppError>>()? };
    let practices = chosen.heads().count();
    chosen.each(|practice| tables.take(practice))?;
    tables.finish()?;
    for (name, bytes) in &dictionary {
        let mut file = NewFile::begin(&folder.join(name), args.force)?;
        file.writer.write_all(bytes).map_err(failed)?;
        files.push(file);
    }
    files.into_iter().try_for_each(NewFile::finish)?;
    eprintln!(
        "{}: {} in {} tables, with data-dictionary.csv and csv-metadata.json.",
        folder.display(),
        counted(practices, "practice"),
        TABLES.len()
    );
    Ok(())
}

/// `--force` is no leave to write over the record itself.
fn spare_record(target: &Target, store: &Store) -> Result<(), AppError> {
    let same = |path: &Path| {
        std::fs::canonicalize(path).ok().zip(std::fs::canonicalize(store.path()).ok()).is_some_and(|(one, other)| one == other)
    };
    match target.file().filter(|path| same(path)) {
        Some(path) => Err(AppError::Usage(format!("{}: this is the record itself; name another file with --out", path.display()))),
        None => Ok(()),
    }
}

fn json(args: &JsonArgs) -> Result<(), AppError> {
    let chosen = Chosen::find(&args.selection)?;
    spare_record(&args.target, chosen.store())?;
    let practices = chosen.heads().count();
    args.target.write(|to| chosen.each(|practice| write_practice(practice, to).map_err(failed)))?;
    told(&args.target, practices);
    Ok(())
}

fn fhir(args: &FhirArgs) -> Result<(), AppError> {
    let chosen = Chosen::find(&args.selection)?;
    let client = match &chosen.clients()[..] {
        [client] => client.clone(),
        several => {
            return Err(AppError::Usage(format!(
                "a bundle holds one client, so that nobody's results are taken for another's: name one with --client: {}",
                several.join(", ")
            )));
        }
    };
    spare_record(&args.target, chosen.store())?;
    let words = Words::english()?;
    let say =
        |key: &str, given: &[(&'static str, Arg)]| words.text(&Line { key: key.to_owned(), args: given.to_vec() }).unwrap_or_default();
    let kind = if args.transaction { BundleKind::Transaction } else { BundleKind::Collection };
    let practices = chosen.heads().count();
    let heads: Vec<_> = chosen.all_heads().iter().filter(|head| head.client == client).cloned().collect();
    args.target.write(|to| {
        let mut bundle = FhirExport::begin(to, kind, &client, &heads, &iso(&ZonedDateTime::now()), &say).map_err(failed)?;
        chosen.each(|practice| bundle.practice(practice).map_err(failed))?;
        bundle.finish().map(drop).map_err(failed)
    })?;
    told(&args.target, practices);
    Ok(())
}

fn told(target: &Target, practices: usize) {
    if let Some(path) = target.file() {
        eprintln!("{}: {}. Whoever has the file can read it.", path.display(), counted(practices, "practice"));
    }
}

fn dictionary(args: &DictionaryArgs) -> Result<(), AppError> {
    let bytes = if args.csvw { format!("{:#}\n", as_csvw()).into_bytes() } else { as_table().map_err(failed)? };
    args.target.write(|to| to.write_all(&bytes).map_err(failed))
}
