//! Sets, changes and removes the passphrase of a record.

use super::copy::rekey;
use super::error::RecordError;
use super::folder::DATABASE_NAME;
use super::guard;
use super::passphrase::{self, Key, Passphrase};
use super::store::Store;
use super::{database, folder, forget};
use std::path::{Path, PathBuf};

/// What was done.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct Rekeyed {
    /// Files of sound that were encrypted with it.
    pub sounds: usize,
    /// Older records in the folder, set aside by a restore: they stay as they are.
    pub aside: Vec<PathBuf>,
}

impl Store {
    /// Whether there is a record in `folder` and it is encrypted; none where there is none. Asks for no passphrase.
    ///
    /// # Errors
    /// The file cannot be read or is no database.
    pub fn encrypted(folder: &Path) -> Result<Option<bool>, RecordError> {
        Ok(match database::form(&folder.join(DATABASE_NAME))? {
            database::Form::Absent => None,
            database::Form::Empty => return Err(RecordError::Emptied { path: folder.join(DATABASE_NAME) }),
            database::Form::Plain => Some(false),
            database::Form::Sealed(_) => Some(true),
        })
    }

    /// Makes sure that the passphrase at hand opens the record, before somebody is asked for a new one.
    ///
    /// # Errors
    /// It is missing or wrong.
    pub fn unlock(folder: &Path) -> Result<(), RecordError> {
        database::key_of(&folder.join(DATABASE_NAME)).map(|_| ())
    }

    /// Encrypts the record in `folder` with a new passphrase, or with none decrypts it. A record that is not there yet is made. The old file
    /// is overwritten when the new one is whole; a crash at any instant leaves one whole record. Stored sound is encrypted with it; when the
    /// passphrase goes, what is stored stays encrypted, by a key that then stands readable in the record.
    ///
    /// # Errors
    /// Another program has the record open, the present passphrase is missing or wrong, or the disk has no room for a second copy. The
    /// record is as before then.
    pub fn set_passphrase(folder: &Path, new: Option<&Passphrase>) -> Result<Rekeyed, RecordError> {
        folder::create(folder)?;
        let path = folder.join(DATABASE_NAME);
        let key = new.map(Key::fresh).transpose()?;
        let alone = guard::alone(folder)?;
        match database::form(&path)? {
            database::Form::Absent => database::make(&path, key.as_ref())?,
            database::Form::Empty => return Err(RecordError::Emptied { path }),
            _ => {
                let old = database::key_of(&path)?;
                database::inspect(&path, old.as_ref())?;
                Self::open_held(folder)?.empty_waiting()?;
                rekey(&path, old.as_ref(), key.as_ref())?;
            }
        }
        if let Some(key) = &key {
            passphrase::remember(key);
        }
        let mut store = Self::open_guarded(folder, alone)?;
        let sounds = if store.is_encrypted() { store.seal_sounds()? } else { 0 };
        Ok(Rekeyed { sounds, aside: forget::asides(folder) })
    }
}

#[cfg(test)]
#[path = "tests/encrypt.rs"]
pub(super) mod tests;
