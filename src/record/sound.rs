//! Stored sound: what there is, its bytes, and its end.

use super::copy::wipe;
use super::error::RecordError;
use super::flac::{Encoder, HEADER_BYTES, Header};
use super::folder::SOUND_FOLDER;
use super::passphrase::random;
use super::sound_file::{Growing, SEALED, is_sealed, read, seal};
use super::store::Store;
use super::{folder, time};
use jiff::{Span, ToSpan, ZonedDateTime};
use model::SessionId;
use rusqlite::{OptionalExtension, params};
use std::path::{Path, PathBuf};

/// A clock that runs so far ahead of everything in the record is taken for wrong, and nothing expires by it.
const BELIEVED_AHEAD: i32 = 366;
/// Bytes that are written together: some seconds of sound.
const PIECE: usize = 128 << 10;

/// One file of sound.
#[derive(Debug, Clone, PartialEq)]
pub struct StoredSound {
    pub id: i64,
    pub session: SessionId,
    /// Part of the practice, from 1.
    pub part: u32,
    /// Its first sample on the sample clock of the part, the clock of the journal's `at_s`, s.
    pub from_s: f64,
    pub samples: u64,
    pub rate_hz: u32,
    /// Times of day with their zone.
    pub made_at: String,
    pub expires_at: String,
    /// Its file in the folder `sound`.
    pub file: String,
    bytes: u64,
}

impl StoredSound {
    /// Where it ends on the sample clock of the part, s.
    #[must_use]
    pub fn to_s(&self) -> f64 {
        self.from_s + self.samples as f64 / f64::from(self.rate_hz.max(1))
    }
}

/// What expired.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq)]
pub struct Expired {
    pub deleted: usize,
    /// The clock runs more than a year ahead of the record and may be wrong: these were not deleted.
    pub held_back: usize,
}

const SOUND: &str =
    "SELECT s.id, s.session, s.part, s.from_s, s.samples, s.rate_hz, s.made_at, s.expires_at, s.file, s.bytes FROM stored_sound s";

fn sound(row: &rusqlite::Row<'_>) -> Result<StoredSound, rusqlite::Error> {
    Ok(StoredSound {
        id: row.get(0)?,
        session: SessionId(row.get(1)?),
        part: row.get(2)?,
        from_s: row.get(3)?,
        samples: u64::try_from(row.get::<_, i64>(4)?).unwrap_or(0),
        rate_hz: row.get(5)?,
        made_at: row.get(6)?,
        expires_at: row.get(7)?,
        file: row.get(8)?,
        bytes: u64::try_from(row.get::<_, i64>(9)?).unwrap_or(0),
    })
}

impl Store {
    /// What is stored of a client's practices, oldest first; not what a kill cut off before anything was written.
    ///
    /// # Errors
    /// The database refuses.
    pub fn stored_sounds(&self, client: &str) -> Result<Vec<StoredSound>, RecordError> {
        Ok(self.begun_sounds(client)?.into_iter().filter(|sound| sound.samples > 0).collect())
    }

    /// These too: each has its file.
    pub(super) fn begun_sounds(&self, client: &str) -> Result<Vec<StoredSound>, RecordError> {
        self.read(|db| {
            db.prepare(&format!("{SOUND} JOIN session p ON p.id = s.session JOIN client c ON c.id = p.client WHERE c.name = ?1 ORDER BY s.session, s.part, s.id"))?
                .query_map([client], sound)?
                .collect()
        })
    }

    /// All that is stored.
    ///
    /// # Errors
    /// The database refuses.
    pub fn all_sounds(&self) -> Result<Vec<StoredSound>, RecordError> {
        self.read(|db| db.prepare(&format!("{SOUND} ORDER BY s.id"))?.query_map([], sound)?.collect())
    }

    /// A sound as a whole FLAC file; also one whose practice was killed, as far as it was written.
    ///
    /// # Errors
    /// The file is gone or damaged.
    pub fn sound_flac(&self, sound: &StoredSound) -> Result<Vec<u8>, RecordError> {
        let path = self.sound_path(&sound.file)?;
        let mut bytes = read(&path, self.sound_key()?, sound.bytes)?;
        if bytes.len() as u64 != sound.bytes || bytes.len() < HEADER_BYTES {
            return Err(RecordError::Sound(format!(
                "{} is shorter than it was: it was cut off. Take it back from a backup",
                path.display()
            )));
        }
        // A killed practice never came to write the length.
        let unfinished = bytes.iter().skip(21).take(5).enumerate().all(|(n, byte)| if n == 0 { byte & 0x0F == 0 } else { *byte == 0 });
        if unfinished {
            let header = Header { rate_hz: sound.rate_hz, samples: sound.samples, md5: [0; 16] }.bytes();
            bytes.iter_mut().zip(header).for_each(|(to, byte)| *to = byte);
        }
        Ok(bytes)
    }

    /// Deletes all stored sound of a client, overwriting it, and gives how many files that were.
    ///
    /// # Errors
    /// The database refuses.
    pub fn delete_sounds(&mut self, client: &str) -> Result<usize, RecordError> {
        let sounds = self.begun_sounds(client)?;
        self.remove(&sounds)
    }

    /// Deletes what has expired. Done at each start.
    ///
    /// # Errors
    /// The database refuses.
    pub fn expire_sounds(&mut self, now: &ZonedDateTime) -> Result<Expired, RecordError> {
        let over = |sound: &StoredSound| time::read(&sound.expires_at).is_some_and(|end| end <= *now);
        let sounds: Vec<StoredSound> = self.all_sounds()?.into_iter().filter(over).collect();
        if sounds.is_empty() {
            return Ok(Expired::default());
        }
        let last = self.last_time()?;
        let believed = last.is_none_or(|last| last.checked_add(Span::new().days(BELIEVED_AHEAD)).is_ok_and(|end| *now < end));
        if !believed {
            return Ok(Expired { deleted: 0, held_back: sounds.len() });
        }
        Ok(Expired { deleted: self.remove(&sounds)?, held_back: 0 })
    }

    /// The latest time of day at which a practice began.
    pub(super) fn last_time(&self) -> Result<Option<ZonedDateTime>, RecordError> {
        let times: Vec<String> = self.read(|db| db.prepare("SELECT started_at FROM part")?.query_map([], |row| row.get(0))?.collect())?;
        Ok(times.iter().filter_map(|text| time::read(text)).max_by_key(ZonedDateTime::timestamp))
    }

    /// The files first: a row without a file is tidied later, a file without a row would never be.
    fn remove(&mut self, sounds: &[StoredSound]) -> Result<usize, RecordError> {
        for sound in sounds {
            wipe(&self.sound_path(&sound.file)?);
        }
        self.change(|tx| {
            for sound in sounds {
                tx.execute("DELETE FROM stored_sound WHERE id = ?1", [sound.id])?;
            }
            Ok(sounds.len())
        })
    }

    /// The folder of stored sound.
    #[must_use]
    pub fn sound_folder(&self) -> PathBuf {
        self.folder.join(SOUND_FOLDER)
    }

    /// A name from the record must not lead elsewhere.
    pub(super) fn sound_path(&self, file: &str) -> Result<PathBuf, RecordError> {
        let plain = Path::new(file).file_name().is_some_and(|name| name == file);
        if plain {
            Ok(self.sound_folder().join(file))
        } else {
            Err(RecordError::Sound(format!("the record names a file of sound {file:?} outside its folder")))
        }
    }

    /// The key of encrypted sound, where one was made.
    pub(super) fn sound_key(&self) -> Result<Option<[u8; 32]>, RecordError> {
        let key: Option<Vec<u8>> = self.read(|db| db.query_row("SELECT key FROM sound_key", [], |row| row.get(0)).optional())?;
        Ok(key.and_then(|key| key.try_into().ok()))
    }

    fn sound_key_made(&mut self) -> Result<[u8; 32], RecordError> {
        let fresh: [u8; 32] = random()?;
        self.change(|tx| tx.execute("INSERT INTO sound_key (id, key) VALUES (1, ?1) ON CONFLICT DO NOTHING", [fresh.as_slice()]))?;
        self.sound_key()?.ok_or_else(|| RecordError::Sound("the key of stored sound could not be kept".to_owned()))
    }

    /// Encrypts every file of sound that is not, and gives how many those were. Can be broken off and done again.
    ///
    /// # Errors
    /// A file cannot be read or written; those before it are done.
    pub(super) fn seal_sounds(&mut self) -> Result<usize, RecordError> {
        let mut done = 0;
        for sound in self.all_sounds()? {
            let path = self.sound_path(&sound.file)?;
            if is_sealed(&path) {
                // Broken off between the two, the time before.
                wipe(&self.sound_path(sound.file.trim_end_matches(SEALED))?);
            } else if path.exists() {
                let key = self.sound_key_made()?;
                seal(&path, key)?;
                self.change(|tx| {
                    tx.execute("UPDATE stored_sound SET file = ?2 WHERE id = ?1", params![sound.id, format!("{}{SEALED}", sound.file)])
                })?;
                wipe(&path);
                done += 1;
            }
        }
        Ok(done)
    }
}

/// Stores the sound of a practice as it comes.
pub struct SoundRecorder {
    store: Store,
    id: i64,
    file: Growing,
    encoder: Encoder,
    waiting: Vec<u8>,
    /// When it will be deleted.
    pub expires_at: ZonedDateTime,
}

impl SoundRecorder {
    /// Begins a file for the present part of `session`. `from_s`: its first sample on the sample clock; `days`: how long it is kept.
    ///
    /// # Errors
    /// The folder, the file or the record cannot be written.
    pub fn begin(
        mut store: Store,
        session: SessionId,
        from_s: f64,
        rate_hz: u32,
        days: u32,
        now: &ZonedDateTime,
    ) -> Result<Self, RecordError> {
        let encoder = Encoder::new(rate_hz)?;
        folder::create(&store.sound_folder())?;
        let expires_at = now.checked_add(i64::from(days).days()).map_err(|_| RecordError::SoundDays { days })?;
        let key = if store.is_encrypted() { Some(store.sound_key_made()?) } else { None };
        let chance: [u8; 4] = random()?;
        let chance: String = chance.iter().map(|byte| format!("{byte:02x}")).collect();
        let ending = if key.is_some() { SEALED } else { "" };
        let name = format!("practice-{}-{}-{chance}.flac{ending}", session.0, now.strftime("%Y%m%dT%H%M%S"));
        let id = store.change(|tx| {
            tx.execute(
                "INSERT INTO stored_sound (session, part, file, from_s, samples, bytes, rate_hz, made_at, expires_at)
                 SELECT ?1, max(number), ?2, ?3, 0, 0, ?4, ?5, ?6 FROM part WHERE session = ?1",
                params![session.0, name, from_s, rate_hz, now.to_string(), expires_at.to_string()],
            )?;
            Ok(tx.last_insert_rowid())
        })?;
        let begun = Growing::create(&store.sound_path(&name)?, key).and_then(|mut file| {
            // As long as it grows, its length is not known.
            file.append(&Header { rate_hz, samples: 0, md5: [0; 16] }.bytes())?;
            Ok(file)
        });
        match begun {
            Ok(file) => Ok(Self { store, id, file, encoder, waiting: Vec::new(), expires_at }),
            Err(error) => {
                wipe(&store.sound_path(&name)?);
                store.change(|tx| tx.execute("DELETE FROM stored_sound WHERE id = ?1", [id]))?;
                Err(error)
            }
        }
    }

    /// Takes the next samples, −1 to 1.
    ///
    /// # Errors
    /// The disk is full, for instance; what was stored before stays.
    pub fn push(&mut self, sound: &[f32]) -> Result<(), RecordError> {
        self.encoder.push(sound, &mut self.waiting)?;
        if self.waiting.len() >= PIECE { self.write() } else { Ok(()) }
    }

    /// Whether the client has taken the consent back since.
    ///
    /// # Errors
    /// The record cannot be read.
    pub fn is_withdrawn(&self, client: &str) -> Result<bool, RecordError> {
        Ok(matches!(self.store.sound_consent(client)?, super::SoundConsent::Withdrawn { .. }))
    }

    /// Ends the file. Gives the store back.
    ///
    /// # Errors
    /// As [`SoundRecorder::push`].
    pub fn finish(mut self) -> Result<Store, RecordError> {
        self.encoder.finish(&mut self.waiting)?;
        self.write()?;
        self.file.replace_first(&self.encoder.header().bytes())?;
        Ok(self.store)
    }

    fn write(&mut self) -> Result<(), RecordError> {
        let piece = std::mem::take(&mut self.waiting);
        self.file.append(&piece)?;
        let (bytes, samples) = (self.file.bytes(), self.encoder.samples());
        let number = |n: u64| i64::try_from(n).unwrap_or(i64::MAX);
        self.store
            .change(|tx| {
                tx.execute(
                    "UPDATE stored_sound SET samples = ?2, bytes = ?3 WHERE id = ?1",
                    params![self.id, number(samples), number(bytes)],
                )
            })
            .map(|_| ())
    }
}

#[cfg(test)]
#[path = "tests/sound.rs"]
pub(super) mod tests;
