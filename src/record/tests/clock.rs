use super::*;
use crate::samples::{ROUTINE_TEXT, at, begin, begun, ended, entry, hold, keep, routine, time};
use crate::{Source, Unfinished};
use session::Fact;

fn store() -> (tempfile::TempDir, Store) {
    let dir = tempfile::tempdir().expect("a folder");
    let store = Store::open(dir.path()).expect("opens");
    (dir, store)
}

#[test]
fn a_clock_that_jumped_is_told_with_both_times_and_a_right_one_is_not() {
    let (_dir, mut store) = store();
    let note = |store: &Store, now: &str| store.clock_note(&time(now)).expect("asks");
    assert_eq!(note(&store, "1970-01-01T00:01:00+00:00[UTC]"), None, "nothing to compare with");
    begin(&mut store, "Client", Source::Live, "2026-11-24T19:00:00+01:00[Europe/Berlin]").expect("begins");
    assert_eq!(note(&store, "2026-11-24T18:55:00+01:00[Europe/Berlin]"), None, "a time server set it back by minutes");
    assert_eq!(note(&store, "2026-11-24T13:30:00-05:00[America/New_York]"), None, "earlier on the wall, later in truth");
    let back = note(&store, "1970-01-01T00:01:00+00:00[UTC]").expect("is told");
    assert!(back.contains("1970-01-01 00:01") && back.contains("2026-11-24 19:00") && back.contains("before the last practice"), "{back}");
    assert!(note(&store, "2028-01-01T10:00:00+01:00[Europe/Berlin]").expect("is told").contains("more than a year after"));
}

#[test]
fn practices_keep_their_order_and_lengths_whatever_the_clock_says() {
    let (_dir, mut store) = store();
    let day = |store: &mut Store, started: &str| {
        keep(store, "Client", Source::Live, started, &[begun(), hold(20.0, at(1, 1, 1), "long-ah", 5.0, true), ended(600.0)])
    };
    let ids = [
        day(&mut store, "2026-11-24T19:00:00+01:00[Europe/Berlin]"),
        day(&mut store, "1970-01-01T00:01:00+00:00[UTC]"),
        day(&mut store, "2099-05-05T19:00:00+02:00[Europe/Berlin]"),
        day(&mut store, "2026-11-25T19:00:00+01:00[Europe/Berlin]"),
    ];
    let history = store.history(Some("Client"), 10).expect("reads");
    assert_eq!(history.iter().map(|one| one.id).collect::<Vec<_>>(), ids.iter().rev().copied().collect::<Vec<_>>());
    assert!(history.iter().all(|one| (one.minutes - 10.0).abs() < 1e-9));
    let now = time("2026-11-26T19:00:00+01:00[Europe/Berlin]");
    assert_eq!(store.practice_week("Client", &now).expect("asks"), 0, "counted from the first practice, not from the earliest time");
    let past = store.past("Client", &now, None).expect("reads");
    assert_eq!(past.by_exercise.get("long-ah").map(|one| one.sessions), Some(4));
}

#[test]
fn an_interrupted_practice_is_offered_also_when_the_clock_was_set_back_meanwhile() {
    let (_dir, mut store) = store();
    let done = entry(
        30.0,
        at(1, 1, 1),
        Fact::RepetitionDone { exercise: "long-ah".into(), duration_s: 4.0, ended_by: "done".into(), asked: None },
    );
    keep(&mut store, "Client", Source::Live, "2026-11-24T19:00:00+01:00[Europe/Berlin]", &[begun(), done]);
    // The process that led it is gone.
    let folder = store.folder.clone();
    drop(store);
    let store = Store::open(&folder).expect("opens");
    for now in ["2026-11-24T18:00:00+01:00[Europe/Berlin]", "1970-01-01T00:01:00+00:00[UTC]"] {
        let found =
            store.unfinished("Client", &routine(), ROUTINE_TEXT, Source::Live, &time(now), Unfinished::OFFERED_WITHIN).expect("asks");
        assert_eq!(found.map(|found| found.position), at(1, 1, 2), "{now}");
    }
}

/// Central European Summer Time ended on 25 October 2026 at 03:00 (Directive 2000/84/EC: the last Sunday in October, 01:00 UTC).
#[test]
fn daylight_saving_and_a_journey_change_no_length() {
    let (_dir, mut store) = store();
    // Begins at 02:50 summer time; twenty minutes later the wall says 02:10 again.
    let over_the_end = keep(&mut store, "Client", Source::Live, "2026-10-25T02:50:00+02:00[Europe/Berlin]", &[begun(), ended(1200.0)]);
    let end: String =
        store.connection.query_row("SELECT ended_at FROM session WHERE id = ?1", [over_the_end.0], |row| row.get(0)).expect("asks");
    assert_eq!(end, "2026-10-25T02:10:00+01:00[Europe/Berlin]");
    assert!((store.history_of(over_the_end).expect("reads").minutes - 20.0).abs() < 1e-9);

    // Begun at home, gone on with after a flight to the west: the wall says an earlier hour.
    let travelled = begin(&mut store, "Client", Source::Live, "2026-11-24T19:00:00+01:00[Europe/Berlin]").expect("begins");
    let done = entry(
        600.0,
        at(1, 1, 1),
        Fact::RepetitionDone { exercise: "long-ah".into(), duration_s: 4.0, ended_by: "done".into(), asked: None },
    );
    store.append(travelled, &begun()).expect("keeps");
    store.append(travelled, &done).expect("keeps");
    let folder = store.folder.clone();
    drop(store);
    let mut store = Store::open(&folder).expect("opens");
    let now = time("2026-11-24T18:30:00-05:00[America/New_York]");
    let found = store
        .unfinished("Client", &routine(), ROUTINE_TEXT, Source::Live, &now, Unfinished::OFFERED_WITHIN)
        .expect("asks")
        .expect("is offered");
    assert_eq!(found.age.as_mins(), 5 * 60 + 20);
    store.resume(found.session, &now).expect("goes on");
    store.append(travelled, &ended(900.0)).expect("keeps");
    let whole = store.history_of(travelled).expect("reads");
    assert!((whole.minutes - 25.0).abs() < 1e-9, "ten minutes there and fifteen here: {}", whole.minutes);
    let end: String =
        store.connection.query_row("SELECT ended_at FROM session WHERE id = ?1", [travelled.0], |row| row.get(0)).expect("asks");
    assert_eq!(end, "2026-11-24T18:45:00-05:00[America/New_York]");
}
