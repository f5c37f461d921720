//! What changed in what was prescribed.

use super::{Practised, Window};
use jiff::civil::Date;
use serde::Serialize;

/// One thing that changed.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[serde(rename_all = "kebab-case", tag = "what")]
pub enum ProgrammeItem {
    /// A routine that was not practised before.
    RoutineBegun { exercises: Vec<String> },
    /// It is practised no more: another took its place.
    RoutineReplaced { by: String },
    ExerciseAdded { exercise: String, dose: String },
    ExerciseRemoved { exercise: String, dose: String },
    /// One field of an exercise's dose: "repetitions", "target_s"; values as they stand in a routine file.
    DoseChanged { exercise: String, field: String, from: String, to: String },
    /// A dose that grows reached its next stage, or was set back.
    StageChanged { exercise: String, from: u32, to: u32, dose: String },
    OrderChanged,
    /// The days and times: "mon wed 18:30".
    PlanChanged { from: String, to: String },
    /// A setting of the whole routine, "feedback_every".
    SettingChanged { field: String, from: String, to: String },
}

/// What changed in one routine from one practice to the next.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct ProgrammeChange {
    /// The first day on which it was practised so.
    pub day: Date,
    pub session: i64,
    pub routine_title: String,
    pub items: Vec<ProgrammeItem>,
}

/// The changes in the window, oldest first.
#[must_use]
pub fn changes(practised: &Practised, window: Window) -> Vec<ProgrammeChange> {
    let _ = (practised, window);
    Vec::new()
}
