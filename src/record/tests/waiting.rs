use super::*;
use crate::journal::Journal;
use crate::samples::{begun, entry, time};
use crate::{NewSession, Passphrase, Source};
use session::Fact;

const NOW: &str = "2026-11-24T20:00:00+01:00[Europe/Berlin]";

fn long(n: u32) -> Entry {
    entry(
        f64::from(n),
        None,
        Fact::SafetyStop { exercise_before: None, exercise: None, reason: format!("unmistakable {}", "x".repeat(3_000)).into() },
    )
}

fn begin(folder: &Path) -> Journal {
    let started_at = time("2026-11-24T19:00:00+01:00[Europe/Berlin]");
    let new = NewSession {
        protocol: None,
        client: "Client",
        routine_title: "Evening",
        routine_text: "x",
        source: Source::Live,
        software: "tidecount",
        started_at: &started_at,
    };
    let mut journal = Journal::begin(Store::open(folder).expect("opens"), &new, None).expect("begins");
    journal.append(&begun()).expect("keeps");
    journal
}

/// SQLite's own limit behaves as a full disk does; it holds for one connection.
fn fill_disk(journal: &Journal) {
    let db = &journal.store().connection;
    let pages: i64 = db.pragma_query_value(None, "page_count", |row| row.get(0)).expect("asks");
    db.pragma_update_and_check(None, "max_page_count", pages, |_| Ok(())).expect("sets");
}

fn times(folder: &Path) -> Vec<f64> {
    let store = Store::open(folder).expect("opens");
    let id = store.history(None, 1).expect("lists")[0].id;
    store.entries(id).expect("reads").iter().map(|entry| entry.at_s).collect()
}

#[test]
fn what_a_full_disk_never_took_is_taken_in_at_the_next_start_and_told_once() {
    for passphrase in [None, Some("four words of test")] {
        let dir = tempfile::tempdir().expect("a folder");
        if let Some(passphrase) = passphrase {
            Store::set_passphrase(dir.path(), Some(&Passphrase::new(passphrase).expect("long"))).expect("encrypts");
        }
        let mut journal = begin(dir.path());
        let path = path_in(dir.path());
        let size = || std::fs::metadata(&path).expect("is set aside").len();
        let before = size();
        assert!(before >= BYTES as u64, "{before}");
        fill_disk(&journal);
        let failed = (1..=30).filter(|n| journal.append(&long(*n)).is_err()).count();
        assert!(failed > 20, "{failed}");
        assert_eq!(size(), before, "no more room than was set aside");
        let readable = std::fs::read(&path).expect("reads").windows(12).any(|bytes| bytes == b"unmistakable");
        assert_eq!(readable, passphrase.is_none(), "it is as secret as the record");
        // Whoever only looks meanwhile leaves them to the practice.
        Store::open(dir.path()).expect("opens").tidy(&time(NOW)).expect("tidies");
        assert!(times(dir.path()).len() < 31);
        // Room never came.
        drop(journal);

        let note = Store::open(dir.path()).expect("opens").tidy(&time(NOW)).expect("tidies").expect("told");
        assert!(note.contains("entries of an earlier practice waited") && note.contains("in the record now"), "{note}");
        assert_eq!(times(dir.path()), (0..=30).map(f64::from).collect::<Vec<_>>(), "all of them, in order");
        assert_eq!(Store::open(dir.path()).expect("opens").tidy(&time(NOW)).expect("tidies"), None);
        let checked = Store::check(dir.path(), &time(NOW)).expect("checks").expect("a record");
        assert_eq!((checked.faults, checked.entries), (Vec::new(), 31));
        let left = std::fs::read(&path).expect("reads").windows(12).any(|bytes| bytes == b"unmistakable");
        assert!(!left, "nothing of them is left beside the record");
    }
}

#[test]
fn what_is_in_the_record_already_is_not_taken_in_twice() {
    let dir = tempfile::tempdir().expect("a folder");
    let mut journal = begin(dir.path());
    let session = journal.session();
    // As after a crash between the record and the file beside it.
    let mut aside = Waiting::set_aside(journal.store()).expect("is set aside");
    aside.keep(journal.store(), session.0, [long(1), long(2)].iter()).expect("keeps");
    journal.append(&long(1)).expect("keeps");
    drop(journal);
    let note = Store::open(dir.path()).expect("opens").tidy(&time(NOW)).expect("tidies").expect("told");
    assert!(note.contains("One entry"), "{note}");
    assert_eq!(times(dir.path()), [0.0, 1.0, 2.0]);
}

#[test]
fn room_that_comes_while_the_practice_goes_on_empties_the_file() {
    let dir = tempfile::tempdir().expect("a folder");
    let mut journal = begin(dir.path());
    fill_disk(&journal);
    assert!((1..=10).filter(|n| journal.append(&long(*n)).is_err()).count() > 3);
    journal.store().connection.pragma_update_and_check(None, "max_page_count", 100_000, |_| Ok(())).expect("sets");
    journal.append(&long(11)).expect("keeps");
    drop(journal);
    assert_eq!(Store::open(dir.path()).expect("opens").tidy(&time(NOW)).expect("tidies"), None);
    assert_eq!(times(dir.path()), (0..=11).map(f64::from).collect::<Vec<_>>());
}

#[test]
fn spoken_lines_give_way_before_an_entry_waits() {
    let dir = tempfile::tempdir().expect("a folder");
    let cache = dir.path().join(VOICE_CACHE);
    std::fs::create_dir(&cache).expect("makes");
    for name in ["1.wav", "2.wav", "kept.txt"] {
        std::fs::write(cache.join(name), "x").expect("writes");
    }
    let mut journal = begin(dir.path());
    fill_disk(&journal);
    for n in 1..=10 {
        let _ = journal.append(&long(n));
    }
    let left: Vec<_> = std::fs::read_dir(&cache).expect("lists").flatten().map(|entry| entry.file_name()).collect();
    assert_eq!(left, ["kept.txt"]);
}

#[test]
fn a_new_passphrase_and_forgetting_somebody_take_what_waits_along() {
    for forget in [false, true] {
        let dir = tempfile::tempdir().expect("a folder");
        let mut journal = begin(dir.path());
        fill_disk(&journal);
        assert!((1..=10).filter(|n| journal.append(&long(*n)).is_err()).count() > 3);
        drop(journal);
        if forget {
            Store::forget(dir.path(), "Client").expect("forgets");
            let held = |path: &Path| std::fs::read(path).is_ok_and(|bytes| bytes.windows(12).any(|at| at == b"unmistakable"));
            let files: Vec<_> = std::fs::read_dir(dir.path()).expect("lists").flatten().map(|entry| entry.path()).collect();
            assert_eq!(files.into_iter().filter(|path| held(path)).collect::<Vec<_>>(), Vec::<PathBuf>::new());
        } else {
            Store::set_passphrase(dir.path(), Some(&Passphrase::new("four words of test").expect("long"))).expect("encrypts");
            assert_eq!(times(dir.path()).len(), 11);
        }
    }
}
