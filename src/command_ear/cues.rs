//! How sure a phrase is, from several cues: two decodings, rivals, other sound in the utterance, talk before it, level.

use super::alone::Limits;
use super::decide::{Phrase, PhraseBook, UNKNOWN, Word};
use super::embedding::Opinion;
use super::verdict::Verdict;

/// What is known of a phrase that may have been said.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub(crate) struct Cues {
    /// The decoder's confidence, 0 to 1; 0 where it did not find the phrase.
    pub first: f64,
    /// The same by the second decoding, of the sound at another speed.
    pub second: f64,
    /// Confidence of the strongest other known word in either decoding, 0 to 1.
    pub rival: f64,
    /// Time that the sound stands out from the room in the utterance but away from the phrase, s.
    pub elsewhere_s: f64,
    /// Share of loud sound in the last seconds before the utterance, 0 to 1: talk or television goes on.
    pub talk: f64,
    /// Level of the phrase over the room, dB.
    pub above_db: f64,
    /// What the second ear says of it; none where it was not asked, or does not know the phrase.
    pub second_ear: Option<Opinion>,
    /// How sure it must be where it hears alone; none beside a recogniser.
    pub alone: Option<Limits>,
}

/// Coefficients of the logistic combination, in the order of [`Cues::features`], the constant first. Set by hand on odd-numbered recordings so that
/// either decoding alone is acted upon where it is certain and nothing speaks against it, and two half-certain ones that agree are too;
/// `benches/command_ear/learn.py` learns them from recordings and prints this line.
const WEIGHTS: [f64; FEATURES + 1] = [-3.0, 3.6, 3.6, 1.6, -1.5, -1.0, -2.0, 0.0];

/// Where the recogniser found nothing the second ear must be as sure as this, 0 to 1. Other limits and rules, with their figures:
/// `models/second-ear/README.md`.
const ALONE: f64 = 0.85;

const FEATURES: usize = 7;

impl Cues {
    /// The numbers that are weighed, each about 0 to 2.
    pub fn features(&self) -> [f64; FEATURES] {
        [
            self.first,
            self.second,
            self.first * self.second,
            self.rival,
            self.elsewhere_s.min(2.0),
            self.talk,
            self.above_db.clamp(0.0, 40.0) / 20.0,
        ]
    }

    /// The chance that the phrase was said and meant, 0 to 1. A phrase that the recogniser found is weighed by its cues alone: the second ear's opinion of it
    /// won nothing there.
    pub fn sureness(&self) -> f64 {
        if let Some(opinion) = self.second_ear.filter(|_| self.is_of_second_ear_alone()) {
            return match self.alone {
                Some(limits) => limits.sureness(opinion.this),
                None if opinion.this >= ALONE => opinion.this,
                // Less sure it is not asked about either, but may be said twice.
                None => opinion.this / 2.0,
            };
        }
        let [constant, weights @ ..] = WEIGHTS;
        let sum = constant + weights.iter().zip(self.features()).map(|(w, x)| w * x).sum::<f64>();
        1.0 / (1.0 + (-sum).exp())
    }

    /// The recogniser did not find it.
    fn is_of_second_ear_alone(&self) -> bool {
        self.first == 0.0 && self.second == 0.0
    }
}

/// The phrase that two decodings of an utterance speak for, with what they say of it. `first` and `second` are the phrases they found, if any, and
/// the words come from both. Two wordings of one choice mean the same: they speak for each other, not against ("I can't breathe" beside
/// "I cannot breathe").
pub(crate) fn agreed(first: Option<Phrase>, second: Option<Phrase>, words: &[&[Word]], book: &PhraseBook) -> Option<(Phrase, Cues)> {
    let phrase = match (&first, &second) {
        (Some(a), Some(b)) if b.confidence > a.confidence => second.clone()?,
        (Some(_), _) => first.clone()?,
        (None, _) => second.clone()?,
    };
    let means_it = |found: &&Phrase| {
        found.text == phrase.text || (book.is_phrase(&found.text) && book.choice_of(&found.text) == book.choice_of(&phrase.text))
    };
    let of = |found: &Option<Phrase>| found.as_ref().filter(means_it).map_or(0.0, |found| found.confidence);
    let is_own = |word: &str| book.may_stand_for(word, &phrase.text) || phrase.text.split(' ').any(|own| own == word);
    let foreign = |word: &&Word| word.text != UNKNOWN && !is_own(&word.text);
    let cues = Cues {
        first: of(&first),
        second: of(&second),
        rival: words.iter().flat_map(|w| w.iter()).filter(foreign).map(|w| w.confidence).fold(0.0, f64::max),
        ..Cues::default()
    };
    Some((phrase, cues))
}

/// A phrase that was considered, whatever came of it.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct Candidate {
    pub text: String,
    /// On the caller's clock, s.
    pub start_s: f64,
    pub end_s: f64,
    pub decided_s: f64,
    pub cues: Cues,
    /// False where it was refused before its cues were weighed.
    pub weighed: bool,
    /// None until it is known.
    pub verdict: Option<Verdict>,
}

#[cfg(test)]
mod tests {
    use super::*;

    fn phrase(text: &str, confidence: f64) -> Option<Phrase> {
        Some(Phrase { text: text.into(), start_s: 0.3, end_s: 0.6, confidence })
    }

    fn word(text: &str, confidence: f64) -> Word {
        Word { text: text.into(), start_s: 0.3, end_s: 0.6, confidence }
    }

    fn book() -> PhraseBook {
        let choices = [vec!["i can't breathe", "i cannot breathe"], vec!["stop"], vec!["go"], vec!["how long"]];
        PhraseBook::new(&choices.map(|choice| choice.into_iter().map(str::to_owned).collect()))
    }

    const SURE: Cues =
        Cues { first: 1.0, second: 1.0, rival: 0.0, elsewhere_s: 0.0, talk: 0.0, above_db: 30.0, second_ear: None, alone: None };

    #[test]
    fn the_stronger_phrase_is_taken_with_what_speaks_against_it() {
        let (first, second) = ([word("go", 0.6), word(UNKNOWN, 1.0)], [word("stop", 0.9)]);
        let (found, cues) = agreed(phrase("go", 0.6), phrase("stop", 0.9), &[&first, &second], &book()).unwrap();
        assert_eq!((found.text.as_str(), cues.first, cues.second, cues.rival), ("stop", 0.0, 0.9, 0.6));
        let (found, cues) =
            agreed(phrase("how long", 0.7), phrase("how long", 0.6), &[&[word("how", 0.7), word("long", 0.7)]], &book()).unwrap();
        assert_eq!((found.confidence, cues.first, cues.second, cues.rival), (0.7, 0.7, 0.6, 0.0));
        assert_eq!(agreed(None, None, &[], &book()), None);
    }

    #[test]
    fn two_wordings_of_one_choice_speak_for_each_other() {
        let (can, cannot) =
            ([word("i", 0.9), word("can't", 0.7), word("breathe", 0.9)], [word("i", 0.9), word("cannot", 0.6), word("breathe", 0.9)]);
        let (found, cues) = agreed(phrase("i can't breathe", 0.7), phrase("i cannot breathe", 0.6), &[&can, &cannot], &book()).unwrap();
        assert_eq!((found.text.as_str(), cues.first, cues.second, cues.rival), ("i can't breathe", 0.7, 0.6, 0.0));
        // Of two choices they still speak against each other, also where neither is listened for.
        let (_, cues) = agreed(phrase("go", 0.7), phrase("stop", 0.6), &[&[word("go", 0.7)], &[word("stop", 0.6)]], &book()).unwrap();
        assert_eq!((cues.first, cues.second, cues.rival), (0.7, 0.0, 0.6));
        // Nor does a word of the other wording where the rest of it was not understood.
        let (_, cues) = agreed(phrase("i can't breathe", 0.7), None, &[&can, &[word("i", 0.9), word("cannot", 0.8)]], &book()).unwrap();
        assert_eq!((cues.second, cues.rival), (0.0, 0.0));
        let none = PhraseBook::default();
        let (_, cues) = agreed(phrase("go", 0.7), phrase("stop", 0.6), &[&[word("go", 0.7)], &[word("stop", 0.6)]], &none).unwrap();
        assert_eq!(cues.second, 0.0);
    }

    #[test]
    fn each_cue_moves_sureness_its_way() {
        assert!(SURE.sureness() > 0.8, "{}", SURE.sureness());
        for less in [
            Cues { first: 0.4, ..SURE },
            Cues { second: 0.0, ..SURE },
            Cues { rival: 1.0, ..SURE },
            Cues { elsewhere_s: 1.5, ..SURE },
            Cues { talk: 1.0, ..SURE },
        ] {
            assert!(less.sureness() < SURE.sureness(), "{less:?}");
        }
        assert!(Cues { first: 0.3, second: 0.0, ..SURE }.sureness() < 0.5);
    }

    #[test]
    fn the_second_ear_wins_a_phrase_of_its_own_only_if_sure_and_takes_none_away() {
        let heard = |first: f64, second: f64, this: f64| {
            let second_ear = Some(Opinion { this, rival: 0.0, other: 1.0 - this });
            Cues { first, second, second_ear, ..SURE }.sureness()
        };
        assert!(heard(0.0, 0.0, 0.9) > 0.8 && heard(0.0, 0.0, 0.8) < 0.5);
        assert_eq!(heard(1.0, 1.0, 0.01), SURE.sureness());
    }

    #[test]
    fn where_it_hears_alone_other_limits_hold() {
        let heard = |this: f64, alone| {
            let second_ear = Some(Opinion { this, rival: 0.0, other: 1.0 - this });
            Cues { second_ear, alone, ..Cues::default() }.sureness()
        };
        let quiet = Some(Limits::of(false, false));
        assert!(heard(0.7, quiet) >= 0.5 && heard(0.7, None) < 0.5, "it is asked about");
        assert_eq!(heard(0.9, quiet), heard(0.9, None));
    }
}
