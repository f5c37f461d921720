use super::*;
use crate::samples::{ROUTINE_TEXT, at, begun, ended, hold, routine, time};
use crate::{Source, Unfinished, journal_text};

const START: &str = "2026-11-24T19:00:00+01:00[Europe/Berlin]";

fn begin(folder: &Path, lines: Option<&Path>) -> Result<Journal, RecordError> {
    let started_at = time(START);
    let new = NewSession {
        protocol: None,
        client: "Client",
        routine_title: "Evening routine",
        routine_text: ROUTINE_TEXT,
        source: Source::Replay,
        software: "tidecount 0.1.0",
        started_at: &started_at,
    };
    Journal::begin(Store::open(folder)?, &new, lines)
}

#[test]
fn an_interrupted_journal_goes_on_in_both_places() {
    let dir = tempfile::tempdir().expect("a folder");
    let path = dir.path().join("a.jsonl");
    let mut journal = begin(dir.path(), Some(&path)).expect("begins");
    journal.append(&begun()).expect("keeps");
    journal.append(&hold(9.0, at(1, 1, 1), "long-ah", 4.0, true)).expect("keeps");
    drop(journal);
    let store = Store::open(dir.path()).expect("opens");
    let from = store
        .unfinished("Client", &routine(), ROUTINE_TEXT, Source::Replay, &time(START), Unfinished::OFFERED_WITHIN)
        .expect("asks")
        .expect("is offered");
    let mut journal = Journal::resume(store, &from, &time(START), Some(&path)).expect("resumes");
    journal.append(&ended(5.0)).expect("keeps");
    let kept = journal.store().entries(journal.session()).expect("reads");
    assert_eq!(kept.len(), 3);
    assert_eq!(std::fs::read_to_string(&path).expect("reads"), journal_text(&kept).expect("text"));
}

#[test]
fn no_session_is_begun_where_the_file_is_in_use() {
    let dir = tempfile::tempdir().expect("a folder");
    let path = dir.path().join("a.jsonl");
    std::fs::write(&path, "something\n").expect("writes");
    assert!(matches!(begin(dir.path(), Some(&path)), Err(RecordError::JournalInUse { .. })));
    assert!(Store::open(dir.path()).expect("opens").history(None, 9).expect("lists").is_empty());
}

#[test]
fn what_a_full_disk_could_not_take_is_kept_when_there_is_room_again() {
    let dir = tempfile::tempdir().expect("a folder");
    let started_at = crate::samples::time("2026-11-24T19:00:00+01:00[Europe/Berlin]");
    let new = NewSession {
        protocol: None,
        client: "Client",
        routine_title: "Evening",
        routine_text: "x",
        source: crate::Source::Live,
        software: "tidecount",
        started_at: &started_at,
    };
    let mut journal = Journal::begin(Store::open(dir.path()).expect("opens"), &new, None).expect("begins");
    journal.append(&crate::samples::begun()).expect("keeps");
    // SQLite's own limit behaves as a full disk does.
    let pages: i64 = journal.store.connection.pragma_query_value(None, "page_count", |row| row.get(0)).expect("asks");
    let limit = |journal: &Journal, pages: i64| {
        journal.store.connection.pragma_update_and_check(None, "max_page_count", pages, |_| Ok(())).expect("sets")
    };
    limit(&journal, pages);
    let long = |n: u32| {
        crate::samples::entry(
            f64::from(n),
            None,
            session::Fact::SafetyStop { exercise_before: None, exercise: None, reason: "x".repeat(5_000).into() },
        )
    };
    let mut text = String::new();
    for n in 1..=10 {
        if let Err(error) = journal.append(&long(n)) {
            text = error.to_string();
        }
    }
    assert!(text.contains("practice.sqlite") && text.contains("disk is full") && text.contains("make room"), "{text}");
    assert_eq!(journal.overcome(), Vec::<String>::new());
    limit(&journal, 100_000);
    journal.append(&long(11)).expect("keeps");
    assert_eq!(journal.overcome(), [text]);
    let kept: Vec<f64> = journal.store.entries(journal.session()).expect("reads").iter().map(|entry| entry.at_s).collect();
    assert_eq!(kept, (0..=11).map(f64::from).collect::<Vec<_>>(), "all of them, in order");
}
