//! What the loudspeaker plays, in step with the microphone: the echo canceller's reference.
//!
//! A block that is handed over is not always played as it was: on a busy computer the device runs dry and plays silence, and blocks are
//! left out later to make up for it. Each such leap would put the echo elsewhere, and until the canceller has found it, all of our own voice
//! is left for the command ear. So the reference holds the same silence, and leaves out the same blocks.

use audio::Sent;
use std::collections::VecDeque;

/// More than this is kept of nothing, s: then the two are out of step for good, and the canceller is to look for the echo anew.
const LONGEST_S: f64 = 3.0;

/// Frames that are handed over and not yet heard with the microphone's, at the loudspeaker's rate.
#[derive(Debug, Default)]
pub struct PlayedStream {
    waiting: VecDeque<f32>,
    /// Frames that the microphone's clock has passed already, and that were not there yet.
    owed: usize,
    longest: usize,
}

impl PlayedStream {
    #[must_use]
    pub fn new(rate_hz: u32) -> Self {
        Self { waiting: VecDeque::new(), owed: 0, longest: (LONGEST_S * f64::from(rate_hz)) as usize }
    }

    /// A block was handed over.
    pub fn hand_over(&mut self, block: &[f32], sent: Sent) {
        if sent.anew {
            self.waiting.clear();
            self.owed = 0;
        }
        // However long it was: beyond what is kept, all is dropped below.
        self.waiting.extend(std::iter::repeat_n(0.0, sent.silence_before.min(2 * self.longest)));
        self.waiting.extend(block.iter().take(sent.kept));
        let paid = self.owed.min(self.waiting.len());
        self.waiting.drain(..paid);
        self.owed -= paid;
        if self.waiting.len() > self.longest {
            self.waiting.clear();
        }
    }

    /// Fills a block that is heard with the microphone's next one.
    pub fn take(&mut self, block: &mut [f32]) {
        let there = block.len().min(self.waiting.len());
        for (out, frame) in block.iter_mut().zip(self.waiting.drain(..there)) {
            *out = frame;
        }
        // What is not there yet is late from now on: the canceller follows, as it must where nothing waits.
        block[there..].fill(0.0);
    }

    /// So many frames' time passed that the microphone did not bring.
    pub fn pass(&mut self, frames: usize) {
        let there = frames.min(self.waiting.len());
        self.waiting.drain(..there);
        self.owed = (self.owed + frames - there).min(self.longest);
    }

    /// Frames that wait: by so many the reference is later than what is handed over.
    #[must_use]
    pub fn waiting(&self) -> usize {
        self.waiting.len()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const RATE_HZ: u32 = 48_000;
    const BLOCK: usize = 480;

    /// A device that is asked for 10 ms at a time, and what is said of it: blocks numbered from 1 on, silence as 0.
    struct Device {
        ring: VecDeque<f32>,
        starved: usize,
        stream: PlayedStream,
        said: f32,
    }

    impl Device {
        /// `ahead`: blocks of silence in the ring.
        fn new(ahead: usize) -> Self {
            let mut device = Self { ring: VecDeque::new(), starved: 0, stream: PlayedStream::new(RATE_HZ), said: 0.0 };
            device.ring.extend(vec![0.0; ahead * BLOCK]);
            device.stream.hand_over(&[], Sent { silence_before: ahead * BLOCK, kept: 0, anew: true });
            device
        }

        fn write(&mut self, left_out: bool, inserted: usize) {
            self.said += 1.0;
            let block = vec![self.said; BLOCK];
            let silence_before = std::mem::take(&mut self.starved) + inserted * BLOCK;
            self.ring.extend(vec![0.0; inserted * BLOCK]);
            let kept = if left_out { 0 } else { BLOCK };
            self.ring.extend(&block[..kept]);
            self.stream.hand_over(&block, Sent { silence_before, kept, anew: false });
        }

        /// What it plays in 10 ms.
        fn play(&mut self) -> f32 {
            if self.ring.is_empty() {
                self.starved += BLOCK;
                return 0.0;
            }
            self.ring.drain(..BLOCK).next().unwrap()
        }

        /// What the canceller is given with 10 ms of the microphone.
        fn reference(&mut self) -> f32 {
            let mut block = vec![9.0; BLOCK];
            self.stream.take(&mut block);
            assert!(block.iter().all(|x| *x == block[0]));
            block[0]
        }
    }

    #[test]
    fn a_block_goes_with_the_next_of_the_microphone() {
        let mut stream = PlayedStream::new(RATE_HZ);
        for n in 1..5 {
            stream.hand_over(&[n as f32; BLOCK], Sent::whole(BLOCK));
            let mut block = vec![0.0; BLOCK];
            stream.take(&mut block);
            assert!(block.iter().all(|x| *x == n as f32) && stream.waiting() == 0);
        }
    }

    #[test]
    fn however_late_the_program_is_the_reference_is_what_is_played() {
        let mut device = Device::new(8);
        let (mut played, mut references) = (Vec::new(), Vec::new());
        let mut due = 0;
        for n in 0..2_000 {
            played.push(device.play());
            due += 1;
            // It stands still for up to a fifth of a second now and then, and catches up at once.
            if n % 100 < 20 && n / 100 % 3 == 1 {
                continue;
            }
            for _ in 0..std::mem::take(&mut due) {
                references.push(device.reference());
                // As `FillKeeper` does: three blocks after a hole, and one less where too many wait.
                let inserted = if device.starved > 0 { 3 } else { 0 };
                let left_out = device.ring.len() > 12 * BLOCK;
                device.write(left_out, inserted);
            }
        }
        assert!(references.iter().filter(|x| **x == 0.0).count() > 50, "there were holes");
        let differ = played.iter().zip(&references).filter(|(a, b)| a != b).count();
        assert_eq!(differ, 0);
    }

    #[test]
    fn time_that_the_microphone_lost_passes_here_too() {
        let mut device = Device::new(4);
        device.write(false, 0);
        device.reference();
        // 60 ms: what waited was played, and 20 ms of silence.
        for _ in 0..7 {
            device.play();
        }
        device.stream.pass(6 * BLOCK);
        device.write(false, 0);
        assert_eq!(device.reference(), device.play());
        device.stream.hand_over(&[1.0; BLOCK], Sent { silence_before: 0, kept: BLOCK, anew: true });
        assert_eq!(device.stream.waiting(), BLOCK, "a device that begins anew owes nothing");
    }

    #[test]
    fn it_does_not_grow() {
        let mut stream = PlayedStream::new(RATE_HZ);
        (0..2_000).for_each(|_| stream.hand_over(&[0.5; BLOCK], Sent { silence_before: BLOCK, kept: BLOCK, anew: false }));
        assert!(stream.waiting() <= 3 * RATE_HZ as usize);
        (0..100).for_each(|_| stream.pass(RATE_HZ as usize));
        assert!(stream.owed <= 3 * RATE_HZ as usize);
    }
}
