use super::*;
use crate::encrypt::tests::filled;
use crate::folder::DATABASE_NAME;
use crate::samples::{begun, ended, entry, keep, time};
use crate::{RecordError, Source, Store, WholePart, WholeSession};
use session::Fact;
use std::path::Path;

const NOW: &str = "2026-11-26T10:00:00+01:00[Europe/Berlin]";

/// Practices of two clients, one of them led elsewhere, and a baseline; in one file without a log.
fn record(folder: &Path) -> Vec<u8> {
    filled(folder);
    let mut store = Store::open(folder).expect("opens");
    let started_at = "2026-11-20T19:00:00+01:00[Europe/Berlin]".to_owned();
    let line = "{\"at_s\":0.0,\"kind\":\"safety_stop\",\"exercise\":null,\"reason\":\"far away\"}".to_owned();
    let received = WholeSession {
        number: 900,
        package: None,
        started_at: started_at.clone(),
        end: Some((started_at.clone(), "finished".into())),
        routine_title: "Evening".into(),
        routine_text: "x".into(),
        software: "tidecount".into(),
        parts: vec![WholePart { started_at, lines: vec![line] }],
    };
    store.receive("grandma", &[received]).expect("receives");
    let long =
        |n: u32| entry(f64::from(n), None, Fact::SafetyStop { exercise_before: None, exercise: None, reason: "x".repeat(300).into() });
    keep(&mut store, "grandpa", Source::Live, NOW, &[begun(), long(1), long(2), long(3), long(4), ended(60.0)]);
    one_file(&store);
    drop(store);
    std::fs::read(folder.join(DATABASE_NAME)).expect("reads")
}

fn one_file(store: &Store) {
    store.connection.pragma_update_and_check(None, "journal_mode", "delete", |_| Ok(())).expect("one file");
}

/// All that an export is made of, read without looking at any checksum.
fn content(path: &Path) -> Result<Vec<String>, rusqlite::Error> {
    let db = Connection::open(path)?;
    let mut lines = Vec::new();
    for sql in [
        "SELECT s.id, r.number, c.name, s.started_at, s.ended_at, s.end_reason, s.routine_title, s.routine_text, s.source, s.software
         FROM session s NOT INDEXED JOIN client c NOT INDEXED ON c.id = s.client LEFT JOIN received r ON r.session = s.id ORDER BY s.id",
        "SELECT session FROM assessment ORDER BY session",
        "SELECT session, number, started_at FROM part ORDER BY session, number",
        "SELECT session, seq, part, json FROM entry ORDER BY session, seq",
    ] {
        let mut query = db.prepare(sql)?;
        let columns = query.column_count();
        let mut rows = query.query([])?;
        while let Some(row) = rows.next()? {
            let cells = (0..columns).map(|column| row.get_ref(column).map(|cell| format!("{cell:?}"))).collect::<Result<Vec<_>, _>>()?;
            lines.push(cells.join(" | "));
        }
    }
    Ok(lines)
}

/// What the exports read, of everybody and of one.
fn exported(folder: &Path) -> Result<Vec<String>, RecordError> {
    let store = Store::open(folder)?;
    let mut all = Vec::new();
    for client in [None, Some("grandpa"), Some("grandma")] {
        for head in store.kept_heads(client)? {
            let kept = store.kept(head)?;
            all.push(format!("{:?}", kept.head));
            for part in kept.parts {
                all.push(part.started_at.to_string());
                all.extend(part.entries.into_iter().map(|entry| entry.line));
            }
        }
    }
    Ok(all)
}

/// SplitMix64 (Steele, Lea and Flood; constants from memory): all that matters is that a seed gives the same places each time.
fn chance(state: &mut u64) -> u64 {
    *state = state.wrapping_add(0x9E37_79B9_7F4A_7C15);
    let mut z = *state;
    z = (z ^ (z >> 30)).wrapping_mul(0xBF58_476D_1CE4_E5B9);
    z = (z ^ (z >> 27)).wrapping_mul(0x94D0_49BB_1331_11EB);
    z ^ (z >> 31)
}

/// Bits flipped anywhere in the file: whatever changes what an export gives is found by the check, and no export gives anything else than
/// before.
#[test]
fn every_flip_that_changes_an_export_is_found() {
    let dir = tempfile::tempdir().expect("a folder");
    let whole = record(dir.path());
    let path = dir.path().join(DATABASE_NAME);
    let (before, exports) = (content(&path).expect("reads"), exported(dir.path()).expect("exports"));
    let (mut state, mut harmful) = (15, 0);
    for n in 0..400 {
        let (at, bit) = (chance(&mut state) as usize % whole.len(), chance(&mut state) % 8);
        let mut bytes = whole.clone();
        bytes[at] ^= 1 << bit;
        for ending in ["-wal", "-shm", "-journal"] {
            let _ = std::fs::remove_file(crate::folder::beside(&path, ending));
        }
        std::fs::write(&path, &bytes).expect("writes");
        let changed = content(&path).map_or(true, |now| now != before);
        let (checked, export) = (Store::check(dir.path(), &time(NOW)), exported(dir.path()));
        if let Ok(export) = &export {
            assert_eq!(*export, exports, "flip {n}, byte {at}, bit {bit}: a changed export");
        }
        if changed {
            harmful += 1;
            let found =
                checked.as_ref().is_err() || checked.as_ref().is_ok_and(|checked| checked.as_ref().is_none_or(|c| !c.faults.is_empty()));
            assert!(found, "flip {n}, byte {at}, bit {bit}: called whole, though {:?}", content(&path).map(|now| now.len()));
        }
    }
    assert!(harmful > 25, "{harmful}: the flips must hit something");
}

/// The record with one statement done to it, past the triggers.
fn damaged(sql: &str) -> (tempfile::TempDir, Vec<Damage>) {
    let dir = tempfile::tempdir().expect("a folder");
    record(dir.path());
    let store = Store::open(dir.path()).expect("opens");
    let triggers = "DROP TRIGGER entry_is_never_changed; DROP TRIGGER entry_is_never_removed; DROP TRIGGER entry_is_only_added;";
    store.connection.execute_batch(&format!("PRAGMA foreign_keys = OFF; {triggers} {sql}")).expect("damages");
    let found = damage(&store.connection).expect("looks");
    drop(store);
    (dir, found)
}

#[test]
fn what_is_damaged_is_named_and_nothing_else() {
    let of = |practice, what| vec![Damage { practice, what }];
    for (sql, expected) in [
        ("UPDATE entry SET json = replace(json, '4.0', '9.0') WHERE session = 3 AND seq = 3", of(3, Damaged::Entry(3))),
        ("UPDATE entry SET at_s = at_s + 0.001 WHERE session = 1 AND seq = 2", of(1, Damaged::Entry(2))),
        ("UPDATE entry SET part = 7 WHERE session = 1 AND seq = 4", of(1, Damaged::Entry(4))),
        ("DELETE FROM entry WHERE session = 2 AND seq = 4", of(2, Damaged::Missing(4))),
        ("DELETE FROM entry_sum WHERE session = 2 AND seq = 4", of(2, Damaged::Entry(4))),
        ("UPDATE session SET started_at = replace(started_at, '19:', '18:') WHERE id = 5", of(5, Damaged::Head)),
        ("UPDATE session SET end_reason = 'finishes' WHERE id = 5", of(5, Damaged::Head)),
        ("UPDATE part SET started_at = replace(started_at, '19:', '18:') WHERE session = 6", of(6, Damaged::Head)),
        ("DELETE FROM received", of(11, Damaged::Head)),
        ("INSERT INTO assessment VALUES (4, 'voice-1')", of(4, Damaged::Head)),
    ] {
        assert_eq!(damaged(sql).1, expected, "{sql}");
    }
    let (_dir, everybodys) = damaged("UPDATE client SET name = 'grandpb' WHERE name = 'grandpa'");
    assert_eq!(everybodys.len(), 6, "a client's name is part of each practice: {everybodys:?}");
    let (_dir, gone) = damaged("DELETE FROM session WHERE id = 12");
    assert!(gone.iter().all(|one| one.practice == 12) && gone.contains(&Damage { practice: 12, what: Damaged::Head }), "{gone:?}");
}

#[test]
fn an_export_names_the_entry_and_not_the_disk_and_gives_the_other_practices() {
    let (dir, _) = damaged("UPDATE entry SET json = replace(json, '4.0', '9.0') WHERE session = 3 AND seq = 3");
    let store = Store::open(dir.path()).expect("opens");
    let heads = store.kept_heads(None).expect("lists");
    assert_eq!(heads.len(), 12);
    for head in heads {
        let id = head.id.0;
        match store.kept(head) {
            Ok(_) => assert_ne!(id, 3),
            Err(error) => {
                let text = error.to_string();
                assert!(id == 3 && text.contains("practice 3, entry 3") && text.contains("record restore FILE"), "{text}");
                assert!(!text.contains("disk"), "{text}");
            }
        }
    }
    // A value of another kind than was written there is named, too.
    let (dir, _) = damaged("UPDATE session SET started_at = 'never' WHERE id = 5");
    let text = Store::open(dir.path()).expect("opens").history(None, 100).expect_err("cannot be read").to_string();
    assert!(text.contains("practice 5") && !text.contains("disk has room"), "{text}");
}

#[test]
fn a_backup_of_a_damaged_record_names_the_damage_and_so_does_its_restore() {
    let (dir, _) = damaged("UPDATE entry SET json = replace(json, '4.0', '9.0') WHERE session = 3 AND seq = 3");
    let away = tempfile::tempdir().expect("a folder");
    let backup = away.path().join("stick.backup");
    let made = Store::open(dir.path()).expect("opens").backup(&backup, false, &time(NOW)).expect("backs up");
    assert_eq!(made.damaged, ["practice 3, entry 3 is not as it was written"]);
    let restored = Store::restore(&away.path().join("data"), &backup, false, &time(NOW)).expect("restores");
    assert_eq!(restored.damaged, made.damaged);
}

#[test]
fn a_backup_from_before_takes_the_damage_back() {
    let dir = tempfile::tempdir().expect("a folder");
    record(dir.path());
    let away = tempfile::tempdir().expect("a folder");
    let backup = away.path().join("stick.backup");
    let store = Store::open(dir.path()).expect("opens");
    let made = store.backup(&backup, false, &time(NOW)).expect("backs up");
    assert_eq!(made.damaged, Vec::<String>::new());
    store
        .connection
        .execute_batch("DROP TRIGGER entry_is_never_changed; UPDATE entry SET at_s = 77 WHERE session = 1 AND seq = 2")
        .expect("damages");
    drop(store);
    let faults = |folder: &Path| Store::check(folder, &time(NOW)).expect("checks").expect("a record").faults;
    assert!(faults(dir.path()).iter().any(|fault| fault.contains("practice 1, entry 2") && fault.contains("restore FILE --replace")));
    Store::restore(dir.path(), &backup, true, &time(NOW)).expect("restores");
    assert_eq!(faults(dir.path()), Vec::<String>::new());
}

#[test]
fn the_chains_of_others_stay_whole_when_somebody_is_forgotten() {
    let dir = tempfile::tempdir().expect("a folder");
    record(dir.path());
    Store::forget(dir.path(), "grandpa").expect("forgets");
    let mut store = Store::open(dir.path()).expect("opens");
    assert_eq!(damage(&store.connection).expect("looks"), []);
    keep(&mut store, "grandma", Source::Live, NOW, &[begun(), ended(3.0)]);
    assert_eq!(damage(&store.connection).expect("looks"), []);
    let sums: i64 = store.connection.query_row("SELECT count(*) FROM practice_sum", [], |row| row.get(0)).expect("counts");
    assert_eq!(sums, 7, "five of her own, one led elsewhere, and the new one");
}
