//! Recordings in, samples out.

use super::AudioError;
use std::path::Path;

/// A recording, mono, -1 to 1.
#[derive(Debug, Clone)]
pub struct Sound {
    pub rate_hz: u32,
    pub samples: Vec<f32>,
}

/// Reads a WAV file; channels are averaged.
///
/// # Errors
/// The file cannot be opened or is no WAV file.
pub fn decode(path: &Path) -> Result<Sound, AudioError> {
    let bad = |why: &dyn std::fmt::Display| AudioError::File(format!("{}: cannot be read as sound: {why}", path.display()));
    let mut reader = hound::WavReader::open(path).map_err(|e| bad(&e))?;
    let spec = reader.spec();
    let all: Result<Vec<f32>, _> = match spec.sample_format {
        hound::SampleFormat::Float => reader.samples::<f32>().collect(),
        hound::SampleFormat::Int => {
            let scale = 1.0 / (1_i64 << (spec.bits_per_sample.max(1) - 1)) as f32;
            reader.samples::<i32>().map(|s| s.map(|v| v as f32 * scale)).collect()
        }
    };
    let channels = usize::from(spec.channels.max(1));
    let samples =
        all.map_err(|e| bad(&e))?.chunks_exact(channels).map(|frame| frame.iter().sum::<f32>() / channels as f32).collect();
    Ok(Sound { rate_hz: spec.sample_rate, samples })
}
