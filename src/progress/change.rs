//! The smallest change that exceeds a person's own scatter, and whether the latest days have changed by more.

use super::baseline::Baseline;
use super::day_value::DayValue;
use super::scatter::{Scatter, between_share, within};
use serde::Serialize;
use statistics::median;

/// Two-sided 90 % and 95 % of the normal distribution, as Weir 2005 and the clinical literature use them.
const Z_90: f64 = 1.645;
const Z_95: f64 = 1.96;
/// Days with repeated trials that a scatter within days rests on at least; own choice, as for the baseline.
const DAYS_LEAST: usize = 3;
/// The latest days that are compared with the baseline, at least and at most, and how far back they may lie.
const LATEST: std::ops::RangeInclusive<usize> = 3..=5;
pub(super) const LATEST_WITHIN_DAYS: i64 = 28;
/// Trials that scatter less do not scatter at all: they were rounded to the same value.
const NOTHING: f64 = 1e-9;

/// Which scatter the smallest change rests on.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum ScatterBasis {
    /// From trial to trial within a day.
    WithinDay,
    /// From day to day, which is larger.
    BetweenDays,
}

/// The smallest change that exceeds this person's own scatter.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct Change {
    /// From trial to trial within days; none where fewer than three days have two trials.
    pub within: Option<Scatter>,
    /// Minimal detectable change between two single trials, from the repeated trials alone: 1.645·√2·SEM and 1.96·√2·SEM
    /// (Weir 2005).
    pub mdc90_trials: Option<f64>,
    pub mdc95_trials: Option<f64>,
    /// Standard deviation of the days' medians about their own trend; none under five days.
    pub day_sd: Option<f64>,
    /// The one that counts here: the larger of the two scatters.
    pub basis: ScatterBasis,
    pub sem: f64,
    pub mdc90: f64,
    pub mdc95: f64,
    /// Share of the scatter that lies between days, ICC(1,1) with days for subjects, 0 to 1; none where it cannot be told. It
    /// is no reliability between people.
    pub between_day_share: Option<f64>,
    /// Median of the latest days' medians, three to five days of the last four weeks that are not the baseline's.
    pub latest: Option<f64>,
    pub latest_days: u32,
    /// `latest` less the baseline.
    pub from_baseline: Option<f64>,
    /// `from_baseline` is larger than `mdc95`, either way.
    pub exceeds_95: Option<bool>,
}

/// The smallest change of a segment's days; none where no scatter is known, or where nothing scatters at all. `day_sd`: of the
/// days about their trend.
#[must_use]
pub fn change(days: &[DayValue], day_sd: Option<f64>, baseline: Option<&Baseline>) -> Option<Change> {
    let groups: Vec<&[f64]> = days.iter().map(|day| day.trials.as_slice()).collect();
    let within = within(&groups).filter(|scatter| scatter.days as usize >= DAYS_LEAST);
    let day_sd = day_sd.filter(|sd| sd.is_finite());
    let (sem, basis) = match (within, day_sd) {
        (Some(within), Some(day_sd)) if day_sd > within.sem => (day_sd, ScatterBasis::BetweenDays),
        (Some(within), _) => (within.sem, ScatterBasis::WithinDay),
        (None, Some(day_sd)) => (day_sd, ScatterBasis::BetweenDays),
        (None, None) => return None,
    };
    if sem <= NOTHING {
        return None;
    }
    let latest = latest(days, baseline);
    let from_baseline = latest.zip(baseline).map(|((latest, _), baseline)| latest - baseline.median);
    let mdc95 = minimal_change(sem, Z_95);
    Some(Change {
        within,
        mdc90_trials: within.map(|scatter| minimal_change(scatter.sem, Z_90)),
        mdc95_trials: within.map(|scatter| minimal_change(scatter.sem, Z_95)),
        day_sd,
        basis,
        sem,
        mdc90: minimal_change(sem, Z_90),
        mdc95,
        between_day_share: within.and_then(|_| between_share(&groups)),
        latest: latest.map(|(median, _)| median),
        latest_days: latest.map_or(0, |(_, days)| days),
        from_baseline,
        exceeds_95: from_baseline.map(|change| change.abs() > mdc95),
    })
}

/// z·√2·SEM: two measurements scatter, so their difference does by √2 more (Weir 2005).
fn minimal_change(sem: f64, z: f64) -> f64 {
    z * std::f64::consts::SQRT_2 * sem
}

/// The latest days behind the baseline's, their median and number.
fn latest(days: &[DayValue], baseline: Option<&Baseline>) -> Option<(f64, u32)> {
    let (last, baseline) = (days.last()?, baseline?);
    let behind = |day: &&DayValue| day.day > baseline.to && day.day.duration_until(last.day).as_hours() / 24 < LATEST_WITHIN_DAYS;
    let medians: Vec<f64> = days.iter().rev().take(*LATEST.end()).filter(behind).map(|day| day.median).collect();
    let count = u32::try_from(medians.len()).ok()?;
    LATEST.contains(&medians.len()).then(|| median(&medians)).flatten().map(|median| (median, count))
}

#[cfg(test)]
#[path = "tests/scatter.rs"]
mod tests;
