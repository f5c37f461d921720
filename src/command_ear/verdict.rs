//! What came of a phrase that was considered for a command.

use serde::{Deserialize, Serialize};

/// What came of a phrase that was considered.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Verdict {
    /// It counts.
    Taken,
    /// Not sure enough to act on a command that costs something: the session asks back.
    Doubtful,
    /// Not sure enough.
    Unsure,
    /// Not sure enough in a short pause, so more was listened for.
    NotYet,
    /// A longer phrase begins with it, so more was listened for.
    WaitsForMore,
    /// Its words are no phrase that is listened for, or others stand between them.
    NoPhrase,
    /// Other speech is too close to it.
    OtherSpeech,
    /// Drawn out longer than anybody says it.
    TooLong,
    /// It hardly stands out from the room.
    TooSoft,
    /// Found in the end of a long utterance, and not in all of it.
    NotInTheWhole,
    /// The voice that was enrolled speaks against it.
    EnrolledVoice,
}
