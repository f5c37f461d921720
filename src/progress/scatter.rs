//! How far this person's own trials scatter, and the smallest change that exceeds it.

use super::{Baseline, DayValue};
use serde::Serialize;

/// Two-sided 90 % and 95 % of the normal distribution, as Weir 2005 and the clinical literature use them.
const Z_90: f64 = 1.645;
const Z_95: f64 = 1.96;
/// Days with repeated trials that a scatter within days rests on at least; own choice, as for the baseline.
const DAYS_LEAST: usize = 3;
/// The latest days that are compared with the baseline, at least and at most, and how far back they may lie.
const LATEST: std::ops::RangeInclusive<usize> = 3..=5;
const LATEST_WITHIN_DAYS: i64 = 28;
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
    LATEST.contains(&medians.len()).then(|| super::median(&medians)).flatten().map(|median| (median, count))
}

/// The pooled scatter within groups of two and more; none where there is no such group.
#[must_use]
pub fn within(groups: &[&[f64]]) -> Option<Scatter> {
    let (mut squares, mut days, mut trials) = (0.0, 0_u32, 0_u32);
    for group in groups.iter().filter(|group| group.len() >= 2) {
        squares += squares_about(group, mean(group));
        days += 1;
        trials += u32::try_from(group.len()).unwrap_or(0);
    }
    let df = trials - days;
    (df > 0).then(|| Scatter { sem: (squares / f64::from(df)).sqrt(), days, trials, df })
}

/// Mean squares of an analysis of variance, subjects in rows and trials in columns.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct Anova {
    pub subjects: usize,
    pub trials: usize,
    pub ms_subjects: f64,
    pub ms_trials: f64,
    pub ms_error: f64,
}

impl Anova {
    /// ICC(2,1): two-way random, single, absolute agreement (Shrout & Fleiss 1979). May lie below 0.
    #[must_use]
    pub fn icc_2_1(&self) -> Option<f64> {
        let (n, k) = (self.subjects as f64, self.trials as f64);
        ratio(self.ms_subjects - self.ms_error, self.ms_subjects + (k - 1.0) * self.ms_error + k * (self.ms_trials - self.ms_error) / n)
    }

    /// ICC(3,1): two-way mixed, single, consistency (Shrout & Fleiss 1979). May lie below 0.
    #[must_use]
    pub fn icc_3_1(&self) -> Option<f64> {
        ratio(self.ms_subjects - self.ms_error, self.ms_subjects + (self.trials as f64 - 1.0) * self.ms_error)
    }
}

/// Two-way analysis without replication of a full table, as behind ICC(2,1) and ICC(3,1); none under 2 × 2 or where a row has a
/// gap.
#[must_use]
pub fn two_way(rows: &[Vec<f64>]) -> Option<Anova> {
    let (n, k) = (rows.len(), rows.first()?.len());
    if n < 2 || k < 2 || rows.iter().any(|row| row.len() != k) {
        return None;
    }
    let all: Vec<f64> = rows.iter().flatten().copied().collect();
    let grand = mean(&all);
    let row_means: Vec<f64> = rows.iter().map(|row| mean(row)).collect();
    let column_means: Vec<f64> =
        (0..k).map(|column| mean(&rows.iter().filter_map(|row| row.get(column).copied()).collect::<Vec<_>>())).collect();
    let of_subjects = squares_about(&row_means, grand) * k as f64;
    let of_trials = squares_about(&column_means, grand) * n as f64;
    let of_error = rows
        .iter()
        .zip(&row_means)
        .flat_map(|(row, row_mean)| {
            row.iter().zip(&column_means).map(move |(value, column_mean)| (value - row_mean - column_mean + grand).powi(2))
        })
        .sum::<f64>();
    let (rows_df, columns_df) = ((n - 1) as f64, (k - 1) as f64);
    Some(Anova {
        subjects: n,
        trials: k,
        ms_subjects: of_subjects / rows_df,
        ms_trials: of_trials / columns_df,
        ms_error: of_error / (rows_df * columns_df),
    })
}

/// Share of the variance that lies between groups which may differ in size, from a one-way analysis: ICC(1,1) with n₀ for the
/// size (Shrout & Fleiss 1979; n₀ as in Sokal & Rohlf 1995, box 9.2, from memory). 0 where the groups differ by no more than
/// their own scatter makes them; none under two groups with repetitions.
#[must_use]
pub fn between_share(groups: &[&[f64]]) -> Option<f64> {
    let groups: Vec<&[f64]> = groups.iter().copied().filter(|group| group.len() >= 2).collect();
    if groups.len() < 2 {
        return None;
    }
    let all: Vec<f64> = groups.iter().flat_map(|group| group.iter().copied()).collect();
    let (total, count, grand) = (all.len() as f64, groups.len() as f64, mean(&all));
    let between = groups.iter().map(|group| group.len() as f64 * (mean(group) - grand).powi(2)).sum::<f64>() / (count - 1.0);
    let within = groups.iter().map(|group| squares_about(group, mean(group))).sum::<f64>() / (total - count);
    let size = (total - groups.iter().map(|group| (group.len() as f64).powi(2)).sum::<f64>() / total) / (count - 1.0);
    ratio(between - within, between + (size - 1.0) * within).map(|share| share.clamp(0.0, 1.0))
}

fn ratio(above: f64, below: f64) -> Option<f64> {
    let ratio = above / below;
    (below != 0.0 && ratio.is_finite()).then_some(ratio)
}

pub(super) fn mean(values: &[f64]) -> f64 {
    values.iter().sum::<f64>() / values.len() as f64
}

fn squares_about(values: &[f64], centre: f64) -> f64 {
    values.iter().map(|value| (value - centre).powi(2)).sum()
}

/// Sample standard deviation (n − 1); none under two values.
pub(super) fn sd(values: &[f64]) -> Option<f64> {
    (values.len() >= 2).then(|| (squares_about(values, mean(values)) / (values.len() - 1) as f64).sqrt())
}

#[cfg(test)]
#[path = "tests/scatter.rs"]
mod tests;
