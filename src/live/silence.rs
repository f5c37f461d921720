//! Whether the microphone gives any sound at all: even a quiet room is never the same sample over and over, but some microphones let
//! nothing through while nobody speaks.

use crate::clock::BLOCK_S;

/// A microphone that gives nothing but digital silence for so long is switched off, s.
const SWITCHED_OFF_S: f64 = 10.0;
/// So many blocks with sound in a row are no click of a plug.
const SOUND_BLOCKS: u32 = 5;
/// Silence within sound that is no dropout of the sound system, s.
const GATED_S: f64 = 0.2;
/// Silence before the first sound that is no starting up of the device, s.
const GATED_AT_FIRST_S: f64 = 2.0;

/// The sound came back, or went.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum SoundChange {
    Gone,
    Back,
}

/// How long it has been digitally silent, and whether that means anything.
#[derive(Debug)]
pub struct Silence {
    /// A microphone that lets nothing through while nobody speaks is only taken for dead after so long, s.
    gated_dead_s: f64,
    lasts_s: f64,
    sound_blocks: u32,
    /// There was sound.
    heard: bool,
    /// It fell silent before and came back by itself: silence says little of it.
    gates: bool,
    dead: bool,
}

impl Silence {
    /// `gated_dead_s`: after so long, s, a microphone is taken for dead that is known to fall silent while nobody speaks.
    #[must_use]
    pub fn new(gated_dead_s: f64) -> Self {
        Self { gated_dead_s, lasts_s: 0.0, sound_blocks: 0, heard: false, gates: false, dead: false }
    }

    /// It is known to fall silent while nobody speaks.
    pub fn expect_gate(&mut self) {
        self.gates = true;
    }

    /// It was found to fall silent while nobody speaks.
    #[must_use]
    pub fn gates(&self) -> bool {
        self.gates
    }

    /// Takes 10 ms of the microphone.
    pub fn take(&mut self, mic: &[f32]) -> Option<SoundChange> {
        let first = mic.first().copied().unwrap_or_default();
        if mic.iter().all(|sample| sample.to_bits() == first.to_bits()) {
            self.sound_blocks = 0;
            self.lasts_s += BLOCK_S;
        } else {
            self.sound_blocks += 1;
            if self.sound_blocks >= SOUND_BLOCKS {
                self.gates |= self.lasts_s >= if self.heard { GATED_S } else { GATED_AT_FIRST_S };
                (self.heard, self.lasts_s) = (true, 0.0);
            }
        }
        let dead_s = if self.gates { self.gated_dead_s } else { SWITCHED_OFF_S };
        let dead = self.lasts_s >= dead_s;
        if std::mem::replace(&mut self.dead, dead) == dead {
            return None;
        }
        Some(if dead { SoundChange::Gone } else { SoundChange::Back })
    }

    /// The microphone gives nothing and should.
    #[must_use]
    pub fn is_dead(&self) -> bool {
        self.dead
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const SILENT: [f32; 480] = [0.25; 480];
    const SOUND: [f32; 2] = [0.0, 1e-6];

    fn pass(silence: &mut Silence, block: &[f32], seconds: f64) -> Vec<SoundChange> {
        (0..(seconds * 100.0).round() as u32).filter_map(|_| silence.take(block)).collect()
    }

    #[test]
    fn the_same_sample_over_and_over_is_dead_and_a_click_is_no_sound() {
        let mut silence = Silence::new(180.0);
        assert_eq!(pass(&mut silence, &SILENT, 10.1), [SoundChange::Gone]);
        assert_eq!(pass(&mut silence, &SOUND, 0.04), []);
        assert!(silence.is_dead());
        pass(&mut silence, &SILENT, 1.0);
        assert_eq!(pass(&mut silence, &SOUND, 0.05), [SoundChange::Back]);
        assert!(!silence.is_dead());
    }

    #[test]
    fn a_microphone_that_always_gave_the_room_is_dead_soon_after_it_is_switched_off() {
        let mut silence = Silence::new(180.0);
        pass(&mut silence, &SILENT, 0.5);
        pass(&mut silence, &SOUND, 60.0);
        assert!(!silence.gates(), "the half second was the device starting up");
        assert_eq!(pass(&mut silence, &SILENT, 10.1), [SoundChange::Gone]);
    }

    #[test]
    fn a_microphone_that_falls_silent_between_words_is_not_dead_for_minutes() {
        let mut silence = Silence::new(180.0);
        for _ in 0..5 {
            assert_eq!(pass(&mut silence, &SOUND, 0.6), []);
            assert_eq!(pass(&mut silence, &SILENT, 9.0), []);
        }
        assert!(silence.gates());
        pass(&mut silence, &SOUND, 0.3);
        assert_eq!(pass(&mut silence, &SILENT, 170.0), []);
        assert_eq!(pass(&mut silence, &SILENT, 11.0), [SoundChange::Gone], "it can die all the same");
        // Nobody spoke for a while at the beginning.
        let mut quiet = Silence::new(180.0);
        pass(&mut quiet, &SILENT, 5.0);
        pass(&mut quiet, &SOUND, 1.0);
        assert_eq!(pass(&mut quiet, &SILENT, 100.0), []);
    }
}
