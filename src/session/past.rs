//! What this person did before, as plain data; only the person's own past is ever compared with.

use std::collections::BTreeMap;

/// Results of earlier live sessions by exercise id.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct PastResults {
    pub by_exercise: BTreeMap<String, PastExercise>,
}

/// One exercise's past.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct PastExercise {
    /// Sessions in which it was done.
    pub sessions: u32,
    /// Longest hold of the last session, s, and the weekday of that session in words, "Tuesday".
    pub last_best_s: Option<f64>,
    pub last_weekday: Option<String>,
    /// Longest hold of the last 30 days, s.
    pub month_best_s: Option<f64>,
    /// Mean and standard deviation of the last trials, s; the usual scatter.
    pub mean_s: Option<f64>,
    pub sd_s: Option<f64>,
}
