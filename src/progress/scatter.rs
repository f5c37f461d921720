//! How far this person's own trials scatter, and the smallest change that exceeds it.

use super::DayValue;
use serde::Serialize;

/// Which scatter the smallest change rests on.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum ScatterBasis {
    /// From trial to trial within a day.
    WithinDay,
    /// From day to day, which is larger.
    BetweenDays,
}

/// Scatter within days, pooled.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct Scatter {
    /// Standard error of measurement: the root of the pooled within-day variance.
    pub sem: f64,
    /// Days with two trials and more, the trials on them, and the degrees of freedom.
    pub days: u32,
    pub trials: u32,
    pub df: u32,
}

/// The smallest change that exceeds this person's own scatter.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct Change {
    /// From trial to trial within days; none where no day has two trials.
    pub within: Option<Scatter>,
    /// Minimal detectable change between two single trials, from the repeated trials alone: 1.645·√2·SEM and 1.96·√2·SEM.
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
    /// The latest days' median less the baseline's; none without a baseline or where no later days are there.
    pub from_baseline: Option<f64>,
    /// Days behind the latest median.
    pub latest_days: u32,
    pub latest: Option<f64>,
    /// `from_baseline` is larger than `mdc95`, either way.
    pub exceeds_95: Option<bool>,
}

/// Mean squares of an analysis of variance, subjects in rows and trials in columns.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct Anova {
    pub subjects: usize,
    pub trials: usize,
    /// Between subjects, between trials (0 in the one-way layout), and what is left.
    pub ms_subjects: f64,
    pub ms_trials: f64,
    pub ms_error: f64,
    /// Within subjects, trials and error together.
    pub ms_within: f64,
}

/// One-way analysis of groups that may differ in size; none under two groups or without any repetition.
/// The second is n₀, the size of a group that counts for the variance between.
#[must_use]
pub fn one_way(groups: &[Vec<f64>]) -> Option<(Anova, f64)> {
    let _ = groups;
    None
}

/// Two-way analysis without replication of a full table; none where it is not full or under 2 × 2.
#[must_use]
pub fn two_way(rows: &[Vec<f64>]) -> Option<Anova> {
    let _ = rows;
    None
}

/// ICC(2,1) (Shrout & Fleiss 1979): two-way random, single, absolute agreement.
#[must_use]
pub fn icc_2_1(anova: &Anova) -> f64 {
    let _ = anova;
    0.0
}

/// ICC(3,1): two-way mixed, single, consistency.
#[must_use]
pub fn icc_3_1(anova: &Anova) -> f64 {
    let _ = anova;
    0.0
}

/// The smallest change of a stretch of days; none where neither scatter is known. `day_sd`: of the days about their trend.
#[must_use]
pub fn change(days: &[DayValue], day_sd: Option<f64>, baseline: Option<f64>, baseline_days: usize) -> Option<Change> {
    let _ = (days, day_sd, baseline, baseline_days);
    None
}
