//! Kinds that the engine tells apart while it leads.

use crate::unit::Unit;
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// What is waited for.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum Response {
    /// "ready", "yes" or "no" to a question of ours.
    Answer,
    /// "ready", once in position.
    Position,
    /// "done" behind a self-paced repetition.
    Done,
    /// The voice after a cue: a hold, a phrase, syllables.
    Voice,
    /// The answer to a word question.
    Question,
}

/// What has fallen.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum Fall {
    /// The length of the holds, s.
    Duration,
    /// Their level, dB.
    Level,
}

impl Fall {
    /// As it stands in the journal.
    #[must_use]
    pub fn name(self) -> &'static str {
        match self {
            Self::Duration => "duration",
            Self::Level => "level",
        }
    }

    /// The unit of what has fallen.
    #[must_use]
    pub fn unit(self) -> Unit {
        match self {
            Self::Duration => Unit::Second,
            Self::Level => Unit::Decibel,
        }
    }
}

/// A trouble of the room or of the devices. Each has a line `trouble-NAME`.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum Trouble {
    /// Our own voice drowns the client's; the tool takes turns.
    LoudspeakerTooLoud,
    /// Holds cannot be measured over the room's noise.
    RoomTooLoud,
    /// Others talk, or a television does.
    RoomTalks,
    /// The microphone's loudest parts are cut off.
    MicrophoneClips,
    /// The microphone changes its own volume: levels are not comparable.
    MicrophoneGain,
    /// The microphone gives nothing at all, not even the room.
    MicrophoneSilent,
    /// The loudspeaker is gone: nobody hears what we say.
    LoudspeakerGone,
}

impl Trouble {
    /// The message that tells of it.
    #[must_use]
    pub fn key(self) -> &'static str {
        match self {
            Trouble::LoudspeakerTooLoud => "trouble-loudspeaker-too-loud",
            Trouble::RoomTooLoud => "trouble-room-too-loud",
            Trouble::RoomTalks => "trouble-room-talks",
            Trouble::MicrophoneClips => "trouble-microphone-clips",
            Trouble::MicrophoneGain => "trouble-microphone-gain",
            Trouble::MicrophoneSilent => "trouble-microphone-silent",
            Trouble::LoudspeakerGone => "trouble-loudspeaker-gone",
        }
    }

    /// As it stands in the journal.
    #[must_use]
    pub fn name(self) -> &'static str {
        self.key().trim_start_matches("trouble-")
    }
}
