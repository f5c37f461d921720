//! Entries that a full disk could not take: a small file beside the record, as large from the beginning as it will ever get, holds them
//! until there is room. It is a database like the record, encrypted with the same key, whose pages are there already: writing into it
//! needs no room on the disk. (Not so on file systems that write each block to a new place.)

use super::database::connect;
use super::error::RecordError;
use super::folder::{DATABASE_NAME, beside};
use super::passphrase::Key;
use super::store::{Store, keep_line};
use super::{copy, running};
use model::{Entry, entry_line, parse_line};
use rusqlite::{Connection, OpenFlags, OptionalExtension, params};
use std::collections::BTreeMap;
use std::path::{Path, PathBuf};

/// Room that is set aside: hundreds of entries, more than an hour of practice.
const BYTES: i64 = 256 << 10;
/// A page of SQLite and of SQLCipher, bytes.
const PAGE: i64 = 4096;
/// How the file's name ends.
const ENDING: &str = ".waiting";
/// The other file in the data folder that a full disk can do without.
const VOICE_CACHE: &str = "voice-cache";

/// The file, ready to be written to.
#[derive(Debug)]
pub(super) struct Waiting {
    connection: Connection,
}

/// Beside the record of this folder.
pub(super) fn path_in(folder: &Path) -> PathBuf {
    of(&folder.join(DATABASE_NAME))
}

/// Beside this record.
pub(super) fn of(record: &Path) -> PathBuf {
    beside(record, ENDING)
}

/// A rollback journal in a file would need room; in memory it is lost only where the computer goes down in the middle of a write, on a
/// disk that is full.
fn open(path: &Path, flags: OpenFlags, key: Option<&Key>) -> Result<Connection, rusqlite::Error> {
    let connection = connect(path, flags, key)?;
    // What is freed must stay in the file. Decided before there is a table.
    connection.execute_batch("PRAGMA auto_vacuum = NONE")?;
    connection.pragma_update_and_check(None, "journal_mode", "memory", |_| Ok(()))?;
    connection.pragma_update_and_check(None, "secure_delete", true, |_| Ok(()))?;
    Ok(connection)
}

impl Waiting {
    /// Sets the room aside, where it is not yet.
    pub(super) fn set_aside(store: &Store) -> Result<Self, RecordError> {
        let path = path_in(&store.folder);
        let wrap = |error: rusqlite::Error| RecordError::from_sqlite(&path, &error);
        if path.symlink_metadata().is_err() {
            disk::private::append(&path, false).map_err(|error| RecordError::from_io(&path, &error))?;
        }
        let connection = open(&path, OpenFlags::SQLITE_OPEN_READ_WRITE, store.key.as_ref()).map_err(wrap)?;
        let prepare = || -> Result<(), rusqlite::Error> {
            connection.execute_batch(
                "DROP TABLE IF EXISTS filler;
                 CREATE TABLE IF NOT EXISTS waiting (session INTEGER NOT NULL, seq INTEGER NOT NULL, part INTEGER NOT NULL, line TEXT NOT NULL,
                 PRIMARY KEY (session, seq)) STRICT, WITHOUT ROWID",
            )?;
            let free: i64 = connection.pragma_query_value(None, "freelist_count", |row| row.get(0))?;
            if free * PAGE < BYTES && !has_rows(&connection)? {
                // Pages that were on the disk once and are free now stay in the file. What is freed before it is on the disk never gets there.
                connection.execute_batch(&format!("CREATE TABLE filler (bytes BLOB); INSERT INTO filler VALUES (randomblob({BYTES}))"))?;
                connection.execute_batch("DROP TABLE filler")?;
            }
            Ok(())
        };
        prepare().map_err(wrap)?;
        Ok(Self { connection })
    }

    /// Keeps these entries of a practice until the record can take them. Those that are here already stay.
    pub(super) fn keep<'a>(&mut self, store: &Store, session: i64, entries: impl Iterator<Item = &'a Entry>) -> Result<(), RecordError> {
        let (first, part): (i64, i64) = store.read(|db| {
            db.query_row(
                "SELECT (SELECT coalesce(max(seq), 0) + 1 FROM entry WHERE session = ?1), (SELECT max(number) FROM part WHERE session = ?1)",
                [session],
                |row| Ok((row.get(0)?, row.get(1)?)),
            )
        })?;
        let lines = entries.map(entry_line).collect::<Result<Vec<_>, _>>()?;
        let write = || -> Result<(), rusqlite::Error> {
            let tx = self.connection.unchecked_transaction()?;
            for (seq, line) in (first..).zip(&lines) {
                tx.execute(
                    "INSERT OR IGNORE INTO waiting (session, seq, part, line) VALUES (?1, ?2, ?3, ?4)",
                    params![session, seq, part, line],
                )?;
            }
            tx.commit()
        };
        write().map_err(|error| RecordError::from_sqlite(&path_in(&store.folder), &error))
    }

    /// The record has them after all.
    pub(super) fn clear(&mut self, session: i64) -> Result<(), rusqlite::Error> {
        self.connection.execute("DELETE FROM waiting WHERE session = ?1", [session]).map(|_| ())
    }
}

fn has_rows(db: &Connection) -> Result<bool, rusqlite::Error> {
    db.query_row("SELECT EXISTS (SELECT 1 FROM waiting)", [], |row| row.get(0))
}

/// Makes room on a full disk: spoken lines are made again when they are needed. True where something went.
pub(super) fn make_room(folder: &Path) -> bool {
    let files = std::fs::read_dir(folder.join(VOICE_CACHE)).into_iter().flatten().flatten();
    files
        .filter(|entry| entry.path().extension().is_some_and(|ending| ending == "wav"))
        .filter(|entry| std::fs::remove_file(entry.path()).is_ok())
        .count()
        > 0
}

impl Store {
    /// Takes in what waits beside the record, and gives how many entries those were. What belongs to a practice that is led now is left to
    /// it.
    ///
    /// # Errors
    /// The disk is still full, or the file cannot be read. What waits stays where it is then.
    pub(super) fn take_waiting(&mut self) -> Result<u64, RecordError> {
        let path = path_in(&self.folder);
        if path.symlink_metadata().is_err() {
            return Ok(0);
        }
        let wrap = |error: rusqlite::Error| RecordError::from_sqlite(&path, &error);
        let mut waiting = Waiting { connection: open(&path, OpenFlags::SQLITE_OPEN_READ_WRITE, self.key.as_ref()).map_err(wrap)? };
        let rows: Vec<(i64, i64, String)> = {
            let db = &waiting.connection;
            // Broken off before it was ready.
            let table: Option<i64> =
                db.query_row("SELECT 1 FROM sqlite_schema WHERE name = 'waiting'", [], |row| row.get(0)).optional().map_err(wrap)?;
            if table.is_none() {
                return Ok(0);
            }
            let mut query = db.prepare("SELECT session, part, line FROM waiting ORDER BY session, seq").map_err(wrap)?;
            let rows = query.query_map([], |row| Ok((row.get(0)?, row.get(1)?, row.get(2)?))).map_err(wrap)?;
            rows.collect::<Result<_, _>>().map_err(wrap)?
        };
        let mut sessions: BTreeMap<i64, Vec<(i64, String)>> = BTreeMap::new();
        for (session, part, line) in rows {
            sessions.entry(session).or_default().push((part, line));
        }
        let mut taken = 0;
        for (session, lines) in sessions {
            if running::is_led(&self.folder, session) {
                continue;
            }
            taken += self.take_lines(session, &lines)?;
            waiting.clear(session).map_err(wrap)?;
        }
        Ok(taken)
    }

    fn take_lines(&mut self, session: i64, lines: &[(i64, String)]) -> Result<u64, RecordError> {
        self.change(|tx| {
            let mut taken = 0;
            for (part, line) in lines {
                // After a crash between the two files it may be in both.
                let known: bool = tx.query_row(
                    "SELECT EXISTS (SELECT 1 FROM entry WHERE session = ?1 AND part = ?2 AND json = ?3)",
                    params![session, part, line],
                    |row| row.get(0),
                )?;
                if let (false, Ok(entry)) = (known, parse_line(line))
                    && keep_line(tx, session, Some(*part), &entry, line)?
                {
                    taken += 1;
                }
            }
            Ok(taken)
        })
    }

    /// Before the record gets another key or another content: what waits is taken in, and the file goes; the next practice sets one aside
    /// again.
    ///
    /// # Errors
    /// What waits cannot be taken in.
    pub(super) fn empty_waiting(&mut self) -> Result<(), RecordError> {
        self.take_waiting()?;
        copy::wipe(&path_in(&self.folder));
        Ok(())
    }
}

#[cfg(test)]
#[path = "tests/waiting.rs"]
mod tests;
