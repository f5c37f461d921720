//! How far the source of a number was seen.

use std::fmt;

use serde::Deserialize;

/// How well a dose is known.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Deserialize)]
pub enum DoseStatus {
    /// The value stood in the source, nearly always its abstract or a table.
    #[serde(rename = "seen")]
    Seen,
    /// Seen on a page that quotes another.
    #[serde(rename = "seen-2nd")]
    SeenSecondHand,
    /// Recalled without a text at hand.
    #[serde(rename = "memory")]
    FromMemory,
    #[serde(rename = "common practice, no source")]
    CommonPractice,
}

impl fmt::Display for DoseStatus {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            Self::Seen => "seen",
            Self::SeenSecondHand => "seen at second hand",
            Self::FromMemory => "from memory",
            Self::CommonPractice => "common practice, no source",
        })
    }
}
