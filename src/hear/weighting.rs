//! Frequency weightings A, C and Z of IEC 61672-1:2013, as formulas and as filters at any rate.
//!
//! The filter has two parts. The poles near 20, 108 and 738 Hz are low for every rate in use, so the bilinear
//! transform carries them well. The double pole at 12.2 kHz is near or above half the rate, where no such transform
//! is right; a short FIR filter, designed from the exact curve divided by what the first part gives, carries it and
//! mends what the first part got wrong. Its delay is a whole number of samples and is taken off by the caller.

use serde::{Deserialize, Serialize};
use std::f64::consts::{PI, SQRT_2};

/// Which curve.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub enum Weighting {
    A,
    C,
    /// No weighting.
    Z,
}

/// The four pole frequencies, Hz: IEC 61672-1:2013 annex E, computed from the definition
/// (fr = 1000 Hz, fL = 10^1.5 Hz, fH = 10^3.9 Hz, fA = 10^2.45 Hz, D² = 1/2).
pub fn poles_hz() -> [f64; 4] {
    let (fr2, fl2, fh2) = (1e6, 1e3, 10f64.powf(7.8));
    let d = 1.0 / SQRT_2;
    let b = (fr2 + fl2 * fh2 / fr2 - d * (fl2 + fh2)) / (1.0 - d);
    let c = fl2 * fh2;
    let root = (b * b - 4.0 * c).sqrt();
    let fa = 10f64.powf(2.45);
    let f1 = ((-b - root) / 2.0).sqrt();
    let f4 = ((-b + root) / 2.0).sqrt();
    [f1, (3.0 - 5f64.sqrt()) / 2.0 * fa, (3.0 + 5f64.sqrt()) / 2.0 * fa, f4]
}

impl Weighting {
    /// The letter that stands beside a level, "A".
    #[must_use]
    pub const fn letter(self) -> &'static str {
        match self {
            Self::A => "A",
            Self::C => "C",
            Self::Z => "Z",
        }
    }

    /// The curve at `f_hz`, dB re 1 kHz; minus infinity at 0 Hz for A and C.
    pub fn response_db(self, f_hz: f64) -> f64 {
        20.0 * (self.magnitude(f_hz) / self.magnitude(1000.0)).log10()
    }

    fn magnitude(self, f_hz: f64) -> f64 {
        let [f1, f2, f3, f4] = poles_hz().map(|f| f * f);
        let f = f_hz * f_hz;
        match self {
            Self::A => f4 * f * f / ((f + f1) * ((f + f2) * (f + f3)).sqrt() * (f + f4)),
            Self::C => f4 * f / ((f + f1) * (f + f4)),
            Self::Z => 1.0,
        }
    }

    /// The poles of the first part, Hz.
    fn low_poles_hz(self) -> Vec<f64> {
        let [f1, f2, f3, _] = poles_hz();
        match self {
            Self::A => vec![f1, f1, f2, f3],
            Self::C => vec![f1, f1],
            Self::Z => Vec::new(),
        }
    }
}

/// One first-order high-pass section, `y = g (x - x1) + p y1`.
#[derive(Debug, Clone, Copy)]
struct HighPass {
    gain: f64,
    pole: f64,
    x1: f64,
    y1: f64,
}

impl HighPass {
    fn new(corner_hz: f64, rate_hz: f64) -> Self {
        let k = (PI * corner_hz / rate_hz).tan();
        Self { gain: 1.0 / (1.0 + k), pole: (1.0 - k) / (1.0 + k), x1: 0.0, y1: 0.0 }
    }

    fn step(&mut self, x: f64) -> f64 {
        let y = self.gain * (x - self.x1) + self.pole * self.y1;
        self.x1 = x;
        // Far below anything audible; keeps silence from crawling through denormal numbers.
        self.y1 = if y.abs() < 1e-30 { 0.0 } else { y };
        y
    }

    fn magnitude(&self, omega: f64) -> f64 {
        let zero = 2.0 * (omega / 2.0).sin();
        let pole = (1.0 - 2.0 * self.pole * omega.cos() + self.pole * self.pole).sqrt();
        self.gain * zero / pole
    }
}

/// Half the length of the FIR part; it has `2 * HALF + 1` taps and delays by `HALF` samples.
const HALF: usize = 32;

/// A weighting as a filter.
#[derive(Debug, Clone)]
pub struct WeightingFilter {
    high_passes: Vec<HighPass>,
    /// The middle tap and those on one side of it; the filter is symmetric.
    taps: Vec<f64>,
    line: Vec<f64>,
    at: usize,
}

impl WeightingFilter {
    /// Designs the filter for a rate. Within 0.3 dB of the curve from 20 Hz to 0.45 times the rate, 8 to 96 kHz,
    /// and inside the limits of class 1 up to half the rate (tests).
    pub fn new(weighting: Weighting, rate_hz: f64) -> Self {
        let high_passes: Vec<_> = weighting.low_poles_hz().iter().map(|f| HighPass::new(*f, rate_hz)).collect();
        let reference = weighting.magnitude(1000.0);
        // The cosine series of the wanted gain on a fine grid, with a Hann window against the ripple of cutting it off.
        const GRID: usize = 1024;
        let wanted: Vec<f64> = (0..=GRID)
            .map(|k| {
                // At 0 Hz both curves vanish with the same power of f; their ratio near it is the limit.
                let omega = PI * (k as f64).max(0.25) / GRID as f64;
                let got: f64 = high_passes.iter().map(|h| h.magnitude(omega)).product();
                weighting.magnitude(omega * rate_hz / (2.0 * PI)) / reference / got.max(1e-12)
            })
            .collect();
        let taps = (0..=HALF)
            .map(|n| {
                let sum: f64 = wanted
                    .iter()
                    .enumerate()
                    .map(|(k, w)| {
                        let edge = if k == 0 || k == GRID { 0.5 } else { 1.0 };
                        edge * w * (PI * (k * n) as f64 / GRID as f64).cos()
                    })
                    .sum();
                let window = 0.5 + 0.5 * (PI * n as f64 / (HALF + 1) as f64).cos();
                sum / GRID as f64 * window
            })
            .collect();
        Self { high_passes, taps, line: vec![0.0; 4 * HALF + 2], at: 0 }
    }

    /// By how many samples the output comes late.
    pub const fn delay(&self) -> usize {
        HALF
    }

    /// One sample in, one out.
    pub fn step(&mut self, sample: f32) -> f64 {
        let x = self.high_passes.iter_mut().fold(f64::from(sample), |x, section| section.step(x));
        // The delay line is kept twice, one after the other, so that the newest stretch is always in one piece.
        let length = 2 * HALF + 1;
        self.line[self.at] = x;
        self.line[self.at + length] = x;
        self.at = (self.at + 1) % length;
        let line = &self.line[self.at..self.at + length];
        let sides: f64 = (1..=HALF).map(|n| self.taps[n] * (line[HALF - n] + line[HALF + n])).sum();
        self.taps[0] * line[HALF] + sides
    }

    /// Gain of the filter as designed at `f_hz`, dB.
    pub fn gain_db(&self, f_hz: f64, rate_hz: f64) -> f64 {
        let omega = 2.0 * PI * f_hz / rate_hz;
        let low: f64 = self.high_passes.iter().map(|h| h.magnitude(omega)).product();
        let high: f64 = self.taps[0] + 2.0 * (1..=HALF).map(|n| self.taps[n] * (omega * n as f64).cos()).sum::<f64>();
        20.0 * (low * high).abs().max(1e-12).log10()
    }
}
