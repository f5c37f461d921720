//! Onset and offset of sustained vowels.

use super::bands::{BANDS, distance};
use super::boundary::FineEnergy;
use super::company::Company;
use super::interval::semitones;
use super::level::{db_power, power_db};
use super::steadiness::{RunFrame, Scratch, Steadiness, mean_shape, percentile, regression};
use super::tail::tail_from_s;
use super::{Held, Hold, HoldSettings, SteadyPart, VoiceEvent};
use std::collections::VecDeque;
use std::sync::Arc;

/// Voicing this far under the voice's own level is the room, an echo or another voice, dB. (Praat, too, takes what is
/// 30 dB under the loudest for silence: silence threshold 0.03.)
const UNDER_VOICE_DB: f64 = 30.0;
/// Breaks inside a run that has not proved a hold yet, s.
const EARLY_BREAK_S: f64 = 0.12;
/// Nobody holds a vowel for so long: it is a machine, and ends here, s.
const LONGEST_S: f64 = 120.0;
/// Of voicing that goes on without becoming a hold, as music does, no more than this is kept, s.
const LONGEST_UNPROVED_S: f64 = 20.0;
/// Steadiness is judged over at least this much, s.
const JUDGED_S: f64 = 0.6;

/// Frames that are kept of what sounded under our own voice, 8 s: a reminder is shorter.
const UNDER_OURS: usize = 800;
/// Our own voice hides the client's for no longer than this where the client's goes on, s: between our words it stands alone.
const HIDDEN_S: f64 = 0.15;

/// A break of this many frames makes the tracker ask whether it is the same voice that comes back.
const AFTER_BREAK: usize = 3;
/// Frames before the first of a hold that may have some of it in their windows.
const FORE: usize = 3;

/// Frames per second.
const RATE: f64 = 100.0;

/// Follows runs of voicing and tells which are holds.
#[derive(Debug, Clone)]
pub(crate) struct HoldTracker {
    settings: HoldSettings,
    /// Frames of the run under way, from its first voiced frame.
    run: Vec<RunFrame>,
    /// The run is a hold.
    sure: Option<Sure>,
    /// Number of frames up to and with the last voiced one.
    voiced_to: usize,
    /// The newest frames under our own voice, in order.
    under_ours: VecDeque<RunFrame>,
    /// No hold begins before this: the end of the last masked frame or the start of the task.
    not_before_s: f64,
    company: Company,
    scratch: Scratch,
}

#[derive(Debug, Clone, Copy)]
struct Sure {
    onset_s: f64,
    sure_s: f64,
    voice: Voice,
}

impl HoldTracker {
    pub fn new(settings: HoldSettings, from_s: f64) -> Self {
        // All the memory a hold can need: none is taken beside the sound.
        let run = Vec::with_capacity((LONGEST_S * RATE) as usize + 1);
        let judged = (settings.min_s.clamp(JUDGED_S, LONGEST_S) * RATE) as usize + 2;
        let (company, scratch) = (Company::with_room(), Scratch::with_room(judged));
        let under_ours = VecDeque::with_capacity(UNDER_OURS);
        Self { settings, run, sure: None, voiced_to: 0, under_ours, not_before_s: from_s, company, scratch }
    }

    /// The next frame. `fine` must reach 130 ms beyond it.
    pub fn push(&mut self, frame: RunFrame, fine: &FineEnergy, out: &mut impl FnMut(VoiceEvent)) {
        if self.sure.is_some() {
            self.go_on(frame, fine, out);
        } else {
            if !frame.masked {
                self.company.hear(&frame);
            }
            self.begin(frame, fine, out);
        }
    }

    fn begin(&mut self, frame: RunFrame, fine: &FineEnergy, out: &mut impl FnMut(VoiceEvent)) {
        if frame.masked {
            self.not_before_s = frame.t_s + 0.5 / RATE;
            self.clear();
            if self.under_ours.len() == UNDER_OURS {
                self.under_ours.pop_front();
            }
            self.under_ours.push_back(frame);
            return;
        }
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
        if self.run.len() as f64 >= LONGEST_UNPROVED_S * RATE {
            self.run.drain(..self.run.len() / 2);
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
        if !Steadiness::of(window, &mut self.scratch).is_hold(self.settings.glide) {
            return;
        }
        let voice = Voice::of(window, self.settings.glide, &mut self.scratch);
        let first = self.first_of(&voice);
        if self.run.len() - first < needed {
            return;
        }
        self.company.hold_begins(self.run.len() - first + FORE);
        self.run.drain(..first);
        let clear_from_s = self.run.first().map_or(now_s, |f| f.t_s);
        let onset_s = match self.take_in_what_is_under_ours(&voice, clear_from_s) {
            Some(began_s) => began_s - 0.5 / RATE,
            None => fine.onset_s(clear_from_s).max(self.not_before_s),
        };
        self.voiced_to = self.run.len();
        self.sure = Some(Sure { onset_s, sure_s: now_s, voice });
        out(VoiceEvent::Onset { onset_s, sure_s: now_s });
    }

    /// The voice may have begun under our own: goes back as long as it is found there, and puts those frames before the run, which begins at
    /// `clear_from_s`. Gives the time of the first.
    fn take_in_what_is_under_ours(&mut self, voice: &Voice, clear_from_s: f64) -> Option<f64> {
        let mut voice = *voice;
        let (mut alike, mut last_s) = (0, clear_from_s);
        for (back, frame) in (1..).zip(self.under_ours.iter().rev()) {
            if last_s - frame.t_s > HIDDEN_S {
                break;
            }
            // Our own words pass through the client's pitch, too, and are mostly softer at the microphone.
            let as_loud = frame.level_db > voice.level_db - 6.0;
            if as_loud && voice.is_surely_this(frame) && !voice.is_off_pitch(frame) {
                (alike, last_s) = (back, frame.t_s);
                voice.pitch_st += 0.1 * (pitch_st(frame.f0_hz) - voice.pitch_st);
            }
        }
        if alike == 0 || self.run.len() + alike > self.run.capacity() {
            return None;
        }
        self.run.extend(self.under_ours.iter().skip(self.under_ours.len() - alike));
        self.run.rotate_right(alike);
        Some(last_s)
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

    fn go_on(&mut self, mut frame: RunFrame, fine: &FineEnergy, out: &mut impl FnMut(VoiceEvent)) {
        if let Some(sure) = &mut self.sure
            && frame.f0_hz > 0.0
        {
            let in_break = self.run.len() >= self.voiced_to + AFTER_BREAK;
            if !sure.voice.is_this(&frame) || (in_break && !sure.voice.resumes(&frame)) {
                frame.f0_hz = 0.0;
            } else if !frame.masked && self.company.suspect_from().is_none() {
                sure.voice.follow(&frame);
            }
        }
        self.run.push(frame);
        if self.run.len() as f64 >= LONGEST_S * RATE {
            return self.end(fine, out);
        }
        if frame.masked {
            // Time under our own playback is no break: the voice may go on unheard. Nor is it proof of the voice.
            return;
        }
        let own = self.sure.as_ref().is_some_and(|sure| sure.voice.is_surely_this(&frame));
        self.company.look(&self.run, own, self.voiced_to);
        if let Some(before) = self.company.suspect_from() {
            self.voiced_to = self.voiced_to.min(before);
            return self.end_after_break(fine, out);
        }
        let rough = self.sure.as_ref().is_some_and(|sure| sure.voice.is_rough(&frame));
        if frame.f0_hz > 0.0 || rough {
            self.voiced_to = self.run.len();
            return;
        }
        self.end_after_break(fine, out);
    }

    /// Ends the hold where its break has become too long.
    fn end_after_break(&mut self, fine: &FineEnergy, out: &mut impl FnMut(VoiceEvent)) {
        let gap = self.run[self.voiced_to..].iter().filter(|f| !f.masked).count();
        if gap as f64 / RATE > self.settings.max_break_s {
            self.end(fine, out);
        }
    }

    /// Ends a hold that is under way, at its last voiced instant.
    pub fn end(&mut self, fine: &FineEnergy, out: &mut impl FnMut(VoiceEvent)) {
        if let Some(sure) = self.sure {
            if let Some(own) = self.company.own_frames(&self.run, |frame| sure.voice.is_this(frame)) {
                self.voiced_to = own;
            }
            let frames = &self.run[..self.voiced_to.min(self.run.len())];
            let end_s = frames.last().map_or(sure.onset_s, |f| fine.offset_s(f.t_s));
            let offset_s = tail_from_s(frames).map_or(end_s, |tail_s| tail_s.min(end_s)).max(sure.onset_s);
            let kept = frames.partition_point(|f| f.t_s <= offset_s);
            let frames = frames.get(..kept).unwrap_or(frames);
            out(VoiceEvent::Offset(measure(sure.onset_s, offset_s, sure.sure_s, frames)));
        }
        self.under_ours.clear();
        self.clear();
    }

    fn clear(&mut self) {
        self.run.clear();
        self.sure = None;
        self.voiced_to = 0;
        self.company.hold_ends();
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
}

impl Voice {
    fn of(frames: &[RunFrame], glide: bool, scratch: &mut Scratch) -> Self {
        let voiced = || frames.iter().filter(|f| f.f0_hz > 0.0);
        let mut median = |pick: fn(&RunFrame) -> f64| scratch.percentile(voiced().map(pick), 0.5);
        let newest = frames.iter().rev().find(|f| f.f0_hz > 0.0).map_or(0.0, |f| pitch_st(f.f0_hz));
        Self {
            level_db: median(|f| f.level_db),
            pitch_st: if glide { newest } else { median(|f| pitch_st(f.f0_hz)) },
            periodicity: median(|f| f.periodicity),
            shape: mean_shape(frames),
            glide,
        }
    }

    /// Whether the frame can be this voice. A voice may fade, and it may jump, but what is at once much weaker and of
    /// another pitch, colour or clearness is something else in the room. Octaves are slips of the pitch search.
    fn is_this(&self, frame: &RunFrame) -> bool {
        let drop_db = self.level_db - frame.level_db;
        let away_st = (pitch_st(frame.f0_hz) - self.pitch_st).abs();
        let octaves_off = (away_st / 12.0 - (away_st / 12.0).round()).abs() * 12.0;
        let elsewhere = octaves_off > 2.5 && (drop_db > 7.0 || self.is_blurred(frame));
        let pitch_or_clearness = self.is_off_pitch(frame) || self.is_blurred(frame);
        let other = (drop_db > 12.0 && pitch_or_clearness)
            || (drop_db > 6.0 && pitch_or_clearness && self.is_recoloured(frame))
            || (drop_db > 6.0 && self.is_off_pitch(frame) && self.is_blurred(frame));
        !elsewhere && !other && drop_db < UNDER_VOICE_DB
    }

    /// Whether the frame is voiced and two of level, pitch and colour are the voice's.
    fn is_surely_this(&self, frame: &RunFrame) -> bool {
        if frame.f0_hz <= 0.0 {
            return false;
        }
        let away_st = (pitch_st(frame.f0_hz) - self.pitch_st).abs();
        let octaves_off = (away_st / 12.0 - (away_st / 12.0).round()).abs() * 12.0;
        let near_pitch = octaves_off < 1.5 && away_st < 13.0;
        let near_colour = distance(&frame.shape, &self.shape) < 5.0;
        let near_level = (self.level_db - frame.level_db).abs() < 4.0;
        u8::from(near_pitch) + u8::from(near_colour) + u8::from(near_level) >= 2
    }

    /// Whether the frame, after a break, can be this voice again: it comes back about as loud, or softer but alike.
    fn resumes(&self, frame: &RunFrame) -> bool {
        self.level_db - frame.level_db < 4.0 || !(self.is_off_pitch(frame) || self.is_blurred(frame))
    }

    fn is_off_pitch(&self, frame: &RunFrame) -> bool {
        (pitch_st(frame.f0_hz) - self.pitch_st).abs() > if self.glide { 2.5 } else { 1.0 }
    }

    fn is_blurred(&self, frame: &RunFrame) -> bool {
        self.periodicity - frame.periodicity > 0.12
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
fn measure(onset_s: f64, offset_s: f64, sure_s: f64, frames: &[RunFrame]) -> Held {
    let voiced: Vec<&RunFrame> = frames.iter().filter(|f| f.f0_hz > 0.0).collect();
    // The windows of the first and last frames reach out of the voice; leave those out of level and pitch where
    // enough is left.
    let inner: Vec<&RunFrame> = voiced.iter().copied().filter(|f| f.t_s >= onset_s + 0.03 && f.t_s <= offset_s - 0.03).collect();
    let used = if inner.len() >= 10 { &inner } else { &voiced };
    // Pitch and level come from what was heard without our own voice; only where nothing was, pitch comes from the rest.
    let clear: Vec<&RunFrame> = used.iter().copied().filter(|f| !f.masked).collect();
    let used = if clear.is_empty() { used } else { &clear };
    let mut pitch: Vec<f64> = used.iter().map(|f| pitch_st(f.f0_hz)).collect();
    let median_st = percentile(&mut pitch, 0.5);
    let span_st = percentile(&mut pitch, 0.95) - percentile(&mut pitch, 0.05);
    let count = used.len().max(1) as f64;
    let sd_st = (pitch.iter().map(|p| (p - median_st).powi(2)).sum::<f64>() / count).sqrt();
    let power = clear.iter().map(|f| db_power(f.level_db)).sum::<f64>() / clear.len().max(1) as f64;
    let slope = regression(clear.iter().map(|f| (f.t_s, f.level_db)));
    // Under our own voice nobody can tell.
    let breaks = frames.windows(2).filter(|w| w[0].f0_hz > 0.0 && w[1].f0_hz <= 0.0 && !w[1].masked).count();
    let hold = Hold {
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
        quality: None,
    };
    Held { hold, steady: SteadyPart::find(frames).map(Arc::new) }
}
