//! The client's own voice beside the recogniser: pictures of how this person says each command, and what is like them.
//!
//! `mel` makes log mel energies, `take` cuts one saying out and judges it, `pattern` compares two, `matcher` says what an utterance is like on
//! the person's own scale, `weigh` puts that together with what the recogniser heard, `finder` finds the sayings of an enrolment
//! in the microphone's sound. All of it is arithmetic on samples: the same sound gives the same result.

mod finder;
mod matcher;
mod mel;
mod own_voice;
mod pattern;
mod take;
mod weigh;

pub use finder::{Found, TakeFinder};
pub use matcher::{Doubt, Likeness, Matcher, misfit};
pub use own_voice::{EnrolledVoice, OwnWord};
pub use take::{Cut, Take, TakeFault};
pub(crate) use weigh::{GUESS_CONFIDENCE, Weigher};

/// The filters that make pictures of sound, with their tables.
pub struct Mel(mel::MelBank);

impl Default for Mel {
    fn default() -> Self {
        Self(mel::MelBank::new())
    }
}
