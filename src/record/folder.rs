//! Where the record is kept.

use super::error::RecordError;
use std::collections::BTreeSet;
use std::ffi::OsString;
use std::path::{Path, PathBuf};
use std::sync::{Mutex, PoisonError};

/// Names the environment variable that moves the data folder.
const VARIABLE: &str = "TIDECOUNT_DATA";

/// The file in the data folder.
pub const DATABASE_NAME: &str = "practice.sqlite";

/// `practice.sqlite` and an ending.
pub(super) fn beside(path: &Path, ending: &str) -> PathBuf {
    let mut name = path.as_os_str().to_owned();
    name.push(ending);
    PathBuf::from(name)
}

/// The folder of the record: `named` (from `--data`), else what `TIDECOUNT_DATA` says, else the platform's place for a
/// program's data. Nothing is created; [`super::Store::open`] does that.
///
/// # Errors
/// Neither is given and there is no home folder.
pub fn data_folder(named: Option<&Path>) -> Result<PathBuf, RecordError> {
    choose(named, std::env::var_os(VARIABLE), || {
        directories::ProjectDirs::from("", "", "tidecount").map(|dirs| dirs.data_dir().to_path_buf())
    })
}

fn choose(named: Option<&Path>, variable: Option<OsString>, usual: impl FnOnce() -> Option<PathBuf>) -> Result<PathBuf, RecordError> {
    if let Some(path) = named {
        return Ok(path.to_path_buf());
    }
    match variable {
        Some(value) if !value.is_empty() => Ok(PathBuf::from(value)),
        _ => usual().ok_or(RecordError::NoHome),
    }
}

/// Creates the folder where it is missing, readable for its owner alone: what is in it concerns a person's health.
/// A folder that is there keeps its mode.
///
/// # Errors
/// It cannot be made.
pub fn create(path: &Path) -> Result<(), RecordError> {
    disk::private::folder(path).map_err(|error| RecordError::Folder { path: path.to_path_buf(), cause: error.to_string() })
}

/// The folder of stored sound, beside the record.
pub const SOUND_FOLDER: &str = "sound";
/// Folders of ours in the data folder.
const INNER: [&str; 5] = [SOUND_FOLDER, "voice-cache", "handover", "clients", "routines"];

/// Closed once in a process: a page opens the record for each request.
static CLOSED: Mutex<BTreeSet<PathBuf>> = Mutex::new(BTreeSet::new());

/// Closes the data folder and all of ours in it to other users, whatever was there, and says so where something was open.
pub(super) fn close(folder: &Path) {
    let first = CLOSED.lock().unwrap_or_else(PoisonError::into_inner).insert(folder.to_path_buf());
    if let Some(notice) = first.then(|| disk::private::mend(folder, DATABASE_NAME, &INNER)).and_then(|mended| mended.notice(folder)) {
        eprintln!("{notice}");
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_option_goes_before_the_variable_and_that_before_the_usual_place() {
        let usual = || Some(PathBuf::from("usual"));
        let pick = |named: Option<&str>, variable: Option<&str>| {
            choose(named.map(Path::new), variable.map(OsString::from), usual).expect("a place").display().to_string()
        };
        assert_eq!(pick(Some("named"), Some("variable")), "named");
        assert_eq!(pick(None, Some("variable")), "variable");
        assert_eq!(pick(None, Some("")), "usual");
        assert_eq!(pick(None, None), "usual");
        assert!(matches!(choose(None, None, || None), Err(RecordError::NoHome)));
    }

    #[cfg(unix)]
    #[test]
    fn a_new_folder_is_for_its_owner_alone() {
        use std::os::unix::fs::PermissionsExt;
        let dir = tempfile::tempdir().expect("a folder");
        let path = dir.path().join("a/b");
        create(&path).expect("creates");
        let mode = std::fs::metadata(&path).expect("is there").permissions().mode();
        assert_eq!(mode & 0o777, 0o700);
    }

    #[test]
    fn a_folder_that_cannot_be_made_is_named_with_a_remedy() {
        let dir = tempfile::tempdir().expect("a folder");
        let file = dir.path().join("file");
        std::fs::write(&file, "x").expect("writes");
        let text = create(&file.join("under")).expect_err("a file is in the way").to_string();
        assert!(text.contains("file/under") && text.contains("--data DIR"), "{text}");
    }
}
