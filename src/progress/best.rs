//! The best of three, with all three.

use super::{Measure, Practised};
use jiff::civil::Date;
use serde::Serialize;

/// The first three complete trials of one voiced exercise in one practice. More trials are not looked at: the best of many is
/// larger than the best of three for no other reason than that there were many.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct BestOfThree {
    pub session: i64,
    pub day: Date,
    pub exercise: String,
    pub measure: Measure,
    /// In the order in which they were made, 1 to 3 of them.
    pub trials: Vec<f64>,
    /// The entry of each in the practice's journal.
    pub seqs: Vec<i64>,
    /// The largest.
    pub best: f64,
    /// Which it was, from 1.
    pub best_index: u32,
    /// How many complete trials there were, those after the third among them.
    pub of: u32,
}

/// The best of three of each exercise of each practice, by day and practice.
#[must_use]
pub fn best_of_three(practised: &Practised) -> Vec<BestOfThree> {
    let _ = practised;
    Vec::new()
}
