//! Somebody begins to speak while our own voice is heard.

/// So much must the sound stand out from what is expected of our own voice, as a ratio of powers (10 dB).
const STANDS_OUT: f64 = 10.0;
/// Softer than this it is nobody near, as a mean square (−50 dBFS).
const SOFTEST: f64 = 1e-5;
/// In so many of the last ten blocks of 10 ms.
const BLOCKS: u32 = 8;

/// Watches what the echo canceller gives, block by block.
#[derive(Debug, Default)]
pub struct NearVoice {
    /// The last ten blocks, the newest in the lowest bit: it stood out.
    stood_out: u16,
}

impl NearVoice {
    /// Takes a block's mean square and that which is expected of our own voice in it, 0 for none. True while somebody speaks over us.
    pub fn hear(&mut self, power: f64, ours: f64) -> bool {
        let stands_out = ours > 0.0 && power >= SOFTEST && power >= STANDS_OUT * ours;
        self.stood_out = (self.stood_out << 1 | u16::from(stands_out)) & 0x3FF;
        self.stood_out.count_ones() >= BLOCKS
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// After how many blocks it is told, at most 30.
    fn told_after(power: f64, ours: f64) -> Option<usize> {
        let mut near = NearVoice::default();
        (0..20).for_each(|_| assert!(!near.hear(ours, ours), "our own voice alone"));
        (1..30).find(|_| near.hear(power, ours))
    }

    #[test]
    fn whoever_stands_out_from_our_voice_is_told_within_100_ms() {
        assert_eq!(told_after(1e-3, 1e-5), Some(8));
        assert_eq!(told_after(5e-5, 1e-5), None, "what the canceller may leave");
        assert_eq!(told_after(1e-3, 0.0), None, "we are silent");
        assert_eq!(told_after(1e-6, 1e-8), None, "too soft to be anybody");
    }
}
