//! A microphone device as source of frames.

use super::clock::ClockCheck;
use super::devices::{find, id};
use super::host::{Direction, host};
use super::port::{PATIENCE, Port, Storm, Stream, SystemPort, stayed_away};
use super::presence::watch_over;
use super::stream::{format, refused, start_input};
use super::{AudioError, Captured, Health, MicSource};
use ringbuf::traits::{Consumer, Observer, Split};
use ringbuf::{HeapCons, HeapRb};
use std::sync::Arc;
use std::sync::atomic::Ordering::{Relaxed, SeqCst};
use std::time::Duration;

/// Seconds of sound the ring can hold while the sound thread is busy elsewhere.
const RING_S: u32 = 10;
/// Without a frame for so long the stream is taken for dead even if nobody said so.
const SILENT_DEATH: Duration = Duration::from_millis(1_200);
/// A stream that was built anew has so long to bring its first frame.
const FIRST_FRAME: Duration = Duration::from_secs(2);
/// Time between two tries to get it back.
const RETRY: Duration = Duration::from_millis(200);
const BLOCK: Duration = Duration::from_millis(10);

/// A microphone. Its frames are the session's clock; lost ones are counted as time that passed.
pub struct LiveMic(Keeper<SystemPort<HeapCons<f32>>>);

impl LiveMic {
    /// `name`: `default` or the name of a device.
    ///
    /// # Errors
    /// There is no such device, or it refuses.
    pub fn open(name: &str) -> Result<Self, AudioError> {
        let stream = start(name, None)?;
        Ok(Self(Keeper::new(name, SystemPort::new(name, start), stream)))
    }

    /// Channels of the device; they are averaged.
    #[must_use]
    pub fn channels(&self) -> u16 {
        self.0.channels
    }

    /// Smallest and largest number of frames the device delivered at once.
    #[must_use]
    pub fn callback_frames(&self) -> (u32, u32) {
        self.0.stream.as_ref().map_or((u32::MAX, 0), Stream::callback_frames)
    }
}

impl MicSource for LiveMic {
    fn rate_hz(&self) -> u32 {
        self.0.rate_hz
    }
    fn read(&mut self, mic: &mut [f32]) -> Result<Captured, AudioError> {
        self.0.read(mic)
    }
    fn outlast(&mut self) {
        self.0.outlasts = true;
    }
    fn device(&self) -> Option<&str> {
        self.0.stream.as_ref()?.device.as_deref()
    }
    fn health(&self) -> Health {
        self.0.health()
    }
}

/// `rate_hz`: the rate it must have, if the clock runs already.
fn start(name: &str, rate_hz: Option<u32>) -> Result<Stream<HeapCons<f32>>, AudioError> {
    let host = host();
    let device = find(&host, Direction::Input, name)?;
    let mut format = format(&device, Direction::Input)?;
    if let Some(rate_hz) = rate_hz {
        format.rate_hz = rate_hz;
    }
    let (tx, ring) = HeapRb::new((format.rate_hz * RING_S) as usize).split();
    let shared = Arc::default();
    let running = start_input(&host, &device, format, tx, Arc::clone(&shared)).map_err(|e| refused(Direction::Input, name, &e))?;
    watch_over(Direction::Input, name, &device, &shared);
    Ok(Stream { rate_hz: format.rate_hz, channels: format.channels, device: id(&device), ring, shared, _running: Some(running) })
}

/// The device is not there.
struct Away {
    since: Duration,
    next_try: Duration,
    /// When the stream was built that is to bring the first frame.
    built: Option<Duration>,
    /// When the next block of silence is due.
    next_block: Duration,
    why: Option<AudioError>,
}

/// Keeps a microphone running: counts what it lost, and builds its stream anew.
struct Keeper<P: Port<Ring = HeapCons<f32>>> {
    name: String,
    port: P,
    rate_hz: u32,
    channels: u16,
    stream: Option<Stream<HeapCons<f32>>>,
    away: Option<Away>,
    /// It is waited for without end, and silence keeps time meanwhile.
    outlasts: bool,
    /// Frames taken from the ring of this stream.
    popped: u64,
    /// Frames that streams before this one delivered, and silence in their place.
    frames_before: u64,
    began: Option<Duration>,
    last_frame: Duration,
    last_seen: u64,
    check: ClockCheck,
    /// Lost frames not reported yet.
    lost: u64,
    storm: Storm,
    past: Health,
}

impl<P: Port<Ring = HeapCons<f32>>> Keeper<P> {
    fn new(name: &str, port: P, stream: Stream<HeapCons<f32>>) -> Self {
        let now = port.now();
        Self {
            name: name.to_owned(),
            port,
            rate_hz: stream.rate_hz,
            channels: stream.channels,
            check: ClockCheck::new(stream.rate_hz),
            stream: Some(stream),
            away: None,
            outlasts: false,
            popped: 0,
            frames_before: 0,
            began: None,
            last_frame: now,
            last_seen: 0,
            lost: 0,
            storm: Storm::new(Direction::Input, now),
            past: Health::default(),
        }
    }

    fn lose(&mut self, frames: u64) {
        self.lost += frames;
        self.past.lost_frames += frames;
    }

    /// Looks after a stream that runs.
    fn watch(&mut self) {
        let Some(stream) = &self.stream else { return };
        let now = self.port.now();
        let frames = stream.shared.frames.load(Relaxed);
        let dead = stream.shared.dead.load(SeqCst) || self.storm.rages(&stream.shared, now);
        if frames != self.last_seen {
            self.last_seen = frames;
            self.last_frame = now;
            let began = *self.began.get_or_insert(now);
            let missing = self.check.observe((now - began).as_secs_f64(), self.frames_before + frames);
            if missing > 0 {
                tracing::warn!(frames = missing, "the microphone delivered less than time passed");
            }
            self.lose(missing);
        }
        if dead || now - self.last_frame > SILENT_DEATH {
            self.went_away(now);
        }
    }

    fn went_away(&mut self, now: Duration) {
        tracing::warn!(name = self.name, "the microphone went away; trying to get it back");
        if let Some(stream) = self.stream.take() {
            // What is still in the ring comes from before the outage; it goes with the rest of the lost time.
            self.lose(stream.ring.occupied_len() as u64 + stream.shared.take_gap(u64::MAX - 1));
            self.leave(&stream);
        }
        // The time since its last frame passed without a block.
        let next_block = self.last_frame.min(now);
        self.away = Some(Away { since: now, next_try: now, built: None, next_block, why: None });
    }

    /// The stream is given up; what it counted stays.
    fn leave(&mut self, stream: &Stream<HeapCons<f32>>) {
        self.frames_before += stream.shared.frames.load(Relaxed);
        self.past.xruns += stream.shared.xruns.load(Relaxed);
        self.past.errors += stream.shared.errors.load(Relaxed);
    }

    /// Tries to get the device back. True once it delivers again.
    fn is_back(&mut self) -> bool {
        let now = self.port.now();
        let Some(away) = &mut self.away else { return true };
        if let Some(found) = self.port.found() {
            match found {
                Ok(stream) => {
                    self.channels = stream.channels;
                    self.stream = Some(stream);
                    away.built = Some(now);
                }
                Err(why) => (away.why, away.next_try) = (Some(why), now + RETRY),
            }
        }
        let Some(stream) = &mut self.stream else {
            if now >= away.next_try {
                self.port.seek(self.rate_hz);
            }
            return false;
        };
        let frames = stream.shared.frames.load(Relaxed);
        if frames == 0 {
            // Until the first frame comes time is being lost.
            if stream.shared.dead.load(SeqCst) || away.built.is_some_and(|built| now - built > FIRST_FRAME) {
                (away.built, away.next_try) = (None, now + RETRY);
                away.why = Some(AudioError::Device("it is there but delivers no sound; check it and start again".into()));
                if let Some(stream) = self.stream.take() {
                    self.leave(&stream);
                }
            }
            return false;
        }
        self.away = None;
        (self.popped, self.last_seen) = (0, frames);
        self.storm.begin_anew();
        if self.outlasts {
            // Silence kept time while these came in.
            let known = stream.ring.skip(stream.ring.occupied_len()) as u64;
            self.popped = known;
            self.frames_before = self.frames_before.saturating_sub(known);
        }
        self.past.rebuilds += 1;
        self.last_frame = now;
        let began = *self.began.get_or_insert(now);
        let missing = self.check.resume((now - began).as_secs_f64(), self.frames_before + frames);
        self.lose(missing);
        true
    }

    /// Keeps time in the microphone's place.
    fn silence(&mut self, mic: &mut [f32]) -> Captured {
        mic.fill(0.0);
        self.frames_before += mic.len() as u64;
        self.began.get_or_insert(self.last_frame);
        let now = self.port.now();
        if let Some(away) = &mut self.away {
            away.next_block += BLOCK;
            let early = away.next_block.saturating_sub(now);
            self.port.sleep(early);
        }
        Captured { away: true, ..Captured::default() }
    }

    fn read(&mut self, mic: &mut [f32]) -> Result<Captured, AudioError> {
        loop {
            self.watch_or_wait()?;
            if self.away.is_some() && self.outlasts {
                return Ok(self.silence(mic));
            }
            let have = self.stream.as_ref().filter(|_| self.away.is_none()).map_or(0, |stream| stream.ring.occupied_len());
            if have >= mic.len() {
                break;
            }
            // Callbacks must not wake anybody (a system call), so this side sleeps for what is missing and looks again.
            let missing_s = (mic.len() - have) as f64 / f64::from(self.rate_hz);
            self.port.sleep(Duration::from_secs_f64(missing_s.clamp(0.001, 0.005)));
        }
        let Some(stream) = &mut self.stream else { return Ok(Captured::default()) };
        let gap = stream.shared.take_gap(self.popped);
        self.popped += stream.ring.pop_slice(mic) as u64;
        if gap > 0 {
            tracing::warn!(frames = gap, "the sound thread was too slow for the microphone");
            self.lose(gap);
        }
        Ok(Captured { lost_frames: std::mem::take(&mut self.lost), ..Captured::default() })
    }

    fn watch_or_wait(&mut self) -> Result<(), AudioError> {
        if self.away.is_none() {
            self.watch();
        }
        if self.is_back() || self.outlasts {
            return Ok(());
        }
        let now = self.port.now();
        let Some(away) = &self.away else { return Ok(()) };
        if now - away.since <= if away.built.is_some() { PATIENCE + FIRST_FRAME } else { PATIENCE } {
            return Ok(());
        }
        Err(stayed_away(Direction::Input, &self.name, away.why.as_ref()))
    }

    fn health(&self) -> Health {
        let now = |count: fn(&super::callback::Shared) -> u64| self.stream.as_ref().map_or(0, |stream| count(&stream.shared));
        Health {
            xruns: self.past.xruns + now(|shared| shared.xruns.load(Relaxed)),
            errors: self.past.errors + now(|shared| shared.errors.load(Relaxed)),
            ..self.past
        }
    }
}

#[cfg(test)]
#[path = "tests/live_mic.rs"]
mod tests;
