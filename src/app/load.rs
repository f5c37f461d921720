//! Reads a routine for a practice: checked against the catalogue, the commands and the recogniser's words.

use std::io::Read;
use std::path::{Path, PathBuf};

use super::error::AppError;
use super::grammar::spoken_form;
use crate::hear::commands::Lexicon;
use crate::routine::{Faults, Hearing, MAX_FILE_BYTES, Prescription, check_bytes};
use crate::session::Command;
use crate::speak::Words;

/// The command wordings of the catalogue, as the checker of routines wants them.
pub fn command_words(words: &Words) -> Vec<(String, Vec<String>)> {
    Command::ALL.into_iter().map(|command| (command.name().to_owned(), words.wordings(command))).collect()
}

/// A routine file: what it prescribes, and its text for the record.
///
/// # Errors
/// The file cannot be read, or has faults (all of them are named).
pub fn routine(path: &Path, words: &Words, lexicon: &Lexicon) -> Result<(Prescription, String), AppError> {
    let name = path.display().to_string();
    let bytes = read(path)?;
    let commands = command_words(words);
    let knows = |word: &str| lexicon.knows(&spoken_form(word)).unwrap_or(true);
    let prescription = check_bytes(&name, &bytes, Hearing { commands: &commands, knows_word: Some(&knows) })?;
    Ok((prescription, String::from_utf8_lossy(&bytes).into_owned()))
}

/// The bytes of a routine file, one more than the limit at most.
fn read(path: &Path) -> Result<Vec<u8>, Faults> {
    let name = path.display().to_string();
    let unreadable = |why: std::io::Error| {
        let remedy = if why.kind() == std::io::ErrorKind::NotFound { "Check the name and the folder." } else { "Check that it is a file you may read." };
        Faults::of_file(&name, format!("cannot be read: {why}"), remedy)
    };
    let mut bytes = Vec::new();
    let file = std::fs::File::open(path).map_err(unreadable)?;
    file.take(MAX_FILE_BYTES as u64 + 1).read_to_end(&mut bytes).map_err(unreadable)?;
    Ok(bytes)
}

/// The model folder: the one named, else `models/en` beside the program, where it was built, or where it is installed.
///
/// # Errors
/// None of the places holds a model; they are all named.
pub fn model_folder(named: Option<&Path>) -> Result<PathBuf, AppError> {
    if let Some(named) = named {
        return Ok(named.to_owned());
    }
    let beside = std::env::current_exe().ok().and_then(|exe| exe.parent().map(|folder| folder.join("../share/tidecount/models/en")));
    let built = Path::new(env!("CARGO_MANIFEST_DIR")).join("models/en");
    let places: Vec<PathBuf> = beside.into_iter().chain([built, PathBuf::from("models/en")]).collect();
    places.iter().find(|place| place.join("am/final.mdl").exists()).cloned().ok_or_else(|| {
        let list: Vec<String> = places.iter().map(|place| place.display().to_string()).collect();
        AppError::Usage(format!("there is no recognition model in {}; name its folder with --model DIR", list.join(", ")))
    })
}
