//! The outer file: one line of JSON that names kind, form, key and signature, and below it the content as it was signed.
//!
//! The signature covers the exact bytes below the first line, so nothing has to be written again in the same way to be
//! checked, and a person can read the content with any editor.

use super::error::HandoverError;
use super::keys::{PublicKey, SecretKey, bytes_of, hex};
use super::kind::{Kind, MAX_SEALED_BYTES};
use serde::{Deserialize, Serialize};

/// The present form of both kinds.
const VERSION: u32 = 1;

#[derive(Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
struct Head {
    tidecount: Kind,
    version: u32,
    by: String,
    signature: String,
}

/// What stood under a seal that fits.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Opened {
    /// The content, exactly as it was signed.
    pub content: String,
    /// Whose seal it is. Whether that key is to be trusted is for the caller to say.
    pub by: PublicKey,
}

/// The kind and the form are signed with the content, so that one kind can never pass for another.
fn signed(kind: Kind, version: u32, content: &str) -> Vec<u8> {
    format!("tidecount {} {version}\n{content}", kind.word()).into_bytes()
}

/// The whole text of a sealed file.
#[must_use]
pub fn seal(kind: Kind, content: &str, key: &SecretKey) -> String {
    let signature = hex(&key.sign(&signed(kind, VERSION, content)));
    let head = Head { tidecount: kind, version: VERSION, by: key.public().to_hex(), signature };
    format!("{}\n{content}", head_line(&head))
}

fn head_line(head: &Head) -> String {
    // A struct of texts and numbers is always written.
    serde_json::to_string(head).unwrap_or_default()
}

/// Checks the seal and gives what is under it.
///
/// # Errors
/// The bytes are no such file, are of another kind or a newer form, or the seal does not fit.
pub fn open(wanted: Kind, bytes: &[u8]) -> Result<Opened, HandoverError> {
    if bytes.is_empty() {
        return Err(HandoverError::Empty);
    }
    if bytes.len() > MAX_SEALED_BYTES {
        return Err(HandoverError::TooLarge);
    }
    if !bytes.starts_with(b"{\"tidecount\":") {
        return Err(HandoverError::NotSealed(wanted));
    }
    let end = bytes.iter().position(|byte| *byte == b'\n').ok_or(HandoverError::Damaged)?;
    let (line, rest) = bytes.split_at(end);
    let head: Head = serde_json::from_slice(line).map_err(|_| HandoverError::Damaged)?;
    if head.version > VERSION {
        return Err(HandoverError::Newer { found: head.version, known: VERSION });
    }
    if head.tidecount != wanted {
        return Err(HandoverError::OtherKind { found: head.tidecount, wanted });
    }
    let content = rest.get(1..).and_then(|rest| std::str::from_utf8(rest).ok()).ok_or(HandoverError::Damaged)?;
    let (by, signature) = PublicKey::from_hex(&head.by).zip(bytes_of(&head.signature)).ok_or(HandoverError::Damaged)?;
    // One way of writing the line: no changed blank or zero goes unseen.
    let as_written = head_line(&head).as_bytes() == line;
    if as_written && by.fits(&signed(head.tidecount, head.version, content), &signature) {
        Ok(Opened { content: content.to_owned(), by })
    } else {
        Err(HandoverError::Damaged)
    }
}

#[cfg(test)]
#[path = "tests/seal.rs"]
mod tests;
