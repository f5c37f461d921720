//! A robust slope: Theil–Sen with Sen's interval.

use super::day_value::DayValue;
use super::likeness::{likeness_factor, quantile_95};
use super::median::Interval;
use serde::Serialize;

/// Fewer days make no slope: under five, Sen's interval cannot cover 95 % whatever it says (exact: 92 % at four).
pub const SLOPE_DAYS_LEAST: usize = 5;
/// Days that a slope must span; own choice, no source: what a fortnight brings is learning the task and the weather.
pub const SLOPE_SPAN_LEAST: i64 = 14;
/// So many of the latest days tell how a person scatters from day to day; own choice, no source: over longer no straight line fits.
pub const SCATTER_DAYS: usize = 120;

/// A straight line through days, robust against outliers.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct Slope {
    /// Change in a week, in the measure's unit.
    pub per_week: f64,
    /// Of `per_week`, 95 %.
    pub interval: Interval,
    /// The line's value on its first day.
    pub at_start: f64,
    /// Days that it rests on, and how far the last lies behind the first.
    pub days: u32,
    pub span_days: u32,
    /// Neighbouring days resemble each other: the variance behind the interval was taken so many times larger, 1 or more.
    pub variance_factor: f64,
}

impl Slope {
    /// The interval leaves no change out.
    #[must_use]
    pub fn includes_none(&self) -> bool {
        self.interval.low <= 0.0 && self.interval.high >= 0.0
    }
}

/// A line through points.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Line {
    pub slope: f64,
    pub low: f64,
    pub high: f64,
    /// Median of y less slope times median of x.
    pub intercept: f64,
}

/// The slope over days whose value is their median; none under five days or a span of two weeks.
#[must_use]
pub fn slope(days: &[DayValue]) -> Option<Slope> {
    let (first, last) = (days.first()?, days.last()?);
    let span_days = days_between(first.day, last.day);
    if days.len() < SLOPE_DAYS_LEAST || span_days < SLOPE_SPAN_LEAST {
        return None;
    }
    let (x, y) = points(days);
    let mut pairs = Pairs::of(&x, &y)?;
    let rest = residuals(&x, &y, pairs.median());
    let variance_factor = likeness_factor(&rest, variance_of_medians(days));
    let line = pairs.line(&x, &y, quantile_95(days.len(), variance_factor), variance_factor);
    Some(Slope {
        per_week: line.slope,
        interval: Interval { low: line.low, high: line.high, wanted: 0.95, covers: 0.95 },
        at_start: line.intercept,
        days: u32::try_from(days.len()).unwrap_or(u32::MAX),
        span_days: u32::try_from(span_days).unwrap_or(0),
        variance_factor,
    })
}

/// How much of the variance of the days' medians is scatter within the days, in the measure's unit squared; 0 where no day has two
/// trials. The median of k normal values has a variance of π/(2k) of theirs for large k; of two it is their mean.
fn variance_of_medians(days: &[DayValue]) -> f64 {
    let groups: Vec<&[f64]> = days.iter().map(|day| day.trials.as_slice()).collect();
    let Some(scatter) = super::within(&groups) else { return 0.0 };
    let share = |count: usize| if count < 3 { 1.0 } else { std::f64::consts::FRAC_PI_2 } / count.max(1) as f64;
    let shares: Vec<f64> = groups.iter().map(|group| share(group.len())).collect();
    scatter.sem.powi(2) * shares.iter().sum::<f64>() / shares.len() as f64
}

/// Standard deviation of the latest days' medians about their own Theil–Sen line, n − 2 degrees of freedom; none under five days.
/// A steady change is no scatter; everything else is.
#[must_use]
pub fn sd_about_line(days: &[DayValue]) -> Option<f64> {
    let days = days.get(days.len().saturating_sub(SCATTER_DAYS)..)?;
    if days.len() < SLOPE_DAYS_LEAST {
        return None;
    }
    let (x, y) = points(days);
    let mut pairs = Pairs::of(&x, &y)?;
    let rest = residuals(&x, &y, pairs.median());
    let mean = rest.iter().sum::<f64>() / rest.len() as f64;
    let squares = rest.iter().map(|value| (value - mean).powi(2)).sum::<f64>();
    Some((squares / (rest.len() - 2) as f64).sqrt())
}

/// The median of all pairwise slopes, its interval and the line's intercept. None where all `x` are alike or the lengths differ.
/// `z` is the two-sided normal quantile; `variance_factor` widens the interval; at 1 it is that of `scipy.stats.theilslopes`
/// (Sen 1968, eq. 2.6, with ties in both).
#[must_use]
pub fn theil_sen(x: &[f64], y: &[f64], z: f64, variance_factor: f64) -> Option<Line> {
    Some(Pairs::of(x, y)?.line(x, y, z, variance_factor))
}

fn days_between(from: jiff::civil::Date, to: jiff::civil::Date) -> i64 {
    from.duration_until(to).as_hours() / 24
}

/// Weeks since the first day, and the days' medians.
fn points(days: &[DayValue]) -> (Vec<f64>, Vec<f64>) {
    let first = days.first().map(|day| day.day).unwrap_or_default();
    days.iter().map(|day| (days_between(first, day.day) as f64 / 7.0, day.median)).unzip()
}

fn residuals(x: &[f64], y: &[f64], slope: f64) -> Vec<f64> {
    x.iter().zip(y).map(|(x, y)| y - slope * x).collect()
}

/// All slopes between two points with different `x`, as whole numbers in the same order: two years of days are a quarter of a
/// million of them, and whole numbers are parted twice as fast.
struct Pairs {
    slopes: Vec<i64>,
}

/// The order of `f64::total_cmp`, there and back.
fn key(value: f64) -> i64 {
    let bits = value.to_bits().cast_signed();
    bits ^ ((bits >> 63).cast_unsigned() >> 1).cast_signed()
}

fn value(key: i64) -> f64 {
    f64::from_bits((key ^ ((key >> 63).cast_unsigned() >> 1).cast_signed()).cast_unsigned())
}

impl Pairs {
    fn of(x: &[f64], y: &[f64]) -> Option<Self> {
        let n = x.len();
        if n != y.len() || x.iter().chain(y).any(|value| !value.is_finite()) {
            return None;
        }
        let mut slopes = Vec::with_capacity(n.saturating_mul(n.saturating_sub(1)) / 2);
        let mut finite = true;
        for (i, (x_i, y_i)) in x.iter().zip(y).enumerate() {
            for (x_j, y_j) in x.iter().zip(y).take(i) {
                let step = x_i - x_j;
                if step != 0.0 {
                    // Adding zero turns -0.0 into 0.0.
                    let slope = (y_i - y_j) / step + 0.0;
                    finite &= slope.is_finite();
                    slopes.push(key(slope));
                }
            }
        }
        (!slopes.is_empty() && finite).then_some(Self { slopes })
    }

    /// The k-th smallest, from 0. Behind [`Pairs::median`] the halves are parted, and only one need be looked through.
    fn rank(&mut self, k: usize) -> f64 {
        let (middle, k) = (self.slopes.len() / 2, k.min(self.slopes.len() - 1));
        let (lower, upper) = self.slopes.split_at_mut(middle);
        let (half, k) = if k < middle { (lower, k) } else { (upper, k - middle) };
        value(*half.select_nth_unstable(k).1)
    }

    fn median(&mut self) -> f64 {
        let middle = self.slopes.len() / 2;
        let upper = value(*self.slopes.select_nth_unstable(middle).1);
        if self.slopes.len() % 2 == 1 {
            return upper;
        }
        let lower = self.slopes.iter().take(middle).copied().max().map_or(upper, value);
        f64::midpoint(lower, upper)
    }

    fn line(&mut self, x: &[f64], y: &[f64], z: f64, variance_factor: f64) -> Line {
        let slope = self.median();
        let (pairs, n) = (self.slopes.len() as f64, x.len() as f64);
        let variance = (n * (n - 1.0) * (2.0 * n + 5.0) - ties(x) - ties(y)) / 18.0 * variance_factor.max(0.0);
        let half = z * variance.max(0.0).sqrt();
        // Rounding to even and the ends as in scipy.stats.theilslopes.
        let high = ((pairs + half) / 2.0).round_ties_even().min(pairs - 1.0).max(0.0);
        let low = (((pairs - half) / 2.0).round_ties_even() - 1.0).max(0.0);
        let (low, high) = (self.rank(low as usize), self.rank(high as usize));
        let middle = |values: &[f64]| super::median(values).unwrap_or_default();
        Line { slope, low, high, intercept: middle(y) - slope * middle(x) }
    }
}

/// Σ k(k − 1)(2k + 5) over groups of k equal values.
fn ties(values: &[f64]) -> f64 {
    let mut sorted = values.to_vec();
    sorted.sort_by(f64::total_cmp);
    let groups = sorted.chunk_by(|one, other| one == other).map(|group| group.len() as f64);
    groups.map(|k| k * (k - 1.0) * (2.0 * k + 5.0)).sum()
}

#[cfg(test)]
#[path = "tests/slope.rs"]
mod tests;
