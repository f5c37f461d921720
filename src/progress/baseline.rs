//! Where a person began.

use super::day_value::DayValue;
use super::median::{Interval, median_interval};
use super::scatter::within;
use jiff::civil::Date;
use serde::Serialize;
use statistics::median;
use statistics::sd;

/// The first so many days with trials make the baseline.
pub const BASELINE_DAYS: usize = 5;
/// Fewer days make none: one day is told to be too little (Speyer et al. 2010: reliability of maximum phonation time 0.84
/// from one day, 0.91 from two, 0.94 from three).
pub const BASELINE_DAYS_LEAST: usize = 3;
/// Days further than this behind the first belong to it no more; own choice, no source.
pub const BASELINE_WITHIN_DAYS: i64 = 28;

/// Where a person began: the first days of a segment.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Baseline {
    pub from: Date,
    pub to: Date,
    pub days: u32,
    pub trials: u32,
    /// Median of the days' medians.
    pub median: f64,
    /// Of the median; five days cover 94 %, three 75 %.
    pub interval: Option<Interval>,
    /// Lowest and highest trial.
    pub low: f64,
    pub high: f64,
    /// Standard deviation of the days' medians (n − 1).
    pub day_sd: f64,
    /// Pooled standard deviation of the trials within a day; none where no day has two.
    pub within_sd: Option<f64>,
}

/// The baseline of a segment's days, in order; none under three days.
#[must_use]
pub fn baseline(days: &[DayValue]) -> Option<Baseline> {
    let first = days.first()?;
    let near = |day: &&DayValue| first.day.duration_until(day.day).as_hours() / 24 < BASELINE_WITHIN_DAYS;
    let days: Vec<&DayValue> = days.iter().take(BASELINE_DAYS).take_while(near).collect();
    if days.len() < BASELINE_DAYS_LEAST {
        return None;
    }
    let medians: Vec<f64> = days.iter().map(|day| day.median).collect();
    let trials: Vec<f64> = days.iter().flat_map(|day| day.trials.iter().copied()).collect();
    let groups: Vec<&[f64]> = days.iter().map(|day| day.trials.as_slice()).collect();
    Some(Baseline {
        from: first.day,
        to: days.last()?.day,
        days: u32::try_from(days.len()).unwrap_or(u32::MAX),
        trials: u32::try_from(trials.len()).unwrap_or(u32::MAX),
        median: median(&medians)?,
        interval: median_interval(&medians, 0.95),
        low: trials.iter().copied().reduce(f64::min)?,
        high: trials.iter().copied().reduce(f64::max)?,
        day_sd: sd(&medians)?,
        within_sd: within(&groups).map(|scatter| scatter.sem),
    })
}
