//! Smoothed cepstral peak prominence (Hillenbrand and Houde 1996; Maryn and Weenink 2015, J Voice 29, 35).
//!
//! As Praat's "To PowerCepstrogram: 60, 0.002, 5000, 50" and "Get CPPS: no, 0.01, 0.001, 60, 330, 0.05, Parabolic, 0.001, 0,
//! Straight, Robust", the settings in common use for the acoustic voice quality index: windows of 0.1 s every 2 ms at 10 kHz,
//! pre-emphasis from 50 Hz; the power cepstrum averaged over 10 ms and 1 ms of quefrency; its peak between 60 and 330 Hz, less
//! the straight line through it (Theil's incomplete robust fit over all quefrencies, which is what an end of 0 means).

use super::Sound;
use super::resample::resampled;
use statistics::median_in_place;
use std::f64::consts::PI;
use std::sync::Arc;
use transform::Complex;
use transform::{ComplexToReal, RealToComplex};

const RATE_HZ: f64 = 10_000.0;
const FLOOR_HZ: f64 = 60.0;
const CEILING_HZ: f64 = 330.0;
/// Six periods of the lowest voice, for the window is a Gaussian.
const WINDOW_S: f64 = 6.0 / FLOOR_HZ;
const STEP_S: f64 = 0.002;
const EMPHASIS_HZ: f64 = 50.0;
/// Frames averaged, 10 ms; and quefrencies on either side, the outermost counting half: 1 ms.
const FRAMES: usize = 5;
const SIDE: usize = 5;

/// CPPS of a stretch, dB; NaN where it is shorter than a window.
pub(super) fn cpps_db(sound: &Sound) -> f64 {
    // Nothing stands above half the rate, and its logarithm would be taken.
    let rate_hz = RATE_HZ.min(sound.rate_hz);
    let mut samples = resampled(&sound.samples, sound.rate_hz, rate_hz);
    let emphasis = (-2.0 * PI * EMPHASIS_HZ / rate_hz).exp();
    let mut before = 0.0;
    for sample in &mut samples {
        let here = *sample;
        *sample -= emphasis * before;
        before = here;
    }
    let length = (WINDOW_S * rate_hz).round() as usize;
    let duration_s = sound.samples.len() as f64 / sound.rate_hz;
    if duration_s < WINDOW_S || samples.len() < length {
        return f64::NAN;
    }
    let count = ((duration_s - WINDOW_S) / STEP_S).floor() as usize + 1;
    let first_s = duration_s / 2.0 - (count as f64 - 1.0) * STEP_S / 2.0;
    let mut cepstrum = Cepstrum::new(length, rate_hz);
    let mut newest: std::collections::VecDeque<Vec<f64>> = std::collections::VecDeque::with_capacity(FRAMES);
    let mut sum = 0.0;
    let mut judge = |frames: &std::collections::VecDeque<Vec<f64>>, cepstrum: &mut Cepstrum| sum += cepstrum.prominence_db(frames);
    for frame in 0..count {
        let start_s = first_s + frame as f64 * STEP_S - WINDOW_S / 2.0;
        let start = (start_s * rate_hz - 0.5).round().max(0.0) as usize;
        let start = start.min(samples.len() - length);
        if newest.len() == FRAMES {
            newest.pop_front();
        }
        newest.push_back(cepstrum.of(samples.get(start..start + length).unwrap_or(&[])));
        // A frame is averaged with two on either side; at the ends with what there is.
        if newest.len() > FRAMES / 2 {
            judge(&newest, &mut cepstrum);
        }
    }
    for _ in 0..(FRAMES / 2).min(count.saturating_sub(1)) {
        newest.pop_front();
        judge(&newest, &mut cepstrum);
    }
    sum / count as f64
}

struct Cepstrum {
    window: Vec<f64>,
    rate_hz: f64,
    forward: Arc<dyn RealToComplex<f64>>,
    back: Arc<dyn ComplexToReal<f64>>,
    frame: Vec<f64>,
    spectrum: Vec<Complex<f64>>,
    quefrency_s: Vec<f64>,
    scratch: Vec<f64>,
}

impl Cepstrum {
    fn new(length: usize, rate_hz: f64) -> Self {
        let size = length.next_power_of_two();
        let edge = (-12f64).exp();
        let middle = (length as f64 - 1.0) / 2.0;
        let window = (0..length).map(|k| {
            let phase = (k as f64 - middle) / (length as f64 + 1.0);
            ((-48.0 * phase * phase).exp() - edge) / (1.0 - edge)
        });
        Self {
            window: window.collect(),
            rate_hz,
            forward: transform::forward(size),
            back: transform::backward(size),
            frame: vec![0.0; size],
            spectrum: vec![Complex::default(); size / 2 + 1],
            quefrency_s: (0..=size / 2).map(|k| k as f64 / rate_hz).collect(),
            scratch: Vec::with_capacity(size),
        }
    }

    /// The power cepstrum of one window of sound; its scale does not matter.
    fn of(&mut self, samples: &[f64]) -> Vec<f64> {
        let mean = samples.iter().sum::<f64>() / samples.len().max(1) as f64;
        self.frame.fill(0.0);
        self.frame.iter_mut().zip(samples.iter().zip(&self.window)).for_each(|(slot, (x, w))| *slot = (x - mean) * w);
        // The lengths fit by construction.
        if self.forward.process(&mut self.frame, &mut self.spectrum).is_err() {
            return vec![0.0; self.quefrency_s.len()];
        }
        for bin in &mut self.spectrum {
            *bin = Complex::new((bin.norm_sqr() + 1e-300).ln(), 0.0);
        }
        if self.back.process(&mut self.spectrum, &mut self.frame).is_err() {
            return vec![0.0; self.quefrency_s.len()];
        }
        self.frame.iter().take(self.quefrency_s.len()).map(|x| x * x).collect()
    }

    /// Peak less trend of the mean of some cepstra, dB.
    fn prominence_db(&mut self, frames: &std::collections::VecDeque<Vec<f64>>) -> f64 {
        let size = self.quefrency_s.len();
        let mut mean = vec![0.0; size];
        for frame in frames {
            mean.iter_mut().zip(frame).for_each(|(m, x)| *m += x / frames.len() as f64);
        }
        // Ten places, the outermost two by half; at the ends what there is of them.
        let smooth = |k: usize| {
            let near = mean.get(k.saturating_sub(SIDE)..(k + SIDE + 1).min(size)).unwrap_or(&[]);
            let (mut sum, mut weight) = (near.iter().sum::<f64>(), near.len() as f64);
            for edge in [k.checked_sub(SIDE), Some(k + SIDE)].into_iter().flatten() {
                if let Some(value) = mean.get(edge) {
                    sum -= 0.5 * value;
                    weight -= 0.5;
                }
            }
            10.0 * (sum / weight + 1e-30).log10()
        };
        let smooth_db: Vec<f64> = (0..size).map(smooth).collect();
        let (slope, intercept) = self.trend(&smooth_db);
        let from = (self.rate_hz / CEILING_HZ).ceil() as usize;
        let to = ((self.rate_hz / FLOOR_HZ).floor() as usize).min(size - 2);
        let Some(best) = (from..=to).max_by(|a, b| value(&smooth_db, *a).total_cmp(&value(&smooth_db, *b))) else { return 0.0 };
        let (left, top, right) = (value(&smooth_db, best - 1), value(&smooth_db, best), value(&smooth_db, best + 1));
        let curve = 2.0 * top - left - right;
        let (shift, peak_db) = if curve > 0.0 && top >= left && top >= right {
            let tilt = 0.5 * (right - left);
            (tilt / curve, top + 0.5 * tilt * tilt / curve)
        } else {
            (0.0, top)
        };
        peak_db - (slope * (best as f64 + shift) / self.rate_hz + intercept)
    }

    /// Theil's incomplete fit: the median of the slopes from the n-th point of the first half to the n-th of the second, and the
    /// median of what is left.
    fn trend(&mut self, values_db: &[f64]) -> (f64, f64) {
        let half = values_db.len() / 2;
        let apart = values_db.len() - half;
        self.scratch.clear();
        let pairs =
            values_db.iter().zip(values_db.iter().skip(apart)).zip(self.quefrency_s.iter().zip(self.quefrency_s.iter().skip(apart)));
        self.scratch.extend(pairs.map(|((y1, y2), (x1, x2))| (y2 - y1) / (x2 - x1)));
        let slope = median_in_place(&mut self.scratch).unwrap_or(0.0);
        self.scratch.clear();
        self.scratch.extend(values_db.iter().zip(&self.quefrency_s).map(|(y, x)| y - slope * x));
        (slope, median_in_place(&mut self.scratch).unwrap_or(0.0))
    }
}

fn value(values: &[f64], at: usize) -> f64 {
    values.get(at).copied().unwrap_or(f64::NEG_INFINITY)
}
