//! Where an export goes: standard output, or files that are written whole or not at all and never over others unasked.

use std::fs::File;
use std::io::{BufWriter, ErrorKind, Write};
use std::path::{Path, PathBuf};

use crate::error::{Failure, delivered};
use record::Store;

/// Where to.
#[derive(Debug, Clone)]
pub struct Target {
    /// The file to write; none or `-` for standard output.
    pub out: Option<PathBuf>,
    /// Write over files that are there.
    pub force: bool,
}

impl Target {
    /// The file; none for standard output.
    #[must_use]
    pub fn file(&self) -> Option<&Path> {
        self.out.as_deref().filter(|path| *path != Path::new("-"))
    }

    /// `force` is no leave to write over the record itself.
    ///
    /// # Errors
    /// It is the record.
    pub fn spare_record(&self, store: &Store) -> Result<(), Failure> {
        let same = |path: &Path| {
            std::fs::canonicalize(path).ok().zip(std::fs::canonicalize(store.path()).ok()).is_some_and(|(one, other)| one == other)
        };
        match self.file().filter(|path| same(path)) {
            Some(path) => Err(Failure::file(path, "this is the record itself; name another file with --out")),
            None => Ok(()),
        }
    }

    /// Writes what `fill` gives.
    ///
    /// # Errors
    /// The file is there and may not be written over, or it cannot be written; nothing is left behind then. A reader of standard
    /// output that went away is no error.
    pub fn write(&self, fill: impl FnOnce(&mut dyn Write) -> Result<(), Failure>) -> Result<(), Failure> {
        let Some(path) = self.file() else {
            let mut out = Forgiving { to: BufWriter::new(std::io::stdout().lock()), gone: false };
            fill(&mut out)?;
            return delivered(out.flush());
        };
        let mut file = NewFile::begin(path, self.force)?;
        fill(&mut file.writer)?;
        file.finish()
    }
}

/// Standard output whose reader may leave (`| head`): what comes after is dropped.
struct Forgiving<W: Write> {
    to: W,
    gone: bool,
}

impl<W: Write> Write for Forgiving<W> {
    fn write(&mut self, bytes: &[u8]) -> std::io::Result<usize> {
        if self.gone {
            return Ok(bytes.len());
        }
        match self.to.write(bytes) {
            Err(error) if error.kind() == ErrorKind::BrokenPipe => {
                self.gone = true;
                Ok(bytes.len())
            }
            other => other,
        }
    }

    fn flush(&mut self) -> std::io::Result<()> {
        match self.to.flush() {
            Err(error) if error.kind() == ErrorKind::BrokenPipe || self.gone => {
                self.gone = true;
                Ok(())
            }
            other => other,
        }
    }
}

/// A file in the making, under another name beside its place until it is whole; for its owner alone, for it tells of health.
pub struct NewFile {
    path: PathBuf,
    beside: PathBuf,
    force: bool,
    pub writer: BufWriter<File>,
    done: bool,
}

/// Refuses a place that is taken.
///
/// # Errors
/// There is a file and `force` is not set, or a folder.
pub fn free(path: &Path, force: bool) -> Result<(), Failure> {
    match path.symlink_metadata() {
        Ok(data) if data.is_dir() => Err(Failure::file(path, "this is a folder: name a file in it with --out FILE")),
        Ok(_) if !force => {
            Err(Failure::file(path, "this file already exists and was left as it is: name another with --out, or replace it with --force"))
        }
        _ => Ok(()),
    }
}

impl NewFile {
    /// Begins it.
    ///
    /// # Errors
    /// The place is taken, or it cannot be written.
    pub fn begin(path: &Path, force: bool) -> Result<Self, Failure> {
        free(path, force)?;
        let name = path.file_name().ok_or_else(|| Failure::file(path, "this is not the name of a file: name one with --out FILE"))?;
        let beside = path.with_file_name(format!(".{}.{}", name.to_string_lossy(), std::process::id()));
        let file = disk::private::create_new(&beside).map_err(|why| cannot(path, &why))?;
        Ok(Self { path: path.to_owned(), beside, force, writer: BufWriter::new(file), done: false })
    }

    /// Writes these bytes and puts it in its place.
    ///
    /// # Errors
    /// As [`NewFile::finish`].
    pub fn write_whole(mut self, bytes: &[u8]) -> Result<(), Failure> {
        self.writer.write_all(bytes).map_err(|why| cannot(&self.path, &why))?;
        self.finish()
    }

    /// Puts it in its place.
    ///
    /// # Errors
    /// It cannot be written whole, or the place has been taken meanwhile.
    pub fn finish(mut self) -> Result<(), Failure> {
        let whole = self.writer.flush().and_then(|()| self.writer.get_ref().sync_all());
        whole.map_err(|why| cannot(&self.path, &why))?;
        free(&self.path, self.force)?;
        std::fs::rename(&self.beside, &self.path).map_err(|why| cannot(&self.path, &why))?;
        self.done = true;
        Ok(())
    }
}

impl Drop for NewFile {
    fn drop(&mut self) {
        if !self.done {
            let _ = std::fs::remove_file(&self.beside);
        }
    }
}

fn cannot(path: &Path, why: &std::io::Error) -> Failure {
    Failure::file(path, format!("cannot be written: {why}. Make sure the folder is there, that you may write to it, and that it has room"))
}

/// A fault of writing, in words.
pub fn failed(why: impl std::fmt::Display) -> Failure {
    Failure::Output(format!("the export could not be written: {why}. Make sure the disk has room"))
}
