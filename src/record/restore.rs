//! Brings a backup back. What stood there before is set aside, never written over.

use super::backup::{ABOUT_TABLE, FILE_TABLE, check_whole, is_backup, stays_inside, write_private};
use super::chain;
use super::copy::{private, quoted, sync, sync_folder, tables, wipe};
use super::database;
use super::error::RecordError;
use super::folder;
use super::folder::{DATABASE_NAME, SOUND_FOLDER, beside};
use super::guard;
use super::passphrase::Key;
use super::store::Store;
use super::waiting;
use jiff::ZonedDateTime;
use rusqlite::Connection;
use std::path::{Path, PathBuf};

/// What was brought back.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct Restored {
    pub practices: u64,
    /// When the backup was made; none where it is a record that somebody copied.
    pub made_at: Option<String>,
    /// Files written beside the record.
    pub files: Vec<String>,
    /// Where what stood there before lies now.
    pub aside: Vec<PathBuf>,
    pub encrypted: bool,
    /// What in it is not as it was written.
    pub damaged: Vec<String>,
}

impl Store {
    /// Brings `backup` back into `folder`. A record that holds something the backup lacks is replaced only with `replace`; in any case it is
    /// set aside. A plain copy of a record file is taken, too.
    ///
    /// # Errors
    /// The backup is damaged, foreign, newer, or does not open; the present record has more; another program has it open.
    pub fn restore(folder: &Path, backup: &Path, replace: bool, now: &ZonedDateTime) -> Result<Restored, RecordError> {
        if matches!(database::form(backup)?, database::Form::Absent | database::Form::Empty) {
            let (cause, remedy) = ("there is no backup in it".to_owned(), "Name a file made by `tidecount record backup`".to_owned());
            return Err(RecordError::File { path: backup.to_owned(), cause, remedy });
        }
        let key = database::key_of(backup)?;
        database::inspect(backup, key.as_ref())?;
        check_whole(backup, key.as_ref())?;
        folder::create(folder)?;
        let _alone = guard::alone(folder)?;
        let path = folder.join(DATABASE_NAME);
        let fresh = beside(&path, ".new");
        wipe(&fresh);
        let restored = bring(folder, backup, &fresh, key.as_ref(), replace, now);
        wipe(&fresh);
        restored
    }
}

fn bring(
    folder: &Path,
    backup: &Path,
    fresh: &Path,
    key: Option<&Key>,
    replace: bool,
    now: &ZonedDateTime,
) -> Result<Restored, RecordError> {
    let wrap = |error: rusqlite::Error| RecordError::from_sqlite(fresh, &error);
    copied(backup, fresh)?;
    // A record that somebody copied by hand may have its last entries in a log beside it.
    let log = beside(backup, "-wal");
    if log.exists() {
        copied(&log, &beside(fresh, "-wal"))?;
    }
    let mut restored = Restored { encrypted: key.is_some(), ..Restored::default() };
    // Brought to the present form before it is compared.
    let db = database::open_with(fresh, key)?;
    let mut files = Vec::new();
    if is_backup(&db).map_err(wrap)? {
        restored.made_at = db.query_row(&format!("SELECT made_at FROM {ABOUT_TABLE}"), [], |row| row.get(0)).ok();
        files = names(&db).map_err(wrap)?;
    }
    // Before anything is written.
    if let Some(name) = files.iter().find(|name| !stays_inside(Path::new(name)) || name.starts_with(DATABASE_NAME)) {
        let (cause, remedy) =
            (format!("it names a file {name:?} outside the data folder"), "It was not made by tidecount: take another".to_owned());
        return Err(RecordError::File { path: backup.to_owned(), cause, remedy });
    }
    restored.practices = db
        .query_row("SELECT count(*) FROM session", [], |row| row.get::<_, i64>(0))
        .map(|n| u64::try_from(n).unwrap_or(0))
        .map_err(wrap)?;
    if !replace {
        refuse_where_more(&folder.join(DATABASE_NAME), fresh, key)?;
    }
    let stamp = format!(".before-restore-{}", now.strftime("%Y%m%dT%H%M%S"));
    if let Some(sound) =
        files.iter().any(|name| name.starts_with(SOUND_FOLDER)).then(|| folder.join(SOUND_FOLDER)).filter(|sound| sound.exists())
    {
        restored.aside.push(set_aside(&sound, &stamp)?);
    }
    for name in files {
        let content: Vec<u8> =
            db.query_row(&format!("SELECT content FROM {FILE_TABLE} WHERE path = ?1"), [&name], |row| row.get(0)).map_err(wrap)?;
        restored.aside.extend(put(folder, &name, &content, &stamp)?);
        restored.files.push(name);
    }
    db.execute_batch(&format!("DROP TABLE IF EXISTS {FILE_TABLE}; DROP TABLE IF EXISTS {ABOUT_TABLE}; VACUUM;")).map_err(wrap)?;
    // One file without a log, so that it can be moved.
    db.pragma_update_and_check(None, "journal_mode", "delete", |_| Ok(())).map_err(wrap)?;
    let damaged = chain::damage(&db).map_err(wrap)?.iter().map(ToString::to_string).collect();
    drop(db);
    check_whole(fresh, key)?;
    sync(fresh)?;
    let path = folder.join(DATABASE_NAME);
    restored.aside.extend(record_aside(&path, &stamp)?);
    std::fs::rename(fresh, &path).map_err(|error| RecordError::from_io(&path, &error))?;
    sync_folder(&path);
    restored.damaged = damaged;
    Ok(restored)
}

fn copied(from: &Path, to: &Path) -> Result<(), RecordError> {
    let mut target = private(to)?;
    let copied = std::fs::File::open(from).and_then(|mut source| std::io::copy(&mut source, &mut target)).and_then(|_| target.sync_all());
    copied.map_err(|error| RecordError::from_io(to, &error))
}

fn names(db: &Connection) -> Result<Vec<String>, rusqlite::Error> {
    db.prepare(&format!("SELECT path FROM {FILE_TABLE} ORDER BY path"))?.query_map([], |row| row.get(0))?.collect()
}

/// A damaged one has nothing that could be compared; it is set aside like any other.
fn refuse_where_more(path: &Path, fresh: &Path, fresh_key: Option<&Key>) -> Result<(), RecordError> {
    match more(path, fresh, fresh_key) {
        Ok(more) if more.is_empty() => Ok(()),
        Ok(more) => Err(RecordError::HasMore { path: path.to_owned(), more: more.join(", ") }),
        Err(RecordError::Damaged { .. }) => Ok(()),
        // Whose passphrase is lost can be set aside all the same.
        Err(RecordError::Locked { .. } | RecordError::WrongPassphrase { .. }) => Err(RecordError::HasMore {
            path: path.to_owned(),
            more: "what cannot be compared, for it is encrypted with another passphrase: perhaps something".to_owned(),
        }),
        Err(error) => Err(error),
    }
}

fn more(path: &Path, fresh: &Path, fresh_key: Option<&Key>) -> Result<Vec<String>, RecordError> {
    if matches!(database::form(path)?, database::Form::Absent | database::Form::Empty) {
        return Ok(Vec::new());
    }
    let key = database::key_of(path)?;
    database::inspect(path, key.as_ref())?;
    let wrap = |error: rusqlite::Error| RecordError::from_sqlite(path, &error);
    let db = database::open_with(path, key.as_ref())?;
    db.execute(
        "ATTACH DATABASE ?1 AS fresh KEY ?2",
        (fresh.to_string_lossy(), fresh_key.map(Key::spec).as_ref().map_or("", |spec| spec.as_str())),
    )
    .map_err(wrap)?;
    rows_more(&db).map_err(wrap)
}

/// What the present record has more, in words.
fn rows_more(db: &Connection) -> Result<Vec<String>, rusqlite::Error> {
    let mut more = Vec::new();
    for table in tables(db, "main")? {
        let name = quoted(&table);
        // What only says how to read or check the rest is no loss.
        if matches!(table.as_str(), "sound_key" | "entry_sum" | "practice_sum") {
            continue;
        }
        let count: i64 =
            db.query_row(&format!("SELECT count(*) FROM (SELECT * FROM main.{name} EXCEPT SELECT * FROM fresh.{name})"), [], |row| {
                row.get(0)
            })?;
        if count > 0 {
            let what = match table.as_str() {
                "client" => "clients",
                "session" => "practices (or later ends of practices)",
                "part" => "parts of practices",
                "entry" => "entries",
                "stored_sound" => "files of sound",
                other => other,
            };
            more.push(format!("{count} {}", what.replace('_', " ")));
        }
    }
    Ok(more)
}

/// Puts one file of the backup in its place; gives where another one that stood there went.
fn put(folder: &Path, name: &str, content: &[u8], stamp: &str) -> Result<Option<PathBuf>, RecordError> {
    let path = folder.join(name);
    if std::fs::read(&path).is_ok_and(|present| present == content) {
        return Ok(None);
    }
    let aside = if path.symlink_metadata().is_ok() { Some(set_aside(&path, stamp)?) } else { None };
    if let Some(parent) = path.parent() {
        folder::create(parent)?;
    }
    write_private(&path, content)?;
    Ok(aside)
}

fn set_aside(path: &Path, stamp: &str) -> Result<PathBuf, RecordError> {
    let aside = free(&beside(path, stamp));
    std::fs::rename(path, &aside).map_err(|error| RecordError::from_io(path, &error))?;
    Ok(aside)
}

fn free(wanted: &Path) -> PathBuf {
    let all = std::iter::once(wanted.to_owned()).chain((2..).map(|n| beside(wanted, &format!("-{n}"))));
    all.into_iter().find(|path| path.symlink_metadata().is_err()).unwrap_or_else(|| wanted.to_owned())
}

/// The present record under another name, with its log. Where the disk can, it keeps its own name besides until the new one takes it.
fn record_aside(path: &Path, stamp: &str) -> Result<Option<PathBuf>, RecordError> {
    if path.symlink_metadata().is_err() {
        return Ok(None);
    }
    let aside = free(&beside(path, stamp));
    for ending in ["-wal", "-shm"] {
        let log = beside(path, ending);
        if log.exists() {
            // A log without its database is of no use; with it, it may hold the last entries.
            std::fs::rename(&log, beside(&aside, ending)).map_err(|error| RecordError::from_io(&log, &error))?;
        }
    }
    // What the old record could not take belongs to it alone.
    let waiting = path.parent().map(waiting::path_in).filter(|waiting| waiting.exists());
    if let Some(waiting) = waiting {
        std::fs::rename(&waiting, waiting::of(&aside)).map_err(|error| RecordError::from_io(&waiting, &error))?;
    }
    if std::fs::hard_link(path, &aside).is_err() {
        std::fs::rename(path, &aside).map_err(|error| RecordError::from_io(path, &error))?;
    }
    Ok(Some(aside))
}

#[cfg(test)]
#[path = "tests/restore.rs"]
mod tests;
