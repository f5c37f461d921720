//! Asks the voice for lines: on a thread of its own when live, at once when not.

use super::{LineCache, Pcm, SpeakError, Voice};
use session::LineId;
use std::collections::VecDeque;
use std::sync::mpsc::{Receiver, Sender, TryRecvError, channel};

/// A line that was asked for, ready or failed.
#[derive(Debug)]
pub struct Rendered {
    pub id: LineId,
    pub line: Result<Pcm, SpeakError>,
}

enum Job {
    Line { id: LineId, text: String },
    Ahead(Vec<String>),
    Rate(f64),
}

/// Turns texts into lines at the loudspeaker's rate, in the order in which they are asked for.
///
/// Every line asked for comes back once from [`Renderer::poll`], or its number from [`Renderer::drop_pending`].
pub struct Renderer {
    how: How,
    /// Asked for and not given back yet, in order.
    pending: VecDeque<LineId>,
    /// How many of the next results belong to lines that were dropped.
    stale: usize,
}

enum How {
    Live { jobs: Sender<Job>, done: Receiver<Rendered> },
    Offline { voice: Box<dyn Voice>, cache: LineCache, done: VecDeque<Rendered> },
}

impl Renderer {
    /// Renders on a thread, so that a slow voice holds up nothing. The thread ends when the renderer is dropped.
    ///
    /// # Errors
    /// The thread cannot be started.
    pub fn live(voice: Box<dyn Voice>, cache: LineCache) -> Result<Self, SpeakError> {
        let (jobs, todo) = channel();
        let (give, done) = channel();
        std::thread::Builder::new()
            .name("voice".into())
            .spawn(move || work(voice, cache, &todo, &give))
            .map_err(|why| SpeakError(format!("the thread of the voice cannot be started: {why}")))?;
        Ok(Self { how: How::Live { jobs, done }, pending: VecDeque::new(), stale: 0 })
    }

    /// Renders at once, for runs that are faster than the clock: the result is there with the next poll, always.
    #[must_use]
    pub fn offline(voice: Box<dyn Voice>, cache: LineCache) -> Self {
        Self { how: How::Offline { voice, cache, done: VecDeque::new() }, pending: VecDeque::new(), stale: 0 }
    }

    /// Asks for a line.
    pub fn request(&mut self, id: LineId, text: &str) {
        self.pending.push_back(id);
        match &mut self.how {
            // If the thread is gone, `poll` finds that out and says so.
            How::Live { jobs, .. } => drop(jobs.send(Job::Line { id, text: text.into() })),
            How::Offline { voice, cache, done } => {
                let line = cache.line(voice.as_mut(), text);
                done.push_back(Rendered { id, line });
            }
        }
    }

    /// Renders texts ahead of their use; lines that are asked for meanwhile come first. A fault shows when the line is asked for.
    pub fn prerender(&mut self, texts: Vec<String>) {
        match &mut self.how {
            How::Live { jobs, .. } => drop(jobs.send(Job::Ahead(texts))),
            How::Offline { voice, cache, .. } => drop(cache.prerender(voice.as_mut(), texts.iter().map(String::as_str))),
        }
    }

    /// The voice speaks slower (above 1) or faster (below 1) from the next line asked for on.
    pub fn change_rate(&mut self, factor: f64) {
        match &mut self.how {
            How::Live { jobs, .. } => drop(jobs.send(Job::Rate(factor))),
            How::Offline { voice, .. } => voice.change_rate(factor),
        }
    }

    /// The next line that is ready, never waiting.
    pub fn poll(&mut self) -> Option<Rendered> {
        loop {
            let rendered = match &mut self.how {
                How::Offline { done, .. } => done.pop_front(),
                How::Live { done, .. } => match done.try_recv() {
                    Ok(rendered) => Some(rendered),
                    Err(TryRecvError::Empty) => None,
                    Err(TryRecvError::Disconnected) => {
                        self.stale = 0;
                        self.pending.front().map(|&id| Rendered {
                            id,
                            line: Err(SpeakError("the voice's thread has ended; start the session again".into())),
                        })
                    }
                },
            }?;
            if self.stale > 0 {
                self.stale -= 1;
                continue;
            }
            self.pending.pop_front();
            return Some(rendered);
        }
    }

    /// Forgets every line that is not given back yet (after a hush); they will not come any more.
    pub fn drop_pending(&mut self) -> Vec<LineId> {
        self.stale += self.pending.len();
        self.pending.drain(..).collect()
    }

    /// How many lines are asked for and not given back yet.
    #[must_use]
    pub fn pending(&self) -> usize {
        self.pending.len()
    }
}

/// Lines asked for first, in order; lines ahead one at a time between them.
fn work(mut voice: Box<dyn Voice>, mut cache: LineCache, todo: &Receiver<Job>, give: &Sender<Rendered>) {
    let mut ahead: VecDeque<String> = VecDeque::new();
    loop {
        let job = if ahead.is_empty() {
            match todo.recv() {
                Ok(job) => Some(job),
                Err(_) => return,
            }
        } else {
            match todo.try_recv() {
                Ok(job) => Some(job),
                Err(TryRecvError::Empty) => None,
                Err(TryRecvError::Disconnected) => return,
            }
        };
        match job {
            Some(Job::Line { id, text }) => {
                let line = cache.line(voice.as_mut(), &text);
                if give.send(Rendered { id, line }).is_err() {
                    return;
                }
            }
            Some(Job::Ahead(texts)) => ahead.extend(texts),
            Some(Job::Rate(factor)) => voice.change_rate(factor),
            None => {
                if let Some(text) = ahead.pop_front()
                    && let Err(why) = cache.line(voice.as_mut(), &text)
                {
                    tracing::warn!("a line cannot be rendered ahead: {why}");
                }
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use std::time::Duration;

    /// Says each letter for 10 ms; panics or fails where asked to.
    struct Letters;

    impl Voice for Letters {
        fn id(&self) -> String {
            "letters".into()
        }
        fn render(&mut self, text: &str) -> Result<Pcm, SpeakError> {
            assert!(text != "die", "asked to");
            if text == "fail" {
                return Err(SpeakError("cannot say that".into()));
            }
            Ok(Pcm { rate_hz: 8000, samples: vec![0.1; 80 * text.len()].into() })
        }
    }

    fn wait(renderer: &mut Renderer) -> Rendered {
        for _ in 0..2000 {
            if let Some(rendered) = renderer.poll() {
                return rendered;
            }
            std::thread::sleep(Duration::from_millis(5));
        }
        panic!("nothing came");
    }

    fn both() -> [Renderer; 2] {
        let cache = || LineCache::new(None, 8000);
        [Renderer::live(Box::new(Letters), cache()).unwrap(), Renderer::offline(Box::new(Letters), cache())]
    }

    #[test]
    fn lines_come_back_in_order_and_faults_with_them() {
        for mut renderer in both() {
            renderer.prerender(vec!["ahead".into(), "fail".into()]);
            for (id, text) in [(1, "one"), (2, "fail"), (3, "three")] {
                renderer.request(LineId(id), text);
            }
            let first = wait(&mut renderer);
            assert_eq!((first.id, first.line.unwrap().samples.len()), (LineId(1), 240));
            let second = wait(&mut renderer);
            assert_eq!((second.id, second.line.unwrap_err().0.as_str()), (LineId(2), "cannot say that"));
            assert_eq!(wait(&mut renderer).id, LineId(3));
            assert_eq!(renderer.pending(), 0);
            assert!(renderer.poll().is_none());
        }
    }

    #[test]
    fn dropped_lines_never_come() {
        for mut renderer in both() {
            renderer.request(LineId(1), "one");
            renderer.request(LineId(2), "two");
            assert_eq!(renderer.drop_pending(), [LineId(1), LineId(2)]);
            renderer.request(LineId(3), "three");
            assert_eq!(wait(&mut renderer).id, LineId(3));
            assert!(renderer.poll().is_none());
        }
    }

    #[test]
    fn a_thread_that_died_fails_every_line() {
        let mut renderer = Renderer::live(Box::new(Letters), LineCache::new(None, 8000)).unwrap();
        renderer.request(LineId(1), "die");
        renderer.request(LineId(2), "two");
        for id in [1, 2] {
            let rendered = wait(&mut renderer);
            assert_eq!(rendered.id, LineId(id));
            assert!(rendered.line.is_err());
        }
        assert!(renderer.poll().is_none());
    }
}
