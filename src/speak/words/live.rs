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

/// The text asks for the phrase: it has it as whole words, and something before them. A line that begins with it, as "Next: breathing" does,
/// only names what comes.
#[must_use]
pub fn asks_for(text: &str, phrase: &str) -> bool {
    let (said, sought) = (words_of(text), words_of(phrase));
    !sought.is_empty() && said.windows(sought.len()).skip(1).any(|window| window == sought)
}

/// Where the phrase stands in the text: the shares of the saying of it at which its first mention begins and its last one ends, 0 to 1, by
/// [`spoken_length`]. None where it does not stand there as whole words.
#[must_use]
pub fn place(text: &str, phrase: &str) -> Option<(f64, f64)> {
    let sought = words_of(phrase);
    let words = spoken_words(text);
    let whole = words.last()?.2;
    let fits = |window: &[(String, f64, f64)]| window.iter().map(|(word, ..)| word).eq(&sought);
    let mut mentions = words.windows(sought.len().max(1)).filter(|window| fits(window));
    let first = mentions.next()?;
    let last = mentions.next_back().unwrap_or(first);
    Some((first.first()?.1 / whole, last.last()?.2 / whole))
}

/// How long the text takes to say, in letters: one as long as another, a figure as long as five, a mark between words as long as three.
#[must_use]
pub fn spoken_length(text: &str) -> f64 {
    spoken_words(text).last().map_or(0.0, |word| word.2)
}

/// Each word, where it begins and where it ends, in letters.
fn spoken_words(text: &str) -> Vec<(String, f64, f64)> {
    const MARK: f64 = 3.0;
    /// "15" is said as a word or two.
    const FIGURE: f64 = 5.0;
    let (mut words, mut at) = (Vec::new(), 0.0);
    for piece in text.split_whitespace() {
        // A piece such as "slowly—and" is two words.
        let of_piece = words_of(piece);
        for word in &of_piece {
            let ends = at + word.chars().map(|c| if c.is_numeric() { FIGURE } else { 1.0 }).sum::<f64>();
            words.push((word.clone(), at, ends));
            at = ends;
        }
        if piece.ends_with(|c: char| ",.;:!?\u{2026}\u{2014}".contains(c)) || of_piece.is_empty() {
            at += MARK;
        }
    }
    words
}

/// The words of a phrase by which it could be taken for another that has them. Words of three letters and less are in every sentence.
#[must_use]
pub fn telling_words(phrase: &str) -> Vec<String> {
    /// A word of fewer letters says nothing.
    const LETTERS: usize = 4;
    let mut words = words_of(phrase);
    words.retain(|word| word.chars().count() >= LETTERS);
    words
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
    fn a_phrase_has_its_place() {
        let close = |found: Option<(f64, f64)>, (from, to): (f64, f64)| {
            found.is_some_and(|(a, b)| (a - from).abs() < 0.01 && (b - to).abs() < 0.01)
        };
        assert!(close(place("Say ready.", "ready"), (3.0 / 8.0, 1.0)));
        assert!(close(place("Now, say *ready*.", "Ready"), (9.0 / 14.0, 1.0)), "the comma takes three letters");
        assert!(close(place("Go on or go on", "go on"), (0.0, 1.0)), "from the first to the last");
        assert!(
            close(place("Breathe in… ready.", "ready"), (12.0 / 17.0, 1.0)) && close(place("Hold 15, ready", "ready"), (17.0 / 22.0, 1.0))
        );
        assert_eq!(place("Already there.", "ready"), None);
        assert_eq!(place("", "ready"), None);
        assert_eq!(place("Ready.", ""), None);
    }

    #[test]
    fn what_a_line_begins_with_is_not_asked_for() {
        assert!(asks_for("Say *next* when you like.", "next") && asks_for("Next: say next.", "next"));
        assert!(!asks_for("Next: Nasal breathing.", "next") && !asks_for("Say nothing.", "next") && !asks_for("Say it.", ""));
    }

    #[test]
    fn short_words_tell_nothing() {
        assert_eq!(telling_words("I'm dizzy"), ["dizzy"]);
        assert_eq!(telling_words("It hurts, stop it."), ["hurts", "stop"]);
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
