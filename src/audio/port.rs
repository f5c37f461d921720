//! Where the streams of a device come from, and the time that they run in: the sound system, or in tests one that is made up.

use super::AudioError;
use super::callback::Shared;
use super::stream::Running;
use std::sync::Arc;
use std::sync::mpsc::{Receiver, TryRecvError, channel};
use std::time::{Duration, Instant};

/// A running stream: our end of its ring (frames), and what its callbacks tell.
pub(super) struct Stream<Ring> {
    pub rate_hz: u32,
    pub channels: u16,
    pub ring: Ring,
    pub shared: Arc<Shared>,
    /// Keeps it running; none where no sound system is behind it.
    pub _running: Option<Running>,
}

/// One device, by its name.
pub(super) trait Port: Send {
    type Ring: Send;

    /// Time since any fixed instant; it never goes back.
    fn now(&self) -> Duration;

    fn sleep(&mut self, time: Duration);

    /// Begins to look for the device at this rate, without waiting for it. Nothing where it is being looked for already.
    fn seek(&mut self, rate_hz: u32);

    /// What came of [`Port::seek`], once.
    fn found(&mut self) -> Option<Result<Stream<Self::Ring>, AudioError>>;
}

type Start<Ring> = fn(&str, Option<u32>) -> Result<Stream<Ring>, AudioError>;

/// A device of the sound system. A server that does not answer keeps a thread of its own waiting, never the sound thread.
pub(super) struct SystemPort<Ring> {
    name: String,
    start: Start<Ring>,
    began: Instant,
    seeking: Option<Receiver<Result<Stream<Ring>, AudioError>>>,
}

impl<Ring> SystemPort<Ring> {
    /// `start` opens the device of this name, at a rate in Hz if one is given.
    pub fn new(name: &str, start: Start<Ring>) -> Self {
        Self { name: name.to_owned(), start, began: Instant::now(), seeking: None }
    }
}

impl<Ring: Send + 'static> Port for SystemPort<Ring> {
    type Ring = Ring;

    fn now(&self) -> Duration {
        self.began.elapsed()
    }

    fn sleep(&mut self, time: Duration) {
        std::thread::sleep(time);
    }

    fn seek(&mut self, rate_hz: u32) {
        if self.seeking.is_some() {
            return;
        }
        let (tell, told) = channel();
        let (name, start) = (self.name.clone(), self.start);
        let seeker = std::thread::Builder::new().name("device".to_owned()).spawn(move || {
            // Whoever asked may have gone; then the stream goes, too.
            let _ = tell.send(start(&name, Some(rate_hz)));
        });
        // Without a thread it is tried again later.
        self.seeking = seeker.is_ok().then_some(told);
    }

    fn found(&mut self) -> Option<Result<Stream<Ring>, AudioError>> {
        let found = match self.seeking.as_ref()?.try_recv() {
            Ok(found) => Some(found),
            Err(TryRecvError::Empty) => return None,
            // A panic of the thread was reported by the panic hook.
            Err(TryRecvError::Disconnected) => None,
        };
        self.seeking = None;
        found
    }
}
