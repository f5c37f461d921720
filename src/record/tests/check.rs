use super::*;
use crate::encrypt::tests::filled;
use crate::samples::time;
use crate::sound::tests::record;

const NOW: &str = "2026-11-26T10:00:00+01:00[Europe/Berlin]";

fn check(folder: &Path) -> Checked {
    Store::check(folder, &time(NOW)).expect("checks").expect("a record")
}

#[test]
fn a_whole_record_is_told_whole_with_its_figures() {
    let dir = tempfile::tempdir().expect("a folder");
    assert_eq!(Store::check(dir.path(), &time(NOW)).expect("checks"), None);
    filled(dir.path());
    record(dir.path(), "grandpa", 20_000);
    let checked = check(dir.path());
    assert_eq!((checked.clients, checked.practices, checked.entries, checked.sounds), (2, 11, 42, 1));
    assert_eq!((checked.faults, checked.notes), (Vec::new(), Vec::new()));
}

#[test]
fn each_fault_is_found_and_told_with_a_remedy() {
    let faulty = |sql: &str, word: &str| {
        let dir = tempfile::tempdir().expect("a folder");
        filled(dir.path());
        Store::open(dir.path()).expect("opens").connection.execute_batch(sql).expect("breaks");
        let checked = check(dir.path());
        assert!(checked.faults.iter().any(|fault| fault.contains(word)), "{sql}: {:?}", checked.faults);
    };
    faulty("DROP TRIGGER entry_is_never_removed", "entry_is_never_removed is missing");
    faulty(
        "DROP TABLE stored_sound; CREATE TABLE stored_sound AS SELECT 1 AS id, 1 AS session, 1 AS part, 'a' AS file, 0.0 AS from_s, 0 AS samples, 0 AS bytes, 1 AS rate_hz, 'a' AS made_at, 'b' AS expires_at WHERE 0",
        "stored_sound_by_session is missing",
    );
    faulty(
        "PRAGMA foreign_keys = OFF; DROP TRIGGER entry_is_never_removed; DELETE FROM client WHERE name = 'grandpa'",
        "rows lead to rows that are missing",
    );
    faulty(
        "DROP TRIGGER entry_is_never_changed; UPDATE entry SET json = '{\"kind\":\"from_the_future\"}' WHERE seq = 2 AND session = 1",
        "practice 1, entry 2 cannot be understood",
    );
}

#[test]
fn sound_that_is_gone_cut_or_nobodys_is_told() {
    let dir = tempfile::tempdir().expect("a folder");
    let (gone, cut) = (record(dir.path(), "grandpa", 20_000), record(dir.path(), "grandma", 20_000));
    let folder = dir.path().join(SOUND_FOLDER);
    std::fs::remove_file(folder.join(&gone.file)).expect("removes");
    std::fs::write(folder.join(&cut.file), "fLaC").expect("cuts");
    std::fs::write(folder.join("stranger.flac"), "fLaC").expect("writes");
    let checked = check(dir.path());
    assert!(checked.faults.iter().any(|fault| fault.contains(&cut.file)), "{checked:?}");
    assert!(
        checked.notes.iter().any(|note| note.contains(&gone.file)) && checked.notes.iter().any(|note| note.contains("stranger.flac")),
        "{checked:?}"
    );
    assert!(folder.join("stranger.flac").exists(), "nothing is thrown away that nobody knows");
}
