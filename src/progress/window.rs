//! The days that are looked at.

use super::practised::Practised;
use super::weeks::monday_of;
use jiff::{Span, civil::Date};
use serde::Serialize;

/// The days that are looked at, both included.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
pub struct Window {
    pub from: Date,
    pub to: Date,
}

impl Window {
    /// `weeks` weeks up to and with `today`, from a Monday on; 0 counts as 1.
    #[must_use]
    pub fn weeks(today: Date, weeks: u32) -> Self {
        let monday = monday_of(today);
        // Before the calendar begins there was no practice.
        let from = Span::new().try_weeks(weeks.max(1) - 1).ok().and_then(|span| monday.checked_sub(span).ok()).unwrap_or(Date::MIN);
        Self { from, to: today }
    }

    /// From the first practice on.
    #[must_use]
    pub fn all(practised: &Practised, today: Date) -> Self {
        let first = practised.practices.iter().filter(|practice| !practice.misdated).map(|practice| practice.day).min().unwrap_or(today);
        Self { from: first.min(today), to: today }
    }

    /// The day lies in it.
    #[must_use]
    pub fn has(&self, day: Date) -> bool {
        (self.from..=self.to).contains(&day)
    }
}
