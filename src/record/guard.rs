//! Keeps programs from each other where the record is replaced as a whole.
//!
//! Whoever has the record open holds a shared lock on a small file beside it; encrypting, restoring and forgetting need it alone. The
//! system lets go of the lock however a process dies.

use super::error::RecordError;
use super::folder::DATABASE_NAME;
use std::fs::{File, TryLockError};
use std::io::ErrorKind;
use std::path::Path;
use std::time::{Duration, Instant};

/// Others hold the record alone for seconds at most.
const PATIENCE: Duration = Duration::from_secs(10);
/// A command that only looks is over by then.
const ALONE_PATIENCE: Duration = Duration::from_secs(2);
const STEP: Duration = Duration::from_millis(20);

/// Held while the record is open.
#[derive(Debug)]
pub(super) struct Guard {
    _file: File,
}

/// With others.
pub(super) fn shared(folder: &Path) -> Result<Guard, RecordError> {
    held(folder, PATIENCE, File::try_lock_shared)
}

/// Nobody else has the record open until this is dropped.
pub(super) fn alone(folder: &Path) -> Result<Guard, RecordError> {
    held(folder, ALONE_PATIENCE, File::try_lock)
}

/// As [`alone`], at once or not at all.
pub(super) fn alone_now(folder: &Path) -> Result<Option<Guard>, RecordError> {
    match held(folder, Duration::ZERO, File::try_lock) {
        Err(RecordError::InUse { .. }) => Ok(None),
        other => other.map(Some),
    }
}

fn held(folder: &Path, patience: Duration, lock: fn(&File) -> Result<(), TryLockError>) -> Result<Guard, RecordError> {
    let path = folder.join(format!("{DATABASE_NAME}.lock"));
    let wrap = |error: std::io::Error| match error.kind() {
        ErrorKind::PermissionDenied | ErrorKind::ReadOnlyFilesystem => {
            RecordError::ReadOnly { path: folder.join(DATABASE_NAME), cause: error.to_string() }
        }
        _ => RecordError::Folder { path: folder.to_path_buf(), cause: error.to_string() },
    };
    // A lock needs no right to write; a file that is there already may be another user's.
    let file = match File::open(&path) {
        Err(error) if error.kind() == ErrorKind::NotFound => disk::private::append(&path, false).map_err(wrap)?,
        other => other.map_err(wrap)?,
    };
    let until = Instant::now() + patience;
    loop {
        match lock(&file) {
            Ok(()) => return Ok(Guard { _file: file }),
            Err(TryLockError::WouldBlock) if Instant::now() < until => std::thread::sleep(STEP),
            Err(TryLockError::WouldBlock) => return Err(RecordError::InUse { path: folder.join(DATABASE_NAME) }),
            // A file system without locks: as before there were any.
            Err(TryLockError::Error(error)) if error.kind() == ErrorKind::Unsupported => return Ok(Guard { _file: file }),
            Err(TryLockError::Error(error)) => return Err(wrap(error)),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn many_share_and_one_is_alone() {
        let dir = tempfile::tempdir().expect("a folder");
        let (one, other) = (shared(dir.path()).expect("shares"), shared(dir.path()).expect("shares"));
        assert!(alone_now(dir.path()).expect("asks").is_none());
        drop((one, other));
        let alone = alone_now(dir.path()).expect("asks").expect("is alone");
        assert!(alone_now(dir.path()).expect("asks").is_none());
        drop(alone);
        shared(dir.path()).expect("shares again");
    }
}
