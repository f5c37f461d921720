//! Weekly medians.

use super::day_value::DayValue;
use super::median::{Interval, median_interval};
use jiff::civil::Date;
use serde::Serialize;
use statistics::median;

/// One week of one segment. Weeks begin on Monday (ISO 8601).
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct WeekMedian {
    pub monday: Date,
    /// Days with trials, and the trials on them.
    pub days: u32,
    pub trials: u32,
    /// Median of the days' medians: a day on which much was done weighs no more than another.
    pub median: f64,
    /// Of the median, 95 % wanted; see what it covers. None under three days.
    pub interval: Option<Interval>,
    /// Lowest and highest trial.
    pub low: f64,
    pub high: f64,
}

/// The Monday of a day's week.
pub(super) fn monday_of(day: Date) -> Date {
    day.checked_sub(jiff::Span::new().days(i64::from(day.weekday().to_monday_zero_offset()))).unwrap_or(day)
}

/// The weeks of these days, which must be in order.
#[must_use]
pub fn week_medians(days: &[DayValue]) -> Vec<WeekMedian> {
    days.chunk_by(|one, other| monday_of(one.day) == monday_of(other.day)).filter_map(week).collect()
}

fn week(days: &[DayValue]) -> Option<WeekMedian> {
    let medians: Vec<f64> = days.iter().map(|day| day.median).collect();
    let trials = || days.iter().flat_map(|day| day.trials.iter().copied());
    Some(WeekMedian {
        monday: monday_of(days.first()?.day),
        days: u32::try_from(days.len()).unwrap_or(u32::MAX),
        trials: u32::try_from(trials().count()).unwrap_or(u32::MAX),
        median: median(&medians)?,
        interval: median_interval(&medians, 0.95),
        low: trials().reduce(f64::min)?,
        high: trials().reduce(f64::max)?,
    })
}
