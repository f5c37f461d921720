//! One day of a measure.

use jiff::civil::Date;
use serde::Serialize;

/// One day of a segment.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct DayValue {
    pub day: Date,
    /// All values that count, in the order in which they were made; never empty.
    pub trials: Vec<f64>,
    pub median: f64,
}
