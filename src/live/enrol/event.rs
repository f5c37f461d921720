//! What the dialogue of an enrolment is told and what it asks for.

use command_ear::templates::{Found, Take};
use session::{Command, Line, LineId, View};

/// What happened. Times are seconds on the sample clock.
#[derive(Debug, Clone, PartialEq)]
pub enum EnrolEvent {
    /// The clock moved; every 10 ms. `speaking`: somebody is saying something now.
    Tick { at_s: f64, speaking: bool },
    /// The recogniser heard a command.
    Command { at_s: f64, command: Command, confidence: f64 },
    /// Something was said while a take was awaited.
    Found { at_s: f64, found: Found },
    /// A line has ended, was hushed or could not be spoken.
    LineEnded { at_s: f64, line: LineId },
    /// Ctrl-C, or the recording is over: end now, with what is done kept.
    Interrupt { at_s: f64 },
}

/// What is to be done.
#[derive(Debug, Clone, PartialEq)]
pub enum EnrolEffect {
    Say {
        id: LineId,
        line: Line,
    },
    /// Silence; lines dropped still end.
    Hush,
    /// The tone after which a word is to be said.
    Tone,
    /// What the recogniser listens for besides "stop" and "pause"; and whether what is said counts as a take.
    Listen {
        commands: Vec<Command>,
        takes: bool,
    },
    Show(View),
    /// The client agreed.
    Agreed,
    /// Keep these takes of a word in place of what was kept of it, and let them weigh in.
    Keep {
        command: Command,
        takes: Vec<Take>,
    },
    Finish,
}

/// How a word stands at the end.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Learnt {
    pub command: Command,
    pub wording: String,
    pub takes: usize,
    pub doubtful: bool,
}
