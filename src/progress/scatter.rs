//! How far this person's own trials scatter.

use serde::Serialize;
use statistics::{mean, squares_about};

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
