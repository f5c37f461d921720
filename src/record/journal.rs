//! One session's journal: the SQLite record and, where asked for, a JSON Lines file.

use super::error::RecordError;
use super::json_lines::JsonLines;
use super::resume::Unfinished;
use super::store::{NewSession, Store};
use super::waiting::{self, Waiting};
use jiff::ZonedDateTime;
use model::{Entry, SessionId};
use std::collections::VecDeque;
use std::path::Path;

/// Keeps the entries of one session as they happen.
#[derive(Debug)]
pub struct Journal {
    store: Store,
    session: SessionId,
    lines: Option<JsonLines>,
    /// Entries that the database could not take yet, in order: a full disk may get room while the practice goes on.
    waiting: VecDeque<Entry>,
    /// Where those are kept meanwhile; none where no room could be set aside.
    aside: Option<Waiting>,
    /// Why, each once.
    troubles: Vec<String>,
}

impl Journal {
    /// Begins a new session, with a JSON Lines file at `lines` if one is named.
    ///
    /// # Errors
    /// The file already holds another practice (then no session is begun), or either cannot be written.
    pub fn begin(mut store: Store, new: &NewSession<'_>, lines: Option<&Path>) -> Result<Self, RecordError> {
        let lines = lines.map(JsonLines::create).transpose()?;
        let session = store.begin(new)?;
        Ok(Self::of(store, session, lines))
    }

    fn of(store: Store, session: SessionId, lines: Option<JsonLines>) -> Self {
        let aside = Waiting::set_aside(&store);
        if let Err(error) = &aside {
            tracing::warn!(%error, "no room is set aside for entries that a full disk cannot take");
        }
        Self { store, session, lines, waiting: VecDeque::new(), aside: aside.ok(), troubles: Vec::new() }
    }

    /// Goes on with an interrupted session.
    ///
    /// # Errors
    /// The session has ended or is led by another process, or the file holds another practice.
    pub fn resume(mut store: Store, from: &Unfinished, now: &ZonedDateTime, lines: Option<&Path>) -> Result<Self, RecordError> {
        let lines = lines.map(|path| JsonLines::resume(path, &from.entries)).transpose()?;
        store.resume(from.session, now)?;
        Ok(Self::of(store, from.session, lines))
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

    /// Keeps one entry. Where one of the two fails, the other still gets it; what the database could not take is tried again with the
    /// next entry.
    ///
    /// # Errors
    /// The first failure.
    pub fn append(&mut self, entry: &Entry) -> Result<(), RecordError> {
        self.waiting.push_back(entry.clone());
        let kept = self.settle();
        let written = self.lines.as_mut().map_or(Ok(()), |lines| lines.append(entry));
        kept.and(written)
    }

    /// Tries again what the database could not take. What it still cannot is kept beside it, in room set aside for that: the next start
    /// takes it in, also where the disk has room only then.
    ///
    /// # Errors
    /// It still cannot.
    pub fn settle(&mut self) -> Result<(), RecordError> {
        let late = !self.waiting.is_empty() && !self.troubles.is_empty();
        while let Some(entry) = self.waiting.pop_front() {
            if let Err(error) = self.kept(&entry) {
                if error.may_pass() {
                    self.waiting.push_front(entry);
                    self.keep_aside();
                    let text = error.to_string();
                    if !self.troubles.contains(&text) {
                        self.troubles.push(text);
                    }
                }
                return Err(error);
            }
        }
        if let Some(aside) = self.aside.as_mut().filter(|_| late)
            && let Err(error) = aside.clear(self.session.0)
        {
            // No harm: what is in the record already is not taken in twice.
            tracing::warn!(%error, "entries that were kept beside the record are there still");
        }
        Ok(())
    }

    /// A full disk loses its spoken lines before it loses an entry.
    fn kept(&mut self, entry: &Entry) -> Result<(), RecordError> {
        match self.store.append(self.session, entry) {
            Err(RecordError::DiskFull { .. }) if waiting::make_room(&self.store.folder) => self.store.append(self.session, entry),
            kept => kept,
        }
    }

    fn keep_aside(&mut self) {
        let Some(aside) = &mut self.aside else { return };
        if let Err(error) = aside.keep(&self.store, self.session.0, self.waiting.iter()) {
            // They are in memory still.
            tracing::error!(%error, "entries that the record could not take were not kept beside it either");
        }
    }

    /// Failures that are over: every entry is in the database after all.
    #[must_use]
    pub fn overcome(&self) -> Vec<String> {
        if self.waiting.is_empty() { self.troubles.clone() } else { Vec::new() }
    }
}

#[cfg(test)]
#[path = "tests/journal.rs"]
mod tests;
