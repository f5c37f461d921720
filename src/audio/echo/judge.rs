//! How much a canceller takes away, and what it leaves.

use std::collections::VecDeque;

/// Blocks of 10 ms put together before they are compared.
const CHUNK: u32 = 5;
/// Chunks over which the reduction is taken: 2 s of playback.
const RECENT: usize = 40;
/// Chunks over which what is left is learned: 4 s of playback. Longer ones would remember how it was before the canceller
/// had learned the room.
const LEARNED: usize = 80;
const _: () = assert!(RECENT <= LEARNED);
/// Least chunks before anything is said: 0.5 s.
const LEAST: usize = 10;
/// A room sounds on: the reference's power is taken to fall by this per block of 10 ms, dB (60 dB in 0.6 s, a furnished
/// living room by common practice, no source).
const FALL_DB: f64 = 1.0;
/// The reference must have this level for a chunk to count, dB re full scale …
const PLAYING_DB: f64 = -50.0;
/// … and be no further below its loudest, which is forgotten by 1 dB a second: in the pauses of a sentence the room's noise
/// would count as left over.
const BELOW_LOUDEST_DB: f64 = 15.0;
const FORGOTTEN_DB: f64 = 0.05;
/// Share of chunks that leave less than what is expected to be left; words of a person spoil some of the others.
const SHARE: f64 = 0.6;
/// And so much more is allowed for, dB.
const SPREAD_DB: f64 = 4.0;

/// Mean square of a block.
pub(super) fn power(block: &[f32]) -> f64 {
    block.iter().map(|s| f64::from(*s).powi(2)).sum::<f64>() / block.len().max(1) as f64
}

/// dB re full scale; silence gives −120.
pub(super) fn db(power: f64) -> f64 {
    10.0 * power.max(1e-12).log10()
}

/// The power of what was played, sounding on as in a room.
#[derive(Debug, Default)]
pub(super) struct Ringing {
    power: f64,
}

impl Ringing {
    /// Takes a block's mean square, gives what may still sound.
    pub fn next(&mut self, power: f64) -> f64 {
        self.power = power.max(self.power * 10f64.powf(-FALL_DB / 10.0));
        self.power
    }
}

/// Watches one canceller while something is played.
#[derive(Debug)]
pub(super) struct Judge {
    blocks: u32,
    sums: [f64; 3],
    loudest_db: f64,
    /// Reduction of the last chunks, dB. One word of a person spoils less than half of them.
    reductions: VecDeque<f64>,
    /// What was left, dB over what was played.
    left: VecDeque<f64>,
    /// The quantile of `left`, kept.
    expected_db: Option<f64>,
}

impl Default for Judge {
    fn default() -> Self {
        Self {
            blocks: 0,
            sums: [0.0; 3],
            loudest_db: PLAYING_DB,
            reductions: VecDeque::with_capacity(RECENT),
            left: VecDeque::with_capacity(LEARNED),
            expected_db: None,
        }
    }
}

impl Judge {
    /// Mean squares of one block: what sounds of what was played, the raw microphone, what the canceller made of it.
    pub fn take(&mut self, ringing: f64, raw: f64, cleaned: f64) {
        for (sum, power) in self.sums.iter_mut().zip([ringing, raw, cleaned]) {
            *sum += power / f64::from(CHUNK);
        }
        self.blocks += 1;
        if self.blocks < CHUNK {
            return;
        }
        let [played, raw, cleaned] = self.sums.map(db);
        (self.blocks, self.sums) = (0, [0.0; 3]);
        self.loudest_db = played.max(self.loudest_db - FORGOTTEN_DB);
        if played < PLAYING_DB.max(self.loudest_db - BELOW_LOUDEST_DB) {
            return;
        }
        keep(&mut self.reductions, raw - cleaned, RECENT);
        keep(&mut self.left, cleaned - played, LEARNED);
        if self.left.len() >= LEAST && (self.expected_db.is_none() || self.left.len().is_multiple_of(10)) {
            self.expected_db = quantile(&self.left, SHARE).map(|db| db + SPREAD_DB);
        }
    }

    /// What the canceller learned is no longer so.
    pub fn forget(&mut self) {
        *self = Self::default();
    }

    /// Median reduction over the last two seconds of playback, dB; none before there was enough.
    pub fn reduction_db(&self) -> Option<f64> {
        (self.reductions.len() >= LEAST).then(|| quantile(&self.reductions, 0.5)).flatten()
    }

    /// What is expected to be left over what was played, dB: most of the playback leaves less. None before there was enough.
    pub fn left_db(&self) -> Option<f64> {
        self.expected_db
    }
}

fn keep(list: &mut VecDeque<f64>, value: f64, most: usize) {
    if list.len() == most {
        list.pop_front();
    }
    list.push_back(value);
}

/// Without taking memory: it runs beside the sound.
fn quantile(values: &VecDeque<f64>, share: f64) -> Option<f64> {
    let mut sorted = [0.0; LEARNED];
    let sorted = sorted.get_mut(..values.len())?;
    sorted.iter_mut().zip(values).for_each(|(slot, value)| *slot = *value);
    sorted.sort_unstable_by(f64::total_cmp);
    statistics::nearest_place(sorted, share)
}
