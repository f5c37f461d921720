//! Why a rehearsal cannot go on.

/// Why the rehearsal cannot go on. The text names what is wrong and what to do.
#[derive(Debug, thiserror::Error)]
#[error("{0}")]
pub struct RehearseError(pub String);
