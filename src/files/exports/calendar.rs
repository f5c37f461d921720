//! `tidecount export calendar`: the agreed times of routines, from files, from a household, or from the record.

use std::collections::BTreeMap;
use std::path::{Path, PathBuf};

use jiff::civil::Date;
use jiff::{Timestamp, ToSpan, ZonedDateTime};

use crate::error::AppError;
use crate::exports::out::{Target, failed};
use crate::exports::read::no_such_client;
use crate::number_words::counted;
use crate::packages::household::household_of_packages;
use crate::routine_files::load_routine;
use export::{CalendarSettings, Outline, Planned, calendar};
use record::{Store, data_folder};
use routine::{Hearing, Prescription};

/// Arguments of `tidecount export calendar`.
#[derive(Debug, Clone, clap::Args)]
pub struct CalendarArgs {
    /// Routines with a `plan`, TOML files; no record is needed then [default: those of the household file, of the packages taken here, or of the record]
    pub routines: Vec<PathBuf>,
    /// A household file [default: household.toml in the data folder, where there is one]
    #[arg(long, value_name = "FILE.toml", conflicts_with = "routines")]
    pub household: Option<PathBuf>,
    /// Only the routines of this client
    #[arg(long, value_name = "NAME")]
    pub client: Option<String>,
    /// The first day [default: today]
    #[arg(long, value_name = "YYYY-MM-DD")]
    pub from: Option<Date>,
    /// The last day [default: by --weeks]
    #[arg(long, value_name = "YYYY-MM-DD", conflicts_with = "weeks")]
    pub to: Option<Date>,
    /// Over so many weeks [default: 6]
    #[arg(long, value_name = "N", value_parser = clap::value_parser!(u16).range(1..=260))]
    pub weeks: Option<u16>,
    /// Minutes before a practice at which it rings; can be given several times [default: 10]
    #[arg(long, value_name = "MINUTES", value_parser = clap::value_parser!(u32).range(0..=10080), conflicts_with = "no_alarm")]
    pub alarm: Vec<u32>,
    /// No alarm
    #[arg(long)]
    pub no_alarm: bool,
    /// What stands in the calendar. Calendars are copied to other computers and shown on locked screens: write nothing that tells of health
    #[arg(long, value_name = "TEXT", default_value = "Practice")]
    pub summary: String,
    /// The folder of the record [default: TIDECOUNT_DATA, else this system's place for a program's data]
    #[arg(long, value_name = "DIR")]
    pub data: Option<PathBuf>,
    #[command(flatten)]
    pub target: Target,
}

/// Weeks where nothing is said; a usual length of a programme (trade facts 7.4 has it as its example).
const WEEKS: u16 = 6;

/// A client's name and a routine.
type Routines = Vec<(String, Prescription)>;

/// Runs it.
///
/// # Errors
/// No routine has a plan in those days, a file has faults, or the calendar cannot be written.
pub fn run(args: &CalendarArgs) -> Result<(), AppError> {
    let from = args.from.unwrap_or_else(|| ZonedDateTime::now().date());
    let days = i64::from(args.weeks.unwrap_or(WEEKS)) * 7 - 1;
    let beyond = |_| AppError::Usage("these days lie beyond the calendar: name others with --from and --weeks".to_owned());
    let to = args.to.map_or_else(|| from.checked_add(days.days()).map_err(beyond), Ok)?;
    if from > to {
        return Err(AppError::Usage(format!("--to {to} lies before {from}: nothing can be between them")));
    }
    // Ten years of days are gone through in no time; thousands are a slip.
    if from.duration_until(to).as_hours() / 24 > 3660 {
        return Err(AppError::Usage(format!("from {from} to {to} are more than ten years: name a nearer day with --to")));
    }
    let summary: String = args.summary.chars().map(|c| if c.is_control() { ' ' } else { c }).collect();
    if summary.trim().is_empty() {
        return Err(AppError::Usage("--summary is empty: write what is to stand in the calendar".to_owned()));
    }
    let routines = if args.routines.is_empty() { known_here(args)? } else { of_files(args)? };
    let planned: Vec<Planned<'_>> = routines
        .iter()
        .map(|(client, known)| Planned { client, title: &known.routine.title, plan: &known.plan, minutes: minutes(known) })
        .collect();
    let alarms_min = match (&args.alarm[..], args.no_alarm) {
        (_, true) => Vec::new(),
        ([], false) => vec![10],
        (given, false) => given.to_vec(),
    };
    let settings = CalendarSettings { from, to, summary, alarms_min, made_at: Timestamp::now() };
    let Some((text, practices)) = calendar(&planned, &settings) else {
        let titles: Vec<&str> = planned.iter().map(|one| one.title).collect();
        let why = if planned.iter().all(|one| one.plan.is_empty()) {
            "has no `plan`: add one, as in `plan = [{ days = [\"monday\"], at = \"18:30\" }]`"
        } else {
            "is not planned on any of these days"
        };
        return Err(AppError::Usage(format!("{} {why}", titles.join(", "))));
    };
    args.target.write(|to| to.write_all(text.as_bytes()).map_err(failed))?;
    if let Some(path) = args.target.file() {
        eprintln!("{}: {} from {from} to {to}.", path.display(), counted(practices, "practice"));
    }
    Ok(())
}

/// As long as it is planned to take, to the next five minutes.
fn minutes(known: &Prescription) -> u32 {
    let fives = (known.routine.planned_duration_s() / 300.0).ceil();
    // A routine of a hundred steps is some hours long at most.
    if fives.is_finite() { (fives.clamp(1.0, 288.0) as u32) * 5 } else { 30 }
}

fn of_files(args: &CalendarArgs) -> Result<Routines, AppError> {
    args.routines
        .iter()
        .map(|file| {
            let known = load_routine(file, Hearing::default())?;
            let client = args.client.clone().or_else(|| known.client.clone()).unwrap_or_default();
            Ok((client, known))
        })
        .collect()
}

/// The household's, else those of the packages taken here, else those that were followed last.
fn known_here(args: &CalendarArgs) -> Result<Routines, AppError> {
    let data = data_folder(args.data.as_deref())?;
    let usual = data.join("household.toml");
    let (path, text) = match &args.household {
        Some(path) => (path.clone(), Some(read(path)?)),
        None if usual.exists() => (usual.clone(), Some(read(&usual)?)),
        None => (usual, household_of_packages(&data)),
    };
    match text {
        Some(text) => of_household(&path, &text, args.client.as_deref()),
        None => of_record(&data, args.client.as_deref()),
    }
}

fn read(path: &Path) -> Result<String, AppError> {
    std::fs::read_to_string(path).map_err(|why| {
        AppError::Usage(format!("{}: cannot be read: {why}. Check the file's name and that you may read it", path.display()))
    })
}

/// Only who practises what is read here; `tidecount attend` checks the rest.
fn of_household(path: &Path, text: &str, client: Option<&str>) -> Result<Routines, AppError> {
    let bad = |why: String| AppError::Usage(format!("{}: {why}. See docs/attending.md for an example", path.display()));
    let table: toml::Table = text.parse().map_err(|why: toml::de::Error| bad(why.to_string().trim().to_owned()))?;
    let persons =
        table.get("person").and_then(toml::Value::as_array).ok_or_else(|| bad("no `[[person]]` stands in this household".to_owned()))?;
    let folder = path.parent().unwrap_or_else(|| Path::new("."));
    let (mut routines, mut names) = (Vec::new(), Vec::new());
    for person in persons {
        let name = person.get("name").and_then(toml::Value::as_str).ok_or_else(|| bad("a person has no `name`".to_owned()))?;
        names.push(name.to_owned());
        if client.is_some_and(|client| client != name) {
            continue;
        }
        for routine in person.get("routine").and_then(toml::Value::as_array).into_iter().flatten() {
            let file =
                routine.get("file").and_then(toml::Value::as_str).ok_or_else(|| bad(format!("a routine of {name} has no `file`")))?;
            routines.push((name.to_owned(), load_routine(&folder.join(file), Hearing::default())?));
        }
    }
    match client.filter(|client| names.iter().all(|known| known != client)) {
        Some(client) => {
            Err(AppError::Usage(format!("{}: {}", path.display(), no_such_client(client, &names).replace("this record", "this household"))))
        }
        None if routines.is_empty() => Err(bad("there is no routine in this household".to_owned())),
        None => Ok(routines),
    }
}

fn of_record(data: &Path, client: Option<&str>) -> Result<Routines, AppError> {
    let nothing = || {
        AppError::Usage(format!(
            "there is no household file, no package and no record in {}: name a routine, as in `tidecount export calendar evening.toml`",
            data.display()
        ))
    };
    let store = Store::open_to_read(data)?.ok_or_else(nothing)?;
    let clients = store.clients()?;
    let client = match (client, &clients[..]) {
        (Some(client), _) if clients.iter().any(|known| known == client) => client.to_owned(),
        (Some(client), _) => return Err(AppError::Usage(no_such_client(client, &clients))),
        (None, [only]) => only.clone(),
        (None, []) => return Err(nothing()),
        (None, several) => {
            return Err(AppError::Usage(format!("the record holds several clients: name one with --client: {}", several.join(", "))));
        }
    };
    // Of each title the version that was followed last.
    let mut latest = BTreeMap::new();
    for head in store.kept_heads(Some(&client))? {
        latest.insert(head.routine_title.clone(), head.routine_text);
    }
    let routines: Routines = latest.values().filter_map(|text| Some((client.clone(), Outline::of(text).prescription?))).collect();
    if routines.is_empty() { Err(nothing()) } else { Ok(routines) }
}
