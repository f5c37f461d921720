//! Identifiers that are the same at each export, so that a second one updates what a first one brought.

use sha2::{Digest, Sha256};

/// The name space of this program's identifiers: a UUID drawn once by lot.
const SPACE: [u8; 16] = [0x3f, 0x0c, 0x7a, 0x92, 0x5d, 0x1b, 0x4e, 0x68, 0x9a, 0xe4, 0x21, 0xb7, 0x60, 0x8c, 0xd5, 0x13];

/// A UUID made from names: version 8 over SHA-256, as RFC 9562, section 5.8 and appendix B.2, show it. The same names in the same
/// order always give the same one; names that differ anywhere give another.
#[must_use]
pub fn uuid(names: &[&str]) -> String {
    let mut bytes = Vec::new();
    for name in names {
        // The length before each name, so that moving a boundary gives another text.
        bytes.extend_from_slice(format!("{}:", name.len()).as_bytes());
        bytes.extend_from_slice(name.as_bytes());
    }
    in_space(&SPACE, &bytes)
}

fn in_space(space: &[u8; 16], name: &[u8]) -> String {
    let digest = Sha256::new().chain_update(space).chain_update(name).finalize();
    let mut text = String::with_capacity(36);
    for (index, byte) in digest.iter().take(16).enumerate() {
        let byte = match index {
            6 => (byte & 0x0f) | 0x80,
            8 => (byte & 0x3f) | 0x80,
            _ => *byte,
        };
        if matches!(index, 4 | 6 | 8 | 10) {
            text.push('-');
        }
        text.push_str(&format!("{byte:02x}"));
    }
    text
}

#[cfg(test)]
mod tests {
    use super::*;

    /// RFC 9562, appendix B.2: name "www.example.com" in the DNS name space (the values from memory).
    #[test]
    fn the_standards_example_comes_out() {
        let dns = [0x6b, 0xa7, 0xb8, 0x10, 0x9d, 0xad, 0x11, 0xd1, 0x80, 0xb4, 0x00, 0xc0, 0x4f, 0xd4, 0x30, 0xc8];
        assert_eq!(in_space(&dns, b"www.example.com"), "5c146b14-3c52-8afd-938a-375d0df1fbf6");
    }

    #[test]
    fn other_names_or_other_boundaries_give_another() {
        assert_eq!(uuid(&["a", "b"]), uuid(&["a", "b"]));
        assert_ne!(uuid(&["a", "b"]), uuid(&["ab"]));
        assert_ne!(uuid(&["a", "b"]), uuid(&["b", "a"]));
        assert_ne!(uuid(&["1", "23"]), uuid(&["12", "3"]));
    }
}
