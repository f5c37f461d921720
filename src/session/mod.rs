//! The pure engine: a deterministic state machine, events in, effects out.
//!
//! No I/O, no threads, no clock but the events', no randomness. What it says are keys of the message catalogue,
//! what it measures comes from the ears, its numbers come from the routine.
//!
//! - `engine`: the machine itself, its states and what every state shares
//! - `flow`: from greeting to summary, step by step
//! - `interrupts`: what can be said at any time
//! - `voiced`, `posture`, `paced`, `repeated`, `reading`, `rapid`, `question`: the ways of timing
//! - `feedback`: what is said about a result
//! - `room`: what is said and kept of a loud room
//! - `patience`: how silence is taken
//! - `trouble`: what makes hearing or measuring doubtful

mod engine;
mod event;
mod feedback;
mod flow;
mod interrupts;
pub mod listening;
mod measured;
mod paced;
mod past;
mod patience;
mod posture;
mod question;
mod rapid;
mod reading;
mod repeated;
mod room;
mod trouble;
mod voiced;

pub use engine::{Engine, Start};
pub use event::*;
pub(crate) use patience::{Patience, Silence};
pub use crate::routine::Weekday;
pub use past::{Past, PastExercise, PastResults};
pub use trouble::Trouble;

#[cfg(test)]
mod tests;
