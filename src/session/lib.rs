//! Leads one practice session: a pure, deterministic state machine, events in, effects out.
//!
//! It may not touch a device, a file, a clock, a thread or chance: time is what the events say, what it says are keys of the message
//! catalogue, what it measures comes from the ears, its numbers come from the routine. Start at [`Engine::on`] (`engine`), then read
//! `state` (where a session can stand) and `flow` (what each move means).
//!
//! From the ground up:
//! - `listening`, `patience`, `habits`, `past`, `context`: what can be said when, how silence is taken, what is known of the client
//! - `next`: the names of the moves; `talk`, `trouble`, `tiring`: what is noticed on the way
//! - `safety_stop`: that something is wrong, as it is kept
//! - `limits`: what may still be done, today and in this practice; `roll`: who of a class is there
//! - `practice`, `outbox`, `outlet`: what every state shares, and how effects are put out; `participants`: those who belong to a class; `waiting`, `feedback`: what is said into a
//!   silence, and about a result
//! - `voiced`, `posture`, `paced`, `repeated`, `reading`, `talking`, `rapid`, `question`, `naming`: the ways of timing; `asking`, `resting`,
//!   `halted`, `emergency`, `looking_back` (with `questions` and `moment`): the states between them and behind them
//! - `state`: one of all these; `hearing`: what the ears report to it
//! - `opening`, `roll_call`, `steps`, `rising`, `closing`, `class`, `answers`: from greeting to summary; `commands`, `halting`, `moving`,
//!   `wishes`: what can be said at any time; `afterwards`: what from the summary on
//! - `flow`, `engine`: the table of moves and the one door

mod afterwards;
mod aims;
mod answers;
mod asking;
mod beat;
mod class;
mod closing;
mod commands;
mod context;
mod earlier_today;
mod emergency;
mod engine;
mod feedback;
mod flow;
mod habits;
mod halted;
mod halting;
mod hearing;
mod knocking;
mod ladder;
mod limits;
pub mod listening;
mod looking_back;
mod moment;
mod moving;
mod naming;
mod next;
mod opening;
mod outbox;
mod outlet;
mod paced;
mod pacing_beat;
mod participants;
mod past;
mod patience;
mod posture;
mod practice;
mod question;
mod questions;
mod rapid;
mod reading;
mod repeated;
mod resting;
mod rising;
mod roll;
mod roll_call;
mod safety_stop;
mod state;
mod steps;
mod talk;
mod talking;
mod tiring;
mod trouble;
mod voiced;
mod waiting;
mod wishes;

pub use context::{SessionContext, Understood, WeekToAsk};
pub use earlier_today::EarlierToday;
pub use engine::Engine;
pub use habits::Habits;
pub use model::*;
pub use past::{Past, PastExercise, PastResults};
pub use patience::{Patience, Silence};
pub use routine::Weekday;

#[cfg(test)]
mod tests;
