//! The journal as a JSON Lines file, one flat object a line, flushed line by line.

use super::error::RecordError;
use model::{Entry, entry_line, journal_text};
use std::fs::File;
use std::io::{Read, Seek, SeekFrom, Write};
use std::path::{Path, PathBuf};

/// A JSON Lines file that holds one practice. It carries no time of day, so the same practice gives the same bytes.
#[derive(Debug)]
pub struct JsonLines {
    path: PathBuf,
    file: File,
}

impl JsonLines {
    /// Begins a file that is absent or empty (or a pipe).
    ///
    /// # Errors
    /// The file already holds something, which is neither overwritten nor mixed with another practice; or it cannot be written.
    pub fn create(path: &Path) -> Result<Self, RecordError> {
        let this = Self::open(path)?;
        if this.has_content()? { Err(RecordError::JournalInUse { path: path.to_path_buf() }) } else { Ok(this) }
    }

    /// Goes on with the file of an interrupted practice, of which `kept` are the entries so far. The file may lack the
    /// last of them and may end in a partial line, as a kill leaves it: both are mended. An absent or empty file gets them all.
    ///
    /// # Errors
    /// The file holds something else, which is left as it is; or it cannot be written.
    pub fn resume(path: &Path, kept: &[Entry]) -> Result<Self, RecordError> {
        let mut this = Self::open(path)?;
        let wanted = journal_text(kept)?;
        let whole = if this.has_content()? {
            let mut bytes = Vec::new();
            this.file.read_to_end(&mut bytes).map_err(|error| this.wrap(&error))?;
            let whole = bytes.iter().rposition(|byte| *byte == b'\n').map_or(0, |last| last + 1);
            if bytes.get(..whole) != wanted.as_bytes().get(..whole) {
                return Err(RecordError::JournalInUse { path: path.to_path_buf() });
            }
            this.file.set_len(whole as u64).map_err(|error| this.wrap(&error))?;
            this.file.seek(SeekFrom::End(0)).map_err(|error| this.wrap(&error))?;
            whole
        } else {
            0
        };
        let missing = wanted.as_bytes().get(whole..).unwrap_or_default();
        this.file.write_all(missing).and_then(|()| this.file.flush()).map_err(|error| this.wrap(&error))?;
        Ok(this)
    }

    fn open(path: &Path) -> Result<Self, RecordError> {
        // A pipe is opened for writing alone: with both ends open here it would never report that its reader left.
        let read = !std::fs::metadata(path).is_ok_and(|data| !data.is_file());
        let file = disk::private::append(path, read)
            .map_err(|error| RecordError::JournalFile { path: path.to_path_buf(), cause: error.to_string() })?;
        Ok(Self { path: path.to_path_buf(), file })
    }

    fn has_content(&self) -> Result<bool, RecordError> {
        let data = self.file.metadata().map_err(|error| self.wrap(&error))?;
        Ok(data.is_file() && data.len() > 0)
    }

    fn wrap(&self, error: &std::io::Error) -> RecordError {
        RecordError::JournalFile { path: self.path.clone(), cause: error.to_string() }
    }

    /// Writes one line; when this returns the system has it.
    ///
    /// # Errors
    /// A time is not finite, or the file cannot be written.
    pub fn append(&mut self, entry: &Entry) -> Result<(), RecordError> {
        let mut line = entry_line(entry)?;
        line.push('\n');
        // One call for the whole line, so that a kill between two calls leaves no half of it.
        self.file.write_all(line.as_bytes()).map_err(|error| self.wrap(&error))
    }
}

#[cfg(test)]
#[path = "tests/json_lines.rs"]
mod tests;
