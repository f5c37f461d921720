//! Opens the SQLite file safely and brings it to the present form. Every way to the record leads through here.

use super::chain;
use super::error::RecordError;
use super::passphrase::{self, Key, Passphrase};
use rusqlite::{Connection, OpenFlags, TransactionBehavior};
use std::io::Read;
use std::path::{Path, PathBuf};
use std::sync::atomic::{AtomicU32, Ordering};
use std::sync::{Mutex, MutexGuard, PoisonError};
use std::time::Duration;

/// Marks the file as ours in SQLite's header: "TIDE".
pub(super) const APPLICATION_ID: i64 = 0x5449_4445;

/// How long to wait for another process, which holds the file for milliseconds only.
const BUSY: Duration = Duration::from_secs(5);

/// What takes the file from form n to form n + 1; `user_version` counts those that were done. Never changed, only added to.
const MIGRATIONS: [&str; 9] = [
    include_str!("migration_1.sql"),
    include_str!("migration_2.sql"),
    include_str!("migration_3.sql"),
    include_str!("migration_4.sql"),
    include_str!("migration_5.sql"),
    include_str!("migration_6.sql"),
    include_str!("migration_7.sql"),
    include_str!("migration_8.sql"),
    include_str!("migration_9.sql"),
];
/// From this form on the record has checksums.
const SUMMED: usize = 9;

/// The first bytes of every SQLite file that is not encrypted (<https://www.sqlite.org/fileformat.html>, section 1.3).
const PLAIN_HEADER: &[u8; 16] = b"SQLite format 3\0";

/// What stands at a path.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Form {
    /// Nothing.
    Absent,
    /// A file of 0 bytes. A record never is one: [`make`] gives it its name when it is whole.
    Empty,
    Plain,
    /// Encrypted, beginning with this salt; or no database at all, which nobody can tell without the key.
    Sealed([u8; 16]),
}

/// Looks at the first bytes alone.
///
/// # Errors
/// The file cannot be read, or is surely no database.
pub(super) fn form(path: &Path) -> Result<Form, RecordError> {
    let failed = |error: std::io::Error| RecordError::Database { path: path.to_path_buf(), cause: error.to_string() };
    match std::fs::metadata(path) {
        // To open a pipe is to wait until somebody writes to it.
        Ok(data) if !data.is_file() => return Err(RecordError::NoFile { path: path.to_path_buf() }),
        Ok(data) if data.len() == 0 => return Ok(Form::Empty),
        Ok(_) => {}
        Err(error) if error.kind() != std::io::ErrorKind::NotFound => return Err(failed(error)),
        // The disk that it lies on is not there now: a new record would hide the old one.
        Err(_) if path.symlink_metadata().is_ok() => return Err(RecordError::NoFile { path: path.to_path_buf() }),
        Err(_) => return Ok(Form::Absent),
    }
    let mut head = Vec::new();
    let file = std::fs::File::open(path).map_err(failed)?;
    file.take(16).read_to_end(&mut head).map_err(|error| RecordError::from_io(path, &error))?;
    if head == PLAIN_HEADER {
        return Ok(Form::Plain);
    }
    match <[u8; 16]>::try_from(head.as_slice()) {
        // Sixteen bytes by chance are all text once in 50,000 files.
        Ok(salt) if !head.iter().all(|byte| byte.is_ascii_graphic() || byte.is_ascii_whitespace()) => Ok(Form::Sealed(salt)),
        _ => Err(RecordError::Damaged { path: path.to_path_buf(), cause: "it is no database".to_owned() }),
    }
}

/// The key of the file at `path`, as it is remembered, given or asked for; none for one that is not encrypted.
///
/// # Errors
/// There is no passphrase, or it does not open the file.
pub(super) fn key_of(path: &Path) -> Result<Option<Key>, RecordError> {
    match form(path)? {
        Form::Absent | Form::Empty => Passphrase::given()?.map(|passphrase| Key::fresh(&passphrase)).transpose(),
        Form::Plain => Ok(None),
        Form::Sealed(salt) => passphrase::unlock(path, salt, |key| opens(path, key)).map(Some),
    }
}

/// Whether this key opens the file. The first page tells; it carries a check over its own bytes.
pub(super) fn opens(path: &Path, key: &Key) -> Result<bool, RecordError> {
    match connect_to_look(path, Some(key)) {
        Ok(_) => Ok(true),
        Err(error) if error.sqlite_error_code() == Some(rusqlite::ErrorCode::NotADatabase) => Ok(false),
        Err(error) => Err(RecordError::from_sqlite(path, &error)),
    }
}

/// A connection that can read the file, where the key is right.
pub(super) fn connect(path: &Path, flags: OpenFlags, key: Option<&Key>) -> Result<Connection, rusqlite::Error> {
    let connection = Connection::open_with_flags(path, flags | OpenFlags::SQLITE_OPEN_NO_MUTEX)?;
    connection.busy_timeout(BUSY)?;
    if let Some(key) = key {
        // SQLCipher writes to standard error by itself otherwise.
        connection.query_row("PRAGMA cipher_log_level = NONE", [], |_| Ok(()))?;
        connection.pragma_update(None, "key", key.spec().as_str())?;
    }
    Ok(connection)
}

/// A connection that cannot write. What a crash left half-written is taken back first, as every program that opens the file for
/// writing does; without that nobody who only looks can read it.
pub(super) fn connect_to_look(path: &Path, key: Option<&Key>) -> Result<Connection, rusqlite::Error> {
    let look = |flags| {
        let connection = connect(path, flags, key)?;
        connection.pragma_query_value(None, "user_version", |row| row.get::<_, i64>(0)).map(|_| connection)
    };
    match look(OpenFlags::SQLITE_OPEN_READ_ONLY) {
        Err(error) if error.sqlite_error().is_some_and(|error| error.extended_code == rusqlite::ffi::SQLITE_READONLY_ROLLBACK) => {
            look(OpenFlags::SQLITE_OPEN_READ_WRITE)?;
            look(OpenFlags::SQLITE_OPEN_READ_ONLY)
        }
        looked => looked,
    }
}

/// Opens the database, creating or migrating it. A file that is damaged, foreign or newer is left as it is.
pub(super) fn open(path: &Path) -> Result<(Connection, Option<Key>), RecordError> {
    match form(path)? {
        Form::Empty => return Err(RecordError::Emptied { path: path.to_path_buf() }),
        Form::Absent => {
            let key = key_of(path)?;
            make(path, key.as_ref())?;
            key.iter().for_each(passphrase::remember);
        }
        Form::Plain | Form::Sealed(_) => {}
    }
    let key = key_of(path)?;
    if key.is_none() && Passphrase::given()?.is_some() {
        passphrase::warn_of_plain(path);
    }
    inspect(path, key.as_ref())?;
    let connection = open_with(path, key.as_ref())?;
    Ok((connection, key))
}

/// Makes a new record, whole under its name or not there at all: SQLite begins with a file of 0 bytes, and after a crash nobody could tell
/// that from a record that was cut to nothing. Where another program was faster, its record stays.
pub(super) fn make(path: &Path, key: Option<&Key>) -> Result<(), RecordError> {
    static MADE: AtomicU32 = AtomicU32::new(0);
    let number = MADE.fetch_add(1, Ordering::Relaxed);
    let fresh = super::folder::beside(path, &format!(".{}-{number}.new", std::process::id()));
    let wrap = |error: std::io::Error| RecordError::from_io(path, &error);
    let whole = || {
        // Left by a process of the same number that was killed.
        let _ = std::fs::remove_file(&fresh);
        disk::private::create_new(&fresh).map_err(wrap)?;
        drop(open_with(&fresh, key)?);
        std::fs::File::open(&fresh).and_then(|file| file.sync_all()).map_err(wrap)?;
        match std::fs::hard_link(&fresh, path) {
            Err(_) if !path.exists() => std::fs::rename(&fresh, path).map_err(wrap),
            _ => Ok(()),
        }
    };
    let made = whole();
    for ending in ["", "-wal", "-shm"] {
        // Nothing is left of it but its right name.
        let _ = std::fs::remove_file(super::folder::beside(&fresh, ending));
    }
    made
}

/// As [`open`], with a key that is known to be right; the file is not looked through.
pub(super) fn open_with(path: &Path, key: Option<&Key>) -> Result<Connection, RecordError> {
    let wrap = |error: rusqlite::Error| RecordError::from_sqlite(path, &error);
    let mut connection = connect(path, OpenFlags::SQLITE_OPEN_READ_WRITE | OpenFlags::SQLITE_OPEN_CREATE, key).map_err(wrap)?;
    // WAL: a reader (`tidecount history`) never waits for the practice, and a commit is one append.
    switch_to_wal(&connection).map_err(wrap)?;
    connection.pragma_update(None, "foreign_keys", true).map_err(wrap)?;
    migrate(&mut connection).map_err(wrap)?;
    Ok(connection)
}

/// Opens a file that nothing can be written beside, as it stands; none where it is not whole by itself or not of the present form.
pub(super) fn open_still(path: &Path) -> Result<Option<(Connection, Option<Key>)>, RecordError> {
    let wrap = |error: rusqlite::Error| RecordError::from_sqlite(path, &error);
    if std::fs::metadata(super::folder::beside(path, "-wal")).is_ok_and(|log| log.len() > 0) {
        return Ok(None);
    }
    // Characters that mean something in a name of this form (<https://www.sqlite.org/uri.html>).
    let name: String = path
        .to_string_lossy()
        .chars()
        .map(|c| if matches!(c, '%' | '?' | '#') { format!("%{:02X}", u32::from(c)) } else { c.to_string() })
        .collect();
    let name = PathBuf::from(format!("file:{name}?immutable=1"));
    let flags = OpenFlags::SQLITE_OPEN_READ_ONLY | OpenFlags::SQLITE_OPEN_URI;
    let works = |key: Option<&Key>| {
        connect(&name, flags, key)
            .and_then(|db| db.pragma_query_value(None, "user_version", |row| row.get::<_, i64>(0)).map(|version| (db, version)))
    };
    let key = match form(path)? {
        Form::Absent | Form::Empty => return Ok(None),
        Form::Plain => None,
        Form::Sealed(salt) => Some(passphrase::unlock(path, salt, |key| Ok(works(Some(key)).is_ok()))?),
    };
    let (connection, version) = works(key.as_ref()).map_err(wrap)?;
    let id: i64 = connection.pragma_query_value(None, "application_id", |row| row.get(0)).map_err(wrap)?;
    Ok((id == APPLICATION_ID && version == MIGRATIONS.len() as i64).then_some((connection, key)))
}

/// Files that this process has looked through, and how long they were then: a page that opens the record for each request does not
/// look through it each time.
static SEEN: Mutex<Vec<(PathBuf, u64)>> = Mutex::new(Vec::new());

fn seen() -> MutexGuard<'static, Vec<(PathBuf, u64)>> {
    SEEN.lock().unwrap_or_else(PoisonError::into_inner)
}

/// Looks at the file through a connection that cannot write.
pub(super) fn inspect(path: &Path, key: Option<&Key>) -> Result<(), RecordError> {
    let wrap = |error: rusqlite::Error| RecordError::from_sqlite(path, &error);
    let damaged = |cause: String| RecordError::Damaged { path: path.to_path_buf(), cause };
    let connection = connect_to_look(path, key).map_err(wrap)?;
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
    let length = std::fs::metadata(path).map_or(0, |data| data.len());
    if seen().iter().any(|(known, before)| known == path && length >= *before) {
        return Ok(());
    }
    let verdict: String = connection.query_row("PRAGMA quick_check(1)", [], |row| row.get(0)).map_err(wrap)?;
    if verdict != "ok" {
        return Err(damaged(verdict));
    }
    let mut seen = seen();
    seen.retain(|(known, _)| known != path);
    seen.push((path.to_path_buf(), length));
    Ok(())
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
    // Nothing is written where nothing is to be done, so that a full disk hinders nobody from reading.
    let version =
        |db: &Connection| db.pragma_query_value(None, "user_version", |row| row.get::<_, i64>(0)).map(|n| usize::try_from(n).unwrap_or(0));
    if version(connection)? >= MIGRATIONS.len() {
        return Ok(());
    }
    // The write lock first, so that of two processes the second finds the work done.
    let change = connection.transaction_with_behavior(TransactionBehavior::Immediate)?;
    let done = version(&change)?;
    for sql in MIGRATIONS.iter().skip(done) {
        change.execute_batch(sql)?;
    }
    if done < SUMMED {
        chain::seal_all(&change)?;
    }
    if done < MIGRATIONS.len() {
        change.pragma_update(None, "application_id", APPLICATION_ID)?;
        change.pragma_update(None, "user_version", MIGRATIONS.len() as i64)?;
    }
    change.commit()
}

/// Names of the tables, indexes and triggers of the present form.
pub(super) fn parts() -> Result<Vec<String>, rusqlite::Error> {
    let db = Connection::open_in_memory()?;
    MIGRATIONS.iter().try_for_each(|sql| db.execute_batch(sql))?;
    db.prepare("SELECT name FROM sqlite_schema WHERE sql IS NOT NULL")?.query_map([], |row| row.get(0))?.collect()
}

#[cfg(test)]
#[path = "tests/database.rs"]
mod tests;
