//! The SQLite record: sessions and their entries, each append its own transaction.

use super::chain;
use super::error::{self, RecordError};
use super::folder::DATABASE_NAME;
use super::guard::{self, Guard};
use super::passphrase::Key;
use super::{database, folder, running, sound_answer, time};
use jiff::{Span, ZonedDateTime};
use model::{Entry, Fact, SessionId, Source, entry_line, parse_line};
use rusqlite::{Connection, OptionalExtension, Transaction, TransactionBehavior, params};
use std::path::{Path, PathBuf};

/// What is known when a session begins.
#[derive(Debug, Clone)]
pub struct NewSession<'a> {
    /// Who practises; any name, the same each time.
    pub client: &'a str,
    pub routine_title: &'a str,
    /// The routine file as it was read.
    pub routine_text: &'a str,
    pub source: Source,
    /// Of a baseline or a re-test: what was led. None: a practice.
    pub protocol: Option<&'a str>,
    /// Name and version of this program.
    pub software: &'a str,
    /// Local time of day at the first sample.
    pub started_at: &'a ZonedDateTime,
}

/// The record in one data folder. Several processes may have it open at once.
#[derive(Debug)]
pub struct Store {
    pub(super) connection: Connection,
    pub(super) folder: PathBuf,
    /// What the file is encrypted with.
    pub(super) key: Option<Key>,
    /// Held while this process leads a session.
    claim: Option<running::Claim>,
    /// Keeps whoever wants to replace the file waiting. After the connection, which is closed first.
    _guard: Option<Guard>,
}

impl Store {
    /// Opens the record in `folder`, creating both where they are missing.
    ///
    /// # Errors
    /// The folder cannot be made; the file is damaged, foreign or from a newer version, or encrypted and the passphrase is missing
    /// or wrong (it is left as it is).
    pub fn open(folder: &Path) -> Result<Self, RecordError> {
        folder::create(folder)?;
        folder::close(folder);
        let path = folder.join(DATABASE_NAME);
        // Of several that make a new record one is first: the file's salt is made by chance.
        if database::form(&path)? == database::Form::Absent
            && let Some(_alone) = guard::alone_now(folder)?
            && database::form(&path)? == database::Form::Absent
        {
            database::open(&path)?;
        }
        Self::open_guarded(folder, guard::shared(folder)?)
    }

    /// Opens the record under a guard that is held already.
    pub(super) fn open_guarded(folder: &Path, guard: Guard) -> Result<Self, RecordError> {
        Ok(Self { _guard: Some(guard), ..Self::open_held(folder)? })
    }

    /// Opens the record for somebody who holds a guard as long as the store is there.
    pub(super) fn open_held(folder: &Path) -> Result<Self, RecordError> {
        let (connection, key) = database::open(&folder.join(DATABASE_NAME))?;
        Ok(Self { connection, folder: folder.to_path_buf(), key, claim: None, _guard: None })
    }

    /// Whether the record is encrypted at rest.
    #[must_use]
    pub fn is_encrypted(&self) -> bool {
        self.key.is_some()
    }

    /// Opens the record in `folder` if there is one, and creates nothing.
    ///
    /// # Errors
    /// As [`Store::open`].
    pub fn open_existing(folder: &Path) -> Result<Option<Self>, RecordError> {
        // A link that leads nowhere is there, too, and is told.
        if folder.join(DATABASE_NAME).symlink_metadata().is_ok() { Self::open(folder).map(Some) } else { Ok(None) }
    }

    /// Opens the record in `folder`, if there is one, to read it: also where the disk is full or the folder cannot be written, as long as
    /// no log waits to be taken in. What would write is refused by the database then.
    ///
    /// # Errors
    /// As [`Store::open`].
    pub fn open_to_read(folder: &Path) -> Result<Option<Self>, RecordError> {
        let error = match Self::open_existing(folder) {
            Err(error) if error.may_pass() => error,
            other => return other,
        };
        match database::open_still(&folder.join(DATABASE_NAME)) {
            Ok(Some((connection, key))) => {
                Ok(Some(Self { connection, folder: folder.to_path_buf(), key, claim: None, _guard: guard::shared(folder).ok() }))
            }
            // The first failure says more.
            _ => Err(error),
        }
    }

    /// The database file.
    #[must_use]
    pub fn path(&self) -> PathBuf {
        self.folder.join(DATABASE_NAME)
    }

    /// Begins a session. It is this process's until it ends or the store is dropped.
    ///
    /// # Errors
    /// The database refuses.
    pub fn begin(&mut self, new: &NewSession<'_>) -> Result<SessionId, RecordError> {
        self.choose_safety(new.source)?;
        let id = self.change(|tx| {
            tx.execute("INSERT INTO client (name) VALUES (?1) ON CONFLICT (name) DO NOTHING", [new.client])?;
            tx.execute(
                "INSERT INTO session (client, routine_title, routine_text, source, software, started_at)
                 SELECT id, ?2, ?3, ?4, ?5, ?6 FROM client WHERE name = ?1",
                params![new.client, new.routine_title, new.routine_text, new.source.as_str(), new.software, new.started_at.to_string()],
            )?;
            let id = tx.last_insert_rowid();
            if let Some(protocol) = new.protocol {
                tx.execute("INSERT INTO assessment (session, protocol) VALUES (?1, ?2)", params![id, protocol])?;
            }
            tx.execute("INSERT INTO part (session, number, started_at) VALUES (?1, 1, ?2)", params![id, new.started_at.to_string()])?;
            chain::seal_head(tx, id)?;
            Ok(id)
        })?;
        self.claim = running::claim(&self.folder, id)?;
        Ok(SessionId(id))
    }

    /// Goes on with an interrupted session: what is appended now is its next part, with a sample clock from 0.
    ///
    /// # Errors
    /// There is no such session, it has ended, or another process is leading it.
    pub fn resume(&mut self, session: SessionId, now: &ZonedDateTime) -> Result<(), RecordError> {
        let id = session.0;
        let claim = running::claim(&self.folder, id)?.ok_or(RecordError::UnderWay { id })?;
        let (source, ended): (String, bool) = self
            .read(|db| {
                db.query_row("SELECT source, ended_at IS NOT NULL FROM session WHERE id = ?1", [id], |row| Ok((row.get(0)?, row.get(1)?)))
                    .optional()
            })?
            .ok_or(RecordError::NoSuchSession { id })?;
        if ended {
            return Err(RecordError::Ended { id });
        }
        self.choose_safety(Source::from_word(&source).unwrap_or(Source::Live))?;
        self.change(|tx| {
            tx.execute(
                "INSERT INTO part (session, number, started_at) SELECT ?1, max(number) + 1, ?2 FROM part WHERE session = ?1",
                params![id, now.to_string()],
            )?;
            chain::seal_head(tx, id)
        })?;
        self.claim = Some(claim);
        Ok(())
    }

    /// Keeps one entry; when this returns it is committed. An agreement that was given counts from here on;
    /// the end of the session closes it.
    ///
    /// # Errors
    /// The session has ended, a time is not finite, or the database refuses.
    pub fn append(&mut self, session: SessionId, entry: &Entry) -> Result<(), RecordError> {
        let json = entry_line(entry)?;
        let kept = self.change(|tx| keep_line(tx, session.0, None, entry, &json))?;
        if !kept {
            self.summary(session)?;
            return Err(RecordError::Ended { id: session.0 });
        }
        if matches!(entry.fact, Fact::SessionEnded { .. }) {
            self.claim = None;
        }
        Ok(())
    }

    /// Closes an interrupted session that nobody will go on with. One that has ended stays as it is.
    ///
    /// # Errors
    /// There is no such session, or another process is leading it.
    pub fn abandon(&mut self, session: SessionId, now: &ZonedDateTime) -> Result<(), RecordError> {
        self.summary(session)?;
        let Some(_claim) = running::claim(&self.folder, session.0)? else {
            return Err(RecordError::UnderWay { id: session.0 });
        };
        self.change(|tx| {
            tx.execute(
                "UPDATE session SET ended_at = ?2, end_reason = 'abandoned' WHERE id = ?1 AND ended_at IS NULL",
                params![session.0, now.to_string()],
            )?;
            chain::seal_head(tx, session.0)
        })?;
        Ok(())
    }

    /// Every entry of a session in order.
    ///
    /// # Errors
    /// There is no such session, or a stored line cannot be read.
    pub fn entries(&self, session: SessionId) -> Result<Vec<Entry>, RecordError> {
        self.summary(session)?;
        self.lines(session)?
            .iter()
            .enumerate()
            .map(|(index, line)| parse_line(line).map_err(|cause| self.bad_line(session, index + 1, cause)))
            .collect()
    }

    pub(super) fn lines(&self, session: SessionId) -> Result<Vec<String>, RecordError> {
        self.read(|db| {
            db.prepare_cached("SELECT json FROM entry WHERE session = ?1 ORDER BY seq")?.query_map([session.0], |row| row.get(0))?.collect()
        })
    }

    pub(super) fn bad_line(&self, session: SessionId, line: usize, cause: String) -> RecordError {
        RecordError::Line(model::LineError::BadLine { place: format!("{}, practice {}", self.path().display(), session.0), line, cause })
    }

    pub(super) fn read<T>(&self, query: impl FnOnce(&Connection) -> Result<T, rusqlite::Error>) -> Result<T, RecordError> {
        query(&self.connection).map_err(|error| self.blamed(&error))
    }

    /// What stands there wrongly is named by its entry, where the checksums know it.
    fn blamed(&self, error: &rusqlite::Error) -> RecordError {
        if error::is_content(error)
            && let Ok(damage) = chain::damage(&self.connection)
            && !damage.is_empty()
        {
            return RecordError::DamagedEntries { path: self.path(), damage };
        }
        RecordError::from_sqlite(&self.path(), error)
    }

    pub(super) fn change<T>(&mut self, work: impl FnOnce(&Transaction<'_>) -> Result<T, rusqlite::Error>) -> Result<T, RecordError> {
        let path = self.path();
        // The write lock from the start: a transaction that reads first and writes later may fail instead of waiting.
        let run = || {
            let tx = self.connection.transaction_with_behavior(TransactionBehavior::Immediate)?;
            let result = work(&tx)?;
            tx.commit()?;
            Ok(result)
        };
        run().map_err(|error| RecordError::from_sqlite(&path, &error))
    }

    /// A killed process loses nothing either way. FULL also waits for the disk, so that a power cut loses nothing: worth
    /// the few milliseconds when a person has worked for the entry, not for a replay that can be run again.
    fn choose_safety(&self, source: Source) -> Result<(), RecordError> {
        let level = if source == Source::Live { "FULL" } else { "NORMAL" };
        self.read(|db| db.pragma_update(None, "synchronous", level))
    }
}

/// Adds one entry to a practice that has not ended, with all that follows from it; `line` is the entry as it is kept. `part`: of an entry
/// that could not be kept when it happened; none: the present one. False where the practice is not there, or has ended and the entry is new.
pub(super) fn keep_line(tx: &Transaction<'_>, id: i64, part: Option<i64>, entry: &Entry, line: &str) -> Result<bool, rusqlite::Error> {
    let (at, kind) = (entry.position, entry.fact.kind().name());
    let rows = tx
        .prepare_cached(
            "INSERT INTO entry (session, seq, part, at_s, kind, step, set_no, repetition, json)
             SELECT s.id, (SELECT coalesce(max(seq), 0) + 1 FROM entry WHERE session = s.id),
                    coalesce(?8, (SELECT max(number) FROM part WHERE session = s.id)), ?2, ?3, ?4, ?5, ?6, ?7
             FROM session s WHERE s.id = ?1 AND (s.ended_at IS NULL OR ?8 IS NOT NULL)",
        )?
        .execute(params![id, entry.at_s, kind, at.map(|p| p.step), at.map(|p| p.set), at.map(|p| p.repetition), line, part])?;
    if rows == 0 {
        return Ok(false);
    }
    chain::seal_entries(tx, id)?;
    match &entry.fact {
        Fact::Agreement { given: true, exercises, .. } => {
            let now = moment(tx, id, entry.at_s)?;
            for exercise in exercises {
                tx.execute(
                    "INSERT INTO agreement (client, exercise, session, given_at) SELECT client, ?2, id, ?3 FROM session
                     WHERE id = ?1 ON CONFLICT DO NOTHING",
                    params![id, exercise, now],
                )?;
            }
        }
        Fact::SoundConsent { given: Some(yes), days } => {
            let now = moment(tx, id, entry.at_s)?;
            // A "yes" in a recording is nobody's.
            let client: Option<String> = tx
                .query_row(
                    "SELECT c.name FROM session s JOIN client c ON c.id = s.client WHERE s.id = ?1 AND s.source = 'live'",
                    [id],
                    |row| row.get(0),
                )
                .optional()?;
            if let Some(client) = client {
                sound_answer::answered(tx, &client, *yes, *days, &now)?;
            }
        }
        Fact::SessionEnded { reason, .. } => {
            let now = moment(tx, id, entry.at_s)?;
            tx.execute("UPDATE session SET ended_at = ?2, end_reason = ?3 WHERE id = ?1", params![id, now, reason.as_str()])?;
            chain::seal_head(tx, id)?;
        }
        _ => {}
    }
    Ok(true)
}

/// The time of day at `at_s` of the session's present part. Taken from the sample clock, so that a replay keeps the same
/// lengths however fast it runs.
fn moment(tx: &Transaction<'_>, session: i64, at_s: f64) -> Result<String, rusqlite::Error> {
    let started: String =
        tx.query_row("SELECT started_at FROM part WHERE session = ?1 ORDER BY number DESC LIMIT 1", [session], |row| row.get(0))?;
    Ok(later(&started, at_s).map_or(started, |moment| moment.to_string()))
}

/// `at_s` seconds after a stored time of day; none where the text is no time.
pub(super) fn later(started: &str, at_s: f64) -> Option<ZonedDateTime> {
    let started = time::read(started)?;
    // Saturates, and is 0 for NaN; a span too long for the calendar is none.
    let span = Span::new().try_milliseconds((at_s * 1000.0).round() as i64).ok()?;
    started.checked_add(span).ok()
}

#[cfg(test)]
#[path = "tests/store.rs"]
mod tests;
