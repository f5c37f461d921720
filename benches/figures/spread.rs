//! What is said of many values.

/// Sorted values.
pub struct Spread(Vec<f64>);

impl Spread {
    /// Of the values as they are.
    pub fn new(mut values: Vec<f64>) -> Self {
        values.sort_by(f64::total_cmp);
        Self(values)
    }

    /// Of the sizes, signs left out.
    pub fn of_sizes(values: &[f64]) -> Self {
        Self::new(values.iter().map(|v| v.abs()).collect())
    }

    /// How many there are.
    pub fn count(&self) -> usize {
        self.0.len()
    }

    /// The value below which `share` of them lie (nearest rank); NaN where there is none.
    pub fn at(&self, share: f64) -> f64 {
        let rank = (share * self.0.len() as f64).ceil() as usize;
        self.0.get(rank.saturating_sub(1)).copied().unwrap_or(f64::NAN)
    }
}
