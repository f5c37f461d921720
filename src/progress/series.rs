//! One exercise and measure over time, parted where the values may not be joined.

use super::{Baseline, Change, Conditions, Discard, Measure, Practised, Slope, WeekMedian, Window};
use jiff::civil::Date;
use serde::Serialize;

/// Why two stretches may not be joined.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[serde(rename_all = "kebab-case", tag = "reason")]
pub enum BreakReason {
    /// So many days without a trial.
    Gap { days: u32 },
    /// Another microphone.
    Microphone { from: String, to: String },
    /// Of a relative level: the microphone's gain was changed.
    Gain { from: String, to: String },
    /// Of a level: what gives it its scale changed.
    Calibration { from: String, to: String },
    /// Of a level: its weighting changed.
    Weighting { from: String, to: String },
    /// Of a level: the distance for which it holds changed; "unknown" where nobody said.
    Distance { from: String, to: String },
}

impl BreakReason {
    /// A few plain words.
    #[must_use]
    pub fn words(&self) -> String {
        match self {
            Self::Gap { days } => format!("{days} days without a trial"),
            Self::Microphone { from, to } => format!("another microphone: \"{to}\", before \"{from}\""),
            Self::Gain { from, to } => format!("the microphone's gain: {to}, before {from}"),
            Self::Calibration { from, to } => format!("what the level stands on: {to}, before {from}"),
            Self::Weighting { from, to } => format!("weighting: {to}, before {from}"),
            Self::Distance { from, to } => format!("distance: {to}, before {from}"),
        }
    }
}

/// Where a series is broken.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Break {
    /// The last day before it and the first behind it. The same day where the microphone was changed between two practices.
    pub before: Date,
    pub after: Date,
    pub reasons: Vec<BreakReason>,
}

/// One day of a segment.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct DayValue {
    pub day: Date,
    /// All values that count, in the order in which they were made; never empty.
    pub trials: Vec<f64>,
    pub median: f64,
}

/// A stretch within which values may be compared.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Segment {
    /// What parts it from the one before; none for the first.
    pub broken_by: Option<Break>,
    /// Every day of it, also those before the window.
    pub days: Vec<DayValue>,
    /// From its first days, which may lie before the window.
    pub baseline: Option<Baseline>,
    /// Weeks that reach into the window.
    pub weeks: Vec<WeekMedian>,
    /// Over its days in the window; none under five days or within two weeks.
    pub slope: Option<Slope>,
    /// From all its days.
    pub change: Option<Change>,
    /// Those of its last trial; what changed within it without breaking it (distance of a hold time) is told by the trials.
    pub conditions: Conditions,
}

/// One exercise and measure over time.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Series {
    pub exercise: String,
    pub measure: Measure,
    /// Oldest first; those that end before the window are not here.
    pub segments: Vec<Segment>,
    /// Values in the window that stand in no figure, by reason.
    pub discarded: Vec<(Discard, u32)>,
    /// Values in the window that count.
    pub counted: u32,
}

/// Every series that has a value in the window, by exercise in the order in which they were first practised, then measure.
#[must_use]
pub fn series(practised: &Practised, window: Window) -> Vec<Series> {
    let _ = (practised, window);
    Vec::new()
}
