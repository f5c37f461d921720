//! The words that are said and listened for: one Fluent catalogue from all files of a language pack, such as `words/en/`.

pub mod check;
mod figures;
mod language;
mod live;
mod numbers;
mod sentence;

pub use language::{CommandsBy, Direction, Language, PACK_FILE};
pub use live::{asks_for, live_words, place, spoken_length, telling_words, without_marks};

use fluent_bundle::concurrent::FluentBundle;
use fluent_bundle::resolver::errors::{ReferenceKind, ResolverError};
use fluent_bundle::{FluentArgs, FluentError, FluentResource, FluentValue};
use session::{Arg, Command, Line};
use std::collections::BTreeMap;
use std::sync::Arc;

/// The file whose messages say numbers; the functions that say them need it.
const NUMBERS_FILE: &str = "numbers.ftl";

/// Why a catalogue cannot be read or a line cannot be put into words.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub enum WordsError {
    /// A folder is no language pack.
    #[error("{file}, line {line}: {why}")]
    NoPack { file: String, line: usize, why: String },
    /// Nobody wrote words of this language.
    #[error("there are no words in the language \"{tag}\"; there are {there_are}. Give the folder of another with --language-pack DIR")]
    NoLanguage { tag: String, there_are: String },
    /// The file is no Fluent text.
    #[error("{file}, line {line}: {why}")]
    Unreadable { file: String, line: usize, why: String },
    /// The same message stands in two places.
    #[error("{file}, line {line}: the message {key} stands already in {first_file}, line {first_line}; rename or delete one")]
    Twice { key: String, first_file: String, first_line: usize, file: String, line: usize },
    /// There is no such message.
    #[error("there is no message {key} in the catalogue; add it to a file of the language pack")]
    NoMessage { key: String },
    /// The message needs an argument that was not given.
    #[error("the message {key} needs the argument {argument}, which was not given")]
    NoArgument { key: String, argument: String },
    /// The message names a message that is not there, goes in a circle, or was given text for a number.
    #[error("the message {key} cannot be put together: {why}")]
    Broken { key: String, why: String },
}

/// Where a message stands.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Place {
    pub file: String,
    pub line: usize,
}

/// What leads a practice: what whoever is spoken to can use.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum LedBy {
    /// Every word that is listened for; what is usual.
    Words,
    /// Commands, and no other word.
    Commands,
    /// Keys and pages, for nothing is heard.
    Keys,
}

impl LedBy {
    /// How the messages end that are said in place of others.
    fn ending(self) -> Option<&'static str> {
        match self {
            Self::Words => None,
            Self::Commands => Some("-by-command"),
            Self::Keys => Some("-by-key"),
        }
    }
}

/// The catalogue of one language. A clone shares everything with what it was cloned from.
#[derive(Clone)]
pub struct Words {
    bundle: Arc<FluentBundle<FluentResource>>,
    places: Arc<BTreeMap<String, Place>>,
    language: Arc<Language>,
    /// What a pack lacks is said in English rather than not at all; none for English itself.
    english: Option<Arc<Words>>,
    /// Which messages are said in place of those that count on every word being heard.
    led_by: LedBy,
}

impl Words {
    /// The English catalogue that is built in: every `*.ftl` in `words/en/`.
    ///
    /// # Errors
    /// A file is unreadable or a message stands twice.
    pub fn english() -> Result<Self, WordsError> {
        Self::of(Language::find("en")?)
    }

    /// The catalogue of the language that was chosen for the program, English where none was.
    ///
    /// # Errors
    /// A file is unreadable or a message stands twice.
    pub fn usual() -> Result<Self, WordsError> {
        Self::of(Language::of_tag(None)?)
    }

    /// The catalogue of a language. Numbers can be said if one of its files is `numbers.ftl`.
    ///
    /// # Errors
    /// A file is unreadable or a message stands twice.
    pub fn of(language: Arc<Language>) -> Result<Self, WordsError> {
        let tag = language.tag.parse().map_err(|why: unic_langid::LanguageIdentifierError| WordsError::Unreadable {
            file: language.tag.clone(),
            line: 1,
            why: why.to_string(),
        })?;
        let mut bundle = FluentBundle::new_concurrent(vec![tag]);
        // The marks that keep directions apart in print would be spoken or shown as rubbish.
        bundle.set_use_isolating(false);
        bundle.set_formatter(figures::formatter(language.decimal));
        let mut places = BTreeMap::new();
        for (file, text) in &language.files {
            add(&mut bundle, &mut places, file, text)?;
        }
        if let Some((_, text)) = language.files.iter().find(|(file, _)| file == NUMBERS_FILE) {
            numbers::add_functions(&mut bundle, text)?;
        }
        let english = if language.tag == "en" { None } else { Some(Arc::new(Self::english()?)) };
        Ok(Self { bundle: Arc::new(bundle), places: Arc::new(places), language, english, led_by: LedBy::Words })
    }

    /// The same words for whoever is not heard: a message `KEY` is said as its `KEY-by-key`, which names keys in place of spoken commands,
    /// where there is one.
    #[must_use]
    pub fn by_key(self) -> Self {
        Self { led_by: LedBy::Keys, ..self }
    }

    /// The same words where commands are heard and no other word is: a message `KEY` is said as its `KEY-by-command`, which asks for a command in
    /// place of an answer, where there is one.
    #[must_use]
    pub fn by_command(self) -> Self {
        Self { led_by: LedBy::Commands, ..self }
    }

    /// An English catalogue from files, each a name and its text.
    ///
    /// # Errors
    /// As [`Words::of`].
    pub fn from_files(files: &[(String, String)]) -> Result<Self, WordsError> {
        Self::of(Arc::new(Language::of("pack.toml", "tag = \"en\"\nname = \"English\"\nvoices = [\"en-gb\"]", files.to_vec())?))
    }

    /// The language of these words.
    #[must_use]
    pub fn language(&self) -> &Arc<Language> {
        &self.language
    }

    /// Where a message stands; none where there is none.
    #[must_use]
    pub fn place(&self, key: &str) -> Option<&Place> {
        self.places.get(key)
    }

    /// Whether there is a message of this key.
    #[must_use]
    pub fn has(&self, key: &str) -> bool {
        self.bundle.has_message(key)
    }

    /// The keys of all messages, sorted.
    pub fn keys(&self) -> impl Iterator<Item = &str> {
        self.places.keys().filter(|key| !key.starts_with('-')).map(String::as_str)
    }

    /// The line in words, the first wording if it has several.
    ///
    /// # Errors
    /// The message or an argument of it is missing; the text names it.
    pub fn text(&self, line: &Line) -> Result<String, WordsError> {
        self.wording(line, 0)
    }

    /// The line in one of its wordings: the message itself and its attributes `.v1`, `.v2` and so on. The same seed gives
    /// the same wording; consecutive seeds walk through all of them, so that none is heard twice running.
    ///
    /// # Errors
    /// As [`Words::text`].
    pub fn text_variant(&self, line: &Line, seed: u64) -> Result<String, WordsError> {
        let variants = self.variants(&line.key).max(1);
        // Each message starts at another wording, so that the second lines of all exercises differ too.
        let start = line.key.bytes().fold(0u64, |sum, byte| sum.wrapping_mul(31).wrapping_add(u64::from(byte)));
        let which = start.wrapping_add(seed) % variants as u64;
        self.wording(line, usize::try_from(which).unwrap_or(0))
    }

    /// How many wordings a message has; 0 where there is no such message.
    #[must_use]
    pub fn variants(&self, key: &str) -> usize {
        self.bundle
            .get_message(key)
            .map_or(0, |message| usize::from(message.value().is_some()) + message.attributes().filter(|a| is_variant(a.id())).count())
    }

    /// A message for the eye, with its arguments; its key where the catalogue lacks it, for a missing word is no reason to break off.
    #[must_use]
    pub fn shown(&self, key: &str, args: Vec<(&'static str, Arg)>) -> String {
        self.text(&Line { key: key.to_owned(), args }).unwrap_or_else(|_| key.to_owned())
    }

    /// An exercise's name; its id where the catalogue lacks it.
    #[must_use]
    pub fn exercise(&self, id: &str) -> String {
        self.text(&Line { key: format!("ex-{id}-name"), args: Vec::new() }).unwrap_or_else(|_| id.to_owned())
    }

    /// A figure as the language writes it: "12.4", "12,4".
    #[must_use]
    pub fn figure(&self, value: f64, decimals: usize) -> String {
        figures::written(&format!("{value:.decimals$}"), self.language.decimal)
    }

    /// A reason as the record has it ("can't breathe"), in words; as it stands where there are none.
    #[must_use]
    pub fn reason(&self, kept: &str) -> String {
        let slug: String = kept.chars().map(|c| if c.is_ascii_alphanumeric() { c } else { '-' }).collect();
        self.text(&Line { key: format!("report-why-{slug}-shown"), args: Vec::new() }).unwrap_or_else(|_| kept.to_owned())
    }

    /// What can be said for a command, in lower case, the shown one first; empty only if the catalogue lacks it.
    #[must_use]
    pub fn wordings(&self, command: Command) -> Vec<String> {
        self.wordings_of(&command.wordings_key())
    }

    /// The wordings that a message holds, parted by `|`, as [`Words::wordings`] gives them.
    #[must_use]
    pub fn wordings_of(&self, key: &str) -> Vec<String> {
        let line = Line { key: key.to_owned(), args: Vec::new() };
        let text = self.text(&line).unwrap_or_default();
        text.split('|').map(|wording| wording.split_whitespace().collect::<Vec<_>>().join(" ")).filter(|w| !w.is_empty()).collect()
    }

    /// What sounds like a command and is none; none where the language names nothing.
    #[must_use]
    pub fn near_misses(&self) -> Vec<String> {
        self.wordings_of("near-misses")
    }

    /// What counts where many people talk: the message `class-cmd-NAME` if there is one, else the wordings of two words and more.
    #[must_use]
    pub fn firm_wordings(&self, command: &str, wordings: Vec<String>) -> Vec<String> {
        match self.text(&Line { key: format!("class-cmd-{command}"), args: Vec::new() }) {
            Ok(text) => text.split('|').map(|wording| wording.trim().to_owned()).collect(),
            Err(_) => wordings.into_iter().filter(|wording| wording.contains(' ')).collect(),
        }
    }

    /// How a command is named aloud and on the screen; in a class by a wording that counts there. Its plain name where the catalogue
    /// lacks it.
    #[must_use]
    pub fn name_of(&self, command: Command, in_class: bool) -> String {
        let named = |key: String| self.text(&Line { key, args: Vec::new() }).ok();
        let of_class = if in_class { named(format!("class-{}", command.name_key())) } else { None };
        of_class.or_else(|| named(command.name_key())).unwrap_or_else(|| command.name().to_owned())
    }

    /// What a pack says of itself is asked for as messages are, so that pages and reports need nothing but words.
    fn of_language(&self, key: &str) -> Option<&str> {
        match key {
            "language-tag" => Some(&self.language.tag),
            "language-name" => Some(&self.language.name),
            "language-nouns" => Some(if self.language.capital_nouns { "capital" } else { "small" }),
            "language-direction" => Some(self.language.direction.name()),
            _ => None,
        }
    }

    fn wording(&self, line: &Line, which: usize) -> Result<String, WordsError> {
        if let Some(text) = self.of_language(&line.key) {
            return Ok(text.to_owned());
        }
        if let Some(ending) = self.led_by.ending() {
            let own = format!("{}{ending}", line.key);
            if self.has(&own) || self.english.as_ref().is_some_and(|english| english.has(&own)) {
                return self.wording(&Line { key: own, args: line.args.clone() }, 0);
            }
        }
        if let Some(english) = self.english.as_ref().filter(|english| !self.has(&line.key) && english.has(&line.key)) {
            return english.wording(line, which);
        }
        let mut args = FluentArgs::new();
        let mut messages = Vec::new();
        for (name, value) in &line.args {
            match value {
                Arg::Text(text) => args.set(*name, figures::written(text, self.language.decimal)),
                Arg::Number(number) => args.set(*name, *number),
                Arg::Message(key) => messages.push((*name, key)),
            }
        }
        let resolved: Vec<(&str, String)> =
            messages.into_iter().map(|(name, key)| Ok((name, self.format(key, 0, &args)?))).collect::<Result<_, WordsError>>()?;
        for (name, text) in resolved {
            args.set(name, text);
        }
        Ok(sentence::with_capitals(&self.format(&line.key, which, &args)?))
    }

    fn format(&self, key: &str, which: usize, args: &FluentArgs) -> Result<String, WordsError> {
        let missing = || WordsError::NoMessage { key: key.into() };
        let message = self.bundle.get_message(key).ok_or_else(missing)?;
        let attributes = message.attributes().filter(|a| is_variant(a.id())).map(|a| a.value());
        let pattern = message.value().into_iter().chain(attributes).nth(which).ok_or_else(missing)?;
        let mut faults = Vec::new();
        let text = self.bundle.format_pattern(pattern, Some(args), &mut faults);
        if let Some(fault) = faults.first() {
            return Err(match fault {
                FluentError::ResolverError(ResolverError::Reference(ReferenceKind::Variable { id })) => {
                    WordsError::NoArgument { key: key.into(), argument: id.clone() }
                }
                other => WordsError::Broken { key: key.into(), why: other.to_string() },
            });
        }
        if text.contains(numbers::NOT_A_NUMBER) {
            return Err(WordsError::Broken { key: key.into(), why: "it was given a text where it says a number".into() });
        }
        // A pattern of several lines keeps its breaks; speech and screen want one line.
        Ok(text.split_whitespace().collect::<Vec<_>>().join(" "))
    }
}

fn is_variant(attribute: &str) -> bool {
    attribute.strip_prefix('v').is_some_and(|number| !number.is_empty() && number.bytes().all(|b| b.is_ascii_digit()))
}

fn add(bundle: &mut FluentBundle<FluentResource>, places: &mut BTreeMap<String, Place>, file: &str, text: &str) -> Result<(), WordsError> {
    for (line, key) in keys_of(text) {
        let place = Place { file: file.into(), line };
        if let Some(first) = places.insert(key.into(), place) {
            return Err(WordsError::Twice { key: key.into(), first_file: first.file, first_line: first.line, file: file.into(), line });
        }
    }
    let resource = parse(file, text)?;
    bundle.add_resource(resource).map_err(|faults| WordsError::Unreadable {
        file: file.into(),
        line: 1,
        why: faults.first().map_or_else(String::new, ToString::to_string),
    })
}

/// Reads one file.
fn parse(file: &str, text: &str) -> Result<FluentResource, WordsError> {
    FluentResource::try_new(text.into()).map_err(|(_, faults)| {
        let (line, why) = faults.first().map_or((1, "it is no Fluent text".into()), |fault| {
            let line = 1 + text.bytes().take(fault.pos.start).filter(|&byte| byte == b'\n').count();
            (line, fault.to_string())
        });
        WordsError::Unreadable { file: file.into(), line, why }
    })
}

/// Keys of messages (and, with their dash, terms) and the lines they stand in. In Fluent nothing else begins a line with a
/// letter or a dash: whatever continues a message is indented.
fn keys_of(text: &str) -> impl Iterator<Item = (usize, &str)> {
    text.lines().enumerate().filter_map(|(number, line)| {
        let begins = line.starts_with(|c: char| c.is_ascii_alphabetic() || c == '-');
        let (key, _) = line.split_once('=').filter(|_| begins)?;
        Some((number + 1, key.trim_end()))
    })
}

/// Turns an argument into a number; None for anything else.
fn number(value: Option<&FluentValue>) -> Option<f64> {
    match value {
        Some(FluentValue::Number(number)) => Some(number.value),
        _ => None,
    }
}

#[cfg(test)]
mod tests;
