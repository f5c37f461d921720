//! Onset and offset of sustained vowels.

use super::boundary::FineEnergy;
use super::steadiness::{RunFrame, Steadiness, percentile};
use super::level::{db_power, power_db};
use super::{Hold, HoldSettings, VoiceEvent};

/// Voicing this far under the voice's own level is the room, an echo or another voice, dB. (Praat, too, takes what is
/// 30 dB under the loudest for silence: silence threshold 0.03.)
const UNDER_VOICE_DB: f64 = 30.0;
/// Breaks inside a run that has not proved a hold yet, s.
const EARLY_BREAK_S: f64 = 0.06;
/// Steadiness is judged over at least this much, s.
const JUDGED_S: f64 = 0.6;

/// Frames per second.
const RATE: f64 = 100.0;

/// Follows runs of voicing and tells which are holds.
#[derive(Debug, Clone)]
pub(crate) struct HoldTracker {
    settings: HoldSettings,
    /// Frames of the run under way, from its first voiced frame.
    run: Vec<RunFrame>,
    /// Onset of the run, refined.
    run_onset_s: f64,
    /// The run is a hold.
    sure: Option<Sure>,
    /// Number of frames up to and with the last voiced one.
    voiced_to: usize,
    /// That frame's instant, refined.
    last_voiced_s: f64,
    /// No hold begins before this: the end of the last masked frame or the start of the task.
    not_before_s: f64,
}

#[derive(Debug, Clone, Copy)]
struct Sure {
    onset_s: f64,
    sure_s: f64,
    /// Highest level so far, slowly followed, dB.
    level_db: f64,
    /// The last unmasked voiced frame had been followed by masked ones only.
    in_mask: bool,
}

impl HoldTracker {
    pub fn new(settings: HoldSettings, from_s: f64) -> Self {
        Self {
            settings,
            run: Vec::new(),
            run_onset_s: 0.0,
            sure: None,
            voiced_to: 0,
            last_voiced_s: 0.0,
            not_before_s: from_s,
        }
    }

    /// The next frame. `fine` must reach 130 ms beyond it.
    pub fn push(&mut self, mut frame: RunFrame, fine: &FineEnergy, out: &mut impl FnMut(VoiceEvent)) {
        if let Some(sure) = &mut self.sure {
            if frame.f0_hz > 0.0 {
                if frame.level_db < sure.level_db - UNDER_VOICE_DB {
                    frame.f0_hz = 0.0;
                } else if !frame.masked {
                    sure.level_db = sure.level_db.max(frame.level_db).min(sure.level_db + 0.2);
                }
            }
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
        if self.run.is_empty() {
            self.run_onset_s = fine.onset_s(frame.t_s).max(self.not_before_s);
        }
        self.run.push(frame);
        self.voiced_to = self.run.len();
        self.last_voiced_s = frame.t_s;
        let judged = (self.settings.min_s.max(JUDGED_S) * RATE).round() as usize;
        let needed = (self.settings.min_s * RATE).round().max(1.0) as usize;
        if self.run.len() < needed.max(judged.min(needed)) {
            return;
        }
        let window = &self.run[self.run.len().saturating_sub(judged)..];
        let steady = Steadiness::of(window);
        if std::env::var_os("EAR_DUMP").is_some() {
            eprintln!("STEADY\t{:.2}\t{}\t{:.2}\t{:.2}\t{:.2}\t{:.2}\t{:.2}\t{:.3}", frame.t_s, self.run.len(), steady.flux_db, steady.spread_db, steady.pitch_st, steady.level_db, steady.voiced, steady.periodicity);
        }
        if !steady.is_hold(self.settings.glide) {
            return;
        }
        let mut levels: Vec<f64> = window.iter().map(|f| f.level_db).collect();
        let level_db = percentile(&mut levels, 0.5);
        let keep = self.run.iter().rposition(|f| f.level_db < level_db - UNDER_VOICE_DB).map_or(0, |k| k + 1);
        if keep > 0 {
            self.run.drain(..keep);
            self.voiced_to = self.run.len();
            self.run_onset_s = self.run.first().map_or(frame.t_s, |f| f.t_s);
        }
        self.sure = Some(Sure { onset_s: self.run_onset_s, sure_s: frame.t_s, level_db, in_mask: false });
        out(VoiceEvent::Onset { onset_s: self.run_onset_s, sure_s: frame.t_s });
    }

    fn go_on(&mut self, frame: RunFrame, fine: &FineEnergy, out: &mut impl FnMut(VoiceEvent)) {
        self.run.push(frame);
        if frame.f0_hz > 0.0 {
            if !frame.masked {
                self.voiced_to = self.run.len();
                self.last_voiced_s = frame.t_s;
            }
            return;
        }
        if frame.masked {
            return;
        }
        // Time under our own playback does not count as a break: the voice may have gone on unheard.
        let gap = self.run[self.voiced_to..].iter().filter(|f| !f.masked).count();
        if gap as f64 / RATE > self.settings.max_break_s {
            self.end(fine, out);
        }
    }

    /// Ends a hold that is under way, at its last voiced instant.
    pub fn end(&mut self, fine: &FineEnergy, out: &mut impl FnMut(VoiceEvent)) {
        if let Some(sure) = self.sure {
            let offset_s = self.refined_end(fine);
            let frames = &self.run[..self.voiced_to.min(self.run.len())];
            out(VoiceEvent::Offset(measure(sure.onset_s, offset_s, sure.sure_s, frames)));
        }
        self.clear();
    }

    fn refined_end(&self, fine: &FineEnergy) -> f64 {
        fine.offset_s(self.last_voiced_s)
    }

    fn clear(&mut self) {
        self.run.clear();
        self.sure = None;
        self.voiced_to = 0;
    }
}

/// Puts a hold into figures.
fn measure(onset_s: f64, offset_s: f64, sure_s: f64, frames: &[RunFrame]) -> Hold {
    let voiced: Vec<&RunFrame> = frames.iter().filter(|f| f.f0_hz > 0.0).collect();
    // The windows of the first and last frames reach out of the voice; leave those out of level and pitch where
    // enough is left.
    let inner: Vec<&RunFrame> =
        voiced.iter().copied().filter(|f| f.t_s >= onset_s + 0.03 && f.t_s <= offset_s - 0.03).collect();
    let used = if inner.len() >= 10 { &inner } else { &voiced };
    let mut pitch: Vec<f64> = used.iter().map(|f| 12.0 * f.f0_hz.log2()).collect();
    let median_st = percentile(&mut pitch, 0.5);
    let span_st = percentile(&mut pitch, 0.95) - percentile(&mut pitch, 0.05);
    let count = used.len().max(1) as f64;
    let sd_st = (pitch.iter().map(|p| (p - median_st).powi(2)).sum::<f64>() / count).sqrt();
    let clear: Vec<&&RunFrame> = used.iter().filter(|f| !f.masked).collect();
    let power = clear.iter().map(|f| db_power(f.level_db)).sum::<f64>() / clear.len().max(1) as f64;
    let slope = regression_slope(clear.iter().map(|f| (f.t_s, f.level_db)));
    let breaks = frames.windows(2).filter(|w| w[0].f0_hz > 0.0 && w[1].f0_hz <= 0.0).count();
    Hold {
        onset_s,
        offset_s: offset_s.max(onset_s),
        duration_s: (offset_s - onset_s).max(0.0),
        sure_s,
        f0_median_hz: if used.is_empty() { 0.0 } else { 2f64.powf(median_st / 12.0) },
        f0_span_st: span_st,
        f0_sd_st: sd_st,
        level_mean_db: power_db(power),
        level_slope_db_per_s: slope,
        level_fall_db: -slope * (offset_s - onset_s).max(0.0),
        breaks: u32::try_from(breaks).unwrap_or(u32::MAX),
        masked_s: frames.iter().filter(|f| f.masked).count() as f64 / RATE,
        clipped_s: frames.iter().filter(|f| f.clipped).count() as f64 / RATE,
    }
}

/// Least squares slope of y over x; 0 where it is not defined.
fn regression_slope(points: impl Iterator<Item = (f64, f64)> + Clone) -> f64 {
    let n = points.clone().count() as f64;
    if n < 2.0 {
        return 0.0;
    }
    let mean_x = points.clone().map(|p| p.0).sum::<f64>() / n;
    let mean_y = points.clone().map(|p| p.1).sum::<f64>() / n;
    let (xy, xx) = points.fold((0.0, 0.0), |(xy, xx), (x, y)| (xy + (x - mean_x) * (y - mean_y), xx + (x - mean_x).powi(2)));
    if xx > 0.0 { xy / xx } else { 0.0 }
}
