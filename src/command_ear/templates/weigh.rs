//! What the recogniser made of an utterance and what it is like of the person's own, weighed together.

use super::Mel;
use super::matcher::{Likeness, Matcher, misfit};
use super::own_voice::EnrolledVoice;
use super::take::Cut;
use crate::decide::{Phrase, PhraseBook};
use crate::{ACT_CONFIDENCE, ASK_CONFIDENCE};

/// From this confidence on a guess of the recogniser is worth a comparison, 0 to 1.
pub(crate) const GUESS_CONFIDENCE: f64 = 0.15;
/// A guess is confirmed by a misfit up to this: on every other speaker of the Speech Commands test part (`benches/enrol/reference/likeness.py`) 90 % of their own commands and 13 % of other words.
const CONFIRMS: f32 = 0.15;
/// Without a guess the misfit must be as small as this: none of 508 other words of those speakers came so near.
const STANDS_ALONE: f32 = -0.25;
/// It must rise so much over the room to stand alone, dB: in noise everything grows alike.
const ALONE_ABOVE_DB: f64 = 15.0;
/// What a confirmed guess and a likeness alone are worth; either is acted upon.
const CONFIRMED: f64 = 0.9;
const ALONE: f64 = 0.82;
/// What either is worth for a costly command: the session asks back.
const ASKED_BACK: f64 = 0.75;
/// A guess that another command contradicts is worth no more.
const CONTRADICTED: f64 = 0.6;
/// "stop" is never lowered: a needless stop does less harm than a missed one.
const NEVER_LOWERED: &str = "stop";

/// Weighs a person's own voice in.
pub(crate) struct Weigher {
    own: EnrolledVoice,
    matcher: Matcher,
    mel: Mel,
}

impl Weigher {
    pub fn new(own: EnrolledVoice) -> Self {
        Self { matcher: Matcher::new(&own), own, mel: Mel::default() }
    }

    /// `guess`: the phrase of the recogniser, however unsure. `over`: the utterance is over, so a likeness may stand alone. `samples` and `levels`
    /// as in [`Cut::of`].
    pub fn weigh(
        &mut self,
        guess: Option<Phrase>,
        over: bool,
        samples: &[i16],
        levels: &[(f64, f64)],
        book: &PhraseBook,
    ) -> Option<Phrase> {
        let sure = guess.as_ref().is_some_and(|g| g.confidence >= CONFIRMED && g.text == NEVER_LOWERED);
        if sure || (guess.is_none() && !over) {
            return kept(guess);
        }
        let Some(cut) = Cut::of(samples, levels, &mut self.mel) else { return kept(guess) };
        let likenesses = self.matcher.likenesses(&cut.take);
        let alone = self.standing_alone(&likenesses, &cut).filter(|wording| book.is_phrase(wording)).map(str::to_owned);
        if let Some(mut guess) = guess {
            let rank = likenesses.iter().position(|l| self.own.words.get(l.word).is_some_and(|w| w.wording == guess.text));
            if rank == Some(0) && misfit(&likenesses) <= CONFIRMS {
                guess.confidence = guess.confidence.max(self.worth(&guess.text, guess.confidence, CONFIRMED));
                return Some(guess);
            }
            match alone {
                Some(other) if other != guess.text && guess.confidence < ASK_CONFIDENCE => return Some(self.alone(other, &cut)),
                Some(other) if other != guess.text && guess.text != NEVER_LOWERED && rank.is_some() => {
                    guess.confidence = guess.confidence.min(CONTRADICTED);
                }
                _ => {}
            }
            return kept(Some(guess));
        }
        alone.filter(|_| over).map(|wording| self.alone(wording, &cut))
    }

    /// The wording that the likenesses alone speak for.
    fn standing_alone(&self, likenesses: &[Likeness], cut: &Cut) -> Option<&str> {
        let best = likenesses.first()?;
        let stands = misfit(likenesses) <= STANDS_ALONE && cut.above_db >= ALONE_ABOVE_DB;
        let word = self.own.words.get(best.word)?;
        // One saying is no measure of how this person says it.
        (stands && word.takes.len() >= 2).then_some(word.wording.as_str())
    }

    fn alone(&self, wording: String, cut: &Cut) -> Phrase {
        let confidence = self.worth(&wording, 0.0, ALONE);
        Phrase { text: wording, start_s: cut.start_s, end_s: cut.end_s, confidence }
    }

    /// What a likeness is worth; a costly command needs a sure recogniser besides.
    fn worth(&self, wording: &str, recognised: f64, full: f64) -> f64 {
        let costly = self.own.words.iter().any(|word| word.costly && word.wording == wording);
        if costly && recognised < ACT_CONFIDENCE { ASKED_BACK } else { full }
    }
}

/// What is left of a guess that no likeness speaks for: only what the recogniser itself would have given.
fn kept(guess: Option<Phrase>) -> Option<Phrase> {
    guess.filter(|g| g.confidence >= ASK_CONFIDENCE)
}
