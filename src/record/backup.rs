//! One file that brings everything back: the record as it was at one instant, and beside it, in a table of their own, the other files of
//! the data folder. It is a record by itself, encrypted like the one that it was made of.

use super::chain;
use super::copy;
use super::copy::{export, private, sync, sync_folder, wipe};
use super::database::connect;
use super::error::RecordError;
use super::folder::{DATABASE_NAME, SOUND_FOLDER, beside};
use super::passphrase::Key;
use super::store::Store;
use jiff::ZonedDateTime;
use rusqlite::{Connection, OpenFlags, params};
use std::path::{Component, Path, PathBuf};

/// Holds the other files in a backup.
pub(super) const FILE_TABLE: &str = "backup_file";
/// Says when and by what it was made.
pub(super) const ABOUT_TABLE: &str = "backup_about";

/// A larger file does not go along, bytes: SQLite keeps no more than a gigabyte in one place.
const MOST_BYTES: u64 = 900 << 20;

/// What went into a backup.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct Backup {
    pub path: PathBuf,
    pub practices: u64,
    pub clients: u64,
    /// Other files of the data folder that are in it.
    pub files: Stored,
    /// Files of sound among them.
    pub sounds: Stored,
    /// What is not in it, and why.
    pub left_out: Vec<String>,
    pub encrypted: bool,
    /// What was damaged in the record already, and so is in the backup.
    pub damaged: Vec<String>,
}

/// Files and their bytes together.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq)]
pub struct Stored {
    pub files: u64,
    pub bytes: u64,
}

/// What in the data folder is made anew, only says that somebody is at work, or was set aside.
fn passed_over(name: &str) -> bool {
    let temporary = name.starts_with('.') || name.ends_with(".running") || name.ends_with(".new") || name.ends_with(".part");
    temporary
        || name.starts_with(DATABASE_NAME)
        || name.contains(".before-restore-")
        || matches!(name, "voice-cache" | "voices" | SOUND_FOLDER)
}

impl Store {
    /// Makes a backup at `to`, which must not be there yet, while practices may go on. `sound`: stored sound goes along.
    ///
    /// # Errors
    /// There is such a file already; it lies in the data folder; or it cannot be written. Nothing is left of it then.
    pub fn backup(&self, to: &Path, sound: bool, now: &ZonedDateTime) -> Result<Backup, RecordError> {
        let refuse =
            |cause: &str, remedy: &str| RecordError::File { path: to.to_owned(), cause: cause.to_owned(), remedy: remedy.to_owned() };
        let folder = to.parent().filter(|parent| !parent.as_os_str().is_empty()).unwrap_or_else(|| Path::new("."));
        let real = |path: &Path| path.canonicalize().map_err(|error| RecordError::from_io(path, &error));
        if real(folder)?.starts_with(real(&self.folder)?) {
            return Err(refuse("a backup inside the data folder would be lost with it", "Name a place outside, best on another disk"));
        }
        if to.symlink_metadata().is_ok() {
            return Err(refuse("there is such a file already, and it has been left as it is", "Name another, or move that one away"));
        }
        // Under its name it stands only when it is whole.
        let part = beside(to, ".part");
        wipe(&part);
        let done = self.fill(&part, sound, now).and_then(|backup| {
            sync(&part)?;
            // Unlike a renaming this takes nobody's place.
            match std::fs::hard_link(&part, to) {
                Ok(()) => std::fs::remove_file(&part),
                Err(error) if error.kind() == std::io::ErrorKind::AlreadyExists => Err(error),
                Err(_) => std::fs::rename(&part, to),
            }
            .map_err(|error| RecordError::from_io(to, &error))?;
            sync_folder(to);
            Ok(Backup { path: to.to_owned(), ..backup })
        });
        if done.is_err() {
            wipe(&part);
        }
        done
    }

    fn fill(&self, part: &Path, sound: bool, now: &ZonedDateTime) -> Result<Backup, RecordError> {
        export(&self.connection, &self.path(), part, self.key.as_ref())?;
        let wrap = |error: rusqlite::Error| RecordError::from_sqlite(part, &error);
        let mut db = connect(part, OpenFlags::SQLITE_OPEN_READ_WRITE, self.key.as_ref()).map_err(wrap)?;
        let mut backup = Backup { encrypted: self.is_encrypted(), ..Backup::default() };
        let mut files = Vec::new();
        gather(&self.folder, Path::new(""), &mut files, &mut backup.left_out);
        let mut sounds = Vec::new();
        if sound {
            gather(&self.folder.join(SOUND_FOLDER), Path::new(SOUND_FOLDER), &mut sounds, &mut backup.left_out);
        } else if self.sound_folder().exists() {
            backup.left_out.push("stored sound".to_owned());
        }
        backup.left_out.extend(outside(&self.folder));
        let tx = db.transaction().map_err(wrap)?;
        let make = format!(
            "CREATE TABLE {FILE_TABLE} (path TEXT PRIMARY KEY, content BLOB NOT NULL) STRICT;
             CREATE TABLE {ABOUT_TABLE} (made_at TEXT NOT NULL, software TEXT NOT NULL) STRICT;"
        );
        tx.execute_batch(&make).map_err(wrap)?;
        tx.execute(
            &format!("INSERT INTO {ABOUT_TABLE} VALUES (?1, ?2)"),
            params![now.to_string(), concat!("tidecount ", env!("CARGO_PKG_VERSION"))],
        )
        .map_err(wrap)?;
        for (list, counted) in [(&files, &mut backup.files), (&sounds, &mut backup.sounds)] {
            for name in list {
                // What is gone by now was thrown away by its owner.
                let Ok(content) = std::fs::read(self.folder.join(name)) else {
                    if self.folder.join(name).exists() {
                        backup.left_out.push(format!("{name} (it cannot be read)"));
                    }
                    continue;
                };
                tx.execute(&format!("INSERT INTO {FILE_TABLE} VALUES (?1, ?2)"), params![name, content]).map_err(wrap)?;
                counted.files += 1;
                counted.bytes += content.len() as u64;
            }
        }
        tx.commit().map_err(wrap)?;
        let count = |sql: &str| db.query_row(sql, [], |row| row.get::<_, i64>(0)).map(|n| u64::try_from(n).unwrap_or(0)).map_err(wrap);
        backup.practices = count("SELECT count(*) FROM session")?;
        backup.clients = count("SELECT count(*) FROM client")?;
        backup.damaged = chain::damage(&db).map_err(wrap)?.iter().map(ToString::to_string).collect();
        drop(db);
        check_whole(part, self.key.as_ref())?;
        Ok(backup)
    }
}

/// Names of plain files below `folder`, relative to the data folder, with slashes.
fn gather(folder: &Path, under: &Path, files: &mut Vec<String>, left_out: &mut Vec<String>) {
    let Ok(entries) = std::fs::read_dir(folder) else { return };
    let mut entries: Vec<_> = entries.flatten().collect();
    entries.sort_by_key(std::fs::DirEntry::file_name);
    for entry in entries {
        let name = entry.file_name();
        let path = under.join(&name);
        let shown = path.to_string_lossy().into_owned();
        let Some(name) = name.to_str() else {
            left_out.push(format!("{shown} (its name is no text)"));
            continue;
        };
        if passed_over(name) {
            continue;
        }
        match entry.file_type() {
            Ok(kind) if kind.is_dir() => gather(&entry.path(), &path, files, left_out),
            Ok(kind) if kind.is_file() && entry.metadata().is_ok_and(|data| data.len() <= MOST_BYTES) => {
                files.push(path.components().map(|part| part.as_os_str().to_string_lossy()).collect::<Vec<_>>().join("/"))
            }
            Ok(kind) if kind.is_file() => left_out.push(format!("{shown} (too large)")),
            _ => left_out.push(format!("{shown} (a link or no plain file)")),
        }
    }
}

/// Routines that the household names outside the data folder.
fn outside(folder: &Path) -> Vec<String> {
    let text = std::fs::read_to_string(folder.join("household.toml")).unwrap_or_default();
    let table: toml::Table = toml::from_str(&text).unwrap_or_default();
    let list = |value: Option<&toml::Value>| value.and_then(toml::Value::as_array).cloned().unwrap_or_default();
    let routines = list(table.get("person")).into_iter().flat_map(|person| list(person.get("routine")));
    let named = routines.filter_map(|routine| routine.get("file").and_then(toml::Value::as_str).map(str::to_owned));
    named
        .filter(|file| !stays_inside(Path::new(file)))
        .map(|file| format!("{file} (a routine of the household, outside the data folder)"))
        .collect()
}

/// A relative path without a way up.
pub(super) fn stays_inside(path: &Path) -> bool {
    path.components().all(|part| matches!(part, Component::Normal(_) | Component::CurDir)) && path.components().next().is_some()
}

/// Looks through a whole file.
pub(super) fn check_whole(path: &Path, key: Option<&Key>) -> Result<(), RecordError> {
    let wrap = |error: rusqlite::Error| RecordError::from_sqlite(path, &error);
    let db = connect(path, OpenFlags::SQLITE_OPEN_READ_ONLY, key).map_err(wrap)?;
    let verdict: String = db.query_row("PRAGMA quick_check(1)", [], |row| row.get(0)).map_err(wrap)?;
    if verdict == "ok" { Ok(()) } else { Err(RecordError::Damaged { path: path.to_owned(), cause: verdict }) }
}

/// Whether a database holds the tables of a backup.
pub(super) fn is_backup(db: &Connection) -> Result<bool, rusqlite::Error> {
    copy::tables(db, "main").map(|tables| tables.iter().any(|table| table == FILE_TABLE))
}

/// Writes a file that only its owner may read, in place of none.
pub(super) fn write_private(path: &Path, content: &[u8]) -> Result<(), RecordError> {
    let mut file = private(path)?;
    std::io::Write::write_all(&mut file, content).and_then(|()| file.sync_all()).map_err(|error| RecordError::from_io(path, &error))
}

#[cfg(test)]
#[path = "tests/backup.rs"]
mod tests;
