//! How late the microphone hears what is played: the peak of the generalised cross-correlation.
//!
//! Knapp and Carter, "The generalized correlation method for estimation of time delay", IEEE Transactions on Acoustics,
//! Speech, and Signal Processing 24(4), 1976; the weighting is a softened phase transform (its exponent is common
//! practice, no source).

use std::collections::VecDeque;
use std::sync::Arc;
use transform::Complex32;
use transform::{ComplexToReal, RealToComplex};

/// Microphone frames per estimate at 16 kHz: 0.51 s. Longer ones smear where clocks drift.
const WINDOW: usize = 8_192;
/// Lags looked at, frames: from 10 ms before …
const EARLY: usize = 160;
/// … to 600 ms after the sound was handed over.
const LATE: usize = 9_600;
const TRANSFORM: usize = 32_768;
/// Band used, Hz: below it rooms hum, above it small loudspeakers and telephone-band devices give little.
const BAND_HZ: (f64, f64) = (250.0, 5_000.0);
/// 1 is the pure phase transform, 0 plain correlation.
const WHITENING: f32 = 0.8;
/// A path of this share of the strongest one's height stands.
const STANDS: f32 = 0.55;
/// Share of the past estimates' spectrum that is kept.
const KEPT: f32 = 0.4;

/// Where the echo is.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Peak {
    /// Frames by which the microphone lags behind what was handed over.
    pub lag: f64,
    /// Height over the root mean square of the correlation. Nothing but chance gives about 4.
    pub strength: f64,
}

/// Collects both signals and looks for the one in the other.
pub(super) struct DelayFinder {
    reference: VecDeque<f32>,
    mic: VecDeque<f32>,
    forward: Arc<dyn RealToComplex<f32>>,
    inverse: Arc<dyn ComplexToReal<f32>>,
    padded: Vec<f32>,
    played: Vec<Complex32>,
    heard: Vec<Complex32>,
    smoothed: Vec<Complex32>,
    scratch: Vec<Complex32>,
    correlation: Vec<f32>,
    band: std::ops::Range<usize>,
}

impl DelayFinder {
    pub fn new(rate_hz: u32) -> Self {
        let (forward, inverse) = (transform::forward(TRANSFORM), transform::backward(TRANSFORM));
        let bin = |hz: f64| (hz * TRANSFORM as f64 / f64::from(rate_hz)) as usize;
        let bins = TRANSFORM / 2 + 1;
        let scratch = vec![Complex32::default(); forward.get_scratch_len().max(inverse.get_scratch_len())];
        Self {
            reference: std::iter::repeat_n(0.0, WINDOW + EARLY + LATE).collect(),
            mic: std::iter::repeat_n(0.0, WINDOW + EARLY).collect(),
            forward,
            inverse,
            padded: vec![0.0; TRANSFORM],
            played: vec![Complex32::default(); bins],
            heard: vec![Complex32::default(); bins],
            smoothed: vec![Complex32::default(); bins],
            scratch,
            correlation: vec![0.0; TRANSFORM],
            band: bin(BAND_HZ.0)..bin(BAND_HZ.1).min(bins),
        }
    }

    /// Takes one block of both.
    pub fn push(&mut self, reference: &[f32], mic: &[f32]) {
        for (ring, block) in [(&mut self.reference, reference), (&mut self.mic, mic)] {
            ring.drain(..block.len().min(ring.len()));
            ring.extend(block);
        }
    }

    /// Where the echo lies by what was heard last; none where there is no sound in one of them. `near`: the lag of the path
    /// followed so far and how far it may have moved, frames. A room has many paths of like strength, so this one is kept
    /// while it stands.
    pub fn estimate(&mut self, near: Option<(f64, f64)>) -> Option<Peak> {
        // The microphone's window ends EARLY frames ago, so that the reference reaches as far beyond it.
        fill_windowed(&mut self.padded, self.mic.iter().take(WINDOW));
        self.forward.process_with_scratch(&mut self.padded, &mut self.heard, &mut self.scratch).ok()?;
        self.padded.fill(0.0);
        self.padded.iter_mut().zip(&self.reference).for_each(|(to, s)| *to = *s);
        self.forward.process_with_scratch(&mut self.padded, &mut self.played, &mut self.scratch).ok()?;
        let mut any = false;
        for bin in self.band.clone() {
            let cross = self.heard[bin] * self.played[bin].conj();
            let size = cross.norm();
            any |= size > 1e-9;
            self.smoothed[bin] = self.smoothed[bin] * KEPT + cross / (size.powf(WHITENING) + 1e-12);
        }
        if !any {
            return None;
        }
        self.heard.fill(Complex32::default());
        self.heard[self.band.clone()].copy_from_slice(&self.smoothed[self.band.clone()]);
        self.inverse.process_with_scratch(&mut self.heard, &mut self.correlation, &mut self.scratch).ok()?;
        self.peak(near)
    }

    /// The reference's frame 0 lies LATE frames before the microphone's: lag 0 stands at −LATE, modulo the transform.
    fn peak(&self, near: Option<(f64, f64)>) -> Option<Peak> {
        let at = |lag: i64| self.correlation[(lag - LATE as i64).rem_euclid(TRANSFORM as i64) as usize];
        let (first, last) = (-(EARLY as i64), LATE as i64);
        let highest = |from: i64, to: i64| (from.max(first)..=to.min(last)).max_by(|a, b| at(*a).abs().total_cmp(&at(*b).abs()));
        let mut best = highest(first, last)?;
        let mean_square = (first..=last).map(|lag| f64::from(at(lag)).powi(2)).sum::<f64>() / (last - first + 1) as f64;
        if mean_square <= 0.0 {
            return None;
        }
        let stands = |lag: &i64| at(*lag).abs() >= STANDS * at(best).abs();
        let kept = near.and_then(|(lag, radius)| highest((lag - radius).round() as i64, (lag + radius).round() as i64)).filter(stands);
        // Not followed yet: the first strong path, for what comes before the reference cannot be cancelled.
        best = kept.or_else(|| (first..=best).find(stands)).unwrap_or(best);
        while at(best + 1).abs() > at(best).abs() && best < last && kept.is_none() {
            best += 1;
        }
        // A parabola through three points; the band is wide enough for the peak to be a few frames wide.
        let (left, middle, right) = (at(best - 1).abs(), at(best).abs(), at(best + 1).abs());
        let bend = left - 2.0 * middle + right;
        let part = if bend < 0.0 { (0.5 * (left - right) / bend).clamp(-0.5, 0.5) } else { 0.0 };
        Some(Peak { lag: best as f64 + f64::from(part), strength: f64::from(middle) / mean_square.sqrt() })
    }
}

/// Hann window over the samples, then zeros.
fn fill_windowed<'a>(padded: &mut [f32], samples: impl Iterator<Item = &'a f32>) {
    padded.fill(0.0);
    for (n, (to, s)) in padded.iter_mut().zip(samples).enumerate() {
        *to = s * (std::f32::consts::PI * (n as f32 + 0.5) / WINDOW as f32).sin().powi(2);
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use rand::{Rng, SeedableRng, rngs::StdRng};

    /// Noise played, heard so many frames later under other noise of the same level.
    fn found(lag: i64, gain: f32) -> Option<Peak> {
        let mut rng = StdRng::seed_from_u64(5);
        let far: Vec<f32> = (0..40_000).map(|_| rng.random_range(-0.3..0.3)).collect();
        let mut finder = DelayFinder::new(16_000);
        let mut peak = None;
        for block in 0..200 {
            let heard = |n: usize| usize::try_from((block * 160 + n) as i64 - lag).ok().and_then(|n| far.get(n)).copied().unwrap_or(0.0);
            let mic: Vec<f32> = (0..160).map(|n| gain * heard(n) + rng.random_range(-0.1..0.1)).collect();
            finder.push(&far[block * 160..(block + 1) * 160], &mic);
            if block % 25 == 24 {
                peak = finder.estimate(None);
            }
        }
        peak
    }

    #[test]
    fn finds_delays_of_up_to_six_tenths_of_a_second() {
        for lag in [-100, 0, 320, 1_600, 6_400, 9_500] {
            let peak = found(lag, 0.3).unwrap();
            assert!((peak.lag - lag as f64).abs() < 0.5 && peak.strength > 8.0, "{lag}: {peak:?}");
            let inverted = found(lag, -0.3).unwrap();
            assert!((inverted.lag - lag as f64).abs() < 0.5, "{lag}: {inverted:?}");
        }
    }

    #[test]
    fn without_an_echo_it_is_not_sure_and_silence_gives_nothing() {
        assert!(found(100, 0.0).unwrap().strength < 7.0);
        let mut finder = DelayFinder::new(16_000);
        (0..100).for_each(|_| finder.push(&[0.0; 160], &[0.0; 160]));
        assert_eq!(finder.estimate(None), None);
    }
}
