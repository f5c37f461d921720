use super::*;

/// RFC 8032, section 7.1, tests 1 to 3: secret key, public key, message, signature.
const VECTORS: [[&str; 4]; 3] = [
    [
        "9d61b19deffd5a60ba844af492ec2cc44449c5697b326919703bac031cae7f60",
        "d75a980182b10ab7d54bfed3c964073a0ee172f3daa62325af021a68f707511a",
        "",
        "e5564300c360ac729086e2cc806e828a84877f1eb8e5d974d873e065224901555fb8821590a33bacc61e39701cf9b46bd25bf5f0595bbe24655141438e7a100b",
    ],
    [
        "4ccd089b28ff96da9db6c346ec114e0f5b8a319f35aba624da8cf6ed4fb8a6fb",
        "3d4017c3e843895a92b70aa74d1b7ebc9c982ccf2ec4968cc0cd55f12af4660c",
        "72",
        "92a009a9f0d4cab8720e820b5f642540a2b27b5416503f8fb3762223ebdb69da085ac1e43e15996e458f3613d0f11d8c387b2eaeb4302aeeb00d291612bb0c00",
    ],
    [
        "c5aa8df43f9f837bedb7442f31dcb7b166d38535076f094b85ce3a2e0b4458f7",
        "fc51cd8e6218a1a38da47ed00230f0580816ed13ba3303ac5deb911548908025",
        "af82",
        "6291d657deec24024827e69c3abe01a30ce548a284743a445e3680d7db5ac3ac18ff9b538d16f290ae67f760984dc6594a7c15e9716ed28dc027beceea1ec40a",
    ],
];

#[test]
fn keys_and_signatures_are_those_of_rfc_8032() {
    for [secret, public, message, signature] in VECTORS {
        let key = SecretKey::from_hex(secret).expect("a key");
        let message: Vec<u8> = (0..message.len() / 2).map(|n| u8::from_str_radix(&message[2 * n..2 * n + 2], 16).expect("hex")).collect();
        assert_eq!(key.public().to_hex(), public);
        assert_eq!(hex(&key.sign(&message)), signature);
        let mut signature: [u8; 64] = bytes_of(signature).expect("64 bytes");
        assert!(key.public().fits(&message, &signature));
        signature[63] ^= 0x10;
        assert!(!key.public().fits(&message, &signature));
    }
}

/// Points of low order sign anything under lax checking (Chalkias, Garillot & Nikolaenko 2020, "Taming the many EdDSAs";
/// the identity point with s = 0, from memory).
#[test]
fn a_weak_key_signs_nothing() {
    let weak = PublicKey::from_hex(&format!("01{}", "00".repeat(31))).expect("32 bytes");
    let signature: [u8; 64] = bytes_of(&format!("01{}", "00".repeat(63))).expect("64 bytes");
    assert!(!weak.fits(b"anything", &signature));
}

#[test]
fn a_fingerprint_is_five_groups_and_read_back_as_people_type_it() {
    let print = SecretKey::from_bytes(&[7; 32]).public().fingerprint();
    let shown = print.to_string();
    assert!(shown.split(' ').map(str::len).eq([5; 5]), "{shown}");
    for typed in [shown.clone(), print.dashed(), shown.replace(' ', ""), format!(" {} ", shown.replace(' ', " - "))] {
        assert_eq!(Fingerprint::from_typed(&typed), Some(print), "{typed}");
    }
    for typed in ["", "12345", "12345 12345 12345 12345 1234x", &shown[1..], &format!("{shown}0")] {
        assert_eq!(Fingerprint::from_typed(typed), None, "{typed}");
    }
    assert_ne!(print, SecretKey::from_bytes(&[8; 32]).public().fingerprint());
}

#[test]
fn a_secret_is_not_shown_by_debug() {
    let key = SecretKey::from_bytes(&[7; 32]);
    assert!(!format!("{key:?}").contains(&key.to_hex()));
}

#[test]
fn only_whole_lower_case_digits_are_bytes() {
    assert_eq!(bytes_of::<2>("00ff"), Some([0, 255]));
    for text in ["00fF", "00f", "00ff0", "00ff00", "", "0x0f", "00fé"] {
        assert_eq!(bytes_of::<2>(text), None, "{text}");
    }
}
