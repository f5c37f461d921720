//! What makes hearing or measuring doubtful: kept at once, told once, when nothing is being timed.

use super::engine::{Engine, State};
use super::{Fact, Line};
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// A trouble of the room or of the devices. Each has a line `trouble-NAME`.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum Trouble {
    /// Our own voice drowns the client's; the tool takes turns.
    LoudspeakerTooLoud,
    /// Holds cannot be measured over the room's noise.
    RoomTooLoud,
    /// The microphone's loudest parts are cut off.
    MicrophoneClips,
    /// The microphone changes its own volume: levels are not comparable.
    MicrophoneGain,
}

impl Trouble {
    /// The message that tells of it.
    #[must_use]
    pub fn key(self) -> &'static str {
        match self {
            Trouble::LoudspeakerTooLoud => "trouble-loudspeaker-too-loud",
            Trouble::RoomTooLoud => "trouble-room-too-loud",
            Trouble::MicrophoneClips => "trouble-microphone-clips",
            Trouble::MicrophoneGain => "trouble-microphone-gain",
        }
    }
}

impl Engine {
    /// Keeps it, the first time.
    pub(super) fn troubled(&mut self, trouble: Trouble) {
        if self.troubles_known.insert(trouble) {
            self.record(Fact::Troubled { trouble });
            self.troubles_to_tell.push(trouble);
        }
    }

    /// Tells of what is waiting to be told, where nobody is in the middle of something.
    pub(super) fn tell_troubles(&mut self) {
        let calm = match &self.state {
            State::Asking { .. } | State::Resting { .. } | State::Repeated(_) => true,
            State::Halted { told, .. } => *told,
            _ => false,
        };
        if !calm || self.is_speaking() {
            return;
        }
        if let Some(trouble) = self.troubles_to_tell.pop() {
            // "Again" repeats what was announced before, not this.
            let announced = self.last_said.take();
            self.say_line(Line { key: trouble.key().into(), args: Vec::new() }, None);
            self.last_said = announced;
        }
    }
}
