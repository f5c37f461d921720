//! What can go wrong.

/// Why a page cannot be made. Everything but the data is built in, so it is not the user's fault.
#[derive(Debug, thiserror::Error)]
#[error("a drawing cannot be made: {0}")]
pub struct ReportError(pub(crate) String);
