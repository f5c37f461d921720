use super::*;

const START: &str = "2026-11-26T10:30:00+01:00[Europe/Berlin]";

fn begun(store: &mut Store) -> ClassId {
    let started_at = START.parse().expect("a time");
    let participants = ["Plum", "7", "Hazel"].map(str::to_owned);
    let new = NewClass {
        title: "Thursday class",
        routine_title: "Gentle stretches",
        source: Source::Live,
        software: "tidecount",
        started_at: &started_at,
        participants: &participants,
    };
    store.begin_class(&new).expect("kept")
}

fn led(step: u32, done: u32, until_s: f64) -> LedStep {
    let exercise = if step == 1 { "shoulder-rolls" } else { "neck-turns" }.to_owned();
    LedStep { step, exercise, sets: 1, repetitions_done: done, repetitions_planned: 5, from_s: 40.0, until_s }
}

#[test]
fn a_class_comes_back_with_who_was_there_last_said_and_what_was_led() {
    let folder = tempfile::tempdir().expect("a folder");
    let mut store = Store::open(folder.path()).expect("opens");
    let class = begun(&mut store);
    store.note_attendance(class, "Hazel", Some(true), 9.0).expect("kept");
    store.note_attendance(class, "7", Some(true), 12.0).expect("kept");
    store.note_attendance(class, "7", Some(false), 14.0).expect("kept");
    store.note_led(class, &led(2, 3, 200.0)).expect("kept");
    store.note_led(class, &led(1, 5, 90.0)).expect("kept");
    store.note_led(class, &led(1, 5, 110.0)).expect("kept");
    drop(store);
    let store = Store::open(folder.path()).expect("opens");
    let [kept] = &store.classes(20).expect("reads")[..] else { panic!("one class") };
    let there: Vec<(&str, Option<bool>)> = kept.attendance.iter().map(|(name, there)| (name.as_str(), *there)).collect();
    assert_eq!(there, [("Plum", None), ("7", Some(false)), ("Hazel", Some(true))], "in the order of the list");
    assert_eq!(kept.led, [led(1, 5, 110.0), led(2, 3, 200.0)]);
    assert_eq!((kept.title.as_str(), kept.started_at.to_string().as_str()), ("Thursday class", START));
    assert!(store.history(None, 20).expect("reads").is_empty(), "a class is nobody's practice");
    assert!(store.clients().expect("reads").is_empty());
}

#[test]
fn what_was_kept_of_a_class_cannot_be_changed() {
    let folder = tempfile::tempdir().expect("a folder");
    let mut store = Store::open(folder.path()).expect("opens");
    let class = begun(&mut store);
    store.note_led(class, &led(1, 5, 90.0)).expect("kept");
    for sql in ["UPDATE class_attendance SET present = 1", "DELETE FROM class_led", "UPDATE class SET title = 'x'"] {
        let error = store.connection.execute(sql, []).expect_err("refuses");
        assert!(error.to_string().contains("append-only"), "{sql}: {error}");
    }
}

#[test]
fn whoever_is_to_be_forgotten_is_in_no_class_any_more() {
    let folder = tempfile::tempdir().expect("a folder");
    let mut store = Store::open(folder.path()).expect("opens");
    begun(&mut store);
    let second = begun(&mut store);
    store.note_attendance(second, "Plum", Some(true), 3.0).expect("kept");
    drop(store);
    // No client, only a participant.
    let forgotten = Store::forget(folder.path(), "Plum").expect("forgets");
    assert_eq!((forgotten.practices, forgotten.others), (0, 3));
    assert!(matches!(Store::forget(folder.path(), "Plum"), Err(RecordError::NoSuchClient { .. })));
    let store = Store::open(folder.path()).expect("opens");
    for class in store.classes(20).expect("reads") {
        assert_eq!(class.attendance.iter().map(|row| row.0.as_str()).collect::<Vec<_>>(), ["7", "Hazel"]);
    }
    let file = std::fs::read(folder.path().join("practice.sqlite")).expect("reads");
    assert!(!file.windows(4).any(|bytes| bytes == b"Plum"), "a byte of the name is left");
    let error = store.connection.execute("DELETE FROM class_attendance", []).expect_err("refuses");
    assert!(error.to_string().contains("append-only"), "the guard is back: {error}");
}
