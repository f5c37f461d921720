//! Sound as FLAC (RFC 9639), block by block as it comes: mono, 16 bits, as a microphone gives it.

use super::error::RecordError;
use flacenc::bitsink::ByteSink;
use flacenc::component::{BitRepr, StreamInfo};
use flacenc::config;
use flacenc::error::{Verified, Verify};
use flacenc::source::{Context, Fill, FrameBuf};

/// Samples in a block.
pub(super) const BLOCK: usize = 4096;
/// The mark and the one block of metadata: what comes before the first frame.
pub(super) const HEADER_BYTES: usize = 42;
const BITS: usize = 16;

/// What stands in the header of a file (RFC 9639, section 8.2).
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) struct Header {
    pub rate_hz: u32,
    /// 0: not known.
    pub samples: u64,
    /// Of the samples as they were; all 0: not known.
    pub md5: [u8; 16],
}

impl Header {
    /// As the file begins.
    pub fn bytes(&self) -> [u8; HEADER_BYTES] {
        let block = u16::try_from(BLOCK).unwrap_or(u16::MAX).to_be_bytes();
        let mut bytes = [0; HEADER_BYTES];
        // The mark; the last block of metadata, of kind 0 and 34 bytes; the block sizes. Frame sizes stay 0: not known.
        let head = [b'f', b'L', b'a', b'C', 0x80, 0, 0, 34, block[0], block[1], block[0], block[1]];
        // 20 bits of rate, 3 of channels less one, 5 of bits less one, 36 of samples.
        let packed = (u64::from(self.rate_hz & 0xF_FFFF) << 44) | ((BITS as u64 - 1) << 36) | (self.samples & 0xF_FFFF_FFFF);
        let parts = head.into_iter().chain([0; 6]).chain(packed.to_be_bytes()).chain(self.md5);
        bytes.iter_mut().zip(parts).for_each(|(to, byte)| *to = byte);
        bytes
    }
}

/// Makes frames of samples.
pub(super) struct Encoder {
    config: Verified<config::Encoder>,
    info: StreamInfo,
    frame: FrameBuf,
    context: Context,
    rate_hz: u32,
    waiting: Vec<i32>,
    samples: u64,
}

fn failed(error: impl std::fmt::Display) -> RecordError {
    RecordError::Sound(format!("the sound could not be encoded ({error})"))
}

impl Encoder {
    /// # Errors
    /// FLAC has no such rate.
    pub fn new(rate_hz: u32) -> Result<Self, RecordError> {
        let config = config::Encoder::default().into_verified().map_err(|(_, error)| failed(error))?;
        let info = StreamInfo::new(rate_hz as usize, 1, BITS).map_err(failed)?;
        let frame = FrameBuf::with_size(1, BLOCK).map_err(failed)?;
        Ok(Self { config, info, frame, context: Context::new(BITS, 1), rate_hz, waiting: Vec::with_capacity(2 * BLOCK), samples: 0 })
    }

    /// The header for what has been encoded so far.
    pub fn header(&self) -> Header {
        Header { rate_hz: self.rate_hz, samples: self.samples, md5: self.context.md5_digest() }
    }

    /// Samples in whole frames so far.
    pub fn samples(&self) -> u64 {
        self.samples
    }

    /// Takes samples of −1 to 1 and appends the frames that they fill.
    ///
    /// # Errors
    /// The encoder fails.
    pub fn push(&mut self, sound: &[f32], out: &mut Vec<u8>) -> Result<(), RecordError> {
        // What is no number is silence.
        self.waiting.extend(sound.iter().map(|x| i32::from((x * 32_768.0).round().clamp(-32_768.0, 32_767.0) as i16)));
        while self.waiting.len() >= BLOCK {
            let block: Vec<i32> = self.waiting.drain(..BLOCK).collect();
            self.encode(&block, out)?;
        }
        Ok(())
    }

    /// Appends what is left as the last, shorter frame.
    ///
    /// # Errors
    /// The encoder fails.
    pub fn finish(&mut self, out: &mut Vec<u8>) -> Result<(), RecordError> {
        let rest = std::mem::take(&mut self.waiting);
        if rest.is_empty() { Ok(()) } else { self.encode(&rest, out) }
    }

    fn encode(&mut self, block: &[i32], out: &mut Vec<u8>) -> Result<(), RecordError> {
        self.frame.fill_interleaved(block).map_err(failed)?;
        self.context.fill_interleaved(block).map_err(failed)?;
        let number = self.context.current_frame_number().unwrap_or(0);
        let frame = flacenc::encode_fixed_size_frame(&self.config, &self.frame, number, &self.info).map_err(failed)?;
        let mut sink = ByteSink::new();
        frame.write(&mut sink).map_err(failed)?;
        out.extend_from_slice(sink.as_slice());
        self.samples += block.len() as u64;
        Ok(())
    }
}

#[cfg(test)]
#[path = "tests/flac.rs"]
pub(super) mod tests;
