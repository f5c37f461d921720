//! Deletes all of one client's, so that no byte of it is left in the files.

use super::copy::{quoted, tables, wipe};
use super::error::RecordError;
use super::folder::{DATABASE_NAME, SOUND_FOLDER, beside};
use super::guard;
use super::store::Store;
use super::{database, running};
use rusqlite::{Connection, OptionalExtension, Transaction};
use std::path::{Path, PathBuf};

/// What was deleted.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct Forgotten {
    pub practices: u64,
    pub entries: u64,
    /// Rows of everything else: agreements, enrolled words, packages.
    pub others: u64,
    pub sounds: u64,
    /// Older records in the same folder, set aside by a restore, from which the client was deleted, too.
    pub aside: Vec<PathBuf>,
    /// Older records from which it could not be deleted.
    pub aside_left: Vec<PathBuf>,
}

impl Store {
    /// Deletes everything that the record in `folder` holds of `client`: practices, entries, agreements, enrolled voice, packages, consents,
    /// stored sound. The journal is append-only for everybody else: its triggers are taken out and put back in the one transaction that
    /// deletes. Afterwards the file is written anew, so that freed pages are gone, too.
    ///
    /// # Errors
    /// Another program has the record open, a practice is under way, or the database refuses; nothing is deleted then. There is nobody of
    /// that name: [`RecordError::NoSuchClient`].
    pub fn forget(folder: &Path, client: &str) -> Result<Forgotten, RecordError> {
        let path = folder.join(DATABASE_NAME);
        let nobody = || RecordError::NoSuchClient { client: client.to_owned(), folder: folder.to_owned() };
        if database::form(&path)? == database::Form::Absent {
            return Err(nobody());
        }
        let mut store = Self::open_guarded(folder, guard::alone(folder)?)?;
        store.empty_waiting()?;
        let mut forgotten = Forgotten::default();
        let known = store.forget_here(client, &mut forgotten)?;
        for aside in asides(folder) {
            match forget_aside(&aside, client) {
                Ok(true) => forgotten.aside.push(aside),
                Ok(false) => {}
                Err(_) => forgotten.aside_left.push(aside),
            }
        }
        if known || !forgotten.aside.is_empty() { Ok(forgotten) } else { Err(nobody()) }
    }

    fn forget_here(&mut self, client: &str, forgotten: &mut Forgotten) -> Result<bool, RecordError> {
        let id: Option<i64> =
            self.read(|db| db.query_row("SELECT id FROM client WHERE name = ?1", [client], |row| row.get(0)).optional())?;
        let Some(id) = id else { return self.forget_participant(client, forgotten) };
        let sessions: Vec<i64> =
            self.read(|db| db.prepare("SELECT id FROM session WHERE client = ?1")?.query_map([id], |row| row.get(0))?.collect())?;
        if let Some(id) = sessions.into_iter().find(|session| running::is_led(&self.folder, *session)) {
            return Err(RecordError::UnderWay { id });
        }
        // The files first: what is left of them after a crash is found again by its row.
        let sounds = self.begun_sounds(client)?;
        for sound in &sounds {
            wipe(&self.sound_path(&sound.file)?);
        }
        forgotten.sounds = sounds.len() as u64;
        let deleted = self.delete_all_of(Some(id), client)?;
        for (table, rows) in deleted {
            match table.as_str() {
                "session" => forgotten.practices += rows,
                "entry" => forgotten.entries += rows,
                "client" | "part" | "stored_sound" | "entry_sum" | "practice_sum" => {}
                _ => forgotten.others += rows,
            }
        }
        Ok(true)
    }

    /// Somebody who never practised here, but was in a class.
    fn forget_participant(&mut self, participant: &str, forgotten: &mut Forgotten) -> Result<bool, RecordError> {
        if !self.read(|db| is_in_class(db, participant))? {
            return Ok(false);
        }
        let deleted = self.delete_all_of(None, participant)?;
        forgotten.others += deleted.iter().map(|(_, rows)| rows).sum::<u64>();
        Ok(true)
    }

    fn delete_all_of(&mut self, id: Option<i64>, name: &str) -> Result<Vec<(String, u64)>, RecordError> {
        self.read(|db| db.pragma_update_and_check(None, "secure_delete", true, |_| Ok(())))?;
        let deleted = self.change(|tx| delete(tx, id, name))?;
        // Written anew, because a page may hold the rest of a row that moved long ago; then the log is emptied.
        self.read(|db| db.execute_batch("VACUUM"))?;
        self.read(|db| db.query_row("PRAGMA wal_checkpoint(TRUNCATE)", [], |_| Ok(())))?;
        Ok(deleted)
    }
}

/// Older records that a restore set aside.
pub(super) fn asides(folder: &Path) -> Vec<PathBuf> {
    let ours = |name: &str| {
        name.starts_with(&format!("{DATABASE_NAME}.before-restore-"))
            && !["-wal", "-shm", "-journal", ".waiting"].iter().any(|ending| name.ends_with(ending))
    };
    let entries = std::fs::read_dir(folder).into_iter().flatten().flatten();
    let mut found: Vec<PathBuf> = entries.filter(|entry| entry.file_name().to_str().is_some_and(ours)).map(|entry| entry.path()).collect();
    found.sort();
    found
}

/// True where there was something to delete.
fn forget_aside(path: &Path, client: &str) -> Result<bool, RecordError> {
    let wrap = |error: rusqlite::Error| RecordError::from_sqlite(path, &error);
    let key = database::key_of(path)?;
    let mut db = database::open_with(path, key.as_ref())?;
    let id: Option<i64> = db.query_row("SELECT id FROM client WHERE name = ?1", [client], |row| row.get(0)).optional().map_err(wrap)?;
    if id.is_none() && !is_in_class(&db, client).map_err(wrap)? {
        return Ok(false);
    }
    let stamp =
        path.to_string_lossy().rsplit_once(".before-restore-").map(|(_, stamp)| format!(".before-restore-{stamp}")).unwrap_or_default();
    let folder = path.parent().unwrap_or_else(|| Path::new(".")).join(format!("{SOUND_FOLDER}{stamp}"));
    let files: Vec<String> = db
        .prepare("SELECT s.file FROM stored_sound s JOIN session p ON p.id = s.session WHERE p.client = ?1")
        .and_then(|mut query| query.query_map([id], |row| row.get(0))?.collect())
        .map_err(wrap)?;
    for file in files.iter().filter(|file| Path::new(file).file_name().is_some_and(|name| name == file.as_str())) {
        wipe(&folder.join(file));
    }
    db.pragma_update_and_check(None, "secure_delete", true, |_| Ok(())).map_err(wrap)?;
    let tx = db.transaction().map_err(wrap)?;
    delete(&tx, id, client).map_err(wrap)?;
    tx.commit().map_err(wrap)?;
    db.execute_batch("VACUUM").map_err(wrap)?;
    db.pragma_update_and_check(None, "journal_mode", "delete", |_| Ok(())).map_err(wrap)?;
    drop(db);
    // What its disk could not take then goes whole: nobody can tell whose it is without taking it in.
    for ending in ["-wal", "-shm", ".waiting"] {
        wipe(&beside(path, ending));
    }
    Ok(true)
}

/// A key into another table: its columns here and there.
struct Link {
    parent: String,
    columns: Vec<(String, String)>,
}

/// The record of a class names this participant.
fn is_in_class(db: &Connection, participant: &str) -> Result<bool, rusqlite::Error> {
    db.query_row("SELECT EXISTS (SELECT 1 FROM class_attendance WHERE participant = ?1)", [participant], |row| row.get(0))
}

/// Deletes the client's row and every row that leads to it, in whatever table of the present form, and what classes hold under the name.
fn delete(tx: &Transaction<'_>, client: Option<i64>, name: &str) -> Result<Vec<(String, u64)>, rusqlite::Error> {
    let triggers: Vec<(String, String)> = tx
        .prepare("SELECT name, sql FROM sqlite_schema WHERE type = 'trigger'")?
        .query_map([], |row| Ok((row.get(0)?, row.get(1)?)))?
        .collect::<Result<_, _>>()?;
    for (name, _) in &triggers {
        tx.execute_batch(&format!("DROP TRIGGER {}", quoted(name)))?;
    }
    let mut deleted = Vec::new();
    let rows = tx.execute("DELETE FROM class_attendance WHERE participant = ?1", [name])?;
    deleted.push(("class_attendance".to_owned(), rows as u64));
    for (table, whose) in if client.is_some() { children_first(tx)? } else { Vec::new() } {
        let rows = tx.execute(&format!("DELETE FROM {} WHERE {whose}", quoted(&table)), [client])?;
        deleted.push((table, rows as u64));
    }
    for (_, sql) in &triggers {
        tx.execute_batch(sql)?;
    }
    Ok(deleted)
}

/// Every table that leads to a client, with the condition that picks the client's rows; a table stands before those that it leads to.
fn children_first(db: &Connection) -> Result<Vec<(String, String)>, rusqlite::Error> {
    let all = tables(db, "main")?;
    let mut links = Vec::new();
    for table in &all {
        links.push((table.clone(), links_of(db, table)?));
    }
    let mut found: Vec<(String, String, usize)> = Vec::new();
    for (table, _) in &links {
        if let Some((whose, depth)) = whose(table, &quoted(table), &links, 0) {
            found.push((table.clone(), whose, depth));
        }
    }
    found.sort_by_key(|(_, _, depth)| std::cmp::Reverse(*depth));
    Ok(found.into_iter().map(|(table, whose, _)| (table, whose)).collect())
}

fn links_of(db: &Connection, table: &str) -> Result<Vec<Link>, rusqlite::Error> {
    let rows: Vec<(i64, String, String, String)> = db
        .prepare("SELECT id, \"table\", \"from\", \"to\" FROM pragma_foreign_key_list(?1) ORDER BY id, seq")?
        .query_map([table], |row| Ok((row.get(0)?, row.get(1)?, row.get(2)?, row.get(3)?)))?
        .collect::<Result<_, _>>()?;
    let mut links: Vec<(i64, Link)> = Vec::new();
    for (id, parent, from, to) in rows {
        match links.last_mut() {
            Some((known, link)) if *known == id => link.columns.push((from, to)),
            _ => links.push((id, Link { parent, columns: vec![(from, to)] })),
        }
    }
    Ok(links.into_iter().map(|(_, link)| link).collect())
}

/// The condition that a row of `table` (named `alias` in the query) leads to client `?1`, and by how many steps at most.
fn whose(table: &str, alias: &str, links: &[(String, Vec<Link>)], depth: usize) -> Option<(String, usize)> {
    if table == "client" {
        return Some((format!("{alias}.id = ?1"), 0));
    }
    // No chain of keys is longer than there are tables.
    let (_, own) = links.iter().find(|(name, _)| name == table).filter(|_| depth <= links.len())?;
    let mut conditions = Vec::new();
    let mut longest = 0;
    for (n, link) in own.iter().enumerate() {
        let parent_alias = format!("p{depth}_{n}");
        let Some((condition, steps)) = whose(&link.parent, &parent_alias, links, depth + 1) else { continue };
        let same: Vec<String> =
            link.columns.iter().map(|(from, to)| format!("{parent_alias}.{} = {alias}.{}", quoted(to), quoted(from))).collect();
        conditions.push(format!(
            "EXISTS (SELECT 1 FROM {} {parent_alias} WHERE {} AND {condition})",
            quoted(&link.parent),
            same.join(" AND ")
        ));
        longest = longest.max(steps + 1);
    }
    if conditions.is_empty() { None } else { Some((conditions.join(" OR "), longest)) }
}

#[cfg(test)]
#[path = "tests/forget.rs"]
mod tests;
