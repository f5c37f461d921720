//! Whether the microphone gives any sound at all: even a quiet room is never the same sample over and over.

use crate::clock::BLOCK_S;

/// So long nothing but digital silence: the microphone is switched off, s.
const SWITCHED_OFF_S: f64 = 10.0;

/// How long it has been digitally silent.
#[derive(Debug, Default)]
pub struct Silence {
    lasts_s: f64,
}

impl Silence {
    /// Takes 10 ms of the microphone.
    pub fn take(&mut self, mic: &[f32]) {
        let first = mic.first().copied().unwrap_or_default();
        let dead = mic.iter().all(|sample| sample.to_bits() == first.to_bits());
        self.lasts_s = if dead { self.lasts_s + BLOCK_S } else { 0.0 };
    }

    /// The microphone is switched off.
    #[must_use]
    pub fn is_dead(&self) -> bool {
        self.lasts_s >= SWITCHED_OFF_S
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn only_the_same_sample_over_and_over_is_dead() {
        let mut silence = Silence::default();
        (0..1_001).for_each(|_| silence.take(&[0.25; 480]));
        assert!(silence.is_dead());
        silence.take(&[0.0, 1e-6]);
        assert!(!silence.is_dead());
    }
}
