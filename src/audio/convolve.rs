//! Convolution with a long response, block by block and without delay (uniformly partitioned, overlap-save).

use std::sync::Arc;
use transform::Complex;
use transform::{ComplexToReal, RealToComplex};

/// A spectrum with real and imaginary parts apart, which the processor multiplies four at a time.
#[derive(Default)]
struct Split {
    re: Vec<f32>,
    im: Vec<f32>,
}

impl Split {
    fn set(&mut self, spectrum: &[Complex<f32>]) {
        self.re.clear();
        self.im.clear();
        self.re.extend(spectrum.iter().map(|c| c.re));
        self.im.extend(spectrum.iter().map(|c| c.im));
    }

    /// Adds the product of two spectra.
    fn add_product(&mut self, a: &Self, b: &Self) {
        let n = self.re.len().min(a.re.len()).min(b.re.len());
        let (re, im) = (&mut self.re[..n], &mut self.im[..n]);
        let (ar, ai, br, bi) = (&a.re[..n], &a.im[..n], &b.re[..n], &b.im[..n]);
        for i in 0..n {
            re[i] += ar[i] * br[i] - ai[i] * bi[i];
            im[i] += ar[i] * bi[i] + ai[i] * br[i];
        }
    }
}

/// One response, one stream. Silent stretches of the input cost next to nothing. Takes no memory after [`Convolver::new`].
pub struct Convolver {
    block: usize,
    forward: Arc<dyn RealToComplex<f32>>,
    backward: Arc<dyn ComplexToReal<f32>>,
    /// Spectra of the response's parts.
    parts: Vec<Split>,
    /// Spectra of the newest inputs, a ring, and whether there was any sound.
    past: Vec<(Split, bool)>,
    newest: usize,
    before: Vec<f32>,
    time: Vec<f32>,
    spectrum: Vec<Complex<f32>>,
    sum: Split,
    scratch_forward: Vec<Complex<f32>>,
    scratch_backward: Vec<Complex<f32>>,
}

impl Convolver {
    /// `block`: frames of each later [`Convolver::add`].
    pub fn new(response: &[f32], block: usize) -> Self {
        let forward = transform::forward(2 * block);
        let backward = transform::backward(2 * block);
        let spectrum = forward.make_output_vec();
        let count = response.len().div_ceil(block);
        let nothing = || Split { re: vec![0.0; spectrum.len()], im: vec![0.0; spectrum.len()] };
        let mut convolver = Self {
            block,
            parts: (0..count).map(|_| nothing()).collect(),
            past: (0..count).map(|_| (nothing(), false)).collect(),
            newest: 0,
            before: vec![0.0; block],
            time: vec![0.0; 2 * block],
            sum: nothing(),
            scratch_forward: forward.make_scratch_vec(),
            scratch_backward: backward.make_scratch_vec(),
            spectrum,
            forward,
            backward,
        };
        convolver.set_response(response);
        convolver
    }

    /// Another response from now on; of one longer than the first the end is left out.
    pub fn set_response(&mut self, response: &[f32]) {
        let scale = 1.0 / (2 * self.block) as f32;
        let mut pieces = response.chunks(self.block);
        for part in &mut self.parts {
            self.time.fill(0.0);
            self.time.iter_mut().zip(pieces.next().unwrap_or_default()).for_each(|(t, v)| *t = v * scale);
            // Lengths come from the plan itself, the only thing that can be wrong here.
            let _ = self.forward.process_with_scratch(&mut self.time, &mut self.spectrum, &mut self.scratch_forward);
            part.set(&self.spectrum);
        }
    }

    /// Adds the response to `input` to `out`; both are one block long.
    pub fn add(&mut self, input: &[f32], out: &mut [f32]) {
        debug_assert!(input.len() == self.block && out.len() == self.block);
        let count = self.parts.len();
        if count == 0 {
            return;
        }
        self.newest = (self.newest + count - 1) % count;
        let silent = self.before.iter().chain(input).all(|v| *v == 0.0);
        if let Some(slot) = self.past.get_mut(self.newest) {
            slot.1 = !silent;
            if !silent {
                self.time.iter_mut().zip(self.before.iter().chain(input)).for_each(|(t, v)| *t = *v);
                let _ = self.forward.process_with_scratch(&mut self.time, &mut self.spectrum, &mut self.scratch_forward);
                slot.0.set(&self.spectrum);
            }
        }
        self.before.iter_mut().zip(input).for_each(|(b, v)| *b = *v);
        if self.past.iter().all(|(_, sounds)| !sounds) {
            return;
        }
        self.sum.re.fill(0.0);
        self.sum.im.fill(0.0);
        let order = (0..count).map(|i| (self.newest + i) % count);
        for (part, slot) in self.parts.iter().zip(order) {
            if let Some((spectrum, true)) = self.past.get(slot) {
                self.sum.add_product(part, spectrum);
            }
        }
        let both = self.sum.re.iter().zip(&self.sum.im);
        self.spectrum.iter_mut().zip(both).for_each(|(c, (re, im))| *c = Complex::new(*re, *im));
        // The plan wants the first and last bin real; rounding may leave a trace.
        if let Some(first) = self.spectrum.first_mut() {
            first.im = 0.0;
        }
        if let Some(last) = self.spectrum.last_mut() {
            last.im = 0.0;
        }
        let _ = self.backward.process_with_scratch(&mut self.spectrum, &mut self.time, &mut self.scratch_backward);
        out.iter_mut().zip(self.time.iter().skip(self.block)).for_each(|(o, v)| *o += v);
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use rand::{Rng as _, SeedableRng as _, rngs::StdRng};

    #[test]
    fn another_response_counts_from_the_next_block_on() {
        let mut convolver = Convolver::new(&[1.0, 0.0, 0.0], 2);
        let mut out = [0.0; 2];
        convolver.add(&[1.0, 2.0], &mut out);
        convolver.set_response(&[0.0, 0.5, 0.25]);
        let mut later = [0.0; 2];
        convolver.add(&[3.0, 4.0], &mut later);
        for (got, want) in out.iter().chain(&later).zip([1.0, 2.0, 1.25, 2.0]) {
            assert!((got - want).abs() < 1e-5, "{out:?} {later:?}");
        }
    }

    #[test]
    fn equals_the_sum_it_stands_for() {
        let block = 80;
        let mut random = StdRng::seed_from_u64(3);
        let mut draw = || random.random_range(-2.0..2.0_f32);
        let response: Vec<f32> = (0..333).map(|_| draw()).collect();
        let mut input: Vec<f32> = (0..block * 12).map(|_| draw()).collect();
        input[160..560].fill(0.0);
        let mut convolver = Convolver::new(&response, block);
        let mut got = vec![0.0f32; input.len()];
        for (x, y) in input.chunks(block).zip(got.chunks_mut(block)) {
            convolver.add(x, y);
        }
        for (n, y) in got.iter().enumerate() {
            let want: f64 = (0..=n.min(response.len() - 1)).map(|k| f64::from(response[k]) * f64::from(input[n - k])).sum();
            assert!((f64::from(*y) - want).abs() < 1e-3, "sample {n}: {y} for {want}");
        }
    }
}
