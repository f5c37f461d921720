//! Makes Fourier transforms of real signals and converters of the sampling rate. Both libraries are generic, so each crate that made its own
//! would compile all of their kernels once more, most of a minute each; here they are compiled once. What is done with them stays with
//! those who ask. Start at [`forward`].

use std::sync::Arc;

use realfft::RealFftPlanner;
use rubato::{Fft, FixedSync, ResamplerConstructionError, WindowFunction};

pub use realfft::num_complex::{Complex, Complex32};
pub use realfft::{ComplexToReal, RealToComplex};
pub use rubato::Resampler;
pub use rubato::audioadapter_buffers::direct::InterleavedSlice;

/// Numbers that a transform is made for: `f32` or `f64`.
pub trait Real: Sized {
    /// See [`forward`].
    fn forward(length: usize) -> Arc<dyn RealToComplex<Self>>;
    /// See [`backward`].
    fn backward(length: usize) -> Arc<dyn ComplexToReal<Self>>;
}

impl Real for f32 {
    fn forward(length: usize) -> Arc<dyn RealToComplex<Self>> {
        RealFftPlanner::new().plan_fft_forward(length)
    }
    fn backward(length: usize) -> Arc<dyn ComplexToReal<Self>> {
        RealFftPlanner::new().plan_fft_inverse(length)
    }
}

impl Real for f64 {
    fn forward(length: usize) -> Arc<dyn RealToComplex<Self>> {
        RealFftPlanner::new().plan_fft_forward(length)
    }
    fn backward(length: usize) -> Arc<dyn ComplexToReal<Self>> {
        RealFftPlanner::new().plan_fft_inverse(length)
    }
}

/// From `length` samples to `length / 2 + 1` bins, not scaled.
#[must_use]
pub fn forward<T: Real>(length: usize) -> Arc<dyn RealToComplex<T>> {
    T::forward(length)
}

/// From `length / 2 + 1` bins to `length` samples, not scaled: after both, samples are `length` times what they were.
#[must_use]
pub fn backward<T: Real>(length: usize) -> Arc<dyn ComplexToReal<T>> {
    T::backward(length)
}

/// A converter of one channel between two rates, Hz, that works in whole transforms of about `chunk` frames.
///
/// # Errors
/// A rate is 0.
pub fn converter(from_hz: u32, to_hz: u32, chunk: usize) -> Result<Box<dyn Resampler<f32>>, ResamplerConstructionError> {
    Ok(Box::new(Fft::<f32>::new(from_hz as usize, to_hz as usize, chunk, 1, FixedSync::Both)?))
}

/// As [`converter`], with one transform a chunk and so the shortest delay.
///
/// # Errors
/// A rate is 0.
pub fn quick_converter(from_hz: u32, to_hz: u32, chunk: usize) -> Result<Box<dyn Resampler<f32>>, ResamplerConstructionError> {
    let window = WindowFunction::BlackmanHarris2;
    Ok(Box::new(Fft::<f32>::new_custom(from_hz as usize, to_hz as usize, chunk, 1, 1, window, FixedSync::Both)?))
}
