//! The routine files of one folder: which there are, and how one is read and written safely.

use std::io::Write;
use std::path::{Path, PathBuf};

use sha2::{Digest, Sha256};

use files::routine_files::read_limited;
use routine::MAX_FILE_BYTES;

/// Files of the same folder that are no routines.
const OTHERS: [&str; 3] = ["household.toml", "calibrations.toml", "settings.toml"];
/// The file as it was before the last change has this behind its name.
const BEFORE: &str = "before";
/// A file larger than this is not taken into a form, bytes: with its fields it must fit into one request.
pub const MOST_IN_A_FORM: usize = 40_000;
/// The longest name of a file without its ending.
const LONGEST_NAME: usize = 60;

/// Why a file cannot be had or written; each is a message `page-file-NAME`.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum FileFault {
    /// No routine file of that name is in the folder.
    None(String),
    /// A name that may not be one.
    BadName(String),
    Exists(String),
    /// It is not as it was when the form began.
    Changed(String),
    NotText(String),
    TooLarge(String),
    System {
        file: String,
        why: String,
    },
}

/// A file that was read.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Read {
    pub text: String,
    /// Of its bytes.
    pub hash: String,
}

/// The folder of routines.
#[derive(Debug, Clone)]
pub struct RoutineFolder {
    path: PathBuf,
}

impl RoutineFolder {
    #[must_use]
    pub fn new(path: PathBuf) -> Self {
        Self { path }
    }

    #[must_use]
    pub fn path(&self) -> &Path {
        &self.path
    }

    /// Names of the routine files, sorted. An absent folder has none.
    #[must_use]
    pub fn names(&self) -> Vec<String> {
        let entries = std::fs::read_dir(&self.path).into_iter().flatten().filter_map(Result::ok);
        // No link is followed: what is edited here lies here.
        let files = entries.filter(|entry| entry.file_type().is_ok_and(|kind| kind.is_file()));
        let mut names: Vec<String> =
            files.filter_map(|entry| entry.file_name().into_string().ok()).filter(|name| is_routine_name(name)).collect();
        names.sort_by_key(|name| name.to_lowercase());
        names
    }

    /// The file of this name, which must be one of [`RoutineFolder::names`]: no other path can be reached.
    fn known(&self, name: &str) -> Result<PathBuf, FileFault> {
        self.names().iter().find(|known| *known == name).map(|known| self.path.join(known)).ok_or_else(|| FileFault::None(name.to_owned()))
    }

    /// # Errors
    /// There is no such file, it is no text, or far too large.
    pub fn read(&self, name: &str) -> Result<Read, FileFault> {
        let bytes = self.bytes(name)?;
        let hash = hash_of(&bytes);
        match String::from_utf8(bytes) {
            Ok(text) => Ok(Read { text, hash }),
            Err(_) => Err(FileFault::NotText(name.to_owned())),
        }
    }

    fn bytes(&self, name: &str) -> Result<Vec<u8>, FileFault> {
        let path = self.known(name)?;
        let bytes = read_limited(&path).map_err(|why| FileFault::System { file: name.to_owned(), why: why.to_string() })?;
        if bytes.len() > MAX_FILE_BYTES { Err(FileFault::TooLarge(name.to_owned())) } else { Ok(bytes) }
    }

    /// Writes a file whole or not at all. `base`: the hash of the file that the change began from; empty for a new file. What
    /// stood there before is kept beside it.
    ///
    /// # Errors
    /// The name may not be one, the file is not as it was, or the system refuses.
    pub fn write(&self, name: &str, base: &str, text: &str) -> Result<(), FileFault> {
        let path = if base.is_empty() { self.new_path(name)? } else { self.known(name)? };
        let failed = |why: std::io::Error| FileFault::System { file: name.to_owned(), why: why.to_string() };
        if base.is_empty() {
            record::create_folder(&self.path).map_err(|why| FileFault::System { file: name.to_owned(), why: why.to_string() })?;
            if path.symlink_metadata().is_ok() {
                return Err(FileFault::Exists(name.to_owned()));
            }
            return write_whole(&path, text.as_bytes()).map_err(failed);
        }
        let before = self.bytes(name)?;
        if hash_of(&before) != base {
            return Err(FileFault::Changed(name.to_owned()));
        }
        if before == text.as_bytes() {
            return Ok(());
        }
        write_whole(&path.with_file_name(format!("{name}.{BEFORE}")), &before).map_err(failed)?;
        write_whole(&path, text.as_bytes()).map_err(failed)
    }

    /// A place for a new file of this name.
    ///
    /// # Errors
    /// It may not be one, or is taken.
    pub fn new_path(&self, name: &str) -> Result<PathBuf, FileFault> {
        let stem = name.strip_suffix(".toml").unwrap_or_default();
        let plain = |c: char| c.is_alphanumeric() || matches!(c, '-' | '_' | ' ');
        let good = !stem.is_empty()
            && stem.trim() == stem
            && stem.chars().count() <= LONGEST_NAME
            && stem.chars().all(plain)
            && is_routine_name(name);
        if !good {
            return Err(FileFault::BadName(name.to_owned()));
        }
        // Also where another file differs in capitals alone: some systems take them for one.
        if self.names().iter().any(|known| known.to_lowercase() == name.to_lowercase()) {
            return Err(FileFault::Exists(name.to_owned()));
        }
        Ok(self.path.join(name))
    }
}

/// A name for a new file from what was typed: with the ending, without spaces around it.
#[must_use]
pub fn file_name(typed: &str) -> String {
    let typed = typed.trim();
    let stem = typed.strip_suffix(".toml").unwrap_or(typed).trim();
    format!("{stem}.toml")
}

fn is_routine_name(name: &str) -> bool {
    let lower = name.to_lowercase();
    name.ends_with(".toml") && !name.starts_with('.') && !OTHERS.contains(&lower.as_str())
}

/// Hexadecimal.
pub fn hash_of(bytes: &[u8]) -> String {
    Sha256::digest(bytes).iter().map(|byte| format!("{byte:02x}")).collect()
}

/// Beside it first, then in its place: a crash leaves the old file or the new one. It is for its owner alone, whatever the old one was.
pub fn write_whole(path: &Path, bytes: &[u8]) -> std::io::Result<()> {
    let name = path.file_name().map(|name| name.to_string_lossy().into_owned()).unwrap_or_default();
    let new = path.with_file_name(format!(".{name}.new"));
    let done = disk::private::create(&new).and_then(|mut file| {
        file.write_all(bytes)?;
        file.sync_all()
    });
    let done = done.and_then(|()| std::fs::rename(&new, path));
    if done.is_err() {
        let _ = std::fs::remove_file(&new);
    }
    done
}

#[cfg(test)]
mod tests {
    use super::*;

    fn folder() -> (tempfile::TempDir, RoutineFolder) {
        let dir = tempfile::tempdir().expect("a folder");
        let routines = dir.path().join("routines");
        std::fs::create_dir(&routines).expect("makes");
        std::fs::write(dir.path().join("outside.toml"), "title = \"x\"").expect("writes");
        (dir, RoutineFolder::new(routines))
    }

    #[test]
    fn nothing_outside_the_folder_can_be_reached() {
        let (dir, folder) = folder();
        #[cfg(unix)]
        std::os::unix::fs::symlink(dir.path().join("outside.toml"), folder.path().join("link.toml")).expect("links");
        std::fs::write(folder.path().join("household.toml"), "").expect("writes");
        assert!(folder.names().is_empty(), "{:?}", folder.names());
        for name in [
            "../outside.toml",
            "..",
            "/etc/passwd",
            "link.toml",
            "household.toml",
            "./x.toml",
            "a/b.toml",
            "a\\b.toml",
            ".x.toml",
            " .toml",
            "x.toml\0",
            "x.txt",
        ] {
            assert!(matches!(folder.read(name), Err(FileFault::None(_))), "{name}");
            assert!(folder.write(name, "", "x").is_err(), "{name}");
            assert!(folder.write(name, "00", "x").is_err(), "{name}");
        }
        assert_eq!(std::fs::read_to_string(dir.path().join("outside.toml")).expect("reads"), "title = \"x\"");
        drop(dir);
    }

    #[test]
    fn a_file_is_written_whole_and_only_over_what_the_change_began_from() {
        let (_dir, folder) = folder();
        folder.write("evening.toml", "", "one").expect("a new one");
        assert_eq!(folder.write("Evening.toml", "", "two"), Err(FileFault::Exists("Evening.toml".into())));
        let read = folder.read("evening.toml").expect("reads");
        std::fs::write(folder.path().join("evening.toml"), "somebody else").expect("writes");
        assert_eq!(folder.write("evening.toml", &read.hash, "two"), Err(FileFault::Changed("evening.toml".into())));
        let read = folder.read("evening.toml").expect("reads");
        folder.write("evening.toml", &read.hash, "two").expect("writes");
        let text = |name: &str| std::fs::read_to_string(folder.path().join(name)).expect("reads");
        assert_eq!((text("evening.toml").as_str(), text("evening.toml.before").as_str()), ("two", "somebody else"));
        assert_eq!(folder.names(), ["evening.toml"]);
        assert_eq!(std::fs::read_dir(folder.path()).expect("lists").count(), 2);
    }

    #[test]
    fn what_was_typed_becomes_a_name() {
        assert_eq!(file_name(" evening 2 "), "evening 2.toml");
        assert_eq!(file_name("evening.toml"), "evening.toml");
    }
}
