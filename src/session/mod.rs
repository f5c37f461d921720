//! The pure engine: a deterministic state machine, events in, effects out.
//!
//! No I/O, no threads, no clock but the events', no randomness without a seed.

mod event;
mod measured;
mod past;

pub use event::*;
pub use past::{Past, PastExercise, PastResults, Weekday};
