//! A simulated client in a simulated room, for the demo and for closed-loop tests.
//!
//! It may not know what the engine or the ears think: the client learns of the session only what it would hear, its voice reaches
//! the ears only through the room, and what it really did stands in its own log, so that a journal can be compared with the truth.
//! Start at `client` (what it does) and `script` (the data that says so); `io` joins client, room and household into a sound card.
//!
//! ```text
//! lines ──► Client (script) ──► voice ─┐
//!                                      ├─► Room ──► microphone ──► the real ears
//! what the tool plays ──► loudspeaker ─┤
//! others who talk, a television on ────┘
//! ```

mod act;
mod body;
mod client;
mod error;
mod habit;
mod household;
mod io;
mod music;
mod noise;
mod room;
mod script;
mod signal;
mod speech;
mod syllables;
mod truth;
mod vowel;

pub use act::{Act, Hold, Rule};
pub use body::{breath, cough, knocks};
pub use client::Client;
pub use error::RehearseError;
pub use habit::{Hearing, ScriptRoom, Talk, Television, Tires};
pub use household::Household;
pub use io::{Rehearsal, RehearsedIo};
pub use noise::{NoiseKind, NoiseSource};
pub use room::{Echo, Room, RoomSpec};
pub use script::Script;
pub use signal::RATES_HZ;
pub use speech::Speaker;
pub use syllables::{SyllableSpec, SyllableTrain};
pub use truth::{Did, Heard, LogEntry};
pub use vowel::{Break, Cycle, RenderedVowel, Vowel, VowelSpec};

#[cfg(test)]
mod tests;
