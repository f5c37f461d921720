//! What periods a short stretch of sound could have, and what colour it has.
//!
//! The normalised difference of a stretch with itself shifted by a lag, d'(τ) = 1 - r(τ), where r is the
//! autocorrelation of the windowed sound divided by that of the window. This form, and the path search built on it in
//! [`super::pitch_path`], follow P. Boersma, "Accurate short-term analysis of the fundamental frequency and the
//! harmonics-to-noise ratio of a sampled sound", IFA Proceedings 17 (1993) 97-110; keeping several candidates with
//! their strengths instead of the first dip under one threshold follows M. Mauch and S. Dixon, "pYIN", ICASSP 2014.

use super::bands::{BANDS, BandShape};
use super::harmonics::Harmonics;
use std::f64::consts::PI;
use std::sync::Arc;
use transform::Complex;
use transform::{ComplexToReal, RealToComplex};

/// Lowest F0 looked for, Hz.
pub const FLOOR_HZ: f64 = 60.0;
/// Highest F0 looked for, Hz.
pub const CEILING_HZ: f64 = 800.0;
/// Candidates kept per frame.
pub(crate) const CANDIDATES: usize = 10;
/// Length of the window: three periods of the lowest F0 (Boersma 1993), s.
const WINDOW_S: f64 = 3.0 / FLOOR_HZ;
/// Sound is clear where it has this many times the room's power: 15 dB.
const CLEAR: f64 = 31.6;
/// Peaks of r under this are no candidates.
const WEAKEST: f64 = 0.15;

/// One possible period.
#[derive(Debug, Clone, Copy, Default, PartialEq)]
pub(crate) struct Candidate {
    pub f0_hz: f64,
    /// r at the lag, 0 to 1: 1 where the sound repeats itself exactly.
    pub periodicity: f64,
    /// What its harmonics say for it, 0 or less ([`Harmonics::support`]).
    pub support: f64,
}

/// What was found in one frame.
#[derive(Debug, Clone, Copy, Default)]
pub(crate) struct Look {
    pub candidates: [Candidate; CANDIDATES],
    pub count: usize,
    /// Mean square of the sound as the pitch search sees it.
    pub power: f64,
    pub shape: [f32; BANDS],
}

/// Finds the candidates of one frame. All buffers are made once.
pub(crate) struct PitchFinder {
    rate_hz: f64,
    window: Vec<f32>,
    window_power: f64,
    /// 1 / autocorrelation of the window, at the finer lags.
    unwindow: Vec<f64>,
    weights: Vec<f32>,
    /// Lags per sample: where the rate is low the autocorrelation is taken on a finer grid.
    fineness: usize,
    forward: Arc<dyn RealToComplex<f32>>,
    backward: Arc<dyn ComplexToReal<f32>>,
    time: Vec<f32>,
    spectrum: Vec<Complex<f32>>,
    fine_spectrum: Vec<Complex<f32>>,
    correlation: Vec<f32>,
    scratch_forward: Vec<Complex<f32>>,
    scratch_backward: Vec<Complex<f32>>,
    bands: BandShape,
    harmonics: Harmonics,
}

impl PitchFinder {
    pub fn new(rate_hz: f64) -> Self {
        let half = (WINDOW_S * rate_hz / 2.0).round() as usize;
        let length = 2 * half + 1;
        let window: Vec<f32> = (0..length).map(|k| (0.5 - 0.5 * (2.0 * PI * (k + 1) as f64 / (length + 1) as f64).cos()) as f32).collect();
        let longest = (rate_hz / FLOOR_HZ * 1.05).ceil() as usize + 2;
        let size = good_size(length + longest + 1);
        let fineness = if rate_hz < 30_000.0 { 2 } else { 1 };
        let forward = transform::forward(size);
        let backward = transform::backward(size * fineness);
        let step_hz = rate_hz / size as f64;
        let mut finder = Self {
            rate_hz,
            window_power: window.iter().map(|w| f64::from(w * w)).sum::<f64>(),
            unwindow: Vec::new(),
            weights: (0..size / 2 + 1).map(|k| search_weight(k as f64 * step_hz) as f32).collect(),
            fineness,
            time: forward.make_input_vec(),
            spectrum: forward.make_output_vec(),
            fine_spectrum: backward.make_input_vec(),
            correlation: backward.make_output_vec(),
            scratch_forward: forward.make_scratch_vec(),
            scratch_backward: backward.make_scratch_vec(),
            bands: BandShape::new(step_hz, size / 2 + 1),
            harmonics: Harmonics::new(step_hz, size / 2 + 1),
            forward,
            backward,
            window,
        };
        finder.time[..length].copy_from_slice(&finder.window);
        finder.transform();
        finder.correlate(false);
        let top = f64::from(finder.correlation[0]).max(1e-30);
        finder.unwindow = finder.correlation[..=longest * fineness].iter().map(|r| top / f64::from(*r).max(1e-9)).collect();
        finder
    }

    /// Samples the window takes.
    pub fn length(&self) -> usize {
        self.window.len()
    }

    /// Looks at `samples` (as many as [`Self::length`]); what is missing counts as silence. `room_power` is the mean square
    /// of the room's sound as the pitch search sees it, 0 where it is not known.
    pub fn look(&mut self, samples: &[f32], room_power: f64) -> Look {
        let mut look = Look::default();
        self.time.fill(0.0);
        // The mean under the window is taken off, so that an offset is not taken for sound.
        let weight: f32 = self.window.iter().sum();
        let mean = samples.iter().zip(&self.window).map(|(x, w)| x * w).sum::<f32>() / weight;
        for ((slot, x), w) in self.time.iter_mut().zip(samples).zip(&self.window) {
            *slot = (x - mean) * w;
        }
        self.transform();
        look.shape = self.bands.of(&self.spectrum);
        let size = self.time.len() as f64;
        let power: f32 = self.spectrum.iter().zip(&self.weights).map(|(bin, weight)| bin.norm_sqr() * weight).sum();
        look.power = 2.0 * f64::from(power) / (size * self.window_power);
        if look.power.is_nan() || look.power < 1e-13 {
            look.power = 0.0;
            return look;
        }
        self.harmonics.flatten(&self.spectrum, &self.weights);
        self.correlate(true);
        self.pick(look.power > CLEAR * room_power, &mut look);
        look
    }

    fn transform(&mut self) {
        // Lengths are those of the plan, so this cannot fail; were it to, the frame would read as silence.
        if self.forward.process_with_scratch(&mut self.time, &mut self.spectrum, &mut self.scratch_forward).is_err() {
            self.spectrum.fill(Complex::default());
        }
    }

    /// The autocorrelation of the spectrum as it is, or weighted and flattened.
    fn correlate(&mut self, flattened: bool) {
        self.fine_spectrum.fill(Complex::default());
        let last = self.spectrum.len() - 1;
        for (k, ((slot, bin), weight)) in self.fine_spectrum.iter_mut().zip(&self.spectrum).zip(&self.weights).enumerate() {
            let gain = if flattened { weight * self.harmonics.gain(k) } else { 1.0 };
            let halved = if k == last && self.fineness > 1 { 0.5 } else { 1.0 };
            *slot = Complex::new(bin.norm_sqr() * gain * halved, 0.0);
        }
        if self.backward.process_with_scratch(&mut self.fine_spectrum, &mut self.correlation, &mut self.scratch_backward).is_err() {
            self.correlation.fill(0.0);
        }
    }

    fn pick(&self, clear: bool, look: &mut Look) {
        let top = f64::from(self.correlation[0]).max(1e-30);
        let fine_rate = self.rate_hz * self.fineness as f64;
        let shortest = (fine_rate / (CEILING_HZ * 1.03)).floor().max(2.0) as usize;
        let longest = ((fine_rate / (FLOOR_HZ * 0.97)).ceil() as usize).min(self.unwindow.len().saturating_sub(2));
        let r = |lag: usize| f64::from(self.correlation[lag]) / top * self.unwindow[lag];
        for lag in shortest..=longest {
            let (before, here, after) = (r(lag - 1), r(lag), r(lag + 1));
            if !(here > before && here >= after && here > WEAKEST) {
                continue;
            }
            let bend = before - 2.0 * here + after;
            let shift = if bend < 0.0 { (0.5 * (before - after) / bend).clamp(-0.5, 0.5) } else { 0.0 };
            let height = here - 0.25 * (before - after) * shift;
            let f0_hz = fine_rate / (lag as f64 + shift);
            if !(FLOOR_HZ..=CEILING_HZ).contains(&f0_hz) {
                continue;
            }
            // A peak over 1 comes from dividing by a small window tail; mirror it, as Boersma does.
            let periodicity = if height > 1.0 { 1.0 / height } else { height };
            look.offer(Candidate { f0_hz, periodicity, support: self.harmonics.support(f0_hz, clear) });
        }
    }
}

impl Look {
    /// Keeps the candidate if it is among the strongest.
    fn offer(&mut self, candidate: Candidate) {
        if self.count < CANDIDATES {
            self.candidates[self.count] = candidate;
            self.count += 1;
            return;
        }
        if let Some(weakest) = self.candidates.iter_mut().min_by(|a, b| strength(a).total_cmp(&strength(b)))
            && strength(weakest) < strength(&candidate)
        {
            *weakest = candidate;
        }
    }
}

/// How good a candidate is by itself: its periodicity, and a little for being the shorter of equal periods
/// (octave cost 0.01 per octave, Boersma 1993). Above 300 Hz it is 0.03: breath and rumble sound well below such a voice
/// and make its double period look the better one.
pub(crate) fn strength(candidate: &Candidate) -> f64 {
    let high = (candidate.f0_hz / 300.0).log2().max(0.0);
    candidate.periodicity + candidate.support + 0.01 * (candidate.f0_hz / FLOOR_HZ).log2() + 0.02 * high
}

/// The part of the spectrum in which periods are looked for: voices have most of their periodicity below 2 kHz, rooms
/// most of their rumble below 50 Hz and hiss above 3 kHz. Applied to power.
fn search_weight(f_hz: f64) -> f64 {
    let low = (f_hz / 45.0).powi(4);
    let low = low / (1.0 + low);
    let high = (f_hz / 2500.0).powi(4);
    low / (1.0 + high)
}

/// The next length whose transform is fast: a power of two times 1, 3 or 9.
fn good_size(at_least: usize) -> usize {
    let next = |factor: usize| at_least.div_ceil(factor).next_power_of_two() * factor;
    let size = next(1).min(next(3)).min(next(9));
    size + size % 2
}
