//! What both paths of the command ear are tuned by, and what comes of them.

use super::RATE_HZ;
use super::decide::{Phrase, Rules};

/// How a path decides. Values chosen on odd-numbered recordings, see `benches/command_ear.rs`.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Tuning {
    /// Quiet after which a sure phrase is taken, s.
    pub trial_quiet_s: f64,
    /// Sureness it needs then, 0 to 1; at the end of the utterance [`ASK_CONFIDENCE`] is enough.
    pub trial_sureness: f64,
    /// Quiet that ends the utterance, s; longer than a pause between the words of a phrase.
    pub end_quiet_s: f64,
    /// Where the level does not fall (noise): a partial phrase that stands this long, with no word after it, is tried, s.
    pub stands_s: f64,
    /// Talk before the utterance and other sound in it speak against a phrase.
    pub minds_context: bool,
    /// The second ear is asked.
    pub second_ear: bool,
    /// There is no recogniser: it decides alone, over our own voice, too, and of phrases of several words.
    pub alone: bool,
    /// What a phrase must fulfil.
    pub rules: Rules,
}

impl Tuning {
    /// The grammar of the state.
    pub const MAIN: Self = Self {
        trial_quiet_s: 0.24,
        trial_sureness: 0.8,
        end_quiet_s: 0.66,
        stands_s: 0.36,
        minds_context: true,
        second_ear: true,
        alone: false,
        rules: Rules { min_confidence: CONSIDERED, min_loud_s: 0.12, max_word_s: 1.5, alone_s: 0.2 },
    };
    /// Stop and its like: sooner, and closer to other sound, since it must get through: over our own voice and out of a vowel.
    pub const FAST: Self = Self {
        trial_quiet_s: 0.12,
        trial_sureness: 0.8,
        end_quiet_s: 0.48,
        stands_s: 0.24,
        minds_context: false,
        second_ear: false,
        alone: false,
        rules: Rules { min_confidence: CONSIDERED, min_loud_s: 0.12, max_word_s: 1.5, alone_s: 0.1 },
    };

    /// The same without a recogniser. Its quiets stay: "stop" is tried as soon.
    pub fn of_second_ear_alone(self) -> Self {
        Self { second_ear: true, alone: true, ..self }
    }
}

/// A word of less confidence than this in a decoding is not considered, 0 to 1.
pub(crate) const CONSIDERED: f64 = 0.3;

/// A phrase with its times on the caller's clock.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct Decided {
    pub phrase: Phrase,
    pub decided_s: f64,
}

/// Length of so many samples, s.
pub(crate) fn seconds(samples: usize) -> f64 {
    samples as f64 / f64::from(RATE_HZ)
}
