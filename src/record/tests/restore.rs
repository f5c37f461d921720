use super::*;
use crate::Passphrase;
use crate::Source;
use crate::encrypt::tests::{filled, raw};
use crate::flac::tests::decoded;
use crate::samples::{begun, keep};
use crate::sound::tests::record;

const LATER: &str = "2026-11-26T10:00:00+01:00[Europe/Berlin]";

fn now() -> ZonedDateTime {
    LATER.parse().expect("a time")
}

struct Scene {
    data: tempfile::TempDir,
    away: tempfile::TempDir,
    backup: PathBuf,
}

fn scene() -> Scene {
    let (data, away) = (tempfile::tempdir().expect("a folder"), tempfile::tempdir().expect("a folder"));
    filled(data.path());
    record(data.path(), "grandpa", 20_000);
    std::fs::write(data.path().join("household.toml"), "[[person]]\nname = \"grandpa\"\n").expect("writes");
    let backup = away.path().join("stick.backup");
    Store::open(data.path()).expect("opens").backup(&backup, true, &now()).expect("backs up");
    Scene { data, away, backup }
}

#[test]
fn one_file_brings_everything_back_on_a_bare_computer() {
    let scene = scene();
    let fresh = scene.away.path().join("fresh");
    let restored = Store::restore(&fresh, &scene.backup, false, &now()).expect("restores");
    assert_eq!((restored.practices, restored.files.len(), restored.aside.len()), (11, 2, 0));
    assert!(restored.made_at.is_some_and(|at| at.starts_with("2026-11-26T10:00")));
    let (old, new) = (Store::open(scene.data.path()).expect("opens"), Store::open(&fresh).expect("opens"));
    assert_eq!(old.history(None, 100).expect("reads"), new.history(None, 100).expect("reads"));
    let sound = new.stored_sounds("grandpa").expect("reads").pop().expect("a sound");
    assert_eq!(decoded(new.sound_flac(&sound).expect("reads")).1.len(), 20_000);
    assert!(fresh.join("household.toml").exists() && !crate::backup::is_backup(&new.connection).expect("asks"));
    let checked = Store::check(&fresh, &now()).expect("checks").expect("a record");
    assert_eq!(checked.faults, Vec::<String>::new());
}

#[test]
fn a_record_that_has_more_is_replaced_only_on_demand_and_kept_aside() {
    let scene = scene();
    let restore = |replace| Store::restore(scene.data.path(), &scene.backup, replace, &now());
    // The same on both sides: nothing is lost by it.
    restore(false).expect("restores");
    keep(&mut Store::open(scene.data.path()).expect("opens"), "grandma", Source::Live, LATER, &[begun()]);
    let text = restore(false).expect_err("refuses").to_string();
    assert!(text.contains("1 practices") && text.contains("Nothing was changed") && text.contains("--replace"), "{text}");
    assert_eq!(Store::open(scene.data.path()).expect("opens").history(None, 100).expect("reads").len(), 12);
    let restored = restore(true).expect("restores");
    assert_eq!(Store::open(scene.data.path()).expect("opens").history(None, 100).expect("reads").len(), 11);
    let aside = restored.aside.iter().find(|path| path.to_string_lossy().contains("practice.sqlite.before-restore-")).expect("is kept");
    // What was set aside can be brought back the same way.
    let third = scene.away.path().join("third");
    assert_eq!(Store::restore(&third, aside, false, &now()).expect("restores").practices, 12);
}

#[test]
fn a_damaged_record_is_set_aside_with_its_log_and_a_damaged_backup_changes_nothing() {
    let scene = scene();
    let path = scene.data.path().join(DATABASE_NAME);
    let whole = std::fs::read(&scene.backup).expect("reads");
    let before = raw(scene.data.path()).len();
    for (cut, what) in [(whole.len() / 2, "cut in half"), (10, "ten bytes"), (0, "empty")] {
        let bad = scene.away.path().join("bad");
        std::fs::write(&bad, whole.get(..cut).expect("less")).expect("writes");
        let text = Store::restore(scene.data.path(), &bad, true, &now()).expect_err(what).to_string();
        assert!(text.contains("bad"), "{what}: {text}");
        assert_eq!(raw(scene.data.path()).len(), before, "{what}");
    }
    std::fs::write(&path, "no database at all, but somebody may want it").expect("writes");
    let restored = Store::restore(scene.data.path(), &scene.backup, false, &now()).expect("restores");
    let aside = restored.aside.iter().find(|path| path.to_string_lossy().contains("practice.sqlite.before-restore-")).expect("is kept");
    assert!(std::fs::read(aside).expect("reads").starts_with(b"no database"));
    assert_eq!(Store::open(scene.data.path()).expect("opens").history(None, 100).expect("reads").len(), 11);
}

#[test]
fn an_encrypted_backup_stays_encrypted_and_brings_its_passphrase_along() {
    let scene = scene();
    Store::set_passphrase(scene.data.path(), Some(&Passphrase::new("first four words").expect("long"))).expect("encrypts");
    let sealed = scene.away.path().join("sealed.backup");
    let made = Store::open(scene.data.path()).expect("opens").backup(&sealed, true, &now()).expect("backs up");
    let bytes = std::fs::read(&sealed).expect("reads");
    assert!(made.encrypted && !bytes.windows(7).any(|at| at == b"grandpa"));
    let fresh = scene.away.path().join("fresh");
    assert!(Store::restore(&fresh, &sealed, false, &now()).expect("restores").encrypted);
    let store = Store::open(&fresh).expect("opens");
    assert!(store.is_encrypted());
    let sound = store.stored_sounds("grandpa").expect("reads").pop().expect("a sound");
    decoded(store.sound_flac(&sound).expect("reads"));
}

#[test]
fn a_backup_cannot_write_outside_the_data_folder() {
    let scene = scene();
    let db = Connection::open(&scene.backup).expect("opens");
    for name in ["../outside.toml", "/tmp/outside.toml", "practice.sqlite", "a/../../outside.toml", ""] {
        db.execute("UPDATE backup_file SET path = ?1 WHERE path = (SELECT max(path) FROM backup_file)", [name]).expect("changes");
        let fresh = scene.away.path().join("fresh");
        let text = Store::restore(&fresh, &scene.backup, false, &now()).expect_err(name).to_string();
        assert!(text.contains("outside the data folder"), "{name}: {text}");
        assert!(!scene.away.path().join("outside.toml").exists() && !fresh.join(DATABASE_NAME).exists());
    }
}
