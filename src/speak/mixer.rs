//! Lines onto the sample clock: one after the other, or begun on exactly a given frame.

use super::{Pcm, SpeakError};
use session::LineId;
use std::collections::VecDeque;
use std::sync::Arc;

/// What left for the loudspeaker. Frames are counted from the mixer's first.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum MixEvent {
    /// `frame` is the first frame of the line.
    Began { id: LineId, frame: u64 },
    /// `frame` is the one after the last of the line; for a line dropped before it began, the frame at which it was dropped.
    Ended { id: LineId, frame: u64 },
}

/// Quiet between queued lines, s.
const GAP_S: f64 = 0.2;
/// A line that a beat cuts off fades over this long and is silent when the beat comes, s.
const CUT_FADE_S: f64 = 0.015;
/// Silence after [`Mixer::hush`], s. The promise is 10 ms.
const HUSH_FADE_S: f64 = 0.008;
/// A queued line that would be cut off sooner than this waits until the beat has passed, s: nobody understands less.
const SHORTEST_FRAGMENT_S: f64 = 0.25;
/// No sample passes this (-1 dB re full scale).
const CEILING: f32 = 0.891;
/// How fast the limiter lets go and the volume changes, s.
const RELEASE_S: f64 = 0.08;
const VOLUME_S: f64 = 0.02;
/// Lowest and highest volume, dB relative to lines as rendered.
const VOLUME_DB: (f64, f64) = (-40.0, 12.0);
/// How much softer we are while somebody speaks over us: 12 dB.
const DUCKED: f32 = 0.251;
/// How fast we get softer, and louder again when they are silent, s: the time constants of the gain.
const DUCK_S: f64 = 0.02;
const RISE_S: f64 = 0.15;

struct Playing {
    id: LineId,
    samples: Arc<[f32]>,
    next: usize,
    gain: f32,
    /// Taken off `gain` each frame; 0 while the line is not fading.
    fade_step: f32,
    /// It gets softer while somebody speaks over it. A line on a beat does not: the beat must stay clear.
    ducks: bool,
}

impl Playing {
    fn left(&self) -> u64 {
        (self.samples.len() - self.next) as u64
    }

    /// Fades from the present gain to nothing in `frames`, unless a faster fade is under way.
    fn fade(&mut self, frames: f32) {
        self.fade_step = self.fade_step.max(self.gain / frames.max(1.0));
    }
}

struct Scheduled {
    start_frame: u64,
    id: LineId,
    samples: Arc<[f32]>,
}

/// Mixes lines sample by sample. Pure: no clock, no thread; [`Mixer::next_block`] allocates nothing.
///
/// Every line handed over gets exactly one [`MixEvent::Ended`], also when it is dropped.
pub struct Mixer {
    rate_hz: u32,
    frame: u64,
    playing: Vec<Playing>,
    queue: VecDeque<(LineId, Arc<[f32]>)>,
    /// In order of their start.
    scheduled: VecDeque<Scheduled>,
    /// Dropped before they began; their end is told with the next block.
    dropped: Vec<LineId>,
    queue_free_from: u64,
    volume_db: f64,
    volume: f32,
    volume_goal: f32,
    /// Gain of what ducks, and what it tends to.
    duck: f32,
    duck_goal: f32,
    limiter: f32,
}

impl Mixer {
    /// For a loudspeaker of so many frames per second; frame 0 is the first of the first block.
    #[must_use]
    pub fn new(rate_hz: u32) -> Self {
        Self {
            rate_hz,
            frame: 0,
            playing: Vec::with_capacity(8),
            queue: VecDeque::with_capacity(16),
            scheduled: VecDeque::with_capacity(64),
            dropped: Vec::with_capacity(64),
            queue_free_from: 0,
            volume_db: 0.0,
            volume: 1.0,
            volume_goal: 1.0,
            duck: 1.0,
            duck_goal: 1.0,
            limiter: 1.0,
        }
    }

    fn frames(&self, seconds: f64) -> u64 {
        (seconds * f64::from(self.rate_hz)).round() as u64
    }

    fn accept(&mut self, line: Pcm) -> Result<Arc<[f32]>, SpeakError> {
        if line.rate_hz != self.rate_hz {
            return Err(SpeakError(format!(
                "a line has {} frames per second, the loudspeaker {}; render it at the loudspeaker's rate",
                line.rate_hz, self.rate_hz
            )));
        }
        // Room for everything that can play at once, so that no block has to make it.
        let most = self.queue.len() + self.scheduled.len() + self.playing.len() + 1;
        self.playing.reserve(most.saturating_sub(self.playing.len()));
        self.dropped.reserve(most);
        Ok(line.samples)
    }

    /// Says a line after those already queued, with a short gap.
    ///
    /// # Errors
    /// The line has another rate; it is not taken then and gets no events.
    pub fn queue(&mut self, id: LineId, line: Pcm) -> Result<(), SpeakError> {
        let samples = self.accept(line)?;
        self.queue.push_back((id, samples));
        Ok(())
    }

    /// Begins a line on exactly this frame. One whose frame has passed begins at once; its `Began` tells when.
    ///
    /// Whatever else is still being said then is faded out to be silent on the beat.
    ///
    /// # Errors
    /// The line has another rate; it is not taken then and gets no events.
    pub fn at(&mut self, id: LineId, line: Pcm, start_frame: u64) -> Result<(), SpeakError> {
        let samples = self.accept(line)?;
        let place = self.scheduled.partition_point(|s| s.start_frame <= start_frame);
        self.scheduled.insert(place, Scheduled { start_frame, id, samples });
        Ok(())
    }

    /// Silence within 10 ms, without a click; everything queued or scheduled is dropped.
    pub fn hush(&mut self) {
        let fade = self.frames(HUSH_FADE_S) as f32;
        for line in &mut self.playing {
            line.fade(fade);
        }
        self.dropped.extend(self.queue.drain(..).map(|(id, _)| id));
        self.dropped.extend(self.scheduled.drain(..).map(|s| s.id));
        self.queue_free_from = self.frame;
    }

    /// Volume relative to lines as rendered, dB; kept within -40 to 12.
    pub fn set_gain_db(&mut self, gain_db: f64) {
        if gain_db.is_finite() {
            self.volume_db = gain_db.clamp(VOLUME_DB.0, VOLUME_DB.1);
            self.volume_goal = 10f64.powf(self.volume_db / 20.0) as f32;
        }
    }

    /// Somebody speaks over us, or no longer: what is said, but for lines on a beat, gets 12 dB softer meanwhile.
    pub fn duck(&mut self, spoken_over: bool) {
        self.duck_goal = if spoken_over { DUCKED } else { 1.0 };
    }

    /// The volume that is set, dB.
    #[must_use]
    pub fn gain_db(&self) -> f64 {
        self.volume_db
    }

    /// The first frame of the next block.
    #[must_use]
    pub fn frame(&self) -> u64 {
        self.frame
    }

    /// Nothing is being said, queued or scheduled.
    #[must_use]
    pub fn is_idle(&self) -> bool {
        self.playing.is_empty() && self.queue.is_empty() && self.scheduled.is_empty() && self.dropped.is_empty()
    }

    /// Something is being said, or is about to be with the next frame.
    #[must_use]
    pub fn is_sounding(&self) -> bool {
        !self.playing.is_empty()
    }

    /// Fills one block and adds what happened in it to `events`, in order.
    ///
    /// Allocates nothing as long as `events` has room for two entries per line.
    pub fn next_block(&mut self, block: &mut [f32], events: &mut Vec<MixEvent>) {
        for id in self.dropped.drain(..) {
            events.push(MixEvent::Ended { id, frame: self.frame });
        }
        let volume_step = 1.0 - (-1.0 / (VOLUME_S * f64::from(self.rate_hz))).exp() as f32;
        let time_s = if self.duck_goal < self.duck { DUCK_S } else { RISE_S };
        let duck_step = 1.0 - (-1.0 / (time_s * f64::from(self.rate_hz))).exp() as f32;
        let release_step = 1.0 - (-1.0 / (RELEASE_S * f64::from(self.rate_hz))).exp() as f32;
        for sample in block {
            self.begin_lines(events);
            self.duck += (self.duck_goal - self.duck) * duck_step;
            if self.playing.is_empty() || (self.duck_goal - self.duck).abs() < 1e-5 {
                self.duck = self.duck_goal;
            }
            let sum = self.take_sample(events);
            self.volume += (self.volume_goal - self.volume) * volume_step;
            if self.playing.is_empty() || (self.volume_goal - self.volume).abs() < 1e-5 {
                self.volume = self.volume_goal;
            }
            let loud = sum * self.volume;
            // Attack at once, so that no sample passes the ceiling; let go slowly.
            self.limiter += (1.0 - self.limiter) * release_step;
            if self.limiter > 0.999_9 {
                self.limiter = 1.0;
            }
            if loud.abs() * self.limiter > CEILING {
                self.limiter = CEILING / loud.abs();
            }
            *sample = loud * self.limiter;
            self.frame += 1;
        }
    }

    /// Starts and cuts what this frame starts and cuts.
    fn begin_lines(&mut self, events: &mut Vec<MixEvent>) {
        let cut = self.frames(CUT_FADE_S);
        if let Some(next) = self.scheduled.front().map(|s| s.start_frame)
            && self.frame + cut >= next
        {
            let until = next.saturating_sub(self.frame);
            for line in self.playing.iter_mut().filter(|line| line.left() > until) {
                line.fade(cut as f32);
            }
        }
        while self.scheduled.front().is_some_and(|s| s.start_frame <= self.frame) {
            if let Some(Scheduled { id, samples, .. }) = self.scheduled.pop_front() {
                self.begin(id, samples, false, events);
            }
        }
        if !self.playing.is_empty() || self.frame < self.queue_free_from {
            return;
        }
        let Some((_, waiting)) = self.queue.front() else { return };
        let room = self.scheduled.front().map_or(u64::MAX, |s| s.start_frame.saturating_sub(self.frame));
        if (room >= self.frames(SHORTEST_FRAGMENT_S) || waiting.len() as u64 <= room)
            && let Some((id, samples)) = self.queue.pop_front()
        {
            self.begin(id, samples, true, events);
        }
    }

    fn begin(&mut self, id: LineId, samples: Arc<[f32]>, ducks: bool, events: &mut Vec<MixEvent>) {
        events.push(MixEvent::Began { id, frame: self.frame });
        if samples.is_empty() {
            events.push(MixEvent::Ended { id, frame: self.frame });
        } else {
            self.playing.push(Playing { id, samples, next: 0, gain: 1.0, fade_step: 0.0, ducks });
        }
    }

    /// One sample of everything that plays; tells the end of what plays no longer after it.
    fn take_sample(&mut self, events: &mut Vec<MixEvent>) -> f32 {
        if self.playing.is_empty() {
            return 0.0;
        }
        let mut sum = 0.0;
        for line in &mut self.playing {
            line.gain = (line.gain - line.fade_step).max(0.0);
            let duck = if line.ducks { self.duck } else { 1.0 };
            sum += line.samples.get(line.next).copied().unwrap_or(0.0) * line.gain * duck;
            line.next += 1;
        }
        let frame = self.frame + 1;
        self.playing.retain(|line| {
            let over = line.next >= line.samples.len() || line.gain <= 0.0;
            if over {
                events.push(MixEvent::Ended { id: line.id, frame });
            }
            !over
        });
        if self.playing.is_empty() {
            self.queue_free_from = frame + self.frames(GAP_S);
        }
        sum
    }
}
