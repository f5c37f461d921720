use super::*;
use crate::encrypt::tests::filled;
use crate::sound::tests::record;

fn now() -> ZonedDateTime {
    "2026-11-26T10:00:00+01:00[Europe/Berlin]".parse().expect("a time")
}

#[test]
fn what_goes_along_and_what_does_not_is_told() {
    let (data, away) = (tempfile::tempdir().expect("a folder"), tempfile::tempdir().expect("a folder"));
    filled(data.path());
    record(data.path(), "grandpa", 20_000);
    let put = |name: &str, text: &str| {
        let path = data.path().join(name);
        std::fs::create_dir_all(path.parent().expect("a folder")).expect("makes");
        std::fs::write(path, text).expect("writes");
    };
    put(
        "household.toml",
        "[[person]]\nname = \"grandpa\"\n[[person.routine]]\nfile = \"evening.toml\"\n[[person.routine]]\nfile = \"../far/morning.toml\"\n",
    );
    put("evening.toml", "title = \"Evening\"\n");
    put("clients/grandpa/package/settings.toml", "x = 1\n");
    put("voice-cache/0123.wav", "RIFF");
    put("practice-3.running", "");
    put("practice.sqlite.before-restore-20260101T000000", "old");
    let store = Store::open(data.path()).expect("opens");
    let to = away.path().join("stick.backup");
    let made = store.backup(&to, true, &now()).expect("backs up");
    assert_eq!((made.practices, made.clients, made.files.files, made.sounds.files), (11, 2, 3, 1));
    assert_eq!(made.left_out, ["../far/morning.toml (a routine of the household, outside the data folder)"]);
    let db = Connection::open(&to).expect("opens");
    let names: Vec<String> = db
        .prepare("SELECT path FROM backup_file ORDER BY path")
        .expect("a query")
        .query_map([], |row| row.get(0))
        .expect("reads")
        .map(|name| name.expect("a name"))
        .collect();
    assert!(
        names.starts_with(&["clients/grandpa/package/settings.toml".into(), "evening.toml".into(), "household.toml".into()])
            && names.len() == 4,
        "{names:?}"
    );
    let without = store.backup(&away.path().join("small.backup"), false, &now()).expect("backs up");
    assert_eq!((without.sounds.files, without.left_out.first().map(String::as_str)), (0, Some("stored sound")));
    // Nothing but the two files is left there.
    assert_eq!(std::fs::read_dir(away.path()).expect("lists").count(), 2);
}

#[test]
fn a_place_that_is_taken_or_inside_the_data_folder_is_refused() {
    let data = tempfile::tempdir().expect("a folder");
    filled(data.path());
    let store = Store::open(data.path()).expect("opens");
    let refusal = |to: &Path| store.backup(to, true, &now()).expect_err("refuses").to_string();
    assert!(refusal(&data.path().join("inside.backup")).contains("lost with it"));
    assert!(refusal(&data.path().join("none/there.backup")).contains("none"));
    let away = tempfile::tempdir().expect("a folder");
    let taken = away.path().join("taken");
    std::fs::write(&taken, "somebody's").expect("writes");
    assert!(refusal(&taken).contains("left as it is"));
    assert_eq!(std::fs::read(&taken).expect("reads"), b"somebody's");
    assert_eq!(std::fs::read_dir(away.path()).expect("lists").count(), 1, "nothing half-made is left");
}
