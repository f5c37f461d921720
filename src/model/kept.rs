//! A practice as it is kept in the record.

use crate::entry::Entry;
use jiff::ZonedDateTime;
use std::sync::Arc;

/// Where a session's sound came from. Each kind goes on only with its own, and only live sessions count as history of a client.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Source {
    /// A person at a microphone.
    Live,
    /// A recording.
    Replay,
    /// The simulated client.
    Rehearsal,
}

impl Source {
    /// The word kept in the record: "live", "replay", "rehearsal".
    #[must_use]
    pub fn as_str(self) -> &'static str {
        match self {
            Self::Live => "live",
            Self::Replay => "replay",
            Self::Rehearsal => "rehearsal",
        }
    }

    #[must_use]
    pub fn from_word(word: &str) -> Option<Self> {
        [Self::Live, Self::Replay, Self::Rehearsal].into_iter().find(|source| source.as_str() == word)
    }
}

/// Numbers the sessions of one record.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct SessionId(pub i64);

/// What is known of a practice besides its entries.
#[derive(Debug, Clone, PartialEq)]
pub struct KeptHead {
    pub id: SessionId,
    /// Its number in the record where it was led; with `started_at` it names the practice wherever it went.
    pub number: i64,
    pub client: String,
    /// Local time of day at the first sample.
    pub started_at: ZonedDateTime,
    /// When and why it ended; none where it is under way or was interrupted.
    pub end: Option<(ZonedDateTime, String)>,
    pub routine_title: String,
    /// The routine file as prescribed; one copy for all practices that followed it.
    pub routine_text: Arc<str>,
    pub source: Source,
    /// Name and version of the program that led it.
    pub software: String,
    /// It was led on another computer and its results came from there.
    pub received: bool,
    /// Some process leads it at this moment.
    pub under_way: bool,
}

/// An entry as it is kept.
#[derive(Debug, Clone, PartialEq)]
pub struct KeptEntry {
    /// Counts the entries of the whole practice from 1.
    pub number: u32,
    pub entry: Entry,
    /// The journal's line, byte for byte.
    pub line: String,
}

/// A stretch without interruption; its entries' times count from its own first sample.
#[derive(Debug, Clone, PartialEq)]
pub struct KeptPart {
    pub started_at: ZonedDateTime,
    pub entries: Vec<KeptEntry>,
}

/// A practice with all its entries.
#[derive(Debug, Clone, PartialEq)]
pub struct KeptPractice {
    pub head: KeptHead,
    pub parts: Vec<KeptPart>,
}
