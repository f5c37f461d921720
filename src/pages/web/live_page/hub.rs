//! The newest state, and who waits for news of it.

use std::collections::{BTreeMap, VecDeque};
use std::fmt::Write;
use std::sync::{Arc, Mutex, MutexGuard, PoisonError};
use std::time::{Duration, Instant, SystemTime, UNIX_EPOCH};

use live::observe::Asked;
use serde::Serialize;
use tokio::sync::watch;

use super::state::{Offers, Section};

/// Presses that were not taken yet; who presses more often than they are taken is refused.
const MOST_ASKED: usize = 16;
/// Pages that follow at one time.
const MOST_READERS: usize = 64;
/// What is handed to a connection leaves it within this.
const LEAVES: Duration = Duration::from_millis(60);

/// Why a page does not get what it asks for.
#[derive(Debug, Clone, Copy, PartialEq, Eq, thiserror::Error)]
pub enum Refused {
    #[error("You can't say that right now. Choose one of the commands shown.")]
    NotNow,
    #[error("That was too much at once. Press again in a moment.")]
    TooMuch,
}

/// Shared by the one who writes and all who read. Writing never waits for a reader.
#[derive(Debug, Clone)]
pub struct LiveHub(Arc<Shared>);

#[derive(Debug)]
struct Shared {
    inner: Mutex<Inner>,
    wake: watch::Sender<u64>,
}

#[derive(Debug)]
struct Inner {
    /// Counts changes.
    seq: u64,
    /// When the newest change was made, ms since 1970.
    changed_ms: f64,
    kept: [Kept; Section::ALL.len()],
    offers: Offers,
    asked: VecDeque<Asked>,
    /// How far each reader has come.
    readers: BTreeMap<u64, u64>,
    next_reader: u64,
}

#[derive(Debug, Clone)]
struct Kept {
    json: Arc<str>,
    seq: u64,
}

impl Default for LiveHub {
    fn default() -> Self {
        Self::new()
    }
}

impl LiveHub {
    /// A hub with nothing on its page.
    #[must_use]
    pub fn new() -> Self {
        let inner = Inner {
            seq: 0,
            changed_ms: now_ms(),
            kept: std::array::from_fn(|_| Kept { json: "null".into(), seq: 0 }),
            offers: Offers::default(),
            asked: VecDeque::new(),
            readers: BTreeMap::new(),
            next_reader: 0,
        };
        Self(Arc::new(Shared { inner: Mutex::new(inner), wake: watch::Sender::new(0) }))
    }

    fn lock(&self) -> MutexGuard<'_, Inner> {
        self.0.inner.lock().unwrap_or_else(PoisonError::into_inner)
    }

    /// Puts a part of the page down. What is there already changes nothing.
    pub fn set(&self, section: Section, value: &impl Serialize) {
        let Ok(json) = serde_json::to_string(value) else { return };
        let seq = {
            let mut inner = self.lock();
            let seq = inner.seq + 1;
            let Some(kept) = inner.kept.get_mut(section.index()) else { return };
            if *kept.json == *json {
                return;
            }
            *kept = Kept { json: json.into(), seq };
            inner.seq = seq;
            inner.changed_ms = now_ms();
            seq
        };
        self.0.wake.send_replace(seq);
    }

    /// What may be said from now on; presses from before are dropped where it changes.
    pub fn offer(&self, offers: &Offers) {
        {
            let mut inner = self.lock();
            if inner.offers != *offers {
                inner.offers = offers.clone();
            }
        }
        self.set(Section::Offers, offers);
    }

    /// A page asks for something.
    ///
    /// # Errors
    /// It is nothing that can be said now, or too much was asked for.
    pub fn ask(&self, asked: Asked) -> Result<(), Refused> {
        let mut inner = self.lock();
        let offers = &inner.offers;
        let may = match &asked {
            Asked::Command(name) => [&offers.now, &offers.more, &offers.always].into_iter().flatten().any(|offer| offer.name == *name),
            Asked::Key(name) => offers.keys.contains(name),
        };
        if !may {
            return Err(Refused::NotNow);
        }
        if inner.asked.len() >= MOST_ASKED {
            return Err(Refused::TooMuch);
        }
        inner.asked.push_back(asked);
        Ok(())
    }

    /// What was asked for next.
    #[must_use]
    pub fn take_asked(&self) -> Option<Asked> {
        self.lock().asked.pop_front()
    }

    /// Another reader; none where too many follow already.
    #[must_use]
    pub fn reader(&self) -> Option<Reader> {
        let mut inner = self.lock();
        if inner.readers.len() >= MOST_READERS {
            return None;
        }
        let id = inner.next_reader;
        inner.next_reader += 1;
        inner.readers.insert(id, 0);
        drop(inner);
        Some(Reader { hub: self.clone(), id, sent: None, wake: self.0.wake.subscribe() })
    }

    /// How many pages follow.
    #[must_use]
    pub fn readers(&self) -> usize {
        self.lock().readers.len()
    }

    /// The whole state as JSON.
    #[must_use]
    pub fn whole(&self) -> String {
        self.lock().since(None)
    }

    /// Waits until every reader has the newest, at most so long. For the end alone: nothing else may wait for a reader.
    pub fn settle(&self, at_most: Duration) {
        let began = Instant::now();
        let behind = |inner: &Inner| inner.readers.values().any(|sent| *sent < inner.seq);
        while behind(&self.lock()) && began.elapsed() < at_most {
            std::thread::sleep(Duration::from_millis(5));
        }
        if self.readers() > 0 {
            std::thread::sleep(LEAVES);
        }
    }
}

impl Inner {
    /// Everything that changed after `sent`; without it the whole state.
    fn since(&self, sent: Option<u64>) -> String {
        let mut text = format!("{{\"seq\":{},\"ms\":{:.1},\"whole\":{}", self.seq, self.changed_ms, sent.is_none());
        for (section, kept) in Section::ALL.iter().zip(&self.kept) {
            if sent.is_none_or(|sent| kept.seq > sent) {
                let _ = write!(text, ",\"{}\":{}", section.name(), kept.json);
            }
        }
        text.push('}');
        text
    }
}

/// One page's place in the stream of changes.
#[derive(Debug)]
pub struct Reader {
    hub: LiveHub,
    id: u64,
    sent: Option<u64>,
    wake: watch::Receiver<u64>,
}

impl Reader {
    /// The whole state at first, later what has changed since the last call, all of it at once: a slow reader leaves out what it was
    /// too slow for and never what stands there now.
    pub async fn next(&mut self) -> String {
        loop {
            self.wake.borrow_and_update();
            if let Some(text) = self.news() {
                return text;
            }
            if self.wake.changed().await.is_err() {
                std::future::pending::<()>().await;
            }
        }
    }

    fn news(&mut self) -> Option<String> {
        let mut inner = self.hub.lock();
        if self.sent == Some(inner.seq) {
            return None;
        }
        let text = inner.since(self.sent);
        let seq = inner.seq;
        inner.readers.insert(self.id, seq);
        self.sent = Some(seq);
        Some(text)
    }
}

impl Drop for Reader {
    fn drop(&mut self) {
        self.hub.lock().readers.remove(&self.id);
    }
}

/// The wall clock, ms since 1970: pages of this computer read the same.
fn now_ms() -> f64 {
    SystemTime::now().duration_since(UNIX_EPOCH).map_or(0.0, |since| since.as_secs_f64() * 1000.0)
}

#[cfg(test)]
#[path = "tests/hub.rs"]
mod tests;
