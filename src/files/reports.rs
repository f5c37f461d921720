//! `tidecount report`: the pages about one client's practice, for the clinician and for the client.

use std::fs::OpenOptions;
use std::io::{ErrorKind, Write};
use std::path::{Path, PathBuf};
use std::process::ExitCode;

use jiff::ZonedDateTime;
use jiff::civil::Date;

use crate::error::AppError;
use progress::{Picture, Practised, Window};
use record::{Store, data_folder};
use report::sheet::{About, Sheet, sheet};
use report::to_html;
use session::{Arg, Line};
use speak::Words;

/// More weeks than this make no page: two years and a little.
const MOST_WEEKS: i64 = 106;

/// Arguments of `tidecount report`.
#[derive(Debug, Clone, clap::Args)]
pub struct ReportArgs {
    /// Whose practice; needed where several people practise here
    #[arg(long, value_name = "NAME")]
    pub client: Option<String>,
    /// So many weeks up to today, from a Monday on
    #[arg(long, value_name = "N", default_value_t = 12, value_parser = clap::value_parser!(u32).range(1..=MOST_WEEKS))]
    pub weeks: u32,
    /// What is made: pages to print, or one file for a browser
    #[arg(long, value_enum, default_value_t = Format::Pdf)]
    pub format: Format,
    /// Where it goes, "-" for standard output [default: report-NAME-DATE.pdf or .html in this folder]
    #[arg(long, short, value_name = "FILE")]
    pub out: Option<PathBuf>,
    /// Replace a file of that name
    #[arg(long)]
    pub force: bool,
    /// As if the report were made on this day, 2026-11-24
    #[arg(long, value_name = "DATE")]
    pub until: Option<Date>,
    /// The folder of the record [default: TIDECOUNT_DATA, else this system's place for a program's data]
    #[arg(long, value_name = "DIR")]
    pub data: Option<PathBuf>,
}

/// What can be made.
#[derive(Debug, Clone, Copy, PartialEq, Eq, clap::ValueEnum)]
pub enum Format {
    /// Pages to print, A4
    Pdf,
    /// One file for a browser
    Html,
}

impl Format {
    fn extension(self) -> &'static str {
        match self {
            Self::Pdf => "pdf",
            Self::Html => "html",
        }
    }
}

/// Runs `tidecount report`.
///
/// # Errors
/// As [`make`]; or the file is there already or cannot be written.
pub fn run(args: &ReportArgs) -> Result<ExitCode, AppError> {
    let words = Words::english()?;
    let today = args.until.unwrap_or_else(|| ZonedDateTime::now().date());
    let (client, bytes) = make(args, today, &words)?;
    if args.out.as_deref() == Some(Path::new("-")) {
        return match std::io::stdout().lock().write_all(&bytes) {
            // A reader that went away is no fault of ours.
            Err(why) if why.kind() != ErrorKind::BrokenPipe => Err(AppError::Usage(format!("the report cannot be written: {why}"))),
            _ => Ok(ExitCode::SUCCESS),
        };
    }
    let path =
        args.out.clone().unwrap_or_else(|| PathBuf::from(format!("report-{}-{today}.{}", short_name(&client), args.format.extension())));
    write(&path, &bytes, args.force)?;
    let written =
        words.text(&Line { key: "report-written-shown".to_owned(), args: vec![("file", Arg::Text(path.display().to_string()))] })?;
    // Where nobody reads it, the file is there all the same.
    let _ = writeln!(std::io::stdout(), "{written}");
    Ok(ExitCode::SUCCESS)
}

/// The report's bytes and whose it is.
///
/// # Errors
/// There is no record, nobody or several people practise in it, the client named does not; or the record cannot be read.
pub fn make(args: &ReportArgs, today: Date, words: &Words) -> Result<(String, Vec<u8>), AppError> {
    let folder = data_folder(args.data.as_deref())?;
    let Some(store) = Store::open_existing(&folder)? else {
        return Err(AppError::Usage(format!(
            "there is no record in {}, so there is nothing to report: practise first, or name the folder of the record with --data DIR",
            folder.display()
        )));
    };
    let client = choose(&store.live_clients()?, args.client.as_deref(), &folder)?;
    let practised = store.practised(&client, today)?;
    let page = gather(&practised, args.weeks, today, words)?;
    let bytes = match args.format {
        Format::Pdf => print::report_pdf(&page).map_err(|why| AppError::Usage(why.to_string()))?,
        Format::Html => to_html(&page).into_bytes(),
    };
    Ok((client, bytes))
}

/// Everything that stands in the report of what was practised.
///
/// # Errors
/// A drawing cannot be made.
pub fn gather(practised: &Practised, weeks: u32, today: Date, words: &Words) -> Result<Sheet, AppError> {
    let window = window(practised, weeks, today);
    let picture = Picture::of(practised, window);
    let say =
        |key: &str, given: &[(&'static str, Arg)]| words.text(&Line { key: key.to_owned(), args: given.to_vec() }).unwrap_or_default();
    let last_practice = practised.practices.iter().filter(|practice| !practice.misdated).map(|practice| practice.day).max();
    let about = About { made: today, last_practice, software: concat!("tidecount ", env!("CARGO_PKG_VERSION")), language: "en" };
    sheet(&picture, &about, &say).map_err(|why| AppError::Usage(why.to_string()))
}

/// The weeks asked for; where practice began later, from the week in which it began: empty weeks before it tell nothing.
fn window(practised: &Practised, weeks: u32, today: Date) -> Window {
    let (asked, all) = (Window::weeks(today, weeks), Window::all(practised, today));
    let monday = Window::weeks(all.from, 1).from;
    Window { from: asked.from.max(monday), to: asked.to }
}

/// The client who is named, or the only one.
fn choose(clients: &[(String, u32)], named: Option<&str>, folder: &Path) -> Result<String, AppError> {
    let list = || clients.iter().map(|(name, practices)| format!("\n  {} ({practices} practices)", one_line(name))).collect::<String>();
    match (named, clients) {
        (_, []) => Err(AppError::Usage(format!(
            "nobody has practised live in {} yet, so there is nothing to report: practise first, or name another record with --data DIR",
            folder.display()
        ))),
        (Some(name), _) => clients.iter().find(|(known, _)| known == name).map(|(known, _)| known.clone()).ok_or_else(|| {
            AppError::Usage(format!("{:?} has not practised live here. Name one of these with --client NAME:{}", one_line(name), list()))
        }),
        (None, [(only, _)]) => Ok(only.clone()),
        (None, _) => {
            Err(AppError::Usage(format!("several people practise here. Say whose report it is to be with --client NAME:{}", list())))
        }
    }
}

/// Names must not steer the terminal.
fn one_line(text: &str) -> String {
    text.chars().map(|c| if c.is_control() { ' ' } else { c }).collect()
}

/// The client's name as part of a file's name: letters and digits, everything else a dash; nothing else about the person.
fn short_name(client: &str) -> String {
    let letters: String = client.chars().map(|c| if c.is_alphanumeric() { c } else { '-' }).collect();
    let short: String =
        letters.to_lowercase().split('-').filter(|part| !part.is_empty()).collect::<Vec<_>>().join("-").chars().take(24).collect();
    let short = short.trim_end_matches('-');
    if short.is_empty() { "client".to_owned() } else { short.to_owned() }
}

/// Writes beside it and moves it there, so that no half report is left; over another file only with `force`.
fn write(path: &Path, bytes: &[u8], force: bool) -> Result<(), AppError> {
    let refused = |why: String| AppError::Usage(format!("{}: {why}", path.display()));
    let exists = || {
        refused(
            "there is a file of that name already, and it was left as it is: name another with --out FILE, or replace it with --force"
                .to_owned(),
        )
    };
    let cannot = |why: std::io::Error| {
        refused(format!(
            "cannot be written: {why}. See that the folder is there, is writable for you and has room, or name another file with --out FILE"
        ))
    };
    let there = path.symlink_metadata();
    if there.as_ref().is_ok_and(std::fs::Metadata::is_dir) {
        return Err(refused("this is a folder: name a file in it with --out FILE".to_owned()));
    }
    if there.is_ok() && !force {
        return Err(exists());
    }
    let Some(name) = path.file_name() else { return Err(refused("this is no name for a file: name one with --out FILE".to_owned())) };
    let beside = path.with_file_name(format!(".{}.{}", name.to_string_lossy(), std::process::id()));
    let mut options = OpenOptions::new();
    options.write(true).create_new(true);
    // It is about a person's health: for its owner alone.
    #[cfg(unix)]
    std::os::unix::fs::OpenOptionsExt::mode(&mut options, 0o600);
    let written = options.open(&beside).and_then(|mut file| file.write_all(bytes).and_then(|()| file.sync_all()));
    let moved = written.and_then(|()| std::fs::rename(&beside, path));
    if moved.is_err() {
        // What was begun goes; where that fails too, its own error has been told.
        let _ = std::fs::remove_file(&beside);
    }
    moved.map_err(cannot)
}

#[cfg(test)]
mod tests {
    use super::*;
    use jiff::civil::date;

    #[test]
    fn names_of_files_hold_letters_alone() {
        for (client, short) in
            [("grandpa", "grandpa"), ("Ada of the Hill", "ada-of-the-hill"), ("../../etc", "etc"), ("  ", "client"), ("Ägir 2", "ägir-2")]
        {
            assert_eq!(short_name(client), short);
        }
        assert!(short_name(&"x ".repeat(90)).len() <= 24);
    }

    #[test]
    fn the_only_client_needs_no_name_and_of_several_one_is_asked_for() {
        let (ada, ben) = (("ada".to_owned(), 3), ("ben".to_owned(), 1));
        let folder = Path::new("x");
        assert_eq!(choose(std::slice::from_ref(&ada), None, folder).expect("the only one"), "ada");
        assert_eq!(choose(&[ada.clone(), ben.clone()], Some("ben"), folder).expect("named"), "ben");
        let said = |clients: &[(String, u32)], named: Option<&str>| choose(clients, named, folder).expect_err("refused").to_string();
        assert!(said(&[ada.clone(), ben.clone()], None).contains("--client NAME:\n  ada (3 practices)\n  ben (1 practices)"));
        assert!(said(&[ada, ben], Some("cy")).contains("\"cy\" has not practised"));
        assert!(said(&[], Some("cy")).contains("nobody has practised"));
    }

    #[test]
    fn the_weeks_begin_where_practice_began() {
        let practised = Practised::default();
        let today = date(2026, 11, 26);
        assert_eq!(window(&practised, 12, today).from, date(2026, 11, 23));
        assert_eq!(Window::weeks(today, 12).from, date(2026, 9, 7));
    }
}
