//! One practice of a results file as what is kept of it. Plain data; `arriving` reads it.

use jiff::civil::Date;
use model::{Measure, Position, TrialKind};
use progress::{Conditions, Discard, StepResult};

/// What a clinician wants to be told of.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum EventKind {
    /// The client said that something was wrong: "chest pain", "dizzy", "help" and so on; `what` is which.
    Safety,
    /// The client said yes or was not sure when asked for a warning sign about swallowing; `what` is which.
    Sign,
    /// A step was left out whole; `what` is the reason.
    LeftOut,
    /// Holds or level fell within a practice beyond the usual scatter; `what` is "duration" or "level".
    Tired,
    /// Room or devices; `what` is the trouble's name.
    Trouble,
}

impl EventKind {
    /// As it stands in the database.
    #[must_use]
    pub fn word(self) -> &'static str {
        match self {
            Self::Safety => "safety",
            Self::Sign => "swallow-sign",
            Self::LeftOut => "left-out",
            Self::Tired => "tired",
            Self::Trouble => "trouble",
        }
    }

    pub(super) fn of_word(word: &str) -> Option<Self> {
        [Self::Safety, Self::Sign, Self::LeftOut, Self::Tired, Self::Trouble].into_iter().find(|kind| kind.word() == word)
    }
}

/// One thing to be told of.
#[derive(Debug, Clone, PartialEq)]
pub struct Event {
    /// The entry's number in its practice, from 1.
    pub seq: u32,
    pub kind: EventKind,
    pub what: String,
    pub exercise: Option<String>,
    pub day: Date,
}

/// One attempt, whatever was measured of it.
#[derive(Debug, Clone, PartialEq)]
pub struct Trial {
    pub seq: u32,
    pub exercise: String,
    pub kind: TrialKind,
    /// The part of the practice, from 1, and the place on its sample clock.
    pub part: u32,
    pub at_s: f64,
    pub position: Option<Position>,
    pub complete: bool,
    pub duration_s: f64,
    /// What was measured; what could not be is not here.
    pub values: Vec<(Measure, f64)>,
    /// Of a question.
    pub correct: Option<bool>,
    pub conditions: Conditions,
    /// Measures that stand in no figure, with the reason.
    pub discarded: Vec<(Measure, Discard)>,
}

impl Trial {
    /// What was measured of it.
    #[must_use]
    pub fn value(&self, measure: Measure) -> Option<f64> {
        self.values.iter().find(|(of, _)| *of == measure).map(|(_, value)| *value)
    }
}

/// One practice, ready to be kept.
#[derive(Debug, Clone, PartialEq)]
pub struct ArrivingSession {
    /// Its number in the home computer's record.
    pub number: i64,
    pub started_at: String,
    pub day: Date,
    /// Seconds since 1970, for the order.
    pub began_s: i64,
    /// When and how it ended.
    pub end: Option<(String, String)>,
    pub routine_title: String,
    pub routine_text: String,
    pub package: Option<String>,
    pub software: String,
    /// Entries so far.
    pub entries: u32,
    /// A hash of each entry with its part, one after the other: what came before is known again by it.
    pub marks: Vec<u8>,
    /// When each part began.
    pub part_starts: Vec<String>,
    pub practised_s: f64,
    pub steps_done: u32,
    pub steps_prescribed: u32,
    pub steps: Vec<StepResult>,
    pub trials: Vec<Trial>,
    pub events: Vec<Event>,
}
