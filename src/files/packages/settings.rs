//! The settings of the package that is in force for a client.

use std::io::ErrorKind;
use std::path::Path;

use crate::packages::sealed::package_folder;
use handover::Settings;
use speak::{SYSTEM_VOICE, choose_voice};

/// The file in the package's folder.
pub const FILE_NAME: &str = "settings.toml";

/// What the clinician set for this client; as usual where no package is in force. A setting that cannot be used is told on
/// standard error and left out: nobody shall miss a practice for it.
#[must_use]
pub fn of(data: &Path, client: &str) -> Settings {
    let Ok(folder) = package_folder(data, client) else { return Settings::default() };
    let path = folder.join(FILE_NAME);
    let text = match std::fs::read_to_string(&path) {
        Ok(text) => text,
        Err(error) if error.kind() == ErrorKind::NotFound => return Settings::default(),
        Err(error) => {
            eprintln!("{}: cannot be read ({error}); continuing without the clinician's settings. Take the package again.", path.display());
            return Settings::default();
        }
    };
    let mut settings = Settings::from_toml(&text).unwrap_or_else(|error| {
        eprintln!("{}: {error}; continuing without the clinician's settings. Take the package again.", path.display());
        Settings::default()
    });
    if !warn_of_voice(settings.voice.as_deref()) {
        settings.voice = None;
    }
    settings
}

/// False where this computer has not the voice that the clinician chose, which is told.
pub fn warn_of_voice(voice: Option<&str>) -> bool {
    let Some(voice) = voice.filter(|voice| *voice != SYSTEM_VOICE) else { return true };
    match choose_voice(Some(voice)) {
        Ok(_) => true,
        Err(error) => {
            eprintln!("The voice that the clinician chose is not available here, so the usual one speaks: {error}");
            false
        }
    }
}
