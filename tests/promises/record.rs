//! Promise: the record is backed up, brought back, checked, encrypted and cleared of a client by one command each, and whatever stands
//! in the way is told with a remedy while nothing is lost.

#[path = "../support/program.rs"]
mod program;

use program::{Place, err, out, output, tidecount};
use record::{DATABASE_NAME, NewSession, SessionId, Source, Store};
use session::{Entry, Fact};
use std::io::Write;
use std::path::{Path, PathBuf};
use std::process::{Command, Stdio};

const PHRASE: &str = "four words of test";

fn keep(store: &mut Store, client: &str, started: &str, minutes: f64) -> SessionId {
    let new = NewSession {
        protocol: None,
        client,
        routine_title: "Evening",
        routine_text: "x",
        source: Source::Live,
        software: "tidecount",
        started_at: &started.parse().unwrap(),
    };
    let session = store.begin(&new).unwrap();
    let facts = [
        (0.0, Fact::SessionBegun { routine: "Evening".into(), steps: 1, software: "tidecount".into() }),
        (3.0, Fact::SafetyStop { exercise_before: None, exercise: None, reason: format!("what only {client} said").into() }),
        (minutes * 60.0, Fact::SessionEnded { reason: "completed".into(), steps_done: 1, steps_prescribed: 1, duration_s: minutes * 60.0 }),
    ];
    for (at_s, fact) in facts {
        store.append(session, &Entry { at_s, fact, position: None }).unwrap();
    }
    session
}

fn scene() -> (Place, PathBuf) {
    let place = Place::new();
    let data = place.path("data");
    let mut store = Store::open(&data).unwrap();
    for day in 10..20 {
        keep(&mut store, "grandpa", &format!("2026-11-{day}T19:00:00+01:00[Europe/Berlin]"), 12.0);
        keep(&mut store, "grandma", &format!("2026-11-{day}T20:00:00+01:00[Europe/Berlin]"), 8.0);
    }
    (place, data)
}

/// `tidecount record … --data DATA` without a passphrase from outside.
fn record<const N: usize>(data: &Path, args: [&str; N]) -> Command {
    let mut command = tidecount(["record"]);
    command.args(args).arg("--data").arg(data);
    bare(&mut command);
    command
}

fn history(data: &Path) -> Command {
    let mut command = tidecount(["history", "--last", "100", "--data"]);
    command.arg(data);
    bare(&mut command);
    command
}

fn bare(command: &mut Command) {
    for name in ["TIDECOUNT_PASSPHRASE", "TIDECOUNT_PASSPHRASE_FILE", "TIDECOUNT_NEW_PASSPHRASE", "TIDECOUNT_NEW_PASSPHRASE_FILE"] {
        command.env_remove(name);
    }
}

fn succeeds(command: &mut Command) -> String {
    let done = output(command);
    assert!(done.status.success(), "{command:?}: {}{}", out(&done), err(&done));
    out(&done)
}

/// It fails with exit code 1 and all these words.
fn refuses(command: &mut Command, words: &[&str]) {
    let done = output(command);
    let text = err(&done);
    assert_eq!(done.status.code(), Some(1), "{command:?}: {}{text}", out(&done));
    for word in words {
        assert!(text.contains(word), "{command:?}: {word:?} is not in: {text}");
    }
    for bad in ["panicked", "thread '", "ERROR CORE"] {
        assert!(!text.contains(bad), "{command:?}: {text}");
    }
}

fn bytes(data: &Path) -> Vec<u8> {
    std::fs::read(data.join(DATABASE_NAME)).unwrap()
}

#[test]
fn backed_up_and_brought_back() {
    let (place, data) = scene();
    let before = succeeds(&mut history(&data));
    let file = place.path("stick.backup");
    let said = succeeds(&mut record(&data, ["backup", file.to_str().unwrap()]));
    assert!(said.contains("20 practices of 2 clients") && said.contains("not encrypted") && said.contains("record restore"), "{said}");
    refuses(&mut record(&data, ["backup", file.to_str().unwrap()]), &["stick.backup", "left as it is"]);
    // A folder gets a file with the date.
    std::fs::create_dir(place.path("stick")).unwrap();
    succeeds(&mut record(&data, ["backup", place.path("stick").to_str().unwrap()]));
    assert_eq!(std::fs::read_dir(place.path("stick")).unwrap().count(), 1);
    let fresh = place.path("fresh");
    succeeds(&mut record(&fresh, ["restore", file.to_str().unwrap()]));
    assert_eq!(succeeds(&mut history(&fresh)), before);
    assert!(succeeds(&mut record(&fresh, ["check"])).contains("The record is whole."));
    // One practice more: nothing is written over.
    keep(&mut Store::open(&fresh).unwrap(), "grandpa", "2026-11-25T19:00:00+01:00[Europe/Berlin]", 1.0);
    refuses(&mut record(&fresh, ["restore", file.to_str().unwrap()]), &["1 practices", "Nothing was changed", "--replace"]);
    succeeds(&mut record(&fresh, ["restore", file.to_str().unwrap(), "--replace"]));
    assert_eq!(succeeds(&mut history(&fresh)), before);
    refuses(&mut record(&fresh, ["restore", place.path("none").to_str().unwrap()]), &["none", "no backup"]);
    refuses(&mut record(&place.path("empty"), ["backup", place.path("x").to_str().unwrap()]), &["no record", "--data DIR"]);
}

#[test]
fn encrypted_and_opened_by_variable_or_file_alone() {
    let (place, data) = scene();
    let before = succeeds(&mut history(&data));
    refuses(&mut record(&data, ["passphrase", "set"]), &["TIDECOUNT_PASSPHRASE", "terminal"]);
    refuses(record(&data, ["passphrase", "set"]).env("TIDECOUNT_PASSPHRASE", "short"), &["too short"]);
    refuses(record(&data, ["passphrase", "change"]).env("TIDECOUNT_PASSPHRASE", PHRASE), &["not encrypted"]);
    succeeds(record(&data, ["passphrase", "set"]).env("TIDECOUNT_PASSPHRASE", PHRASE));
    let sealed = bytes(&data);
    assert!(!sealed.starts_with(b"SQLite") && !sealed.windows(7).any(|at| at == b"grandpa"));
    let locked = &["practice.sqlite", "encrypted", "TIDECOUNT_PASSPHRASE_FILE"];
    refuses(&mut history(&data), locked);
    refuses(&mut record(&data, ["check"]), locked);
    refuses(&mut record(&data, ["forget", "grandpa", "--yes"]), locked);
    refuses(history(&data).env("TIDECOUNT_PASSPHRASE", "other words here"), &["does not open", "left as it is"]);
    assert_eq!(bytes(&data), sealed, "nothing was touched");
    assert_eq!(succeeds(history(&data).env("TIDECOUNT_PASSPHRASE", PHRASE)), before);
    let file = place.write("passphrase", &format!("{PHRASE}\n"));
    refuses_open_file(&data, &file);
    assert_eq!(succeeds(history(&data).env("TIDECOUNT_PASSPHRASE_FILE", &file)), before);

    let file_new = "TIDECOUNT_NEW_PASSPHRASE";
    refuses(
        record(&data, ["passphrase", "change"]).env("TIDECOUNT_PASSPHRASE", "other words here").env(file_new, "yet other words"),
        &["does not open"],
    );
    succeeds(record(&data, ["passphrase", "change"]).env("TIDECOUNT_PASSPHRASE", PHRASE).env(file_new, "yet other words"));
    refuses(history(&data).env("TIDECOUNT_PASSPHRASE", PHRASE), &["does not open"]);
    assert_eq!(succeeds(history(&data).env("TIDECOUNT_PASSPHRASE", "yet other words")), before);
    // A record whose passphrase is lost is not written over by a backup, and can be set aside for it.
    let backup = place.path("stick.backup");
    succeeds(record(&data, ["backup", backup.to_str().unwrap()]).env("TIDECOUNT_PASSPHRASE", "yet other words"));
    let lost = place.path("lost");
    succeeds(record(&lost, ["passphrase", "set"]).env("TIDECOUNT_PASSPHRASE", "forgotten long ago"));
    let restore = |replace: bool| {
        let mut command = record(&lost, ["restore", backup.to_str().unwrap()]);
        command.args(replace.then_some("--replace")).env("TIDECOUNT_PASSPHRASE", "yet other words");
        command
    };
    refuses(&mut restore(false), &["another passphrase", "Nothing was changed", "--replace"]);
    succeeds(&mut restore(true));
    assert_eq!(succeeds(history(&lost).env("TIDECOUNT_PASSPHRASE", "yet other words")), before);

    succeeds(record(&data, ["passphrase", "remove"]).env("TIDECOUNT_PASSPHRASE", "yet other words"));
    assert_eq!(succeeds(&mut history(&data)), before);
    // A passphrase that opens nothing is told of once, so that nobody believes the record encrypted.
    let done = output(history(&data).env("TIDECOUNT_PASSPHRASE", PHRASE));
    assert!(done.status.success() && err(&done).matches("is not encrypted").count() == 1, "{}", err(&done));
}

#[cfg(unix)]
fn refuses_open_file(data: &Path, file: &Path) {
    use std::os::unix::fs::PermissionsExt;
    std::fs::set_permissions(file, std::fs::Permissions::from_mode(0o644)).unwrap();
    refuses(history(data).env("TIDECOUNT_PASSPHRASE_FILE", file), &["0644", "chmod 600"]);
    std::fs::set_permissions(file, std::fs::Permissions::from_mode(0o600)).unwrap();
}

#[cfg(not(unix))]
fn refuses_open_file(_data: &Path, _file: &Path) {}

#[test]
fn a_new_record_is_encrypted_where_a_passphrase_is_given() {
    let place = Place::new();
    let routine = place.write("routine.toml", "title = \"A rest\"\n[[step]]\nexercise = \"rest\"\nlength_s = 1\n");
    let wav = program::Tape::new(16_000, 1.0).write(&place.path("client.wav"), 1);
    let mut child = place
        .replay(&routine, &wav, "data")
        .env("TIDECOUNT_PASSPHRASE", PHRASE)
        .stdout(Stdio::null())
        .stderr(Stdio::null())
        .spawn()
        .unwrap();
    let data = place.path("data");
    // Its begin is enough.
    let begun = |data: &Path| output(history(data).env("TIDECOUNT_PASSPHRASE", PHRASE));
    while !out(&begun(&data)).contains("A rest") && child.try_wait().unwrap().is_none() {
        std::thread::sleep(std::time::Duration::from_millis(50));
    }
    child.kill().unwrap();
    child.wait().unwrap();
    assert!(!bytes(&data).starts_with(b"SQLite"));
    refuses(&mut history(&data), &["encrypted"]);
    assert!(succeeds(history(&data).env("TIDECOUNT_PASSPHRASE", PHRASE)).contains("A rest"));
}

#[test]
fn a_client_is_forgotten_when_the_name_is_typed_and_not_otherwise() {
    let (_place, data) = scene();
    let typed = |answer: &str| {
        let mut child =
            record(&data, ["forget", "grandpa"]).stdin(Stdio::piped()).stdout(Stdio::piped()).stderr(Stdio::piped()).spawn().unwrap();
        child.stdin.take().unwrap().write_all(answer.as_bytes()).unwrap();
        child.wait_with_output().unwrap()
    };
    for wrong in ["", "grandma\n", "yes\n"] {
        let done = typed(wrong);
        assert!(done.status.code() == Some(1) && err(&done).contains("nothing was deleted"), "{wrong:?}: {}", err(&done));
    }
    assert_eq!(succeeds(&mut history(&data)).matches("grandpa").count(), 10);
    let done = typed("grandpa\n");
    assert!(
        done.status.success() && out(&done).contains("10 practices") && out(&done).contains("Not reached: backups"),
        "{}{}",
        out(&done),
        err(&done)
    );
    let left = succeeds(&mut history(&data));
    assert_eq!((left.matches("grandpa").count(), left.matches("grandma").count()), (0, 10));
    for entry in std::fs::read_dir(&data).unwrap().flatten() {
        let bytes = std::fs::read(entry.path()).unwrap_or_default();
        assert!(!bytes.windows(7).any(|at| at == b"grandpa"), "{:?}", entry.path());
    }
    refuses(&mut record(&data, ["forget", "grandpa", "--yes"]), &["grandpa", "tidecount history"]);
}

#[test]
fn what_two_programs_do_at_once_goes_well_or_is_refused() {
    let (place, data) = scene();
    // A practice under way in this process.
    let mut practising = Store::open(&data).unwrap();
    let started = "2026-11-26T19:00:00+01:00[Europe/Berlin]".parse().unwrap();
    let new = NewSession {
        protocol: None,
        client: "grandpa",
        routine_title: "Evening",
        routine_text: "x",
        source: Source::Live,
        software: "tidecount",
        started_at: &started,
    };
    let session = practising.begin(&new).unwrap();
    let file = place.path("stick.backup");
    for (command, refused) in [
        (history(&data), false),
        (record(&data, ["check"]), false),
        (record(&data, ["backup", file.to_str().unwrap()]), false),
        (record(&data, ["forget", "grandpa", "--yes"]), true),
        (record(&data, ["passphrase", "set"]), true),
        (record(&data, ["restore", file.to_str().unwrap()]), true),
    ] {
        let mut command = command;
        command.env("TIDECOUNT_NEW_PASSPHRASE", PHRASE);
        if refused {
            refuses(&mut command, &["practice.sqlite", "another tidecount", "Nothing was changed"])
        } else {
            drop(succeeds(&mut command))
        }
        practising.append(session, &Entry { at_s: 1.0, fact: Fact::Rested { duration_s: 1.0 }, position: None }).unwrap();
    }
    // A second practice of somebody else beside it.
    let mut other = Store::open(&data).unwrap();
    keep(&mut other, "grandma", "2026-11-26T19:01:00+01:00[Europe/Berlin]", 1.0);
    assert_eq!(practising.entries(session).unwrap().len(), 6);
    assert!(succeeds(&mut record(&data, ["check"])).contains("22 practices"));
}

#[test]
fn a_clock_that_jumped_is_told_by_the_check() {
    let (_place, data) = scene();
    keep(&mut Store::open(&data).unwrap(), "grandpa", "2099-01-01T10:00:00+00:00[UTC]", 1.0);
    let said = succeeds(&mut record(&data, ["check"]));
    assert!(said.contains("before the last practice") && said.contains("2099-01-01") && said.contains("The record is whole."), "{said}");
}
