use super::*;
use crate::{Household, open};

fn clinician() -> SecretKey {
    SecretKey::from_bytes(&[5; 32])
}

fn package() -> Package {
    let made_at: Timestamp = "2026-03-02T09:00:00Z".parse().expect("a time");
    let mut package = Package::new("0123456789abcdef", made_at, "grandpa", &SecretKey::from_bytes(&[6; 32]));
    package.note = Some("Twice a day.\nRing me when it is too much.".into());
    package.settings = Settings {
        voice: Some("espeak-ng".into()),
        feedback_every: Some(3),
        household: Household { pronoun: Some("he".into()), call_names: vec!["Grandpa".into()] },
    };
    package.routines = vec![TextFile { name: "evening.toml".into(), text: "title = \"Evening\"\n[[step]]\nexercise = \"rest\"\n".into() }];
    package.packs = vec![TextFile { name: "opposites.toml".into(), text: "title = \"Opposites\"\n".into() }];
    let by = clinician().public().fingerprint().to_string();
    package.agreed = vec![AgreedExercise { exercise: "effortful-swallow".into(), agreed_at: made_at, by }];
    package
}

fn read(sealed: &str) -> Result<Package, HandoverError> {
    Package::read(&open(Kind::Package, sealed.as_bytes())?)
}

/// Sealed well by the clinician, whatever is in it.
fn hostile(content: &str) -> String {
    read(&seal(Kind::Package, content, &clinician())).expect_err("refuses").to_string()
}

#[test]
fn a_package_arrives_as_it_was_sent() {
    let sealed = package().seal(&clinician()).expect("seals");
    let back = read(&sealed).expect("reads");
    assert!(back == package());
    assert_eq!(back.reply_key().expect("a key").public(), SecretKey::from_bytes(&[6; 32]).public());
    assert!(!format!("{back:?}").contains(&back.reply_key));
}

#[test]
fn the_clinicians_secret_is_never_in_it() {
    let sealed = package().seal(&clinician()).expect("seals");
    assert!(!sealed.contains(&clinician().to_hex()));
    assert!(sealed.contains(&clinician().public().to_hex()));
}

#[test]
fn sampled_damage_to_a_whole_package_is_always_refused() {
    let sealed = package().seal(&clinician()).expect("seals").into_bytes();
    for length in (0..sealed.len()).step_by(7) {
        assert!(open(Kind::Package, &sealed[..length]).is_err(), "cut to {length}");
    }
    for at in (0..sealed.len()).step_by(3) {
        let mut flipped = sealed.clone();
        flipped[at] ^= 1 << (at % 8);
        assert!(open(Kind::Package, &flipped).is_err(), "byte {at}");
    }
}

#[test]
fn hostile_content_under_a_good_seal_is_refused_with_a_reason() {
    let good = serde_json::to_value(package()).expect("JSON");
    for text in ["", "[]", "null", "{}", &"[".repeat(200_000), &format!("{{\"id\":{}", "{\"a\":".repeat(50_000)), "{\"id\": 1e999999}"] {
        assert!(hostile(text).contains("cannot be used"), "{text:.40}");
    }
    let values = [
        "null",
        "-1",
        "1e400",
        "1e308",
        "99999999999999999999999",
        "true",
        "[]",
        "{}",
        "\"\\u0000\"",
        "\"\"",
        "[[]]",
        "[null]",
        "\"../x\"",
    ];
    for key in good.as_object().expect("an object").keys() {
        for value in values {
            let mut fields: Vec<String> = Vec::new();
            for (name, old) in good.as_object().expect("an object") {
                fields.push(format!("{name:?}:{}", if name == key { value.to_owned() } else { old.to_string() }));
            }
            let sealed = seal(Kind::Package, &format!("{{{}}}", fields.join(",")), &clinician());
            // A few are harmless: no note, no packs, nothing agreed.
            let harmless = matches!(
                (key.as_str(), value),
                ("note", "null" | "\"\"" | "\"../x\"") | ("packs" | "agreed", "[]") | ("settings", "{}" | "[]" | "[null]")
            ); // serde reads a list as a table in order
            assert_eq!(read(&sealed).is_ok(), harmless, "{key} = {value}");
        }
    }
    assert!(hostile(&good.to_string().replacen('{', "{\"more\":1,", 1)).contains("unknown field"));
}

#[test]
fn names_agreements_and_doubles_are_checked_when_sealing_and_when_reading() {
    let tricks: [(&str, fn(&mut Package)); 6] = [
        ("parts of a path", |p| p.routines[0].name = "../evening.toml".into()),
        ("parts of a path", |p| p.client = "../grandpa".into()),
        ("two of its files", |p| p.packs[0].name = "Evening.toml".into()),
        ("another key", |p| p.agreed[0].by = "00000 00000 00000 00000 00000".into()),
        ("no exercise that needs it", |p| p.agreed[0].exercise = "long-ah".into()),
        ("more than 60", |p| p.packs = (0..60).map(|n| TextFile { name: format!("{n}.toml"), text: String::new() }).collect()),
    ];
    for (reason, change) in tricks {
        let mut changed = package();
        change(&mut changed);
        assert!(changed.seal(&clinician()).expect_err("refuses").to_string().contains(reason));
        assert!(hostile(&serde_json::to_string(&changed).expect("JSON")).contains(reason));
    }
}
