//! Checks the routines and word packs of a package, before one is made and before one is taken.

use crate::error::Failure;
use crate::load;
use crate::spoken::spoken_form;
use command_ear::Lexicon;
use handover::TextFile;
use routine::{Hearing, Prescription, check_pack, check_text};
use speak::Words;

/// What routines are checked against.
pub struct Checker {
    pub words: Words,
    commands: Vec<(String, Vec<String>)>,
    lexicon: Option<Lexicon>,
}

impl Checker {
    /// Without a recognition model the words of answers are not checked.
    ///
    /// # Errors
    /// The catalogue of words cannot be read.
    pub fn new() -> Result<Self, Failure> {
        let words = Words::english()?;
        let commands = load::command_words(&words);
        let lexicon = load::model_folder(None).ok().and_then(|model| Lexicon::open(&model).ok());
        Ok(Self { words, commands, lexicon })
    }

    /// Checks every file; `place` stands before each file's name in faults.
    ///
    /// # Errors
    /// All faults of all files, one a line: `PLACEevening.toml:12: what. remedy`.
    pub fn check(&self, place: &str, routines: &[TextFile], packs: &[TextFile]) -> Result<Vec<Prescription>, String> {
        let knows = |word: &str| self.lexicon.as_ref().and_then(|lexicon| lexicon.knows(&spoken_form(word))).unwrap_or(true);
        // A routine's own packs come with it.
        let beside = |name: &str| {
            let found = packs.iter().find(|file| file.name == name).map(|file| file.text.clone().into_bytes());
            found.ok_or_else(|| "it is not in the package; add it with --pack".to_owned())
        };
        let hearing = Hearing { commands: &self.commands, knows_word: Some(&knows), pack_file: Some(&beside) };
        let mut faults = Vec::new();
        let mut prescriptions = Vec::new();
        for file in routines {
            match check_text(&format!("{place}{}", file.name), &file.text, hearing) {
                Ok(prescription) => prescriptions.push(prescription),
                Err(found) => faults.push(found.to_string()),
            }
        }
        let checked = packs.iter().filter_map(|file| check_pack(&format!("{place}{}", file.name), file.text.as_bytes(), hearing).err());
        faults.extend(checked.map(|found| found.to_string()));
        if faults.is_empty() { Ok(prescriptions) } else { Err(plain(&faults.join("\n"))) }
    }

    /// A message of the catalogue of words, or its key where it is missing.
    pub fn message(&self, key: String) -> String {
        let line = session::Line { key, args: Vec::new() };
        self.words.text(&line).unwrap_or(line.key)
    }
}

/// Text from elsewhere must not steer the terminal.
fn plain(text: &str) -> String {
    text.chars().map(|c| if c.is_control() && c != '\n' { ' ' } else { c }).collect()
}
