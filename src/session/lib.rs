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
//! - `habits`, `tiring`: how long this person takes, and when a rest is offered
//! - `class`: leading a class, where nobody is measured
//! - `naming`: as many of a category as come to mind
//! - `room`: what is said and kept of a loud room
//! - `patience`: how silence is taken
//! - `talk`: somebody speaks and no word of it is known
//! - `trouble`: what makes hearing or measuring doubtful

mod class;
mod engine;
mod feedback;
mod flow;
mod habits;
mod interrupts;
pub mod listening;
mod naming;
mod paced;
mod past;
mod patience;
mod posture;
mod question;
mod rapid;
mod reading;
mod repeated;
mod room;
mod talk;
mod tiring;
mod trouble;
mod voiced;

pub use engine::{Engine, Start};
pub use habits::Habits;
pub use model::*;
pub use past::{Past, PastExercise, PastResults};
pub use patience::{Patience, Silence};
pub use routine::Weekday;

#[cfg(test)]
mod tests;
