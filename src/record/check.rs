//! Looks through the whole record: the file, what it must hold together, every line, the stored sound; and tidies what a crash left.

use super::chain;
use super::copy::wipe;
use super::database;
use super::error::RecordError;
use super::folder::{DATABASE_NAME, SOUND_FOLDER};
use super::forget;
use super::guard;
use super::sound::Expired;
use super::sound_file::SEALED;
use super::store::Store;
use jiff::ZonedDateTime;
use model::parse_line;
use std::path::{Path, PathBuf};

/// So many faults are told.
const TOLD: usize = 20;

/// What a check found.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct Checked {
    pub clients: u64,
    pub practices: u64,
    pub entries: u64,
    pub sounds: u64,
    pub encrypted: bool,
    /// Something is wrong: what, and what to do.
    pub faults: Vec<String>,
    /// Nothing is wrong, but somebody may want to know.
    pub notes: Vec<String>,
    pub expired: Expired,
}

impl Store {
    /// Checks the record in `folder`; none where there is none.
    ///
    /// # Errors
    /// It cannot be opened at all.
    pub fn check(folder: &Path, now: &ZonedDateTime) -> Result<Option<Checked>, RecordError> {
        let mut notes = Vec::new();
        if let Ok(Some(_alone)) = guard::alone_now(folder)
            && let half_made = half_made(folder)
            && !half_made.is_empty()
        {
            half_made.iter().for_each(|file| wipe(file));
            notes.push(
                "A half-made copy of the record, left by a command that was broken off, was deleted. The record itself is whole."
                    .to_owned(),
            );
        }
        let Some(mut store) = Self::open_existing(folder)? else { return Ok(None) };
        let mut checked = Checked { encrypted: store.is_encrypted(), notes, ..Checked::default() };
        checked.notes.extend(store.waiting_note());
        store.check_file(&mut checked)?;
        store.check_sums(&mut checked)?;
        store.check_lines(&mut checked)?;
        checked.expired = store.expire_sounds(now)?;
        store.check_sounds(&mut checked)?;
        checked.notes.extend(store.clock_note(now)?);
        checked.notes.extend(forget::asides(folder).iter().map(|aside| format!("An older record is kept aside in {}.", aside.display())));
        checked.faults.truncate(TOLD);
        Ok(Some(checked))
    }

    fn check_file(&self, checked: &mut Checked) -> Result<(), RecordError> {
        let found: Vec<String> = self.read(|db| db.prepare("PRAGMA integrity_check(20)")?.query_map([], |row| row.get(0))?.collect())?;
        let remedy = "take a backup back with `tidecount record restore FILE`; this record is set aside then";
        checked.faults.extend(found.into_iter().filter(|line| line != "ok").map(|line| format!("the file is damaged ({line}): {remedy}")));
        let broken: i64 = self.read(|db| db.query_row("SELECT count(*) FROM pragma_foreign_key_check", [], |row| row.get(0)))?;
        if broken > 0 {
            checked.faults.push(format!("{broken} rows lead to rows that are missing: {remedy}"));
        }
        // Sessions of the present form have these; without them the journal would no longer be append-only.
        let missing = self.read(missing_parts)?;
        checked.faults.extend(missing.into_iter().map(|name| format!("{name} is missing in the database: {remedy}")));
        let count = |sql: &str| self.read(|db| db.query_row(sql, [], |row| row.get::<_, i64>(0))).map(|n| u64::try_from(n).unwrap_or(0));
        checked.clients = count("SELECT count(*) FROM client")?;
        checked.practices = count("SELECT count(*) FROM session")?;
        checked.entries = count("SELECT count(*) FROM entry")?;
        Ok(())
    }

    fn check_sums(&self, checked: &mut Checked) -> Result<(), RecordError> {
        let remedy = "the rest is whole. Where you have a backup from before, take it back: `tidecount record restore FILE --replace`; this record \
                      is set aside then";
        let damage = self.read(chain::damage)?;
        checked.faults.extend(damage.iter().map(|damage| format!("{damage}: {remedy}")));
        Ok(())
    }

    fn check_lines(&self, checked: &mut Checked) -> Result<(), RecordError> {
        let faults = self.read(|db| {
            let mut faults = Vec::new();
            let mut query = db.prepare("SELECT session, seq, json FROM entry ORDER BY session, seq")?;
            let mut rows = query.query([])?;
            while let Some(row) = rows.next()? {
                let (session, seq): (i64, i64) = (row.get(0)?, row.get(1)?);
                if let Err(cause) = parse_line(&row.get::<_, String>(2)?) {
                    faults.push(format!(
                        "practice {session}, entry {seq} cannot be understood ({cause}): use the newest tidecount, or take a backup back"
                    ));
                }
            }
            Ok(faults)
        })?;
        checked.faults.extend(faults);
        Ok(())
    }

    fn check_sounds(&mut self, checked: &mut Checked) -> Result<(), RecordError> {
        if self.is_encrypted() {
            let sealed = self.seal_sounds()?;
            if sealed > 0 {
                checked.notes.push(format!("{sealed} files of sound were not encrypted yet and are now."));
            }
        }
        let sounds = self.all_sounds()?;
        checked.sounds = sounds.len() as u64;
        for sound in &sounds {
            match self.sound_path(&sound.file).map(|path| path.exists()) {
                // Killed before anything was written: nothing is missing.
                Ok(true) if sound.samples == 0 => {}
                Ok(true) => {
                    if let Err(error) = self.sound_flac(sound) {
                        checked.faults.push(error.to_string());
                    }
                }
                Ok(false) => checked.notes.push(format!(
                    "The sound of practice {} ({}) is not in the folder; its row is kept until it expires.",
                    sound.session.0, sound.file
                )),
                Err(error) => checked.faults.push(error.to_string()),
            }
        }
        let known = |name: &str| {
            sounds.iter().any(|sound| {
                sound.file == name
                    || name.strip_prefix(&sound.file).is_some_and(|rest| rest == "-journal")
                    || sound.file == format!("{name}{SEALED}")
            })
        };
        for entry in std::fs::read_dir(self.sound_folder()).into_iter().flatten().flatten() {
            let name = entry.file_name().to_string_lossy().into_owned();
            if !known(&name) {
                checked.notes.push(format!("{SOUND_FOLDER}/{name} belongs to no practice in this record. Delete it if nobody needs it."));
            }
        }
        if checked.expired.held_back > 0 {
            checked.notes.push(format!(
                "{} files of sound would have expired, but the clock may be wrong: they are kept until it is right.",
                checked.expired.held_back
            ));
        }
        Ok(())
    }

    /// Takes in what a full disk could not take, in words for the person at the machine; none where nothing waited.
    fn waiting_note(&mut self) -> Option<String> {
        match self.take_waiting() {
            Ok(0) => None,
            Ok(1) => Some(
                "One entry of an earlier practice waited beside the record, because the disk was full. It is in the record now.".to_owned(),
            ),
            Ok(taken) => Some(format!(
                "{taken} entries of an earlier practice waited beside the record, because the disk was full. They are in the record now."
            )),
            Err(error) => Some(format!("Entries of an earlier practice wait beside the record and could not be taken in: {error}.")),
        }
    }

    /// What a program does at each start: what a full disk could not take comes in, expired sound goes. Gives what should be told of that
    /// and of the clock.
    ///
    /// # Errors
    /// The database refuses.
    pub fn tidy(&mut self, now: &ZonedDateTime) -> Result<Option<String>, RecordError> {
        let waited = self.waiting_note();
        self.expire_sounds(now)?;
        if self.is_encrypted() {
            self.seal_sounds()?;
        }
        let notes: Vec<String> = waited.into_iter().chain(self.clock_note(now)?).collect();
        Ok((!notes.is_empty()).then(|| notes.join(" ")))
    }
}

/// Copies of the record that a command was broken off in the middle of.
fn half_made(folder: &Path) -> Vec<PathBuf> {
    let ours = |name: &str| name.starts_with(DATABASE_NAME) && name.ends_with(".new");
    let entries = std::fs::read_dir(folder).into_iter().flatten().flatten();
    entries.filter(|entry| entry.file_name().to_str().is_some_and(ours)).map(|entry| entry.path()).collect()
}

/// Tables and triggers of the present form that this file lacks.
fn missing_parts(db: &rusqlite::Connection) -> Result<Vec<String>, rusqlite::Error> {
    let present: Vec<String> = db.prepare("SELECT name FROM sqlite_schema")?.query_map([], |row| row.get(0))?.collect::<Result<_, _>>()?;
    Ok(database::parts()?.into_iter().filter(|name| !present.contains(name)).collect())
}

#[cfg(test)]
#[path = "tests/check.rs"]
mod tests;
