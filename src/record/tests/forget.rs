use super::*;
use crate::encrypt::tests::{filled, raw};
use crate::samples::{begin, begun, entry, keep, time};
use crate::sound::tests::record;
use crate::{LedStep, MadePackage, NewClass, NewGoal, PackageAgreement, Passphrase, Source, TakenPackage, WholePart, WholeSession};
use jiff::civil::date;
use progress::{Mark, MarkKind};
use session::Fact;

const START: &str = "2026-11-24T19:00:00+01:00[Europe/Berlin]";
/// A text that stands nowhere else.
const UNIQUE: &str = "a sentence only grandpa read aloud";

/// Tables that hold nothing of anybody: a class was led, whoever of it is forgotten.
const NOBODYS: [&str; 3] = ["sound_key", "class", "class_led"];

/// Something in every table, for both.
fn scene() -> tempfile::TempDir {
    let dir = tempfile::tempdir().expect("a folder");
    filled(dir.path());
    record(dir.path(), "grandpa", 20_000);
    record(dir.path(), "grandma", 20_000);
    let mut store = Store::open(dir.path()).expect("opens");
    for client in ["grandpa", "grandma"] {
        let text = if client == "grandpa" { UNIQUE } else { "hers" };
        keep(
            &mut store,
            client,
            Source::Live,
            START,
            &[begun(), entry(3.0, None, Fact::SafetyStop { exercise_before: None, exercise: None, reason: text.into() })],
        );
        let baseline = crate::NewSession {
            client,
            routine_title: text,
            routine_text: "x",
            source: Source::Live,
            protocol: Some("voice-1"),
            software: "test",
            started_at: &time(START),
        };
        store.begin(&baseline).expect("begins");
        store.sound_wish(client, 30, &time(START)).expect("wishes");
        store.agree_by_page(client, &["head-lift".to_owned()], text, &time(START)).expect("agrees");
        let goal = NewGoal { words: text, aim: None, set_on: date(2026, 11, 1), due: date(2027, 2, 1), set_by: "clinician" };
        let goal = store.add_goal(client, &goal).expect("keeps");
        store.mark_goal(client, goal, &Mark { kind: MarkKind::Met, on: date(2026, 11, 20), by: client.into() }).expect("marks");
        let at = time(START).timestamp();
        store
            .note_made(&MadePackage {
                id: format!("made-{client}"),
                client: client.into(),
                made_at: at,
                reply_key: format!("key-{client}"),
            })
            .expect("notes");
        let taken =
            TakenPackage { id: format!("taken-{client}"), client: client.into(), made_at: at, taken_at: at, clinician_key: "00".into() };
        let agreed = [PackageAgreement { exercise: "head-lift".into(), agreed_at: at, by: "11".into() }];
        store.take_package::<()>(&taken, &agreed, &[], || Ok(())).expect("takes").expect("places");
        let whole = store.whole_sessions(client, None).expect("reads");
        store.note_handed_back(&whole, at).expect("notes");
        let line = format!("{{\"at_s\":0.0,\"kind\":\"safety_stop\",\"exercise\":null,\"reason\":\"{text}\"}}");
        let received = WholeSession {
            number: 900,
            package: Some(format!("made-{client}")),
            started_at: "2026-11-20T19:00:00+01:00[Europe/Berlin]".into(),
            end: None,
            routine_title: "Evening".into(),
            routine_text: "x".into(),
            software: "tidecount".into(),
            parts: vec![WholePart { started_at: "2026-11-20T19:00:00+01:00[Europe/Berlin]".into(), lines: vec![line] }],
        };
        store.receive(client, &[received]).expect("receives");
    }
    let participants = ["grandpa", "grandma"].map(str::to_owned);
    let (title, routine_title, software) = ("Thursday class", "Evening", "tidecount");
    let new = NewClass { title, routine_title, source: Source::Live, software, started_at: &time(START), participants: &participants };
    let class = store.begin_class(&new).expect("begins");
    let led =
        LedStep { step: 1, exercise: "neck-turns".into(), sets: 1, repetitions_done: 5, repetitions_planned: 5, from_s: 1.0, until_s: 9.0 };
    store.note_led(class, &led).expect("notes");
    dir
}

fn counts(store: &Store) -> Vec<(String, i64)> {
    let names = tables(&store.connection, "main").expect("lists");
    names
        .into_iter()
        .map(|name| {
            let count =
                store.connection.query_row(&format!("SELECT count(*) FROM {}", quoted(&name)), [], |row| row.get(0)).expect("counts");
            (name, count)
        })
        .collect()
}

fn holds(folder: &Path, text: &str) -> Vec<String> {
    raw(folder)
        .into_iter()
        .filter(|(_, bytes)| bytes.windows(text.len()).any(|at| at.eq_ignore_ascii_case(text.as_bytes())))
        .map(|(name, _)| name)
        .collect()
}

#[test]
fn everything_of_one_goes_and_everything_of_the_other_stays() {
    let dir = scene();
    let before = counts(&Store::open(dir.path()).expect("opens"));
    for (table, rows) in &before {
        assert!(
            NOBODYS.contains(&table.as_str()) || rows % 2 == 0 && *rows > 0,
            "{table} has {rows} rows: the scene must fill every table for both"
        );
    }
    assert!(!holds(dir.path(), "grandpa").is_empty() && !holds(dir.path(), UNIQUE).is_empty());
    let forgotten = Store::forget(dir.path(), "grandpa").expect("forgets");
    assert_eq!((forgotten.practices, forgotten.sounds), (9, 1));
    let store = Store::open(dir.path()).expect("opens");
    for ((table, now), (_, then)) in counts(&store).iter().zip(&before) {
        let stays = NOBODYS.contains(&table.as_str()) && now == then;
        assert!(stays || now * 2 == *then, "{table}: {now} of {then}");
    }
    // Neither the name nor anything said is in any file, the log included.
    for text in ["grandpa", UNIQUE] {
        assert_eq!(holds(dir.path(), text), Vec::<String>::new());
    }
    assert_eq!(std::fs::read_dir(dir.path().join("sound")).expect("lists").count(), 1);
    assert_eq!(store.history(Some("grandma"), 100).expect("reads").len(), 9);
    for sql in ["DELETE FROM entry", "UPDATE entry SET at_s = 1", "DELETE FROM package_taken", "DELETE FROM package_agreement"] {
        assert!(store.connection.execute(sql, []).expect_err("refuses").to_string().contains("append-only"), "{sql}");
    }
    drop(store);
    let checked = Store::check(dir.path(), &time(START)).expect("checks").expect("a record");
    assert_eq!(checked.faults, Vec::<String>::new());
    assert!(matches!(Store::forget(dir.path(), "grandpa"), Err(RecordError::NoSuchClient { .. })));
}

#[test]
fn somebody_is_forgotten_in_an_encrypted_record_too() {
    let dir = scene();
    Store::set_passphrase(dir.path(), Some(&Passphrase::new("first four words").expect("long"))).expect("encrypts");
    Store::forget(dir.path(), "grandpa").expect("forgets");
    let store = Store::open(dir.path()).expect("opens");
    assert_eq!(
        (store.history(Some("grandpa"), 100).expect("reads").len(), store.history(Some("grandma"), 100).expect("reads").len()),
        (0, 9)
    );
    assert_eq!(std::fs::read_dir(dir.path().join("sound")).expect("lists").count(), 1);
}

#[test]
fn a_practice_under_way_is_not_pulled_away() {
    let dir = scene();
    let mut store = Store::open(dir.path()).expect("opens");
    begin(&mut store, "grandpa", Source::Live, START).expect("begins");
    assert!(matches!(Store::forget(dir.path(), "grandpa"), Err(RecordError::InUse { .. })));
    assert_eq!(store.history(Some("grandpa"), 100).expect("reads").len(), 10);
}

#[test]
fn an_older_record_set_aside_forgets_too() {
    let dir = scene();
    let away = tempfile::tempdir().expect("a folder");
    let backup = away.path().join("stick.backup");
    Store::open(dir.path()).expect("opens").backup(&backup, true, &time(START)).expect("backs up");
    Store::restore(dir.path(), &backup, true, &time(START)).expect("restores");
    assert_eq!(asides(dir.path()).len(), 1);
    let forgotten = Store::forget(dir.path(), "grandpa").expect("forgets");
    assert_eq!((forgotten.aside.len(), forgotten.aside_left.len()), (1, 0));
    for text in ["grandpa", UNIQUE] {
        assert_eq!(holds(dir.path(), text), Vec::<String>::new());
    }
}

#[test]
fn nobody_and_no_record_are_told_and_no_record_is_made() {
    let dir = tempfile::tempdir().expect("a folder");
    assert!(matches!(Store::forget(dir.path(), "grandpa"), Err(RecordError::NoSuchClient { .. })));
    assert_eq!(std::fs::read_dir(dir.path()).expect("lists").count(), 0);
}
