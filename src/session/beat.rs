//! Counting on the beat: how far ahead.

/// Counts are handed to the mixer this long before their beat, s: enough to render, short enough to follow a command.
pub(super) const LOOK_AHEAD_S: f64 = 0.4;
/// From the end of the cue to the first beat, s.
pub(super) const UPBEAT_S: f64 = 0.6;
