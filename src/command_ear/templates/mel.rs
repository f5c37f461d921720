//! Log mel energies of speech, the picture of a word that templates are made of.
//!
//! The same steps as Kaldi's `fbank` (Povey et al., "The Kaldi speech recognition toolkit", ASRU 2011; parameters by their names
//! there): frames of 25 ms every 10 ms, each freed of its mean, pre-emphasised by 0.97 and Hamming-windowed; power spectrum
//! of 512 points; triangular filters equally spaced on mel = 1127 ln(1 + f / 700). Checked against the library
//! kaldi-native-fbank, see `benches/enrol/reference/`.

use crate::RATE_HZ;
use std::sync::Arc;
use transform::Complex;
use transform::RealToComplex;

/// Filters.
pub(super) const BANDS: usize = 23;
/// Samples from one frame to the next (10 ms).
pub(super) const HOP: usize = 160;
/// Samples in a frame (25 ms).
const WINDOW: usize = 400;
const FFT: usize = 512;
/// Edges of the lowest and the highest filter, Hz: no rumble, and nothing that a telephone-quality microphone lacks.
const LOW_HZ: f64 = 100.0;
const HIGH_HZ: f64 = 7_200.0;
const PRE_EMPHASIS: f32 = 0.97;
/// Power below this counts as this much; digital silence has no logarithm.
const LEAST_POWER: f32 = 1e-8;

/// Energies of one frame, dB re the power of a full-scale sample.
pub(super) type Bands = [f32; BANDS];

/// Turns samples into log mel energies.
pub(super) struct MelBank {
    fft: Arc<dyn RealToComplex<f32>>,
    window: Vec<f32>,
    /// For each filter its first FFT bin and its weights from there on.
    filters: Vec<(usize, Vec<f32>)>,
    frame: Vec<f32>,
    spectrum: Vec<Complex<f32>>,
    scratch: Vec<Complex<f32>>,
}

impl MelBank {
    pub fn new() -> Self {
        let fft = transform::forward(FFT);
        let step = std::f64::consts::TAU / (WINDOW - 1) as f64;
        Self {
            window: (0..WINDOW).map(|i| (0.54 - 0.46 * (step * i as f64).cos()) as f32).collect(),
            filters: filters(),
            frame: fft.make_input_vec(),
            spectrum: fft.make_output_vec(),
            scratch: fft.make_scratch_vec(),
            fft,
        }
    }

    /// The energies of every whole frame of `samples` at [`RATE_HZ`].
    pub fn energies(&mut self, samples: &[i16]) -> Vec<Bands> {
        samples.windows(WINDOW).step_by(HOP).map(|frame| self.frame(frame)).collect()
    }

    fn frame(&mut self, samples: &[i16]) -> Bands {
        let mean = samples.iter().map(|&x| f32::from(x)).sum::<f32>() / samples.len().max(1) as f32;
        self.frame.fill(0.0);
        // The first sample has no one before it and is taken for its own predecessor.
        let mut before = samples.first().map_or(0.0, |&x| f32::from(x) - mean);
        for ((to, &x), w) in self.frame.iter_mut().zip(samples).zip(&self.window) {
            let x = f32::from(x) - mean;
            *to = (x - PRE_EMPHASIS * before) * w / 32_768.0;
            before = x;
        }
        let mut bands = [10.0 * LEAST_POWER.log10(); BANDS];
        // Fails only for buffers of another length, and these are the plan's own.
        if self.fft.process_with_scratch(&mut self.frame, &mut self.spectrum, &mut self.scratch).is_ok() {
            for (band, (first, weights)) in bands.iter_mut().zip(&self.filters) {
                let power: f32 = self.spectrum.iter().skip(*first).zip(weights).map(|(x, w)| x.norm_sqr() * w).sum();
                *band = 10.0 * power.max(LEAST_POWER).log10();
            }
        }
        bands
    }
}

fn mel(hz: f64) -> f64 {
    1127.0 * (1.0 + hz / 700.0).ln()
}

fn filters() -> Vec<(usize, Vec<f32>)> {
    let (low, high) = (mel(LOW_HZ), mel(HIGH_HZ));
    let step = (high - low) / (BANDS + 1) as f64;
    (0..BANDS)
        .map(|band| {
            let (left, middle, right) = (low + band as f64 * step, low + (band + 1) as f64 * step, low + (band + 2) as f64 * step);
            let bins = (0..FFT / 2).filter_map(|bin| {
                let at = mel(bin as f64 * f64::from(RATE_HZ) / FFT as f64);
                let weight = if at <= middle { (at - left) / step } else { (right - at) / step };
                (at > left && at < right).then_some((bin, weight as f32))
            });
            let bins: Vec<(usize, f32)> = bins.collect();
            (bins.first().map_or(0, |b| b.0), bins.into_iter().map(|b| b.1).collect())
        })
        .collect()
}

#[cfg(test)]
#[path = "tests/mel.rs"]
mod tests;
