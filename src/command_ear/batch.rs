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
    /// The level that our own voice may have in it, dB re full scale; −∞ for none.
    pub own_db: f32,
    pub samples: Vec<i16>,
}

/// Collects blocks. Within a stretch (no gap, same `main`) batches are full; the last one of a stretch may be short.
#[derive(Debug)]
pub(crate) struct Batcher {
    start_s: f64,
    main: bool,
    own_db: f32,
    samples: Vec<i16>,
    next_s: f64,
}

impl Default for Batcher {
    fn default() -> Self {
        Self { start_s: 0.0, main: false, own_db: f32::NEG_INFINITY, samples: Vec::new(), next_s: 0.0 }
    }
}

impl Batcher {
    /// Takes a block in which our own voice may have the level `own_db`, and gives the batches that are complete.
    pub fn push(&mut self, start_s: f64, block: &[f32], main: bool, own_db: f32) -> Vec<Batch> {
        let mut batches = Vec::new();
        if (start_s - self.next_s).abs() > GAP_S || main != self.main {
            batches.extend(self.flush());
        }
        if self.samples.is_empty() {
            (self.start_s, self.main, self.own_db) = (start_s, main, own_db);
        }
        self.own_db = self.own_db.max(own_db);
        self.next_s = start_s + block.len() as f64 / f64::from(RATE_HZ);
        self.samples.extend(block.iter().map(|x| (x * 32767.0).round().clamp(-32768.0, 32767.0) as i16));
        let mut at = 0;
        while let Some(samples) = self.samples.get(at..at + BATCH) {
            batches.push(Batch { start_s: self.start_s, main, own_db: self.own_db, samples: samples.to_vec() });
            self.own_db = own_db;
            self.start_s += BATCH as f64 / f64::from(RATE_HZ);
            at += BATCH;
        }
        // Once, however many batches there are: a recording comes a minute at a time.
        self.samples.drain(..at);
        batches
    }

    /// What is left, if anything.
    pub fn flush(&mut self) -> Option<Batch> {
        let samples = std::mem::take(&mut self.samples);
        (!samples.is_empty()).then_some(Batch { start_s: self.start_s, main: self.main, own_db: self.own_db, samples })
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
            batches.extend(batcher.push(at as f64 / 16_000.0, &block, true, f32::NEG_INFINITY));
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
        assert!(batcher.push(0.0, &[0.5; 160], true, -40.0).is_empty());
        let changed = batcher.push(0.01, &[0.5; 160], false, f32::NEG_INFINITY);
        assert_eq!((changed.len(), changed.first().map(|b| (b.main, b.samples.len()))), (1, Some((true, 160))));
        assert_eq!(changed.first().map(|b| b.own_db), Some(-40.0));
        let gap = batcher.push(5.0, &[0.5; 160], false, f32::NEG_INFINITY);
        assert_eq!(gap.first().map(|b| (b.start_s, b.main)), Some((0.01, false)));
        assert_eq!(batcher.flush().map(|b| b.start_s), Some(5.0));
    }

    #[test]
    fn too_loud_and_senseless_samples_are_clamped() {
        let mut batcher = Batcher::default();
        batcher.push(0.0, &[9.0, -9.0, f32::NAN, 0.0], true, f32::NEG_INFINITY);
        assert_eq!(batcher.flush().map(|b| b.samples), Some(vec![32767, -32768, 0, 0]));
    }
}
