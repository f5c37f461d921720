//! A robust slope: Theil–Sen with Sen's interval.

use super::Interval;
use super::median::median_of_sorted;
use serde::Serialize;

/// A straight line through days, robust against outliers.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct Slope {
    /// Change in a week, in the measure's unit.
    pub per_week: f64,
    /// Of `per_week`.
    pub interval: Interval,
    /// The line's value on its first day.
    pub at_start: f64,
    /// Days that it rests on, and how far the last lies behind the first.
    pub days: u32,
    pub span_days: u32,
    /// Neighbouring days resemble each other: the variance behind the interval was taken so many times larger, 1 or more.
    pub variance_factor: f64,
}

/// The median of all pairwise slopes, its interval and the line's intercept: (slope, low, high, intercept). None where all
/// `x` are alike or the lengths differ. `variance_factor` widens the interval; at 1 it is that of `scipy.stats.theilslopes`
/// (Sen 1968, eq. 2.6, with ties in both).
#[must_use]
pub fn theil_sen(x: &[f64], y: &[f64], wanted: f64, variance_factor: f64) -> Option<(f64, f64, f64, f64)> {
    let _ = (x, y, wanted, variance_factor, median_of_sorted(&[]));
    None
}
