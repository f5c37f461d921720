use super::*;

#[test]
fn the_variable_goes_before_the_file_and_an_empty_one_is_none() {
    let dir = tempfile::tempdir().expect("a folder");
    let path = private_file(dir.path(), "from the file\nsecond line\n");
    let take = |variable: &str, file: &Path| from_outside(Some(variable.into()), Some(file.as_os_str().to_owned())).expect("takes");
    assert_eq!(take("from the variable", &path), Some(Passphrase("from the variable".to_owned().into())));
    assert_eq!(take("", &path), Some(Passphrase("from the file".to_owned().into())));
    assert_eq!(from_outside(None, None).expect("takes"), None);
    assert_eq!(from_outside(Some("".into()), Some("".into())).expect("takes"), None);
}

fn private_file(dir: &Path, text: &str) -> PathBuf {
    let path = dir.join("passphrase");
    std::fs::write(&path, text).expect("writes");
    #[cfg(unix)]
    {
        use std::os::unix::fs::PermissionsExt;
        std::fs::set_permissions(&path, std::fs::Permissions::from_mode(0o600)).expect("sets");
    }
    path
}

#[cfg(unix)]
#[test]
fn a_file_that_others_may_read_is_missing_or_empty_is_refused_with_a_remedy() {
    use std::os::unix::fs::PermissionsExt;
    let dir = tempfile::tempdir().expect("a folder");
    let path = private_file(dir.path(), "from the file\n");
    std::fs::set_permissions(&path, std::fs::Permissions::from_mode(0o640)).expect("sets");
    let refusal = |path: &Path| from_file(path).expect_err("refuses").to_string();
    assert!(refusal(&path).contains("0640") && refusal(&path).contains("chmod 600"), "{}", refusal(&path));
    assert!(refusal(&dir.path().join("none")).contains("name another"));
    let empty = private_file(dir.path(), "\nsecond line");
    std::fs::set_permissions(&empty, std::fs::Permissions::from_mode(0o600)).expect("sets");
    assert!(refusal(&empty).contains("first line is empty"));
}

#[test]
fn a_short_one_cannot_be_set_and_none_is_ever_shown() {
    assert!(Passphrase::new("1234567").expect_err("refuses").to_string().contains("too short"));
    let good = Passphrase::new("häuser am see").expect("takes");
    let key = Key::from_bytes([0xAB; 32], [7; 16]);
    assert!(!format!("{good:?} {key:?}").contains("see") && !format!("{key:?}").to_lowercase().contains("ab"));
}

/// The value is that of Python 3's `hashlib.pbkdf2_hmac("sha512", …, 256000, 32)`; that it is SQLCipher's own derivation is checked by
/// opening a file with the passphrase alone, as any SQLCipher would: `encrypt.rs`.
#[test]
fn a_key_is_derived_as_it_always_was() {
    let key = Key::derive(&Passphrase("häuser am see".to_owned().into()), [7; 16]);
    assert_eq!(*key.spec(), format!("x'03765e836c05b68fbdefb0eb61e02301c150dbb7be8a879954c1fd808aa7fdda{}'", "07".repeat(16)));
}

#[test]
fn a_key_is_written_as_sqlcipher_takes_it() {
    let spec = Key::from_bytes([0xAB; 32], [0x07; 16]).spec();
    assert_eq!(*spec, format!("x'{}{}'", "ab".repeat(32), "07".repeat(16)));
}
