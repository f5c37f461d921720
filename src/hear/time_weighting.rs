//! Time weightings Fast and Slow of IEC 61672-1:2013: an exponential mean of the squared, frequency-weighted signal.

use super::level::power_db;
use super::weighting::{Weighting, WeightingFilter};

/// How fast the mean follows.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum TimeWeighting {
    /// Time constant 0.125 s; falls by 34.7 dB a second once the sound has stopped.
    Fast,
    /// Time constant 1 s; falls by 4.3 dB a second.
    Slow,
}

impl TimeWeighting {
    /// The time constant, s (IEC 61672-1:2013, 5.8.1).
    pub const fn tau_s(self) -> f64 {
        match self {
            Self::Fast => 0.125,
            Self::Slow => 1.0,
        }
    }
}

/// An exponential mean of squares. The step is exact for a square that is constant over a sample: 1 - exp(-1 / (rate tau)).
#[derive(Debug, Clone)]
pub struct TimeWeighted {
    share: f64,
    mean_square: f64,
}

impl TimeWeighted {
    /// A mean at rest, of samples at `rate_hz`.
    pub fn new(weighting: TimeWeighting, rate_hz: f64) -> Self {
        Self { share: -(-1.0 / (rate_hz * weighting.tau_s())).exp_m1(), mean_square: 0.0 }
    }

    /// Takes the square of one sample.
    pub fn push(&mut self, square: f64) {
        self.mean_square += self.share * (square - self.mean_square);
        // Far below anything audible; keeps silence from crawling through denormal numbers.
        if self.mean_square < 1e-30 {
            self.mean_square = 0.0;
        }
    }

    /// The level now, dB re full scale (a root mean square of 1 is 0 dB).
    pub fn level_db(&self) -> f64 {
        power_db(self.mean_square)
    }
}

/// A sound level meter: one frequency weighting, both time weightings and the energy mean.
#[derive(Debug, Clone)]
pub struct SoundLevelMeter {
    filter: WeightingFilter,
    fast: TimeWeighted,
    slow: TimeWeighted,
    /// Samples until the filter has settled and is counted.
    settling: u64,
    seen: u64,
    energy: f64,
    fast_max_db: f64,
    slow_max_db: f64,
}

/// What a meter has read over a stretch of sound, dB re full scale; relative until a calibration is added.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Reading {
    /// Energy mean (equivalent continuous level).
    pub equivalent_db: f64,
    /// Highest Fast level.
    pub fast_max_db: f64,
    /// Highest Slow level.
    pub slow_max_db: f64,
}

impl SoundLevelMeter {
    /// A meter for sound at `rate_hz`.
    pub fn new(weighting: Weighting, rate_hz: f64) -> Self {
        let filter = WeightingFilter::new(weighting, rate_hz);
        Self {
            settling: filter.delay() as u64,
            filter,
            fast: TimeWeighted::new(TimeWeighting::Fast, rate_hz),
            slow: TimeWeighted::new(TimeWeighting::Slow, rate_hz),
            seen: 0,
            energy: 0.0,
            fast_max_db: f64::NEG_INFINITY,
            slow_max_db: f64::NEG_INFINITY,
        }
    }

    /// Hears one sample; one that is no number counts as silence.
    pub fn push(&mut self, sample: f32) {
        let y = self.filter.step(if sample.is_finite() { sample } else { 0.0 });
        if self.settling > 0 {
            self.settling -= 1;
            return;
        }
        let square = y * y;
        self.seen += 1;
        self.energy += square;
        self.fast.push(square);
        self.slow.push(square);
        self.fast_max_db = self.fast_max_db.max(self.fast.level_db());
        self.slow_max_db = self.slow_max_db.max(self.slow.level_db());
    }

    /// The Fast level now, dB re full scale.
    pub fn fast_db(&self) -> f64 {
        self.fast.level_db()
    }

    /// The Slow level now, dB re full scale.
    pub fn slow_db(&self) -> f64 {
        self.slow.level_db()
    }

    /// What was read so far; nothing before the filter has settled.
    pub fn reading(&self) -> Option<Reading> {
        (self.seen > 0).then(|| Reading {
            equivalent_db: power_db(self.energy / self.seen as f64),
            fast_max_db: self.fast_max_db,
            slow_max_db: self.slow_max_db,
        })
    }
}
