use super::*;
use crate::samples::{agreed_to, agreement, at, begin, begun, ended, hold, keep};

const START: &str = "2026-11-24T19:00:00+01:00[Europe/Berlin]";

fn store() -> (tempfile::TempDir, Store) {
    let dir = tempfile::tempdir().expect("a folder");
    let store = Store::open(dir.path()).expect("opens");
    (dir, store)
}

#[test]
fn entries_come_back_in_order_and_are_there_for_another_process_at_once() {
    let (dir, mut store) = store();
    let entries = [begun(), hold(9.0, at(1, 1, 1), "long-ah", 4.0, true), hold(20.0, at(1, 1, 2), "long-ah", 5.0, true)];
    let session = keep(&mut store, "Client", Source::Live, START, &entries);
    let other = Store::open(dir.path()).expect("opens beside");
    let read = other.entries(session).expect("reads");
    assert_eq!(crate::journal_text(&read).expect("text"), crate::journal_text(&entries).expect("text"));
}

#[test]
fn entries_can_be_neither_changed_nor_removed() {
    let (_dir, mut store) = store();
    keep(&mut store, "Client", Source::Live, START, &[begun()]);
    for sql in ["UPDATE entry SET at_s = 1", "DELETE FROM entry", "REPLACE INTO entry SELECT * FROM entry"] {
        let error = store.connection.execute(sql, []).expect_err("refuses");
        assert!(error.to_string().contains("append-only"), "{sql}: {error}");
    }
    let count: i64 = store.connection.query_row("SELECT count(*) FROM entry", [], |row| row.get(0)).expect("counts");
    assert_eq!(count, 1);
}

#[test]
fn an_ended_session_takes_no_more_and_knows_when_it_ended() {
    let (_dir, mut store) = store();
    let session = keep(&mut store, "Client", Source::Live, START, &[begun(), ended(600.0)]);
    assert!(matches!(store.append(session, &begun()), Err(RecordError::Ended { .. })));
    let end: String = store.connection.query_row("SELECT ended_at FROM session", [], |row| row.get(0)).expect("asks");
    assert_eq!(end, "2026-11-24T19:10:00+01:00[Europe/Berlin]");
    assert!(matches!(store.append(SessionId(77), &begun()), Err(RecordError::NoSuchSession { id: 77 })));
}

#[test]
fn only_a_given_agreement_of_a_live_session_counts() {
    let (_dir, mut store) = store();
    keep(&mut store, "Client", Source::Replay, START, &[agreement(true)]);
    keep(&mut store, "Client", Source::Rehearsal, START, &[agreement(true)]);
    keep(&mut store, "Client", Source::Live, START, &[agreement(false)]);
    keep(&mut store, "Other", Source::Live, START, &[agreement(true)]);
    assert!(agreed_to(&store, "Client").is_empty());
    keep(&mut store, "Client", Source::Live, START, &[agreement(true)]);
    let agreed = agreed_to(&store, "Client");
    assert_eq!(agreed.iter().map(String::as_str).collect::<Vec<_>>(), ["head-lift", "tongue-hold-swallow"]);
}

#[test]
fn an_abandoned_session_is_closed_but_not_while_it_is_led() {
    let (dir, mut leading) = store();
    let session = begin(&mut leading, "Client", Source::Live, START).expect("begins");
    let mut other = Store::open(dir.path()).expect("opens");
    let now: ZonedDateTime = START.parse().expect("a time");
    assert!(matches!(other.abandon(session, &now), Err(RecordError::UnderWay { .. })));
    assert!(matches!(other.resume(session, &now), Err(RecordError::UnderWay { .. })));
    drop(leading);
    other.abandon(session, &now).expect("closes");
    assert_eq!(other.summary(session).expect("is there").end_reason.as_deref(), Some("abandoned"));
    assert!(matches!(other.resume(session, &now), Err(RecordError::Ended { .. })));
    let left: Vec<_> = std::fs::read_dir(dir.path()).expect("lists").flatten().map(|file| file.file_name()).collect();
    assert!(!left.iter().any(|name| name.to_string_lossy().ends_with(".running")), "{left:?}");
}

#[test]
fn two_processes_append_to_their_own_sessions_at_once() {
    let (dir, store) = store();
    drop(store);
    std::thread::scope(|scope| {
        let work: Vec<_> = (0..4)
            .map(|_| {
                scope.spawn(|| {
                    let mut store = Store::open(dir.path()).expect("opens");
                    let session = begin(&mut store, "Client", Source::Replay, START).expect("begins");
                    for n in 0..25 {
                        store.append(session, &hold(f64::from(n), at(1, 1, n + 1), "long-ah", 3.0, true)).expect("keeps");
                    }
                    store.entries(session).expect("reads").len()
                })
            })
            .collect();
        for one in work {
            assert_eq!(one.join().expect("no panic"), 25);
        }
    });
}
