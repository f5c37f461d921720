//! `tidecount report`: the pages about one client's practice, for the clinician and for the client.

use std::io::{IsTerminal, Write};
use std::path::PathBuf;
use std::process::ExitCode;

use jiff::ZonedDateTime;
use jiff::civil::Date;

use crate::options::DataFolder;
use files::error::{Failure, delivered};
use files::exports::out::{NewFile, Target};
use files::load;
use files::reports::{self, MOST_WEEKS, Page, Wanted, make, short_name};
use report::sheet::Part;
use session::{Arg, Line};
use speak::{Language, Words};

/// Arguments of `tidecount report`.
#[derive(Debug, Clone, clap::Args)]
pub struct ReportArgs {
    /// Report on this client; needed where several people practise here
    #[arg(long, value_name = "NAME")]
    client: Option<String>,
    /// Cover this many weeks up to today, beginning on a Monday
    #[arg(long, value_name = "N", default_value_t = 12, value_parser = clap::value_parser!(u32).range(1..=MOST_WEEKS))]
    weeks: u32,
    /// Make pages to print, one file for a browser, or a text to paste into a chart
    #[arg(long, value_enum, default_value_t = Format::Pdf)]
    format: Format,
    /// Make the whole report, a letter to another clinician, or a page for whoever helps at home
    #[arg(long, value_enum, default_value_t = Kind::Whole)]
    page: Kind,
    /// Tell only this in the letter: safety, practice, dose, measures, goals, ratings, left-out, programme
    #[arg(long, value_name = "PART,…", value_delimiter = ',', value_parser = part)]
    with: Vec<Part>,
    /// Write to this file, or to standard output with `-` [default: report-NAME-DATE.pdf or .html in this folder, letter-… or carer-… for those; the text for
    /// the chart to standard output]
    #[arg(long, short, value_name = "FILE|-")]
    out: Option<PathBuf>,
    /// Replace a file that is already there
    #[arg(long)]
    force: bool,
    /// Make the report as if today were this day
    #[arg(long, value_name = "YYYY-MM-DD")]
    until: Option<Date>,
    #[command(flatten)]
    data: DataFolder,
}

/// What can be typed after `--format`.
#[derive(Debug, Clone, Copy, PartialEq, Eq, clap::ValueEnum)]
enum Format {
    /// Pages to print, A4
    Pdf,
    /// One file for a browser
    Html,
    /// Plain text in the order subjective, objective, assessment, plan
    Chart,
}

/// What can be typed after `--page`.
#[derive(Debug, Clone, Copy, PartialEq, Eq, clap::ValueEnum)]
enum Kind {
    /// The clinician's page, tables, and the client's page
    Whole,
    /// A letter to another clinician
    Letter,
    /// A page for whoever helps at home
    Carer,
}

impl Kind {
    /// How its file is called, before the client's name.
    fn stem(self) -> &'static str {
        match self {
            Self::Whole => "report",
            Self::Letter => "letter",
            Self::Carer => "carer",
        }
    }
}

fn part(typed: &str) -> Result<Part, String> {
    let known = || Part::ALL.map(Part::name).join(", ");
    Part::of_name(typed).ok_or_else(|| format!("a letter has no part {typed:?}; name some of: {}", known()))
}

impl From<Format> for reports::Format {
    fn from(typed: Format) -> Self {
        match typed {
            Format::Pdf => Self::Pdf,
            Format::Html => Self::Html,
            Format::Chart => Self::Chart,
        }
    }
}

/// Runs the command.
///
/// # Errors
/// There is nothing to report, or the file is there already or cannot be written.
pub fn run(args: &ReportArgs) -> Result<ExitCode, Failure> {
    let data = args.data.folder()?;
    let words = Words::of(Language::of_tag(load::language_of(&data.join("household.toml")).as_deref())?)?;
    let today = args.until.unwrap_or_else(|| ZonedDateTime::now().date());
    if args.page != Kind::Letter && !args.with.is_empty() {
        return Err(Failure::Options("--with says what a letter tells: add --page letter, or leave --with out".to_owned()));
    }
    let page = match args.page {
        Kind::Whole => Page::Whole,
        Kind::Letter if args.with.is_empty() => Page::Letter(Part::ALL.to_vec()),
        Kind::Letter => Page::Letter(args.with.clone()),
        Kind::Carer => Page::Carer,
    };
    let wanted = Wanted { client: args.client.clone(), weeks: args.weeks, format: args.format.into(), page, data };
    let (client, bytes) = make(&wanted, today, &words)?;
    // A text is read or piped at once, a page is kept.
    let usual = || match args.format {
        Format::Chart => PathBuf::from("-"),
        Format::Pdf | Format::Html => file_name(args.page.stem(), &client, today, wanted.format),
    };
    let target = Target { out: Some(args.out.clone().unwrap_or_else(usual)), force: args.force };
    let Some(path) = target.file() else {
        // A person reads the terminal; a program gets the text as it is.
        let at_terminal = args.format == Format::Chart && std::io::stdout().is_terminal();
        let bytes = if at_terminal { model::visible(&String::from_utf8_lossy(&bytes)).into_bytes() } else { bytes };
        return delivered(std::io::stdout().lock().write_all(&bytes)).map(|()| ExitCode::SUCCESS);
    };
    NewFile::begin(path, args.force)?.write_whole(&bytes)?;
    let written =
        words.text(&Line { key: "report-written-shown".to_owned(), args: vec![("file", Arg::Text(path.display().to_string()))] })?;
    // Where nobody reads it, the file is there all the same.
    let _ = writeln!(std::io::stdout(), "{written}");
    Ok(ExitCode::SUCCESS)
}

fn file_name(stem: &str, client: &str, today: Date, format: reports::Format) -> PathBuf {
    PathBuf::from(format!("{stem}-{}-{today}.{}", short_name(client), format.extension()))
}
