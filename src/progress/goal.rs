//! Goals in the client's own words, and what people have said of them since.

use jiff::civil::Date;
use model::Measure;
use serde::Serialize;

/// Which side of the target is the good one.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum Direction {
    AtLeast,
    AtMost,
}

impl Direction {
    /// As it stands in the record, "at-least".
    #[must_use]
    pub fn name(self) -> &'static str {
        match self {
            Self::AtLeast => "at-least",
            Self::AtMost => "at-most",
        }
    }

    /// The direction of that name.
    #[must_use]
    pub fn of_name(name: &str) -> Option<Self> {
        [Self::AtLeast, Self::AtMost].into_iter().find(|direction| direction.name() == name)
    }

    pub(super) fn reached(self, value: f64, target: f64) -> bool {
        match self {
            Self::AtLeast => value >= target,
            Self::AtMost => value <= target,
        }
    }

    pub(super) fn is_towards(self, change: f64) -> bool {
        match self {
            Self::AtLeast => change > 0.0,
            Self::AtMost => change < 0.0,
        }
    }
}

/// What a goal is measured by.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Aim {
    pub exercise: String,
    pub measure: Measure,
    pub direction: Direction,
    /// In the unit of the measure; a level is in dB SPL.
    pub target: f64,
}

/// What a person said of a goal.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum MarkKind {
    Met,
    NotMet,
    /// It is no goal any more.
    Removed,
}

impl MarkKind {
    /// As it stands in the record, "not-met".
    #[must_use]
    pub fn name(self) -> &'static str {
        match self {
            Self::Met => "met",
            Self::NotMet => "not-met",
            Self::Removed => "removed",
        }
    }

    /// The mark of that name.
    #[must_use]
    pub fn of_name(name: &str) -> Option<Self> {
        [Self::Met, Self::NotMet, Self::Removed].into_iter().find(|kind| kind.name() == name)
    }
}

/// A mark, and who made it when.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct Mark {
    pub kind: MarkKind,
    pub on: Date,
    pub by: String,
}

/// What a client wants to be able to do, and by when.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Goal {
    /// Its number in this record.
    pub id: i64,
    /// The client's own words.
    pub words: String,
    /// None for an activity, which people judge.
    pub aim: Option<Aim>,
    pub set_on: Date,
    pub due: Date,
    pub set_by: String,
    /// In the order in which they were made.
    pub marks: Vec<Mark>,
}

impl Goal {
    /// The mark that counts on a day.
    #[must_use]
    pub fn mark_on(&self, day: Date) -> Option<&Mark> {
        self.marks.iter().rev().find(|mark| mark.on <= day)
    }

    /// It was set and not yet removed.
    #[must_use]
    pub fn stands_on(&self, day: Date) -> bool {
        self.set_on <= day && self.mark_on(day).is_none_or(|mark| mark.kind != MarkKind::Removed)
    }
}
