//! Takes a stretch of sound to another rate exactly: its spectrum is cut or filled up with nothing. Whole stretches only.

use transform::Complex;

/// The stretch at `to_hz`. The two ends run into each other, which reaches some samples in.
pub(super) fn resampled(samples: &[f64], from_hz: f64, to_hz: f64) -> Vec<f64> {
    let (from, to) = (from_hz.round() as usize, to_hz.round() as usize);
    if samples.is_empty() || from == to || from == 0 || to == 0 {
        return samples.to_vec();
    }
    let step = from / greatest_common_divisor(from, to);
    let length = samples.len().next_multiple_of(step);
    let new_length = length / step * (to / greatest_common_divisor(from, to));
    let mut padded = samples.to_vec();
    padded.resize(length, 0.0);
    let forward = transform::forward(length);
    let back = transform::backward(new_length);
    let mut spectrum = forward.make_output_vec();
    let mut fitted = back.make_input_vec();
    let mut out = back.make_output_vec();
    if forward.process(&mut padded, &mut spectrum).is_err() {
        return samples.to_vec();
    }
    fitted.iter_mut().zip(&spectrum).for_each(|(to, from)| *to = *from / length as f64);
    // The ends of a real sound's spectrum are real.
    if let Some(first) = fitted.first_mut() {
        first.im = 0.0;
    }
    if let Some(last) = fitted.last_mut() {
        *last = Complex::new(last.re, 0.0);
    }
    if back.process(&mut fitted, &mut out).is_err() {
        return samples.to_vec();
    }
    out.truncate((samples.len() as f64 * to_hz / from_hz).round() as usize);
    out
}

fn greatest_common_divisor(a: usize, b: usize) -> usize {
    if b == 0 { a } else { greatest_common_divisor(b, a % b) }
}
