//! A-weighted level, one value every 10 ms.
//!
//! 0 dB is a root mean square of 1: a sine of amplitude 1 reads -3.01 dB. Each frame is the mean square under a Hann
//! window of 40 ms about the frame's centre (20 ms wide at half height): long enough that the pulses of a 60 Hz voice
//! do not show as ripple, short enough to follow a syllable.

use super::history::History;
use super::weighting::{Weighting, WeightingFilter};
use std::f64::consts::PI;

/// The lowest level given, dB: digital silence.
pub const SILENCE_DB: f64 = -120.0;

/// Length of the window, s.
pub(crate) const WINDOW_S: f64 = 0.040;

/// Power to dB, never under [`SILENCE_DB`] and never NaN.
pub fn power_db(power: f64) -> f64 {
    let db = 10.0 * power.log10();
    if db > SILENCE_DB { db } else { SILENCE_DB }
}

/// dB to power.
pub fn db_power(db: f64) -> f64 {
    10f64.powf(db / 10.0)
}

/// Weights samples and gives the level about any position not too long ago.
#[derive(Debug, Clone)]
pub(crate) struct LevelMeter {
    filter: WeightingFilter,
    squares: History<f32>,
    window: Vec<f64>,
    scratch: Vec<f32>,
}

impl LevelMeter {
    pub fn new(weighting: Weighting, rate_hz: f64) -> Self {
        let half = (WINDOW_S * rate_hz / 2.0).round().max(1.0) as usize;
        let window: Vec<f64> = (0..2 * half + 1).map(|k| 0.5 - 0.5 * (PI * (k + 1) as f64 / (half + 1) as f64).cos()).collect();
        let sum: f64 = window.iter().sum();
        Self {
            filter: WeightingFilter::new(weighting, rate_hz),
            squares: History::keeping(4 * window.len()),
            scratch: vec![0.0; window.len()],
            window: window.iter().map(|w| w / sum).collect(),
        }
    }

    pub fn push(&mut self, sample: f32) {
        let y = self.filter.step(sample);
        self.squares.push((y * y) as f32);
    }

    /// How many samples after `centre` must have been pushed before [`Self::level_db`] is final.
    pub fn lookahead(&self) -> u64 {
        (self.window.len() / 2 + self.filter.delay() + 1) as u64
    }

    /// Level about the sample at `centre`, dB.
    pub fn level_db(&mut self, centre: u64) -> f64 {
        let from = centre as i64 + self.filter.delay() as i64 - (self.window.len() / 2) as i64;
        self.squares.copy_to(from, &mut self.scratch);
        self.squares.forget_before(from);
        power_db(self.window.iter().zip(&self.scratch).map(|(w, s)| w * f64::from(*s)).sum())
    }
}
