//! Takes the rate of the pitch path down by a whole number, so that pitch costs the same at every rate.

use super::history::History;
use std::f64::consts::PI;

/// Low-pass filter and decimator. The output is in step with the input: output `k` stands at input `k * factor`.
#[derive(Debug, Clone)]
pub(crate) struct Decimator {
    factor: u64,
    taps: Vec<f32>,
    input: History<f32>,
    scratch: Vec<f32>,
    next: u64,
}

impl Decimator {
    /// The factor leaves 16 to 32 kHz, or what there is if that is less.
    pub fn new(rate_hz: u32) -> Self {
        let factor = u64::from(rate_hz / 16_000).max(1);
        let half = if factor == 1 { 0 } else { 12 * factor as i64 };
        // Windowed sinc (Hann); what folds back lies above 6 kHz, where the pitch path does not look.
        let cut = 0.5 / factor as f64;
        let mut taps: Vec<f64> = (-half..=half)
            .map(|n| {
                let x = 2.0 * cut * n as f64;
                let sinc = if n == 0 { 1.0 } else { (PI * x).sin() / (PI * x) };
                sinc * (0.5 + 0.5 * (PI * n as f64 / (half + 1) as f64).cos())
            })
            .collect();
        let sum: f64 = taps.iter().sum();
        taps.iter_mut().for_each(|t| *t /= sum);
        Self { factor, scratch: vec![0.0; taps.len()], taps: taps.iter().map(|t| *t as f32).collect(), input: History::new(), next: 0 }
    }

    pub fn factor(&self) -> u64 {
        self.factor
    }

    /// Input samples beyond `k * factor` needed for output `k`.
    pub fn lookahead(&self) -> u64 {
        (self.taps.len() / 2) as u64
    }

    /// One sample in; now and then one out.
    pub fn push(&mut self, sample: f32) -> Option<f32> {
        self.input.push(sample);
        if self.factor == 1 {
            self.input.forget_before(self.input.end() as i64);
            return Some(sample);
        }
        let centre = self.next * self.factor;
        if self.input.end() <= centre + self.lookahead() {
            return None;
        }
        let from = centre as i64 - self.lookahead() as i64;
        self.input.copy_to(from, &mut self.scratch);
        self.input.forget_before(from);
        self.next += 1;
        Some(self.taps.iter().zip(&self.scratch).map(|(t, x)| t * x).sum())
    }
}
