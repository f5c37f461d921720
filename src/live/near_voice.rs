//! Somebody begins to speak while our own voice is heard.

/// So much must the sound stand out from what is expected of our own voice, as a ratio of powers (10 dB).
const STANDS_OUT: f64 = 10.0;
/// Nor is it anybody where it is so much softer than our own voice at the microphone, as a ratio of powers (14 dB): what a canceller leaves
/// of single sounds stands out by 10 dB, too.
const UNDER_OURS: f64 = 1.0 / 25.0;
/// What is expected of our own voice is the loudest of late, forgotten by this much a block (3 dB in 100 ms): it may be late by a sound.
const FORGOTTEN: f64 = 0.933;
/// Softer than this it is nobody near, as a mean square (−50 dBFS).
const SOFTEST: f64 = 1e-5;
/// In so many of the last ten blocks of 10 ms.
const BLOCKS: u32 = 8;

/// Watches what the echo canceller gives, block by block.
#[derive(Debug, Default)]
pub struct NearVoice {
    /// The last ten blocks, the newest in the lowest bit: it stood out.
    stood_out: u16,
    left: f64,
    raw: f64,
}

impl NearVoice {
    /// Takes a block's mean square, and those which are expected of our own voice: what is left of it in the block, and what was there
    /// before the canceller; 0 for none. True while somebody speaks over us.
    pub fn hear(&mut self, power: f64, left: f64, raw: f64) -> bool {
        (self.left, self.raw) = (left.max(self.left * FORGOTTEN), raw.max(self.raw * FORGOTTEN));
        let stands_out = left > 0.0 && power >= SOFTEST && power >= STANDS_OUT * self.left && power >= UNDER_OURS * self.raw;
        self.stood_out = (self.stood_out << 1 | u16::from(stands_out)) & 0x3FF;
        self.stood_out.count_ones() >= BLOCKS
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// After how many blocks it is told, at most 30.
    fn told_after(power: f64, left: f64, raw: f64) -> Option<usize> {
        let mut near = NearVoice::default();
        (0..20).for_each(|_| assert!(!near.hear(left, left, raw), "our own voice alone"));
        (1..30).find(|_| near.hear(power, left, raw))
    }

    #[test]
    fn whoever_stands_out_from_our_voice_is_told_within_100_ms() {
        assert_eq!(told_after(1e-3, 1e-5, 1e-2), Some(8));
        assert_eq!(told_after(5e-5, 1e-5, 1e-4), None, "what the canceller may leave");
        assert_eq!(told_after(1e-4, 1e-6, 1e-2), None, "a single sound that the canceller leaves");
        assert_eq!(told_after(1e-3, 0.0, 0.0), None, "we are silent");
        assert_eq!(told_after(1e-6, 1e-8, 1e-7), None, "too soft to be anybody");
    }
}
