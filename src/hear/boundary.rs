//! The exact instant at which a voice begins or ends, from energy in steps of 2.5 ms.
//!
//! The pitch search sees 50 ms at a time, so its first voiced frame says only roughly when the voice began. Nearby, the
//! energy in the voice's band passes from the room's to the voice's level; the instant is where it does so.

use super::history::History;
use super::level::{SILENCE_DB, power_db};
use std::f64::consts::PI;

/// Steps per second.
pub(crate) const STEPS_PER_S: f64 = 400.0;

/// An onset may be asked for this long after it, s.
const MEMORY_S: f64 = 60.0;

/// The voice's level less this is the least that still counts as voice, dB.
const DEEPEST_DB: f64 = 20.0;
/// In loud rooms the limit comes up to this far under the voice, dB.
const SHALLOWEST_DB: f64 = 4.0;
/// The limit stands at least this far over the room just before or after, dB.
const OVER_ROOM_DB: f64 = 6.0;

/// Energy of the band from about 100 Hz to 2 kHz in steps of 2.5 ms.
#[derive(Debug, Clone)]
pub(crate) struct FineEnergy {
    rate_hz: f64,
    steps_db: History<f32>,
    low: f64,
    low_share: f64,
    smooth: f64,
    smooth_share: f64,
    sum: f64,
    count: u64,
    seen: u64,
    /// Seconds of the clock that brought no samples.
    passed_over_s: f64,
}

impl FineEnergy {
    pub fn new(rate_hz: f64) -> Self {
        let share = |corner_hz: f64| 1.0 - (-2.0 * PI * corner_hz / rate_hz).exp();
        Self {
            rate_hz,
            steps_db: History::keeping((MEMORY_S * STEPS_PER_S) as usize),
            low: 0.0,
            low_share: share(100.0),
            smooth: 0.0,
            smooth_share: share(2000.0),
            sum: 0.0,
            count: 0,
            seen: 0,
            passed_over_s: 0.0,
        }
    }

    pub fn push(&mut self, sample: f32) {
        let x = f64::from(sample);
        self.low += self.low_share * (x - self.low);
        self.smooth += self.smooth_share * (x - self.low - self.smooth);
        self.sum += self.smooth * self.smooth;
        self.count += 1;
        self.seen += 1;
        let edge = ((self.steps_db.end() + 1) as f64 * self.rate_hz / STEPS_PER_S).round() as u64;
        if self.seen >= edge {
            self.steps_db.push(power_db(self.sum / self.count as f64) as f32);
            self.sum = 0.0;
            self.count = 0;
        }
    }

    /// Lets go of what is older than [`MEMORY_S`] before `t_s`.
    pub fn forget_before_s(&mut self, t_s: f64) {
        self.steps_db.forget_before(self.position(t_s - MEMORY_S));
    }

    /// The clock moves on without samples.
    pub fn pass_over_s(&mut self, seconds: f64) {
        self.passed_over_s += seconds;
    }

    fn position(&self, t_s: f64) -> i64 {
        ((t_s - self.passed_over_s) * STEPS_PER_S).round() as i64
    }

    fn instant_s(&self, position: i64) -> f64 {
        position as f64 / STEPS_PER_S + self.passed_over_s
    }

    fn step(&self, position: i64) -> f64 {
        if position < 0 || position as u64 >= self.steps_db.end() {
            return SILENCE_DB;
        }
        f64::from(self.steps_db.get(position))
    }

    /// Mean power of some steps, dB.
    fn mean_db(&self, steps: std::ops::Range<i64>) -> f64 {
        let count = (steps.end - steps.start).max(1) as f64;
        power_db(steps.map(|k| 10f64.powf(self.step(k) / 10.0)).sum::<f64>() / count)
    }

    fn limit_db(voice_db: f64, room_db: f64) -> f64 {
        let middle = 0.5 * (voice_db + room_db).max(2.0 * room_db + 2.0 * OVER_ROOM_DB);
        middle.clamp(voice_db - DEEPEST_DB, voice_db - SHALLOWEST_DB)
    }

    /// The beginning of a voice whose first voiced frame stands at `t_s`.
    pub fn onset_s(&self, t_s: f64) -> f64 {
        let at = self.position(t_s);
        let limit = Self::limit_db(self.mean_db(at + 8..at + 28), self.mean_db(at - 44..at - 16));
        // A step counts if the energy stays: one of the next two periods' steps is over the limit as well.
        let first = (at - 12..at + 20).find(|k| self.step(*k) > limit && (1..4).any(|n| self.step(k + n) > limit));
        first.map_or(t_s, |k| self.instant_s(k)).max(0.0)
    }

    /// The end of a voice whose last voiced frame stands at `t_s`.
    pub fn offset_s(&self, t_s: f64) -> f64 {
        let at = self.position(t_s);
        let limit = Self::limit_db(self.mean_db(at - 28..at - 8), self.mean_db(at + 16..at + 44));
        let last = (at - 20..at + 12).rev().find(|k| self.step(*k) > limit && (1..4).any(|n| self.step(k - n) > limit));
        last.map_or(t_s, |k| self.instant_s(k + 1))
    }
}
