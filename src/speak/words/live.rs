//! Finds command words in what the tool itself says.

/// The first of `phrases` that stands in the text as whole words, case and punctuation aside; None if none does.
///
/// What the tool says must not contain what it listens for: it would hear itself.
#[must_use]
pub fn live_words<'a>(text: &str, phrases: &[&'a str]) -> Option<&'a str> {
    let said = words_of(text);
    phrases.iter().copied().find(|phrase| {
        let sought = words_of(phrase);
        !sought.is_empty() && said.windows(sought.len()).any(|window| window == sought)
    })
}

/// The text has a word of the phrase. Words of three letters and less are in every sentence and do not count.
///
/// What sounds like part of our own sentence may be it.
#[must_use]
pub fn shares_a_word(text: &str, phrase: &str) -> bool {
    /// A word of fewer letters says nothing.
    const LETTERS: usize = 4;
    let said = words_of(text);
    words_of(phrase).iter().filter(|word| word.chars().count() >= LETTERS).any(|word| said.contains(word))
}

/// The text without what only the eye needs: the asterisks that set off a word to be said, and line breaks.
#[must_use]
pub fn without_marks(text: &str) -> String {
    text.replace('*', "").split_whitespace().collect::<Vec<_>>().join(" ")
}

/// Lower-case words; an apostrophe inside a word belongs to it, every other mark parts words.
fn words_of(text: &str) -> Vec<String> {
    text.to_lowercase()
        .replace(['\u{2019}', '\u{02bc}'], "'")
        .split(|c: char| !(c.is_alphanumeric() || c == '\''))
        .map(|word| word.trim_matches('\'').to_owned())
        .filter(|word| !word.is_empty())
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn marks_for_the_eye_are_not_said() {
        assert_eq!(without_marks(" Say *ready*,\n  please. "), "Say ready, please.");
    }

    #[test]
    fn a_word_in_common_is_found_unless_it_is_short() {
        assert!(shares_a_word("Stop if you feel dizzy.", "I'm dizzy"));
        assert!(!shares_a_word("Stop if it is too much.", "it hurts"));
    }

    #[test]
    fn whole_words_are_found_and_parts_are_not() {
        for (text, found) in [
            ("Say *stop* at any time.", Some("stop")),
            ("STOP!", Some("stop")),
            ("Please don\u{2019}t; I\u{2019}m  ready.", Some("i'm ready")),
            ("Go \u{2014} on.", Some("go on")),
            ("It stops by itself, nonstop.", None),
            ("Are you ready? I am.", None),
            ("'Stop'", Some("stop")),
            ("Go and carry on.", None),
            ("", None),
        ] {
            assert_eq!(live_words(text, &["stop", "i'm ready", "go on", ""]), found, "{text}");
        }
    }
}
