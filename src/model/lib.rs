//! Plain data that all rooms share: what is heard, said, measured and kept. It computes nothing about a person and knows no
//! device, file or clock. Start at `event.rs` (what the engine is told), `effect.rs` (what it asks for), `fact.rs` (what it leaves)
//! and `measure.rs` (every measured figure, declared once).

#[cfg(test)]
extern crate self as model;

mod by_kind;
mod command;
mod effect;
mod entry;
mod event;
mod fact;
mod hold_fact;
mod kept;
mod leading;
mod level;
mod line;
mod looking_back;
mod measure;
mod measured;
mod rating;
mod reason;
mod rung;
mod trial;
mod unit;
mod visible;
mod voice;
mod words;

#[cfg(test)]
#[path = "tests/entries.rs"]
mod entries;

pub use command::Command;
pub use effect::{Arg, Effect, Line, Listening, View};
pub use entry::{Entry, Position};
pub use event::{Event, LineId};
pub use fact::{Fact, FactKind};
pub use kept::{KeptEntry, KeptHead, KeptPart, KeptPractice, SessionId, Source};
pub use leading::{Fall, Response, Trouble};
pub use level::{LevelCalibration, LevelOf, LevelTerms};
pub use line::{JournalText, LineError, entry_line, journal_schema, journal_text, parse_line, read_journal};
pub use looking_back::{MissedReason, SignAnswer, SwallowSign};
pub use measure::{Declared, Measure, Term};
pub use rating::{RatedOver, Rating};
pub use reason::{AgreementAnswer, EndReason, EndedBy, FrequencyWeighting, MicrophoneNote, StepReason, Symptom, TimeWeighting};
pub use rung::{Climb, Climbs, Rung};
pub use trial::{TrialKind, TrialOf};
pub use unit::Unit;
pub use visible::{visible, visible_line};
pub use voice::{Hold, HoldSettings, LOUD_ROOM_DB, Prosody, Utterance, VoiceFrame, VoiceQuality, VoiceTask};
