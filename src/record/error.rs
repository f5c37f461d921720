//! What can go wrong with the record, each with its remedy.

use std::path::{Path, PathBuf};

/// Why the record cannot be read or written. The text names the file and what to do.
#[derive(Debug, thiserror::Error)]
#[non_exhaustive]
pub enum RecordError {
    /// The data folder cannot be had.
    #[error("the data folder {path} cannot be used ({cause}): make it writable for you, or name another with --data DIR or TIDECOUNT_DATA", path = path.display())]
    Folder { path: PathBuf, cause: String },
    /// There is no home folder to put the data folder in.
    #[error("there is no home folder to keep the record in: name a folder with --data DIR or TIDECOUNT_DATA")]
    NoHome,
    /// The database file is damaged or something else altogether. It was left as it is.
    #[error(
        "{path} is damaged or not a record of tidecount ({cause}). It has been left as it is. \
         To begin a new record, set it aside first: rename it to {aside} (and any {name}-wal beside it), or name another folder with --data DIR",
        path = path.display(), name = name_of(path), aside = aside(path)
    )]
    Damaged { path: PathBuf, cause: String },
    /// A newer version wrote the database. It was left as it is.
    #[error(
        "{path} was written by a newer tidecount (format {found}; this one knows up to {known}). It has been left as it is. \
         Use the newer version, or name another folder with --data DIR", path = path.display()
    )]
    Newer { path: PathBuf, found: i64, known: i64 },
    /// The database refused, for instance because the disk is full.
    #[error("the record {path} could not be read or written: {cause}. See that the disk has room and that the file is writable for you", path = path.display())]
    Database { path: PathBuf, cause: String },
    /// A JSON Lines file cannot be used.
    #[error("the journal file {path} could not be read or written ({cause}): name another with --journal FILE", path = path.display())]
    JournalFile { path: PathBuf, cause: String },
    /// A JSON Lines file already holds another practice.
    #[error("{path} already holds another practice; nothing was written to it. Name another file with --journal FILE, or move this one away", path = path.display())]
    JournalInUse { path: PathBuf },
    /// A line of a journal cannot be understood.
    #[error("{place}, line {line}: this is not a journal entry ({cause}). Remove the line or take the file from a backup")]
    BadLine { place: String, line: usize, cause: String },
    /// A number that must be finite is not; the entry was not kept.
    #[error("an entry of kind {kind} was not kept: {field} is not a finite number. Please report this fault of tidecount")]
    NotFinite { kind: String, field: String },
    /// No such practice.
    #[error("there is no practice with number {id}: `tidecount history` lists those that there are")]
    NoSuchSession { id: i64 },
    /// The practice is over and takes no more entries.
    #[error("practice {id} has ended and takes no more entries: start a new one")]
    Ended { id: i64 },
    /// Another process is leading this practice now.
    #[error("practice {id} is under way in another tidecount: end that one first")]
    UnderWay { id: i64 },
    /// A practice from another computer cannot be taken in.
    #[error("the practice of {started} cannot be taken in ({cause}). Nothing was added: ask for the results to be made again, with --since DATE")]
    NotReceived { started: String, cause: String },
    /// The thread that writes the journal is gone.
    #[error("the journal is no longer written: its writer stopped. Start the practice again")]
    WriterGone,
}

fn name_of(path: &Path) -> String {
    path.file_name().unwrap_or(path.as_os_str()).to_string_lossy().into_owned()
}

fn aside(path: &Path) -> String {
    format!("{}.aside", name_of(path))
}

impl RecordError {
    /// Wraps a database error, telling damage from refusal.
    pub(super) fn from_sqlite(path: &Path, error: &rusqlite::Error) -> Self {
        let path = path.to_path_buf();
        let cause = error.to_string();
        match error.sqlite_error_code() {
            Some(rusqlite::ErrorCode::NotADatabase | rusqlite::ErrorCode::DatabaseCorrupt) => Self::Damaged { path, cause },
            _ => Self::Database { path, cause },
        }
    }
}
