//! What a file may hold at most, and in which languages.

/// Languages with words for every exercise; a test of the words keeps it true.
pub const LANGUAGES: &[&str] = &["en", "de", "es"];

/// Steps of a routine: a guard against slips and hostile files, no source.
pub(super) const MAX_STEPS: usize = 100;
/// Stages of a ramp: a guard against slips and hostile files, no source.
pub(super) const MAX_STAGES: usize = 30;
