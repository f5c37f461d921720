//! Practices as they leave this record and as they come into another.

use super::chain;
use super::clients::client_row;
use super::error::RecordError;
use super::running;
use super::store::Store;
use super::time;
use jiff::{Timestamp, ZonedDateTime};
use model::{Entry, Source, entry_line, parse_line};
use rusqlite::{OptionalExtension, Transaction, params};

/// One part of a practice with its journal lines, byte for byte.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct WholePart {
    pub started_at: String,
    pub lines: Vec<String>,
}

/// One practice with all that is kept of it.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct WholeSession {
    /// Its number in the record where it was led.
    pub number: i64,
    /// The package that was in force when it began.
    pub package: Option<String>,
    pub started_at: String,
    /// When it ended and why.
    pub end: Option<(String, String)>,
    pub routine_title: String,
    pub routine_text: String,
    pub software: String,
    pub parts: Vec<WholePart>,
}

impl WholeSession {
    /// Each line with the number of its part.
    fn lines(&self) -> impl Iterator<Item = (i64, &String)> {
        (1..).zip(&self.parts).flat_map(|(part, whole)| whole.lines.iter().map(move |line| (part, line)))
    }
}

/// What came in.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq)]
pub struct Received {
    /// Practices that were not known before.
    pub new: u32,
    /// Known practices of which more has come.
    pub more: u32,
    /// Practices that were known as they are, or better.
    pub known: u32,
}

/// One journal entry ready for its row.
struct Row {
    part: i64,
    entry: Entry,
    line: String,
}

impl Store {
    /// This client's live practices that were led here, oldest first: since a day, or where none is given, what has not been
    /// handed back yet. One that is under way now is left out.
    ///
    /// # Errors
    /// The database refuses.
    pub fn whole_sessions(&self, client: &str, since: Option<jiff::civil::Date>) -> Result<Vec<WholeSession>, RecordError> {
        let mut sessions = self.read(|db| {
            db.prepare(
                "SELECT s.id, s.started_at, s.ended_at, s.end_reason, s.routine_title, s.routine_text, s.software FROM session s
                 JOIN client c ON c.id = s.client
                 WHERE c.name = ?1 AND s.source = 'live' AND s.id NOT IN (SELECT session FROM assessment) AND s.id NOT IN (SELECT session FROM received)
                   AND EXISTS (SELECT 1 FROM entry WHERE session = s.id)
                   AND (?2 OR NOT EXISTS (SELECT 1 FROM handed_back h WHERE h.session = s.id AND h.ended = (s.ended_at IS NOT NULL)
                                          AND h.entries = (SELECT count(*) FROM entry WHERE session = s.id)))
                 ORDER BY s.id",
            )?
            .query_map(params![client, since.is_some()], |row| {
                let end: Option<String> = row.get(2)?;
                let reason: Option<String> = row.get(3)?;
                Ok(WholeSession {
                    number: row.get(0)?,
                    package: None,
                    started_at: row.get(1)?,
                    end: end.zip(reason),
                    routine_title: row.get(4)?,
                    routine_text: row.get(5)?,
                    software: row.get(6)?,
                    parts: Vec::new(),
                })
            })?
            .collect::<Result<Vec<_>, _>>()
        })?;
        let day = |session: &WholeSession| time::read(&session.started_at).map(|time| time.date());
        sessions.retain(|session| since.is_none_or(|since| day(session).is_none_or(|day| day >= since)));
        sessions.retain(|session| !running::is_led(&self.folder, session.number));
        let taken = self.packages_taken(client)?;
        for session in &mut sessions {
            let began = time::read(&session.started_at).map(|time| time.timestamp());
            let in_force = taken.iter().rev().find(|package| began.is_some_and(|began| package.taken_at <= began));
            session.package = in_force.map(|package| package.id.clone());
            session.parts = self.parts(session.number)?;
        }
        Ok(sessions)
    }

    fn parts(&self, session: i64) -> Result<Vec<WholePart>, RecordError> {
        self.read(|db| {
            let mut lines = db.prepare_cached("SELECT json FROM entry WHERE session = ?1 AND part = ?2 ORDER BY seq")?;
            db.prepare_cached("SELECT number, started_at FROM part WHERE session = ?1 ORDER BY number")?
                .query_map([session], |row| Ok((row.get::<_, i64>(0)?, row.get(1)?)))?
                .map(|part| {
                    let (number, started_at) = part?;
                    let lines = lines.query_map([session, number], |row| row.get(0))?.collect::<Result<_, _>>()?;
                    Ok(WholePart { started_at, lines })
                })
                .collect()
        })
    }

    /// Notes how much of these practices has been handed back.
    ///
    /// # Errors
    /// The database refuses.
    pub fn note_handed_back(&mut self, sessions: &[WholeSession], now: Timestamp) -> Result<(), RecordError> {
        self.change(|tx| {
            for session in sessions {
                tx.execute(
                    "INSERT INTO handed_back (session, entries, ended, handed_at) VALUES (?1, ?2, ?3, ?4) ON CONFLICT DO NOTHING",
                    params![
                        session.number,
                        i64::try_from(session.lines().count()).unwrap_or(i64::MAX),
                        session.end.is_some(),
                        now.to_string()
                    ],
                )?;
            }
            Ok(())
        })
    }

    /// Takes practices that were led elsewhere into this client's history: all of them or, where one does not fit, none.
    /// What is here already is not added again.
    ///
    /// # Errors
    /// A practice cannot be read or differs from what came of it before, or the database refuses.
    pub fn receive(&mut self, client: &str, sessions: &[WholeSession]) -> Result<Received, RecordError> {
        let rows = sessions.iter().map(rows_of).collect::<Result<Vec<_>, _>>()?;
        let mut received = Received::default();
        let mut differs = None;
        let done = self.change(|tx| {
            let client = client_row(tx, client)?;
            for (session, rows) in sessions.iter().zip(&rows) {
                match receive_one(tx, client, session, rows)? {
                    Some(Arrival::New) => received.new += 1,
                    Some(Arrival::More) => received.more += 1,
                    Some(Arrival::Known) => received.known += 1,
                    None => {
                        differs = Some(session.started_at.clone());
                        return Err(rusqlite::Error::ExecuteReturnedResults);
                    }
                }
            }
            Ok(())
        });
        match differs {
            Some(started) => Err(RecordError::NotReceived { started, cause: "it differs from what came of it before".to_owned() }),
            None => done.map(|()| received),
        }
    }
}

enum Arrival {
    New,
    More,
    Known,
}

/// Reads every line before anything is written.
fn rows_of(session: &WholeSession) -> Result<Vec<Row>, RecordError> {
    let bad = |cause: String| RecordError::NotReceived { started: session.started_at.chars().take(80).collect(), cause };
    let times = std::iter::once(&session.started_at)
        .chain(session.end.as_ref().map(|(at, _)| at))
        .chain(session.parts.iter().map(|part| &part.started_at));
    for time in times {
        time.parse::<ZonedDateTime>()
            .map_err(|error| bad(format!("{:?} is no time of day: {error}", time.chars().take(80).collect::<String>())))?;
    }
    session
        .lines()
        .enumerate()
        .map(|(index, (part, line))| {
            let entry = parse_line(line).map_err(|cause| bad(format!("its entry {} is no journal entry: {cause}", index + 1)))?;
            // The same check as for an entry made here: nothing but finite numbers, and one line.
            entry_line(&entry).map_err(|error| bad(error.to_string()))?;
            if line.contains(['\n', '\r']) {
                return Err(bad(format!("its entry {} is not on one line", index + 1)));
            }
            Ok(Row { part, entry, line: line.clone() })
        })
        .collect()
}

/// None where it differs from what is here.
fn receive_one(tx: &Transaction<'_>, client: i64, session: &WholeSession, rows: &[Row]) -> Result<Option<Arrival>, rusqlite::Error> {
    // A practice of this very record, read back where it was led, is known by its own number.
    let known: Option<(i64, bool, bool)> = tx
        .query_row(
            "SELECT s.id, s.ended_at IS NOT NULL, r.session IS NULL FROM session s LEFT JOIN received r ON r.session = s.id
             WHERE s.client = ?1 AND s.started_at = ?2 AND coalesce(r.number, s.id) = ?3",
            params![client, session.started_at, session.number],
            |row| Ok((row.get(0)?, row.get(1)?, row.get(2)?)),
        )
        .optional()?;
    let (id, ended, own) = match known {
        Some(known) => known,
        None => (insert_session(tx, client, session)?, false, false),
    };
    let here: Vec<String> = tx
        .prepare_cached("SELECT json FROM entry WHERE session = ?1 ORDER BY seq")?
        .query_map([id], |row| row.get(0))?
        .collect::<Result<_, _>>()?;
    if here.iter().zip(rows).any(|(here, row)| *here != row.line) || (own && rows.len() > here.len()) {
        return Ok(None);
    }
    if own {
        return Ok(Some(Arrival::Known));
    }
    for (number, part) in (1_i64..).zip(&session.parts) {
        tx.execute(
            "INSERT INTO part (session, number, started_at) VALUES (?1, ?2, ?3) ON CONFLICT DO NOTHING",
            params![id, number, part.started_at],
        )?;
    }
    for (seq, row) in (1_i64..).zip(rows).skip(here.len()) {
        let at = row.entry.position;
        tx.prepare_cached(
            "INSERT INTO entry (session, seq, part, at_s, kind, step, set_no, repetition, json) VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8, ?9)",
        )?
        .execute(params![id, seq, row.part, row.entry.at_s, row.entry.fact.kind().name(), at.map(|p| p.step), at.map(|p| p.set), at.map(|p| p.repetition), row.line])?;
    }
    chain::seal_entries(tx, id)?;
    let ends = session.end.as_ref().filter(|_| !ended);
    if let Some((at, reason)) = ends {
        tx.execute("UPDATE session SET ended_at = ?2, end_reason = ?3 WHERE id = ?1", params![id, at, reason])?;
    }
    chain::seal_head(tx, id)?;
    Ok(Some(match known {
        None => Arrival::New,
        Some(_) if rows.len() > here.len() || ends.is_some() => Arrival::More,
        Some(_) => Arrival::Known,
    }))
}

fn insert_session(tx: &Transaction<'_>, client: i64, session: &WholeSession) -> Result<i64, rusqlite::Error> {
    tx.execute(
        "INSERT INTO session (client, routine_title, routine_text, source, software, started_at) VALUES (?1, ?2, ?3, ?4, ?5, ?6)",
        params![client, session.routine_title, session.routine_text, Source::Live.as_str(), session.software, session.started_at],
    )?;
    let id = tx.last_insert_rowid();
    tx.execute("INSERT INTO received (session, number, package) VALUES (?1, ?2, ?3)", params![id, session.number, session.package])?;
    Ok(id)
}

#[cfg(test)]
#[path = "tests/exchange.rs"]
mod tests;
