//! Something begins to stand out from the room while we are silent: a breath in, perhaps, or the first of a voice.

use command_ear::{Floor, to_db};

/// So far over the room, dB.
const STANDS_OUT_DB: f64 = 10.0;
/// Softer than this it is nobody near, dB re full scale.
const SOFTEST_DB: f64 = -60.0;
/// In so many of the last [`LOOKED_AT`] blocks of 10 ms: a tick or a single tap is shorter.
const BLOCKS: u32 = 3;
const LOOKED_AT: u16 = 0b1111;
/// It is over when none of the last ten blocks stood out.
const OVER: u16 = 0x3FF;
const BLOCK_S: f64 = 0.01;

/// Watches the microphone's blocks while nothing of us is in them.
#[derive(Debug, Default)]
pub struct Stirring {
    floor: Floor,
    /// The last blocks, the newest in the lowest bit: it stood out.
    stood_out: u16,
    stirs: bool,
}

impl Stirring {
    /// Takes a block's mean square. True in the block in which it is sure that something has begun, within 40 ms of its first sound.
    pub fn hear(&mut self, power: f64) -> bool {
        let floor_db = self.floor.follow(power, BLOCK_S);
        let level_db = to_db(power);
        let stands_out = level_db >= SOFTEST_DB && level_db >= floor_db + STANDS_OUT_DB;
        self.stood_out = self.stood_out << 1 | u16::from(stands_out);
        if self.stood_out & OVER == 0 {
            self.stirs = false;
        }
        let sure = (self.stood_out & LOOKED_AT).count_ones() >= BLOCKS;
        let begins = sure && !self.stirs;
        self.stirs |= sure;
        begins
    }

    /// We are heard ourselves, so nothing can be told.
    pub fn pause(&mut self) {
        (self.stood_out, self.stirs) = (0, false);
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// The blocks, counted from 1, at which something was told to begin, among blocks of these levels, dB, behind 3 s of the room.
    fn told(room_db: f64, levels_db: &[f64]) -> Vec<usize> {
        let power = |db: f64| 10f64.powf(db / 10.0);
        let mut stirring = Stirring::default();
        (0..300).for_each(|_| assert!(!stirring.hear(power(room_db)), "the room alone"));
        (1..=levels_db.len()).filter(|n| stirring.hear(power(levels_db[n - 1]))).collect()
    }

    #[test]
    fn a_beginning_is_told_once_within_40_ms() {
        assert_eq!(told(-70.0, &[-50.0; 100]), [3]);
        assert_eq!(told(-70.0, &[[-50.0; 20], [-70.0; 20], [-50.0; 20]].concat()), [3, 43]);
        assert_eq!(told(-70.0, &[[-50.0; 5], [-70.0; 5], [-50.0; 5]].concat()), [3], "too short a pause to be one");
    }

    #[test]
    fn taps_soft_sounds_and_our_own_voice_are_nobody() {
        assert_eq!(told(-70.0, &[-40.0, -40.0, -70.0, -70.0, -70.0, -40.0]), [0; 0], "a tap is short");
        assert_eq!(told(-70.0, &[-64.0; 100]), [0; 0], "hardly over the room");
        assert_eq!(told(-90.0, &[-65.0; 100]), [0; 0], "far away");
        let mut stirring = Stirring::default();
        (0..300).for_each(|_| assert!(!stirring.hear(1e-7)));
        assert!(!stirring.hear(1e-4) && !stirring.hear(1e-4));
        stirring.pause();
        assert!(!stirring.hear(1e-4), "what went before we spoke says nothing");
    }
}
