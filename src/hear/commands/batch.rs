//! Cuts sound of any block size into batches of equal length, so that results do not depend on the block size.

use super::RATE_HZ;

/// Length of a batch, samples (30 ms).
const BATCH: usize = 480;
/// A block that begins this far from where the last one ended starts a new stretch, s.
pub(crate) const GAP_S: f64 = 0.02;

/// One batch of a stretch.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct Batch {
    pub start_s: f64,
    pub main: bool,
    pub samples: Vec<i16>,
}

/// Collects blocks. Within a stretch (no gap, same `main`) batches are full; the last one of a stretch may be short.
#[derive(Debug, Default)]
pub(crate) struct Batcher {
    start_s: f64,
    main: bool,
    samples: Vec<i16>,
    next_s: f64,
}

impl Batcher {
    /// Takes a block and gives the batches that are complete.
    pub fn push(&mut self, start_s: f64, block: &[f32], main: bool) -> Vec<Batch> {
        let mut batches = Vec::new();
        if (start_s - self.next_s).abs() > GAP_S || main != self.main {
            batches.extend(self.flush());
        }
        if self.samples.is_empty() {
            (self.start_s, self.main) = (start_s, main);
        }
        self.next_s = start_s + block.len() as f64 / f64::from(RATE_HZ);
        self.samples.extend(block.iter().map(|x| (x * 32767.0).round().clamp(-32768.0, 32767.0) as i16));
        while self.samples.len() >= BATCH {
            let rest = self.samples.split_off(BATCH);
            let samples = std::mem::replace(&mut self.samples, rest);
            batches.push(Batch { start_s: self.start_s, main, samples });
            self.start_s += BATCH as f64 / f64::from(RATE_HZ);
        }
        batches
    }

    /// What is left, if anything.
    pub fn flush(&mut self) -> Option<Batch> {
        let samples = std::mem::take(&mut self.samples);
        (!samples.is_empty()).then_some(Batch { start_s: self.start_s, main: self.main, samples })
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn run(blocks: &[usize]) -> Vec<Batch> {
        let mut batcher = Batcher::default();
        let mut at = 0;
        let mut batches = Vec::new();
        for &n in blocks {
            let block: Vec<f32> = (at..at + n).map(|i| (i % 1000) as f32 / 1000.0).collect();
            batches.extend(batcher.push(at as f64 / 16_000.0, &block, true));
            at += n;
        }
        batches.extend(batcher.flush());
        batches
    }

    #[test]
    fn any_chunking_gives_the_same_batches() {
        let whole = run(&[4000]);
        for blocks in [vec![160; 25], vec![7; 571].into_iter().chain([3]).collect(), vec![1024, 1024, 1024, 928]] {
            let cut = run(&blocks);
            assert_eq!(cut.len(), whole.len());
            for (a, b) in cut.iter().zip(&whole) {
                assert!((a.start_s - b.start_s).abs() < 1e-9 && a.samples == b.samples && a.main == b.main);
            }
        }
    }

    #[test]
    fn a_gap_or_a_change_of_path_ends_a_stretch() {
        let mut batcher = Batcher::default();
        assert!(batcher.push(0.0, &[0.5; 160], true).is_empty());
        let changed = batcher.push(0.01, &[0.5; 160], false);
        assert_eq!((changed.len(), changed.first().map(|b| (b.main, b.samples.len()))), (1, Some((true, 160))));
        let gap = batcher.push(5.0, &[0.5; 160], false);
        assert_eq!(gap.first().map(|b| (b.start_s, b.main)), Some((0.01, false)));
        assert_eq!(batcher.flush().map(|b| b.start_s), Some(5.0));
    }

    #[test]
    fn too_loud_and_senseless_samples_are_clamped() {
        let mut batcher = Batcher::default();
        batcher.push(0.0, &[9.0, -9.0, f32::NAN, 0.0], true);
        assert_eq!(batcher.flush().map(|b| b.samples), Some(vec![32767, -32768, 0, 0]));
    }
}
