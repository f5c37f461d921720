//! Ed25519 keys (RFC 8032) and their fingerprints for reading out.

use ed25519_dalek::{Signature, Signer, SigningKey, VerifyingKey};
use sha2::{Digest, Sha256};
use std::fmt;

/// Signs. Never shown: not by `Debug` either.
#[derive(Clone)]
pub struct SecretKey(SigningKey);

impl SecretKey {
    /// From 32 bytes that nobody can guess.
    #[must_use]
    pub fn from_bytes(bytes: &[u8; 32]) -> Self {
        Self(SigningKey::from_bytes(bytes))
    }

    /// From 64 hexadecimal digits; none where they are something else.
    #[must_use]
    pub fn from_hex(text: &str) -> Option<Self> {
        bytes_of::<32>(text).map(|bytes| Self::from_bytes(&bytes))
    }

    /// 64 hexadecimal digits. Whoever has them can sign.
    #[must_use]
    pub fn to_hex(&self) -> String {
        hex(self.0.as_bytes())
    }

    /// The half that may be known.
    #[must_use]
    pub fn public(&self) -> PublicKey {
        PublicKey(self.0.verifying_key().to_bytes())
    }

    /// The signature of a message.
    #[must_use]
    pub fn sign(&self, message: &[u8]) -> [u8; 64] {
        self.0.sign(message).to_bytes()
    }
}

impl fmt::Debug for SecretKey {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "SecretKey of {:?}", self.public())
    }
}

/// Checks signatures.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct PublicKey([u8; 32]);

impl PublicKey {
    /// From 64 lower-case hexadecimal digits; none where they are something else.
    #[must_use]
    pub fn from_hex(text: &str) -> Option<Self> {
        bytes_of(text).map(Self)
    }

    /// 64 lower-case hexadecimal digits.
    #[must_use]
    pub fn to_hex(&self) -> String {
        hex(&self.0)
    }

    /// True where this key signed exactly this message. Weak keys, for which one signature fits many messages, never fit.
    #[must_use]
    pub fn fits(&self, message: &[u8], signature: &[u8; 64]) -> bool {
        VerifyingKey::from_bytes(&self.0).is_ok_and(|key| key.verify_strict(message, &Signature::from_bytes(signature)).is_ok())
    }

    /// What two people compare on the phone.
    #[must_use]
    pub fn fingerprint(&self) -> Fingerprint {
        let digest = Sha256::new().chain_update(b"tidecount fingerprint 1\n").chain_update(self.0).finalize();
        let mut groups = [0; 5];
        // 40 bits for each group: the digits are as good as evenly spread.
        for (group, bytes) in groups.iter_mut().zip(digest.chunks_exact(5)) {
            *group = bytes.iter().fold(0_u64, |sum, byte| sum << 8 | u64::from(*byte)) % 100_000;
        }
        Fingerprint(groups)
    }
}

/// Five groups of five digits that stand for a key: 83 bits, enough that nobody finds another key with the same ones.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Fingerprint([u64; 5]);

impl Fingerprint {
    /// From the digits as somebody typed them: blanks and dashes between them do not matter.
    #[must_use]
    pub fn from_typed(text: &str) -> Option<Self> {
        let digits: Vec<u64> =
            text.chars().filter(|c| !c.is_whitespace() && *c != '-').map(|c| c.to_digit(10).map(u64::from)).collect::<Option<_>>()?;
        let groups: Vec<u64> = digits.chunks(5).map(|group| group.iter().fold(0, |sum, digit| sum * 10 + digit)).collect();
        (digits.len() == 25).then_some(())?;
        groups.try_into().ok().map(Self)
    }

    /// For a command line: no blanks.
    #[must_use]
    pub fn dashed(&self) -> String {
        self.0.map(|group| format!("{group:05}")).join("-")
    }
}

impl fmt::Display for Fingerprint {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.0.map(|group| format!("{group:05}")).join(" "))
    }
}

/// Lower-case hexadecimal digits, two a byte.
#[must_use]
pub fn hex(bytes: &[u8]) -> String {
    bytes.iter().map(|byte| format!("{byte:02x}")).collect()
}

/// Exactly `N` bytes from lower-case digits: one text for one value, so that no changed character goes unseen.
pub(super) fn bytes_of<const N: usize>(text: &str) -> Option<[u8; N]> {
    let digit = |c: u8| match c {
        b'0'..=b'9' => Some(c - b'0'),
        b'a'..=b'f' => Some(c - b'a' + 10),
        _ => None,
    };
    let pairs = text.as_bytes().chunks_exact(2);
    pairs.remainder().is_empty().then_some(())?;
    let bytes: Option<Vec<u8>> = pairs
        .map(|pair| match pair {
            [high, low] => Some(digit(*high)? << 4 | digit(*low)?),
            _ => None,
        })
        .collect();
    bytes?.try_into().ok()
}

#[cfg(test)]
#[path = "tests/keys.rs"]
mod tests;
