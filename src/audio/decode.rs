//! Any sound file to samples.

use super::AudioError;
use super::mend::MendedFile;
use super::resample::usable;
use std::ops::RangeInclusive;
use std::panic::{AssertUnwindSafe, catch_unwind};
use std::path::Path;
use symphonia::core::codecs::audio::{AudioDecoder, AudioDecoderOptions};
use symphonia::core::errors::Error;
use symphonia::core::formats::probe::Hint;
use symphonia::core::formats::{FormatOptions, FormatReader, TrackType};
use symphonia::core::io::{MediaSource, MediaSourceStream, MediaSourceStreamOptions};
use symphonia::core::meta::MetadataOptions;

/// A header that names another number of channels is damaged; the library's arithmetic overflows on some.
const CHANNELS: RangeInclusive<u16> = 1..=64;

/// A recording, mixed to one channel.
#[derive(Debug, Clone, PartialEq)]
pub struct Sound {
    /// Samples per second.
    pub rate_hz: u32,
    /// Mono, -1 to 1 (float files may go beyond, to 8 at most); never NaN or infinite.
    pub samples: Vec<f32>,
}

/// Reads a WAV (PCM of 8 to 32 bit, float, A-law, mu-law, ADPCM), AIFF or FLAC file whole and mixes it to one channel
/// by the mean.
///
/// What can be read of a damaged file is given; a sound of no samples is an empty [`Sound`].
///
/// # Errors
/// As [`SoundReader::open`].
pub fn decode(path: &Path) -> Result<Sound, AudioError> {
    let mut reader = SoundReader::open(path)?;
    let mut samples = Vec::new();
    while let Some(piece) = reader.read() {
        samples.extend_from_slice(piece);
    }
    Ok(Sound { rate_hz: reader.rate_hz(), samples })
}

/// Reads what [`decode`] reads piece by piece, so that long recordings need little memory.
pub struct SoundReader {
    format: Box<dyn FormatReader>,
    decoder: Box<dyn AudioDecoder>,
    track_id: u32,
    rate_hz: u32,
    interleaved: Vec<f32>,
    mono: Vec<f32>,
}

impl SoundReader {
    /// Opens the file and reads its header.
    ///
    /// # Errors
    /// [`AudioError::File`] with the file's name and what to do, where it cannot be opened, holds no sound or none of a
    /// known kind.
    pub fn open(path: &Path) -> Result<Self, AudioError> {
        let name = path.display();
        let fail = |what: String| AudioError::File(format!("{name}: {what}"));
        let unknown = || fail("is not a sound file that can be read. Convert it to WAV or FLAC (8 to 48 kHz) and try again.".to_owned());
        let refused = |e: std::io::Error| match path.is_dir() {
            true => fail("is a folder. Name the sound files in it.".to_owned()),
            false => fail(format!("cannot be opened ({e}). Check the name and the rights.")),
        };
        let source = MendedFile::open(path).map_err(refused)?;
        if source.is_empty() {
            return Err(fail("is empty: it has no bytes at all. Record or export it again.".to_owned()));
        }
        if let Some(channels) = source.channels().filter(|channels| !CHANNELS.contains(channels)) {
            return Err(fail(format!("is damaged: its header names {channels} channels. Export it again, or convert it to WAV or FLAC.")));
        }
        Self::of_source(Box::new(source), path.extension().and_then(|e| e.to_str())).ok_or_else(unknown)
    }

    /// Reads a file that is in memory already, such as one that was encrypted on the disk. `extension`: what kind it is thought to be.
    ///
    /// # Errors
    /// [`AudioError::File`] where it holds no sound or none of a known kind.
    pub fn of_bytes(bytes: Vec<u8>, extension: &str) -> Result<Self, AudioError> {
        let source = Box::new(std::io::Cursor::new(bytes));
        Self::of_source(source, Some(extension)).ok_or_else(|| AudioError::File("the sound is damaged and cannot be read".to_owned()))
    }

    /// None where it holds no sound or none of a known kind.
    fn of_source(source: Box<dyn MediaSource>, extension: Option<&str>) -> Option<Self> {
        let stream = MediaSourceStream::new(source, MediaSourceStreamOptions::default());
        let mut hint = Hint::new();
        if let Some(extension) = extension {
            hint.with_extension(extension);
        }
        let probe = || symphonia::default::get_probe().probe(&hint, stream, FormatOptions::default(), MetadataOptions::default());
        let format = guarded(probe).and_then(Result::ok)?;
        let track = format.default_track(TrackType::Audio)?;
        let track_id = track.id;
        let parameters = track.codec_params.as_ref().and_then(|p| p.audio())?;
        let rate_hz = parameters.sample_rate.filter(|rate_hz| *rate_hz > 0)?;
        let decoder = symphonia::default::get_codecs().make_audio_decoder(parameters, &AudioDecoderOptions::default()).ok()?;
        Some(Self { format, decoder, track_id, rate_hz, interleaved: Vec::new(), mono: Vec::new() })
    }

    /// Samples per second.
    #[must_use]
    pub fn rate_hz(&self) -> u32 {
        self.rate_hz
    }

    /// The next samples, mono, never NaN or infinite; nothing at the end. A fault in the middle ends the reading: what came
    /// before it is sound all the same.
    pub fn read(&mut self) -> Option<&[f32]> {
        loop {
            let packet = guarded(|| self.format.next_packet()).and_then(Result::ok)??;
            if packet.track_id != self.track_id {
                continue;
            }
            match guarded(|| self.decoder.decode(&packet))? {
                Ok(buffer) => {
                    let channels = buffer.spec().channels().count().max(1);
                    buffer.copy_to_vec_interleaved(&mut self.interleaved);
                    self.mono.clear();
                    self.mono.extend(self.interleaved.chunks_exact(channels).map(mean));
                    return Some(&self.mono);
                }
                Err(Error::DecodeError(_)) => {}
                Err(_) => return None,
            }
        }
    }
}

/// A damaged header can make the library's arithmetic panic: that file ends there, the program does not.
fn guarded<T>(read: impl FnOnce() -> T) -> Option<T> {
    catch_unwind(AssertUnwindSafe(read)).ok()
}

fn mean(frame: &[f32]) -> f32 {
    let sum: f32 = frame.iter().sum();
    usable(sum / frame.len().max(1) as f32)
}
