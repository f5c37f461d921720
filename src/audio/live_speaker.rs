//! A loudspeaker device as sink of frames: one permanent stream, silence between lines.

use super::callback::Shared;
use super::devices::{find, id};
use super::fill::{Action, FillKeeper, TARGET_S};
use super::host::{Direction, host};
use super::port::{PATIENCE, Port, Storm, Stream, SystemPort, stayed_away};
use super::presence::watch_over;
use super::stream::{format, refused, start_output};
use super::{AudioError, Health, Sent, SpeakerSink};
use ringbuf::traits::{Observer, Producer, Split};
use ringbuf::{HeapProd, HeapRb};
use std::sync::Arc;
use std::sync::atomic::Ordering::{Relaxed, SeqCst};
use std::time::Duration;

/// Seconds of sound the ring can hold; it is kept at a tenth of that.
const RING_S: f64 = 0.5;
/// Time between two tries to get it back.
const RETRY: Duration = Duration::from_millis(500);
/// A stream that takes no frame for so long is dead even if nobody said so.
const STANDS_STILL: Duration = Duration::from_millis(1_200);
/// Samples below this (−80 dBFS) are silence that may be left out.
const SILENCE: f32 = 1e-4;
/// Latency that no device has; what is beyond is a wrong time stamp.
const LATENCY_MAX_S: f64 = 1.0;

/// A loudspeaker. Blocks come in at the microphone's pace and leave at the device's own.
pub struct LiveSpeaker(Keeper<SystemPort<HeapProd<f32>>>);

impl LiveSpeaker {
    /// `name`: `default` or the name of a device.
    ///
    /// # Errors
    /// There is no such device, or it refuses.
    pub fn open(name: &str) -> Result<Self, AudioError> {
        let stream = start(name, None)?;
        Ok(Self(Keeper::new(name, SystemPort::new(name, start), stream)))
    }

    /// Channels of the device; all play the same.
    #[must_use]
    pub fn channels(&self) -> u16 {
        self.0.channels
    }

    /// Smallest and largest number of frames the device asked for at once.
    #[must_use]
    pub fn callback_frames(&self) -> (u32, u32) {
        self.0.callback_frames()
    }
}

impl SpeakerSink for LiveSpeaker {
    fn rate_hz(&self) -> u32 {
        self.0.rate_hz
    }
    fn write(&mut self, speaker: &[f32]) -> Result<(), AudioError> {
        self.0.write(speaker)
    }
    fn sent(&self) -> Option<Sent> {
        Some(self.0.sent)
    }
    fn delay_s(&self) -> f64 {
        self.0.delay_s.unwrap_or(TARGET_S)
    }
    fn finish(&mut self) -> Result<(), AudioError> {
        self.0.finish();
        Ok(())
    }
    fn outlast(&mut self) {
        self.0.outlasts = true;
    }
    fn is_away(&self) -> bool {
        self.0.away.is_some()
    }
    fn health(&self) -> Health {
        self.0.health()
    }
}

fn start(name: &str, rate_hz: Option<u32>) -> Result<Stream<HeapProd<f32>>, AudioError> {
    let host = host();
    let device = find(&host, Direction::Output, name)?;
    let mut format = format(&device, Direction::Output)?;
    if let Some(rate_hz) = rate_hz {
        format.rate_hz = rate_hz;
    }
    let rate = f64::from(format.rate_hz);
    let (mut ring, rx) = HeapRb::new((RING_S * rate) as usize).split();
    ring.push_iter(std::iter::repeat_n(0.0, (TARGET_S * rate) as usize));
    let shared = Arc::default();
    let running = start_output(&host, &device, format, rx, Arc::clone(&shared)).map_err(|e| refused(Direction::Output, name, &e))?;
    watch_over(Direction::Output, name, &device, &shared);
    Ok(Stream { rate_hz: format.rate_hz, channels: format.channels, device: id(&device), ring, shared, _running: Some(running) })
}

/// The device is not there.
struct Away {
    since: Duration,
    next_try: Duration,
    why: Option<AudioError>,
}

/// Keeps a loudspeaker running, and builds its stream anew.
struct Keeper<P: Port<Ring = HeapProd<f32>>> {
    name: String,
    port: P,
    rate_hz: u32,
    channels: u16,
    stream: Option<Stream<HeapProd<f32>>>,
    away: Option<Away>,
    /// It is waited for without end.
    outlasts: bool,
    keeper: FillKeeper,
    /// Starved frames seen so far; none before the first block of this stream.
    starved: Option<u64>,
    /// Frames that the stream played as silence before the first block came; no fault.
    starved_before: u64,
    silence: Vec<f32>,
    /// What became of the last block.
    sent: Sent,
    delay_s: Option<f64>,
    /// Frames that the stream had taken when it was last seen to take some, and when that was.
    last_seen: (u64, Duration),
    storm: Storm,
    past: Health,
    finished: bool,
}

impl<P: Port<Ring = HeapProd<f32>>> Keeper<P> {
    fn new(name: &str, port: P, stream: Stream<HeapProd<f32>>) -> Self {
        let block = (stream.rate_hz / 100) as usize;
        let now = port.now();
        Self {
            name: name.to_owned(),
            port,
            rate_hz: stream.rate_hz,
            channels: stream.channels,
            stream: Some(stream),
            away: None,
            outlasts: false,
            keeper: FillKeeper::new(block),
            starved: None,
            starved_before: 0,
            silence: vec![0.0; block],
            sent: Sent::nothing(),
            delay_s: None,
            last_seen: (0, now),
            storm: Storm::new(Direction::Output, now),
            past: Health::default(),
            finished: false,
        }
    }

    fn callback_frames(&self) -> (u32, u32) {
        self.stream.as_ref().map_or((u32::MAX, 0), Stream::callback_frames)
    }

    fn watch(&mut self) -> Result<(), AudioError> {
        let now = self.port.now();
        if let Some(shared) = self.stream.as_ref().map(|stream| Arc::clone(&stream.shared))
            && self.is_dead(&shared, now)
        {
            self.went_away(now);
        }
        let Some(away) = &mut self.away else { return Ok(()) };
        match self.port.found() {
            Some(Ok(stream)) => {
                self.channels = stream.channels;
                self.stream = Some(stream);
                self.keeper = FillKeeper::new(self.silence.len());
                (self.starved, self.delay_s, self.away) = (None, None, None);
                self.storm.begin_anew();
                self.last_seen = (0, now);
                self.past.rebuilds += 1;
            }
            Some(Err(why)) => (away.why, away.next_try) = (Some(why), now + RETRY),
            None if now >= away.next_try => self.port.seek(self.rate_hz),
            None => {}
        }
        let Some(away) = self.away.as_ref().filter(|away| !self.outlasts && now - away.since > PATIENCE) else { return Ok(()) };
        Err(stayed_away(Direction::Output, &self.name, away.why.as_ref()))
    }

    fn is_dead(&mut self, shared: &Shared, now: Duration) -> bool {
        let frames = shared.frames.load(Relaxed);
        if frames != self.last_seen.0 {
            self.last_seen = (frames, now);
        }
        self.storm.rages(shared, now) || shared.dead.load(SeqCst) || now - self.last_seen.1 > STANDS_STILL
    }

    fn went_away(&mut self, now: Duration) {
        tracing::warn!(name = self.name, "the loudspeaker went away; trying to get it back");
        if let Some(stream) = self.stream.take() {
            self.past.xruns += stream.shared.xruns.load(Relaxed);
            self.past.errors += stream.shared.errors.load(Relaxed);
            self.past.starved_frames += stream.shared.starved.load(Relaxed).saturating_sub(self.starved_before);
        }
        self.starved_before = 0;
        self.away = Some(Away { since: now, next_try: now, why: None });
    }

    /// Follows the delay slowly: ring and callbacks move in steps, the true delay does not.
    fn follow_delay(&mut self, fill: usize, latency_us: u32) {
        let rate = f64::from(self.rate_hz);
        let (_, largest) = self.callback_frames();
        let latency_s = f64::from(latency_us) * 1e-6;
        // At a random instant half a callback's frames have left already.
        let device_s = latency_s.min(LATENCY_MAX_S) + f64::from(largest) / rate / 2.0;
        let now_s = fill as f64 / rate + device_s;
        self.delay_s = Some(self.delay_s.map_or(now_s, |d| d + (now_s - d) * 0.02));
    }

    fn write(&mut self, speaker: &[f32]) -> Result<(), AudioError> {
        self.watch()?;
        self.sent = Sent::nothing();
        let Some(stream) = &mut self.stream else {
            self.past.blocks_dropped += 1;
            return Ok(());
        };
        let starved = stream.shared.starved.load(Relaxed);
        let dry = match self.starved.replace(starved) {
            Some(before) => {
                self.sent.silence_before = usize::try_from(starved - before).unwrap_or(usize::MAX);
                starved > before
            }
            None => {
                // The device ran before the first block came; what it found in the ring is gone.
                self.starved_before = starved;
                let wanted = (TARGET_S * f64::from(self.rate_hz)) as usize;
                let missing = wanted.saturating_sub(stream.ring.occupied_len());
                stream.ring.push_iter(std::iter::repeat_n(0.0, missing));
                self.sent = Sent { silence_before: stream.ring.occupied_len(), kept: 0, anew: true };
                false
            }
        };
        let silent = speaker.iter().all(|s| s.abs() < SILENCE);
        let fill = stream.ring.occupied_len();
        match self.keeper.decide(fill, silent, dry) {
            Action::Push => {}
            Action::Drop => {
                self.past.blocks_dropped += 1;
                return Ok(());
            }
            Action::Insert(blocks) => {
                for _ in 0..blocks {
                    self.sent.silence_before += stream.ring.push_slice(&self.silence);
                }
                self.past.blocks_inserted += u64::from(blocks);
            }
        }
        let (fill, latency_us) = (stream.ring.occupied_len(), stream.shared.latency_us.load(Relaxed));
        self.sent.kept = stream.ring.push_slice(speaker);
        if self.sent.kept < speaker.len() {
            self.past.blocks_dropped += 1;
        }
        self.follow_delay(fill, latency_us);
        Ok(())
    }

    fn finish(&mut self) {
        // From here on the ring may run dry; that is no fault.
        self.past = self.health();
        self.finished = true;
        let patience = self.port.now() + Duration::from_secs_f64(RING_S + LATENCY_MAX_S);
        while let Some(stream) = self.stream.as_ref().filter(|stream| stream.ring.occupied_len() > 0)
            && self.port.now() < patience
        {
            if stream.shared.dead.load(SeqCst) {
                break;
            }
            self.port.sleep(Duration::from_millis(5));
        }
        if let Some(stream) = &self.stream {
            // What has left the ring still has to leave the device.
            let latency_s = f64::from(stream.shared.latency_us.load(Relaxed)) * 1e-6;
            let (_, largest) = self.callback_frames();
            let last_s = latency_s.min(LATENCY_MAX_S) + f64::from(largest) / f64::from(self.rate_hz);
            self.port.sleep(Duration::from_secs_f64(last_s));
        }
        self.stream = None;
    }

    fn health(&self) -> Health {
        if self.finished {
            return self.past;
        }
        let now = |count: fn(&Shared) -> u64| self.stream.as_ref().map_or(0, |stream| count(&stream.shared));
        Health {
            xruns: self.past.xruns + now(|shared| shared.xruns.load(Relaxed)),
            errors: self.past.errors + now(|shared| shared.errors.load(Relaxed)),
            starved_frames: self.past.starved_frames + now(|shared| shared.starved.load(Relaxed)).saturating_sub(self.starved_before),
            ..self.past
        }
    }
}

#[cfg(test)]
#[path = "tests/live_speaker.rs"]
mod tests;
