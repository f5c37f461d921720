use super::*;
use crate::samples::{at, begin, begun, ended, hold, keep};
use crate::{Source, StoredWord};
use rusqlite::Connection;

const START: &str = "2026-11-24T19:00:00+01:00[Europe/Berlin]";

fn phrase(text: &str) -> Passphrase {
    Passphrase::new(text).expect("long enough")
}

/// A record of some size, with something of everything.
pub(crate) fn filled(folder: &Path) {
    let mut store = Store::open(folder).expect("opens");
    for client in ["grandpa", "grandma"] {
        for _ in 0..5 {
            keep(
                &mut store,
                client,
                Source::Live,
                START,
                &[begun(), crate::samples::agreement(true), hold(9.0, at(1, 1, 1), "long-ah", 4.0, true), ended(600.0)],
            );
        }
        let word = StoredWord {
            command: "ready".into(),
            wording: "ready".into(),
            agreed_at: START.into(),
            said_at: START.into(),
            takes: vec![vec![7; 2000]; 3],
        };
        store.keep_own_word(client, &word, Source::Live).expect("keeps");
    }
}

fn lines(store: &Store) -> Vec<String> {
    let ids: Vec<i64> = store
        .connection
        .prepare("SELECT id FROM session ORDER BY id")
        .expect("a query")
        .query_map([], |row| row.get(0))
        .expect("reads")
        .map(|id| id.expect("a number"))
        .collect();
    ids.into_iter().flat_map(|id| store.lines(crate::SessionId(id)).expect("reads")).collect()
}

fn contains(bytes: &[u8], text: &str) -> bool {
    bytes.windows(text.len()).any(|at| at == text.as_bytes())
}

/// All bytes of all files in the folder, with their names.
pub(crate) fn raw(folder: &Path) -> Vec<(String, Vec<u8>)> {
    let mut found = Vec::new();
    for entry in std::fs::read_dir(folder).expect("lists").flatten() {
        if entry.path().is_dir() {
            found.extend(raw(&entry.path()));
        } else {
            found.push((entry.path().display().to_string(), std::fs::read(entry.path()).expect("reads")));
        }
    }
    found
}

#[test]
fn set_change_and_remove_keep_every_line_and_leave_no_copy() {
    let dir = tempfile::tempdir().expect("a folder");
    filled(dir.path());
    let before = lines(&Store::open(dir.path()).expect("opens"));
    assert!(before.len() == 40 && raw(dir.path()).iter().any(|(_, bytes)| contains(bytes, "grandpa")));
    for (new, encrypted) in
        [(Some("first four words"), true), (Some("another four words"), true), (None, false), (Some("third four words"), true)]
    {
        Store::set_passphrase(dir.path(), new.map(phrase).as_ref()).expect("works");
        let store = Store::open(dir.path()).expect("opens with what is remembered");
        assert_eq!((store.is_encrypted(), Store::encrypted(dir.path()).expect("asks")), (encrypted, Some(encrypted)));
        assert_eq!(lines(&store), before);
        assert_eq!(store.own_words("grandpa").expect("reads").len(), 1);
        assert!(store.connection.execute("DELETE FROM entry", []).is_err(), "the journal is append-only still");
        for (name, bytes) in raw(dir.path()) {
            assert!(
                !encrypted || !(contains(&bytes, "grandpa") || contains(&bytes, "hold_measured") || bytes.starts_with(b"SQLite")),
                "{name}"
            );
        }
        drop(store);
        assert!(!dir.path().join("practice.sqlite.new").exists());
    }
}

/// The passphrase itself, given as any SQLCipher program would give it, opens the file: the key is derived as theirs.
#[test]
fn any_sqlcipher_opens_it_with_the_passphrase() {
    let dir = tempfile::tempdir().expect("a folder");
    filled(dir.path());
    Store::set_passphrase(dir.path(), Some(&phrase("häuser am see"))).expect("encrypts");
    let db = Connection::open(dir.path().join(DATABASE_NAME)).expect("opens");
    db.pragma_update(None, "key", "häuser am see").expect("takes it");
    assert_eq!(db.query_row("SELECT count(*) FROM entry", [], |row| row.get::<_, i64>(0)).expect("reads"), 40);
}

#[test]
fn a_record_that_somebody_has_open_is_left_with_a_clear_word() {
    let dir = tempfile::tempdir().expect("a folder");
    filled(dir.path());
    let mut store = Store::open(dir.path()).expect("opens");
    begin(&mut store, "grandpa", Source::Live, START).expect("begins");
    let text = Store::set_passphrase(dir.path(), Some(&phrase("first four words"))).expect_err("refuses").to_string();
    assert!(text.contains("practice.sqlite") && text.contains("another tidecount") && text.contains("Nothing was changed"), "{text}");
    drop(store);
    // Another program altogether.
    let db = Connection::open(dir.path().join(DATABASE_NAME)).expect("opens");
    db.query_row("SELECT count(*) FROM entry", [], |row| row.get::<_, i64>(0)).expect("reads");
    assert!(matches!(Store::set_passphrase(dir.path(), Some(&phrase("first four words"))), Err(RecordError::InUse { .. })));
    drop(db);
    assert!(!Store::open(dir.path()).expect("opens").is_encrypted());
}

#[test]
fn a_half_made_copy_of_a_crash_does_no_harm_and_is_cleared_away() {
    let dir = tempfile::tempdir().expect("a folder");
    filled(dir.path());
    let half = dir.path().join("practice.sqlite.new");
    std::fs::write(&half, "half a copy").expect("writes");
    assert_eq!(lines(&Store::open(dir.path()).expect("opens")).len(), 40);
    let now = START.parse().expect("a time");
    let checked = Store::check(dir.path(), &now).expect("checks").expect("a record");
    assert!(checked.faults.is_empty() && checked.notes.iter().any(|note| note.contains("broken off")) && !half.exists(), "{checked:?}");
    std::fs::write(&half, "half a copy").expect("writes");
    Store::set_passphrase(dir.path(), Some(&phrase("first four words"))).expect("encrypts");
    assert_eq!(lines(&Store::open(dir.path()).expect("opens")).len(), 40);
}

#[test]
fn a_new_record_can_be_encrypted_from_its_first_byte() {
    let dir = tempfile::tempdir().expect("a folder");
    Store::set_passphrase(&dir.path().join("data"), Some(&phrase("first four words"))).expect("makes it");
    let store = Store::open(&dir.path().join("data")).expect("opens");
    assert!(store.is_encrypted());
}
