//! What stands on the live page, all words resolved. Each part is sent whole when it changes.

use screen::Offer;
use serde::Serialize;

/// The parts of the page, each with a value of its own.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Section {
    /// Before the captions, which it changes.
    ByPage,
    Stage,
    Figure,
    Picture,
    Bar,
    Meter,
    Offers,
    Rows,
    Said,
    Mood,
    Done,
    Notes,
}

impl Section {
    /// Every part.
    pub const ALL: [Self; 12] = [
        Self::ByPage,
        Self::Stage,
        Self::Figure,
        Self::Picture,
        Self::Bar,
        Self::Meter,
        Self::Offers,
        Self::Rows,
        Self::Said,
        Self::Mood,
        Self::Done,
        Self::Notes,
    ];

    /// As it is called in the events.
    #[must_use]
    pub fn name(self) -> &'static str {
        match self {
            Self::Stage => "stage",
            Self::Figure => "figure",
            Self::Picture => "picture",
            Self::Bar => "bar",
            Self::Meter => "meter",
            Self::Offers => "offers",
            Self::Rows => "rows",
            Self::Said => "said",
            Self::Mood => "mood",
            Self::Done => "done",
            Self::Notes => "notes",
            Self::ByPage => "by_page",
        }
    }

    pub(super) fn index(self) -> usize {
        Self::ALL.iter().position(|section| *section == self).unwrap_or(0)
    }
}

/// How far it has come.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize)]
#[serde(rename_all = "lowercase")]
pub enum Phase {
    /// A practice is about to begin.
    #[default]
    Starting,
    Practice,
    /// It is over and nothing else follows.
    Over,
    /// Between two practices.
    Waiting,
}

/// Heading and cue.
#[derive(Debug, Clone, PartialEq, Eq, Default, Serialize)]
pub struct Stage {
    pub phase: Phase,
    /// "Long ah".
    pub heading: String,
    /// "2 of 3".
    pub part: String,
    pub prompt: String,
    /// In a class: who leaves this exercise out, and who does it seated.
    pub aside: String,
}

/// The large figure: a running hold or count.
#[derive(Debug, Clone, PartialEq, Default, Serialize)]
pub struct Figure {
    /// "7"; empty where nothing is counted.
    pub text: String,
    /// What it counts, for whoever cannot see the page: "Seconds held".
    pub label: String,
    /// "of 12 seconds"; empty without a goal.
    pub of: String,
    /// How much of the goal is done, 0 to 1.
    pub share: Option<f64>,
}

/// The picture of what is done now; the page holds all of them.
#[derive(Debug, Clone, PartialEq, Eq, Default, Serialize)]
pub struct Picture {
    /// "neck-turns-left"; empty where nothing is done.
    pub name: String,
    /// What is seen, for whoever cannot see it.
    pub described: String,
}

/// What the live bar shows.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize)]
#[serde(rename_all = "lowercase")]
pub enum BarKind {
    /// There is no bar in this exercise.
    #[default]
    None,
    Level,
    Pitch,
}

/// The live bar and its marks. Places on it go from 0 (bottom) to 1 (top).
#[derive(Debug, Clone, PartialEq, Default, Serialize)]
pub struct Bar {
    pub kind: BarKind,
    /// It is the client's turn; else its place is kept free.
    pub active: bool,
    /// A hold is timed beside it: the figure's place is kept free, too.
    pub timed: bool,
    /// "Loudness".
    pub label: String,
    /// Where the goal lies; none where there is no goal.
    pub goal: Option<f64>,
    /// "your usual level".
    pub goal_label: String,
    /// Where it is measured from; none where it is measured from the bottom.
    pub base: Option<f64>,
    /// "your usual voice".
    pub base_label: String,
}

/// How it stands this moment.
#[derive(Debug, Clone, PartialEq, Default, Serialize)]
pub struct Meter {
    /// None where no voice is heard.
    pub at: Option<f64>,
    /// The furthest of this trial, where that is the point of it.
    pub top: Option<f64>,
    /// The same in words: "3 dB louder than usual".
    pub words: String,
}

/// What can be said now.
#[derive(Debug, Clone, PartialEq, Eq, Default, Serialize)]
pub struct Offers {
    /// A few, shown large.
    pub now: Vec<Offer>,
    /// Everything else that would be understood.
    pub more: Vec<Offer>,
    /// Those of *stop* and *pause* that would be heard, in their own words.
    pub always: Vec<Offer>,
    /// Names of the commands that keys stand for; not shown.
    #[serde(skip)]
    pub keys: Vec<String>,
}

/// Whose words they are.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[serde(rename_all = "lowercase")]
pub enum Who {
    Tool,
    Client,
    /// About the practice, from nobody.
    Note,
}

/// A message for whoever looks after the program.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct Note {
    pub text: String,
}

/// A row of captions, at most 42 characters.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct Row {
    /// Counts up, so that a reader knows what it has shown.
    pub id: u64,
    pub who: Who,
    pub text: String,
}

/// A whole line, for screen readers. Counts on the beat are none of them.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct Said {
    pub id: u64,
    pub who: Who,
    pub text: String,
}

/// What the tool is doing.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize)]
#[serde(rename_all = "lowercase")]
pub enum MoodName {
    #[default]
    Idle,
    Speaking,
    Listening,
    /// A hold is being measured.
    Holding,
    /// Stopped or paused.
    Still,
}

/// The same with its words, "Listening".
#[derive(Debug, Clone, PartialEq, Eq, Default, Serialize)]
pub struct Mood {
    pub name: MoodName,
    pub words: String,
}

/// What the client is to do, where the page alone leads.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize)]
#[serde(rename_all = "lowercase")]
pub enum Doing {
    #[default]
    Nothing,
    /// A sentence is given its time.
    Read,
    /// To use the voice, to hold, to breathe with the count.
    Go,
    Rest,
    /// To say or press something.
    Turn,
    /// Stopped or paused.
    Still,
}

/// What stands there where the page alone leads and nothing is heard.
#[derive(Debug, Clone, PartialEq, Eq, Default, Serialize)]
pub struct ByPage {
    /// The page alone leads.
    pub leads: bool,
    /// The sentence that others would hear, whole.
    pub sentence: String,
    pub doing: Doing,
    /// The same in a word or two, "Your turn".
    pub words: String,
}

/// What came of one exercise.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct DoneRow {
    /// "Long ah".
    pub name: String,
    /// "3 of 3", or why it was left out.
    pub done: String,
}
