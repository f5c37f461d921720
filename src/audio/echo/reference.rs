//! What was handed to the loudspeaker, given out again when and as fast as the microphone hears it.

use crate::AudioError;
use rubato::audioadapter_buffers::direct::InterleavedSlice;
use rubato::{Adjustable as _, Async, FixedAsync, Resampler as _, SincInterpolationParameters, SincInterpolationType, WindowFunction};
use std::collections::VecDeque;

/// What is kept, frames at 16 kHz: 3 s.
const KEPT: usize = 48_000;
/// Largest difference of the two clocks that is followed, parts per million. Crystals of cheap devices stay within 100
/// (common practice, no source); twice what is asked for.
pub(super) const MAX_DRIFT_PPM: f64 = 1_000.0;
/// Length of the interpolating filter, frames.
const FILTER: usize = 32;

/// A delay line that can be moved and stretched.
pub(super) struct Reference {
    /// The newest last.
    ring: VecDeque<f32>,
    /// Frames taken in since the beginning.
    pushed: u64,
    /// Next frame to be read; before the beginning and beyond the end there is silence.
    next: i64,
    /// The same as an exact place: what the output has reached, up to a constant.
    place: f64,
    drift_ppm: f64,
    stretch: Async<f32>,
    piece: Vec<f32>,
}

impl Reference {
    /// `block`: frames taken in and given out at a time.
    ///
    /// # Errors
    /// The resampler refuses (it never did).
    pub fn new(block: usize) -> Result<Self, AudioError> {
        let parameters = SincInterpolationParameters {
            sinc_len: FILTER,
            f_cutoff: None,
            interpolation: SincInterpolationType::Cubic,
            oversampling_factor: 128,
            window: WindowFunction::BlackmanHarris2,
        };
        let stretch = Async::new_sinc(1.0, 1.0 + 2e-6 * MAX_DRIFT_PPM, &parameters, block, 1, FixedAsync::Output)
            .map_err(|e| AudioError::Device(format!("the echo canceller's reference cannot be stretched: {e}")))?;
        let piece = Vec::with_capacity(stretch.input_frames_max());
        Ok(Self { ring: VecDeque::with_capacity(KEPT + block), pushed: 0, next: 0, place: 0.0, drift_ppm: 0.0, stretch, piece })
    }

    /// Takes the block that is handed to the loudspeaker now.
    pub fn push(&mut self, block: &[f32]) {
        self.ring.extend(block);
        self.pushed += block.len() as u64;
        let surplus = self.ring.len().saturating_sub(KEPT);
        self.ring.drain(..surplus);
    }

    /// Fills the block that the microphone hears now.
    pub fn take(&mut self, block: &mut [f32]) {
        let needed = self.stretch.input_frames_next();
        let oldest = self.pushed as i64 - self.ring.len() as i64;
        self.piece.clear();
        self.piece.extend(
            (self.next..self.next + needed as i64)
                .map(|n| usize::try_from(n - oldest).ok().and_then(|at| self.ring.get(at)).copied().unwrap_or(0.0)),
        );
        self.next += needed as i64;
        self.place += block.len() as f64 * (1.0 + 1e-6 * self.drift_ppm);
        let frames = block.len();
        let (Ok(from), Ok(mut to)) = (InterleavedSlice::new(&self.piece, 1, needed), InterleavedSlice::new_mut(&mut *block, 1, frames))
        else {
            return;
        };
        // The lengths are those asked for, so this cannot fail; were it to, nothing would be cancelled in this block.
        if self.stretch.process_into_buffer(&from, &mut to, None).is_err() {
            block.fill(0.0);
        }
    }

    /// Frames between handing over and giving out, up to a constant.
    pub fn delay(&self) -> f64 {
        self.pushed as f64 - self.place
    }

    /// Gives out what is so many frames older (negative: newer) from now on.
    pub fn move_by(&mut self, frames: i64) {
        self.next -= frames;
        self.place -= frames as f64;
    }

    /// The microphone's clock is slower than the loudspeaker's by so much: more is read per block.
    pub fn set_drift(&mut self, ppm: f64) {
        let ppm = ppm.clamp(-MAX_DRIFT_PPM, MAX_DRIFT_PPM);
        if self.stretch.set_resample_ratio(1.0 / (1.0 + 1e-6 * ppm), true).is_ok() {
            self.drift_ppm = ppm;
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn tone(n: f64) -> f32 {
        (n * 0.2).sin() as f32
    }

    fn played(reference: &mut Reference, blocks: usize) -> Vec<f32> {
        let mut out = Vec::new();
        let mut block = vec![0.0; 160];
        for b in 0..blocks {
            let handed: Vec<f32> = (0..160).map(|n| tone((b * 160 + n) as f64)).collect();
            reference.push(&handed);
            reference.take(&mut block);
            out.extend_from_slice(&block);
        }
        out
    }

    /// Where in the tone an output frame lies, from its phase and slope.
    fn fits(out: &[f32], at: usize, place: f64) -> bool {
        out[at..at + 50].iter().enumerate().all(|(n, got)| (got - tone(place + n as f64)).abs() < 0.01)
    }

    #[test]
    fn gives_back_what_was_handed_over_after_its_delay() {
        let mut reference = Reference::new(160).unwrap();
        reference.move_by(400);
        let out = played(&mut reference, 20);
        assert!((reference.delay() - 400.0).abs() < 1e-6);
        let constant = (0..64).find(|c| fits(&out, 2_000, 2_000.0 - 400.0 - f64::from(*c)));
        assert!(constant.is_some(), "a tone 400 frames late, and up to a filter's length more");
    }

    #[test]
    fn stretching_moves_it_by_so_many_frames_in_a_million() {
        let mut reference = Reference::new(160).unwrap();
        reference.move_by(400);
        reference.set_drift(500.0);
        played(&mut reference, 100);
        // 16,000 frames given out, 8 more read.
        assert!((reference.delay() - 392.0).abs() < 1e-6, "{}", reference.delay());
    }

    #[test]
    fn silence_where_nothing_was_handed_over() {
        let mut reference = Reference::new(160).unwrap();
        reference.move_by(-10_000);
        assert!(played(&mut reference, 10).iter().all(|s| *s == 0.0), "not handed over yet");
        reference.move_by(100_000);
        assert!(played(&mut reference, 10)[400..].iter().all(|s| *s == 0.0), "forgotten long ago");
    }
}
