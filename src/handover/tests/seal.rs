use super::*;

fn key() -> SecretKey {
    SecretKey::from_bytes(&[3; 32])
}

#[test]
fn what_was_sealed_is_opened_as_it_was() {
    for content in ["", "{}\n", "line\nline\r\n\u{feff}é"] {
        let opened = open(Kind::Package, seal(Kind::Package, content, &key()).as_bytes()).expect("fits");
        assert_eq!((opened.content.as_str(), opened.by), (content, key().public()));
    }
}

#[test]
fn every_truncation_and_every_flipped_bit_is_refused() {
    let sealed = seal(Kind::Results, "{\n  \"client\": \"somebody\"\n}\n", &key()).into_bytes();
    for length in 0..sealed.len() {
        assert!(open(Kind::Results, &sealed[..length]).is_err(), "cut to {length}");
    }
    for at in 0..sealed.len() {
        for bit in 0..8 {
            let mut flipped = sealed.clone();
            flipped[at] ^= 1 << bit;
            assert!(open(Kind::Results, &flipped).is_err(), "bit {bit} of byte {at}");
        }
    }
    assert!(open(Kind::Results, &[sealed.as_slice(), b"\n"].concat()).is_err(), "one byte more");
}

#[test]
fn line_ends_that_a_mail_program_changed_are_named_as_damage() {
    let sealed = seal(Kind::Package, "{\n}\n", &key()).replace('\n', "\r\n");
    assert_eq!(open(Kind::Package, sealed.as_bytes()), Err(HandoverError::Damaged));
}

#[test]
fn one_kind_does_not_pass_for_the_other_even_with_its_name_changed() {
    let sealed = seal(Kind::Package, "{}", &key());
    assert!(matches!(open(Kind::Results, sealed.as_bytes()), Err(HandoverError::OtherKind { found: Kind::Package, .. })));
    let renamed = sealed.replacen("package", "results", 1);
    assert_eq!(open(Kind::Results, renamed.as_bytes()), Err(HandoverError::Damaged));
}

#[test]
fn each_refusal_names_its_reason_and_a_remedy() {
    let sealed = seal(Kind::Package, "{}", &key());
    let newer = sealed.replacen("\"version\":1", "\"version\":2", 1);
    let cases: [(&[u8], &str, &str); 6] = [
        (b"", "empty", "copy it again"),
        (b"title = \"Evening\"\n", "no client package", ".tidepack"),
        (b"{\"tidecount\":", "damaged", "Copy it again"),
        (newer.as_bytes(), "newer tidecount", "newer version"),
        (b"{\"tidecount\":\"package\",\"version\":99999999999999999999,\"by\":\"\",\"signature\":\"\"}\n", "damaged", "sent again"),
        (&[b'{'; 100_000], "no client package", "copy it again"),
    ];
    for (bytes, reason, remedy) in cases {
        let text = open(Kind::Package, bytes).expect_err("refuses").to_string();
        assert!(text.contains(reason) && text.contains(remedy), "{text}");
    }
    let deep = [b"{\"tidecount\":".as_slice(), &[b'['; 1_000_000], b"\n"].concat();
    assert_eq!(open(Kind::Package, &deep), Err(HandoverError::Damaged));
    assert_eq!(open(Kind::Package, &vec![b'x'; MAX_SEALED_BYTES + 1]), Err(HandoverError::TooLarge));
}

#[test]
fn a_seal_of_another_key_fits_but_names_that_key() {
    let other = SecretKey::from_bytes(&[4; 32]);
    let opened = open(Kind::Package, seal(Kind::Package, "{}", &other).as_bytes()).expect("fits");
    assert_eq!(opened.by, other.public());
    let swapped = seal(Kind::Package, "{}", &other).replacen(&other.public().to_hex(), &key().public().to_hex(), 1);
    assert_eq!(open(Kind::Package, swapped.as_bytes()), Err(HandoverError::Damaged));
}
