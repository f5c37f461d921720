//! What was done before this practice on the same day.

use model::Symptom;
use routine::Amount;
use std::collections::BTreeMap;

/// What this client has done earlier today, in other practices.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct EarlierToday {
    /// Practices in which something was done.
    pub practices: u32,
    /// By exercise.
    pub done: BTreeMap<String, Amount>,
    /// Loud holds together, s.
    pub loud_s: f64,
    /// What the client said was wrong, and during which exercise: also in a practice that is now gone on with.
    pub unwell: Vec<(Symptom, Option<String>)>,
    /// Since the last of it, s; none where that is not known.
    pub ago_s: Option<f64>,
}
