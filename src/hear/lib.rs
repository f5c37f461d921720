//! Samples in, facts out: level, pitch, voicing, holds, utterances, syllables; and commands.
//!
//! The arithmetic here knows neither files, devices nor threads. `commands` alone starts a process: the recogniser's.

pub mod calibration;
pub mod clipping;
pub mod interval;
pub mod level;
pub mod pitch;
pub mod quality;
pub mod time_weighting;
pub mod voice_ear;
pub mod voice_file;
pub mod weighting;

mod auto_gain;
mod bands;
mod boundary;
mod company;
mod decimate;
mod fade;
mod harmonics;
mod history;
mod hold;
mod hum;
mod knock;
mod noise_floor;
mod period;
mod pitch_path;
mod room;
mod steadiness;
mod syllables;
mod tail;
mod utterance;

pub use model::{Hold, HoldSettings, LOUD_ROOM_DB, Utterance, VoiceFrame, VoiceQuality, VoiceTask};
pub use quality::SteadyPart;
pub use voice_ear::{VoiceEar, VoiceOutput};
pub use voice_file::{analyse_voice, analyse_voice_as};

use std::sync::Arc;

/// A hold as it was measured, with the sound that its quality is worked out of.
#[derive(Debug, Clone, PartialEq)]
pub struct Held {
    pub hold: Hold,
    /// Its steady part with its sound, for [`SteadyPart::quality`]; none where too little was steady. Never stored.
    pub steady: Option<Arc<SteadyPart>>,
}

impl std::ops::Deref for Held {
    type Target = Hold;

    /// It is the hold; the sound only comes with it.
    fn deref(&self) -> &Hold {
        &self.hold
    }
}

/// What the voice ear reports.
#[derive(Debug, Clone, PartialEq)]
pub enum VoiceEvent {
    /// A hold has surely begun; `onset_s` is dated back, `sure_s` is now.
    Onset { onset_s: f64, sure_s: f64 },
    /// The hold is over.
    Offset(Held),
    /// Speech has surely begun, while the task is speech; `onset_s` is dated back.
    SpeechBegan { onset_s: f64 },
    /// A stretch of speech is over.
    Spoken(Utterance),
    /// Two knocks, with quiet around them; `at_s` is when they are sure.
    Knocked { at_s: f64 },
    /// The room has become too loud to measure in (`true`), or is quiet enough again; `room_db` is its level, dB re full
    /// scale, A-weighted.
    RoomLoud { at_s: f64, loud: bool, room_db: f64 },
}

#[cfg(test)]
mod tests;

#[cfg(test)]
#[global_allocator]
static ALLOCATOR: foreign::counting::Counting = foreign::counting::Counting;
