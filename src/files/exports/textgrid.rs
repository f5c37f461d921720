//! `tidecount export textgrid`: for stored sound out of the record, or for a recording and the journal of its practice.

use std::io::Write;
use std::path::{Path, PathBuf};

use crate::error::Failure;
use crate::exports::out::{NewFile, Target, failed, free};
use crate::exports::read::{Selection, no_such_client, open};
use crate::number_words::counted;
use audio::decode::SoundReader;
use export::{Sound, parts_of, text_grid};
use record::{KeptHead, KeptPractice, Store, StoredSound, create_folder, read_journal};
use session::Entry;

/// A recording and the journal of its practice.
#[derive(Debug, Clone)]
pub struct Recording {
    pub journal: PathBuf,
    pub sound: PathBuf,
    /// Where the practice was interrupted and continued: the part that the sound belongs to, from 1.
    pub part: Option<usize>,
}

/// Writes the TextGrid of a recording.
///
/// # Errors
/// The sound or its journal cannot be read, or the file cannot be written.
pub fn of_recording(recording: &Recording, target: &Target) -> Result<(), Failure> {
    let Recording { journal, sound, part } = recording;
    let text =
        std::fs::read_to_string(journal).map_err(|why| Failure::file(journal, format!("cannot be read: {why}. Check the file's name")))?;
    let mut parts = parts_of(read_journal(&journal.display().to_string(), &text)?.entries);
    let count = parts.len();
    let number = match (*part, count) {
        (_, 0) => return Err(Failure::file(journal, "the journal is empty")),
        (None, 1) => 1,
        (Some(number), count) if (1..=count).contains(&number) => number,
        (_, count) => {
            return Err(Failure::file(
                journal,
                format!("the practice has {count} parts, each with its own sound: say with --part which one {} is", sound.display()),
            ));
        }
    };
    let entries = parts.swap_remove(number - 1);
    let grid = text_grid(&entries, Sound { length_s: length_s(sound)?, begins_at_s: 0.0 });
    if grid.outside > 0 {
        eprintln!("Left out, because outside the sound: {}.", counted(grid.outside, "event"));
    }
    target.write(|to| to.write_all(grid.text.as_bytes()).map_err(failed))
}

/// The length of a sound file, s.
fn length_s(path: &Path) -> Result<f64, Failure> {
    let mut reader = SoundReader::open(path)?;
    let mut samples = 0_usize;
    while let Some(piece) = reader.read() {
        samples += piece.len();
    }
    if samples == 0 {
        return Err(Failure::file(path, "there is no sound in it"));
    }
    Ok(samples as f64 / f64::from(reader.rate_hz()))
}

/// Writes the stored sounds of the record into a folder, each with its TextGrid.
///
/// # Errors
/// There is no sound, it cannot be read, or a file cannot be written.
pub fn of_record(selection: &Selection, target: &Target) -> Result<(), Failure> {
    let store = open(&selection.data)?;
    let clients = store.clients()?;
    let wanted = selection.client.as_deref();
    if let Some(client) = wanted.filter(|client| clients.iter().all(|known| known != client)) {
        return Err(Failure::Options(no_such_client(client, &clients)));
    }
    let mut found: Vec<(KeptHead, StoredSound)> = Vec::new();
    for client in clients.iter().filter(|client| wanted.is_none_or(|wanted| wanted == *client)) {
        let heads = store.kept_heads(Some(client))?;
        for sound in store.stored_sounds(client)? {
            let head = heads.iter().find(|head| head.id == sound.session && !head.under_way);
            let day = |head: &&KeptHead| {
                let day = head.started_at.date();
                selection.from.is_none_or(|from| day >= from) && selection.to.is_none_or(|to| day <= to)
            };
            found.extend(head.filter(day).map(|head| (head.clone(), sound)));
        }
    }
    if found.is_empty() {
        return Err(Failure::Missing(
            "there is no stored sound from these days. Sound is kept only where the client agreed, by page and by voice; for a recording, give --journal and --sound".to_owned(),
        ));
    }
    let Some(folder) = target.file() else {
        return Err(Failure::Options(format!("there are {} stored sounds: name a folder for them with --out FOLDER", found.len())));
    };
    write_all(&store, found, folder, target.force)
}

/// Writes each sound with its TextGrid under one name, as Praat pairs them.
fn write_all(store: &Store, found: Vec<(KeptHead, StoredSound)>, folder: &Path, force: bool) -> Result<(), Failure> {
    let names: Vec<String> = found.iter().map(|(head, sound)| name_of(head, sound)).collect();
    for name in &names {
        free(&folder.join(format!("{name}.TextGrid")), force)?;
        free(&folder.join(format!("{name}.flac")), force)?;
    }
    create_folder(folder)?;
    let count = found.len();
    let mut open: Option<KeptPractice> = None;
    for ((head, sound), name) in found.into_iter().zip(names) {
        if open.as_ref().is_none_or(|practice| practice.head.id != head.id) {
            open = Some(store.kept(head)?);
        }
        let part = usize::try_from(sound.part).unwrap_or(0).checked_sub(1);
        let entries: Vec<Entry> = open
            .iter()
            .zip(part)
            .filter_map(|(practice, part)| practice.parts.get(part))
            .flat_map(|part| &part.entries)
            .map(|kept| kept.entry.clone())
            .collect();
        let grid = text_grid(&entries, Sound { length_s: sound.to_s() - sound.from_s, begins_at_s: sound.from_s });
        let mut file = NewFile::begin(&folder.join(format!("{name}.flac")), force)?;
        file.writer.write_all(&store.sound_flac(&sound)?).map_err(failed)?;
        file.finish()?;
        let mut file = NewFile::begin(&folder.join(format!("{name}.TextGrid")), force)?;
        file.writer.write_all(grid.text.as_bytes()).map_err(failed)?;
        file.finish()?;
    }
    eprintln!(
        "{}: {}, each with its TextGrid. A voice gives away who is speaking: keep them as carefully as the record.",
        folder.display(),
        counted(count, "sound")
    );
    Ok(())
}

/// Says when it was and nothing of whom.
fn name_of(head: &KeptHead, sound: &StoredSound) -> String {
    format!("practice-{}-{}-part-{}-{}", head.id.0, head.started_at.strftime("%Y-%m-%d"), sound.part, sound.id)
}
