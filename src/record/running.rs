//! Tells a session that a living process leads from one that was interrupted.
//!
//! The process holds an advisory lock on a small file beside the database. The system lets go of it however the process
//! dies, so nothing has to be cleaned up after a kill.

use super::error::RecordError;
use std::fs::{File, TryLockError};
use std::path::{Path, PathBuf};

/// Held while a session is led; removes its file when dropped.
#[derive(Debug)]
pub(super) struct Claim {
    path: PathBuf,
    /// Keeps the lock.
    _file: File,
}

impl Drop for Claim {
    fn drop(&mut self) {
        // Before the lock goes with the file: whoever opens the name afterwards makes a new file. If it cannot be removed,
        // an unlocked file is left, which means the same as none.
        let _ = std::fs::remove_file(&self.path);
    }
}

fn lock_path(folder: &Path, session: i64) -> PathBuf {
    folder.join(format!("practice-{session}.running"))
}

/// Claims the session for this process; none where another one has it.
pub(super) fn claim(folder: &Path, session: i64) -> Result<Option<Claim>, RecordError> {
    let path = lock_path(folder, session);
    let wrap = |error: std::io::Error| RecordError::Folder { path: folder.to_path_buf(), cause: error.to_string() };
    let file = disk::private::append(&path, false).map_err(wrap)?;
    match file.try_lock() {
        Ok(()) => Ok(Some(Claim { path, _file: file })),
        Err(TryLockError::WouldBlock) => Ok(None),
        Err(TryLockError::Error(error)) => Err(wrap(error)),
    }
}

/// True where some process, this one included, leads the session now.
pub(super) fn is_led(folder: &Path, session: i64) -> bool {
    match File::open(lock_path(folder, session)) {
        Ok(file) => matches!(file.try_lock_shared(), Err(TryLockError::WouldBlock)),
        Err(_) => false,
    }
}
