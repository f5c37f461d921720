//! `tidecount export calendar`: the agreed times of routines, from files, from a household, or from the record.

use std::collections::BTreeMap;
use std::path::{Path, PathBuf};

use jiff::civil::Date;
use jiff::{Timestamp, ToSpan};

use crate::error::Failure;
use crate::exports::out::{Target, failed};
use crate::exports::read::no_such_client;
use crate::number_words::counted;
use crate::packages::household::household_of_packages;
use crate::routine_files::load_routine;
use export::{CalendarSettings, Outline, Planned, calendar};
use record::Store;
use routine::{Hearing, Prescription};

/// Which agreed times, and how they stand in the calendar.
#[derive(Debug, Clone)]
pub struct CalendarExport {
    /// Routine files; where there are none, those of the household, of the packages taken here, or of the record.
    pub routines: Vec<PathBuf>,
    /// None: household.toml in the data folder, where there is one.
    pub household: Option<PathBuf>,
    pub client: Option<String>,
    pub from: Date,
    /// None: as many weeks as `weeks` from the first day on.
    pub to: Option<Date>,
    pub weeks: u16,
    /// Minutes before a practice at which it rings.
    pub alarms_min: Vec<u32>,
    /// What stands in the calendar.
    pub summary: String,
    /// The folder of the record.
    pub data: PathBuf,
    pub target: Target,
}

/// A client's name and a routine.
type Routines = Vec<(String, Prescription)>;

/// Writes it.
///
/// # Errors
/// No routine has a plan in those days, a file has faults, or the calendar cannot be written.
pub fn write_calendar(asked: &CalendarExport) -> Result<(), Failure> {
    let from = asked.from;
    let days = i64::from(asked.weeks) * 7 - 1;
    let beyond = |_| Failure::Options("these days are beyond the calendar: choose others with --from and --weeks".to_owned());
    let to = asked.to.map_or_else(|| from.checked_add(days.days()).map_err(beyond), Ok)?;
    if from > to {
        return Err(Failure::Options(format!("--to {to} is before {from}: there are no days between them")));
    }
    // Ten years of days are gone through in no time; thousands are a slip.
    if from.duration_until(to).as_hours() / 24 > 3660 {
        return Err(Failure::Options(format!("from {from} to {to} is more than ten years: choose an earlier day with --to")));
    }
    let summary: String = asked.summary.chars().map(|c| if c.is_control() { ' ' } else { c }).collect();
    if summary.trim().is_empty() {
        return Err(Failure::Options("--summary is empty: say what the calendar should show".to_owned()));
    }
    let routines = if asked.routines.is_empty() { known_here(asked)? } else { of_files(asked)? };
    let planned: Vec<Planned<'_>> = routines
        .iter()
        .map(|(client, known)| Planned { client, title: &known.routine.title, plan: &known.plan, minutes: minutes(known) })
        .collect();
    let settings = CalendarSettings { from, to, summary, alarms_min: asked.alarms_min.clone(), made_at: Timestamp::now() };
    let Some((text, practices)) = calendar(&planned, &settings) else {
        let titles: Vec<&str> = planned.iter().map(|one| one.title).collect();
        let why = if planned.iter().all(|one| one.plan.is_empty()) {
            "has no `plan`: add one, as in `plan = [{ days = [\"monday\"], at = \"18:30\" }]`"
        } else {
            "has no practice on any of these days"
        };
        return Err(Failure::Options(format!("{} {why}", titles.join(", "))));
    };
    asked.target.write(|to| to.write_all(text.as_bytes()).map_err(failed))?;
    if let Some(path) = asked.target.file() {
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

fn of_files(asked: &CalendarExport) -> Result<Routines, Failure> {
    asked
        .routines
        .iter()
        .map(|file| {
            let known = load_routine(file, Hearing::default())?;
            let client = asked.client.clone().or_else(|| known.client.clone()).unwrap_or_default();
            Ok((client, known))
        })
        .collect()
}

/// The household's, else those of the packages taken here, else those that were followed last.
fn known_here(asked: &CalendarExport) -> Result<Routines, Failure> {
    let data = &asked.data;
    let usual = data.join("household.toml");
    let (path, text) = match &asked.household {
        Some(path) => (path.clone(), Some(read(path)?)),
        None if usual.exists() => (usual.clone(), Some(read(&usual)?)),
        None => (usual, household_of_packages(data)),
    };
    match text {
        Some(text) => of_household(&path, &text, asked.client.as_deref()),
        None => of_record(data, asked.client.as_deref()),
    }
}

fn read(path: &Path) -> Result<String, Failure> {
    std::fs::read_to_string(path)
        .map_err(|why| Failure::file(path, format!("cannot be read: {why}. Check the file's name and that you may read it")))
}

/// Only who practises what is read here; `tidecount attend` checks the rest.
fn of_household(path: &Path, text: &str, client: Option<&str>) -> Result<Routines, Failure> {
    let bad = |why: String| Failure::file(path, format!("{why}. See docs/attending.md for an example"));
    let table: toml::Table = text.parse().map_err(|why: toml::de::Error| bad(why.to_string().trim().to_owned()))?;
    let persons =
        table.get("person").and_then(toml::Value::as_array).ok_or_else(|| bad("this household has no `[[person]]`".to_owned()))?;
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
        Some(client) => Err(Failure::file(path, no_such_client(client, &names).replace("this record", "this household").to_string())),
        None if routines.is_empty() => Err(bad("this household has no routine".to_owned())),
        None => Ok(routines),
    }
}

fn of_record(data: &Path, client: Option<&str>) -> Result<Routines, Failure> {
    let nothing = || {
        Failure::Missing(format!(
            "there is no household file, no package and no record in {}: name a routine, as in `tidecount export calendar evening.toml`",
            data.display()
        ))
    };
    let store = Store::open_to_read(data)?.ok_or_else(nothing)?;
    let clients = store.clients()?;
    let client = match (client, &clients[..]) {
        (Some(client), _) if clients.iter().any(|known| known == client) => client.to_owned(),
        (Some(client), _) => return Err(Failure::Options(no_such_client(client, &clients))),
        (None, [only]) => only.clone(),
        (None, []) => return Err(nothing()),
        (None, several) => {
            return Err(Failure::Options(format!("the record holds several clients: name one with --client: {}", several.join(", "))));
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
