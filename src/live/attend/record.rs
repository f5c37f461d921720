//! What the attendant keeps and looks up: today's practices from the record, and the notices it gave.

use std::io::Write;
use std::path::{Path, PathBuf};

use jiff::ZonedDateTime;
use serde::Serialize;

use attend::{Household, Keeping, Moment, Practised, Today};
use record::{RecordError, Source, Store};
use session::Line;
use speak::Words;

/// The file of notices in the data folder: one JSON object a line, only ever added to.
pub const NOTICES_NAME: &str = "notices.jsonl";
/// More practices of one person in one day are not looked at.
const PRACTICES_A_DAY: u32 = 20;

/// The time of day as the attendant wants it.
pub fn moment(now: &ZonedDateTime) -> Moment {
    let day = i64::from(now.year()) * 400 + i64::from(now.day_of_year());
    Moment { day, weekday: now.weekday().into(), minute: minute(now) }
}

fn minute(at: &ZonedDateTime) -> u16 {
    u16::from(at.hour().unsigned_abs()) * 60 + u16::from(at.minute().unsigned_abs())
}

/// What an exercise is called inside a sentence: "Head lift, held" becomes "head lift".
pub fn exercise_name(words: &Words, id: &str) -> String {
    let name = words.text(&Line { key: format!("ex-{id}-name"), args: Vec::new() }).unwrap_or_else(|_| id.replace('-', " "));
    name.split(',').next().unwrap_or_default().trim().to_lowercase()
}

/// The practices of `now`'s day that came from this kind of source, in the order in which they began.
///
/// # Errors
/// The record cannot be read.
pub fn today(data: &Path, household: &Household, source: Source, now: &ZonedDateTime, words: &Words) -> Result<Today, RecordError> {
    let mut practices = Vec::new();
    if let Some(store) = Store::open_existing(data)? {
        for (p, person) in household.persons.iter().enumerate() {
            for summary in store.history(Some(&person.name), PRACTICES_A_DAY)? {
                let begun = summary.started_at.with_time_zone(now.time_zone().clone());
                let routine = person.routines.iter().position(|routine| routine.title == summary.routine);
                let (Some(r), true) = (routine, summary.source == source && begun.date() == now.date()) else { continue };
                let entries = store.entries(summary.id)?;
                practices.push((summary.id, Practised::of(p, r, minute(&begun), &entries, &|id| exercise_name(words, id))));
            }
        }
    }
    practices.sort_by_key(|(id, _)| *id);
    Ok(Today { day: moment(now).day, practices: practices.into_iter().map(|(_, practised)| practised).collect() })
}

/// One line of the file of notices.
#[derive(Serialize)]
struct Notice<'a> {
    at: String,
    person: Option<&'a str>,
    notice: &'a str,
    text: &'a str,
    /// "said", "answered" or "over".
    what: &'a str,
    #[serde(skip_serializing_if = "Option::is_none")]
    time: Option<u32>,
}

/// Keeps that a notice was said, answered, or had its cause removed; when this returns it is on the disk.
///
/// # Errors
/// The file cannot be written; the text names it.
pub fn keep_notice(
    data: &Path,
    now: &ZonedDateTime,
    person: Option<&str>,
    (key, text): (&str, &str),
    keeping: Keeping,
) -> Result<(), String> {
    let (what, time) = match keeping {
        Keeping::Said(time) => ("said", Some(time)),
        Keeping::Answered => ("answered", None),
        Keeping::Over => ("over", None),
    };
    let path: PathBuf = data.join(NOTICES_NAME);
    let notice = Notice { at: now.to_string(), person, notice: key, text, what, time };
    let write = || -> std::io::Result<()> {
        record::create_folder(data).map_err(|why| std::io::Error::other(why.to_string()))?;
        let mut line = serde_json::to_vec(&notice)?;
        line.push(b'\n');
        let mut file = disk::private::append(&path, false)?;
        file.write_all(&line)?;
        file.sync_data()
    };
    write().map_err(|why| format!("{}: the notice was not kept: {why}; see that the disk has room and the folder is yours", path.display()))
}
