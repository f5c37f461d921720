//! The level of the sound, the floor of the room, and whether something stands out above it.

use super::RATE_HZ;
use super::floor::{Floor, to_db};

/// Sound this far above the floor opens the gate, dB.
const OPEN_DB: f64 = 8.0;
/// Sound below this much above the floor counts as quiet, dB.
const CLOSE_DB: f64 = 6.0;
/// Corner of the one-pole high-pass that keeps rumble out, Hz.
const RUMBLE_HZ: f64 = 120.0;

/// What the meter says of one batch.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct Level {
    /// dB re full scale, above [`RUMBLE_HZ`].
    pub level_db: f64,
    /// The room, or our own voice in it if that is louder, dB re full scale.
    pub floor_db: f64,
    /// Stands out above the floor (with hysteresis).
    pub loud: bool,
}

/// Follows level and floor.
#[derive(Debug, Default)]
pub(crate) struct Meter {
    last_in: f64,
    last_out: f64,
    floor: Floor,
    loud: bool,
}

impl Meter {
    /// Takes the next samples, in which our own voice may have the level `own_db`, dB re full scale: it does not stand out.
    pub fn measure(&mut self, samples: &[i16], own_db: f32) -> Level {
        let coefficient = (-std::f64::consts::TAU * RUMBLE_HZ / f64::from(RATE_HZ)).exp();
        let mut power = 0.0;
        for &sample in samples {
            let x = f64::from(sample) / 32768.0;
            self.last_out = coefficient * (self.last_out + x - self.last_in);
            self.last_in = x;
            power += self.last_out * self.last_out;
        }
        let count = samples.len().max(1) as f64;
        power /= count;
        let floor_db = self.floor.follow(power, count / f64::from(RATE_HZ));
        let level_db = to_db(power);
        let floor_db = floor_db.max(f64::from(own_db));
        self.loud = level_db > floor_db + if self.loud { CLOSE_DB } else { OPEN_DB };
        Level { level_db, floor_db, loud: self.loud }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use rand::{Rng, SeedableRng, rngs::StdRng};

    /// White noise of so many seconds at a level in dB re full scale, in batches of 30 ms.
    fn noise(rng: &mut StdRng, db: f64, s: f64) -> Vec<Vec<i16>> {
        let peak = 32768.0 * 10f64.powf(db / 20.0) * 3f64.sqrt();
        (0..(s / 0.03) as usize).map(|_| (0..480).map(|_| rng.random_range(-peak..peak) as i16).collect()).collect()
    }

    fn share_loud(meter: &mut Meter, batches: &[Vec<i16>]) -> f64 {
        batches.iter().filter(|b| meter.measure(b, f32::NEG_INFINITY).loud).count() as f64 / batches.len() as f64
    }

    #[test]
    fn steady_noise_is_not_loud_and_a_burst_is() {
        for floor_db in [-70.0, -55.0, -46.0] {
            let mut rng = StdRng::seed_from_u64(1);
            let mut meter = Meter::default();
            assert_eq!(share_loud(&mut meter, &noise(&mut rng, floor_db, 5.0)), 0.0, "{floor_db}");
            assert!(share_loud(&mut meter, &noise(&mut rng, floor_db + 12.0, 0.4)) > 0.9, "{floor_db}");
            assert!(share_loud(&mut meter, &noise(&mut rng, floor_db, 1.0)) < 0.05, "{floor_db}");
        }
    }

    #[test]
    fn a_vowel_of_twenty_seconds_does_not_become_the_floor() {
        let mut rng = StdRng::seed_from_u64(2);
        let mut meter = Meter::default();
        share_loud(&mut meter, &noise(&mut rng, -60.0, 2.0));
        assert!(share_loud(&mut meter, &noise(&mut rng, -30.0, 20.0)) > 0.99);
    }

    #[test]
    fn a_louder_room_becomes_the_floor_in_the_end() {
        let mut rng = StdRng::seed_from_u64(3);
        let mut meter = Meter::default();
        share_loud(&mut meter, &noise(&mut rng, -65.0, 2.0));
        share_loud(&mut meter, &noise(&mut rng, -40.0, 32.0));
        assert_eq!(share_loud(&mut meter, &noise(&mut rng, -40.0, 5.0)), 0.0);
    }

    #[test]
    fn our_own_voice_does_not_stand_out_and_what_is_over_it_does() {
        let mut rng = StdRng::seed_from_u64(4);
        let mut meter = Meter::default();
        share_loud(&mut meter, &noise(&mut rng, -65.0, 2.0));
        let mut loud = |db: f64, own_db: f32| noise(&mut rng, db, 0.5).iter().filter(|b| meter.measure(b, own_db).loud).count();
        assert_eq!(loud(-40.0, -42.0), 0);
        assert!(loud(-30.0, -42.0) > 14);
        assert!(loud(-40.0, f32::NEG_INFINITY) > 14);
    }

    #[test]
    fn digital_silence_is_quiet() {
        let level = Meter::default().measure(&[0; 480], f32::NEG_INFINITY);
        assert!(!level.loud && level.floor_db >= crate::floor::LOWEST_FLOOR_DB);
    }
}
