//! Which words make a command: whole phrases only, sure enough, long enough, standing alone.

use super::verdict::Verdict;
use std::collections::{HashMap, HashSet};

/// The symbol the model gives to speech outside the grammar.
pub const UNKNOWN: &str = "[unk]";

/// What stands behind a beginning that is listened for with any word after it: "start for" and a name that nobody knows.
const ANY_WORD: &str = " [unk]";
/// Longer speech behind such a beginning is no name, s.
const ANY_WORD_AT_MOST_S: f64 = 2.0;

/// The wording is the beginning of something longer, whatever that is.
pub(crate) fn is_open(wording: &str) -> bool {
    wording.ends_with(ANY_WORD)
}

/// A word as the decoder reports it; times in s from the first sample of the utterance.
#[derive(Debug, Clone, PartialEq)]
pub struct Word {
    pub text: String,
    pub start_s: f64,
    pub end_s: f64,
    /// 0 to 1.
    pub confidence: f64,
}

/// The phrases of a grammar, for exact comparison.
#[derive(Debug, Clone, Default)]
pub(crate) struct PhraseBook {
    /// Phrase and the number of its choice.
    whole: HashMap<String, usize>,
    /// Every proper beginning, in whole words, of a phrase, and the choices of the phrases.
    beginnings: HashMap<String, HashSet<usize>>,
    /// Every word and the choices that have it in one of their phrases.
    words: HashMap<String, HashSet<usize>>,
}

impl PhraseBook {
    /// Takes the wordings of each choice.
    pub fn new(choices: &[Vec<String>]) -> Self {
        let mut book = Self::default();
        for (choice, phrase) in choices.iter().enumerate().flat_map(|(i, c)| c.iter().map(move |p| (i, p))) {
            let words: Vec<&str> = phrase.split(' ').collect();
            for word in &words {
                book.words.entry((*word).to_owned()).or_default().insert(choice);
            }
            for n in 1..words.len() {
                let beginning = words.iter().take(n).copied().collect::<Vec<_>>().join(" ");
                book.beginnings.entry(beginning).or_default().insert(choice);
            }
            book.whole.entry(phrase.clone()).or_insert(choice);
        }
        book
    }

    /// The choice that this text is a phrase of, word for word.
    pub fn choice_of(&self, text: &str) -> Option<usize> {
        self.whole.get(text).copied()
    }

    /// The word stands in a phrase of the same choice as this phrase.
    pub fn may_stand_for(&self, word: &str, phrase: &str) -> bool {
        let own = self.choice_of(phrase);
        own.is_some_and(|own| self.words.get(word).is_some_and(|choices| choices.contains(&own)))
    }

    /// The text is a phrase, word for word.
    pub fn is_phrase(&self, text: &str) -> bool {
        self.whole.contains_key(text)
    }

    /// A longer phrase with another meaning begins with this one, and its speaker may only have paused. Where any word may follow,
    /// more of them may.
    pub fn may_mean_more(&self, text: &str) -> bool {
        let own = self.whole.get(text);
        is_open(text) || self.beginnings.get(text).is_some_and(|choices| choices.iter().any(|c| Some(c) != own))
    }
}

/// What a phrase must fulfil.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Rules {
    /// Every word must have this confidence, 0 to 1.
    pub min_confidence: f64,
    /// Least time that the sound must stand out from the room at the phrase, s: less is a click. (The decoder's own times will
    /// not do: they are peaks of its network, 0.09 s for "no".)
    pub min_loud_s: f64,
    /// Longest phrase, s: a drawn-out vowel decoded as a word is none.
    pub max_word_s: f64,
    /// Other speech must be at least this far from the phrase, s.
    pub alone_s: f64,
}

/// A phrase that passed; times as in [`Word`].
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct Phrase {
    pub text: String,
    pub start_s: f64,
    pub end_s: f64,
    /// The least of its words' confidences.
    pub confidence: f64,
}

/// The words without the unknown ones, joined by spaces.
pub(crate) fn known_text(words: &[Word]) -> String {
    words.iter().filter(|w| w.text != UNKNOWN).map(|w| w.text.as_str()).collect::<Vec<_>>().join(" ")
}

/// The known words of an utterance that are no command.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct Refusal {
    pub heard: Phrase,
    pub why: Verdict,
}

/// Finds the command in an utterance: all its known words, in one unbroken run, are exactly one phrase, and other speech
/// keeps its distance. `mid_sound` says that sound was already going on when the utterance was taken up, so that what
/// stood before it is not known.
///
/// # Errors
/// Why what is known is no command; none where nothing is known.
pub(crate) fn judge(words: &[Word], book: &PhraseBook, rules: &Rules, mid_sound: bool) -> Result<Phrase, Option<Refusal>> {
    let known = |w: &Word| w.text != UNKNOWN;
    let (Some(first), Some(last)) = (words.iter().position(known), words.iter().rposition(known)) else { return Err(None) };
    let run = words.get(first..=last).unwrap_or_default();
    let mut text = known_text(run);
    let (start_s, mut end_s) = (run.first().map_or(0.0, |w| w.start_s), run.last().map_or(0.0, |w| w.end_s));
    let confidence = run.iter().map(|w| w.confidence).fold(1.0, f64::min);
    let before_s = match first.checked_sub(1).and_then(|i| words.get(i)) {
        Some(w) => start_s - w.end_s,
        None if mid_sound => start_s,
        None => f64::INFINITY,
    };
    let mut after_s = words.get(last + 1).map_or(f64::INFINITY, |w| w.start_s - end_s);
    // What follows at once belongs to a beginning that any word may follow.
    let any_word = words.last().filter(|w| !known(w) && after_s < rules.alone_s && w.end_s - end_s <= ANY_WORD_AT_MOST_S);
    if let Some(any_word) = any_word
        && book.is_phrase(&format!("{text}{ANY_WORD}"))
    {
        text.push_str(ANY_WORD);
        (end_s, after_s) = (any_word.end_s, f64::INFINITY);
    }
    let why = if run.iter().any(|w| w.text == UNKNOWN) || !book.is_phrase(&text) {
        Some(Verdict::NoPhrase)
    } else if confidence < rules.min_confidence {
        Some(Verdict::Unsure)
    } else if run.iter().any(|w| w.end_s - w.start_s > rules.max_word_s) {
        Some(Verdict::TooLong)
    } else if before_s.min(after_s) < rules.alone_s {
        Some(Verdict::OtherSpeech)
    } else {
        None
    };
    let heard = Phrase { text, start_s, end_s, confidence };
    match why {
        None => Ok(heard),
        Some(why) => Err(Some(Refusal { heard, why })),
    }
}

/// Every phrase of a list said in one breath, in its order: phrases of the choices from `from` on. Each word of it must have
/// `min_confidence`.
pub(crate) fn listed(words: &[Word], book: &PhraseBook, from: usize, min_confidence: f64) -> Vec<Phrase> {
    let mut found = Vec::new();
    let mut at = 0;
    while at < words.len() {
        // The longest phrase that begins here.
        let longest = (at + 1..=words.len().min(at + 6)).rev().find_map(|to| {
            let run = words.get(at..to)?;
            let text = run.iter().map(|word| word.text.as_str()).collect::<Vec<_>>().join(" ");
            book.choice_of(&text).map(|choice| (to, text, run, choice))
        });
        let Some((to, text, run, choice)) = longest else {
            at += 1;
            continue;
        };
        let confidence = run.iter().map(|word| word.confidence).fold(1.0, f64::min);
        if let (Some(first), Some(last)) = (run.first(), run.last())
            && confidence >= min_confidence
            && choice >= from
        {
            found.push(Phrase { text, start_s: first.start_s, end_s: last.end_s, confidence });
        }
        at = to;
    }
    found
}

/// Watches partial results for one that stays.
#[derive(Debug, Default)]
pub(crate) struct Stability {
    text: String,
    since_s: f64,
}

impl Stability {
    /// Takes the newest partial text, heard up to `now_s`; gives how long it has stood, s.
    pub fn stands_for_s(&mut self, text: &str, now_s: f64) -> f64 {
        if text != self.text {
            self.text = text.to_owned();
            self.since_s = now_s;
        }
        now_s - self.since_s
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const RULES: Rules = Rules { min_confidence: 0.8, min_loud_s: 0.15, max_word_s: 1.5, alone_s: 0.2 };

    fn book() -> PhraseBook {
        PhraseBook::new(&[vec!["stop".into(), "stop please".into()], vec!["go on".into()], vec!["go".into(), "i'm ready".into()]])
    }

    fn words(spec: &[(&str, f64, f64, f64)]) -> Vec<Word> {
        spec.iter().map(|&(text, start_s, end_s, confidence)| Word { text: text.into(), start_s, end_s, confidence }).collect()
    }

    fn refused(words: &[Word], mid_sound: bool) -> Option<Verdict> {
        judge(words, &book(), &RULES, mid_sound).err().flatten().map(|refusal| refusal.why)
    }

    #[test]
    fn whole_phrase_is_heard_with_its_least_confidence() {
        let heard = judge(&words(&[("i'm", 0.3, 0.5, 0.95), ("ready", 0.5, 0.9, 0.85)]), &book(), &RULES, false);
        assert_eq!(heard, Ok(Phrase { text: "i'm ready".into(), start_s: 0.3, end_s: 0.9, confidence: 0.85 }));
    }

    #[test]
    fn parts_repeats_and_mixtures_are_not_phrases() {
        for spec in [
            &[("ready", 0.3, 0.6, 1.0)][..],
            &[("stop", 0.3, 0.6, 1.0), ("stop", 0.7, 1.0, 1.0)],
            &[("go", 0.3, 0.5, 1.0), (UNKNOWN, 0.5, 0.7, 1.0), ("on", 0.7, 1.0, 1.0)],
            &[(UNKNOWN, 0.3, 0.5, 1.0)],
            &[],
        ] {
            assert!(judge(&words(spec), &book(), &RULES, false).is_err(), "{spec:?}");
        }
    }

    #[test]
    fn doubtful_and_drawn_out_words_are_refused() {
        assert_eq!(refused(&words(&[("stop", 0.3, 0.7, 0.79)]), false), Some(Verdict::Unsure));
        assert_eq!(refused(&words(&[("stop", 0.3, 2.0, 1.0)]), false), Some(Verdict::TooLong));
        assert!(judge(&words(&[("stop", 0.3, 0.7, 0.8)]), &book(), &RULES, false).is_ok());
    }

    #[test]
    fn other_speech_beside_it_refuses_and_at_a_distance_does_not() {
        let beside = |gap: f64| words(&[("stop", 1.0, 1.4, 1.0), (UNKNOWN, 1.4 + gap, 2.4, 1.0)]);
        assert_eq!(refused(&beside(0.1), false), Some(Verdict::OtherSpeech));
        assert!(judge(&beside(0.3), &book(), &RULES, false).is_ok());
        let before = |gap: f64| words(&[(UNKNOWN, 0.2, 1.0 - gap, 1.0), ("stop", 1.0, 1.4, 1.0)]);
        assert_eq!(refused(&before(0.1), false), Some(Verdict::OtherSpeech));
        assert!(judge(&before(0.3), &book(), &RULES, false).is_ok());
    }

    #[test]
    fn a_beginning_cut_off_counts_as_other_speech() {
        let word = words(&[("stop", 0.05, 0.4, 1.0)]);
        assert!(judge(&word, &book(), &RULES, false).is_ok());
        assert_eq!(refused(&word, true), Some(Verdict::OtherSpeech));
    }

    #[test]
    fn a_beginning_takes_the_unknown_words_behind_it_and_nothing_else() {
        let book =
            PhraseBook::new(&[vec!["start for grandma".into()], vec!["start for [unk]".into(), "start for grandma and [unk]".into()]]);
        let said =
            |spec: &[(&str, f64, f64, f64)]| judge(&words(spec), &book, &RULES, false).ok().map(|phrase| (phrase.text, phrase.end_s));
        let start = [("start", 0.3, 0.6, 0.95), ("for", 0.6, 0.8, 0.9)];
        let with = |more: &[(&'static str, f64, f64, f64)]| said(&[&start[..], more].concat());
        assert_eq!(with(&[(UNKNOWN, 0.8, 1.3, 1.0)]), Some(("start for [unk]".into(), 1.3)));
        assert_eq!(with(&[(UNKNOWN, 0.8, 1.1, 1.0), (UNKNOWN, 1.1, 1.3, 1.0)]), Some(("start for [unk]".into(), 1.3)));
        assert_eq!(with(&[("grandma", 0.8, 1.3, 0.9)]), Some(("start for grandma".into(), 1.3)));
        let two = [("grandma", 0.8, 1.3, 0.9), ("and", 1.4, 1.6, 0.9), (UNKNOWN, 1.6, 2.0, 1.0)];
        assert_eq!(with(&two), Some(("start for grandma and [unk]".into(), 2.0)));
        assert_eq!(with(&[]), None, "nobody was named");
        assert_eq!(with(&[(UNKNOWN, 1.5, 2.0, 1.0)]), None, "that was something else");
        assert_eq!(with(&[(UNKNOWN, 0.8, 4.0, 1.0)]), None, "that was talk");
        assert_eq!(
            said(&[&[(UNKNOWN, 0.0, 0.25, 1.0)], &start[..], &[(UNKNOWN, 0.8, 1.3, 1.0)]].concat()),
            None,
            "the middle of a sentence"
        );
        assert!(book.may_mean_more("start for [unk]") && book.may_mean_more("start for grandma"));
    }

    #[test]
    fn knows_when_a_phrase_may_mean_more() {
        assert!(book().may_mean_more("go"));
        assert!(!book().may_mean_more("go on"));
        assert!(!book().may_mean_more("stop"), "please changes nothing");
    }

    #[test]
    fn a_changed_partial_starts_anew() {
        let mut stability = Stability::default();
        assert_eq!(stability.stands_for_s("stop", 1.0), 0.0);
        assert_eq!(stability.stands_for_s("stop", 1.5), 0.5);
        assert_eq!(stability.stands_for_s("stop [unk]", 1.5), 0.0);
    }
}
