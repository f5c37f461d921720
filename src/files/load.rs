//! Reads a routine for a practice: checked against the catalogue, the commands and the recogniser's words.

use std::path::{Path, PathBuf};

use crate::default_texts;
use crate::error::Failure;
use crate::routine_files::load_routine;
use crate::spoken::spoken_form;
use command_ear::{Lexicon, Models, SecondEarFiles};
use routine::{Hearing, Prescription};
use session::Command;
use speak::words::CommandsBy;
use speak::{Language, Words};

/// The command wordings of the catalogue, as the checker of routines wants them.
pub fn command_words(words: &Words) -> Vec<(String, Vec<String>)> {
    Command::ALL.into_iter().map(|command| (command.name().to_owned(), words.wordings(command))).collect()
}

/// Everything that a routine is led with, besides devices and a voice.
pub struct Loaded {
    pub words: Words,
    pub model: Models,
    pub lexicon: Lexicon,
    pub prescription: Prescription,
    pub routine_text: String,
}

/// A routine with its words and its recognition model, the built-in one where none is named. Its language is the one that was chosen for
/// the program, else its own.
///
/// # Errors
/// Words, model or routine cannot be used.
pub fn all(routine_file: &Path, model: Option<&Path>) -> Result<Loaded, Failure> {
    let words = Words::of(Language::of_tag(language_of(routine_file).as_deref())?)?;
    let model = models(model, words.language())?;
    let lexicon = Lexicon::of(&model)?;
    let (prescription, routine_text) = routine(routine_file, &words, &lexicon)?;
    Ok(Loaded { words, model, lexicon, prescription, routine_text })
}

/// The language that a routine or a household names; none where it names none that there is. What else is wrong with the file its check says.
#[must_use]
pub fn language_of(file: &Path) -> Option<String> {
    let text = std::fs::read_to_string(file).ok().filter(|text| text.len() <= routine::MAX_FILE_BYTES)?;
    let tag = text.parse::<toml::Table>().ok()?.get("language")?.as_str()?.to_owned();
    Language::find(&tag).ok().map(|language| language.tag.clone())
}

/// A routine that comes with the program, with the words that were chosen and their recognition model.
///
/// # Errors
/// Words or model cannot be used.
pub fn built_in(name: &str, text: &str, model: Option<&Path>) -> Result<Loaded, Failure> {
    let words = Words::usual()?;
    let model = models(model, words.language())?;
    let lexicon = Lexicon::of(&model)?;
    let mut prescription = routine::check_text(
        name,
        text,
        Hearing { commands: &command_words(&words), games: &words.language().games, ..Hearing::default() },
    )?;
    default_texts::put_into(&mut prescription, &words);
    Ok(Loaded { words, model, lexicon, prescription, routine_text: text.to_owned() })
}

/// A routine file: what it prescribes, and its text for the record.
///
/// # Errors
/// The file cannot be read, or has faults (all of them are named).
pub fn routine(path: &Path, words: &Words, lexicon: &Lexicon) -> Result<(Prescription, String), Failure> {
    let commands = command_words(words);
    let knows = |word: &str| lexicon.knows(&spoken_form(word)).unwrap_or(true);
    let mut prescription = load_routine(
        path,
        Hearing {
            commands: &commands,
            knows_word: Some(&knows),
            language: Some(&words.language().tag),
            games: &words.language().games,
            ..Hearing::default()
        },
    )?;
    default_texts::put_into(&mut prescription, words);
    let text = std::fs::read_to_string(path).map_err(|why| Failure::file(path, format!("cannot be read again: {why}")))?;
    Ok((prescription, text))
}

/// The folder in the folder of the record that holds a model with a whole vocabulary, in the Vosk layout. Where it is, what a client tells of
/// their week is written down.
pub const WRITING_MODEL: &str = "writing-model";

/// That folder, where a model is in it.
#[must_use]
pub fn writing_model(data: &Path) -> Option<PathBuf> {
    let folder = data.join(WRITING_MODEL);
    folder.join("am/final.mdl").is_file().then_some(folder)
}

/// What hears the commands of a language: the model that is named, else the one that the language has, if it has one; and the second ear of the
/// language beside it, or alone.
///
/// # Errors
/// A file of the language is not where it should be.
pub fn models(named: Option<&Path>, language: &Language) -> Result<Models, Failure> {
    let vosk = match (named, language.commands) {
        (Some(named), _) => Some(named.to_owned()),
        (None, CommandsBy::Vosk) if language.tag == "en" => Some(model_folder(None)?),
        (None, _) => None,
    };
    let second_ear = second_ear(language)?;
    // The English one does not stand in for a model that is not there.
    Ok(if vosk.is_none() && second_ear == SecondEarFiles::Usual { Models::none() } else { Models { vosk, second_ear } })
}

fn second_ear(language: &Language) -> Result<SecondEarFiles, Failure> {
    match (language.commands, &language.folder) {
        _ if language.tag == "en" => Ok(SecondEarFiles::Usual),
        (CommandsBy::SecondEar, Some(pack)) => Ok(SecondEarFiles::of_pack(pack)),
        (CommandsBy::SecondEar, None) => Ok(SecondEarFiles::of_language(&language.tag)?),
        (CommandsBy::Vosk | CommandsBy::None, _) => Ok(SecondEarFiles::None),
    }
}

/// The model folder: the one named, else `models/en` beside the program, where it was built, or where it is installed.
///
/// # Errors
/// None of the places holds a model; they are all named.
pub fn model_folder(named: Option<&Path>) -> Result<PathBuf, Failure> {
    if let Some(named) = named {
        return Ok(named.to_owned());
    }
    let beside = std::env::current_exe().ok().and_then(|exe| exe.parent().map(|folder| folder.join("../share/tidecount/models/en")));
    let built = Path::new(env!("CARGO_MANIFEST_DIR")).join("../../models/en");
    let places: Vec<PathBuf> = beside.into_iter().chain([built, PathBuf::from("models/en")]).collect();
    places.iter().find(|place| place.join("am/final.mdl").exists()).cloned().ok_or_else(|| {
        let list: Vec<String> = places.iter().map(|place| place.display().to_string()).collect();
        Failure::Missing(format!("there is no recognition model in {}; name its folder with --model DIR", list.join(", ")))
    })
}
