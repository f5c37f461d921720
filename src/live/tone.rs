//! The short tone after which something is to be said.

/// Soft, and of a pitch that the hearing loss of old age spares, Hz and peak (common practice, no source).
const TONE_HZ: f64 = 660.0;
const TONE_PEAK: f64 = 0.1;

/// A tone under way, that swells and fades.
#[derive(Debug, Clone, Copy)]
pub struct Tone {
    length_s: f64,
    /// Frames that were played.
    frame: u64,
}

impl Tone {
    /// A tone of this length, s.
    #[must_use]
    pub fn new(length_s: f64) -> Self {
        Self { length_s, frame: 0 }
    }

    /// Nothing of it was played yet.
    #[must_use]
    pub fn begins(&self) -> bool {
        self.frame == 0
    }

    /// Adds its next frames to a block; false once it is over.
    pub fn add_to(&mut self, speaker: &mut [f32], rate_hz: f64) -> bool {
        for sample in speaker.iter_mut() {
            let t_s = self.frame as f64 / rate_hz;
            let swell = (std::f64::consts::PI * t_s / self.length_s).sin().max(0.0);
            if t_s < self.length_s {
                *sample += (TONE_PEAK * swell * (std::f64::consts::TAU * TONE_HZ * t_s).sin()) as f32;
            }
            self.frame += 1;
        }
        (self.frame as f64 / rate_hz) < self.length_s
    }
}
