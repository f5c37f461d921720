//! Plain data that all rooms share: what is heard, said, measured and kept. It computes nothing about a person and knows no
//! device, file or clock. Start at `event.rs` (what the engine is told, asks for and leaves) and `voice.rs` (what was measured).

mod event;
mod kept;
mod leading;
mod line;
mod measured;
mod voice;

pub use event::*;
pub use kept::{KeptEntry, KeptHead, KeptPart, KeptPractice, SessionId, Source};
pub use leading::{Fall, Response, Trouble};
pub use line::{JournalText, LineError, entry_line, journal_schema, journal_text, kind_of, parse_line, read_journal};
pub use voice::{Hold, HoldSettings, LOUD_ROOM_DB, Utterance, VoiceFrame, VoiceQuality, VoiceTask};
