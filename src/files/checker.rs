//! What routines and word packs are checked against: the commands' wordings and the words that the recogniser knows.

use crate::error::Failure;
use crate::load;
use crate::spoken::spoken_form;
use command_ear::Lexicon;
use routine::Hearing;
use session::Line;
use speak::{Language, Words};
use std::path::Path;

/// The words, the commands and, where there is a recognition model, its lexicon.
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
        Self::with_words(Words::usual()?)
    }

    /// The same in the language that a routine names, unless one was chosen for the program.
    ///
    /// # Errors
    /// As [`Checker::new`].
    pub fn of_routine(file: &Path) -> Result<Self, Failure> {
        Self::with_words(Words::of(Language::of_tag(load::language_of(file).as_deref())?)?)
    }

    fn with_words(words: Words) -> Result<Self, Failure> {
        let commands = load::command_words(&words);
        let lexicon = load::models(None, words.language()).ok().and_then(|model| Lexicon::of(&model).ok());
        Ok(Self { words, commands, lexicon })
    }

    /// Lends what a routine is checked against.
    pub fn with_hearing<T>(&self, then: impl FnOnce(Hearing<'_>) -> T) -> T {
        let knows = |word: &str| self.lexicon.as_ref().and_then(|lexicon| lexicon.knows(&spoken_form(word))).unwrap_or(true);
        then(Hearing {
            commands: &self.commands,
            knows_word: Some(&knows),
            language: Some(&self.words.language().tag),
            games: &self.words.language().games,
            ..Hearing::default()
        })
    }

    /// A message of the catalogue of words; none where it is missing.
    #[must_use]
    pub fn look_up(&self, key: &str) -> Option<String> {
        self.words.text(&Line { key: key.to_owned(), args: Vec::new() }).ok()
    }

    /// A message of the catalogue of words, or its key where it is missing.
    #[must_use]
    pub fn message(&self, key: String) -> String {
        self.look_up(&key).unwrap_or(key)
    }
}
