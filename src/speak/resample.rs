//! A whole line from the voice's rate to the loudspeaker's.

use super::finish::limit_peaks;
use super::{Pcm, SpeakError};
use transform::InterleavedSlice;

/// The line at another rate: no delay, and exactly `ceil(samples × to / from)` samples.
///
/// # Errors
/// A rate is 0 or the converter refuses the pair of rates.
pub fn resample(line: &Pcm, rate_hz: u32) -> Result<Pcm, SpeakError> {
    if line.rate_hz == rate_hz || line.samples.is_empty() {
        return Ok(Pcm { rate_hz, samples: line.samples.clone() });
    }
    let failed = |why: String| SpeakError(format!("a line cannot be converted from {} Hz to {rate_hz} Hz: {why}", line.rate_hz));
    let frames = line.samples.len();
    let mut converter = transform::converter(line.rate_hz, rate_hz, 1024).map_err(|e| failed(e.to_string()))?;
    let input = InterleavedSlice::new(&line.samples, 1, frames).map_err(|e| failed(e.to_string()))?;
    let output = converter.process_all(&input, frames, None).map_err(|e| failed(e.to_string()))?;
    let mut samples = output.take_data();
    // The converter reckons the length in floating point and may be one too long.
    let exact = (frames as u64 * u64::from(rate_hz)).div_ceil(u64::from(line.rate_hz));
    samples.resize(usize::try_from(exact).unwrap_or(samples.len()), 0.0);
    // The converter's filter may swing a little past a limited peak.
    limit_peaks(&mut samples);
    Ok(Pcm { rate_hz, samples: samples.into() })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn length_is_exact_and_nothing_is_delayed() {
        for (from, to) in [(22_050u32, 48_000u32), (22_050, 44_100), (16_000, 48_000), (22_050, 16_000), (48_000, 48_000)] {
            let mut samples = vec![0.0f32; from as usize / 2];
            let centre = samples.len() / 2;
            // A smooth bump of 4 ms: its top is where it was, at the new rate.
            let half = (0.002 * f64::from(from)) as usize;
            for i in 0..=2 * half {
                let phase = i as f32 / half as f32 * std::f32::consts::PI;
                samples[centre - half + i] = 0.25 * (1.0 - phase.cos());
            }
            let line = resample(&Pcm { rate_hz: from, samples: samples.clone().into() }, to).unwrap();
            let expected = (samples.len() as f64 * f64::from(to) / f64::from(from)).ceil() as usize;
            assert_eq!(line.samples.len(), expected, "{from} to {to}");
            let top = (0..line.samples.len()).max_by(|&a, &b| line.samples[a].total_cmp(&line.samples[b])).unwrap();
            let (was_s, is_s) = (centre as f64 / f64::from(from), top as f64 / f64::from(to));
            assert!((was_s - is_s).abs() < 0.000_1, "{from} to {to}: {was_s} {is_s}");
        }
    }

    #[test]
    fn a_rate_of_nothing_is_an_error() {
        let line = Pcm { rate_hz: 22_050, samples: vec![0.1; 100].into() };
        assert!(resample(&line, 0).unwrap_err().0.contains("0 Hz"));
    }
}
