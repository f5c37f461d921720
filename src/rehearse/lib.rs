//! A simulated client in a simulated room, for the demo and for closed-loop tests.
//!
//! Nothing here reads the engine's mind: the client learns of the session only what it would hear,
//! its voice reaches the ears only through the room, and what it really did stands in its own log,
//! so that a journal can be compared with the truth.
//!
//! ```text
//! lines ──► Client (script) ──► voice ─┐
//!                                      ├─► Room ──► microphone ──► the real ears
//! what the tool plays ──► loudspeaker ─┤
//! others who talk, a television on ────┘
//! ```

mod body;
mod client;
mod habit;
mod household;
mod io;
mod music;
mod noise;
mod room;
mod script;
mod speech;
mod syllables;
mod vowel;

pub use body::{breath, cough};
pub use client::{Client, Did, Heard, LogEntry};
pub use habit::{Hearing, ScriptRoom, Talk, Television, Tires};
pub use household::Household;
pub use io::{Rehearsal, RehearsedIo};
pub use noise::{NoiseKind, NoiseSource};
pub use room::{Echo, Room, RoomSpec};
pub use script::{Act, Hold, Rule, Script};
pub use speech::Speaker;
pub use syllables::{SyllableSpec, SyllableTrain};
pub use vowel::{Break, Cycle, RenderedVowel, Vowel, VowelSpec};

/// Why the rehearsal cannot go on. The text names what is wrong and what to do.
#[derive(Debug, thiserror::Error)]
#[error("{0}")]
pub struct RehearseError(pub String);

/// Lowest and highest sample rate of every generator here, Hz.
pub const RATES_HZ: std::ops::RangeInclusive<u32> = 8_000..=48_000;

/// Amplitude ratio of a level difference in dB.
pub(crate) fn gain(db: f64) -> f64 {
    10f64.powf(db / 20.0)
}

#[cfg(test)]
mod tests;
