//! Lets the sound loop keep entries without waiting for the disk.

use super::error::RecordError;
use super::journal::Journal;
use model::{Entry, SessionId};
use std::sync::mpsc::{Receiver, Sender, channel};
use std::thread::JoinHandle;

/// Appends to a journal, either at once or on a thread of its own.
#[derive(Debug)]
pub struct JournalWriter {
    session: SessionId,
    mode: Mode,
}

#[derive(Debug)]
enum Mode {
    Direct(Box<Journal>),
    Threaded { orders: Option<Sender<Order>>, failures: Receiver<RecordError>, thread: Option<JoinHandle<()>> },
}

enum Order {
    Keep(Box<Entry>),
    /// Answered when everything before it has been kept, with the failures that are over.
    Flush(Sender<Vec<String>>),
}

impl JournalWriter {
    /// For replays: an entry is kept when `append` returns.
    #[must_use]
    pub fn direct(journal: Journal) -> Self {
        Self { session: journal.session(), mode: Mode::Direct(Box::new(journal)) }
    }

    /// For live sessions: `append` returns at once and a thread of its own waits for the disk. Entries are seconds apart, so
    /// the queue stays short; dropping the writer waits until all is kept.
    ///
    /// # Errors
    /// The system gives no thread.
    pub fn threaded(mut journal: Journal) -> Result<Self, std::io::Error> {
        let session = journal.session();
        let (orders, inbox) = channel();
        let (failed, failures) = channel();
        let thread = std::thread::Builder::new().name("journal".to_owned()).spawn(move || {
            for order in inbox {
                match order {
                    Order::Keep(entry) => {
                        if let Err(error) = journal.append(&entry) {
                            // Nobody listens any more when the writer is being dropped; then it is logged alone.
                            tracing::error!(%error, "an entry was not kept");
                            let _ = failed.send(error);
                        }
                    }
                    Order::Flush(done) => {
                        if let Err(error) = journal.settle() {
                            let _ = failed.send(error);
                        }
                        let _ = done.send(journal.overcome());
                    }
                }
            }
        })?;
        Ok(Self { session, mode: Mode::Threaded { orders: Some(orders), failures, thread: Some(thread) } })
    }

    /// The session that is kept.
    #[must_use]
    pub fn session(&self) -> SessionId {
        self.session
    }

    /// Keeps one entry.
    ///
    /// # Errors
    /// Direct: this entry could not be kept. Threaded: an earlier one could not; this one is tried all the same.
    pub fn append(&mut self, entry: &Entry) -> Result<(), RecordError> {
        match &mut self.mode {
            Mode::Direct(journal) => journal.append(entry),
            Mode::Threaded { orders, failures, .. } => {
                let sent = orders.as_ref().is_some_and(|orders| orders.send(Order::Keep(Box::new(entry.clone()))).is_ok());
                match failures.try_recv() {
                    Ok(error) => Err(error),
                    Err(_) if !sent => Err(RecordError::WriterGone),
                    Err(_) => Ok(()),
                }
            }
        }
    }

    /// Waits until everything appended so far is kept. Gives the texts of earlier failures that are over: what they held up has been
    /// kept since.
    ///
    /// # Errors
    /// An entry could not be kept.
    pub fn flush(&mut self) -> Result<Vec<String>, RecordError> {
        let (orders, failures) = match &mut self.mode {
            Mode::Direct(journal) => {
                journal.settle()?;
                return Ok(journal.overcome());
            }
            Mode::Threaded { orders, failures, .. } => (orders, failures),
        };
        let (done, waiting) = channel();
        let sent = orders.as_ref().is_some_and(|orders| orders.send(Order::Flush(done)).is_ok());
        let answer = waiting.recv().ok().filter(|_| sent);
        // Those that are over were sent, too.
        let failure = failures.try_iter().find(|failure| answer.as_ref().is_none_or(|overcome| !overcome.contains(&failure.to_string())));
        match (failure, answer) {
            (Some(error), _) => Err(error),
            (None, None) => Err(RecordError::WriterGone),
            (None, Some(overcome)) => Ok(overcome),
        }
    }
}

impl Drop for JournalWriter {
    fn drop(&mut self) {
        if let Mode::Threaded { orders, thread, .. } = &mut self.mode {
            drop(orders.take());
            if let Some(thread) = thread.take() {
                // A panic of the thread was reported by the panic hook.
                let _ = thread.join();
            }
        }
    }
}

#[cfg(test)]
#[path = "tests/writer.rs"]
mod tests;
