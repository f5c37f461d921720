//! The voice ear: samples in, frames and events out.

use super::auto_gain::AutoGain;
use super::boundary::FineEnergy;
use super::clipping::ClipFinder;
use super::decimate::Decimator;
use super::fade::Fade;
use super::history::History;
use super::hold::HoldTracker;
use super::hum::Hum;
use super::knock::KnockFinder;
use super::level::{self, LevelMeter, power_db};
use super::noise_floor::NoiseFloor;
use super::period::{REACH_S, refined_hz};
use super::pitch::PitchFinder;
use super::pitch_path::{Decision, LAG, PitchPath};
use super::quality::Tape;
use super::room::Room;
use super::steadiness::RunFrame;
use super::utterance::UtteranceTracker;
use super::weighting::Weighting;
use super::{VoiceEvent, VoiceFrame, VoiceTask};
use std::collections::VecDeque;
use std::sync::Arc;

/// Frames per second, at every rate.
pub const FRAMES_PER_S: u64 = 100;
/// Levels under this are no voice whatever their period: converters' own noise, dB.
const NO_VOICE_DB: f64 = -75.0;
/// The same while nothing is known of the room: what is softer then is taken for the room.
const NO_VOICE_YET_DB: f64 = -64.0;
/// A soft sound that A-weighting takes down by more than this is mains hum or a fan, not a voice, dB: of recorded vowels
/// 99 % lose less than 12 dB. Loud sounds are heard whatever their colour.
const HUM_WEIGHTED_AWAY_DB: f64 = 14.0;
const HUM_BELOW_DB: f64 = -50.0;
/// Samples lost beyond this many seconds are passed over in whole seconds.
const LONGEST_SILENCE_S: u64 = 20;

/// What the ear gives.
#[derive(Debug, Clone, PartialEq)]
pub enum VoiceOutput {
    /// Every 10 ms, about 0.2 s after the sound.
    Frame(VoiceFrame),
    /// What the task of the moment is to look for.
    Event(VoiceEvent),
}

/// Hears level, pitch, holds and stretches of speech. The same samples in any portions give the same output.
pub struct VoiceEar {
    rate_hz: u32,
    /// Samples pushed so far, padding and gaps included.
    seen: u64,
    /// Frames that were passed over in long gaps.
    skipped_frames: u64,
    next_frame: u64,
    meter: LevelMeter,
    decimator: Decimator,
    pitch_samples: History<f32>,
    pitch: PitchFinder,
    path: PitchPath,
    fine: FineEnergy,
    fade: Fade,
    hum: Hum,
    /// The room by A-weighted level.
    floor: NoiseFloor,
    /// The room in the band in which periods are looked for.
    band_floor: NoiseFloor,
    room: Room,
    knocks: KnockFinder,
    masks: Spans,
    auto_gain: AutoGain,
    clip_finder: ClipFinder,
    /// The newest sound, for the quality of a hold that is over.
    tape: Tape,
    clips: Spans,
    gaps: Spans,
    undecided: VecDeque<RunFrame>,
    scratch: Vec<f32>,
    period: Vec<f32>,
    lookahead: u64,
    task: Task,
    /// Tasks set but not yet reached by the frames: the instant and the task.
    coming: VecDeque<(f64, VoiceTask)>,
    asked: VoiceTask,
}

#[allow(clippy::large_enum_variant, reason = "there is one at a time, and it takes no memory beside itself")]
enum Task {
    Idle,
    Hold(HoldTracker),
    Speech(UtteranceTracker),
}

impl VoiceEar {
    /// An ear for sound at `sample_rate_hz`; made for 8 to 48 kHz, right at any rate from 4 kHz up.
    pub fn new(sample_rate_hz: u32) -> Self {
        let rate_hz = sample_rate_hz.max(4000);
        let meter = LevelMeter::new(Weighting::A, f64::from(rate_hz));
        let decimator = Decimator::new(rate_hz);
        let pitch_rate_hz = f64::from(rate_hz) / decimator.factor() as f64;
        let pitch = PitchFinder::new(pitch_rate_hz);
        let half = (pitch.length() / 2 + 2) as u64;
        let lookahead = meter.lookahead().max(decimator.lookahead() + half * decimator.factor());
        Self {
            rate_hz,
            seen: 0,
            skipped_frames: 0,
            next_frame: 0,
            scratch: vec![0.0; pitch.length()],
            meter,
            decimator,
            pitch_samples: History::new(),
            pitch,
            path: PitchPath::new(),
            fine: FineEnergy::new(pitch_rate_hz),
            fade: Fade::default(),
            hum: Hum::default(),
            floor: NoiseFloor::default(),
            band_floor: NoiseFloor::default(),
            room: Room::default(),
            knocks: KnockFinder::default(),
            period: Vec::new(),
            masks: Spans::default(),
            auto_gain: AutoGain::default(),
            clip_finder: ClipFinder::new(f64::from(rate_hz)),
            tape: Tape::new(pitch_rate_hz),
            clips: Spans::default(),
            gaps: Spans::default(),
            undecided: VecDeque::new(),
            lookahead,
            task: Task::Idle,
            coming: VecDeque::new(),
            asked: VoiceTask::Idle,
        }
    }

    /// Seconds on the sample clock heard so far.
    pub fn now_s(&self) -> f64 {
        self.seen as f64 / f64::from(self.rate_hz) + self.passed_over_s()
    }

    /// The level of the room while nobody makes a sound, dB; nothing until some of it was heard.
    pub fn noise_floor_db(&self) -> Option<f64> {
        self.floor.level_db()
    }

    /// True once there is evidence that the microphone changes its own volume; levels are not comparable then.
    pub fn auto_gain_found(&self) -> bool {
        self.auto_gain.found()
    }

    /// What to look for from now on. A hold under way when the task changes is closed and reported; the task already
    /// set changes nothing.
    pub fn set_task(&mut self, task: VoiceTask) {
        if task != self.asked {
            self.asked = task;
            self.coming.push_back((self.now_s(), task));
        }
    }

    /// Hears samples, -1 to 1. `masked`: they overlap what we play ourselves.
    pub fn push(&mut self, samples: &[f32], masked: bool, out: &mut impl FnMut(VoiceOutput)) {
        for sample in samples {
            let sample = if sample.is_finite() { sample.clamp(-8.0, 8.0) } else { 0.0 };
            if masked {
                self.masks.mark(self.seen);
            }
            if self.clip_finder.push(sample) {
                self.clips.mark(self.seen);
            }
            self.hear(sample);
            self.look(u64::MAX, out);
        }
    }

    /// Lets the time of samples that were lost pass. They count as silence, so they end nothing that a break of that
    /// length would not end.
    pub fn skip(&mut self, lost_samples: u64, out: &mut impl FnMut(VoiceOutput)) {
        let rate = u64::from(self.rate_hz);
        let long = lost_samples > LONGEST_SILENCE_S * rate;
        let passed_over_s = if long { lost_samples / rate - LONGEST_SILENCE_S } else { 0 };
        for _ in 0..lost_samples - passed_over_s * rate {
            self.gaps.mark(self.seen);
            self.hear(0.0);
            self.look(u64::MAX, out);
        }
        self.skipped_frames += passed_over_s * FRAMES_PER_S;
        self.fine.pass_over_s(passed_over_s as f64);
    }

    /// Hears out what is still in the windows and closes what is under way. Nothing can be heard afterwards.
    pub fn finish(&mut self, out: &mut impl FnMut(VoiceOutput)) {
        let end = self.seen;
        for _ in 0..self.lookahead + u64::from(self.rate_hz) / 2 {
            self.hear(0.0);
            self.look(end, out);
        }
        while let Some(decision) = self.path.flush() {
            self.decide(decision, out);
        }
        let (fine, tape, passed_over_s) = (&self.fine, &self.tape, self.passed_over_s());
        self.task.close(fine, &mut |event| out(VoiceOutput::Event(with_sound(event, tape, passed_over_s))));
        self.task = Task::Idle;
    }

    /// Seconds of the clock that brought no samples.
    fn passed_over_s(&self) -> f64 {
        self.skipped_frames as f64 / FRAMES_PER_S as f64
    }

    fn hear(&mut self, sample: f32) {
        self.seen += 1;
        self.meter.push(sample);
        if let Some(sample) = self.decimator.push(sample) {
            self.pitch_samples.push(sample);
            self.tape.push(sample);
            self.fine.push(sample);
        }
    }

    fn frame_centre(&self, frame: u64) -> u64 {
        (frame * u64::from(self.rate_hz) + FRAMES_PER_S / 2) / FRAMES_PER_S
    }

    /// Works out the frames whose windows are full; none that begins at or after `end`.
    fn look(&mut self, end: u64, out: &mut impl FnMut(VoiceOutput)) {
        loop {
            let centre = self.frame_centre(self.next_frame);
            if centre >= end || self.seen <= centre + self.lookahead {
                return;
            }
            let t_s = (self.next_frame + self.skipped_frames) as f64 / FRAMES_PER_S as f64;
            self.next_frame += 1;
            let level_db = self.meter.level_db(centre);
            let middle = (centre + self.decimator.factor() / 2) / self.decimator.factor();
            let from = middle as i64 - (self.pitch.length() / 2) as i64;
            self.pitch_samples.copy_to(from, &mut self.scratch);
            // Decisions fall later and look at the sound once more.
            let pitch_rate_hz = f64::from(self.rate_hz) / self.decimator.factor() as f64;
            let kept_s = (LAG + 1) as f64 / FRAMES_PER_S as f64 + REACH_S;
            self.pitch_samples.forget_before(from - (kept_s * pitch_rate_hz) as i64);
            let room_power = self.band_floor.level_db().map_or(0.0, level::db_power);
            let look = self.pitch.look(&self.scratch, room_power);
            let reach = (level::WINDOW_S / 2.0 * f64::from(self.rate_hz)) as u64;
            let around = centre.saturating_sub(reach)..centre + reach + 1;
            self.undecided.push_back(RunFrame {
                t_s,
                level_db,
                power_db: power_db(look.power),
                shape: look.shape,
                masked: self.masks.touch(around.clone()),
                clipped: self.clips.touch(around.clone()),
                lost: self.gaps.touch(around),
                ..RunFrame::default()
            });
            if let Some(decision) = self.path.push(&look, self.doubt(level_db, power_db(look.power))) {
                self.decide(decision, out);
            }
        }
    }

    /// How far the level speaks against a voice, for [`PitchPath::push`].
    fn doubt(&self, level_db: f64, power_db: f64) -> f64 {
        let hum = level_db < HUM_BELOW_DB && power_db - level_db > HUM_WEIGHTED_AWAY_DB;
        let floor_db = self.band_floor.level_db();
        let least_db = if floor_db.is_some() { NO_VOICE_DB } else { NO_VOICE_YET_DB };
        if level_db < least_db || hum {
            return 2.0;
        }
        floor_db.map_or(0.0, |floor| 0.3 * ((4.0 - (power_db - floor)) / 4.0).max(0.0))
    }

    /// F0 about the frame's centre.
    fn refined_hz(&mut self, frame: &RunFrame) -> f64 {
        let rate_hz = f64::from(self.rate_hz) / self.decimator.factor() as f64;
        let since_s = frame.t_s - self.skipped_frames as f64 / FRAMES_PER_S as f64;
        refined_hz(&self.pitch_samples, (since_s * rate_hz).round() as i64, frame.f0_hz, rate_hz, &mut self.period)
    }

    fn decide(&mut self, decision: Decision, out: &mut impl FnMut(VoiceOutput)) {
        let Some(mut frame) = self.undecided.pop_front() else { return };
        let periodic = decision.f0_hz > 0.0;
        let voiced = self.fade.is_voice(periodic, frame.power_db);
        frame.over_room_db = self.floor.level_db().map_or(99.0, |floor| frame.level_db - floor);
        frame.f0_hz = if voiced { decision.f0_hz } else { 0.0 };
        frame.periodicity = decision.periodicity;
        self.auto_gain.push(&frame);
        let hum = self.hum.is_hum(&frame);
        if (!periodic || hum) && !frame.masked && !frame.lost {
            self.floor.push(frame.level_db);
            self.band_floor.push(frame.power_db);
        }
        let f0_hz = if voiced { self.refined_hz(&frame) } else { 0.0 };
        out(VoiceOutput::Frame(VoiceFrame {
            t_s: frame.t_s,
            level_db: frame.level_db,
            f0_hz,
            periodicity: frame.periodicity,
            voiced,
            masked: frame.masked,
        }));
        if hum {
            // It has a pitch, but nobody holds it.
            frame.f0_hz = 0.0;
            frame.periodicity = 0.0;
        }
        let (fine, tape, passed_over_s) = (&self.fine, &self.tape, self.passed_over_s());
        let mut tell = |event| out(VoiceOutput::Event(with_sound(event, tape, passed_over_s)));
        while let Some((from_s, task)) = self.coming.front().copied() {
            if frame.t_s < from_s {
                break;
            }
            self.coming.pop_front();
            self.task.close(fine, &mut tell);
            self.task = Task::new(task, from_s);
        }
        let floor_db = self.floor.level_db();
        self.knocks.push(&frame, &mut |event| out(VoiceOutput::Event(event)));
        if let Some(told) = floor_db.and_then(|floor_db| self.room.look(frame.t_s, floor_db)) {
            out(VoiceOutput::Event(told));
        }
        let room = &mut self.room;
        let mut tell = |event| {
            if let VoiceEvent::Offset(hold) = &event {
                room.voice(hold.level_mean_db);
            }
            out(VoiceOutput::Event(with_sound(event, tape, passed_over_s)));
        };
        match &mut self.task {
            Task::Idle => {}
            Task::Hold(tracker) => tracker.push(frame, fine, &mut tell),
            Task::Speech(tracker) => tracker.push(frame, floor_db, &mut tell),
        }
        self.fine.forget_before_s(frame.t_s);
    }
}

/// Gives a hold that is over the sound of its steady part.
fn with_sound(mut event: VoiceEvent, tape: &Tape, passed_over_s: f64) -> VoiceEvent {
    if let VoiceEvent::Offset(hold) = &mut event
        && let Some(steady) = hold.steady.as_mut().and_then(Arc::get_mut)
    {
        tape.fill(steady, passed_over_s);
    }
    event
}

impl Task {
    fn new(task: VoiceTask, from_s: f64) -> Self {
        match task {
            VoiceTask::Idle => Self::Idle,
            VoiceTask::Hold(settings) => Self::Hold(HoldTracker::new(settings, from_s)),
            VoiceTask::Speech { end_pause_s } => Self::Speech(UtteranceTracker::new(end_pause_s, from_s)),
        }
    }

    fn close(&mut self, fine: &FineEnergy, out: &mut impl FnMut(VoiceEvent)) {
        match self {
            Self::Idle => {}
            Self::Hold(tracker) => tracker.end(fine, out),
            Self::Speech(tracker) => tracker.end(out),
        }
    }
}

/// Stretches of marked samples, oldest first.
#[derive(Debug, Clone, Default)]
struct Spans(VecDeque<std::ops::Range<u64>>);

impl Spans {
    /// Marks the newest sample.
    fn mark(&mut self, sample: u64) {
        match self.0.back_mut() {
            Some(last) if last.end == sample => last.end = sample + 1,
            _ => self.0.push_back(sample..sample + 1),
        }
    }

    /// Whether anything in `range` is marked. Ranges must not go back: what lies before them is forgotten.
    fn touch(&mut self, range: std::ops::Range<u64>) -> bool {
        while self.0.front().is_some_and(|span| span.end <= range.start) {
            self.0.pop_front();
        }
        self.0.front().is_some_and(|span| span.start < range.end)
    }
}
