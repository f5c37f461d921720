//! What the engine asks the outside to do: say, listen, keep, show.

use crate::command::Command;
use crate::entry::Entry;
use crate::event::LineId;
use crate::voice::VoiceTask;

/// What the engine asks the outside to do.
#[allow(clippy::large_enum_variant, reason = "a handful exist at a time, each for a block; a box would be memory taken for every entry")]
#[derive(Debug, Clone, PartialEq)]
pub enum Effect {
    /// Speak a line. Lines without a beat queue behind each other; one with a beat begins exactly then.
    Say { id: LineId, line: Line, on_beat_s: Option<f64> },
    /// Silence now; drop everything queued or scheduled. Each dropped line still gets its `LineEnded`.
    Hush,
    /// What to listen for from now on.
    Listen(Listening),
    /// The client chose to go on with the interrupted session (`true`) or to begin anew. Comes before any `Record`.
    Resume(bool),
    /// Change the loudness of the voice by so many dB.
    Volume { change_db: f64 },
    /// Speak slower (above 1) or faster (below 1) than now by this factor.
    SpeechRate { factor: f64 },
    /// In a class: whether somebody is there; none where nobody says so, or no longer.
    Attended { participant: String, present: Option<bool> },
    /// Keep this fact.
    Record(Entry),
    /// Show this.
    Show(View),
    /// The session is over; everything has been said and kept.
    Finish,
}

/// A message of the catalogue with its arguments.
#[derive(Debug, Clone, PartialEq)]
pub struct Line {
    pub key: String,
    pub args: Vec<(&'static str, Arg)>,
}

/// A value put into a message.
#[derive(Debug, Clone, PartialEq)]
pub enum Arg {
    Text(String),
    Number(f64),
    /// Another message, resolved first.
    Message(String),
}

/// What both ears are to do now.
#[derive(Debug, Clone, PartialEq)]
pub struct Listening {
    /// Commands of this state, about ten; `Stop` is always heard besides.
    pub commands: Vec<Command>,
    /// Answers to a question, accepted and near ones; wordings of one answer parted by `|`.
    pub answers: Vec<String>,
    /// Answers by the keys of messages that hold their wordings, parted by `|`, as commands have them.
    pub worded: Vec<String>,
    /// Several answers may follow each other in one breath.
    pub list: bool,
    /// Many people talk here: only wordings of two words and more count, `stop` and `pause` apart.
    pub multiword_only: bool,
    /// The voice ear's task.
    pub voice: VoiceTask,
}

/// What the screen shows; plain text, large. Lines are resolved by the message catalogue.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct View {
    /// "Long ah, 1 of 3".
    pub heading: Option<Line>,
    /// What to do now, or the clinician's cue words.
    pub prompt: Option<Line>,
    /// The large figure: running hold time or count.
    pub figure: String,
    /// Commands that can be said now, few.
    pub can_say: Vec<Command>,
    /// In a class: who leaves this exercise out, and who does it seated.
    pub aside: Vec<Line>,
}
