//! The floor of a room: the least short-time level of the last half minute.

use std::collections::VecDeque;

/// The floor is never taken lower than this, dB re full scale: digital silence has no level.
pub(crate) const LOWEST_FLOOR_DB: f64 = -72.0;
/// Until a quiet moment was met the floor is not taken higher than this, dB re full scale.
const HIGHEST_FIRST_FLOOR_DB: f64 = -45.0;
/// The floor is the least mean level of this many seconds. Longer than a held vowel, so that one does not become the floor.
const MEMORY_S: f64 = 30.0;
/// Levels are averaged over this many batches before the least is taken.
const AVERAGED: usize = 4;

/// Follows it: down at once, up only after [`MEMORY_S`].
#[derive(Debug, Default)]
pub struct Floor {
    averaged: VecDeque<f64>,
    /// Least power of each past second, oldest first.
    least_of_seconds: VecDeque<f64>,
    least_now: Option<f64>,
    in_second_s: f64,
}

impl Floor {
    /// Takes the mean power of the next `length_s`; gives the floor, dB re full scale.
    pub fn follow(&mut self, power: f64, length_s: f64) -> f64 {
        self.averaged.push_back(power);
        if self.averaged.len() > AVERAGED {
            self.averaged.pop_front();
        }
        if self.averaged.len() == AVERAGED {
            let mean = self.averaged.iter().sum::<f64>() / AVERAGED as f64;
            self.least_now = Some(self.least_now.map_or(mean, |least| least.min(mean)));
        }
        self.in_second_s += length_s;
        if self.in_second_s >= 1.0 {
            self.in_second_s = 0.0;
            self.least_of_seconds.extend(self.least_now.take());
            while self.least_of_seconds.len() as f64 > MEMORY_S {
                self.least_of_seconds.pop_front();
            }
        }
        let floor = self.least_of_seconds.iter().copied().chain(self.least_now).reduce(f64::min);
        let floor_db = floor.map_or(HIGHEST_FIRST_FLOOR_DB, to_db).max(LOWEST_FLOOR_DB);
        if (self.least_of_seconds.len() as f64) < MEMORY_S { floor_db.min(HIGHEST_FIRST_FLOOR_DB) } else { floor_db }
    }
}

/// Power to dB; silence gives -120.
pub fn to_db(power: f64) -> f64 {
    10.0 * power.max(1e-12).log10()
}
