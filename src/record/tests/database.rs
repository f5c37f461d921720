use super::*;
use crate::folder::DATABASE_NAME;
use crate::samples::{begun, ended, keep};
use crate::{Source, Store};

/// Opens a folder with this file in it, and gives the error; the file must be left byte for byte.
fn refusal(bytes: &[u8]) -> RecordError {
    let dir = tempfile::tempdir().expect("a folder");
    let path = dir.path().join(DATABASE_NAME);
    std::fs::write(&path, bytes).expect("writes");
    let error = Store::open(dir.path()).expect_err("refuses");
    assert_eq!(std::fs::read(&path).expect("is still there"), bytes);
    error
}

/// The bytes of a good database after `change`.
fn database(change: impl FnOnce(&Connection)) -> Vec<u8> {
    let dir = tempfile::tempdir().expect("a folder");
    let store = Store::open(dir.path()).expect("opens");
    change(&store.connection);
    let path = store.path();
    store.connection.pragma_update_and_check(None, "journal_mode", "delete", |row| row.get::<_, String>(0)).expect("one file");
    drop(store);
    std::fs::read(path).expect("reads")
}

#[test]
fn a_file_that_is_no_database_is_left_with_a_remedy() {
    let error = refusal(b"this is no database, but it is long enough to have a header of a hundred bytes, which is what is looked at");
    let text = error.to_string();
    assert!(matches!(error, RecordError::Damaged { .. }), "{text}");
    assert!(text.contains("practice.sqlite.aside") && text.contains("left as it is"), "{text}");
}

#[test]
fn a_damaged_database_is_left_with_a_remedy() {
    let mut bytes = database(|_| {});
    // The start of the second page, where its header is.
    bytes.iter_mut().skip(4096).take(100).for_each(|byte| *byte = 0xAA);
    assert!(matches!(refusal(&bytes), RecordError::Damaged { .. }));
    let bytes = database(|_| {});
    let half = bytes.get(..bytes.len() / 2).expect("half");
    assert!(matches!(refusal(half), RecordError::Damaged { .. }));
}

#[test]
fn a_newer_database_is_left_with_both_versions_told() {
    let bytes = database(|db| db.pragma_update(None, "user_version", 99).expect("sets"));
    let error = refusal(&bytes);
    assert!(matches!(error, RecordError::Newer { found: 99, .. }), "{error}");
}

#[test]
fn a_database_of_another_program_is_left() {
    let bytes = database(|db| db.pragma_update(None, "application_id", 0).expect("sets"));
    assert!(refusal(&bytes).to_string().contains("another program"));
}

#[test]
fn many_may_open_a_new_record_at_once() {
    let dir = tempfile::tempdir().expect("a folder");
    std::thread::scope(|scope| {
        let opening: Vec<_> = (0..8).map(|_| scope.spawn(|| Store::open(dir.path()).map(drop))).collect();
        for one in opening {
            one.join().expect("no panic").expect("opens");
        }
    });
}

#[test]
fn the_connection_has_wal_and_foreign_keys() {
    let dir = tempfile::tempdir().expect("a folder");
    let store = Store::open(dir.path()).expect("opens");
    let mode: String = store.connection.pragma_query_value(None, "journal_mode", |row| row.get(0)).expect("asks");
    let keys: bool = store.connection.pragma_query_value(None, "foreign_keys", |row| row.get(0)).expect("asks");
    assert_eq!((mode.as_str(), keys), ("wal", true));
}

/// What a power cut leaves while a database without a write-ahead log is written, as it is while a passphrase is set: pages half
/// written and a journal that takes them back. The record opens, as it was before.
#[test]
fn what_was_half_written_is_taken_back() {
    for passphrase in [None, Some("four words of test")] {
        let (dir, torn) = (tempfile::tempdir().expect("a folder"), tempfile::tempdir().expect("a folder"));
        if let Some(passphrase) = passphrase {
            Store::set_passphrase(dir.path(), Some(&Passphrase::new(passphrase).expect("long enough"))).expect("encrypts");
        }
        let mut store = Store::open(dir.path()).expect("opens");
        let session = keep(&mut store, "grandpa", Source::Live, "2026-11-24T19:00:00+01:00[Europe/Berlin]", &[begun(), ended(60.0)]);
        let before = store.entries(session).expect("entries");
        let db = &store.connection;
        db.pragma_update_and_check(None, "journal_mode", "delete", |row| row.get::<_, String>(0)).expect("one file");
        // So small a cache spills into the file before the end.
        db.execute_batch("PRAGMA cache_size = 1; BEGIN IMMEDIATE; DROP TRIGGER entry_is_never_removed; DELETE FROM entry_sum; CREATE TABLE filler (x BLOB);")
            .expect("begins");
        for _ in 0..50 {
            db.execute("INSERT INTO filler VALUES (zeroblob(4000))", []).expect("writes");
        }
        db.execute("DELETE FROM entry", []).expect("deletes");
        for ending in ["", "-journal"] {
            let name = format!("{DATABASE_NAME}{ending}");
            std::fs::copy(dir.path().join(&name), torn.path().join(&name)).expect("copies");
        }
        drop(store);
        let opened = Store::open(torn.path()).expect("opens");
        assert_eq!(opened.entries(session).expect("entries"), before);
        assert!(!torn.path().join(format!("{DATABASE_NAME}-journal")).exists());
    }
}

#[test]
fn a_record_that_was_cut_to_nothing_is_refused_with_the_backup_offered() {
    let error = refusal(b"");
    let text = error.to_string();
    assert!(matches!(error, RecordError::Emptied { .. }), "{text}");
    assert!(text.contains("0 bytes") && text.contains("record restore FILE"), "{text}");
}

/// SQLite begins with an empty file, too: whoever is killed then must not lock the next start out.
#[test]
fn a_new_record_has_its_name_only_when_it_is_whole() {
    let dir = tempfile::tempdir().expect("a folder");
    let half = dir.path().join(format!("{DATABASE_NAME}.1-0.new"));
    std::fs::write(&half, "").expect("writes");
    drop(Store::open(dir.path()).expect("opens"));
    let now = crate::samples::time("2026-11-24T19:00:00+01:00[Europe/Berlin]");
    let checked = Store::check(dir.path(), &now).expect("checks").expect("a record");
    assert!(checked.faults.is_empty() && checked.notes.iter().any(|note| note.contains("half-made")), "{checked:?}");
    let names: Vec<String> =
        std::fs::read_dir(dir.path()).expect("lists").flatten().map(|entry| entry.file_name().to_string_lossy().into_owned()).collect();
    assert!(!names.iter().any(|name| name.ends_with(".new")), "{names:?}");
}

#[cfg(unix)]
#[test]
fn what_is_no_file_is_refused_at_once() {
    for kind in ["pipe", "folder", "nothing"] {
        let (dir, elsewhere) = (tempfile::tempdir().expect("a folder"), tempfile::tempdir().expect("a folder"));
        let target = elsewhere.path().join("target");
        match kind {
            "pipe" => assert!(std::process::Command::new("mkfifo").arg(&target).status().expect("mkfifo").success()),
            "folder" => std::fs::create_dir(&target).expect("makes"),
            _ => {}
        }
        std::os::unix::fs::symlink(&target, dir.path().join(DATABASE_NAME)).expect("links");
        for error in [Store::open(dir.path()).map(drop), Store::open_to_read(dir.path()).map(drop)] {
            let error = error.expect_err("refuses");
            assert!(matches!(error, RecordError::NoFile { .. }) && error.to_string().contains("link"), "{kind}: {error}");
        }
    }
}

/// A record of the form before, as it would be found: it gets its checksums, and is whole.
#[test]
fn a_record_from_before_there_were_checksums_gets_them() {
    let dir = tempfile::tempdir().expect("a folder");
    let path = dir.path().join(DATABASE_NAME);
    let db = Connection::open(&path).expect("makes");
    MIGRATIONS.iter().take(SUMMED - 1).try_for_each(|sql| db.execute_batch(sql)).expect("migrates");
    db.pragma_update(None, "application_id", APPLICATION_ID).expect("sets");
    db.pragma_update(None, "user_version", (SUMMED - 1) as i64).expect("sets");
    db.execute_batch(
        "INSERT INTO client VALUES (1, 'grandpa');
         INSERT INTO session VALUES (1, 1, 'Evening', 'x', 'live', 'tidecount', '2026-11-24T19:00:00+01:00[Europe/Berlin]', NULL, NULL);
         INSERT INTO part VALUES (1, 1, '2026-11-24T19:00:00+01:00[Europe/Berlin]');
         INSERT INTO entry VALUES (1, 1, 1, 0.0, 'rested', NULL, NULL, NULL, '{\"at_s\":0.0,\"kind\":\"rested\",\"duration_s\":1.0}');
         INSERT INTO entry VALUES (1, 2, 1, 1.5, 'rested', NULL, NULL, NULL, '{\"at_s\":1.5,\"kind\":\"rested\",\"duration_s\":1.0}');",
    )
    .expect("fills");
    drop(db);
    let store = Store::open(dir.path()).expect("opens");
    let sums: i64 = store.connection.query_row("SELECT count(*) FROM entry_sum", [], |row| row.get(0)).expect("counts");
    assert_eq!((sums, chain::damage(&store.connection).expect("looks")), (2, Vec::new()));
}
