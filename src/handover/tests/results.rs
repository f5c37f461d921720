use super::*;
use crate::open;
use proptest::prelude::*;

fn key() -> SecretKey {
    SecretKey::from_bytes(&[6; 32])
}

/// Entries as another version of the program might have written them: nothing of their text may change on the way.
const ENTRIES: [&str; 2] =
    [r#"{"at_s":1.10,"kind":"rested","duration_s":1e1}"#, r#"{ "at_s" : 2.000, "kind":"rested", "duration_s":0.30000000000000004 }"#];

fn results() -> Results {
    let entries = ENTRIES.iter().map(|text| RawValue::from_string((*text).to_owned()).expect("JSON")).collect();
    let started_at = "2026-03-02T18:00:00+01:00[Europe/Berlin]".to_owned();
    let session = HandedSession {
        number: 4,
        package: Some("0123456789abcdef".into()),
        started_at: started_at.clone(),
        ended_at: Some("2026-03-02T18:10:00+01:00[Europe/Berlin]".into()),
        end_reason: Some("finished".into()),
        routine_title: "Evening".into(),
        routine_text: "title = \"Evening\"\n".into(),
        software: "tidecount 0.1.0".into(),
        parts: vec![HandedPart { started_at, entries }],
    };
    Results {
        package: "0123456789abcdef".into(),
        client: "grandpa".into(),
        made_at: Timestamp::UNIX_EPOCH,
        sessions: vec![session],
        goals: Vec::new(),
    }
}

fn read(content: &str) -> Result<Results, HandoverError> {
    Results::read(&open(Kind::Results, seal(Kind::Results, content, &key()).as_bytes())?)
}

#[test]
fn entries_arrive_byte_for_byte() {
    let sealed = results().seal(&key()).expect("seals");
    let opened = open(Kind::Results, sealed.as_bytes()).expect("fits");
    assert_eq!(opened.by, key().public());
    let back = Results::read(&opened).expect("reads");
    let entries: Vec<&str> = back.sessions[0].parts[0].entries.iter().map(|entry| entry.get()).collect();
    assert_eq!(entries, ENTRIES);
    assert_eq!(serde_json::to_string(&back).expect("JSON"), serde_json::to_string(&results()).expect("JSON"));
}

#[test]
fn what_results_do_not_hold_is_refused_with_a_reason() {
    let good = serde_json::to_string(&results()).expect("JSON");
    assert!(read(&good).is_ok());
    let changes = [
        ("\"client\":\"grandpa\"", "\"client\":\"../grandpa\"", "parts of a path"),
        ("\"package\":\"0123456789abcdef\",\"client\"", "\"package\":\"\",\"client\"", "names no package"),
        ("\"end_reason\":\"finished\",", "", "an end without a reason"),
        ("\"number\":4", "\"number\":1e400", "number out of range"),
        ("\"number\":4", "\"number\":4.5", "invalid type"),
        ("\"number\":4", "\"number\":4,\"sound\":\"…\"", "unknown field"),
    ];
    for (from, to, reason) in changes {
        assert!(good.contains(from), "{from}");
        let text = read(&good.replacen(from, to, 1)).expect_err(reason).to_string();
        assert!(text.contains(reason), "{text}");
    }
    let deep = format!("{}{}", "[".repeat(100_000), "]".repeat(100_000));
    assert!(read(&good.replacen("\"number\":4", &format!("\"number\":{deep}"), 1)).is_err());
    // A deep entry is carried as it is: what an entry is, the record says, and refuses it.
    assert!(read(&good.replacen(ENTRIES[0], &deep, 1)).is_ok());
}

proptest! {
    /// Well sealed, but any byte of the content another: read or refused, never a panic.
    #[test]
    fn a_changed_byte_under_a_good_seal_is_read_or_refused(at in any::<prop::sample::Index>(), byte in any::<char>()) {
        let good = serde_json::to_string(&results()).expect("JSON");
        let mut chars: Vec<char> = good.chars().collect();
        let at = at.index(chars.len());
        chars[at] = byte;
        let _ = Results::read(&Opened { content: chars.into_iter().collect(), by: key().public() });
    }
}
