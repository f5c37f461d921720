//! The journal, written as it happens, and the history (SQLite).
//!
//! Each fact is one committed transaction, so a process that is killed at any instant loses at most the fact under way.

mod database;
mod error;
mod exchange;
mod folder;
mod habits;
mod history;
mod journal;
mod json_lines;
mod kept;
mod line;
mod own_voice;
mod packages;
mod past;
mod ramp;
mod resume;
mod running;
mod store;
mod trials;
mod writer;

#[cfg(test)]
#[path = "tests/samples.rs"]
mod samples;

pub use error::RecordError;
pub use exchange::{Received, WholePart, WholeSession};
pub use folder::{create as create_folder, data_folder};
pub use history::{BestHold, SessionSummary};
pub use journal::Journal;
pub use json_lines::JsonLines;
pub use kept::{KeptEntry, KeptHead, KeptPart, KeptPractice};
pub use line::{JournalText, journal_schema, journal_text, read_journal};
pub use own_voice::StoredWord;
pub use resume::{Unfinished, counts_in, next_position};
pub use packages::{MadePackage, PackageAgreement, TakenPackage};
pub use store::{DATABASE_NAME, NewSession, SessionId, Source, Store};
pub use writer::JournalWriter;
