//! Days that resemble their neighbours tell less than as many independent ones: how much less.

use statrs::distribution::{ContinuousCDF, StudentsT};

/// Two-sided 95 % of the normal distribution.
pub const Z_95: f64 = 1.959_963_984_540_054;
/// Neighbours so many days of practice apart are looked at for likeness.
const LAGS: usize = 7;
/// Fewer days do not tell whether they resemble each other.
const MEMORY_DAYS_LEAST: usize = 10;
/// The likeness of neighbours is taken to be no larger; beyond, a slope says nothing anyway.
const MEMORY_MOST: f64 = 0.9;
/// Less than this share of the days' scatter is never taken to be their own; own choice, no source.
const OWN_SHARE_LEAST: f64 = 0.2;

/// By how much likeness of neighbours makes the variance behind a slope's interval larger, 1 or more: the larger of
/// [`variance_factor`] and of a memory that fades. `residuals`: of the days about their line; `noise`: the variance that the
/// scatter within days gives them.
pub(super) fn likeness_factor(residuals: &[f64], noise: f64) -> f64 {
    variance_factor(residuals, LAGS).max(memory_factor(residuals, noise))
}

/// The two-sided 95 % quantile for `days` days whose variance was taken `factor` times larger: Student's t with as many degrees
/// of freedom as there are independent days, less two (Santer et al. 2000, J Geophys Res 105:7337, from memory); the normal one,
/// as in Sen 1968, where all are independent.
pub(super) fn quantile_95(days: usize, factor: f64) -> f64 {
    if factor <= 1.0 {
        return Z_95;
    }
    let freedom = (days as f64 / factor - 2.0).max(1.0);
    StudentsT::new(0.0, 1.0, freedom).map_or(Z_95, |t| t.inverse_cdf(0.975))
}

/// By how much likeness of neighbours makes the variance of Kendall's score larger (Hamed & Rao 1998, J Hydrol 204:182, eq. 7):
/// from the autocorrelations of the ranks of the residuals that stand out at 95 %, up to `lags`. Never below 1: what would make
/// the interval narrower is not believed.
#[must_use]
pub fn variance_factor(residuals: &[f64], lags: usize) -> f64 {
    let n = residuals.len();
    if n < 4 {
        return 1.0;
    }
    let Some(ranks) = Ranks::of(residuals) else { return 1.0 };
    let count = n as f64;
    let bound = Z_95 / count.sqrt();
    let mut sum = 0.0;
    for lag in 1..=lags.min(n - 1) {
        let likeness = ranks.likeness(lag);
        if likeness.abs() > bound {
            let left = (n - lag) as f64;
            sum += left * (left - 1.0) * (left - 2.0) * likeness;
        }
    }
    (1.0 + 2.0 * sum / (count * (count - 1.0) * (count - 2.0))).max(1.0)
}

/// The same for a person with good and bad weeks, whose likeness fades from day to day by a constant share φ. What the scatter
/// within days adds hides it: the likeness r that is seen of neighbours is φ times the days' own share of the variance (Spearman's
/// correction for attenuation, 1904), and of days k apart r·φ^(k−1), so that the variance grows by 1 + 2r/(1 − φ); without scatter
/// within days that is (1 + r)/(1 − r), the ratio of days to independent days (Bayley & Hammersley 1946, from memory). Taking out
/// a line makes r look smaller by about (2 + 4r)/n (van Giersbergen 2005, from memory), which is put back. How often a slope is
/// told that there is none: `tests/honest.rs`.
fn memory_factor(residuals: &[f64], noise: f64) -> f64 {
    let n = residuals.len();
    if n < MEMORY_DAYS_LEAST {
        return 1.0;
    }
    let Some(ranks) = Ranks::of(residuals) else { return 1.0 };
    let likeness = ((n as f64 * ranks.likeness(1) + 2.0) / (n as f64 - 4.0)).clamp(0.0, MEMORY_MOST);
    let mean = statistics::mean(residuals);
    let variance = residuals.iter().map(|value| (value - mean).powi(2)).sum::<f64>() / (n - 2) as f64;
    let own = if variance > 0.0 { (1.0 - noise / variance).clamp(OWN_SHARE_LEAST, 1.0) } else { 1.0 };
    let fading = (likeness / own).min(MEMORY_MOST);
    1.0 + 2.0 * likeness / (1.0 - fading)
}

/// Ranks about their mean.
struct Ranks {
    about_mean: Vec<f64>,
    squares: f64,
}

impl Ranks {
    /// None where all values are alike.
    fn of(values: &[f64]) -> Option<Self> {
        let ranks = ranks(values);
        let mean = statistics::mean(&ranks);
        let about_mean: Vec<f64> = ranks.iter().map(|rank| rank - mean).collect();
        let squares: f64 = about_mean.iter().map(|rank| rank.powi(2)).sum();
        (squares > 0.0).then_some(Self { about_mean, squares })
    }

    /// Autocorrelation of days so many apart.
    fn likeness(&self, lag: usize) -> f64 {
        self.about_mean.iter().zip(self.about_mean.iter().skip(lag)).map(|(one, other)| one * other).sum::<f64>() / self.squares
    }
}

/// Ranks from 1; equal values share their mean rank.
fn ranks(values: &[f64]) -> Vec<f64> {
    let mut order: Vec<usize> = (0..values.len()).collect();
    let at = |index: &usize| values.get(*index).copied().unwrap_or_default();
    order.sort_by(|one, other| at(one).total_cmp(&at(other)));
    let mut ranks = vec![0.0; values.len()];
    let mut before = 0;
    for group in order.chunk_by(|one, other| at(one) == at(other)) {
        let mean = before as f64 + (group.len() as f64 + 1.0) / 2.0;
        for index in group {
            if let Some(rank) = ranks.get_mut(*index) {
                *rank = mean;
            }
        }
        before += group.len();
    }
    ranks
}

#[cfg(test)]
#[path = "tests/likeness.rs"]
mod tests;
