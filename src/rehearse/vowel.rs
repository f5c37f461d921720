//! Sustained vowels from a glottal source and a cascade of formants, with exact truth about what was made.
//!
//! Source: the KLGLOTT88 pulse of Klatt & Klatt (1990), J. Acoust. Soc. Am. 87:820, a cubic of Rosenberg's (1971) family:
//! flow `U(τ) = a·τ² − b·τ³` over the open phase `0 ≤ τ ≤ L = OQ·T0`, zero otherwise, `a/b = L`; closure at `τ = L`.
//! What is used is its time derivative (source and radiation at the lips in one). Filter: second-order resonators in
//! cascade after Klatt (1980), J. Acoust. Soc. Am. 67:971. Formulas recalled from memory, checked by their properties
//! and against Praat (`tests/checks/praat/vowels.py`).
//!
//! Anti-aliasing: the derivative is averaged over each step of an oversampled grid (a difference of the exact flow), filtered
//! there, and only then brought down to the asked rate by a windowed-sinc low-pass.

use super::error::RehearseError;
use super::noise::Gauss;
use super::signal::{RATES_HZ, gain};
use std::f64::consts::PI;

/// Share of a cycle in which the folds are open (modal voice about 0.6; common practice, no source).
const OPEN_QUOTIENT: f64 = 0.6;
/// Level at which a soft onset begins and a soft offset ends, dB re the steady part.
const RAMP_FLOOR_DB: f64 = -20.0;
/// Silence before the first closure, s: room for the first opening phase and for the filters.
const LEAD_S: f64 = 0.02;
/// Time for the formants to ring out, s.
const TAIL_S: f64 = 0.05;
/// The source is made at this rate or above, Hz.
const GRID_HZ: f64 = 96_000.0;
/// Half length of the decimating low-pass, output samples.
const LOWPASS_REACH: usize = 16;

/// A sustained vowel. Formants: averages of men in Peterson & Barney (1952), J. Acoust. Soc. Am. 24:175, from memory.
#[derive(Debug, Clone, Copy, PartialEq, Eq, serde::Deserialize, serde::Serialize)]
#[serde(rename_all = "lowercase")]
pub enum Vowel {
    /// As in "father".
    A,
    /// As in "see".
    I,
    /// As in "boot".
    U,
    /// As in "bed".
    E,
    /// As in "law".
    O,
}

impl Vowel {
    /// First three formants of a man's voice, Hz.
    #[must_use]
    pub fn formants_hz(self) -> [f64; 3] {
        match self {
            Self::A => [730.0, 1090.0, 2440.0],
            Self::I => [270.0, 2290.0, 3010.0],
            Self::U => [300.0, 870.0, 2240.0],
            Self::E => [530.0, 1840.0, 2480.0],
            Self::O => [570.0, 840.0, 2410.0],
        }
    }
}

/// A stretch in which the folds do not vibrate; breath goes on.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Break {
    /// Start, s after the onset.
    pub at_s: f64,
    /// Length, s.
    pub length_s: f64,
}

/// What vowel to make.
#[derive(Debug, Clone, PartialEq)]
pub struct VowelSpec {
    pub vowel: Vowel,
    /// Formants are multiplied by this: 1 for a man, about 1.15 for a woman's shorter tract.
    pub tract_scale: f64,
    /// `(s after onset, Hz)`, times rising; in between straight lines in semitones, held at both ends. 60 to 800 Hz.
    pub f0_hz: Vec<(f64, f64)>,
    /// From onset to offset, 0.05 to 120 s.
    pub duration_s: f64,
    /// RMS of the steady voice before decay, dB re full scale (a full-scale square wave is 0).
    pub level_db: f64,
    /// Change of level, dB/s; negative fades.
    pub decay_db_per_s: f64,
    /// Length of the soft onset and of the soft offset, 0.02 to 2 s, each from or to 20 dB below; at most 0.3 of the duration
    /// is used. Shorter ones would leave the onset in doubt by the opening phase before the first closure.
    pub attack_s: f64,
    pub release_s: f64,
    /// Mean absolute difference of successive periods over the mean period, percent (Praat's "local").
    pub jitter_pct: f64,
    /// The same of the pulses' amplitudes, percent.
    pub shimmer_pct: f64,
    /// Tremor: rate, Hz (4 to 6 is usual); its extent each way in semitones and in dB.
    pub tremor_hz: f64,
    pub tremor_st: f64,
    pub tremor_db: f64,
    /// Voice over breath noise, dB; none for no noise.
    pub hnr_db: Option<f64>,
    pub breaks: Vec<Break>,
    pub seed: u64,
}

impl VowelSpec {
    /// A plain, steady, quite regular vowel at -26 dB: the place to start from.
    #[must_use]
    pub fn steady(vowel: Vowel, f0_hz: f64, duration_s: f64) -> Self {
        Self {
            vowel,
            tract_scale: 1.0,
            f0_hz: vec![(0.0, f0_hz)],
            duration_s,
            level_db: -26.0,
            decay_db_per_s: 0.0,
            attack_s: 0.05,
            release_s: 0.08,
            jitter_pct: 0.3,
            shimmer_pct: 2.0,
            tremor_hz: 5.0,
            tremor_st: 0.0,
            tremor_db: 0.0,
            hnr_db: Some(22.0),
            breaks: Vec::new(),
            seed: 1,
        }
    }

    /// F0 of the contour with tremor, without jitter, Hz, `t_s` after the onset.
    #[must_use]
    pub fn f0_at(&self, t_s: f64) -> f64 {
        let plain = contour_hz(&self.f0_hz, t_s);
        plain * 2f64.powf(self.tremor_st * (2.0 * PI * self.tremor_hz * t_s).sin() / 12.0)
    }

    /// Level re the steady voice, dB, from decay, tremor and ramps; none inside a break.
    fn level_at(&self, t_s: f64, offset_s: f64) -> f64 {
        let attack = self.attack_s.min(0.3 * self.duration_s);
        let release = self.release_s.min(0.3 * self.duration_s);
        let rise = if t_s < attack { 1.0 - t_s / attack } else { 0.0 };
        let left = (offset_s - t_s).max(0.0);
        let fall = if left < release { 1.0 - left / release } else { 0.0 };
        self.decay_db_per_s * t_s.max(0.0)
            + self.tremor_db * (2.0 * PI * self.tremor_hz * t_s).sin()
            + RAMP_FLOOR_DB * (rise.clamp(0.0, 1.0) + fall)
    }

    fn in_break(&self, t_s: f64, margin_s: f64) -> bool {
        self.breaks.iter().any(|b| t_s >= b.at_s - margin_s && t_s < b.at_s + b.length_s + margin_s)
    }

    fn check(&self, rate_hz: u32) -> Result<(), RehearseError> {
        let fault = |what: String| Err(RehearseError(format!("vowel: {what}")));
        if !RATES_HZ.contains(&rate_hz) {
            return fault(format!("{rate_hz} Hz is outside 8000 to 48000 Hz"));
        }
        if self.f0_hz.is_empty() || self.f0_hz.iter().any(|(t, f)| !t.is_finite() || !(60.0..=800.0).contains(f)) {
            return fault(format!("F0 {:?} must hold values from 60 to 800 Hz", self.f0_hz));
        }
        let ranges = [
            ("duration_s", self.duration_s, 0.05, 120.0),
            ("tract_scale", self.tract_scale, 0.7, 1.6),
            ("level_db", self.level_db, -90.0, -3.0),
            ("decay_db_per_s", self.decay_db_per_s, -20.0, 20.0),
            ("attack_s", self.attack_s, 0.02, 2.0),
            ("release_s", self.release_s, 0.02, 2.0),
            ("jitter_pct", self.jitter_pct, 0.0, 10.0),
            ("shimmer_pct", self.shimmer_pct, 0.0, 40.0),
            ("tremor_hz", self.tremor_hz, 0.0, 12.0),
            ("tremor_st", self.tremor_st, 0.0, 4.0),
            ("tremor_db", self.tremor_db, 0.0, 6.0),
            ("hnr_db", self.hnr_db.unwrap_or(20.0), -10.0, 80.0),
        ];
        match ranges.iter().find(|(_, v, low, high)| !(low..=high).contains(&v)) {
            Some((name, v, low, high)) => fault(format!("{name} = {v} must be from {low} to {high}")),
            None => Ok(()),
        }
    }

    /// Makes the vowel.
    ///
    /// # Errors
    /// A value outside its range; the text names it.
    pub fn render(&self, rate_hz: u32) -> Result<RenderedVowel, RehearseError> {
        self.check(rate_hz)?;
        let rate = f64::from(rate_hz);
        let factor = (GRID_HZ / rate).ceil().max(2.0) as usize;
        let grid_hz = rate * factor as f64;
        let mut gauss = Gauss::new(self.seed);
        let cycles = self.cycles(&mut gauss);
        let offset_s = cycles.last().map_or(0.0, |c| c.closure_s + c.period_s);

        let frames = ((LEAD_S + offset_s + TAIL_S) * rate).ceil() as usize;
        let mut voice = self.pulses(&cycles, offset_s, frames * factor, grid_hz);
        self.through_tract(&mut voice, grid_hz);
        let voice = decimate(&voice, factor, frames);
        let steady = |t_s: f64| {
            t_s > self.attack_s.min(0.3 * self.duration_s)
                && t_s < offset_s - self.release_s.min(0.3 * self.duration_s)
                && !self.in_break(t_s, 0.03)
        };
        let power = |x: &[f64]| {
            let mut sum = (0.0, 0usize);
            for (i, v) in x.iter().enumerate() {
                let t = i as f64 / rate - LEAD_S;
                if steady(t) {
                    let v = v / gain(self.level_at(t, offset_s));
                    sum = (sum.0 + v * v, sum.1 + 1);
                }
            }
            if sum.1 == 0 { 0.0 } else { sum.0 / sum.1 as f64 }
        };
        let voice_power = power(&voice);
        let mut samples: Vec<f64> = voice;
        if let Some(hnr_db) = self.hnr_db {
            let mut noise = self.breath(&cycles, offset_s, frames, rate, &mut gauss);
            self.through_tract(&mut noise, rate);
            let noise_power = power(&noise);
            if noise_power > 0.0 {
                let scale = (voice_power / noise_power).sqrt() * gain(-hnr_db);
                samples.iter_mut().zip(&noise).for_each(|(v, n)| *v += scale * n);
            }
        }
        let total = power(&samples);
        let scale = if total > 0.0 { gain(self.level_db) / total.sqrt() } else { 0.0 };
        Ok(RenderedVowel {
            rate_hz,
            samples: samples.iter().map(|v| (v * scale) as f32).collect(),
            onset_s: LEAD_S,
            offset_s: LEAD_S + offset_s,
            cycles: cycles.into_iter().map(|c| Cycle { closure_s: c.closure_s + LEAD_S, ..c }).collect(),
        })
    }

    /// The closures, counted from the onset. Successive independent deviations of SD σ differ by 2σ/√π on average, so that
    /// local jitter J asks for σ = J·√π/2; shimmer likewise.
    fn cycles(&self, gauss: &mut Gauss) -> Vec<Cycle> {
        let spread = |pct: f64| pct / 100.0 * PI.sqrt() / 2.0;
        let (jitter, shimmer) = (spread(self.jitter_pct), spread(self.shimmer_pct));
        let mut cycles = Vec::new();
        let mut t = 0.0;
        loop {
            let period = (1.0 + (jitter * gauss.draw()).clamp(-0.3, 0.3)) / self.f0_at(t);
            if t + 0.5 * period > self.duration_s && !cycles.is_empty() {
                return cycles;
            }
            let amplitude = 1.0 + (shimmer * gauss.draw()).clamp(-0.8, 0.8);
            cycles.push(Cycle { closure_s: t, period_s: period, amplitude });
            t += period;
        }
    }

    /// The derivative of the glottal flow on the fine grid.
    fn pulses(&self, cycles: &[Cycle], offset_s: f64, len: usize, grid_hz: f64) -> Vec<f64> {
        let mut out = vec![0.0; len];
        let mut before = cycles.first().map_or(0.0, |c| c.period_s);
        for cycle in cycles {
            let open = OPEN_QUOTIENT * before;
            before = cycle.period_s;
            if self.in_break(cycle.closure_s, 0.0) {
                continue;
            }
            let peak = cycle.amplitude * gain(self.level_at(cycle.closure_s, offset_s));
            let flow = |t: f64| {
                let x = (t / open).clamp(0.0, 1.0);
                27.0 / 4.0 * x * x * (1.0 - x) * peak
            };
            let start = LEAD_S + cycle.closure_s - open;
            let first = (start * grid_hz).floor().max(0.0) as usize;
            let last = ((start + open) * grid_hz).ceil().max(0.0) as usize;
            for (i, v) in out.iter_mut().enumerate().take(last + 1).skip(first) {
                let t = i as f64 / grid_hz - start;
                *v += (flow(t + 1.0 / grid_hz) - flow(t)) * grid_hz;
            }
        }
        out
    }

    /// Breath: white noise, half as strong while the folds are closed (common practice, no source), on through breaks.
    fn breath(&self, cycles: &[Cycle], offset_s: f64, len: usize, rate_hz: f64, gauss: &mut Gauss) -> Vec<f64> {
        let mut out = vec![0.0; len];
        for cycle in cycles {
            let level = gain(self.level_at(cycle.closure_s, offset_s));
            let first = ((LEAD_S + cycle.closure_s) * rate_hz).round() as usize;
            let last = ((LEAD_S + cycle.closure_s + cycle.period_s) * rate_hz).round() as usize;
            let opens = first + ((1.0 - OPEN_QUOTIENT) * (last - first) as f64) as usize;
            for (i, v) in out.iter_mut().enumerate().take(last).skip(first) {
                *v = gauss.draw() * level * if i < opens { 0.5 } else { 1.0 };
            }
        }
        out
    }

    /// Three formants of the vowel, then those of a uniform tube of 17.5 cm (3.5, 4.5 … kHz) as far as 10 kHz; those too near
    /// half the rate are left out.
    fn through_tract(&self, x: &mut [f64], rate_hz: f64) {
        let own = self.vowel.formants_hz();
        let bandwidths = [60.0, 90.0, 150.0];
        let higher = (3..10).map(|n| (500.0 + 1000.0 * f64::from(n), 100.0 + 50.0 * f64::from(n)));
        for (f, b) in own.into_iter().zip(bandwidths).chain(higher) {
            if f * self.tract_scale < 0.45 * rate_hz {
                resonate(x, f * self.tract_scale, b, rate_hz);
            }
        }
    }
}

/// One glottal cycle as it was made, before the vocal tract.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Cycle {
    /// Instant of closure, the main excitation, s from the start of the samples.
    pub closure_s: f64,
    /// To the next closure, s.
    pub period_s: f64,
    /// Of the pulse, 1 on average; level changes are not in it.
    pub amplitude: f64,
}

/// Samples and the truth about them.
#[derive(Debug, Clone, PartialEq)]
pub struct RenderedVowel {
    pub rate_hz: u32,
    pub samples: Vec<f32>,
    /// First glottal closure, s from the start of the samples.
    pub onset_s: f64,
    /// End of the last cycle, s.
    pub offset_s: f64,
    pub cycles: Vec<Cycle>,
}

impl RenderedVowel {
    /// Median over time of 1/period, Hz: half of the voiced time lies above it. A glide has more cycles where it is high,
    /// so the median over cycles would be another.
    #[must_use]
    pub fn f0_median_hz(&self) -> f64 {
        let mut periods_s: Vec<f64> = self.cycles.iter().map(|c| c.period_s).collect();
        periods_s.sort_by(f64::total_cmp);
        let half_s = periods_s.iter().sum::<f64>() / 2.0;
        let mut passed_s = 0.0;
        let median = periods_s.into_iter().find(|period_s| {
            passed_s += period_s;
            passed_s >= half_s
        });
        median.map_or(0.0, |period_s| 1.0 / period_s)
    }
}

/// Straight lines in log frequency between points, held at both ends.
fn contour_hz(points: &[(f64, f64)], t_s: f64) -> f64 {
    let mut before: Option<(f64, f64)> = None;
    for &(t, f) in points {
        if t_s < t {
            return before.map_or(f, |(t0, f0)| f0 * (f / f0).powf((t_s - t0) / (t - t0)));
        }
        before = Some((t, f));
    }
    before.map_or(100.0, |(_, f)| f)
}

/// Klatt's (1980) digital resonator, unity gain at 0 Hz.
pub(super) fn resonate(x: &mut [f64], f_hz: f64, bandwidth_hz: f64, rate_hz: f64) {
    let r = (-PI * bandwidth_hz / rate_hz).exp();
    let b = 2.0 * r * (2.0 * PI * f_hz / rate_hz).cos();
    let c = -r * r;
    let a = 1.0 - b - c;
    let (mut y1, mut y2) = (0.0, 0.0);
    for v in x {
        let y = a * *v + b * y1 + c * y2;
        (y2, y1) = (y1, y);
        *v = y;
    }
}

/// Low-pass (Blackman-windowed sinc, cut-off at 0.45 of the new rate) and every `factor`-th sample, without delay.
fn decimate(x: &[f64], factor: usize, frames: usize) -> Vec<f64> {
    let reach = LOWPASS_REACH * factor;
    let taps: Vec<f64> = (0..=2 * reach)
        .map(|i| {
            let n = i as f64 - reach as f64;
            let u = 2.0 * 0.45 * n / factor as f64;
            let sinc = if n == 0.0 { 1.0 } else { (PI * u).sin() / (PI * u) };
            let w = PI * n / (reach as f64 + 1.0);
            sinc * (0.42 + 0.5 * w.cos() + 0.08 * (2.0 * w).cos())
        })
        .collect();
    let sum: f64 = taps.iter().sum();
    (0..frames)
        .map(|k| {
            let centre = k * factor;
            let skip = reach.saturating_sub(centre);
            let from = centre.saturating_sub(reach);
            let part = x.get(from..).unwrap_or_default();
            // Four sums at a time, so that the processor need not wait for each addition.
            let taps = taps.get(skip..).unwrap_or_default();
            let n = taps.len().min(part.len());
            let (taps, part) = (taps.get(..n).unwrap_or_default(), part.get(..n).unwrap_or_default());
            let mut sums = [0.0; 4];
            for (h, v) in taps.chunks(4).zip(part.chunks(4)) {
                sums.iter_mut().zip(h.iter().zip(v)).for_each(|(s, (h, v))| *s += h * v);
            }
            sums.iter().sum::<f64>() / sum
        })
        .collect()
}
