//! Keeps the facts of a session as they come, in a new session's journal or in the interrupted one's.

use std::path::PathBuf;
use std::sync::{Arc, Mutex, PoisonError};

use jiff::ZonedDateTime;

use crate::observe::Observer;
use record::{Journal, JournalWriter, NewSession, RecordError, SessionId, Source, Store, Unfinished};
use session::Entry;

/// What a journal needs to know of a session.
pub struct SessionFacts {
    pub client: String,
    pub routine_title: String,
    pub routine_text: String,
    pub source: Source,
    /// Of a baseline or a re-test: what is led. None: a practice.
    pub protocol: Option<String>,
    pub started_at: ZonedDateTime,
    /// The JSON Lines file, where one is asked for.
    pub lines: Option<PathBuf>,
}

/// What is kept for the summary and for the end's exit code.
#[derive(Default)]
pub struct Kept {
    pub entries: Vec<Entry>,
    pub failures: Vec<String>,
    /// The session that is written; none as long as the client has not chosen which.
    pub session: Option<SessionId>,
    /// What the screen says while the sound of the practice is kept; none where it is not.
    pub sound_until: Option<String>,
    /// What else the person at the machine should know at the end.
    pub notes: Vec<String>,
}

/// Shared between the sound thread, which keeps, and whoever sums up afterwards.
pub type SharedKept = Arc<Mutex<Kept>>;

/// Locks what was kept; a panic elsewhere does not lose it.
pub fn lock(kept: &SharedKept) -> std::sync::MutexGuard<'_, Kept> {
    kept.lock().unwrap_or_else(PoisonError::into_inner)
}

enum State {
    /// Until the client has chosen, nobody knows whose journal it is.
    Undecided {
        store: Box<Store>,
        unfinished: Box<Unfinished>,
        waiting: Vec<Entry>,
    },
    Writing(JournalWriter),
    Broken,
}

/// An observer that writes the journal.
pub struct JournalKeeper {
    facts: SessionFacts,
    state: State,
    kept: SharedKept,
    /// Failures that nobody has seen yet.
    untold: Vec<String>,
}

impl JournalKeeper {
    /// Begins the journal at once, or, where an interrupted session can be gone on with, after the client's choice.
    ///
    /// # Errors
    /// The record or the JSON Lines file cannot be written.
    pub fn new(store: Store, facts: SessionFacts, unfinished: Option<Unfinished>) -> Result<(Self, SharedKept), RecordError> {
        let kept = SharedKept::default();
        let state = match unfinished {
            Some(unfinished) => State::Undecided { store: Box::new(store), unfinished: Box::new(unfinished), waiting: Vec::new() },
            None => {
                let writer = begin(store, &facts)?;
                lock(&kept).session = Some(writer.session());
                State::Writing(writer)
            }
        };
        Ok((Self { facts, state, kept: kept.clone(), untold: Vec::new() }, kept))
    }

    fn write(&mut self, entry: &Entry) {
        if let State::Writing(writer) = &mut self.state
            && let Err(error) = writer.append(entry)
        {
            self.failed(&error.to_string());
        }
    }

    /// A failing disk ends nothing: the session is led on, and the failure is told at once, for somebody may make room, and at the end.
    fn failed(&mut self, why: &str) {
        let mut kept = lock(&self.kept);
        if kept.failures.iter().all(|failure| failure != why) {
            kept.failures.push(why.to_owned());
            self.untold.push(format!("{why}. What is measured meanwhile is written as soon as it can be."));
        }
    }
}

impl Observer for JournalKeeper {
    fn kept(&mut self, entry: &Entry) {
        lock(&self.kept).entries.push(entry.clone());
        if let State::Undecided { waiting, .. } = &mut self.state {
            waiting.push(entry.clone());
            return;
        }
        self.write(entry);
    }

    fn notice(&mut self) -> Option<String> {
        self.untold.pop()
    }

    fn resumed(&mut self, go_on: bool) {
        let State::Undecided { mut store, unfinished, waiting } = std::mem::replace(&mut self.state, State::Broken) else { return };
        let begun = if go_on {
            lock(&self.kept).entries.splice(0..0, unfinished.entries.iter().cloned());
            Journal::resume(*store, &unfinished, &self.facts.started_at, self.facts.lines.as_deref())
                .and_then(|journal| writer(journal, self.facts.source))
        } else {
            store.abandon(unfinished.session, &self.facts.started_at).and_then(|()| begin(*store, &self.facts))
        };
        match begun {
            Ok(writer) => {
                lock(&self.kept).session = Some(writer.session());
                self.state = State::Writing(writer);
            }
            Err(error) => self.failed(&error.to_string()),
        }
        for entry in waiting {
            self.write(&entry);
        }
    }
}

impl Drop for JournalKeeper {
    /// A session that ended before the client chose is kept as a session of its own.
    fn drop(&mut self) {
        if let State::Undecided { waiting, .. } = &self.state
            && !waiting.is_empty()
        {
            self.resumed(false);
        }
        if let State::Writing(writer) = &mut self.state {
            match writer.flush() {
                // A disk that was full for a while is no gap.
                Ok(overcome) => lock(&self.kept).failures.retain(|failure| !overcome.contains(failure)),
                Err(error) => self.failed(&error.to_string()),
            }
        }
    }
}

fn begin(store: Store, facts: &SessionFacts) -> Result<JournalWriter, RecordError> {
    let new = NewSession {
        protocol: facts.protocol.as_deref(),
        client: &facts.client,
        routine_title: &facts.routine_title,
        routine_text: &facts.routine_text,
        source: facts.source,
        software: concat!("tidecount ", env!("CARGO_PKG_VERSION")),
        started_at: &facts.started_at,
    };
    writer(Journal::begin(store, &new, facts.lines.as_deref())?, facts.source)
}

/// A replay waits for the disk, so that what it wrote is there when it ends; a live session does not.
fn writer(journal: Journal, source: Source) -> Result<JournalWriter, RecordError> {
    match source {
        Source::Live => JournalWriter::threaded(journal).map_err(|_| RecordError::WriterGone),
        Source::Replay | Source::Rehearsal => Ok(JournalWriter::direct(journal)),
    }
}
