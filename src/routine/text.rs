//! Texts that are spoken, shown or listened for: whether they can be, and whether they would trigger a command.

use super::bounds::LANGUAGES;
use super::fault::{FaultKind, Finder};
use super::file::At;

/// All command wordings by tag: ("stop", ["stop", "please stop"]).
pub type CommandWords = [(String, Vec<String>)];

/// What the ears listen for; given as data, for this room knows no recogniser.
#[derive(Clone, Copy, Default)]
pub struct Hearing<'a> {
    pub commands: &'a CommandWords,
    /// Whether the recogniser knows a word (lower case). None: not checked.
    pub knows_word: Option<&'a dyn Fn(&str) -> bool>,
    /// The bytes of a word pack that a routine names by its file, or why it cannot be read. None: only built-in packs are known.
    pub pack_file: Option<&'a dyn Fn(&str) -> Result<Vec<u8>, String>>,
    /// The language of the words it is led with: a routine may name it beside those that are built in.
    pub language: Option<&'a str>,
    /// The language's own word packs, name and text: each stands in the place of the built-in one of its name.
    pub games: &'a [(String, String)],
}

impl Hearing<'_> {
    /// There are words in this language.
    #[must_use]
    pub fn speaks(&self, language: &str) -> bool {
        LANGUAGES.contains(&language) || self.language == Some(language)
    }
}

/// Commands that are listened for while the tool itself talks.
pub(super) const LIVE_WHILE_TALKING: [&str; 2] = ["stop", "pause"];
/// Commands that are *not* listened for while the client reads or answers; all others are.
const DEAF_WHILE_READING: [&str; 2] = ["yes", "no"];
/// A passage longer than this fits no screen; about three minutes of reading.
const MAX_PASSAGE_CHARS: usize = 2_500;
/// More than this cannot be taken in by ear; about 20 s of speech.
const MAX_SPOKEN_CHARS: usize = 300;

/// Who says a text.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum SaidBy {
    /// The tool alone.
    Tool,
    /// The tool, and then the client.
    Both,
    /// Shown or kept, never said.
    Nobody,
}

/// Whether it can be read at all; notes why not.
fn is_readable(text: &At<String>, name: &str, faults: &mut Finder<'_>) -> bool {
    let words = &text.value;
    let mut unreadable = |what: String, remedy: &str| faults.add(FaultKind::UnreadableText, text.span.clone(), what, remedy);
    if words.trim().is_empty() {
        unreadable(format!("`{name}` holds an empty text"), "Write the words, or leave the key out.");
        return false;
    }
    if let Some(bad) = words.chars().find(|&c| c.is_control() || c == char::REPLACEMENT_CHARACTER || is_invisible(c)) {
        let what = format!("`{name}` holds the unreadable character U+{:04X}", u32::from(bad));
        unreadable(what, "Write the text on one line, in plain letters and marks.");
        return false;
    }
    if !words.chars().any(char::is_alphanumeric) {
        unreadable(format!("`{name}` holds nothing that can be spoken"), "Write it in words.");
        return false;
    }
    true
}

/// Notes every fault of a passage, which is shown and not spoken. While it is read nothing is listened for that it might hold.
pub(super) fn check_passage(text: &At<String>, faults: &mut Finder<'_>) {
    let length = text.value.chars().count();
    if is_readable(text, "passage", faults) && length > MAX_PASSAGE_CHARS {
        let what = format!("`passage` has {length} characters, more than the {MAX_PASSAGE_CHARS} that can be shown");
        faults.add(FaultKind::UnreadableText, text.span.clone(), what, "Shorten it, or make two steps of it.");
    }
}

/// Notes every fault of one text.
pub fn check(text: &At<String>, name: &str, said_by: SaidBy, hearing: Hearing<'_>, faults: &mut Finder<'_>) {
    if !is_readable(text, name, faults) {
        return;
    }
    let words = &text.value;
    let length = words.chars().count();
    if length > MAX_SPOKEN_CHARS {
        let what = format!("`{name}` has {length} characters, but at most {MAX_SPOKEN_CHARS} can be taken in by ear");
        faults.add(FaultKind::UnreadableText, text.span.clone(), what, "Shorten it, or make two of it.");
    }
    let live = |tag: &str| match said_by {
        SaidBy::Tool => LIVE_WHILE_TALKING.contains(&tag),
        SaidBy::Both => !DEAF_WHILE_READING.contains(&tag),
        SaidBy::Nobody => false,
    };
    let spoken = words_of(words);
    let hits = hearing.commands.iter().filter(|(tag, _)| live(tag)).flat_map(|(tag, wordings)| {
        wordings.iter().filter(|wording| holds(&spoken, &words_of(wording))).map(move |wording| (tag, wording))
    });
    // The longest wording says most; one fault a text will do.
    if let Some((tag, wording)) = hits.max_by_key(|(_, wording)| wording.len()) {
        faults.add(
            FaultKind::CommandInText,
            text.span.clone(),
            format!("`{name}` holds \"{wording}\", which is listened for at that moment as the command {tag}"),
            "Say it in other words.",
        );
    }
}

/// Notes the words of an answer that the recogniser cannot hear.
pub(super) fn check_known(answer: &At<String>, hearing: Hearing<'_>, faults: &mut Finder<'_>) {
    let Some(knows) = hearing.knows_word else { return };
    for word in words_of(&answer.value).iter().filter(|word| !knows(word)) {
        faults.add(
            FaultKind::UnknownWord,
            answer.span.clone(),
            format!("the answer's word \"{word}\" is not in the recogniser's lexicon and would never be heard"),
            "Ask for another word, or spell it as it is usually written.",
        );
    }
}

/// Lower-case words without punctuation; apostrophes stay.
fn words_of(text: &str) -> Vec<String> {
    text.to_lowercase()
        .replace('’', "'")
        .split(|c: char| !c.is_alphanumeric() && c != '\'')
        .map(|word| word.trim_matches('\''))
        .filter(|word| !word.is_empty())
        .map(str::to_owned)
        .collect()
}

/// The words as they are spoken: lower case, single spaces, no marks.
pub(super) fn spoken(text: &str) -> String {
    words_of(text).join(" ")
}

/// Whether a text holds another one, whole words only.
pub(super) fn holds_words(text: &str, other: &str) -> bool {
    holds(&words_of(text), &words_of(other))
}

fn holds(text: &[String], wording: &[String]) -> bool {
    !wording.is_empty() && text.windows(wording.len()).any(|window| window == wording)
}

/// Zero-width and direction marks: invisible, and voices stumble over them.
fn is_invisible(c: char) -> bool {
    matches!(c, '\u{200B}'..='\u{200F}' | '\u{202A}'..='\u{202E}' | '\u{2060}'..='\u{2064}' | '\u{2066}'..='\u{2069}' | '\u{FEFF}')
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn wordings_are_found_as_whole_words_only() {
        let text = words_of("The bus’s “Stop” sign, unstoppable");
        assert!(holds(&text, &words_of("stop")));
        assert!(!holds(&words_of("unstoppable stops"), &words_of("stop")));
        assert!(holds(&words_of("now go on, then"), &words_of("go on")));
        assert!(!holds(&words_of("on we go"), &words_of("go on")));
        assert!(!holds(&[], &words_of("go on")));
    }
}
