//! How sentences are written: a number put into a message may come to stand at the begin of one.

/// Marks that end a sentence where a space or nothing follows. "…" is a pause inside one.
const ENDS: [char; 3] = ['.', '!', '?'];

/// The text with a capital letter at the begin of each sentence: "three times." becomes "Three times." A text that is
/// no sentence, as the name of a command or of an exercise, stays as it is.
#[must_use]
pub fn with_capitals(text: &str) -> String {
    if !text.trim_end_matches(['*', '"', '\u{201d}']).ends_with(|c| ENDS.contains(&c)) {
        return text.to_owned();
    }
    let mut capitalised = String::with_capacity(text.len());
    let (mut begins, mut ended) = (true, false);
    for c in text.chars() {
        if ended && c.is_whitespace() {
            begins = true;
        }
        if begins && c.is_alphanumeric() {
            capitalised.extend(c.to_uppercase());
            begins = false;
        } else {
            capitalised.push(c);
        }
        ended = ENDS.contains(&c) || (ended && matches!(c, '*' | '"' | '\u{201d}'));
    }
    capitalised
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn sentences_begin_with_a_capital_and_names_stay_as_they_are() {
        for (text, written) in [
            ("three times.", "Three times."),
            ("good. ten point six seconds. and 2.5 more!", "Good. Ten point six seconds. And 2.5 more!"),
            ("*ready*, when you are.", "*Ready*, when you are."),
            ("Breathe in… and ah.", "Breathe in… and ah."),
            ("are you there? say *ready.* then wait.", "Are you there? Say *ready.* Then wait."),
            ("go on", "go on"),
            ("seven", "seven"),
            ("9 rounds. I count.", "9 rounds. I count."),
            ("", ""),
        ] {
            assert_eq!(with_capitals(text), written);
        }
    }
}
