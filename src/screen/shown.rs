//! What stands on the screen, all words resolved.

/// What stands on the screen, all words resolved.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct ShownView {
    /// "Long ah · 1 of 3".
    pub heading: String,
    /// What to do now, or the clinician's cue words.
    pub prompt: String,
    /// The large figure: running hold time or count.
    pub figure: String,
    /// In a class: who leaves this exercise out, and who does it seated, a line each.
    pub aside: String,
    /// What can be said now, few.
    pub can_say: Vec<Offer>,
}

/// Something that can be said now, and on a page be pressed.
#[derive(Debug, Clone, PartialEq, Eq, serde::Serialize)]
pub struct Offer {
    /// What a button sends: "go-on". It stays the same in every language.
    pub name: String,
    /// What stands on it and is said: "go on".
    pub label: String,
}
