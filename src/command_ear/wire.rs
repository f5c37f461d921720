//! What parent and child say to each other over the child's standard input and output.
//!
//! A frame is: length of the rest, `u32` little-endian; kind, one byte; body. Numbers in bodies are little-endian.
//!
//! | kind | from | body |
//! | --- | --- | --- |
//! | `G` | parent | JSON [`GrammarOrder`]: what a path listens for; no phrases turn it off |
//! | `V` | parent | the client's own voice, as [`super::EnrolledVoice`] writes it; empty forgets it |
//! | `W` | parent | JSON list of words: which does the model not know? |
//! | `S` | parent | `u64` number, `f64` clock at the first sample in s, `u8` main path hears it, `f32` level of our own voice in dB, `i16` samples at 16 kHz |
//! | `F` | parent | `u64` number: the sound is over, decide on what is open |
//! | `R` | child | empty: the model is loaded |
//! | `w` | child | JSON list of the unknown words, the answer to `W` |
//! | `H` | child | JSON [`HeardReport`] |
//! | `C` | child | JSON [`super::Considered`], where a `G` asked for it |
//! | `D` | child | `u64` number, `f64` s: that `S` or `F` is dealt with, and all sound before that instant |
//! | `E` | child | text: why it cannot go on; it ends then |
//!
//! The child ends when its input does.

use super::Path;
use serde::{Deserialize, Serialize};
use std::io::{self, Read, Write};

/// Longest frame, bytes: a guard against a torn stream.
const LONGEST: u32 = 16 << 20;

/// Kinds of frames, see the module's table.
pub(crate) mod kind {
    pub const GRAMMAR: u8 = b'G';
    pub const OWN_VOICE: u8 = b'V';
    pub const WORDS: u8 = b'W';
    pub const SOUND: u8 = b'S';
    pub const FINISH: u8 = b'F';
    pub const READY: u8 = b'R';
    pub const UNKNOWN_WORDS: u8 = b'w';
    pub const HEARD: u8 = b'H';
    pub const CONSIDERED: u8 = b'C';
    pub const DONE: u8 = b'D';
    pub const ERROR: u8 = b'E';
}

/// Body of `G`.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub(crate) struct GrammarOrder {
    pub fast: bool,
    /// Comes back with each phrase heard, so that one heard under an older grammar can be told.
    pub generation: u64,
    /// The wordings of each choice.
    pub choices: Vec<Vec<String>>,
    /// Choices from this one on may follow each other in one breath.
    #[serde(default)]
    pub list_from: Option<usize>,
    /// [`super::Grammar::near`].
    #[serde(default)]
    pub near: Vec<String>,
    /// [`super::Grammar::urgent`], by their numbers among the choices.
    #[serde(default)]
    pub urgent: Vec<usize>,
    /// From now on everything that is considered is told.
    #[serde(default)]
    pub why: bool,
}

/// Body of `H`.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub(crate) struct HeardReport {
    pub fast: bool,
    pub generation: u64,
    pub text: String,
    pub start_s: f64,
    pub end_s: f64,
    pub decided_s: f64,
    pub confidence: f64,
}

impl HeardReport {
    pub fn path(&self) -> Path {
        if self.fast { Path::Fast } else { Path::Main }
    }
}

/// Body of `S`.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct Sound {
    pub number: u64,
    pub start_s: f64,
    pub main: bool,
    pub own_db: f32,
    pub samples: Vec<i16>,
}

impl Sound {
    pub fn to_body(&self) -> Vec<u8> {
        let mut body = Vec::with_capacity(21 + 2 * self.samples.len());
        body.extend(self.number.to_le_bytes());
        body.extend(self.start_s.to_le_bytes());
        body.push(u8::from(self.main));
        body.extend(self.own_db.to_le_bytes());
        body.extend(self.samples.iter().flat_map(|s| s.to_le_bytes()));
        body
    }

    pub fn from_body(body: &[u8]) -> Option<Self> {
        let (number, rest) = body.split_first_chunk()?;
        let (start_s, rest) = rest.split_first_chunk()?;
        let (main, rest) = rest.split_first()?;
        let (own_db, rest) = rest.split_first_chunk()?;
        let (samples, odd) = rest.as_chunks();
        odd.is_empty().then(|| Self {
            number: u64::from_le_bytes(*number),
            start_s: f64::from_le_bytes(*start_s),
            main: *main != 0,
            own_db: f32::from_le_bytes(*own_db),
            samples: samples.iter().map(|b| i16::from_le_bytes(*b)).collect(),
        })
    }
}

/// Body of `D`.
pub(crate) fn done_body(number: u64, settled_s: f64) -> Vec<u8> {
    let mut body = number.to_le_bytes().to_vec();
    body.extend(settled_s.to_le_bytes());
    body
}

/// The number of a `F` or `D` and, for `D`, the instant behind it.
pub(crate) fn number_and_instant(body: &[u8]) -> Option<(u64, Option<f64>)> {
    let (number, rest) = body.split_first_chunk()?;
    Some((u64::from_le_bytes(*number), rest.first_chunk().map(|b| f64::from_le_bytes(*b))))
}

/// Writes a frame; does not flush.
pub(crate) fn write_frame(to: &mut impl Write, kind: u8, body: &[u8]) -> io::Result<()> {
    let length = u32::try_from(body.len() + 1)
        .ok()
        .filter(|&n| n <= LONGEST)
        .ok_or_else(|| io::Error::new(io::ErrorKind::InvalidInput, "frame too long"))?;
    let mut frame = Vec::with_capacity(body.len() + 5);
    frame.extend(length.to_le_bytes());
    frame.push(kind);
    frame.extend(body);
    to.write_all(&frame)
}

/// Reads a frame; None where the stream ends between frames.
pub(crate) fn read_frame(from: &mut impl Read) -> io::Result<Option<(u8, Vec<u8>)>> {
    let mut length = [0; 4];
    let mut have = 0;
    while let Some(space) = length.get_mut(have..).filter(|s| !s.is_empty()) {
        match from.read(space) {
            Ok(0) if have == 0 => return Ok(None),
            Ok(0) => return Err(io::ErrorKind::UnexpectedEof.into()),
            Ok(n) => have += n,
            Err(e) if e.kind() == io::ErrorKind::Interrupted => {}
            Err(e) => return Err(e),
        }
    }
    let length = u32::from_le_bytes(length);
    if length == 0 || length > LONGEST {
        return Err(io::Error::new(io::ErrorKind::InvalidData, format!("frame of {length} bytes")));
    }
    let mut kind = [0];
    from.read_exact(&mut kind)?;
    let mut body = vec![0; length as usize - 1];
    from.read_exact(&mut body)?;
    Ok(Some((kind[0], body)))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn frames_come_back_as_they_went() {
        let sound = Sound { number: 7, start_s: 1.25, main: true, own_db: f32::NEG_INFINITY, samples: vec![1, -2, i16::MIN] };
        let mut bytes = Vec::new();
        write_frame(&mut bytes, kind::SOUND, &sound.to_body()).unwrap();
        write_frame(&mut bytes, kind::DONE, &done_body(7, 1.2)).unwrap();
        let mut from = bytes.as_slice();
        let (what, body) = read_frame(&mut from).unwrap().unwrap();
        assert_eq!((what, Sound::from_body(&body)), (kind::SOUND, Some(sound)));
        let (what, body) = read_frame(&mut from).unwrap().unwrap();
        assert_eq!((what, number_and_instant(&body)), (kind::DONE, Some((7, Some(1.2)))));
        assert_eq!(read_frame(&mut from).unwrap(), None);
    }

    #[test]
    fn torn_and_senseless_frames_are_errors() {
        let mut bytes = Vec::new();
        write_frame(&mut bytes, kind::SOUND, &[0; 30]).unwrap();
        bytes.truncate(20);
        assert!(read_frame(&mut bytes.as_slice()).is_err());
        assert!(read_frame(&mut [0, 0, 0, 0].as_slice()).is_err());
        assert!(read_frame(&mut [255, 255, 255, 255, 1].as_slice()).is_err());
        assert!(read_frame(&mut [1, 0].as_slice()).is_err());
        assert_eq!(Sound::from_body(&[0; 22]), None);
        assert_eq!(Sound::from_body(&[0; 3]), None);
    }
}
