//! Where the second ear's files are.

use std::path::{Path, PathBuf};

/// The environment variable that names another folder, for judging networks by people whom they never heard; `none` leaves the second ear out.
pub(crate) const FOLDER_VARIABLE: &str = "TIDECOUNT_SECOND_EAR";

/// The network, and what its scores are of.
pub(super) const NETWORK: &str = "network.onnx";
pub(super) const CLASSES: &str = "classes.txt";

/// The folder named, else `models/second-ear` where the program is installed, where it was built, or here. None where it is to be left out.
pub(super) fn folder() -> Option<PathBuf> {
    if let Some(named) = std::env::var_os(FOLDER_VARIABLE).filter(|name| !name.is_empty()) {
        return (named != "none").then(|| PathBuf::from(named));
    }
    let beside =
        std::env::current_exe().ok().and_then(|exe| exe.parent().map(|folder| folder.join("../share/tidecount/models/second-ear")));
    let built = Path::new(env!("CARGO_MANIFEST_DIR")).join("../../models/second-ear");
    let places: Vec<PathBuf> = beside.into_iter().chain([built.clone(), PathBuf::from("models/second-ear")]).collect();
    Some(places.into_iter().find(|place| place.join(NETWORK).exists()).unwrap_or(built))
}
