//! The limits of one number.

use serde::Deserialize;

/// Smallest and largest value of one number of a dose, both allowed.
#[derive(Debug, Clone, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Limit {
    pub min: f64,
    pub max: f64,
    /// The reason, with its source or "no source".
    pub why: String,
}

impl Limit {
    /// NaN is never inside.
    #[must_use]
    pub fn allows(&self, value: f64) -> bool {
        (self.min..=self.max).contains(&value)
    }
}
