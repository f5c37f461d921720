//! What is deleted, or left, beside the record when a client is forgotten.

/// What was deleted beside the record.
#[derive(Debug, Default, PartialEq, Eq)]
pub struct Beside {
    /// Folders and files that are gone.
    pub gone: Vec<String>,
    /// What names the client still, and what to do.
    pub left: Vec<String>,
}
