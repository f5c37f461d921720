//! Means, scatters, medians and quantiles, each definition once. It depends on nothing and takes no memory but where a function
//! says so, so that code beside the sound may call it. Start at [`quantile`], and at the table there of which definition is which.
//!
//! Values must be finite; the order is that of [`f64::total_cmp`].

/// Arithmetic mean; NaN of nothing.
#[must_use]
pub fn mean(values: &[f64]) -> f64 {
    values.iter().sum::<f64>() / values.len() as f64
}

/// Sum of squares about a centre.
#[must_use]
pub fn squares_about(values: &[f64], centre: f64) -> f64 {
    values.iter().map(|value| (value - centre).powi(2)).sum()
}

/// Sample standard deviation (n − 1); none under two values.
#[must_use]
pub fn sd(values: &[f64]) -> Option<f64> {
    (values.len() >= 2).then(|| (squares_about(values, mean(values)) / (values.len() - 1) as f64).sqrt())
}

/// The middle value, or the mean of the two middle ones; none of nothing. Takes memory for a sorted copy.
#[must_use]
pub fn median(values: &[f64]) -> Option<f64> {
    let mut sorted = values.to_vec();
    sorted.sort_by(f64::total_cmp);
    median_of_sorted(&sorted)
}

/// [`median`] of values that stand in order already.
#[must_use]
pub fn median_of_sorted(sorted: &[f64]) -> Option<f64> {
    let middle = sorted.len() / 2;
    let upper = *sorted.get(middle)?;
    if sorted.len() % 2 == 1 { Some(upper) } else { sorted.get(middle - 1).map(|lower| f64::midpoint(*lower, upper)) }
}

/// [`median`] without taking memory; leaves the values in another order. The fastest of many values.
pub fn median_in_place(values: &mut [f64]) -> Option<f64> {
    let middle = values.len() / 2;
    if values.is_empty() {
        return None;
    }
    let odd = values.len() % 2 == 1;
    let (low, upper, _) = values.select_nth_unstable_by(middle, f64::total_cmp);
    Some(if odd { *upper } else { f64::midpoint(*upper, low.iter().copied().fold(f64::NEG_INFINITY, f64::max)) })
}

/// The upper of the two middle values, or the middle one: always one that was there; none of nothing. Sorts in place.
pub fn upper_median(values: &mut [f64]) -> Option<f64> {
    values.sort_unstable_by(f64::total_cmp);
    values.get(values.len() / 2).copied()
}

/// The value below which a share (0 to 1) of the values lies, between two of them in proportion; none of nothing. Sorts in place.
///
/// | function | place among n sorted values, from 0 | known as |
/// |---|---|---|
/// | [`quantile`] | share · (n − 1), between neighbours in proportion | type 7 of Hyndman & Fan 1996 (from memory) |
/// | [`nearest_place`] | share · (n − 1), rounded | |
/// | [`nearest_rank`] | ⌈share · n⌉ − 1 | nearest rank, type 1 |
pub fn quantile(values: &mut [f64], share: f64) -> Option<f64> {
    values.sort_unstable_by(f64::total_cmp);
    let last = values.len().checked_sub(1)?;
    let place = share.clamp(0.0, 1.0) * last as f64;
    let low = place.floor() as usize;
    let (lower, upper) = (*values.get(low)?, *values.get((low + 1).min(last))?);
    Some(lower + (upper - lower) * (place - low as f64))
}

/// The value at the place next to that share of the way from the first to the last; none of nothing.
#[must_use]
pub fn nearest_place(sorted: &[f64], share: f64) -> Option<f64> {
    let last = sorted.len().checked_sub(1)?;
    sorted.get((share * last as f64).round() as usize).copied()
}

/// The smallest value that at least that share of the values does not pass; none of nothing.
#[must_use]
pub fn nearest_rank(sorted: &[f64], share: f64) -> Option<f64> {
    let rank = (share * sorted.len() as f64).ceil() as usize;
    sorted.get(rank.saturating_sub(1)).copied()
}

#[cfg(test)]
#[path = "tests/quantiles.rs"]
mod tests;
