//! What a client has practised live, read for the arithmetic of `progress`.
//!
//! Two years of daily practice are a hundred thousand entries: they are read in one pass, and only what bears on progress is
//! taken out of its line (`trial_lines`).

use std::collections::BTreeMap;

use jiff::fmt::temporal::DateTimeParser;
use jiff::tz::OffsetConflict;
use jiff::{ZonedDateTime, civil::Date};
use rusqlite::types::Type;

use super::error::RecordError;
use super::store::Store;
use super::trial_lines::{Line, Reader};
use model::{Position, SessionId};
use progress::{Led, Practice, Practised, misdated};

/// A live session with what stands in its own row.
struct Row {
    practice: Practice,
    /// Led on this computer.
    here: bool,
}

impl Store {
    /// Everything that this client has practised live, here or where results were received from; never replays or rehearsals.
    /// `today` is the client's present day: what cannot be of the past stands in no figure.
    ///
    /// # Errors
    /// The database refuses or holds a line that cannot be read.
    pub fn practised(&self, client: &str, today: Date) -> Result<Practised, RecordError> {
        self.led(client, today, "NOT IN")
    }

    /// The baselines and re-tests of this client, as [`Store::practised`] has practices.
    ///
    /// # Errors
    /// As there.
    pub fn assessed(&self, client: &str, today: Date) -> Result<Practised, RecordError> {
        self.led(client, today, "IN")
    }

    /// Sessions that are, or are not, in the table of assessments.
    fn led(&self, client: &str, today: Date, assessed: &'static str) -> Result<Practised, RecordError> {
        let rows = self.live_sessions(client, assessed)?;
        let led: Vec<Led> =
            rows.iter().map(|row| Led { session: row.practice.session, began: row.practice.began.clone(), here: row.here }).collect();
        let (wrong, clock_jumps) = misdated(&led, today);
        let practices = rows.into_iter().zip(wrong).map(|(row, misdated)| Practice { misdated, ..row.practice });
        let mut reader = Reader::new(practices, self.part_starts(client)?);
        self.each_line(client, assessed, |line| {
            reader.take(line).map_err(|cause| self.bad_line(SessionId(line.session), usize::try_from(line.seq).unwrap_or(0), cause))
        })?;
        let mut out = reader.close_all();
        out.client = client.to_owned();
        out.today = Some(today);
        out.clock_jumps = clock_jumps;
        out.goals = self.goals(client)?;
        self.find_sound_of(client, &mut out.moments)?;
        self.add_packages(client, &mut out.practices)?;
        out.practices.sort_by(|one, other| (&one.began, one.session).cmp(&(&other.began, other.session)));
        out.trials
            .sort_by(|one, other| (one.day, &one.when, one.session, one.seq).cmp(&(other.day, &other.when, other.session, other.seq)));
        out.notes.sort_by(|one, other| (&one.when, one.session).cmp(&(&other.when, other.session)));
        out.safety_stops.sort_by(|one, other| (&one.when, one.session).cmp(&(&other.when, other.session)));
        out.left_out.sort_by_key(|step| (step.day, step.session));
        Ok(out)
    }

    fn live_sessions(&self, client: &str, assessed: &'static str) -> Result<Vec<Row>, RecordError> {
        self.read(|db| {
            db.prepare(&format!(
                "SELECT s.id, s.started_at, s.end_reason, s.routine_title, s.routine_text, s.software, r.session IS NULL, r.package
                 FROM session s JOIN client c ON c.id = s.client LEFT JOIN received r ON r.session = s.id
                 WHERE c.name = ?1 AND s.source = 'live' AND s.id {assessed} (SELECT session FROM assessment) ORDER BY s.id",
            ))?
            .query_map([client], |row| {
                let began = time(1, &row.get::<_, String>(1)?)?;
                let practice = Practice {
                    session: row.get(0)?,
                    day: began.date(),
                    began,
                    end_reason: row.get(2)?,
                    routine_title: row.get(3)?,
                    routine_text: row.get(4)?,
                    software: row.get(5)?,
                    package: row.get(7)?,
                    steps_done: 0,
                    steps_prescribed: 0,
                    minutes: 0.0,
                    parts: 0,
                    steps: Vec::new(),
                    misdated: false,
                };
                Ok(Row { practice, here: row.get(6)? })
            })?
            .collect()
        })
    }

    /// When each part of each live session began.
    fn part_starts(&self, client: &str) -> Result<BTreeMap<(i64, i64), ZonedDateTime>, RecordError> {
        self.read(|db| {
            db.prepare(
                "SELECT p.session, p.number, p.started_at FROM part p JOIN session s ON s.id = p.session JOIN client c ON c.id = s.client
                 WHERE c.name = ?1 AND s.source = 'live'",
            )?
            .query_map([client], |row| Ok(((row.get(0)?, row.get(1)?), time(2, &row.get::<_, String>(2)?)?)))?
            .collect()
        })
    }

    /// Goes through all entries of all live sessions, in order.
    fn each_line(
        &self,
        client: &str,
        assessed: &'static str,
        mut take: impl FnMut(&Line<'_>) -> Result<(), RecordError>,
    ) -> Result<(), RecordError> {
        self.read(|db| {
            let mut query = db.prepare(&format!(
                "SELECT e.session, e.seq, e.part, e.at_s, e.kind, e.step, e.set_no, e.repetition, e.json
                 FROM session s JOIN client c ON c.id = s.client JOIN entry e ON e.session = s.id
                 WHERE c.name = ?1 AND s.source = 'live' AND s.id {assessed} (SELECT session FROM assessment) ORDER BY e.session, e.seq",
            ))?;
            let mut rows = query.query([client])?;
            while let Some(row) = rows.next()? {
                let step: Option<u32> = row.get(5)?;
                let position = match step {
                    Some(step) => Some(Position { step, set: row.get(6)?, repetition: row.get(7)? }),
                    None => None,
                };
                let (kind, json) = (row.get_ref(4)?.as_str()?, row.get_ref(8)?.as_str()?);
                let line = Line { session: row.get(0)?, seq: row.get(1)?, part: row.get(2)?, at_s: row.get(3)?, kind, position, json };
                if let Err(error) = take(&line) {
                    return Ok(Err(error));
                }
            }
            Ok(Ok(()))
        })?
    }

    /// The package in force when each practice that was led here began.
    fn add_packages(&self, client: &str, practices: &mut [Practice]) -> Result<(), RecordError> {
        let taken = self.packages_taken(client)?;
        for practice in practices.iter_mut().filter(|practice| practice.package.is_none()) {
            let began = practice.began.timestamp();
            practice.package = taken.iter().rev().find(|package| package.taken_at <= began).map(|package| package.id.clone());
        }
        Ok(())
    }
}

/// A kept time of day. Where the rules of its zone have changed since it was written, its offset counts: it tells the instant.
fn time(column: usize, text: &str) -> Result<ZonedDateTime, rusqlite::Error> {
    static LENIENT: DateTimeParser = DateTimeParser::new().offset_conflict(OffsetConflict::AlwaysOffset);
    text.parse()
        .or_else(|_| LENIENT.parse_zoned_datetime(text))
        .map_err(|_| rusqlite::Error::FromSqlConversionFailure(column, Type::Text, format!("cannot read {text:?}").into()))
}

#[cfg(test)]
#[path = "tests/trials.rs"]
mod tests;
