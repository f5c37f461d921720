//! What can go wrong with the record, each with its remedy.

use super::chain::Damage;
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
         Where you have a backup, take it back: tidecount record restore FILE. \
         To begin a new record, set this one aside first: rename it to {aside} (and any {name}-wal beside it), or name another folder with --data DIR",
        path = path.display(), name = name_of(path), aside = aside(path)
    )]
    Damaged { path: PathBuf, cause: String },
    /// The file is there and holds nothing. It was left as it is.
    #[error(
        "{path} is empty: 0 bytes. A record never is, so it was cut off, for instance by a fault of the disk. No new one was begun in its place. \
         Where you have a backup, take it back: tidecount record restore FILE. To begin a new record, remove the empty file first",
        path = path.display()
    )]
    Emptied { path: PathBuf },
    /// A folder, a pipe or a device, or a link to one or to nothing.
    #[error(
        "{path} is no file, or a link that leads to none (a folder, a pipe, a disk that is not there now). Nothing was read or written: \
         see where it leads with ls -l, or name another folder with --data DIR",
        path = path.display()
    )]
    NoFile { path: PathBuf },
    /// What stands in the file is not as it was written, but the rest of it can be used.
    #[error(
        "{path} is damaged: {damage}. The rest of the record is whole and was left as it is. `tidecount record check` lists the damage. \
         Where you have a backup from before, take it back: tidecount record restore FILE --replace; this record is set aside then",
        path = path.display(), damage = told(damage)
    )]
    DamagedEntries { path: PathBuf, damage: Vec<Damage> },
    /// A newer version wrote the database. It was left as it is.
    #[error(
        "{path} was written by a newer tidecount (format {found}; this one knows up to {known}). It has been left as it is. \
         Use the newer version, or name another folder with --data DIR", path = path.display()
    )]
    Newer { path: PathBuf, found: i64, known: i64 },
    /// The record is encrypted and nobody gave the passphrase. It was left as it is.
    #[error(
        "{path} is encrypted (or damaged beyond knowing it again), and no passphrase was given. It has been left as it is. Set TIDECOUNT_PASSPHRASE, \
         name a file with TIDECOUNT_PASSPHRASE_FILE, or start the command in a terminal, where it is asked for", path = path.display()
    )]
    Locked { path: PathBuf },
    /// The passphrase does not open the record. It was left as it is.
    #[error(
        "{path} does not open with this passphrase: it is another one, or the file is damaged or not a record of tidecount. It has been left as it is. \
         Try the passphrase again; where it is right, take a backup back with `tidecount record restore FILE`", path = path.display()
    )]
    WrongPassphrase { path: PathBuf },
    /// A passphrase cannot be had or taken.
    #[error("{0}")]
    Passphrase(String),
    /// Other programs have the record open, and the work needs it alone.
    #[error("{path} is open in another tidecount (a practice, the page, another command). Nothing was changed: end that one first, then try again", path = path.display())]
    InUse { path: PathBuf },
    /// Record or folder cannot be written.
    #[error(
        "{path} or its folder is read-only here ({cause}). Nothing was written: make both writable for you, or name another folder with --data DIR",
        path = path.display()
    )]
    ReadOnly { path: PathBuf, cause: String },
    /// The disk is full.
    #[error("{path} could not be written: the disk is full ({cause}). What was kept before is safe: make room on that disk, then start again", path = path.display())]
    DiskFull { path: PathBuf, cause: String },
    /// A file beside the record cannot be read or written.
    #[error("{path}: {cause}. {remedy}", path = path.display())]
    File { path: PathBuf, cause: String, remedy: String },
    /// The record has something that the backup lacks.
    #[error(
        "{path} has {more} that the backup lacks. Nothing was changed: make a backup of it first (`tidecount record backup FILE`), then add --replace; \
         the present record is kept aside then, too", path = path.display()
    )]
    HasMore { path: PathBuf, more: String },
    /// The record knows nobody of this name, and nothing of theirs is in the folder.
    #[error("nothing is kept of anybody called {client:?} in {folder}: `tidecount history` shows the names", folder = folder.display())]
    NoSuchClient { client: String, folder: PathBuf },
    /// Stored sound cannot be written or read.
    #[error("{0}")]
    Sound(String),
    /// Sound cannot be kept for so long.
    #[error("sound cannot be kept for {days} days: take 1 to 3650")]
    SoundDays { days: u32 },
    /// A goal cannot be kept or marked.
    #[error("{0}")]
    Goal(String),
    /// The database refused, for instance because the disk is full.
    #[error("the record {path} could not be read or written: {cause}. See that the disk has room and that the file is writable for you", path = path.display())]
    Database { path: PathBuf, cause: String },
    /// A value in the record is none that was ever written there.
    #[error(
        "{path} holds something that cannot be read ({cause}): it is damaged. `tidecount record check` says where; \
         where you have a backup from before, take it back: tidecount record restore FILE --replace",
        path = path.display()
    )]
    Unreadable { path: PathBuf, cause: String },
    /// A JSON Lines file cannot be used.
    #[error("the journal file {path} could not be read or written ({cause}): name another with --journal FILE", path = path.display())]
    JournalFile { path: PathBuf, cause: String },
    /// A JSON Lines file already holds another practice.
    #[error("{path} already holds another practice; nothing was written to it. Name another file with --journal FILE, or move this one away", path = path.display())]
    JournalInUse { path: PathBuf },
    /// A line of a journal cannot be understood, or an entry holds a number that is not finite and was not kept.
    #[error(transparent)]
    Line(#[from] model::LineError),
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
    #[error(
        "the practice of {started} cannot be taken in ({cause}). Nothing was added: ask for the results to be made again, with --since DATE"
    )]
    NotReceived { started: String, cause: String },
    /// The thread that writes the journal is gone.
    #[error("the journal is no longer written: its writer stopped. Start the practice again")]
    WriterGone,
}

/// A few of them by name.
fn told(damage: &[Damage]) -> String {
    const NAMED: usize = 5;
    let mut text = damage.iter().take(NAMED).map(ToString::to_string).collect::<Vec<_>>().join("; ");
    if damage.len() > NAMED {
        text.push_str(&format!("; and {} more", damage.len() - NAMED));
    }
    text
}

fn name_of(path: &Path) -> String {
    path.file_name().unwrap_or(path.as_os_str()).to_string_lossy().into_owned()
}

fn aside(path: &Path) -> String {
    format!("{}.aside", name_of(path))
}

/// What was read is not what it should be; the disk itself did its work.
pub(super) fn is_content(error: &rusqlite::Error) -> bool {
    matches!(
        error,
        rusqlite::Error::FromSqlConversionFailure(..)
            | rusqlite::Error::InvalidColumnType(..)
            | rusqlite::Error::IntegralValueOutOfRange(..)
            | rusqlite::Error::Utf8Error(..)
    )
}

impl RecordError {
    /// Whether the same may succeed later: the disk may get room, another program may end.
    pub(super) fn may_pass(&self) -> bool {
        matches!(self, Self::DiskFull { .. } | Self::Database { .. } | Self::InUse { .. } | Self::ReadOnly { .. } | Self::File { .. })
    }

    /// Wraps a database error, telling damage from refusal.
    pub(super) fn from_sqlite(path: &Path, error: &rusqlite::Error) -> Self {
        let path = path.to_path_buf();
        let cause = error.to_string();
        match error.sqlite_error_code() {
            Some(rusqlite::ErrorCode::NotADatabase | rusqlite::ErrorCode::DatabaseCorrupt) => Self::Damaged { path, cause },
            None if is_content(error) => Self::Unreadable { path, cause },
            Some(rusqlite::ErrorCode::ReadOnly | rusqlite::ErrorCode::CannotOpen) => Self::ReadOnly { path, cause },
            Some(rusqlite::ErrorCode::DiskFull) => Self::DiskFull { path, cause },
            Some(rusqlite::ErrorCode::DatabaseBusy | rusqlite::ErrorCode::DatabaseLocked) => Self::InUse { path },
            _ => Self::Database { path, cause },
        }
    }

    /// Wraps a refusal of the system about a file beside the record.
    pub(super) fn from_io(path: &Path, error: &std::io::Error) -> Self {
        let (path, cause) = (path.to_path_buf(), error.to_string());
        match error.kind() {
            std::io::ErrorKind::StorageFull | std::io::ErrorKind::QuotaExceeded | std::io::ErrorKind::FileTooLarge => {
                Self::DiskFull { path, cause }
            }
            std::io::ErrorKind::ReadOnlyFilesystem | std::io::ErrorKind::PermissionDenied => Self::ReadOnly { path, cause },
            _ => Self::File {
                path,
                cause,
                remedy: "See that the name is right, that the file is yours, and that the disk has room".to_owned(),
            },
        }
    }
}
