//! Time since the beginning, as the microphone counts it. The clock on the wall has no say here.

/// A block of sound, s.
pub const BLOCK_S: f64 = 0.01;

/// Frames of a block at this rate.
#[must_use]
pub fn block_frames(rate_hz: u32) -> usize {
    (rate_hz / 100) as usize
}

/// The clock of everything that is led, heard and said.
#[derive(Debug, Clone, Copy)]
pub enum Clock {
    /// One microphone from beginning to end: its frames, lost ones included.
    Frames { frames: u64, rate_hz: u32 },
    /// A microphone that may be unplugged and come back at another rate: seconds, block by block.
    Seconds(f64),
}

impl Clock {
    /// A clock that counts the frames of one microphone.
    #[must_use]
    pub fn of_frames(rate_hz: u32) -> Self {
        Self::Frames { frames: 0, rate_hz }
    }

    /// Seconds since the beginning.
    #[must_use]
    pub fn now_s(&self) -> f64 {
        match *self {
            Self::Frames { frames, rate_hz } => frames as f64 / f64::from(rate_hz),
            Self::Seconds(now_s) => now_s,
        }
    }

    /// A block has passed.
    pub fn pass_block(&mut self) {
        match self {
            Self::Frames { frames, rate_hz } => *frames += block_frames(*rate_hz) as u64,
            Self::Seconds(now_s) => *now_s += BLOCK_S,
        }
    }

    /// Time passed for which there is no block, s.
    pub fn skip(&mut self, passed_s: f64) {
        match self {
            Self::Frames { frames, rate_hz } => *frames += (passed_s * f64::from(*rate_hz)).round() as u64,
            Self::Seconds(now_s) => *now_s += passed_s,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn lost_frames_count_to_the_frame() {
        let mut clock = Clock::of_frames(44_100);
        clock.pass_block();
        clock.skip(1.0 / 44_100.0);
        assert_eq!(clock.now_s(), 442.0 / 44_100.0);
        let mut clock = Clock::Seconds(0.0);
        clock.pass_block();
        clock.skip(2.0);
        assert!((clock.now_s() - 2.01).abs() < 1e-12);
    }
}
