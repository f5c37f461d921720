//! The median's distribution-free interval.

use serde::Serialize;

/// An interval with what it covers.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct Interval {
    pub low: f64,
    pub high: f64,
    /// What was asked for, 0 to 1.
    pub wanted: f64,
    /// What it covers, 0 to 1; below `wanted` where there are too few values for more.
    pub covers: f64,
}

impl Interval {
    /// It covers what was asked for.
    #[must_use]
    pub fn reaches(&self) -> bool {
        self.covers >= self.wanted
    }
}

/// Below so many values even the whole range covers less than three quarters, and says nothing; own choice.
const LEAST: usize = 3;

/// The interval of the median between two order statistics, each as far from its end as the other: the narrowest whose
/// binomial coverage, 1 − 2·P(B(n, ½) < k), is at least `wanted`; where none is, the whole range with the coverage it has.
/// None under three values. (Conover 1999, Practical Nonparametric Statistics, 3.2; from memory.)
#[must_use]
pub fn median_interval(values: &[f64], wanted: f64) -> Option<Interval> {
    let mut sorted = values.to_vec();
    sorted.sort_by(f64::total_cmp);
    let n = sorted.len();
    if n < LEAST {
        return None;
    }
    let (mut k, mut covers) = (1, 1.0 - 2.0 * tail(n, 1));
    while k < n / 2 {
        let narrower = 1.0 - 2.0 * tail(n, k + 1);
        if narrower < wanted {
            break;
        }
        (k, covers) = (k + 1, narrower);
    }
    Some(Interval { low: *sorted.get(k - 1)?, high: *sorted.get(n - k)?, wanted, covers })
}

/// P(B(n, ½) < k).
fn tail(n: usize, k: usize) -> f64 {
    // In logarithms: 2^-n is nothing long before n is large.
    let mut log_term = -(n as f64) * std::f64::consts::LN_2;
    let mut sum = 0.0;
    for i in 0..k {
        sum += log_term.exp();
        log_term += ((n - i) as f64).ln() - ((i + 1) as f64).ln();
    }
    sum
}

#[cfg(test)]
#[path = "tests/median.rs"]
mod tests;
