use super::*;
use crate::samples::{ROUTINE_TEXT, at, begun, ended, hold, time};
use crate::{NewSession, Source, Store};

fn journal(folder: &std::path::Path) -> Journal {
    let started_at = time("2026-11-24T19:00:00+01:00[Europe/Berlin]");
    let new = NewSession {
        protocol: None,
        client: "Client",
        routine_title: "Evening routine",
        routine_text: ROUTINE_TEXT,
        source: Source::Live,
        software: "tidecount 0.1.0",
        started_at: &started_at,
    };
    Journal::begin(Store::open(folder).expect("opens"), &new, None).expect("begins")
}

#[test]
fn what_was_flushed_or_dropped_is_kept_in_order() {
    let dir = tempfile::tempdir().expect("a folder");
    let reader = Store::open(dir.path()).expect("opens");
    let mut writer = JournalWriter::threaded(journal(dir.path())).expect("a thread");
    let session = writer.session();
    for n in 0..20 {
        writer.append(&hold(f64::from(n), at(1, 1, n + 1), "long-ah", 3.0, true)).expect("takes");
    }
    writer.flush().expect("keeps");
    let kept = reader.entries(session).expect("reads");
    assert_eq!(kept.iter().filter_map(|entry| entry.position).map(|at| at.repetition).collect::<Vec<_>>(), (1..=20).collect::<Vec<_>>());
    writer.append(&ended(30.0)).expect("takes");
    drop(writer);
    assert_eq!(reader.entries(session).expect("reads").len(), 21);
}

#[test]
fn a_failure_is_told_and_the_next_entry_still_tried() {
    let dir = tempfile::tempdir().expect("a folder");
    let mut bad = begun();
    bad.at_s = f64::NAN;
    for mut writer in [JournalWriter::direct(journal(dir.path())), JournalWriter::threaded(journal(dir.path())).expect("a thread")] {
        let told = writer.append(&bad).and_then(|()| writer.flush()).expect_err("tells");
        assert!(matches!(told, RecordError::Line(model::LineError::NotFinite { .. })), "{told}");
        writer.append(&begun()).expect("takes");
        writer.flush().expect("keeps");
    }
}
