//! Opens the SQLite file safely and brings it to the present form.

use super::RecordError;
use rusqlite::{Connection, OpenFlags, TransactionBehavior};
use std::path::Path;
use std::time::Duration;

/// Marks the file as ours in SQLite's header: "TIDE".
const APPLICATION_ID: i64 = 0x5449_4445;

/// How long to wait for another process, which holds the file for milliseconds only.
const BUSY: Duration = Duration::from_secs(5);

/// What takes the file from form n to form n + 1; `user_version` counts those that were done. Never changed, only added to.
const MIGRATIONS: [&str; 4] =
    [include_str!("migration_1.sql"), include_str!("migration_2.sql"), include_str!("migration_3.sql"), include_str!("migration_5.sql")];

/// Opens the database, creating or migrating it. A file that is damaged, foreign or newer is left as it is.
pub(super) fn open(path: &Path) -> Result<Connection, RecordError> {
    if std::fs::metadata(path).is_ok_and(|data| data.len() > 0) {
        inspect(path)?;
    }
    let wrap = |error: rusqlite::Error| RecordError::from_sqlite(path, &error);
    let mut connection = Connection::open(path).map_err(wrap)?;
    connection.busy_timeout(BUSY).map_err(wrap)?;
    // WAL: a reader (`tidecount history`) never waits for the practice, and a commit is one append.
    switch_to_wal(&connection).map_err(wrap)?;
    connection.pragma_update(None, "foreign_keys", true).map_err(wrap)?;
    migrate(&mut connection).map_err(wrap)?;
    Ok(connection)
}

/// Looks at the file through a connection that cannot write.
fn inspect(path: &Path) -> Result<(), RecordError> {
    let wrap = |error: rusqlite::Error| RecordError::from_sqlite(path, &error);
    let damaged = |cause: String| RecordError::Damaged { path: path.to_path_buf(), cause };
    let connection =
        Connection::open_with_flags(path, OpenFlags::SQLITE_OPEN_READ_ONLY | OpenFlags::SQLITE_OPEN_NO_MUTEX).map_err(wrap)?;
    connection.busy_timeout(BUSY).map_err(wrap)?;
    let number = |pragma: &str| connection.pragma_query_value(None, pragma, |row| row.get::<_, i64>(0)).map_err(wrap);
    let (version, id) = (number("user_version")?, number("application_id")?);
    let tables: i64 = connection.query_row("SELECT count(*) FROM sqlite_schema", [], |row| row.get(0)).map_err(wrap)?;
    if id != APPLICATION_ID && (tables > 0 || version != 0) {
        return Err(damaged("it is a database of another program".to_owned()));
    }
    let known = MIGRATIONS.len() as i64;
    if version > known {
        return Err(RecordError::Newer { path: path.to_path_buf(), found: version, known });
    }
    let verdict: String = connection.query_row("PRAGMA quick_check(1)", [], |row| row.get(0)).map_err(wrap)?;
    if verdict == "ok" { Ok(()) } else { Err(damaged(verdict)) }
}

/// SQLite does not wait by itself where two processes switch a new file at the same instant.
fn switch_to_wal(connection: &Connection) -> Result<(), rusqlite::Error> {
    let mut tries = 0;
    loop {
        let done = connection.pragma_update_and_check(None, "journal_mode", "wal", |row| row.get::<_, String>(0));
        match done {
            Err(error) if error.sqlite_error_code() == Some(rusqlite::ErrorCode::DatabaseBusy) && tries < 100 => {
                tries += 1;
                std::thread::sleep(BUSY / 100);
            }
            other => return other.map(|_| ()),
        }
    }
}

fn migrate(connection: &mut Connection) -> Result<(), rusqlite::Error> {
    // The write lock first, so that of two processes the second finds the work done.
    let change = connection.transaction_with_behavior(TransactionBehavior::Immediate)?;
    let version: i64 = change.pragma_query_value(None, "user_version", |row| row.get(0))?;
    let done = usize::try_from(version).unwrap_or(0);
    for sql in MIGRATIONS.iter().skip(done) {
        change.execute_batch(sql)?;
    }
    if done < MIGRATIONS.len() {
        change.pragma_update(None, "application_id", APPLICATION_ID)?;
        change.pragma_update(None, "user_version", MIGRATIONS.len() as i64)?;
    }
    change.commit()
}

#[cfg(test)]
#[path = "tests/database.rs"]
mod tests;
