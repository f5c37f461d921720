//! Changing the rate of a mono stream in blocks of 10 ms, and of a whole recording.

use super::AudioError;
use transform::InterleavedSlice;

/// Turns blocks of 10 ms at one rate into blocks of 10 ms at another, with a fixed delay and without allocating.
pub struct Resampler {
    /// None where both rates are the same.
    fft: Option<Box<dyn transform::Resampler<f32>>>,
    /// The input as the transform can take it: it panics on what is no number.
    usable: Vec<f32>,
    in_block: usize,
    out_block: usize,
    delay_s: f64,
}

impl Resampler {
    /// Both rates in Hz, multiples of 100, so that 10 ms are whole frames on both sides.
    ///
    /// # Errors
    /// A rate is zero or no multiple of 100.
    pub fn new(in_hz: u32, out_hz: u32) -> Result<Self, AudioError> {
        for rate_hz in [in_hz, out_hz] {
            if rate_hz == 0 || rate_hz % 100 != 0 {
                return Err(AudioError::Device(format!("{rate_hz} Hz cannot be cut into blocks of 10 ms")));
            }
        }
        let (in_block, out_block) = ((in_hz / 100) as usize, (out_hz / 100) as usize);
        let fft = if in_hz == out_hz { None } else { Some(fft(in_hz, out_hz, in_block)?) };
        // The filter's middle lies on a whole input frame; `output_delay` rounds it to output frames.
        let delay_s = fft.as_ref().map_or(0.0, |f| (f.input_frames_max() / 2) as f64 / f64::from(in_hz));
        Ok(Self { fft, usable: vec![0.0; in_block], in_block, out_block, delay_s })
    }

    /// Frames that [`Resampler::process`] takes.
    #[must_use]
    pub fn in_block(&self) -> usize {
        self.in_block
    }

    /// Frames that [`Resampler::process`] gives.
    #[must_use]
    pub fn out_block(&self) -> usize {
        self.out_block
    }

    /// Seconds by which the output lags behind the input (5 ms; 0 for equal rates).
    #[must_use]
    pub fn delay_s(&self) -> f64 {
        self.delay_s
    }

    /// One block of 10 ms. What is no number counts as silence; the output is numbers always.
    ///
    /// # Errors
    /// `input` is not [`Resampler::in_block`] or `output` not [`Resampler::out_block`] frames long.
    pub fn process(&mut self, input: &[f32], output: &mut [f32]) -> Result<(), AudioError> {
        if input.len() != self.in_block || output.len() != self.out_block {
            return Err(AudioError::Device(format!(
                "a block of {} frames to be turned into {} came as {} for {}",
                self.in_block,
                self.out_block,
                input.len(),
                output.len()
            )));
        }
        self.usable.iter_mut().zip(input).for_each(|(to, from)| *to = usable(*from));
        let Some(fft) = &mut self.fft else {
            output.copy_from_slice(&self.usable);
            return Ok(());
        };
        let failed = |why: String| AudioError::Device(format!("the rate cannot be changed: {why}"));
        let from = InterleavedSlice::new(&self.usable, 1, self.in_block).map_err(|e| failed(e.to_string()))?;
        let mut to = InterleavedSlice::new_mut(output, 1, self.out_block).map_err(|e| failed(e.to_string()))?;
        fft.process_into_buffer(&from, &mut to, None).map_err(|e| failed(e.to_string()))?;
        Ok(())
    }
}

/// What a broken driver or a played file may bring becomes something that can be worked with: nothing for what is no number, and at
/// most 18 dB over full scale.
pub(super) fn usable(sample: f32) -> f32 {
    if sample.is_finite() { sample.clamp(-8.0, 8.0) } else { 0.0 }
}

/// Changes the rate of a whole recording; beginning and length in seconds are kept. The samples must be numbers.
///
/// # Errors
/// A rate is zero.
pub fn resample_all(samples: &[f32], in_hz: u32, out_hz: u32) -> Result<Vec<f32>, AudioError> {
    if samples.is_empty() || in_hz == out_hz {
        return Ok(samples.to_vec());
    }
    let failed = |why: String| AudioError::File(format!("{in_hz} Hz cannot be turned into {out_hz} Hz: {why}"));
    let mut fft = fft(in_hz, out_hz, 1024)?;
    let mut output = vec![0.0; fft.process_all_needed_output_len(samples.len())];
    let frames = output.len();
    let from = InterleavedSlice::new(samples, 1, samples.len()).map_err(|e| failed(e.to_string()))?;
    let mut to = InterleavedSlice::new_mut(&mut output, 1, frames).map_err(|e| failed(e.to_string()))?;
    let (_, produced) = fft.process_all_into_buffer(&from, &mut to, samples.len(), None).map_err(|e| failed(e.to_string()))?;
    output.truncate(produced);
    Ok(output)
}

/// Changes the rate of a stream of any rate that comes in pieces of any length; beginning and length in seconds are kept.
pub struct StreamResampler {
    /// None where both rates are the same.
    fft: Option<Box<dyn transform::Resampler<f32>>>,
    ratio: f64,
    waiting: Vec<f32>,
    chunk: Vec<f32>,
    /// Output frames that only carry the filter's delay and are still to be dropped.
    to_drop: usize,
    taken: u64,
    given: u64,
}

impl StreamResampler {
    /// Both rates in Hz.
    ///
    /// # Errors
    /// A rate is zero.
    pub fn new(in_hz: u32, out_hz: u32) -> Result<Self, AudioError> {
        let fft = if in_hz == out_hz && in_hz > 0 { None } else { Some(fft(in_hz, out_hz, 1024)?) };
        let to_drop = fft.as_ref().map_or(0, |fft| fft.output_delay());
        let chunk = vec![0.0; fft.as_ref().map_or(0, |fft| fft.output_frames_max())];
        Ok(Self { fft, ratio: f64::from(out_hz) / f64::from(in_hz), waiting: Vec::new(), chunk, to_drop, taken: 0, given: 0 })
    }

    /// Takes samples and adds what is ready to `out`.
    pub fn push(&mut self, samples: &[f32], out: &mut Vec<f32>) {
        self.taken += samples.len() as u64;
        self.turn(samples, out);
    }

    /// The stream is over: adds the rest to `out`.
    pub fn finish(&mut self, out: &mut Vec<f32>) {
        let whole = (self.taken as f64 * self.ratio).round() as u64;
        let silence = vec![0.0; self.fft.as_ref().map_or(0, |fft| fft.input_frames_next())];
        while self.given < whole && !silence.is_empty() {
            let before = out.len();
            self.turn(&silence, out);
            let too_many = self.given.saturating_sub(whole);
            out.truncate(out.len() - (too_many as usize).min(out.len() - before));
        }
    }

    fn turn(&mut self, samples: &[f32], out: &mut Vec<f32>) {
        let Some(fft) = &mut self.fft else {
            out.extend_from_slice(samples);
            return;
        };
        self.waiting.extend_from_slice(samples);
        let (needed, made) = (fft.input_frames_next(), fft.output_frames_next());
        let mut at = 0;
        while let Some(piece) = self.waiting.get(at..at + needed) {
            at += needed;
            let (Ok(from), Ok(mut to)) = (InterleavedSlice::new(piece, 1, needed), InterleavedSlice::new_mut(&mut self.chunk, 1, made))
            else {
                continue;
            };
            // The lengths are those asked for, so this cannot fail; were it to, the piece would be silence.
            if fft.process_into_buffer(&from, &mut to, None).is_err() {
                self.chunk.fill(0.0);
            }
            let skipped = self.to_drop.min(made);
            self.to_drop -= skipped;
            out.extend_from_slice(&self.chunk[skipped..made]);
            self.given += (made - skipped) as u64;
        }
        self.waiting.drain(..at);
    }
}

fn fft(in_hz: u32, out_hz: u32, chunk: usize) -> Result<Box<dyn transform::Resampler<f32>>, AudioError> {
    // One FFT block per chunk. With 10 ms this is the shortest block both rates share for certain.
    transform::quick_converter(in_hz, out_hz, chunk)
        .map_err(|e| AudioError::Device(format!("{in_hz} Hz cannot be turned into {out_hz} Hz: {e}")))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn tone(rate_hz: u32, f_hz: f64, frames: usize) -> Vec<f32> {
        (0..frames).map(|n| (std::f64::consts::TAU * f_hz * n as f64 / f64::from(rate_hz)).sin() as f32 * 0.5).collect()
    }

    /// Largest difference between what a resampler gives for a tone and that tone, delayed, computed at the new rate.
    fn error_of(in_hz: u32, out_hz: u32, f_hz: f64) -> f32 {
        let mut resampler = Resampler::new(in_hz, out_hz).unwrap();
        let input = tone(in_hz, f_hz, in_hz as usize);
        let mut output = vec![0.0; out_hz as usize];
        for (from, to) in input.chunks(resampler.in_block()).zip(output.chunks_mut(resampler.out_block())) {
            resampler.process(from, to).unwrap();
        }
        let mut worst: f32 = 0.0;
        for (n, got) in output.iter().enumerate().skip(out_hz as usize / 10) {
            let t = n as f64 / f64::from(out_hz) - resampler.delay_s();
            let want = (std::f64::consts::TAU * f_hz * t).sin() as f32 * 0.5;
            worst = worst.max((got - want).abs());
        }
        worst
    }

    #[test]
    fn a_tone_keeps_frequency_level_and_the_stated_delay() {
        for (in_hz, out_hz) in [(48_000, 16_000), (44_100, 16_000), (32_000, 16_000), (8_000, 16_000), (24_000, 48_000), (16_000, 16_000)] {
            let worst = error_of(in_hz, out_hz, 440.0);
            assert!(worst < 0.005, "{in_hz} to {out_hz} Hz: off by {worst}");
        }
    }

    #[test]
    fn what_the_lower_rate_cannot_carry_is_gone() {
        // 10 kHz would fold to 6 kHz at 16 kHz.
        let mut resampler = Resampler::new(48_000, 16_000).unwrap();
        let mut out = vec![0.0; 160];
        let mut peak: f32 = 0.0;
        for (n, block) in tone(48_000, 10_000.0, 48_000).chunks(480).enumerate() {
            resampler.process(block, &mut out).unwrap();
            if n > 5 {
                peak = out.iter().fold(peak, |p, s| p.max(s.abs()));
            }
        }
        assert!(peak < 0.001, "{peak} left");
    }

    #[test]
    fn odd_rates_and_lengths_are_refused_kindly() {
        assert!(Resampler::new(22_050, 16_000).is_err());
        assert!(Resampler::new(0, 16_000).is_err());
        let mut resampler = Resampler::new(48_000, 16_000).unwrap();
        assert!(resampler.process(&[0.0; 3], &mut [0.0; 160]).is_err());
    }

    #[test]
    fn a_whole_recording_keeps_its_length_and_place() {
        let mut input = vec![0.0; 22_050];
        input[11_025] = 1.0;
        let output = resample_all(&input, 22_050, 24_000).unwrap();
        assert!(output.len().abs_diff(24_000) <= 1, "{}", output.len());
        let (at, _) = output.iter().enumerate().fold((0, 0.0_f32), |b, (i, s)| if s.abs() > b.1 { (i, s.abs()) } else { b });
        assert!(at.abs_diff(12_000) <= 1, "the click lies at {at}");
        assert!(resample_all(&[], 22_050, 24_000).unwrap().is_empty());
        assert!(!resample_all(&[0.5], 11_025, 12_000).unwrap().is_empty());
    }

    #[test]
    fn pieces_of_a_stream_give_what_the_whole_gives() {
        for (in_hz, out_hz) in [(22_050, 16_000), (48_000, 16_000), (11_025, 16_000), (8_000, 16_000), (96_000, 16_000)] {
            let input = tone(in_hz, 440.0, in_hz as usize);
            let mut resampler = StreamResampler::new(in_hz, out_hz).unwrap();
            let mut output = Vec::new();
            input.chunks(777).for_each(|piece| resampler.push(piece, &mut output));
            resampler.finish(&mut output);
            assert_eq!(output.len(), out_hz as usize, "{in_hz}");
            // Against the tone itself, computed at the new rate; the ends ring. Where the delay is no whole number of
            // frames, half a frame of the lower rate remains.
            let half_frame = 0.5 * std::f32::consts::TAU * 440.0 * 0.5 / in_hz.min(out_hz) as f32;
            for (n, got) in output.iter().enumerate().skip(200).take(out_hz as usize - 400) {
                let want = (std::f64::consts::TAU * 440.0 * n as f64 / f64::from(out_hz)).sin() as f32 * 0.5;
                assert!((got - want).abs() < half_frame + 0.003, "{in_hz}: {got} for {want} at {n}");
            }
        }
        let mut none = Vec::new();
        StreamResampler::new(44_100, 16_000).unwrap().finish(&mut none);
        assert!(none.is_empty() && StreamResampler::new(0, 16_000).is_err());
    }
}
