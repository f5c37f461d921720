//! Where the second ear's files are.

use std::io;
use std::path::{Path, PathBuf};

/// The environment variable that names another folder, for judging networks by people whom they never heard; `none` leaves the second ear out.
pub(crate) const FOLDER_VARIABLE: &str = "TIDECOUNT_SECOND_EAR";

/// The network, and what its scores are of.
pub(crate) const NETWORK: &str = "network.onnx";
pub(crate) const CLASSES: &str = "classes.txt";

/// What the environment says of the second ear.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(crate) enum Said {
    Nothing,
    /// It is to be left out.
    LeaveOut,
    /// It is in this folder.
    Folder(PathBuf),
}

/// See [`FOLDER_VARIABLE`].
pub(crate) fn said_by_environment() -> Said {
    match std::env::var_os(FOLDER_VARIABLE).filter(|name| !name.is_empty()) {
        None => Said::Nothing,
        Some(name) if name == "none" => Said::LeaveOut,
        Some(name) => Said::Folder(PathBuf::from(name)),
    }
}

/// The folder that the environment names, else this one, else the usual one. None where it is to be left out.
pub(super) fn folder(named: Option<&Path>) -> Option<PathBuf> {
    match said_by_environment() {
        Said::Folder(folder) => Some(folder),
        Said::LeaveOut => None,
        Said::Nothing => {
            let places = places(None);
            named.map(Path::to_owned).or_else(|| places.iter().find(|place| is_whole(place)).or(places.get(1)).cloned())
        }
    }
}

/// Where a second ear that comes with the program may be: `models/second-ear` where it is installed, where it was built, or here; in it the folder of
/// this language, or the folder itself for English.
pub(crate) fn places(tag: Option<&str>) -> Vec<PathBuf> {
    let beside =
        std::env::current_exe().ok().and_then(|exe| exe.parent().map(|folder| folder.join("../share/tidecount/models/second-ear")));
    let built = Path::new(env!("CARGO_MANIFEST_DIR")).join("../../models/second-ear");
    let all = [beside.unwrap_or_else(|| built.clone()), built, PathBuf::from("models/second-ear")];
    all.into_iter().map(|place| tag.map_or_else(|| place.clone(), |tag| place.join(tag))).collect()
}

/// A network is in this folder.
pub(crate) fn is_whole(folder: &Path) -> bool {
    folder.join(NETWORK).is_file()
}

/// The phrases that a network in this folder tells apart.
///
/// # Errors
/// The list cannot be read.
pub(crate) fn phrases_of(folder: &Path) -> io::Result<Vec<String>> {
    let classes = std::fs::read_to_string(folder.join(CLASSES))?;
    let mut phrases: Vec<String> = classes.lines().map(str::to_owned).collect();
    // The last one is anything else.
    phrases.pop();
    Ok(phrases)
}
