//! One session's journal: the SQLite record and, where asked for, a JSON Lines file.

use super::{JsonLines, NewSession, RecordError, SessionId, Store, Unfinished};
use crate::session::Entry;
use jiff::ZonedDateTime;
use std::path::Path;

/// Keeps the entries of one session as they happen.
#[derive(Debug)]
pub struct Journal {
    store: Store,
    session: SessionId,
    lines: Option<JsonLines>,
}

impl Journal {
    /// Begins a new session, with a JSON Lines file at `lines` if one is named.
    ///
    /// # Errors
    /// The file already holds another practice (then no session is begun), or either cannot be written.
    pub fn begin(mut store: Store, new: &NewSession<'_>, lines: Option<&Path>) -> Result<Self, RecordError> {
        let lines = lines.map(JsonLines::create).transpose()?;
        let session = store.begin(new)?;
        Ok(Self { store, session, lines })
    }

    /// Goes on with an interrupted session.
    ///
    /// # Errors
    /// The session has ended or is led by another process, or the file holds another practice.
    pub fn resume(mut store: Store, from: &Unfinished, now: &ZonedDateTime, lines: Option<&Path>) -> Result<Self, RecordError> {
        let lines = lines.map(|path| JsonLines::resume(path, &from.entries)).transpose()?;
        store.resume(from.session, now)?;
        Ok(Self { store, session: from.session, lines })
    }

    /// The session that is kept.
    #[must_use]
    pub fn session(&self) -> SessionId {
        self.session
    }

    /// The record behind it.
    #[must_use]
    pub fn store(&self) -> &Store {
        &self.store
    }

    /// Keeps one entry. Where one of the two fails, the other still gets it.
    ///
    /// # Errors
    /// The first failure.
    pub fn append(&mut self, entry: &Entry) -> Result<(), RecordError> {
        let kept = self.store.append(self.session, entry);
        let written = self.lines.as_mut().map_or(Ok(()), |lines| lines.append(entry));
        kept.and(written)
    }
}

#[cfg(test)]
#[path = "tests/journal.rs"]
mod tests;
