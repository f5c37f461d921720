//! What voice programs write: WAV with a length that may be false, or bare 16-bit samples.

use crate::{Pcm, SpeakError};

fn u16_at(bytes: &[u8], at: usize) -> Option<u16> {
    Some(u16::from_le_bytes(bytes.get(at..at + 2)?.try_into().ok()?))
}

fn u32_at(bytes: &[u8], at: usize) -> Option<u32> {
    Some(u32::from_le_bytes(bytes.get(at..at + 4)?.try_into().ok()?))
}

/// Samples from 16-bit little-endian bytes; half a sample at the end is left out.
pub(super) fn from_s16le(bytes: &[u8], rate_hz: u32) -> Pcm {
    let samples = bytes.chunks_exact(2).map(|b| f32::from(i16::from_le_bytes([b[0], b[1]])) / 32_768.0).collect();
    Pcm { rate_hz, samples }
}

/// Samples from a mono 16-bit WAV that was written to a pipe: its writer could not go back to fill in the length, so the
/// data chunk is taken to reach to the end wherever it claims more than there is.
///
/// # Errors
/// It is no such WAV; the text says what was found.
pub(super) fn from_wav(bytes: &[u8]) -> Result<Pcm, SpeakError> {
    let wrong = |what: &str| SpeakError(format!("it wrote {what} instead of a mono 16-bit WAV"));
    if bytes.get(..4) != Some(b"RIFF") || bytes.get(8..12) != Some(b"WAVE") {
        return Err(wrong(if bytes.is_empty() { "nothing" } else { "something else" }));
    }
    let (mut at, mut rate_hz) = (12usize, None);
    while let (Some(name), Some(claimed)) = (bytes.get(at..at + 4), u32_at(bytes, at + 4)) {
        let (from, claimed) = (at + 8, claimed as usize);
        if name == b"fmt " {
            let (form, channels, bits) = (u16_at(bytes, from), u16_at(bytes, from + 2), u16_at(bytes, from + 14));
            if (form, channels, bits) != (Some(1), Some(1), Some(16)) {
                return Err(wrong("WAV of another form"));
            }
            rate_hz = u32_at(bytes, from + 4).filter(|rate| (4_000..=192_000).contains(rate));
        } else if name == b"data" {
            let rate_hz = rate_hz.ok_or_else(|| wrong("WAV without a usable rate"))?;
            let until = from.saturating_add(claimed).min(bytes.len());
            return Ok(from_s16le(bytes.get(from..until).unwrap_or_default(), rate_hz));
        }
        at = from.saturating_add(claimed).saturating_add(claimed % 2);
    }
    Err(wrong("WAV without sound"))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn wav(claimed: u32, samples: &[i16]) -> Vec<u8> {
        let mut bytes = b"RIFF\x24\xf0\xff\x7fWAVEfmt \x10\0\0\0\x01\0\x01\0\x22\x56\0\0\x44\xac\0\0\x02\0\x10\0data".to_vec();
        bytes.extend(claimed.to_le_bytes());
        bytes.extend(samples.iter().flat_map(|s| s.to_le_bytes()));
        bytes
    }

    #[test]
    fn a_false_length_is_borne() {
        for claimed in [0x7fff_f000, 6, u32::MAX] {
            let line = from_wav(&wav(claimed, &[0, 16_384, -32_768])).unwrap();
            assert_eq!((line.rate_hz, &line.samples[..]), (22_050, &[0.0, 0.5, -1.0][..]));
        }
        assert_eq!(from_wav(&wav(2, &[1, 2, 3])).unwrap().samples.len(), 1);
    }

    #[test]
    fn whatever_else_is_an_error_never_a_panic() {
        let good = wav(6, &[1, 2, 3]);
        for cut in 0..44 {
            assert!(from_wav(&good[..cut]).is_err(), "{cut}");
        }
        for at in 0..44 {
            let mut bent = good.clone();
            bent[at] ^= 0xff;
            let _ = from_wav(&bent);
        }
        assert!(from_wav(b"").unwrap_err().0.contains("nothing"));
    }
}
