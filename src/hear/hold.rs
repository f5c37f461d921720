//! Onset and offset of sustained vowels.

use super::bands::{BANDS, distance};
use super::boundary::FineEnergy;
use super::interval::semitones;
use super::level::{db_power, power_db};
use super::steadiness::{RunFrame, Steadiness, mean_shape, percentile, regression};
use super::tail::tail_from_s;
use super::tune::Tune;
use super::{Hold, HoldSettings, VoiceEvent};
use std::collections::VecDeque;

/// Voicing this far under the voice's own level is the room, an echo or another voice, dB. (Praat, too, takes what is
/// 30 dB under the loudest for silence: silence threshold 0.03.)
const UNDER_VOICE_DB: f64 = 30.0;
/// Breaks inside a run that has not proved a hold yet, s.
const EARLY_BREAK_S: f64 = 0.12;
/// Steadiness is judged over at least this much, s.
const JUDGED_S: f64 = 0.6;

/// A break of this many frames makes the tracker ask whether it is the same voice that comes back.
const AFTER_BREAK: usize = 3;
/// A voice has returned after so many frames in a row: about as loud as before, or softer.
const RETURNS_LOUD: usize = 1;
const RETURNS_SOFT: usize = 8;
/// In the midst of other sounds as loud as itself, a hold must last this long, s: longer than the notes of a tune.
const AMIDST_S: f64 = 2.4;
/// Another sound lies within this of the voice, dB, and is off its pitch by more than that, semitones.
const AS_LOUD_DB: f64 = 5.0;
const OTHER_NOTE_ST: f64 = 1.5;
/// Looked for this long before the voice, frames, and that many frames of it are enough.
const BEFORE: usize = 40;
const BEFORE_ENOUGH: usize = 12;

/// Levels remembered, frames: the two seconds before a voice and the voice until it is sure.
const LEVELS: usize = 500;

/// Frames per second.
const RATE: f64 = 100.0;

/// Follows runs of voicing and tells which are holds.
#[derive(Debug, Clone)]
pub(crate) struct HoldTracker {
    settings: HoldSettings,
    /// Frames of the run under way, from its first voiced frame.
    run: Vec<RunFrame>,
    tune: Tune,
    /// The last frames before the run.
    before: VecDeque<RunFrame>,
    /// Instant and level of the last frames heard while no hold was sure.
    levels: VecDeque<(f64, f64)>,
    /// The run is a hold.
    sure: Option<Sure>,
    /// Number of frames up to and with the last voiced one.
    voiced_to: usize,
    /// Frames of the voice in a row since a break.
    back: usize,
    /// No hold begins before this: the end of the last masked frame or the start of the task.
    not_before_s: f64,
}

#[derive(Debug, Clone, Copy)]
struct Sure {
    onset_s: f64,
    sure_s: f64,
    voice: Voice,
}

impl HoldTracker {
    pub fn new(settings: HoldSettings, from_s: f64) -> Self {
        Self { settings, run: Vec::new(), tune: Tune::default(), before: VecDeque::new(), levels: VecDeque::with_capacity(LEVELS + 1), sure: None, voiced_to: 0, back: 0, not_before_s: from_s }
    }

    /// The next frame. `fine` must reach 130 ms beyond it.
    pub fn push(&mut self, frame: RunFrame, fine: &FineEnergy, out: &mut impl FnMut(VoiceEvent)) {
        if self.sure.is_some() {
            self.go_on(frame, fine, out);
        } else {
            self.begin(frame, fine, out);
        }
    }

    fn begin(&mut self, frame: RunFrame, fine: &FineEnergy, out: &mut impl FnMut(VoiceEvent)) {
        if frame.masked {
            self.not_before_s = frame.t_s + 0.5 / RATE;
            self.clear();
            return;
        }
        if self.levels.len() == LEVELS {
            self.levels.pop_front();
        }
        self.levels.push_back((frame.t_s, frame.level_db));
        if frame.t_s < self.not_before_s {
            return;
        }
        if frame.f0_hz <= 0.0 {
            if !self.run.is_empty() {
                self.run.push(frame);
                let gap = self.run.len() - self.voiced_to;
                if gap as f64 / RATE > EARLY_BREAK_S.min(self.settings.max_break_s) {
                    self.clear();
                }
            }
            return;
        }
        self.run.push(frame);
        self.voiced_to = self.run.len();
        self.try_to_prove(frame.t_s, fine, out);
    }

    /// Takes the run for a hold if its newest stretch is steady and reaches back far enough.
    fn try_to_prove(&mut self, now_s: f64, fine: &FineEnergy, out: &mut impl FnMut(VoiceEvent)) {
        let needed = (self.settings.min_s * RATE).round().max(1.0) as usize;
        if self.run.len() < needed {
            return;
        }
        let judged = needed.max((JUDGED_S * RATE) as usize);
        let window = &self.run[self.run.len().saturating_sub(judged)..];
        if !Steadiness::of(window).is_hold(self.settings.glide) {
            return;
        }
        let voice = Voice::of(window, self.settings.glide);
        let first = self.first_of(&voice);
        let amidst = self.amidst(&voice, first);
        let needed = if amidst { needed.max((AMIDST_S * RATE) as usize) } else { needed };
        if self.run.len() - first < needed {
            return;
        }
        self.run.drain(..first);
        self.voiced_to = self.run.len();
        let onset_s = fine.onset_s(self.run.first().map_or(now_s, |f| f.t_s)).max(self.not_before_s);
        let voice = Voice { rival_db: self.rival_db(onset_s), ..voice };
        self.sure = Some(Sure { onset_s, sure_s: now_s, voice });
        out(VoiceEvent::Onset { onset_s, sure_s: now_s });
    }

    /// Goes back through the run as long as it is the same voice; gives the first frame that is.
    fn first_of(&self, voice: &Voice) -> usize {
        let mut voice = *voice;
        let mut first = self.run.len();
        for (k, frame) in self.run.iter().enumerate().rev() {
            if frame.f0_hz <= 0.0 {
                continue;
            }
            if !voice.is_this(frame) {
                // One odd frame is a slip of the pitch search; two mean that something else sounded before.
                let before = self.run[..k].iter().rev().find(|f| f.f0_hz > 0.0);
                if before.is_none_or(|f| !voice.is_this(f)) {
                    break;
                }
                continue;
            }
            first = k;
            voice.follow(frame);
        }
        first.min(self.run.len().saturating_sub(1))
    }

    /// The level that what sounded in the two seconds before `onset_s` reached, dB.
    fn rival_db(&self, onset_s: f64) -> f64 {
        let before = self.levels.iter().filter(|(t_s, _)| *t_s < onset_s - 0.04 && *t_s > onset_s - 2.0);
        let mut levels: Vec<f64> = before.map(|(_, level_db)| *level_db).collect();
        if levels.len() < 30 { f64::NEG_INFINITY } else { percentile(&mut levels, 0.9) }
    }

    /// Whether what sounded just before the frame `first` was as loud and of another pitch: a tune, a talk.
    fn amidst(&self, voice: &Voice, first: usize) -> bool {
        let Some(begins_s) = self.run.get(first).map(|f| f.t_s) else { return false };
        let other = |f: &&RunFrame| {
            f.f0_hz > 0.0
                && f.t_s >= begins_s - BEFORE as f64 / RATE
                && f.level_db > voice.level_db - AS_LOUD_DB
                && (pitch_st(f.f0_hz) - voice.pitch_st).abs() > OTHER_NOTE_ST
        };
        let before = self.before.iter().chain(self.run.iter().take(first));
        before.filter(other).count() >= BEFORE_ENOUGH
    }

    fn go_on(&mut self, mut frame: RunFrame, fine: &FineEnergy, out: &mut impl FnMut(VoiceEvent)) {
        if let Some(sure) = &mut self.sure
            && frame.f0_hz > 0.0
        {
            let in_break = self.run.len() >= self.voiced_to + AFTER_BREAK;
            if !sure.voice.is_this(&frame) || (in_break && !sure.voice.resumes(&frame)) {
                frame.f0_hz = 0.0;
            } else if !frame.masked {
                sure.voice.follow(&frame);
            }
        }
        self.run.push(frame);
        if frame.masked {
            // Time under our own playback is no break: the voice may go on unheard. Nor is it proof of the voice.
            return;
        }
        if !self.settings.glide
            && let Some(at) = self.tune.look(&self.run)
        {
            // It was a note, not a hold; what is left of it is told as it was.
            self.voiced_to = at.max(1);
            self.end(fine, out);
            return;
        }
        let rough = self.sure.as_ref().is_some_and(|sure| sure.voice.is_rough(&frame));
        if frame.f0_hz > 0.0 || rough {
            // Somebody else's speech crosses the held pitch now and then, for some frames; a voice that returns stays.
            self.back += 1;
            let in_break = self.run.len() > self.voiced_to + AFTER_BREAK + self.back;
            let loud = self.sure.as_ref().is_some_and(|sure| sure.voice.level_db - frame.level_db < 4.0);
            if !in_break || self.back >= if loud { RETURNS_LOUD } else { RETURNS_SOFT } {
                self.voiced_to = self.run.len();
            }
            return;
        }
        self.back = 0;
        let gap = self.run[self.voiced_to..].iter().filter(|f| !f.masked).count();
        if gap as f64 / RATE > self.settings.max_break_s {
            self.end(fine, out);
        }
    }

    /// Ends a hold that is under way, at its last voiced instant.
    pub fn end(&mut self, fine: &FineEnergy, out: &mut impl FnMut(VoiceEvent)) {
        if let Some(sure) = self.sure {
            let frames = &self.run[..self.voiced_to.min(self.run.len())];
            let end_s = frames.last().map_or(sure.onset_s, |f| fine.offset_s(f.t_s));
            let offset_s = tail_from_s(frames).map_or(end_s, |tail_s| tail_s.min(end_s)).max(sure.onset_s);
            let kept = frames.partition_point(|f| f.t_s <= offset_s);
            let frames = frames.get(..kept).unwrap_or(frames);
            out(VoiceEvent::Offset(measure(sure.onset_s, offset_s, sure.sure_s, frames)));
        }
        self.clear();
    }

    fn clear(&mut self) {
        let from = self.run.len().saturating_sub(BEFORE);
        for frame in self.run.drain(..).skip(from) {
            if self.before.len() == BEFORE {
                self.before.pop_front();
            }
            self.before.push_back(frame);
        }
        self.sure = None;
        self.tune.clear();
        self.voiced_to = 0;
        self.back = 0;
    }
}

/// What a voice has been like lately, to tell it from what sounds besides it.
#[derive(Debug, Clone, Copy)]
struct Voice {
    level_db: f64,
    pitch_st: f64,
    periodicity: f64,
    shape: [f32; BANDS],
    glide: bool,
    /// What sounded before the voice began reached this level, dB: the television, the tap. It may go on after the voice.
    rival_db: f64,
}

impl Voice {
    fn of(frames: &[RunFrame], glide: bool) -> Self {
        let voiced = || frames.iter().filter(|f| f.f0_hz > 0.0);
        let median = |pick: fn(&RunFrame) -> f64| percentile(&mut voiced().map(pick).collect::<Vec<_>>(), 0.5);
        let newest = frames.iter().rev().find(|f| f.f0_hz > 0.0).map_or(0.0, |f| pitch_st(f.f0_hz));
        Self {
            level_db: median(|f| f.level_db),
            pitch_st: if glide { newest } else { median(|f| pitch_st(f.f0_hz)) },
            periodicity: median(|f| f.periodicity),
            shape: mean_shape(frames),
            glide,
            rival_db: f64::NEG_INFINITY,
        }
    }

    /// Whether the frame can be this voice. A voice may fade, and it may jump, but what is at once much weaker and of
    /// another pitch, colour or clearness is something else in the room. Octaves are slips of the pitch search.
    fn is_this(&self, frame: &RunFrame) -> bool {
        let drop_db = self.level_db - frame.level_db;
        let away_st = (pitch_st(frame.f0_hz) - self.pitch_st).abs();
        let octaves_off = (away_st / 12.0 - (away_st / 12.0).round()).abs() * 12.0;
        let elsewhere = (octaves_off > 2.5 && (drop_db > 4.0 || self.is_blurred(frame)))
            || (octaves_off > 1.2 && drop_db > 6.0 && !self.glide);
        let pitch_or_clearness = self.is_off_pitch(frame) || self.is_blurred(frame);
        if self.may_be_rival(frame)
            && ((octaves_off > 1.2 && drop_db > 1.5) || (drop_db > 5.0 && (pitch_or_clearness || self.is_tinged(frame))))
        {
            return false;
        }
        let other = (drop_db > 12.0 && pitch_or_clearness)
            || (drop_db > 6.0 && pitch_or_clearness && self.is_recoloured(frame))
            || (drop_db > 6.0 && self.is_off_pitch(frame) && self.is_blurred(frame));
        !elsewhere && !other && drop_db < UNDER_VOICE_DB
    }

    /// Whether the frame, after a break, can be this voice again: it comes back about as loud, or softer but alike.
    fn resumes(&self, frame: &RunFrame) -> bool {
        let drop_db = self.level_db - frame.level_db;
        if self.may_be_rival(frame) && drop_db > 4.0 {
            let on_pitch = (pitch_st(frame.f0_hz) - self.pitch_st).abs() < 0.5;
            return on_pitch && !self.is_blurred(frame) && !self.is_tinged(frame);
        }
        drop_db < 4.0 || !(self.is_off_pitch(frame) || self.is_blurred(frame) || (drop_db > 6.0 && self.is_recoloured(frame)))
    }

    fn is_off_pitch(&self, frame: &RunFrame) -> bool {
        (pitch_st(frame.f0_hz) - self.pitch_st).abs() > if self.glide { 2.5 } else { 1.0 }
    }

    fn is_blurred(&self, frame: &RunFrame) -> bool {
        self.periodicity - frame.periodicity > 0.12
    }

    /// Whether the frame is no louder than what sounded before the voice.
    fn may_be_rival(&self, frame: &RunFrame) -> bool {
        !self.glide && frame.level_db < self.rival_db + 3.0
    }

    fn is_tinged(&self, frame: &RunFrame) -> bool {
        distance(&frame.shape, &self.shape) > 4.5
    }

    fn is_recoloured(&self, frame: &RunFrame) -> bool {
        distance(&frame.shape, &self.shape) > 6.0
    }

    /// Whether a frame without a clear period is the same voice gone rough (creak, a voice that breaks): as loud as the
    /// voice was and of the same colour.
    fn is_rough(&self, frame: &RunFrame) -> bool {
        frame.f0_hz <= 0.0
            && frame.periodicity > 0.3
            && frame.over_room_db > 10.0
            && frame.level_db > self.level_db - 4.0
            && distance(&frame.shape, &self.shape) < 4.0
    }

    fn follow(&mut self, frame: &RunFrame) {
        let away_st = pitch_st(frame.f0_hz) - self.pitch_st;
        let share = if self.glide { 0.5 } else { 0.1 };
        // An octave slip must not carry the reference with it.
        if away_st.abs() < 9.0 {
            self.pitch_st += share * away_st;
        }
        if self.may_be_rival(frame) && self.level_db - frame.level_db > 4.0 {
            // Not to be led down to the rival's level, yet a voice may sink by itself.
            self.level_db += 0.01 * (frame.level_db - self.level_db);
            return;
        }
        self.level_db += 0.05 * (frame.level_db - self.level_db);
        self.periodicity += 0.05 * (frame.periodicity - self.periodicity);
        self.shape.iter_mut().zip(&frame.shape).for_each(|(mean, here)| *mean += 0.05 * (here - *mean));
    }
}

/// Where the scale of pitches begins, Hz.
const REFERENCE_HZ: f64 = 1.0;

/// Pitch on a scale of semitones; where it begins does not matter, for only differences are looked at.
fn pitch_st(f0_hz: f64) -> f64 {
    semitones(f0_hz.max(1.0), REFERENCE_HZ)
}

/// Puts a hold into figures.
fn measure(onset_s: f64, offset_s: f64, sure_s: f64, frames: &[RunFrame]) -> Hold {
    let voiced: Vec<&RunFrame> = frames.iter().filter(|f| f.f0_hz > 0.0).collect();
    // The windows of the first and last frames reach out of the voice; leave those out of level and pitch where
    // enough is left.
    let inner: Vec<&RunFrame> =
        voiced.iter().copied().filter(|f| f.t_s >= onset_s + 0.03 && f.t_s <= offset_s - 0.03).collect();
    let used = if inner.len() >= 10 { &inner } else { &voiced };
    let mut pitch: Vec<f64> = used.iter().map(|f| pitch_st(f.f0_hz)).collect();
    let median_st = percentile(&mut pitch, 0.5);
    let span_st = percentile(&mut pitch, 0.95) - percentile(&mut pitch, 0.05);
    let count = used.len().max(1) as f64;
    let sd_st = (pitch.iter().map(|p| (p - median_st).powi(2)).sum::<f64>() / count).sqrt();
    let clear: Vec<&&RunFrame> = used.iter().filter(|f| !f.masked).collect();
    let power = clear.iter().map(|f| db_power(f.level_db)).sum::<f64>() / clear.len().max(1) as f64;
    let slope = regression(clear.iter().map(|f| (f.t_s, f.level_db)));
    let breaks = frames.windows(2).filter(|w| w[0].f0_hz > 0.0 && w[1].f0_hz <= 0.0).count();
    Hold {
        onset_s,
        offset_s: offset_s.max(onset_s),
        duration_s: (offset_s - onset_s).max(0.0),
        sure_s,
        f0_median_hz: if used.is_empty() { 0.0 } else { REFERENCE_HZ * 2f64.powf(median_st / 12.0) },
        f0_span_st: span_st,
        f0_sd_st: sd_st,
        level_mean_db: power_db(power),
        level_slope_db_per_s: slope,
        level_fall_db: -slope * (offset_s - onset_s).max(0.0),
        breaks: u32::try_from(breaks).unwrap_or(u32::MAX),
        over_room_db: percentile(&mut used.iter().map(|f| f.over_room_db).collect::<Vec<_>>(), 0.5),
        masked_s: frames.iter().filter(|f| f.masked).count() as f64 / RATE,
        clipped_s: frames.iter().filter(|f| f.clipped).count() as f64 / RATE,
    }
}
