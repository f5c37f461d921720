//! A microphone device as source of frames.

use super::callback::Shared;
use super::clock::ClockCheck;
use super::devices::find;
use super::host::{Direction, host};
use super::stream::{Format, Running, format, refused, start_input};
use super::{AudioError, Captured, Health, MicSource};
use ringbuf::traits::{Consumer, Observer, Split};
use ringbuf::{HeapCons, HeapRb};
use std::sync::Arc;
use std::sync::atomic::Ordering::{Relaxed, SeqCst};
use std::time::{Duration, Instant};

/// Seconds of sound the ring can hold while the sound thread is busy elsewhere.
const RING_S: u32 = 10;
/// How long a device may be away.
const PATIENCE: Duration = Duration::from_secs(5);
/// Without a frame for so long the stream is taken for dead even if nobody said so.
const SILENT_DEATH: Duration = Duration::from_secs(2);
/// Time between two tries to get it back.
const RETRY: Duration = Duration::from_millis(200);
/// So many errors within a second mean a stream that will not recover by itself.
const STORM: u64 = 50;

/// A microphone. Its frames are the session's clock; lost ones are counted as time that passed.
pub struct LiveMic {
    name: String,
    format: Format,
    stream: Option<Running>,
    ring: HeapCons<f32>,
    shared: Arc<Shared>,
    /// Frames taken from the ring of this stream.
    popped: u64,
    /// Frames that streams before this one delivered.
    frames_before: u64,
    began: Option<Instant>,
    last_frame: Instant,
    last_seen: u64,
    check: ClockCheck,
    /// Lost frames not reported yet.
    lost: u64,
    storm_from: Instant,
    storm_base: u64,
    past: Health,
}

impl LiveMic {
    /// `name`: `default` or the name of a device.
    ///
    /// # Errors
    /// There is no such device, or it refuses.
    pub fn open(name: &str) -> Result<Self, AudioError> {
        let (format, stream, ring, shared) = start(name, None)?;
        let now = Instant::now();
        Ok(Self {
            name: name.to_owned(),
            format,
            stream: Some(stream),
            ring,
            shared,
            popped: 0,
            frames_before: 0,
            began: None,
            last_frame: now,
            last_seen: 0,
            check: ClockCheck::new(format.rate_hz),
            lost: 0,
            storm_from: now,
            storm_base: 0,
            past: Health::default(),
        })
    }

    /// Channels of the device; they are averaged.
    #[must_use]
    pub fn channels(&self) -> u16 {
        self.format.channels
    }

    /// Smallest and largest number of frames the device delivered at once.
    #[must_use]
    pub fn callback_frames(&self) -> (u32, u32) {
        (self.shared.smallest.load(Relaxed), self.shared.largest.load(Relaxed))
    }

    fn watch(&mut self) -> Result<(), AudioError> {
        let now = Instant::now();
        let frames = self.shared.frames.load(Relaxed);
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
        let faults = self.shared.errors.load(Relaxed) + self.shared.xruns.load(Relaxed);
        let fresh = faults.saturating_sub(self.storm_base);
        if fresh > STORM {
            self.shared.dead.store(true, SeqCst);
        }
        if now - self.storm_from > Duration::from_secs(1) {
            if fresh > 0 {
                tracing::warn!(faults = fresh, "the microphone reported faults in the last second");
            }
            (self.storm_from, self.storm_base) = (now, faults);
        }
        if self.shared.dead.load(SeqCst) || now - self.last_frame > SILENT_DEATH {
            self.rebuild()?;
        }
        Ok(())
    }

    fn lose(&mut self, frames: u64) {
        self.lost += frames;
        self.past.lost_frames += frames;
    }

    /// Builds the stream anew, trying for some seconds.
    fn rebuild(&mut self) -> Result<(), AudioError> {
        tracing::warn!(name = self.name, "the microphone went away; trying to get it back");
        self.stream = None;
        // What is still in the ring comes from before the outage; it goes with the rest of the lost time.
        self.lose(self.ring.occupied_len() as u64 + self.shared.take_gap(u64::MAX - 1));
        self.frames_before += self.shared.frames.load(Relaxed);
        self.past.xruns += self.shared.xruns.load(Relaxed);
        self.past.errors += self.shared.errors.load(Relaxed);
        let away = Instant::now();
        loop {
            match start(&self.name, Some(self.format.rate_hz)) {
                Ok((format, stream, ring, shared)) => {
                    (self.format, self.stream, self.ring, self.shared) = (format, Some(stream), ring, shared);
                    break;
                }
                Err(error) if away.elapsed() > PATIENCE => {
                    return Err(AudioError::Device(format!(
                        "the {} \"{}\" went away and did not come back within {} s: {error}",
                        Direction::Input.noun(),
                        self.name,
                        PATIENCE.as_secs()
                    )));
                }
                Err(_) => std::thread::sleep(RETRY),
            }
        }
        self.popped = 0;
        self.last_seen = 0;
        self.storm_base = 0;
        self.past.rebuilds += 1;
        // Wait for the first frames: until then time is being lost.
        while self.shared.frames.load(Relaxed) == 0 {
            if away.elapsed() > PATIENCE + SILENT_DEATH {
                return Err(AudioError::Device(format!(
                    "the {} \"{}\" came back but delivers no sound; check it and start again",
                    Direction::Input.noun(),
                    self.name
                )));
            }
            std::thread::sleep(Duration::from_millis(2));
        }
        self.last_frame = Instant::now();
        let began = *self.began.get_or_insert(self.last_frame);
        let frames = self.frames_before + self.shared.frames.load(Relaxed);
        let missing = self.check.resume((self.last_frame - began).as_secs_f64(), frames);
        self.lose(missing);
        Ok(())
    }
}

type Started = (Format, Running, HeapCons<f32>, Arc<Shared>);

/// `rate_hz`: the rate it must have, if the clock runs already.
fn start(name: &str, rate_hz: Option<u32>) -> Result<Started, AudioError> {
    let host = host();
    let device = find(&host, Direction::Input, name)?;
    let mut format = format(&device, Direction::Input)?;
    if let Some(rate_hz) = rate_hz {
        format.rate_hz = rate_hz;
    }
    let (tx, rx) = HeapRb::new((format.rate_hz * RING_S) as usize).split();
    let shared = Arc::new(Shared::default());
    let stream = start_input(&host, &device, format, tx, Arc::clone(&shared)).map_err(|e| refused(Direction::Input, name, &e))?;
    Ok((format, stream, rx, shared))
}

impl MicSource for LiveMic {
    fn rate_hz(&self) -> u32 {
        self.format.rate_hz
    }

    fn read(&mut self, mic: &mut [f32]) -> Result<Captured, AudioError> {
        loop {
            self.watch()?;
            let have = self.ring.occupied_len();
            if have >= mic.len() {
                break;
            }
            // Callbacks must not wake anybody (a system call), so this side sleeps for what is missing and looks again.
            let missing_s = (mic.len() - have) as f64 / f64::from(self.format.rate_hz);
            std::thread::sleep(Duration::from_secs_f64(missing_s.clamp(0.001, 0.005)));
        }
        let gap = self.shared.take_gap(self.popped);
        if gap > 0 {
            tracing::warn!(frames = gap, "the sound thread was too slow for the microphone");
            self.past.lost_frames += gap;
            self.lost += gap;
        }
        self.popped += self.ring.pop_slice(mic) as u64;
        Ok(Captured { lost_frames: std::mem::take(&mut self.lost), ended: false })
    }

    fn health(&self) -> Health {
        Health {
            xruns: self.past.xruns + self.shared.xruns.load(Relaxed),
            errors: self.past.errors + self.shared.errors.load(Relaxed),
            ..self.past
        }
    }
}
