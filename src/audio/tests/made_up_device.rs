//! A device in simulated time that goes away, stands still or sleeps when it is told to.

use crate::AudioError;
use crate::callback::Shared;
use crate::port::{Port, Stream};
use rand::rngs::StdRng;
use rand::{Rng, SeedableRng};
use std::sync::atomic::Ordering::{Relaxed, SeqCst};
use std::sync::{Arc, Mutex, MutexGuard};
use std::time::Duration;

pub const RATE_HZ: u32 = 16_000;
/// Frames that the device delivers or takes at once: 20 ms.
const PIECE: u64 = RATE_HZ as u64 / 50;

#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Kind {
    /// Unplugged, and the sound system says so.
    Pulled,
    /// The same, and nobody says anything.
    PulledInSilence,
    /// It is another one at once: renamed, or with another format.
    Changed,
    /// The sound server ends and comes back.
    ServerRestarts,
    /// Neither we nor the device run.
    Suspended,
}

/// A fault that begins at `at` and lasts `length`.
#[derive(Debug, Clone, Copy)]
pub struct Fault {
    pub at: Duration,
    pub length: Duration,
    pub kind: Kind,
}

/// So many faults of every kind, one every few seconds, each time the same for the same seed.
pub fn faults(seed: u64, count: usize) -> Vec<Fault> {
    let mut random = StdRng::seed_from_u64(seed);
    let mut at = Duration::from_secs(2);
    (0..count)
        .map(|_| {
            let kind = match random.random_range(0..5) {
                0 => Kind::Pulled,
                1 => Kind::PulledInSilence,
                2 => Kind::Changed,
                3 => Kind::ServerRestarts,
                _ => Kind::Suspended,
            };
            let ms = match kind {
                Kind::Changed => 0,
                Kind::ServerRestarts => random.random_range(100..2_000),
                Kind::Suspended => random.random_range(300..20_000),
                // Some for far longer than the patience of whoever cannot wait.
                _ => random.random_range(50..30_000),
            };
            let fault = Fault { at, length: Duration::from_millis(ms), kind };
            at += fault.length + Duration::from_millis(random.random_range(4_000..9_000));
            fault
        })
        .collect()
}

/// What serves a stream: it fills the ring of a microphone, or empties that of a loudspeaker.
pub trait Side: Send {
    type Ring: Send;
    type Other: Send;
    fn rings() -> (Self::Ring, Self::Other);
    fn serve(other: &mut Self::Other, frames: usize, shared: &Shared);
}

pub struct World<S: Side> {
    pub now: Duration,
    faults: Vec<Fault>,
    next: usize,
    away_until: Duration,
    /// The stream stands still for good; a new one runs.
    still: bool,
    stream: Option<(S::Other, Arc<Shared>)>,
    served: Duration,
    sought: Option<(Duration, u32)>,
}

pub struct MadeUp<S: Side>(Arc<Mutex<World<S>>>);

impl<S: Side> MadeUp<S> {
    /// The device as it runs at the beginning, its first stream, and the world that it is in.
    pub fn new(faults: Vec<Fault>) -> (Self, Stream<S::Ring>, Arc<Mutex<World<S>>>) {
        let zero = Duration::ZERO;
        let world = World { now: zero, faults, next: 0, away_until: zero, still: false, stream: None, served: zero, sought: None };
        let world = Arc::new(Mutex::new(world));
        let stream = lock(&world).open();
        (Self(world.clone()), stream, world)
    }
}

pub fn lock<S: Side>(world: &Mutex<World<S>>) -> MutexGuard<'_, World<S>> {
    world.lock().expect("no panic holds it")
}

impl<S: Side> World<S> {
    fn open(&mut self) -> Stream<S::Ring> {
        let (ring, other) = S::rings();
        let shared = Arc::new(Shared::default());
        (self.stream, self.still, self.served) = (Some((other, shared.clone())), false, self.now);
        Stream { rate_hz: RATE_HZ, channels: 1, device: None, ring, shared, _running: None }
    }

    pub fn pass(&mut self, time: Duration) {
        let until = self.now + time;
        while self.now < until {
            self.now = until.min(self.now + Duration::from_millis(1));
            if let Some(fault) = self.faults.get(self.next).copied().filter(|fault| fault.at <= self.now) {
                self.next += 1;
                self.strike(fault);
            }
            let piece = Duration::from_micros(PIECE * 1_000_000 / u64::from(RATE_HZ));
            while self.served + piece <= self.now {
                self.served += piece;
                if let Some((other, shared)) = self.stream.as_mut().filter(|_| !self.still) {
                    S::serve(other, PIECE as usize, shared);
                    shared.frames.fetch_add(PIECE, Relaxed);
                }
            }
        }
    }

    fn strike(&mut self, fault: Fault) {
        self.away_until = self.now + fault.length;
        self.still = fault.kind != Kind::Suspended;
        match (fault.kind, &self.stream) {
            (Kind::Pulled | Kind::Changed | Kind::ServerRestarts, Some((_, shared))) => shared.dead.store(true, SeqCst),
            (Kind::Suspended, _) => (self.now, self.served) = (self.away_until, self.away_until),
            _ => {}
        }
    }
}

impl<S: Side> Port for MadeUp<S> {
    type Ring = S::Ring;

    fn now(&self) -> Duration {
        lock(&self.0).now
    }

    fn sleep(&mut self, time: Duration) {
        lock(&self.0).pass(time);
    }

    fn seek(&mut self, rate_hz: u32) {
        let mut world = lock(&self.0);
        if world.sought.is_none() {
            // Opening takes its time.
            world.sought = Some((world.now + Duration::from_millis(60), rate_hz));
        }
    }

    fn found(&mut self) -> Option<Result<Stream<S::Ring>, AudioError>> {
        let mut world = lock(&self.0);
        let (ready, rate_hz) = world.sought.filter(|(ready, _)| *ready <= world.now)?;
        assert!(ready >= Duration::ZERO && rate_hz == RATE_HZ, "the clock's rate stays");
        world.sought = None;
        if world.now < world.away_until {
            return Some(Err(AudioError::NoDevice("it is not there".into())));
        }
        Some(Ok(world.open()))
    }
}
