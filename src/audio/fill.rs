//! Keeps the loudspeaker's ring at a small fill while two clocks drift.

/// Seconds of fill to begin with: a microphone that comes in pieces of 40 ms, a loudspeaker that takes 20 ms, and some
/// to spare. Where less will do it comes down in the first silence.
pub(super) const TARGET_S: f64 = 0.08;
/// Blocks put in after the ring ran dry.
const REFILL: u32 = 3;
/// Blocks over which the smallest fill is taken.
const WINDOW: u32 = 100;
/// Smallest fill in a window, in blocks: below the first one is put in, above the second some are left out.
const LOW: f64 = 1.0;
const HIGH: f64 = 3.0;
/// Fill in blocks beyond which a block is left out even if it sounds.
const FULL: f64 = 25.0;

/// What to do with one block of 10 ms.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Action {
    Push,
    /// Leave it out.
    Drop,
    /// Put so many blocks of silence before it.
    Insert(u32),
}

/// Decides by the smallest fill of the last second; only silent blocks are left out or put in, so that no word is cut.
#[derive(Debug)]
pub(super) struct FillKeeper {
    block: f64,
    min: f64,
    seen: u32,
    /// Blocks to leave out (negative) or put in (positive) as silence allows.
    owed: i32,
}

impl FillKeeper {
    /// `block`: frames in 10 ms.
    pub fn new(block: usize) -> Self {
        Self { block: block.max(1) as f64, min: f64::INFINITY, seen: 0, owed: 0 }
    }

    /// `fill`: frames in the ring before this block; `silent`: the block holds no sound; `dry`: the ring ran out since
    /// the block before.
    pub fn decide(&mut self, fill: usize, silent: bool, dry: bool) -> Action {
        let fill = fill as f64 / self.block;
        if dry {
            // There is a hole already. Put in at once what would be short again next time.
            self.start_over();
            return Action::Insert(REFILL);
        }
        if fill > FULL {
            self.start_over();
            return Action::Drop;
        }
        self.min = self.min.min(fill);
        self.seen += 1;
        if self.seen == WINDOW {
            self.owed = if self.min < LOW {
                1
            } else if self.min > HIGH {
                -((self.min - (LOW + HIGH) / 2.0) as i32)
            } else {
                0
            };
            self.min = f64::INFINITY;
            self.seen = 0;
        }
        match self.owed {
            n if silent && n < 0 => {
                self.owed += 1;
                Action::Drop
            }
            n if silent && n > 0 => {
                self.owed -= 1;
                Action::Insert(1)
            }
            _ => Action::Push,
        }
    }

    fn start_over(&mut self) {
        self.min = f64::INFINITY;
        self.seen = 0;
        self.owed = 0;
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// A player that takes 20 ms at a time while blocks come two by two; gives holes, sounding blocks left out, and
    /// the largest fill of the last half, in blocks.
    fn run(blocks: u32, ppm: f64, silent: impl Fn(u32) -> bool) -> (u32, u32, f64) {
        let mut keeper = FillKeeper::new(480);
        let (mut fill, mut taken, mut holes, mut cut, mut dry, mut highest) = (2_400.0_f64, 0.0_f64, 0, 0, false, 0.0_f64);
        for n in 0..blocks {
            if n % 2 == 0 {
                let due = f64::from(n) * 480.0 * (1.0 + ppm * 1e-6);
                while due - taken >= 960.0 {
                    taken += 960.0;
                    fill -= 960.0;
                    if fill < 0.0 {
                        holes += 1;
                        fill = 0.0;
                        dry = true;
                    }
                }
            }
            match keeper.decide(fill as usize, silent(n), dry) {
                Action::Push => fill += 480.0,
                Action::Drop => cut += u32::from(!silent(n)),
                Action::Insert(k) => fill += 480.0 * f64::from(k + 1),
            }
            dry = false;
            if n > blocks / 2 {
                highest = highest.max(fill / 480.0);
            }
        }
        (holes, cut, highest)
    }

    #[test]
    fn drift_is_taken_up_in_the_silence_between_lines() {
        // Two seconds of speech in each five.
        let speech = |n: u32| n % 500 >= 200;
        for ppm in [0.0, 100.0, -100.0, 500.0, -500.0] {
            let (holes, cut, highest) = run(60_000, ppm, speech);
            assert_eq!((holes, cut), (0, 0), "{ppm} ppm");
            assert!(highest < 10.0, "{ppm} ppm: {highest} blocks");
        }
    }

    #[test]
    fn a_ring_that_ran_dry_is_filled_at_once() {
        let mut keeper = FillKeeper::new(480);
        assert_eq!(keeper.decide(0, false, true), Action::Insert(REFILL));
        assert_eq!(keeper.decide(0, false, false), Action::Push);
    }

    #[test]
    fn an_overfull_ring_comes_down_again() {
        let mut keeper = FillKeeper::new(480);
        assert_eq!(keeper.decide(480 * 26, false, false), Action::Drop);
        let mut keeper = FillKeeper::new(480);
        let dropped = (0..150).filter(|_| keeper.decide(480 * 12, true, false) == Action::Drop).count();
        assert_eq!(dropped, 10);
    }
}
