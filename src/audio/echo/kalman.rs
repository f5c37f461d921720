//! An echo canceller that spares what a person says over our own voice: the partitioned-block frequency-domain Kalman filter.
//!
//! Each tap of the echo path is estimated together with how uncertain it still is, and the step of the adaptation is the smaller
//! the more of the sound cannot be our own: no detector of a second voice is needed. G. Enzner and P. Vary, "Frequency-domain
//! adaptive Kalman filter for acoustic echo control in hands-free telephones", Signal Processing 86 (2006) 1140-1156; in
//! partitions: F. Kuech, E. Mabande and G. Enzner, "State-space architecture of the partitioned-block-based acoustic echo
//! controller", ICASSP 2014. (Equations from memory of both.)
//!
//! Our own code, because no library at hand has it, and those at hand take up to a third of a word away with the echo
//! (figures: `docs/performance.md`, command: `cargo bench --bench own_voice -- over`).

use crate::EchoCanceller;
use std::sync::Arc;
use transform::Complex;
use transform::{ComplexToReal, RealToComplex};

/// How far the echo path stays what it was from block to block of 10 ms: a path that changes entirely within some 10 s. Chosen, like
/// [`DOUBT`], on scenes with and without clocks apart (`benches/own_voice/scene.rs`, odd-numbered words).
const STAYS: f32 = 0.999;
/// Variance of a tap's spectrum before anything is known: an echo at most as loud as what was played.
const DOUBT: f32 = 0.05;
/// Below this power nothing is learned (−100 dBFS in a block).
const NOTHING: f32 = 1e-8;

type Spectrum = Vec<Complex<f32>>;

/// See the module. Holds no memory but its own; takes none after [`KalmanCanceller::new`].
pub struct KalmanCanceller {
    block: usize,
    forward: Arc<dyn RealToComplex<f32>>,
    backward: Arc<dyn ComplexToReal<f32>>,
    /// Parts of the echo path, one block each; their uncertainty; and spectra of what was played, a ring.
    path: Vec<Spectrum>,
    doubt: Vec<Vec<f32>>,
    played: Vec<Spectrum>,
    newest: usize,
    before: Vec<f32>,
    time: Vec<f32>,
    spectrum: Spectrum,
    error: Spectrum,
    /// Power of the error as the recursion expects it.
    expected: Vec<f32>,
    scratch_forward: Spectrum,
    scratch_backward: Spectrum,
}

impl KalmanCanceller {
    /// `block`: frames per block; `tail_s`: longest echo that is followed, delay included.
    #[must_use]
    pub fn new(rate_hz: u32, block: usize, tail_s: f64) -> Self {
        let (forward, backward) = (transform::forward(2 * block), transform::backward(2 * block));
        let parts = ((tail_s * f64::from(rate_hz)) as usize).div_ceil(block).max(1);
        let spectrum = forward.make_output_vec();
        let bins = spectrum.len();
        Self {
            block,
            path: vec![spectrum.clone(); parts],
            doubt: vec![vec![DOUBT; bins]; parts],
            played: vec![spectrum.clone(); parts],
            newest: 0,
            before: vec![0.0; block],
            time: vec![0.0; 2 * block],
            error: spectrum.clone(),
            spectrum,
            expected: vec![0.0; bins],
            scratch_forward: forward.make_scratch_vec(),
            scratch_backward: backward.make_scratch_vec(),
            forward,
            backward,
        }
    }

    /// Part and place in the ring of what was played when it reaches that part.
    fn pairs(parts: usize, newest: usize) -> impl Iterator<Item = (usize, usize)> {
        (0..parts).map(move |part| (part, (newest + part) % parts))
    }

    fn transform_forward(&mut self) {
        // Lengths come from the plan itself, the only thing that can be wrong here.
        let _ = self.forward.process_with_scratch(&mut self.time, &mut self.spectrum, &mut self.scratch_forward);
    }

    /// The inverse transform, scaled. The plan wants the first and last bin real; rounding may leave a trace.
    fn transform_back(&mut self) {
        if let Some(first) = self.spectrum.first_mut() {
            first.im = 0.0;
        }
        if let Some(last) = self.spectrum.last_mut() {
            last.im = 0.0;
        }
        let _ = self.backward.process_with_scratch(&mut self.spectrum, &mut self.time, &mut self.scratch_backward);
        let scale = 1.0 / self.time.len() as f32;
        self.time.iter_mut().for_each(|x| *x *= scale);
    }

    /// The echo that is expected now, in the second half of `time`.
    fn estimate(&mut self) {
        self.spectrum.fill(Complex::default());
        for (part, at) in Self::pairs(self.path.len(), self.newest) {
            for ((sum, w), x) in self.spectrum.iter_mut().zip(&self.path[part]).zip(&self.played[at]) {
                *sum += w * x;
            }
        }
        self.transform_back();
    }

    /// What was left, [`Self::error`], moves the path and its uncertainty.
    fn learn(&mut self) {
        self.expected.iter_mut().zip(&self.error).for_each(|(p, e)| *p = e.norm_sqr() + 1e-10);
        for (part, at) in Self::pairs(self.path.len(), self.newest) {
            for ((sum, doubt), x) in self.expected.iter_mut().zip(&self.doubt[part]).zip(&self.played[at]) {
                *sum += doubt * x.norm_sqr();
            }
        }
        for (part, at) in Self::pairs(self.path.len(), self.newest) {
            for k in 0..self.expected.len() {
                let (x, doubt) = (self.played[at][k], self.doubt[part][k]);
                let step = doubt / self.expected[k];
                let known = (1.0 - step * x.norm_sqr()).max(0.0);
                self.doubt[part][k] = STAYS * STAYS * known * doubt + (1.0 - STAYS * STAYS) * self.path[part][k].norm_sqr();
                self.path[part][k] += x.conj() * self.error[k] * step;
            }
            // A part is one block long: what circular convolution puts behind it is none of the path.
            self.spectrum.copy_from_slice(&self.path[part]);
            self.transform_back();
            self.time.iter_mut().skip(self.block).for_each(|x| *x = 0.0);
            self.transform_forward();
            self.path[part].copy_from_slice(&self.spectrum);
        }
    }
}

impl EchoCanceller for KalmanCanceller {
    fn cancel(&mut self, played: &[f32], mic: &mut [f32]) {
        if played.len() != self.block || mic.len() != self.block {
            tracing::error!(played = played.len(), mic = mic.len(), "a block for the echo canceller has another length than it was told");
            return;
        }
        self.newest = (self.newest + self.path.len() - 1) % self.path.len();
        self.time.iter_mut().zip(self.before.iter().chain(played)).for_each(|(t, x)| *t = *x);
        self.before.copy_from_slice(played);
        self.transform_forward();
        self.played[self.newest].copy_from_slice(&self.spectrum);
        self.estimate();
        mic.iter_mut().zip(self.time.iter().skip(self.block)).for_each(|(m, e)| *m -= e);
        let heard: f32 = self.played.iter().flatten().map(Complex::norm_sqr).sum();
        if heard < NOTHING {
            return;
        }
        let (first, second) = self.time.split_at_mut(self.block);
        first.fill(0.0);
        second.copy_from_slice(mic);
        self.transform_forward();
        self.error.copy_from_slice(&self.spectrum);
        self.learn();
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use foreign::counting::allocations;
    use rand::{Rng as _, SeedableRng as _, rngs::StdRng};

    const BLOCK: usize = 160;

    /// What is left of an echo of two paths in the last of so many seconds, dB; from 3 s on another voice is twice as loud as the echo. It
    /// is no part of the figure.
    fn left_db(seconds: usize) -> f64 {
        let mut random = StdRng::seed_from_u64(5);
        let played: Vec<f32> = (0..seconds * 16_000).map(|_| random.random_range(-0.3..0.3)).collect();
        let echo = |n: usize| {
            [(300, 0.4_f32), (811, -0.2)].iter().map(|(at, gain)| n.checked_sub(*at).map_or(0.0, |k| gain * played[k])).sum::<f32>()
        };
        let mut canceller = KalmanCanceller::new(16_000, BLOCK, 0.1);
        let (mut raw, mut left) = (0.0, 0.0);
        for (n, block) in played.chunks(BLOCK).enumerate() {
            let at = n * BLOCK;
            let swell = (n as f32 * 0.15).sin().max(0.0) * f32::from(u8::from(at > 48_000));
            let voice: Vec<f32> = (0..BLOCK).map(|k| swell * 0.3 * ((at + k) as f32 * 0.07).sin()).collect();
            let mut mic: Vec<f32> = (0..BLOCK).map(|k| echo(at + k) + voice[k]).collect();
            canceller.cancel(block, &mut mic);
            if at >= (seconds - 1) * 16_000 {
                raw += (0..BLOCK).map(|k| f64::from(echo(at + k)).powi(2)).sum::<f64>();
                left += mic.iter().zip(&voice).map(|(m, v)| f64::from(m - v).powi(2)).sum::<f64>();
            }
        }
        10.0 * (left / raw).log10()
    }

    #[test]
    fn the_echo_goes_and_a_voice_over_it_does_no_harm() {
        let (alone, under_a_voice) = (left_db(3), left_db(5));
        assert!(alone < -25.0, "{alone}");
        assert!(under_a_voice < -20.0, "{under_a_voice}");
    }

    #[test]
    fn blocks_of_another_length_are_left_alone_and_silence_changes_nothing() {
        let mut canceller = KalmanCanceller::new(16_000, BLOCK, 0.1);
        let mut mic = [0.5; 80];
        canceller.cancel(&[0.1; BLOCK], &mut mic);
        assert_eq!(mic, [0.5; 80]);
        let mut mic = [0.5; BLOCK];
        canceller.cancel(&[0.0; BLOCK], &mut mic);
        assert_eq!(mic, [0.5; BLOCK]);
        assert_eq!(allocations(|| canceller.cancel(&[0.1; BLOCK], &mut mic)), 0);
    }
}
