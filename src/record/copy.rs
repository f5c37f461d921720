//! Copies a record into another file, with another key or none, and puts it in the place of the old one.

use super::database;
use super::database::{APPLICATION_ID, connect};
use super::error::RecordError;
use super::folder::beside;
use super::passphrase::Key;
use rusqlite::{Connection, OpenFlags};
use std::fs::File;
use std::io::Write;
use std::path::Path;

/// The tables of an attached database, SQLite's own left out.
pub(super) fn tables(db: &Connection, schema: &str) -> Result<Vec<String>, rusqlite::Error> {
    let sql =
        format!("SELECT name FROM {schema}.sqlite_schema WHERE type = 'table' AND name NOT LIKE 'sqlite\\_%' ESCAPE '\\' ORDER BY name");
    db.prepare(&sql)?.query_map([], |row| row.get(0))?.collect()
}

/// A name as SQL takes it.
pub(super) fn quoted(name: &str) -> String {
    format!("\"{}\"", name.replace('"', "\"\""))
}

/// Makes `to`, readable for its owner alone, with everything that `from` holds at one instant; a practice may go on meanwhile. What was
/// written is read back and compared. On failure nothing is left of `to`.
///
/// # Errors
/// There is such a file already, it cannot be written, or it differs.
pub(super) fn export(from: &Connection, from_path: &Path, to: &Path, key: Option<&Key>) -> Result<(), RecordError> {
    private(to)?;
    let done = fill(from, to, key)
        .map_err(|error| blamed(from_path, to, &error))
        .and_then(|same| if same { verify(to, key) } else { Err(differs(to)) });
    if done.is_err() {
        wipe(to);
    }
    done
}

/// A new empty file that only its owner may read.
pub(super) fn private(path: &Path) -> Result<File, RecordError> {
    disk::private::create_new(path).map_err(|error| match error.kind() {
        std::io::ErrorKind::AlreadyExists => RecordError::File {
            path: path.to_path_buf(),
            cause: "there is such a file already, and it has been left as it is".to_owned(),
            remedy: "Name another, or move that one away".to_owned(),
        },
        _ => RecordError::from_io(path, &error),
    })
}

/// A full disk is the new file's, a damaged page the old one's.
fn blamed(from: &Path, to: &Path, error: &rusqlite::Error) -> RecordError {
    match error.sqlite_error_code() {
        Some(rusqlite::ErrorCode::NotADatabase | rusqlite::ErrorCode::DatabaseCorrupt) => RecordError::from_sqlite(from, error),
        _ => RecordError::from_sqlite(to, error),
    }
}

fn differs(path: &Path) -> RecordError {
    RecordError::File {
        path: path.to_path_buf(),
        cause: "what was written differs from the record and was removed".to_owned(),
        remedy: "Try again on another disk; this one may be failing".to_owned(),
    }
}

/// True where both hold the same.
fn fill(from: &Connection, to: &Path, key: Option<&Key>) -> Result<bool, rusqlite::Error> {
    from.query_row("PRAGMA cipher_log_level = NONE", [], |_| Ok(()))?;
    // An empty key means none.
    from.execute(
        "ATTACH DATABASE ?1 AS copy KEY ?2",
        (to.to_string_lossy(), key.map(Key::spec).as_ref().map_or("", |spec| spec.as_str())),
    )?;
    let copy = || {
        // One snapshot for all tables.
        from.execute_batch("BEGIN")?;
        let version: i64 = from.pragma_query_value(None, "user_version", |row| row.get(0))?;
        from.query_row("SELECT sqlcipher_export('copy')", [], |_| Ok(()))?;
        from.execute_batch(&format!("PRAGMA copy.user_version = {version}; PRAGMA copy.application_id = {APPLICATION_ID};"))?;
        let same = same(from)?;
        from.execute_batch("COMMIT")?;
        Ok(same)
    };
    let outcome = copy();
    if outcome.is_err() {
        // Nothing to roll back where BEGIN itself failed.
        let _ = from.execute_batch("ROLLBACK");
    }
    let detached = from.execute_batch("DETACH copy");
    outcome.and_then(|same| detached.map(|()| same))
}

fn same(db: &Connection) -> Result<bool, rusqlite::Error> {
    let here = tables(db, "main")?;
    if here != tables(db, "copy")? {
        return Ok(false);
    }
    for table in here.iter().map(|table| quoted(table)) {
        let sql = format!(
            "SELECT (SELECT count(*) FROM main.{table}) = (SELECT count(*) FROM copy.{table})
             AND NOT EXISTS (SELECT * FROM main.{table} EXCEPT SELECT * FROM copy.{table})"
        );
        if !db.query_row(&sql, [], |row| row.get::<_, bool>(0))? {
            return Ok(false);
        }
    }
    Ok(true)
}

/// Reads the whole file back from the disk.
fn verify(path: &Path, key: Option<&Key>) -> Result<(), RecordError> {
    let wrap = |error: rusqlite::Error| RecordError::from_sqlite(path, &error);
    let db = connect(path, OpenFlags::SQLITE_OPEN_READ_ONLY, key).map_err(wrap)?;
    let verdict: String = db.query_row("PRAGMA integrity_check(1)", [], |row| row.get(0)).map_err(wrap)?;
    drop(db);
    if verdict != "ok" {
        return Err(differs(path));
    }
    sync(path)
}

/// Waits until the disk has the file.
pub(super) fn sync(path: &Path) -> Result<(), RecordError> {
    File::open(path).and_then(|file| file.sync_all()).map_err(|error| RecordError::from_io(path, &error))
}

/// Waits until the disk has the folder's names. Not every system can; then nothing more can be done.
pub(super) fn sync_folder(path: &Path) {
    let _ = path.parent().map(|folder| File::open(folder).and_then(|folder| folder.sync_all()));
}

/// Removes a file after overwriting it, and what SQLite may have beside it. An SSD or a copying file system may keep the old blocks all
/// the same: only an encrypted disk helps there.
pub fn wipe(path: &Path) {
    for ending in ["", "-wal", "-shm", "-journal"] {
        let one = beside(path, ending);
        if let Ok(mut file) = std::fs::OpenOptions::new().write(true).open(&one) {
            let _ = overwrite(&mut file);
        }
        let _ = std::fs::remove_file(&one);
    }
}

fn overwrite(file: &mut File) -> std::io::Result<()> {
    let mut left = file.metadata()?.len();
    let zeros = [0; 65_536];
    while left > 0 {
        let now = usize::try_from(left).unwrap_or(usize::MAX).min(zeros.len());
        file.write_all(zeros.get(..now).unwrap_or(&zeros))?;
        left -= now as u64;
    }
    file.sync_all()
}

/// Puts other content in the place of a file: whole or not at all. The old bytes are overwritten.
///
/// # Errors
/// The new content cannot be written; the file is as before then.
pub fn replace_file(path: &Path, content: &[u8]) -> Result<(), RecordError> {
    let fresh = beside(path, ".new");
    wipe(&fresh);
    let old = std::fs::OpenOptions::new().write(true).open(path);
    let mut file = private(&fresh)?;
    file.write_all(content)
        .and_then(|()| file.sync_all())
        .and_then(|()| std::fs::rename(&fresh, path))
        .map_err(|error| RecordError::from_io(path, &error))?;
    sync_folder(path);
    if let Ok(mut old) = old {
        // It has no name any more, whether it can be overwritten or not.
        let _ = overwrite(&mut old);
    }
    Ok(())
}

/// Gives the record at `path`, which nobody else has open, another key or none. A crash at any instant leaves one whole record at `path`:
/// the old one until the new one is whole on the disk.
///
/// # Errors
/// Another program has the file open, or the new one cannot be written. The record is as before then.
pub(super) fn rekey(path: &Path, old: Option<&Key>, new: Option<&Key>) -> Result<(), RecordError> {
    let wrap = |error: rusqlite::Error| RecordError::from_sqlite(path, &error);
    let connection = database::open_with(path, old)?;
    // What was overwritten in the database may stand in the log still.
    let mut log = std::fs::OpenOptions::new().write(true).open(beside(path, "-wal")).ok();
    // Refused where another program has the file open, whichever it is.
    connection.pragma_update_and_check(None, "journal_mode", "delete", |_| Ok(())).map_err(wrap)?;
    let fresh = beside(path, ".new");
    wipe(&fresh);
    export(&connection, path, &fresh, new)?;
    // By this handle the old bytes can be reached when the name belongs to the new file.
    let old_file = std::fs::OpenOptions::new().write(true).open(path);
    drop(connection);
    std::fs::rename(&fresh, path).map_err(|error| RecordError::from_io(path, &error))?;
    sync_folder(path);
    for file in old_file.ok().iter_mut().chain(&mut log) {
        // The record is whole; what cannot be overwritten has at least no name any more.
        let _ = overwrite(file);
    }
    Ok(())
}

#[cfg(test)]
#[path = "tests/copy.rs"]
mod tests;
