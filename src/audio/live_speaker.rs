//! A loudspeaker device as sink of frames: one permanent stream, silence between lines.

use super::callback::Shared;
use super::devices::find;
use super::fill::{Action, FillKeeper, TARGET_S};
use super::host::{Direction, host};
use super::stream::{Format, Running, format, refused, start_output};
use super::{AudioError, Health, SpeakerSink};
use ringbuf::traits::{Observer, Producer, Split};
use ringbuf::{HeapProd, HeapRb};
use std::sync::Arc;
use std::sync::atomic::Ordering::{Relaxed, SeqCst};
use std::time::{Duration, Instant};

/// Seconds of sound the ring can hold; it is kept at a tenth of that.
const RING_S: f64 = 0.5;
/// How long a device may be away.
const PATIENCE: Duration = Duration::from_secs(5);
/// Time between two tries to get it back.
const RETRY: Duration = Duration::from_millis(500);
/// So many errors within a second mean a stream that will not recover by itself.
const STORM: u64 = 50;
/// Samples below this (−80 dBFS) are silence that may be left out.
const SILENCE: f32 = 1e-4;
/// Latency that no device has; what is beyond is a wrong time stamp.
const LATENCY_MAX_S: f64 = 1.0;

/// A loudspeaker. Blocks come in at the microphone's pace and leave at the device's own.
pub struct LiveSpeaker {
    name: String,
    format: Format,
    stream: Option<Running>,
    ring: HeapProd<f32>,
    shared: Arc<Shared>,
    keeper: FillKeeper,
    /// Starved frames seen so far; none before the first block of this stream.
    starved: Option<u64>,
    /// Frames that the stream played as silence before the first block came; no fault.
    starved_before: u64,
    silence: Vec<f32>,
    delay_s: Option<f64>,
    away_since: Option<Instant>,
    next_try: Instant,
    storm_from: Instant,
    storm_base: u64,
    past: Health,
    finished: bool,
}

impl LiveSpeaker {
    /// `name`: `default` or the name of a device.
    ///
    /// # Errors
    /// There is no such device, or it refuses.
    pub fn open(name: &str) -> Result<Self, AudioError> {
        let (format, stream, ring, shared) = start(name, None)?;
        let block = (format.rate_hz / 100) as usize;
        let now = Instant::now();
        Ok(Self {
            name: name.to_owned(),
            format,
            stream: Some(stream),
            ring,
            shared,
            keeper: FillKeeper::new(block),
            starved: None,
            starved_before: 0,
            silence: vec![0.0; block],
            delay_s: None,
            away_since: None,
            next_try: now,
            storm_from: now,
            storm_base: 0,
            past: Health::default(),
            finished: false,
        })
    }

    /// Channels of the device; all play the same.
    #[must_use]
    pub fn channels(&self) -> u16 {
        self.format.channels
    }

    /// Smallest and largest number of frames the device asked for at once.
    #[must_use]
    pub fn callback_frames(&self) -> (u32, u32) {
        (self.shared.smallest.load(Relaxed), self.shared.largest.load(Relaxed))
    }

    fn watch(&mut self) -> Result<(), AudioError> {
        let now = Instant::now();
        let faults = self.shared.errors.load(Relaxed) + self.shared.xruns.load(Relaxed);
        let fresh = faults.saturating_sub(self.storm_base);
        if fresh > STORM {
            self.shared.dead.store(true, SeqCst);
        }
        if now - self.storm_from > Duration::from_secs(1) {
            if fresh > 0 {
                tracing::warn!(faults = fresh, "the loudspeaker reported faults in the last second");
            }
            (self.storm_from, self.storm_base) = (now, faults);
        }
        if self.stream.is_some() && self.shared.dead.load(SeqCst) {
            tracing::warn!(name = self.name, "the loudspeaker went away; trying to get it back");
            self.stream = None;
            self.past.xruns += self.shared.xruns.load(Relaxed);
            self.past.errors += self.shared.errors.load(Relaxed);
            self.past.starved_frames += self.shared.starved.load(Relaxed).saturating_sub(self.starved_before);
            self.starved_before = 0;
            self.shared = Arc::new(Shared::default());
            self.away_since = Some(now);
            self.next_try = now;
        }
        if let Some(since) = self.away_since
            && now >= self.next_try
        {
            match start(&self.name, Some(self.format.rate_hz)) {
                Ok((format, stream, ring, shared)) => {
                    (self.format, self.stream, self.ring, self.shared) = (format, Some(stream), ring, shared);
                    self.keeper = FillKeeper::new(self.silence.len());
                    (self.starved, self.storm_base, self.delay_s, self.away_since) = (None, 0, None, None);
                    self.past.rebuilds += 1;
                }
                Err(error) if since.elapsed() > PATIENCE => {
                    return Err(AudioError::Device(format!(
                        "the {} \"{}\" went away and did not come back within {} s: {error}",
                        Direction::Output.noun(),
                        self.name,
                        PATIENCE.as_secs()
                    )));
                }
                Err(_) => self.next_try = now + RETRY,
            }
        }
        Ok(())
    }

    /// Follows the delay slowly: ring and callbacks move in steps, the true delay does not.
    fn follow_delay(&mut self, fill: usize) {
        let rate = f64::from(self.format.rate_hz);
        let (_, largest) = self.callback_frames();
        let latency_s = f64::from(self.shared.latency_us.load(Relaxed)) * 1e-6;
        // At a random instant half a callback's frames have left already.
        let device_s = latency_s.min(LATENCY_MAX_S) + f64::from(largest) / rate / 2.0;
        let now_s = fill as f64 / rate + device_s;
        self.delay_s = Some(self.delay_s.map_or(now_s, |d| d + (now_s - d) * 0.02));
    }
}

type Started = (Format, Running, HeapProd<f32>, Arc<Shared>);

fn start(name: &str, rate_hz: Option<u32>) -> Result<Started, AudioError> {
    let host = host();
    let device = find(&host, Direction::Output, name)?;
    let mut format = format(&device, Direction::Output)?;
    if let Some(rate_hz) = rate_hz {
        format.rate_hz = rate_hz;
    }
    let rate = f64::from(format.rate_hz);
    let (mut tx, rx) = HeapRb::new((RING_S * rate) as usize).split();
    tx.push_iter(std::iter::repeat_n(0.0, (TARGET_S * rate) as usize));
    let shared = Arc::new(Shared::default());
    let stream = start_output(&host, &device, format, rx, Arc::clone(&shared)).map_err(|e| refused(Direction::Output, name, &e))?;
    Ok((format, stream, tx, shared))
}

impl SpeakerSink for LiveSpeaker {
    fn rate_hz(&self) -> u32 {
        self.format.rate_hz
    }

    fn write(&mut self, speaker: &[f32]) -> Result<(), AudioError> {
        self.watch()?;
        if self.stream.is_none() {
            self.past.blocks_dropped += 1;
            return Ok(());
        }
        let starved = self.shared.starved.load(Relaxed);
        let dry = match self.starved.replace(starved) {
            Some(before) => starved > before,
            None => {
                // The device ran before the first block came; what it found in the ring is gone.
                self.starved_before = starved;
                let wanted = (TARGET_S * f64::from(self.format.rate_hz)) as usize;
                let missing = wanted.saturating_sub(self.ring.occupied_len());
                self.ring.push_iter(std::iter::repeat_n(0.0, missing));
                false
            }
        };
        let silent = speaker.iter().all(|s| s.abs() < SILENCE);
        let fill = self.ring.occupied_len();
        match self.keeper.decide(fill, silent, dry) {
            Action::Push => {}
            Action::Drop => {
                self.past.blocks_dropped += 1;
                return Ok(());
            }
            Action::Insert(blocks) => {
                for _ in 0..blocks {
                    self.ring.push_slice(&self.silence);
                }
                self.past.blocks_inserted += u64::from(blocks);
            }
        }
        let fill = self.ring.occupied_len();
        self.follow_delay(fill);
        if self.ring.push_slice(speaker) < speaker.len() {
            self.past.blocks_dropped += 1;
        }
        Ok(())
    }

    fn delay_s(&self) -> f64 {
        self.delay_s.unwrap_or(TARGET_S)
    }

    fn finish(&mut self) -> Result<(), AudioError> {
        // From here on the ring may run dry; that is no fault.
        self.past = self.health();
        self.finished = true;
        let patience = Instant::now() + Duration::from_secs_f64(RING_S + LATENCY_MAX_S);
        while self.stream.is_some() && self.ring.occupied_len() > 0 && Instant::now() < patience {
            if self.shared.dead.load(SeqCst) {
                break;
            }
            std::thread::sleep(Duration::from_millis(5));
        }
        if self.stream.is_some() {
            // What has left the ring still has to leave the device.
            let latency_s = f64::from(self.shared.latency_us.load(Relaxed)) * 1e-6;
            let (_, largest) = self.callback_frames();
            let last_s = latency_s.min(LATENCY_MAX_S) + f64::from(largest) / f64::from(self.format.rate_hz);
            std::thread::sleep(Duration::from_secs_f64(last_s));
        }
        self.stream = None;
        Ok(())
    }

    fn health(&self) -> Health {
        if self.finished {
            return self.past;
        }
        Health {
            xruns: self.past.xruns + self.shared.xruns.load(Relaxed),
            errors: self.past.errors + self.shared.errors.load(Relaxed),
            starved_frames: self.past.starved_frames + self.shared.starved.load(Relaxed).saturating_sub(self.starved_before),
            ..self.past
        }
    }
}
