//! Databases beside the record that are kept like it: encrypted with the same passphrase.

use super::database::{connect, connect_to_look, key_of};
use super::error::RecordError;
use super::passphrase::{Key, remember};
use rusqlite::{Connection, OpenFlags};
use std::path::Path;
use zeroize::Zeroizing;

/// What opens such a file.
#[derive(Debug)]
pub struct KeptLike(Option<Key>);

impl KeptLike {
    /// The key of the file at `path`, as it is remembered, given or asked for; of a new file, a fresh one where a passphrase is
    /// given. None for a file that is not encrypted.
    ///
    /// # Errors
    /// There is no passphrase, or it does not open the file.
    pub fn of(path: &Path) -> Result<Self, RecordError> {
        let key = key_of(path)?;
        if let Some(key) = &key {
            remember(key);
        }
        Ok(Self(key))
    }

    /// A connection to the file.
    pub fn connect(&self, path: &Path, flags: OpenFlags) -> Result<Connection, rusqlite::Error> {
        connect(path, flags, self.0.as_ref())
    }

    /// A connection that cannot write; what a crash left half-written is taken back first.
    pub fn connect_to_look(&self, path: &Path) -> Result<Connection, rusqlite::Error> {
        connect_to_look(path, self.0.as_ref())
    }

    /// As `ATTACH … KEY` takes it; empty for none.
    pub fn spec(&self) -> Zeroizing<String> {
        self.0.as_ref().map(Key::spec).unwrap_or_default()
    }
}
