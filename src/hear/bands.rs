//! The colour of a sound: its energy in bands along the mel scale, level taken out.
//!
//! A held vowel keeps its shape; speech changes it with every sound. The bands end at 3.5 kHz so that the shape means
//! the same at every rate from 8 kHz up.

use transform::Complex;

/// Number of bands.
pub(crate) const BANDS: usize = 16;
const LOWEST_HZ: f64 = 120.0;
const HIGHEST_HZ: f64 = 3500.0;
/// Bands this far under the strongest say nothing about the vowel, dB.
const DEPTH_DB: f32 = 35.0;

/// Mel scale of O'Shaughnessy (1987): 2595 lg(1 + f / 700).
fn mel(f_hz: f64) -> f64 {
    2595.0 * (1.0 + f_hz / 700.0).log10()
}

/// Sums spectra into bands.
pub(crate) struct BandShape {
    /// For each spectral line the lower of its two bands and its share in it.
    lines: Vec<Option<(usize, f32)>>,
}

impl BandShape {
    pub fn new(step_hz: f64, lines: usize) -> Self {
        let span = (mel(HIGHEST_HZ) - mel(LOWEST_HZ)) / (BANDS + 1) as f64;
        let lines = (0..lines)
            .map(|k| {
                let place = (mel(k as f64 * step_hz) - mel(LOWEST_HZ)) / span;
                ((0.0..(BANDS + 1) as f64).contains(&place)).then(|| (place.floor() as usize, 1.0 - (place - place.floor()) as f32))
            })
            .collect();
        Self { lines }
    }

    /// Band levels about their mean, dB.
    pub fn of(&self, spectrum: &[Complex<f32>]) -> [f32; BANDS] {
        let mut power = [1e-12f32; BANDS];
        for (bin, line) in spectrum.iter().zip(&self.lines) {
            let Some((lower, share)) = line else { continue };
            let p = bin.norm_sqr();
            // Line between triangle `lower - 1` (falling) and triangle `lower` (rising).
            if let Some(slot) = lower.checked_sub(1).and_then(|b| power.get_mut(b)) {
                *slot += p * share;
            }
            if let Some(slot) = power.get_mut(*lower) {
                *slot += p * (1.0 - share);
            }
        }
        let mut levels = power.map(|p| 10.0 * p.log10());
        let top = levels.iter().copied().fold(f32::MIN, f32::max);
        levels.iter_mut().for_each(|l| *l = l.max(top - DEPTH_DB));
        let mean = levels.iter().sum::<f32>() / BANDS as f32;
        levels.map(|l| l - mean)
    }
}

/// Root mean square difference of two shapes, dB.
pub(crate) fn distance(a: &[f32; BANDS], b: &[f32; BANDS]) -> f64 {
    let sum: f32 = a.iter().zip(b).map(|(x, y)| (x - y) * (x - y)).sum();
    f64::from((sum / BANDS as f32).sqrt())
}
