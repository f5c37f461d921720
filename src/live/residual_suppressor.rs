//! Residual echo suppression: turns down what the echo canceller leaves of our own voice, so that the command ear takes it for a
//! quiet room. Else it would be speech without an end, in which no command stands alone.

use rand::{Rng as _, SeedableRng as _, rngs::StdRng};

/// How far it is turned down, as a gain (−15 dB). More than that takes the "s" from "stop".
const FLOOR: f64 = 0.178;
/// Where the sound is no more than this over what is expected to be left, it is turned down entirely, as a ratio of powers
/// (2 dB) …
const CLOSED: f64 = 1.585;
/// … and from this ratio on not at all (8 dB). Chosen on rehearsed scenes, see `benches/own_voice.rs`.
const OPEN: f64 = 6.31;
/// The command ear takes for speech what is 8 dB over our own voice; the gate is open to what is 8 dB over what is expected of it. A
/// little less than that, or the soft ends of a word over our own would be lost, dB.
const STILL_OURS_DB: f64 = 2.0;
/// Mean square of the room before any is known (−50 dBFS).
const LOUDEST_ROOM: f64 = 1e-5;
/// Blocks of 10 ms for which it stays open after a sound that stood out: the pause inside "stop" is part of the word.
const HOLD: u32 = 20;
/// Share of the way to a lower gain in 10 ms: words end softly.
const RELEASE: f64 = 0.2;

/// A gain that follows the ratio of sound to what is expected of our own voice.
#[derive(Debug)]
pub struct ResidualSuppressor {
    gain: f64,
    /// Blocks for which it stays open.
    held: u32,
    room: Room,
    noise: StdRng,
}

/// The room's noise, as mean squares.
#[derive(Debug)]
struct Room {
    smoothed: f64,
    floor: f64,
}

impl Room {
    /// Share of the newest block in the average.
    const NEWEST: f64 = 0.1;
    /// The floor rises by this in a block of 10 ms: 1 dB in a second.
    const RISE: f64 = 1.0023;

    /// `ours`: our own voice is in it, which says nothing of the room.
    fn take(&mut self, power: f64, ours: bool) {
        if ours {
            self.smoothed = power.max(self.floor);
            return;
        }
        self.smoothed += (power - self.smoothed) * Self::NEWEST;
        self.floor = self.smoothed.min(self.floor * Self::RISE);
    }
}

impl Default for ResidualSuppressor {
    fn default() -> Self {
        Self { gain: 1.0, held: 0, room: Room { smoothed: LOUDEST_ROOM, floor: LOUDEST_ROOM }, noise: StdRng::seed_from_u64(1) }
    }
}

impl ResidualSuppressor {
    /// Turns down a block; `left_db`: level expected to be left of our own voice, dB re full scale, −∞ for none. Gives the level that
    /// our own voice may have in the block then.
    pub fn suppress_residual(&mut self, block: &mut [f32], left_db: f64) -> f64 {
        let power = block.iter().map(|s| f64::from(*s).powi(2)).sum::<f64>() / block.len().max(1) as f64;
        let left = 10f64.powf(left_db / 10.0);
        self.room.take(power, left > 0.0);
        let ratio = if left > 0.0 { power / left } else { f64::INFINITY };
        let wanted = if ratio <= CLOSED {
            FLOOR
        } else if ratio >= OPEN {
            1.0
        } else {
            // Straight in dB on both sides.
            FLOOR.powf((OPEN / ratio).ln() / (OPEN / CLOSED).ln())
        };
        let before = self.gain;
        // Never below the room: the command ear takes the quietest it hears for the room, and everything else for speech.
        let wanted = wanted.max((self.room.floor / power.max(1e-12)).sqrt().min(1.0));
        self.held = if ratio >= OPEN { HOLD } else { self.held.saturating_sub(1) };
        self.gain = match wanted > before {
            true => wanted,
            false if self.held > 0 => before,
            false => before + (wanted - before) * RELEASE,
        };
        let out = power * (0.5 * (before + self.gain)).powi(2);
        if left > 0.0 && out < self.room.floor {
            // A canceller may take the room away with our voice; when it ends, the room itself would stand out like speech.
            let amplitude = (3.0 * (self.room.floor - out)).sqrt() as f32;
            self.fill(block, before, amplitude);
            return left_db + 20.0 * self.gain.max(before).log10() - STILL_OURS_DB;
        }
        if before < 1.0 || self.gain < 1.0 {
            self.fill(block, before, 0.0);
        }
        left_db + 20.0 * self.gain.max(before).log10() - STILL_OURS_DB
    }

    /// Gain and, up to `amplitude`, noise like the room's.
    fn fill(&mut self, block: &mut [f32], before: f64, amplitude: f32) {
        // From one gain to the other within the block: a step would click.
        let frames = block.len().max(1) as f64;
        for (n, sample) in block.iter_mut().enumerate() {
            let gain = before + (self.gain - before) * (n as f64 + 1.0) / frames;
            *sample = (f64::from(*sample) * gain) as f32;
            if amplitude > 0.0 {
                *sample += self.noise.random_range(-amplitude..amplitude);
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn after(level_db: f64, left_db: f64) -> f64 {
        let sample = 10f64.powf(level_db / 20.0) as f32;
        let mut gate = ResidualSuppressor::default();
        let mut block = [1e-5; 160];
        (0..300).for_each(|_| _ = gate.suppress_residual(&mut block, f64::NEG_INFINITY));
        for _ in 0..50 {
            block.fill(sample);
            gate.suppress_residual(&mut block, left_db);
        }
        20.0 * f64::from(block[159]).log10()
    }

    #[test]
    fn what_is_left_of_our_voice_is_held_down_and_a_word_over_it_is_not() {
        assert!(after(-50.0, -50.0) < -64.0);
        assert!((after(-30.0, -50.0) + 30.0).abs() < 0.1);
        assert!((after(-60.0, f64::NEG_INFINITY) + 60.0).abs() < 0.1, "nothing is played");
        let between = after(-45.0, -50.0);
        assert!((-60.0..-46.0).contains(&between), "{between}");
    }

    #[test]
    fn it_goes_no_lower_than_the_room() {
        let mut gate = ResidualSuppressor::default();
        let mut block = [0.001; 160];
        (0..300).for_each(|_| _ = gate.suppress_residual(&mut block, f64::NEG_INFINITY));
        for _ in 0..50 {
            block.fill(0.003);
            gate.suppress_residual(&mut block, -45.0);
        }
        let held_db = 10.0 * (block.iter().map(|s| f64::from(*s).powi(2)).sum::<f64>() / 160.0).log10();
        assert!((held_db + 60.0).abs() < 6.0, "the room has -60 dB, held down to {held_db}");
    }

    #[test]
    fn it_opens_at_once() {
        let mut gate = ResidualSuppressor::default();
        let mut quiet = [0.003; 160];
        (0..50).for_each(|_| _ = gate.suppress_residual(&mut quiet, -40.0));
        let mut word = [0.1; 160];
        gate.suppress_residual(&mut word, -40.0);
        assert!(word[159] > 0.099 && word[80] > 0.04);
    }
}
