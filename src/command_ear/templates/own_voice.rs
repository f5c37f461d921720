//! What is known of one person's way of saying the commands.

use super::take::Take;
use std::io::Read;

/// Says in the first byte how the rest is written.
const FORM: u8 = 1;

/// One command as this person says it.
#[derive(Debug, Clone, PartialEq)]
pub struct OwnWord {
    /// The wording that was said.
    pub wording: String,
    /// Acting on it wrongly is costly: a likeness alone never makes it sure, so that the session asks back.
    pub costly: bool,
    pub takes: Vec<Take>,
}

/// All commands that a person has said for us.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct EnrolledVoice {
    pub words: Vec<OwnWord>,
}

impl EnrolledVoice {
    /// As bytes, for the recogniser's process.
    #[must_use]
    pub(crate) fn to_bytes(&self) -> Vec<u8> {
        let mut bytes = vec![FORM];
        for word in &self.words {
            put(&mut bytes, word.wording.as_bytes());
            bytes.push(u8::from(word.costly));
            bytes.extend(length(word.takes.len()));
            for take in &word.takes {
                put(&mut bytes, &take.to_bytes());
            }
        }
        bytes
    }

    /// From [`EnrolledVoice::to_bytes`]; None where it is torn or of another form.
    #[must_use]
    pub(crate) fn from_bytes(bytes: &[u8]) -> Option<Self> {
        let (form, mut rest) = bytes.split_first()?;
        let mut words = Vec::new();
        while *form == FORM && !rest.is_empty() {
            let wording = String::from_utf8(get(&mut rest)?).ok()?;
            let costly = *{
                let (b, after) = rest.split_first()?;
                rest = after;
                b
            } != 0;
            let count = get_length(&mut rest)?;
            let takes = (0..count).map(|_| Take::from_bytes(&get(&mut rest)?)).collect::<Option<Vec<Take>>>()?;
            words.push(OwnWord { wording, costly, takes });
        }
        (*form == FORM).then_some(Self { words })
    }
}

fn length(n: usize) -> [u8; 4] {
    u32::try_from(n).unwrap_or(u32::MAX).to_le_bytes()
}

fn put(bytes: &mut Vec<u8>, piece: &[u8]) {
    bytes.extend(length(piece.len()));
    bytes.extend(piece);
}

fn get_length(rest: &mut &[u8]) -> Option<usize> {
    let (length, after) = rest.split_first_chunk()?;
    *rest = after;
    usize::try_from(u32::from_le_bytes(*length)).ok()
}

fn get(rest: &mut &[u8]) -> Option<Vec<u8>> {
    let length = get_length(rest)?;
    if length > rest.len() {
        return None;
    }
    let mut piece = vec![0; length];
    rest.read_exact(&mut piece).ok()?;
    Some(piece)
}
