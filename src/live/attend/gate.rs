//! Whether the sound is worth a recogniser: louder than the room for longer than a tick, and voiced. Costs next to nothing, for it runs all day.

use std::collections::VecDeque;

use command_ear::{Floor, to_db};

/// Samples of a block of 10 ms after the rate was brought down by plain averaging; what folds over does no harm to a level.
const SAMPLES: usize = 80;
const RATE_HZ: f64 = 8_000.0;
const BLOCK_S: f64 = 0.01;
/// Corner of the one-pole high-pass that keeps rumble out, Hz; as in the command ear's own meter.
const RUMBLE_HZ: f64 = 120.0;
/// Sound this far over the floor is loud, dB; with less it stays loud. As in the command ear's own meter, less 1 dB: it must not be
/// the deafer of the two.
const LOUD_DB: f64 = 7.0;
const STILL_LOUD_DB: f64 = 5.0;
/// It opens when so many of the last [`LOOKED_AT`] blocks were loud, and so many of those voiced: a tick, a knock and a tap of
/// dishes are shorter, a rush of air or water is not voiced.
const LOUD_BLOCKS: usize = 8;
const VOICED_BLOCKS: usize = 3;
const LOOKED_AT: usize = 16;
/// Pitches that count as voiced, Hz; low and high voices of adults with room on both sides.
const PITCH_HZ: (f64, f64) = (70.0, 400.0);
/// Share of the sound that comes again after a period, 0 to 1, from which on it is voiced. Low: soft and breathy voices must pass.
const PERIODIC: f64 = 0.4;
/// Blocks of 10 ms in which a period is looked for.
const WINDOW: usize = 4;
/// It closes after so much without anything loud: longer than the pause that ends a phrase in the command ear (0.66 s).
const CLOSES_S: f64 = 0.9;
/// Somebody speaks now, if something loud was heard so recently, s.
const TALKS_S: f64 = 0.3;

/// A gate of level and voicing.
#[derive(Debug, Default)]
pub struct SpeechGate {
    last_in: f64,
    last_out: f64,
    floor: Floor,
    loud_now: bool,
    /// Of the last blocks: loud, and voiced.
    recent: VecDeque<(bool, bool)>,
    window: VecDeque<f32>,
    open: bool,
    quiet_s: f64,
}

impl SpeechGate {
    /// Takes 10 ms of the microphone at any rate; true while the recogniser should hear.
    pub fn push(&mut self, block: &[f32]) -> bool {
        let power = self.take_in(block);
        let over_db = to_db(power) - self.floor.follow(power, BLOCK_S);
        self.loud_now = over_db > if self.loud_now { STILL_LOUD_DB } else { LOUD_DB };
        // A period is only looked for where it can matter.
        let voiced = self.loud_now && !self.open && is_voiced(self.window.make_contiguous());
        self.recent.push_back((self.loud_now, voiced));
        if self.recent.len() > LOOKED_AT {
            self.recent.pop_front();
        }
        self.quiet_s = if self.loud_now { 0.0 } else { self.quiet_s + BLOCK_S };
        if self.open {
            self.open = self.quiet_s < CLOSES_S;
        } else {
            let count = |which: fn(&&(bool, bool)) -> bool| self.recent.iter().filter(which).count();
            self.open = count(|block| block.0) >= LOUD_BLOCKS && count(|block| block.1) >= VOICED_BLOCKS;
        }
        self.open
    }

    /// Somebody speaks at this moment, or something sounds like it.
    #[must_use]
    pub fn talks(&self) -> bool {
        self.open && self.quiet_s < TALKS_S
    }

    /// Brings the rate down, takes rumble away, keeps the last blocks; gives the mean power.
    fn take_in(&mut self, block: &[f32]) -> f64 {
        let coefficient = 1.0 - std::f64::consts::TAU * RUMBLE_HZ / RATE_HZ;
        let mut power = 0.0;
        for n in 0..SAMPLES {
            let (from, to) = (n * block.len() / SAMPLES, (n + 1) * block.len() / SAMPLES);
            let part = block.get(from..to.max(from + 1)).unwrap_or_default();
            let mean = f64::from(part.iter().sum::<f32>()) / part.len().max(1) as f64;
            let mean = if mean.is_finite() { mean } else { 0.0 };
            self.last_out = coefficient * (self.last_out + mean - self.last_in);
            self.last_in = mean;
            power += self.last_out * self.last_out;
            self.window.push_back(self.last_out as f32);
        }
        while self.window.len() > WINDOW * SAMPLES {
            self.window.pop_front();
        }
        power / SAMPLES as f64
    }
}

/// The normalised autocorrelation (Rabiner 1977, from memory) has a peak among the periods of a voice.
fn is_voiced(sound: &[f32]) -> bool {
    let (shortest, longest) = ((RATE_HZ / PITCH_HZ.1) as usize, (RATE_HZ / PITCH_HZ.0) as usize);
    let energy = |part: &[f32]| part.iter().map(|x| x * x).sum::<f32>();
    // Every second lag is near enough to tell a voice from a noise.
    (shortest..=longest).step_by(2).any(|lag| {
        let (Some(early), Some(late)) = (sound.get(..sound.len().saturating_sub(lag)), sound.get(lag..)) else { return false };
        let both = (energy(early) * energy(late)).sqrt();
        let product: f32 = early.iter().zip(late).map(|(a, b)| a * b).sum();
        both > 0.0 && late.len() >= SAMPLES && f64::from(product / both) >= PERIODIC
    })
}

#[cfg(test)]
#[path = "tests/gate.rs"]
mod tests;
