//! A practice that is asked for on a page: who asks waits until whoever leads has begun, or has said why not.

use std::sync::{Condvar, Mutex, MutexGuard, PoisonError};
use std::time::Duration;

/// Opening devices and reading a model takes seconds on a small computer.
const ANSWERED_WITHIN: Duration = Duration::from_secs(30);

/// Who is to practise what.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Wish {
    pub client: String,
    /// As it stands in the household file, or a file of the folder of routines.
    pub file: String,
}

/// Why no practice began.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum NotBegun {
    /// One was asked for already.
    Asked,
    /// Whoever leads says why, in words.
    Refused(String),
    /// Nobody answered.
    Unanswered,
}

#[derive(Debug, Default)]
struct Inner {
    /// Somebody takes what is asked for.
    open: bool,
    wish: Option<Wish>,
    /// It was taken, and is not answered yet.
    taken: bool,
    answer: Option<Result<(), String>>,
    /// A practice was begun here since the pages were opened.
    begun: bool,
}

/// Where pages ask, and where whoever leads takes.
#[derive(Debug, Default)]
pub struct Starts {
    inner: Mutex<Inner>,
    changed: Condvar,
}

impl Starts {
    fn lock(&self) -> MutexGuard<'_, Inner> {
        self.inner.lock().unwrap_or_else(PoisonError::into_inner)
    }

    /// From now on what is asked for is taken; without this no page offers a start.
    pub fn open(&self) {
        self.lock().open = true;
    }

    /// Whether a page can offer a start.
    #[must_use]
    pub fn is_open(&self) -> bool {
        self.lock().open
    }

    /// Whether a practice was begun from these pages.
    #[must_use]
    pub fn has_begun(&self) -> bool {
        self.lock().begun
    }

    /// Asks for a practice and waits for the answer.
    ///
    /// # Errors
    /// It does not begin, and why.
    pub fn ask(&self, wish: Wish) -> Result<(), NotBegun> {
        self.ask_within(wish, ANSWERED_WITHIN)
    }

    fn ask_within(&self, wish: Wish, at_most: Duration) -> Result<(), NotBegun> {
        let mut inner = self.lock();
        if inner.wish.is_some() || inner.taken {
            return Err(NotBegun::Asked);
        }
        (inner.wish, inner.answer) = (Some(wish), None);
        self.changed.notify_all();
        let (mut inner, _) =
            self.changed.wait_timeout_while(inner, at_most, |inner| inner.answer.is_none()).unwrap_or_else(PoisonError::into_inner);
        match inner.answer.take() {
            Some(answer) => answer.map_err(NotBegun::Refused),
            None => {
                inner.wish = None;
                Err(NotBegun::Unanswered)
            }
        }
    }

    /// Whether somebody waits for a practice to begin.
    #[must_use]
    pub fn is_asked(&self) -> bool {
        self.lock().wish.is_some()
    }

    /// Takes what is asked for; it must be answered.
    #[must_use]
    pub fn take(&self) -> Option<Wish> {
        let mut inner = self.lock();
        let wish = inner.wish.take();
        inner.taken = wish.is_some();
        wish
    }

    /// As [`Starts::take`], waiting a while for somebody to ask.
    #[must_use]
    pub fn take_within(&self, at_most: Duration) -> Option<Wish> {
        let waited = self.changed.wait_timeout_while(self.lock(), at_most, |inner| inner.wish.is_none());
        drop(waited);
        self.take()
    }

    /// Answers what was taken: it begins, or why it does not.
    pub fn answer(&self, answer: Result<(), String>) {
        let mut inner = self.lock();
        inner.taken = false;
        inner.begun |= answer.is_ok();
        inner.answer = Some(answer);
        self.changed.notify_all();
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn wish() -> Wish {
        Wish { client: "grandpa".into(), file: "evening.toml".into() }
    }

    #[test]
    fn who_asks_is_told_whether_it_begins() {
        for answer in [Ok(()), Err("no microphone".to_owned())] {
            let starts = Starts::default();
            let told = std::thread::scope(|scope| {
                let asking = scope.spawn(|| starts.ask(wish()));
                let taken = starts.take_within(Duration::from_secs(60)).expect("somebody asks");
                assert_eq!(taken, wish());
                assert_eq!(starts.ask(wish()), Err(NotBegun::Asked), "one at a time");
                starts.answer(answer.clone());
                asking.join().expect("answered")
            });
            assert_eq!(told, answer.clone().map_err(NotBegun::Refused));
            assert_eq!(starts.has_begun(), answer.is_ok());
            assert!(!starts.is_asked());
        }
    }

    #[test]
    fn who_is_not_answered_can_ask_again() {
        let starts = Starts::default();
        for _ in 0..2 {
            assert_eq!(starts.ask_within(wish(), Duration::from_millis(1)), Err(NotBegun::Unanswered));
        }
        assert!(starts.take().is_none(), "a wish that was given up is not begun later");
    }
}
