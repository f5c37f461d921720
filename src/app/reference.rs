//! What left for the loudspeaker, kept until it is heard: the echo canceller's reference.

use std::collections::VecDeque;

/// Longest delay between handing over and hearing that is followed, blocks of 10 ms.
const LONGEST_BLOCKS: usize = 100;
/// The reference is not moved for a smaller change than this, blocks: a canceller must settle anew after each move.
const STEADY_BLOCKS: usize = 3;

/// A delay line of blocks.
#[derive(Debug, Default)]
pub struct Reference {
    /// The newest first.
    played: VecDeque<Vec<f32>>,
    delay_blocks: usize,
}

impl Reference {
    /// Takes the block that is handed to the loudspeaker now.
    pub fn push(&mut self, block: &[f32]) {
        let mut kept = if self.played.len() > LONGEST_BLOCKS { self.played.pop_back().unwrap_or_default() } else { Vec::new() };
        kept.clear();
        kept.extend_from_slice(block);
        self.played.push_front(kept);
    }

    /// The block that the loudspeaker plays now, `delay_s` after it was handed over; none before anything was.
    pub fn heard_now(&mut self, delay_s: f64) -> Option<&[f32]> {
        let wanted = ((delay_s * 100.0).round().max(0.0) as usize).min(LONGEST_BLOCKS);
        if wanted.abs_diff(self.delay_blocks) >= STEADY_BLOCKS {
            self.delay_blocks = wanted;
        }
        self.played.get(self.delay_blocks).map(Vec::as_slice)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn gives_what_was_handed_over_that_long_ago_and_ignores_jitter() {
        let mut reference = Reference::default();
        let mut heard = Vec::new();
        for n in 0..50_u8 {
            reference.push(&[f32::from(n)]);
            let jitter = if n % 2 == 0 { 0.0 } else { 0.01 };
            heard.push(reference.heard_now(0.1 + jitter).map(|block| block[0]));
        }
        assert_eq!(heard[9], None);
        assert_eq!(heard[10], Some(0.0));
        assert_eq!(heard[49], Some(39.0));
    }
}
