//! What the attendant is told and what it asks for.

use super::clock::Moment;
use super::said::Said;
use super::told::{Practised, Today};
use session::{Line, LineId};

/// Whether it can hear.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Hearing {
    Well,
    /// The microphone gives nothing but digital silence.
    Silent,
    /// There is no microphone.
    Gone,
    /// The recogniser keeps failing.
    NoWords,
}

/// What happened. Times are seconds on the sample clock and never go back.
#[derive(Debug, Clone, PartialEq)]
pub enum Event {
    /// The clock moved; about every tenth of a second.
    Tick {
        at_s: f64,
        now: Moment,
    },
    /// Somebody speaks, or something sounds like it.
    Talk {
        at_s: f64,
    },
    Heard {
        at_s: f64,
        said: Said,
        confidence: f64,
    },
    /// A line was said to its end, was hushed, or could not be said.
    LineEnded {
        at_s: f64,
        line: LineId,
    },
    /// What the record knows of today.
    Record {
        at_s: f64,
        today: Today,
    },
    /// The practice that was asked for is over.
    PracticeEnded {
        at_s: f64,
        outcome: Practised,
    },
    /// It could not begin.
    PracticeFailed {
        at_s: f64,
    },
    Hearing {
        at_s: f64,
        hearing: Hearing,
    },
}

/// What stands on the screen while it waits.
#[derive(Debug, Clone, PartialEq)]
pub struct View {
    /// What comes next today; none where nothing is planned any more.
    pub heading: Option<Line>,
    pub prompt: Line,
    pub can_say: Vec<Said>,
}

/// What is to be kept of a notice.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Keeping {
    /// It was said for the n-th time.
    Said(u32),
    /// Somebody answered it.
    Answered,
    /// Its cause is over.
    Over,
}

/// What it asks the outside to do.
#[derive(Debug, Clone, PartialEq)]
pub enum Effect {
    /// Speak a line; lines queue behind each other.
    Say {
        id: LineId,
        line: Line,
    },
    /// Silence now; each dropped line still gets its `LineEnded`.
    Hush,
    /// What may be said from now on.
    Listen(Vec<Said>),
    Show(View),
    /// Lead this person's routine; answered with `PracticeEnded` or `PracticeFailed`.
    Start {
        person: usize,
        routine: usize,
    },
    /// Keep that a notice was said or answered; `person` is whom it is about.
    Keep {
        person: Option<usize>,
        line: Line,
        keeping: Keeping,
    },
}
