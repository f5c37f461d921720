//! Files of sound beside the record: FLAC as it is, or encrypted where the record is.
//!
//! An encrypted file is an SQLCipher database of its own that holds the same bytes in pieces. That needs no second cipher in the house,
//! each page is checked as it is read, and a file can be removed by itself when it expires, which a table inside the record could not
//! without rewriting the record. Its key is made by chance and stands in the record: a new passphrase does not touch the files.

use super::copy::{private, wipe};
use super::database;
use super::error::RecordError;
use super::passphrase::{Key, random};
use rusqlite::{Connection, OpenFlags};
use std::fs::File;
use std::io::{Read, Seek, SeekFrom, Write};
use std::path::{Path, PathBuf};

/// How the name of an encrypted file ends.
pub(super) const SEALED: &str = ".sealed";

/// A file that grows.
#[derive(Debug)]
pub(super) struct Growing {
    path: PathBuf,
    sink: Sink,
    bytes: u64,
}

#[derive(Debug)]
enum Sink {
    Plain(File),
    Sealed(Connection),
}

impl Growing {
    /// A new file; encrypted where there is a key.
    pub fn create(path: &Path, key: Option<[u8; 32]>) -> Result<Self, RecordError> {
        let file = private(path)?;
        let sink = match key {
            None => Sink::Plain(file),
            Some(key) => {
                drop(file);
                let key = Key::from_bytes(key, random()?);
                let open = || {
                    let db = database::connect(path, OpenFlags::SQLITE_OPEN_READ_WRITE, Some(&key))?;
                    db.execute_batch("CREATE TABLE piece (number INTEGER PRIMARY KEY, bytes BLOB NOT NULL) STRICT")?;
                    Ok(db)
                };
                Sink::Sealed(open().map_err(|error| RecordError::from_sqlite(path, &error))?)
            }
        };
        Ok(Self { path: path.to_owned(), sink, bytes: 0 })
    }

    /// Bytes that are surely there.
    pub fn bytes(&self) -> u64 {
        self.bytes
    }

    /// Appends, and waits for the disk.
    pub fn append(&mut self, bytes: &[u8]) -> Result<(), RecordError> {
        match &mut self.sink {
            Sink::Plain(file) => {
                file.write_all(bytes).and_then(|()| file.sync_data()).map_err(|error| RecordError::from_io(&self.path, &error))?
            }
            Sink::Sealed(db) => {
                db.execute("INSERT INTO piece (bytes) VALUES (?1)", [bytes])
                    .map_err(|error| RecordError::from_sqlite(&self.path, &error))?;
            }
        }
        self.bytes += bytes.len() as u64;
        Ok(())
    }

    /// Puts other bytes in the place of the first ones, as many; they must have been appended as one.
    pub fn replace_first(&mut self, bytes: &[u8]) -> Result<(), RecordError> {
        match &mut self.sink {
            Sink::Plain(file) => file
                .seek(SeekFrom::Start(0))
                .and_then(|_| file.write_all(bytes))
                .and_then(|()| file.seek(SeekFrom::End(0)))
                .and_then(|_| file.sync_data())
                .map_err(|error| RecordError::from_io(&self.path, &error)),
            Sink::Sealed(db) => db
                .execute("UPDATE piece SET bytes = ?1 WHERE number = 1", [bytes])
                .map(|_| ())
                .map_err(|error| RecordError::from_sqlite(&self.path, &error)),
        }
    }
}

/// The bytes of a whole file, at most `most`; what a crash left behind them is cut off.
pub(super) fn read(path: &Path, key: Option<[u8; 32]>, most: u64) -> Result<Vec<u8>, RecordError> {
    let mut bytes = Vec::new();
    if !is_sealed(path) {
        File::open(path).and_then(|file| file.take(most).read_to_end(&mut bytes)).map_err(|error| RecordError::from_io(path, &error))?;
        return Ok(bytes);
    }
    let database::Form::Sealed(salt) = database::form(path)? else {
        return Err(RecordError::Sound(format!("{} is damaged: it is not encrypted as it should be", path.display())));
    };
    let Some(key) = key else {
        return Err(RecordError::Sound(format!(
            "{} is encrypted, and its key is missing in the record: take the record back from a backup",
            path.display()
        )));
    };
    let mut collect = || -> Result<(), rusqlite::Error> {
        // Writing, so that what a crash left half-done is undone.
        let db = database::connect(path, OpenFlags::SQLITE_OPEN_READ_WRITE, Some(&Key::from_bytes(key, salt)))?;
        let mut pieces = db.prepare("SELECT bytes FROM piece ORDER BY number")?;
        for piece in pieces.query_map([], |row| row.get::<_, Vec<u8>>(0))? {
            bytes.extend(piece?);
        }
        Ok(())
    };
    collect().map_err(|error| RecordError::from_sqlite(path, &error))?;
    bytes.truncate(usize::try_from(most).unwrap_or(usize::MAX));
    Ok(bytes)
}

pub(super) fn is_sealed(path: &Path) -> bool {
    path.to_string_lossy().ends_with(SEALED)
}

/// Writes an encrypted copy beside a file that is not, read back and compared, and gives its name.
pub(super) fn seal(path: &Path, key: [u8; 32]) -> Result<PathBuf, RecordError> {
    let sealed = super::folder::beside(path, SEALED);
    wipe(&sealed);
    let bytes = read(path, None, u64::MAX)?;
    let mut growing = Growing::create(&sealed, Some(key))?;
    // The header by itself, as in a file that grew.
    let (head, rest) = bytes.split_at(bytes.len().min(super::flac::HEADER_BYTES));
    growing.append(head)?;
    for piece in rest.chunks(1 << 20) {
        growing.append(piece)?;
    }
    drop(growing);
    if read(&sealed, Some(key), u64::MAX)? == bytes {
        return Ok(sealed);
    }
    wipe(&sealed);
    Err(RecordError::Sound(format!(
        "{} could not be encrypted: what was written differs. Try again; this disk may be failing",
        path.display()
    )))
}
