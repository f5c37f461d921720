//! What the client hears, and the truth about what it did.

use session::Line;

/// What the client notices of the tool. `text` is the line as spoken.
#[derive(Debug, Clone, Copy)]
pub enum Heard<'a> {
    /// The first frame of a line left for the loudspeaker.
    Began { line: &'a Line, text: &'a str },
    /// The last frame left.
    Ended { line: &'a Line, text: &'a str },
}

/// What kind of thing the client did.
#[derive(Debug, Clone, Copy, PartialEq, Eq, serde::Serialize, serde::Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Did {
    Nothing,
    Said,
    Mumbled,
    Called,
    Held,
    Glided,
    Syllables,
    Coughed,
    Knocked,
    Breathed,
    Swallowed,
    Waited,
    /// A key was pressed.
    Pressed,
    /// Somebody else spoke, and did not mean the tool.
    Overheard,
    /// Music played.
    Music,
}

/// One thing the client really did: the truth that a journal is compared with.
#[derive(Debug, Clone, PartialEq, serde::Serialize)]
pub struct LogEntry {
    pub kind: Did,
    /// First and last instant, s on the sample clock (first glottal closure to the end of the last cycle for vowels).
    pub onset_s: f64,
    pub offset_s: f64,
    /// Median F0 of a hold or glide, Hz.
    pub f0_hz: Option<f64>,
    /// Syllables in a train.
    pub syllables: Option<u32>,
    pub words: Option<String>,
    /// The message key it answered to.
    pub on: String,
    /// The same once more, out of habit.
    #[serde(skip_serializing_if = "std::ops::Not::not")]
    pub again: bool,
}
