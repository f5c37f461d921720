//! Where the streams of a device come from, and the time that they run in: the sound system, or in tests one that is made up.

use super::AudioError;
use super::callback::Shared;
use super::host::Direction;
use super::stream::Running;
use std::sync::Arc;
use std::sync::atomic::Ordering::Relaxed;
use std::sync::mpsc::{Receiver, TryRecvError, channel};
use std::time::{Duration, Instant};

/// A running stream: our end of its ring (frames), and what its callbacks tell.
pub(super) struct Stream<Ring> {
    pub rate_hz: u32,
    pub channels: u16,
    /// The exact name of the device, where the sound system tells it.
    pub device: Option<String>,
    pub ring: Ring,
    pub shared: Arc<Shared>,
    /// Keeps it running; none where no sound system is behind it.
    pub _running: Option<Running>,
}

impl<Ring> Stream<Ring> {
    /// Smallest and largest number of frames that the device gave or took at once.
    pub fn callback_frames(&self) -> (u32, u32) {
        (self.shared.smallest.load(Relaxed), self.shared.largest.load(Relaxed))
    }
}

/// How long a device may be away that is not waited for without end.
pub(super) const PATIENCE: Duration = Duration::from_secs(5);

/// It was waited for in vain; `why` is what came of the last try.
pub(super) fn stayed_away(direction: Direction, name: &str, why: Option<&AudioError>) -> AudioError {
    let why = why.map_or_else(String::new, |why| format!(": {why}"));
    let noun = direction.noun();
    AudioError::Device(format!("the {noun} \"{name}\" went away and did not come back within {} s{why}", PATIENCE.as_secs()))
}

/// Whether a stream reports so many faults that it will not recover by itself.
pub(super) struct Storm {
    direction: Direction,
    from: Duration,
    base: u64,
}

impl Storm {
    /// So many faults within a second.
    const FAULTS: u64 = 50;

    pub fn new(direction: Direction, now: Duration) -> Self {
        Self { direction, from: now, base: 0 }
    }

    /// Another stream begins, whose faults are counted from none.
    pub fn begin_anew(&mut self) {
        self.base = 0;
    }

    pub fn rages(&mut self, shared: &Shared, now: Duration) -> bool {
        let faults = shared.errors.load(Relaxed) + shared.xruns.load(Relaxed);
        let fresh = faults.saturating_sub(self.base);
        if now - self.from > Duration::from_secs(1) {
            if fresh > 0 {
                tracing::warn!(faults = fresh, "the {} reported faults in the last second", self.direction.noun());
            }
            (self.from, self.base) = (now, faults);
        }
        fresh > Self::FAULTS
    }
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
