//! Sound files whose headers do not say what is in them.

use std::fs::File;
use std::io::{Read, Seek, SeekFrom};
use std::path::Path;
use symphonia::core::io::MediaSource;

/// The header of a WAV is looked for in this much of the file, bytes.
const HEAD: u64 = 1 << 16;

/// A file with its beginning mended in memory; the rest is read as it is asked for.
pub(super) struct MendedFile {
    head: Vec<u8>,
    /// Bytes of the file that `head` stands for.
    replaced: u64,
    file: File,
    /// Length as the reader sees it.
    length: u64,
    at: u64,
}

impl MendedFile {
    pub fn open(path: &Path) -> std::io::Result<Self> {
        let mut file = File::open(path)?;
        let mut head = Vec::new();
        (&mut file).take(HEAD).read_to_end(&mut head)?;
        let replaced = head.len() as u64;
        // What is no plain file (a pipe) tells no length and cannot be gone back in; all of it is taken in then.
        let metadata = file.metadata()?;
        let on_disk = if metadata.is_file() {
            metadata.len()
        } else {
            file.read_to_end(&mut head)?;
            head.len() as u64
        };
        let replaced = if metadata.is_file() { replaced } else { on_disk };
        mend_wav_header(&mut head, on_disk);
        let length = head.len() as u64 + on_disk.saturating_sub(replaced);
        Ok(Self { head, replaced, file, length, at: 0 })
    }

    pub fn is_empty(&self) -> bool {
        self.length == 0
    }

    /// The number of channels in the header of a WAV or AIFF.
    pub fn channels(&self) -> Option<u16> {
        let (wave, name, place): (bool, &[u8; 4], usize) = match (self.head.get(..4)?, self.head.get(8..12)?) {
            (b"RIFF", b"WAVE") => (true, b"fmt ", 10),
            (b"FORM", b"AIFF" | b"AIFC") => (false, b"COMM", 8),
            _ => return None,
        };
        let mut at = 12usize;
        // From chunk to chunk: their names may stand in a comment, too.
        while let Some(&[a, b, c, d, lengths @ ..]) = self.head.get(at..at.checked_add(8)?).and_then(|h| <&[u8; 8]>::try_from(h).ok()) {
            if [a, b, c, d] == *name {
                let number = self.head.get(at + place..at + place + 2).and_then(|n| <[u8; 2]>::try_from(n).ok())?;
                return Some(if wave { u16::from_le_bytes(number) } else { u16::from_be_bytes(number) });
            }
            let length = if wave { u32::from_le_bytes(lengths) } else { u32::from_be_bytes(lengths) } as usize;
            at = at.checked_add(8)?.checked_add(length)?.checked_add(length % 2)?;
        }
        None
    }
}

impl Read for MendedFile {
    fn read(&mut self, into: &mut [u8]) -> std::io::Result<usize> {
        let head = self.head.len() as u64;
        let count = if self.at < head {
            (&self.head[self.at as usize..]).read(into)?
        } else {
            if self.at >= self.length {
                return Ok(0);
            }
            self.file.seek(SeekFrom::Start(self.at - head + self.replaced))?;
            self.file.read(into)?
        };
        self.at += count as u64;
        Ok(count)
    }
}

impl Seek for MendedFile {
    fn seek(&mut self, to: SeekFrom) -> std::io::Result<u64> {
        let at = match to {
            SeekFrom::Start(at) => Some(at),
            SeekFrom::End(by) => self.length.checked_add_signed(by),
            SeekFrom::Current(by) => self.at.checked_add_signed(by),
        };
        self.at = at.ok_or_else(|| std::io::Error::from(std::io::ErrorKind::InvalidInput))?;
        Ok(self.at)
    }
}

impl MediaSource for MendedFile {
    fn is_seekable(&self) -> bool {
        true
    }

    fn byte_len(&self) -> Option<u64> {
        Some(self.length)
    }
}

/// Programs that write a WAV to a pipe cannot know its length and leave 0 or a huge one in the header; a recording cut
/// off in the middle has one that is too long. Puts in what is there. Some telephone recorders leave out the two bytes
/// that close the format of A-law and mu-law; adds them. `bytes`: the beginning of a file of `on_disk` bytes.
fn mend_wav_header(bytes: &mut Vec<u8>, on_disk: u64) {
    if bytes.len() < 12 || &bytes[..4] != b"RIFF" || &bytes[8..12] != b"WAVE" {
        return;
    }
    let mut length_now = on_disk;
    let mut at = 12usize;
    while let Some(header) = bytes.get(at..at.saturating_add(8)) {
        let length = u32::from_le_bytes([header[4], header[5], header[6], header[7]]) as usize;
        let there = length_now.saturating_sub(at as u64 + 8);
        if &header[..4] == b"fmt " && length == 16 && matches!(bytes.get(at + 8), Some(6 | 7)) && bytes.len() >= at + 24 {
            bytes[at + 4] = 18;
            bytes.splice(at + 24..at + 24, [0, 0]);
            length_now += 2;
            continue;
        }
        if &header[..4] != b"data" {
            at = at.saturating_add(8 + length + length % 2);
            continue;
        }
        // A length of 0 with more chunks behind it is an empty recording, not an unknown length.
        let unknown = length == 0 && there > 8 && !bytes[at + 8..].starts_with(b"LIST");
        if (unknown || length as u64 > there)
            && let Ok(data) = u32::try_from(there)
        {
            bytes[at + 4..at + 8].copy_from_slice(&data.to_le_bytes());
        }
        if let Ok(all) = u32::try_from(length_now.saturating_sub(8)) {
            bytes[4..8].copy_from_slice(&all.to_le_bytes());
        }
        return;
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_mended_file_reads_as_one_also_after_going_back() {
        let folder = tempfile::tempdir().unwrap();
        let path = folder.path().join("law.wav");
        // Mu-law with the short format and an unknown length, longer than the head.
        let mut bytes = b"RIFF\0\0\0\0WAVEfmt \x10\0\0\0\x07\0\x01\0".to_vec();
        bytes.extend([0x40, 0x1f, 0, 0, 0x40, 0x1f, 0, 0, 1, 0, 8, 0]);
        bytes.extend(b"data\0\0\0\0");
        bytes.extend((0..200_000u32).map(|k| (k % 251) as u8));
        std::fs::write(&path, &bytes).unwrap();
        let mut file = MendedFile::open(&path).unwrap();
        let mut read = Vec::new();
        file.read_to_end(&mut read).unwrap();
        assert_eq!(read.len(), bytes.len() + 2);
        assert_eq!(read[4..8], u32::try_from(bytes.len() + 2 - 8).unwrap().to_le_bytes());
        assert_eq!(read[42..46], 200_000u32.to_le_bytes());
        assert_eq!(read[46..], bytes[44..]);
        for at in [0u64, 10, 65_530, 65_540, 150_000] {
            file.seek(SeekFrom::Start(at)).unwrap();
            let mut piece = [0; 20];
            file.read_exact(&mut piece).unwrap();
            assert_eq!(piece[..], read[at as usize..at as usize + 20]);
        }
        assert!(file.seek(SeekFrom::Current(-999_999)).is_err());
    }
}
