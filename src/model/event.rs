//! What the engine is told.

use crate::command::Command;
use crate::leading::Trouble;
use crate::voice::{Hold, Utterance};
use serde::{Deserialize, Serialize};

/// What happened. Times are seconds on the sample clock and never go back.
#[derive(Debug, Clone, PartialEq)]
pub enum Event {
    /// The clock moved; every 10 ms.
    Tick { at_s: f64 },
    /// A command was heard.
    Command { at_s: f64, command: Command, confidence: f64, text: String },
    /// One of the accepted answers to a question was heard.
    Answer { at_s: f64, text: String, confidence: f64 },
    /// A hold has surely begun.
    Onset { at_s: f64, onset_s: f64 },
    /// A hold is over.
    Offset { at_s: f64, hold: Hold },
    /// Somebody begins to speak or to sing over our own voice.
    SpokenOver { at_s: f64 },
    /// Something begins to stand out from the room while we are silent: a breath in, or the first of a voice.
    Stirred { at_s: f64 },
    /// Speech has begun, while the task is speech.
    SpeechBegan { at_s: f64, onset_s: f64 },
    /// A stretch of speech is over.
    Spoken { at_s: f64, utterance: Utterance },
    /// Two knocks, as on a table, with quiet around them; `at_s` is when they are sure.
    Knocked { at_s: f64 },
    /// The room has become too loud to measure in, or quiet enough again; `room_db` is its level, dB re full scale.
    RoomLoud { at_s: f64, loud: bool, room_db: f64 },
    /// The first frame of a line left for the loudspeaker.
    LineBegan { at_s: f64, line: LineId },
    /// The last frame of a line left, or it was hushed or could not be spoken.
    LineEnded { at_s: f64, line: LineId },
    /// Something makes hearing or measuring doubtful.
    Trouble { at_s: f64, trouble: Trouble },
    /// The microphone, which gave nothing at all, gives sound.
    SoundIsBack { at_s: f64 },
    /// The loudspeaker plays after it was gone.
    VoiceIsBack { at_s: f64 },
    /// Ctrl-C, a closing window: end now, with everything kept.
    Interrupt { at_s: f64 },
}

impl Event {
    /// When it happened, s on the sample clock.
    pub fn at_s(&self) -> f64 {
        match self {
            Event::Tick { at_s }
            | Event::Command { at_s, .. }
            | Event::Answer { at_s, .. }
            | Event::Onset { at_s, .. }
            | Event::Offset { at_s, .. }
            | Event::SpokenOver { at_s }
            | Event::Stirred { at_s }
            | Event::SpeechBegan { at_s, .. }
            | Event::Spoken { at_s, .. }
            | Event::Knocked { at_s }
            | Event::RoomLoud { at_s, .. }
            | Event::LineBegan { at_s, .. }
            | Event::LineEnded { at_s, .. }
            | Event::Trouble { at_s, .. }
            | Event::SoundIsBack { at_s }
            | Event::VoiceIsBack { at_s }
            | Event::Interrupt { at_s } => *at_s,
        }
    }
}

/// Numbers the lines of one session.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
pub struct LineId(pub u64);
