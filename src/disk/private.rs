//! Files and folders for their owner alone. What is kept here tells of a person's health, and a computer at home may have several
//! users. Everything that writes a file goes through here: it makes files of mode 0600 and folders of mode 0700, and closes those that
//! were there already.

use std::fs::{DirBuilder, File, OpenOptions};
use std::io::{self, Write};
use std::path::{Path, PathBuf};

/// Of a file: what others may do with it.
#[cfg(unix)]
const OTHERS: u32 = 0o077;

/// From here on this process, and every program that it starts, makes files for their owner alone: also those that a library makes.
pub fn from_here_on() {
    #[cfg(unix)]
    rustix::process::umask(rustix::fs::Mode::RWXG | rustix::fs::Mode::RWXO);
}

/// Makes the folder, and those above it, where they are missing. One that is there keeps its mode.
///
/// # Errors
/// It cannot be made.
pub fn folder(path: &Path) -> io::Result<()> {
    let mut builder = DirBuilder::new();
    builder.recursive(true);
    #[cfg(unix)]
    std::os::unix::fs::DirBuilderExt::mode(&mut builder, 0o700);
    builder.create(path)
}

fn options() -> OpenOptions {
    #[allow(unused_mut, reason = "only Unix has modes")]
    let mut options = OpenOptions::new();
    #[cfg(unix)]
    std::os::unix::fs::OpenOptionsExt::mode(&mut options, 0o600);
    options
}

/// A file of this name that was not there.
///
/// # Errors
/// There is one already, or it cannot be made.
pub fn create_new(path: &Path) -> io::Result<File> {
    options().write(true).create_new(true).open(path)
}

/// An empty file of this name. One that was there is emptied, and closed to others first.
///
/// # Errors
/// It cannot be made.
pub fn create(path: &Path) -> io::Result<File> {
    // Not cut at once: others could still read what is written between that and the closing.
    let file = options().write(true).create(true).truncate(false).open(path)?;
    close_file(&file)?;
    if file.metadata()?.is_file() {
        file.set_len(0)?;
    }
    Ok(file)
}

/// A file that is only added to, closed to others if it was there already. `read`: it can be read, too.
///
/// # Errors
/// It cannot be made.
pub fn append(path: &Path, read: bool) -> io::Result<File> {
    let file = options().append(true).create(true).read(read).open(path)?;
    close_file(&file)?;
    Ok(file)
}

/// A file that holds these bytes and no others.
///
/// # Errors
/// It cannot be written.
pub fn write(path: &Path, bytes: &[u8]) -> io::Result<()> {
    create(path)?.write_all(bytes)
}

/// A terminal, a pipe or a device keeps its mode. So does another user's file: that is theirs to close.
fn close_file(file: &File) -> io::Result<()> {
    #[cfg(unix)]
    {
        use std::os::unix::fs::PermissionsExt;
        let data = file.metadata()?;
        let mode = data.permissions().mode();
        if data.is_file() && mode & OTHERS != 0 && is_own(&data) {
            file.set_permissions(std::fs::Permissions::from_mode(mode & 0o7777 & !OTHERS))?;
        }
    }
    #[cfg(not(unix))]
    let _ = file;
    Ok(())
}

#[cfg(unix)]
fn is_own(data: &std::fs::Metadata) -> bool {
    std::os::unix::fs::MetadataExt::uid(data) == rustix::process::geteuid().as_raw()
}

/// What was open to others.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct Mended {
    /// Closed now, files and folders.
    pub closed: usize,
    /// Could not be closed, for instance because they are another user's.
    pub left: Vec<PathBuf>,
}

impl Mended {
    /// In words for the person at the machine; none where nothing was open.
    #[must_use]
    pub fn notice(&self, folder: &Path) -> Option<String> {
        let mut text = match self.closed {
            0 => String::new(),
            1 => format!("Other users of this computer could read a file or folder in {}. Now only you can.", folder.display()),
            n => format!("Other users of this computer could read {n} files and folders in {}. Now only you can.", folder.display()),
        };
        if let Some(first) = self.left.first() {
            if !text.is_empty() {
                text.push(' ');
            }
            text.push_str(&format!(
                "Other users can still read {}{}: make it yours, and close it with chmod go= FILE.",
                first.display(),
                match self.left.len() - 1 {
                    0 => String::new(),
                    1 => " and one more".to_owned(),
                    more => format!(" and {more} more"),
                }
            ));
        }
        (!text.is_empty()).then_some(text)
    }
}

/// Closes a data folder to others: the folder, the plain files in it, and all of its folders of these names. No link is followed. A folder
/// that many programs share (a home folder, `/tmp`) is left open; there only files whose names begin with `named` are closed.
#[must_use]
pub fn mend(folder: &Path, named: &str, inner: &[&str]) -> Mended {
    let mut mended = Mended::default();
    #[cfg(unix)]
    {
        let shared = is_shared(folder);
        if !shared {
            close(folder, &mut mended);
        }
        for entry in std::fs::read_dir(folder).into_iter().flatten().flatten() {
            let (Ok(kind), name) = (entry.file_type(), entry.file_name()) else { continue };
            let ours =
                |name: &str| inner.iter().any(|own| name == *own || name.strip_prefix(own).is_some_and(|rest| rest.starts_with('.')));
            if kind.is_file() && (!shared || name.to_str().is_some_and(|name| name.starts_with(named))) {
                close(&entry.path(), &mut mended);
            } else if kind.is_dir() && name.to_str().is_some_and(ours) {
                close_all(&entry.path(), &mut mended);
            }
        }
    }
    #[cfg(not(unix))]
    let _ = (folder, named, inner);
    mended
}

#[cfg(unix)]
fn close_all(folder: &Path, mended: &mut Mended) {
    close(folder, mended);
    for entry in std::fs::read_dir(folder).into_iter().flatten().flatten() {
        match entry.file_type() {
            Ok(kind) if kind.is_file() => close(&entry.path(), mended),
            Ok(kind) if kind.is_dir() => close_all(&entry.path(), mended),
            _ => {}
        }
    }
}

#[cfg(unix)]
fn close(path: &Path, mended: &mut Mended) {
    use std::os::unix::fs::PermissionsExt;
    let Ok(data) = path.symlink_metadata() else { return };
    let mode = data.permissions().mode();
    if mode & OTHERS == 0 {
        return;
    }
    let mine = is_own(&data);
    if mine && std::fs::set_permissions(path, std::fs::Permissions::from_mode(mode & 0o7777 & !OTHERS)).is_ok() {
        mended.closed += 1;
    } else {
        mended.left.push(path.to_path_buf());
    }
}

/// Sticky, as `/tmp` is; the root; or a home folder.
#[cfg(unix)]
fn is_shared(folder: &Path) -> bool {
    use std::os::unix::fs::PermissionsExt;
    let Ok(real) = folder.canonicalize() else { return true };
    let sticky = real.metadata().is_ok_and(|data| data.permissions().mode() & 0o1000 != 0);
    let home = std::env::var_os("HOME").and_then(|home| Path::new(&home).canonicalize().ok());
    sticky || real.parent().is_none() || home.is_some_and(|home| home == real)
}

#[cfg(all(test, unix))]
#[path = "tests/private.rs"]
mod tests;
