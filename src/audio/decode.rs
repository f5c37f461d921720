//! Any sound file to samples.

use super::AudioError;
use std::io::Cursor;
use std::path::Path;
use symphonia::core::codecs::audio::AudioDecoderOptions;
use symphonia::core::errors::Error;
use symphonia::core::formats::probe::Hint;
use symphonia::core::formats::{FormatOptions, TrackType};
use symphonia::core::io::{MediaSourceStream, MediaSourceStreamOptions};
use symphonia::core::meta::MetadataOptions;

/// A recording, mixed to one channel.
#[derive(Debug, Clone, PartialEq)]
pub struct Sound {
    /// Samples per second.
    pub rate_hz: u32,
    /// Mono, -1 to 1 (float files may go beyond); never NaN or infinite.
    pub samples: Vec<f32>,
}

/// Reads a WAV (PCM of 8 to 32 bit, float, A-law, mu-law, ADPCM), AIFF or FLAC file whole and mixes it to one channel
/// by the mean.
///
/// What can be read of a damaged file is given; a sound of no samples is an empty [`Sound`].
///
/// # Errors
/// [`AudioError::File`] with the file's name and what to do, where it cannot be opened, holds no sound or none of a
/// known kind.
pub fn decode(path: &Path) -> Result<Sound, AudioError> {
    let name = path.display();
    let fail = |what: String| AudioError::File(format!("{name}: {what}"));
    let unknown = || {
        fail("is not a sound file that can be read. Convert it to WAV or FLAC (8 to 48 kHz) and try again.".to_owned())
    };
    let mut bytes = std::fs::read(path).map_err(|e| match path.is_dir() {
        true => fail("is a folder. Name the sound files in it.".to_owned()),
        false => fail(format!("cannot be opened ({e}). Check the name and the rights.")),
    })?;
    if bytes.is_empty() {
        return Err(fail("is empty: it has no bytes at all. Record or export it again.".to_owned()));
    }
    mend_wav_header(&mut bytes);
    let stream = MediaSourceStream::new(Box::new(Cursor::new(bytes)), MediaSourceStreamOptions::default());
    let mut hint = Hint::new();
    if let Some(extension) = path.extension().and_then(|e| e.to_str()) {
        hint.with_extension(extension);
    }
    let mut format = symphonia::default::get_probe()
        .probe(&hint, stream, FormatOptions::default(), MetadataOptions::default())
        .map_err(|_| unknown())?;
    let track = format.default_track(TrackType::Audio).ok_or_else(unknown)?;
    let track_id = track.id;
    let parameters = track.codec_params.as_ref().and_then(|p| p.audio()).ok_or_else(unknown)?;
    let mut rate_hz = parameters.sample_rate.unwrap_or(0);
    let mut decoder = symphonia::default::get_codecs()
        .make_audio_decoder(parameters, &AudioDecoderOptions::default())
        .map_err(|_| unknown())?;
    let mut samples = Vec::new();
    let mut interleaved: Vec<f32> = Vec::new();
    // A fault in the middle ends the reading: what came before it is sound all the same.
    while let Ok(Some(packet)) = format.next_packet() {
        if packet.track_id != track_id {
            continue;
        }
        match decoder.decode(&packet) {
            Ok(buffer) => {
                rate_hz = buffer.spec().rate();
                let channels = buffer.spec().channels().count().max(1);
                buffer.copy_to_vec_interleaved(&mut interleaved);
                samples.extend(interleaved.chunks_exact(channels).map(mean));
            }
            Err(Error::DecodeError(_)) => {}
            Err(_) => break,
        }
    }
    if rate_hz == 0 {
        return Err(unknown());
    }
    Ok(Sound { rate_hz, samples })
}

fn mean(frame: &[f32]) -> f32 {
    let sum: f32 = frame.iter().sum();
    let mean = sum / frame.len().max(1) as f32;
    if mean.is_finite() { mean } else { 0.0 }
}

/// Programs that write a WAV to a pipe cannot know its length and leave 0 or a huge one in the header; a recording cut
/// off in the middle has one that is too long. Puts in what is there. Some telephone recorders leave out the two bytes
/// that close the format of A-law and mu-law; adds them.
fn mend_wav_header(bytes: &mut Vec<u8>) {
    if bytes.len() < 12 || &bytes[..4] != b"RIFF" || &bytes[8..12] != b"WAVE" {
        return;
    }
    let mut at = 12usize;
    while let Some(header) = bytes.get(at..at.saturating_add(8)) {
        let length = u32::from_le_bytes([header[4], header[5], header[6], header[7]]) as usize;
        let there = bytes.len() - at - 8;
        if &header[..4] == b"fmt " && length == 16 && matches!(bytes.get(at + 8), Some(6 | 7)) && there >= 16 {
            bytes[at + 4] = 18;
            bytes.splice(at + 24..at + 24, [0, 0]);
            continue;
        }
        if &header[..4] != b"data" {
            at = at.saturating_add(8 + length + length % 2);
            continue;
        }
        // A length of 0 with more chunks behind it is an empty recording, not an unknown length.
        let unknown = length == 0 && there > 8 && !bytes[at + 8..].starts_with(b"LIST");
        if (unknown || length > there)
            && let Ok(data) = u32::try_from(there)
        {
            bytes[at + 4..at + 8].copy_from_slice(&data.to_le_bytes());
        }
        if let Ok(all) = u32::try_from(bytes.len() - 8) {
            bytes[4..8].copy_from_slice(&all.to_le_bytes());
        }
        return;
    }
}
