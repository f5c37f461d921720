//! Names in an address.

/// A text as it stands in an address.
#[must_use]
pub fn encoded(text: &str) -> String {
    let plain = |byte: u8| byte.is_ascii_alphanumeric() || b"-_.".contains(&byte);
    text.bytes().map(|byte| if plain(byte) { char::from(byte).to_string() } else { format!("%{byte:02X}") }).collect()
}

#[cfg(test)]
mod tests {
    #[test]
    fn names_in_addresses_are_encoded() {
        assert_eq!(super::encoded("evening-2.toml"), "evening-2.toml");
        assert_eq!(super::encoded("a b&c=/ü"), "a%20b%26c%3D%2F%C3%BC");
    }
}
