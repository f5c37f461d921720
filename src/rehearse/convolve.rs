//! Convolution with a long response, block by block and without delay (uniformly partitioned, overlap-save).

use realfft::num_complex::Complex;
use realfft::{ComplexToReal, RealFftPlanner, RealToComplex};
use std::sync::Arc;

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

/// One response, one stream. Silent stretches of the input cost next to nothing.
pub(crate) struct Convolver {
    block: usize,
    forward: Arc<dyn RealToComplex<f32>>,
    backward: Arc<dyn ComplexToReal<f32>>,
    /// Spectra of the response's parts.
    parts: Vec<Split>,
    /// Spectra of the newest inputs, a ring; none where the input was silent.
    past: Vec<Option<Split>>,
    newest: usize,
    before: Vec<f32>,
    time: Vec<f32>,
    spectrum: Vec<Complex<f32>>,
    sum: Split,
}

impl Convolver {
    /// `block`: frames of each later [`Convolver::add`].
    pub(crate) fn new(response: &[f32], block: usize) -> Self {
        let mut planner = RealFftPlanner::<f32>::new();
        let forward = planner.plan_fft_forward(2 * block);
        let backward = planner.plan_fft_inverse(2 * block);
        let scale = 1.0 / (2 * block) as f32;
        let mut spectrum = forward.make_output_vec();
        let parts: Vec<_> = response
            .chunks(block)
            .map(|part| {
                let mut time = vec![0.0; 2 * block];
                time.iter_mut().zip(part).for_each(|(t, v)| *t = v * scale);
                // Lengths come from the plan itself, the only thing that can be wrong here.
                let _ = forward.process(&mut time, &mut spectrum);
                let mut split = Split::default();
                split.set(&spectrum);
                split
            })
            .collect();
        Self {
            block,
            past: parts.iter().map(|_| None).collect(),
            newest: 0,
            before: vec![0.0; block],
            time: vec![0.0; 2 * block],
            sum: Split { re: vec![0.0; spectrum.len()], im: vec![0.0; spectrum.len()] },
            spectrum,
            parts,
            forward,
            backward,
        }
    }

    /// Adds the response to `input` to `out`; both are one block long.
    pub(crate) fn add(&mut self, input: &[f32], out: &mut [f32]) {
        debug_assert!(input.len() == self.block && out.len() == self.block);
        let count = self.parts.len();
        if count == 0 {
            return;
        }
        self.newest = (self.newest + count - 1) % count;
        let silent = self.before.iter().chain(input).all(|v| *v == 0.0);
        if let Some(slot) = self.past.get_mut(self.newest) {
            if silent {
                *slot = None;
            } else {
                self.time.iter_mut().zip(self.before.iter().chain(input)).for_each(|(t, v)| *t = *v);
                let _ = self.forward.process(&mut self.time, &mut self.spectrum);
                slot.get_or_insert_default().set(&self.spectrum);
            }
        }
        self.before.iter_mut().zip(input).for_each(|(b, v)| *b = *v);
        if self.past.iter().all(Option::is_none) {
            return;
        }
        self.sum.re.fill(0.0);
        self.sum.im.fill(0.0);
        let order = (0..count).map(|i| (self.newest + i) % count);
        for (part, slot) in self.parts.iter().zip(order) {
            if let Some(Some(spectrum)) = self.past.get(slot) {
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
        let _ = self.backward.process(&mut self.spectrum, &mut self.time);
        out.iter_mut().zip(self.time.iter().skip(self.block)).for_each(|(o, v)| *o += v);
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn equals_the_sum_it_stands_for() {
        let block = 80;
        let mut gauss = crate::rehearse::noise::Gauss::new(3);
        let response: Vec<f32> = (0..333).map(|_| gauss.draw() as f32).collect();
        let mut input: Vec<f32> = (0..block * 12).map(|_| gauss.draw() as f32).collect();
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
