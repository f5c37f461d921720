//! What the command ear considered, and why it counted or not.

use super::cues::Candidate;
use super::verdict::Verdict;
use serde::{Deserialize, Serialize};

/// A phrase that was considered, what each ear found of it, and what came of it.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Considered {
    /// By the path for "stop" and its like.
    pub fast: bool,
    /// The words.
    pub text: String,
    /// First and last instant, and how far the sound had been heard then, s on the sample clock.
    pub start_s: f64,
    pub end_s: f64,
    pub decided_s: f64,
    /// The recogniser's confidence, of the sound as it is and of the sound played faster, 0 to 1; 0 where it did not find the words.
    pub first: f64,
    pub second: f64,
    /// Its confidence in the strongest other known word, 0 to 1.
    pub rival: f64,
    /// How likely the second ear finds the phrase, 0 to 1; none where it was not asked, or does not know the phrase.
    pub second_ear: Option<f64>,
    /// Time that other sound in the utterance stands out from the room, s.
    pub elsewhere_s: f64,
    /// Share of loud sound in the last seconds before, 0 to 1.
    pub talk: f64,
    /// Level over the room, dB.
    pub above_db: f64,
    /// All of it weighed, 0 to 1.
    pub sureness: f64,
    /// What came of it.
    pub verdict: Verdict,
}

impl Considered {
    pub(crate) fn new(fast: bool, candidate: Candidate) -> Self {
        let Candidate { text, start_s, end_s, decided_s, cues, verdict, .. } = candidate;
        Self {
            fast,
            text,
            start_s,
            end_s,
            decided_s,
            first: cues.first,
            second: cues.second,
            rival: cues.rival,
            second_ear: cues.second_ear.map(|opinion| opinion.this),
            elsewhere_s: cues.elsewhere_s,
            talk: cues.talk,
            above_db: cues.above_db,
            sureness: cues.sureness(),
            verdict: verdict.unwrap_or(Verdict::EnrolledVoice),
        }
    }
}
