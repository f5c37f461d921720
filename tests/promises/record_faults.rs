//! Promise: a record cut off mid-write, a full disk and a folder that cannot be written are told with the file and a remedy, and nothing
//! that was kept is lost. (A clock that jumped, daylight saving and time zones: `src/record/tests/clock.rs`; a killed practice:
//! `killed_practice.rs`; foreign and newer databases: `src/record/tests/database.rs`.)

#[path = "../support/program.rs"]
mod program;

use program::{Place, Tape, err, out, output, tidecount};
use rand::{Rng, SeedableRng};
use record::{DATABASE_NAME, NewSession, Passphrase, RecordError, SessionId, Source, Store};
use session::{Entry, Fact};
use std::path::{Path, PathBuf};
use std::process::{Command, Output, Stdio};

const STARTED: &str = "2026-11-24T19:00:00+01:00[Europe/Berlin]";

fn fact(n: u32) -> Entry {
    Entry {
        at_s: f64::from(n),
        fact: Fact::SafetyStop { exercise_before: None, exercise: None, reason: format!("entry {n} {}", "x".repeat(200)).into() },
        position: None,
    }
}

fn begin(store: &mut Store, source: Source) -> SessionId {
    let started_at = STARTED.parse().unwrap();
    store
        .begin(&NewSession {
            protocol: None,
            client: "grandpa",
            routine_title: "Evening",
            routine_text: "x",
            source,
            software: "tidecount",
            started_at: &started_at,
        })
        .unwrap()
}

/// Copies database and log as they stand while a practice is led, as a power cut leaves them.
fn torn_off(to: &Path, entries: u32, passphrase: Option<&str>) -> SessionId {
    let place = Place::new();
    let data = place.path("data");
    if let Some(passphrase) = passphrase {
        Store::set_passphrase(&data, Some(&Passphrase::new(passphrase).unwrap())).unwrap();
    }
    let mut store = Store::open(&data).unwrap();
    let session = begin(&mut store, Source::Live);
    for n in 0..entries {
        store.append(session, &fact(n)).unwrap();
    }
    std::fs::create_dir_all(to).unwrap();
    for ending in ["", "-wal"] {
        let name = format!("{DATABASE_NAME}{ending}");
        std::fs::copy(data.join(&name), to.join(&name)).unwrap();
    }
    session
}

/// The log cut anywhere: what was kept before the cut is there, in order, and the record goes on.
#[test]
fn a_log_that_is_cut_off_anywhere_loses_only_what_was_cut() {
    let mut rng = rand::rngs::StdRng::seed_from_u64(6);
    for passphrase in [None, Some("four words of test")] {
        let place = Place::new();
        let whole = place.path("whole");
        let session = torn_off(&whole, 60, passphrase);
        let log = format!("{DATABASE_NAME}-wal");
        let length = std::fs::metadata(whole.join(&log)).unwrap().len();
        let (mut fewest, mut most) = (usize::MAX, 0);
        for n in 0..12_u64 {
            let data = place.path(&format!("cut-{n}"));
            std::fs::create_dir(&data).unwrap();
            std::fs::copy(whole.join(DATABASE_NAME), data.join(DATABASE_NAME)).unwrap();
            std::fs::copy(whole.join(&log), data.join(&log)).unwrap();
            let at = if n == 0 { length } else { rng.random_range(length / 4..length) };
            std::fs::OpenOptions::new().write(true).open(data.join(&log)).unwrap().set_len(at).unwrap();
            let mut store = Store::open(&data).unwrap();
            let Ok(kept) = store.entries(session) else {
                // Cut before the practice had begun.
                assert!(at < length / 2, "{at} of {length}");
                continue;
            };
            assert!(kept.iter().zip(0..).all(|(entry, n)| *entry == fact(n)), "cut at {at} of {length}");
            (fewest, most) = (fewest.min(kept.len()), most.max(kept.len()));
            store.append(session, &fact(99)).unwrap();
            assert_eq!(store.entries(session).unwrap().len(), kept.len() + 1);
        }
        assert!(most == 60 && fewest < 60, "{fewest} to {most}: the cuts must hit something");
    }
}

/// The database itself cut anywhere, with no log: it is told, left as it is, and a backup brings everything back.
#[test]
fn a_database_that_is_cut_off_anywhere_is_left_as_it_is_and_a_backup_brings_it_back() {
    let mut rng = rand::rngs::StdRng::seed_from_u64(7);
    for passphrase in [None, Some("four words of test")] {
        let place = Place::new();
        let data = place.path("data");
        if let Some(passphrase) = passphrase {
            Store::set_passphrase(&data, Some(&Passphrase::new(passphrase).unwrap())).unwrap();
        }
        let mut store = Store::open(&data).unwrap();
        let session = begin(&mut store, Source::Live);
        (0..60).for_each(|n| store.append(session, &fact(n)).unwrap());
        let backup = place.path("stick.backup");
        store.backup(&backup, true, &STARTED.parse().unwrap()).unwrap();
        drop(store);
        let whole = std::fs::read(data.join(DATABASE_NAME)).unwrap();
        for n in 0..8 {
            let cut = place.path(&format!("cut-{n}"));
            std::fs::create_dir(&cut).unwrap();
            let at = rng.random_range(1..whole.len() - 1);
            std::fs::write(cut.join(DATABASE_NAME), &whole[..at]).unwrap();
            let error = Store::open(&cut).map(drop).expect_err("is cut");
            let text = error.to_string();
            assert!(
                matches!(error, RecordError::Damaged { .. } | RecordError::WrongPassphrase { .. } | RecordError::Locked { .. }),
                "cut at {at}: {text}"
            );
            assert!(text.contains(DATABASE_NAME) && text.contains("left as it is"), "cut at {at}: {text}");
            assert_eq!(std::fs::read(cut.join(DATABASE_NAME)).unwrap(), whole[..at], "cut at {at}: it was touched");
            if matches!(error, RecordError::Damaged { .. }) {
                assert!(text.contains("record restore FILE"), "{text}");
                Store::restore(&cut, &backup, false, &STARTED.parse().unwrap()).unwrap();
                assert_eq!(Store::open(&cut).unwrap().entries(session).unwrap().len(), 60);
            }
        }
    }
}

/// A record of most of a megabyte. A replay's, which does not wait for the disk.
fn large(data: &Path) -> SessionId {
    let mut store = Store::open(data).unwrap();
    let session = begin(&mut store, Source::Replay);
    for n in 0..2_000 {
        store.append(session, &fact(n)).unwrap();
    }
    session
}

/// Runs a command that may write files of so many blocks of 512 bytes and no more.
fn with_file_limit(blocks: u32, command: &Command) -> Output {
    let mut shell = Command::new("sh");
    // Ignored, the signal becomes an error of the write, as a full disk is one.
    shell
        .args(["-c", &format!("trap '' XFSZ; ulimit -f {blocks}; exec \"$0\" \"$@\"")])
        .arg(command.get_program())
        .args(command.get_args());
    for (name, value) in command.get_envs() {
        match value {
            Some(value) => shell.env(name, value),
            None => shell.env_remove(name),
        };
    }
    shell.stdin(Stdio::null()).output().unwrap()
}

fn record<const N: usize>(data: &Path, args: [&str; N]) -> Command {
    let mut command = tidecount(["record"]);
    command.args(args).arg("--data").arg(data);
    for name in ["TIDECOUNT_PASSPHRASE", "TIDECOUNT_PASSPHRASE_FILE", "TIDECOUNT_NEW_PASSPHRASE_FILE"] {
        command.env_remove(name);
    }
    command.env("TIDECOUNT_NEW_PASSPHRASE", "four words of test");
    command
}

fn told(done: &Output, words: &[&str]) {
    let text = err(done);
    assert_eq!(done.status.code(), Some(1), "{}{text}", out(done));
    for word in words {
        assert!(text.contains(word), "{word:?} is not in: {text}");
    }
    assert!(!text.contains("panicked"), "{text}");
}

#[test]
fn a_backup_or_an_encryption_that_finds_no_room_leaves_the_record_and_nothing_half_made() {
    let place = Place::new();
    let data = place.path("data");
    let session = large(&data);
    let before = Store::open(&data).unwrap().entries(session).unwrap();
    let file = place.path("stick.backup");
    let names = |folder: &Path| -> Vec<PathBuf> {
        let mut names: Vec<_> = std::fs::read_dir(folder).unwrap().flatten().map(|entry| entry.path()).collect();
        names.sort();
        names
    };
    let there = names(&data);
    for args in [["backup", file.to_str().unwrap()], ["passphrase", "set"]] {
        told(&with_file_limit(500, &record(&data, args)), &["could not be", "room"]);
        assert!(!file.exists() && !place.path("stick.backup.part").exists());
        assert!(names(&data).iter().all(|name| there.contains(name)), "{:?}", names(&data));
        assert_eq!(Store::open(&data).unwrap().entries(session).unwrap(), before);
    }
    assert_eq!(Store::encrypted(&data).unwrap(), Some(false));
}

/// The conversion killed at any instant: there is one whole record, in the old form or the new.
#[test]
fn an_encryption_that_is_killed_at_any_instant_leaves_one_whole_record() {
    let mut rng = rand::rngs::StdRng::seed_from_u64(8);
    let place = Place::new();
    let original = place.path("original");
    let session = large(&original);
    // How long it takes from begin to end, so that the kills fall into it.
    let data = place.path("timed");
    copy(&original, &data);
    let began = std::time::Instant::now();
    assert!(record(&data, ["passphrase", "set"]).output().unwrap().status.success());
    let whole = began.elapsed();
    let mut forms = [0, 0];
    for n in 0..12 {
        let data = place.path(&format!("killed-{n}"));
        copy(&original, &data);
        let mut child = record(&data, ["passphrase", "set"]).stdout(Stdio::null()).stderr(Stdio::null()).spawn().unwrap();
        std::thread::sleep(whole.mul_f64(rng.random_range(0.1..1.0)));
        child.kill().unwrap();
        child.wait().unwrap();
        let encrypted = Store::encrypted(&data).unwrap().expect("a record");
        forms[usize::from(encrypted)] += 1;
        let mut check = record(&data, ["check"]);
        check.env("TIDECOUNT_PASSPHRASE", "four words of test");
        let done = output(&mut check);
        assert!(
            done.status.success() && out(&done).contains("2000 journal lines") && out(&done).contains("is whole"),
            "{encrypted}: {}{}",
            out(&done),
            err(&done)
        );
        assert!(!data.join("practice.sqlite.new").exists(), "what was half-made is cleared away");
        if !encrypted {
            assert_eq!(Store::open(&data).unwrap().entries(session).unwrap().len(), 2_000);
        }
    }
    println!("left as it was {}, encrypted {}", forms[0], forms[1]);
}

fn copy(from: &Path, to: &Path) {
    std::fs::create_dir(to).unwrap();
    std::fs::copy(from.join(DATABASE_NAME), to.join(DATABASE_NAME)).unwrap();
}

/// A real full disk: a small file system in memory, in a name space of its own; where the system allows none it is skipped.
#[test]
fn a_practice_on_a_full_disk_is_told_and_what_was_kept_stays() {
    let allowed = Command::new("unshare")
        .args(["-rUm", "mount", "-t", "tmpfs", "tmpfs", "/mnt"])
        .stderr(Stdio::null())
        .status()
        .is_ok_and(|status| status.success());
    if !allowed {
        skipping::skip(skipping::Missing::Right, "no file system can be made here");
        return;
    }
    let place = Place::new();
    let (data, disk) = (place.path("data"), place.path("disk"));
    large(&data);
    std::fs::create_dir(&disk).unwrap();
    let routine = place.write("routine.toml", "title = \"A rest\"\n[[step]]\nexercise = \"rest\"\nlength_s = 1\n");
    let wav = Tape::new(16_000, 1.0).write(&place.path("client.wav"), 1);
    let program = env!("CARGO_BIN_EXE_tidecount");
    let script = format!(
        "mount -t tmpfs -o size=4m tmpfs {disk}; cp {data}/* {disk}/; cat /dev/zero > {disk}/filler 2>/dev/null || true; cd {root}
         {program} practise {routine} --mic {wav} --fast --data {disk} >/dev/null 2>{place}/practise.err; echo $? > {place}/practise.rc
         {program} record passphrase set --data {disk} >/dev/null 2>{place}/set.err; echo $? > {place}/set.rc
         {program} history --data {disk} > {place}/history.out 2>{place}/history.err; echo $? > {place}/history.rc
         rm {disk}/filler; {program} record check --data {disk} > {place}/check.out 2>&1; echo $? > {place}/check.rc",
        disk = disk.display(),
        data = data.display(),
        routine = routine.display(),
        wav = wav.display(),
        place = place.path("").display(),
        root = env!("CARGO_MANIFEST_DIR"),
    );
    let done = Command::new("unshare")
        .args(["-rUm", "sh", "-c", &script])
        .env("TIDECOUNT_NEW_PASSPHRASE", "four words of test")
        .stdin(Stdio::null())
        .output()
        .unwrap();
    let read = |name: &str| std::fs::read_to_string(place.path(name)).unwrap_or_else(|why| panic!("{name}: {why}: {}", err(&done)));
    let (practised, set) = (read("practise.err"), read("set.err"));
    assert_eq!(read("practise.rc").trim(), "1", "{practised}");
    assert!(practised.contains("practice.sqlite") && practised.contains("room"), "{practised}");
    assert_eq!(read("set.rc").trim(), "1");
    assert!(set.contains("room"), "{set}");
    assert_eq!(read("history.rc").trim(), "0", "reading needs no room: {}", read("history.err"));
    assert!(read("history.out").contains("grandpa"));
    assert!(read("check.rc").trim() == "0" && read("check.out").contains("2000 journal lines"), "{}", read("check.out"));
}

/// Root may write anywhere: there the program is run as somebody else.
#[cfg(unix)]
#[test]
fn a_folder_that_cannot_be_written_is_told_and_left() {
    use std::os::unix::fs::{MetadataExt, PermissionsExt};
    use std::os::unix::process::CommandExt;
    let place = Place::new();
    let data = place.path("data");
    large(&data);
    let routine = place.write("routine.toml", "title = \"A rest\"\n[[step]]\nexercise = \"rest\"\nlength_s = 1\n");
    let wav = Tape::new(16_000, 1.0).write(&place.path("client.wav"), 1);
    let is_root = std::fs::metadata(&data).unwrap().uid() == 0;
    let mode = |path: &Path, mode| std::fs::set_permissions(path, std::fs::Permissions::from_mode(mode)).unwrap();
    for entry in std::fs::read_dir(&data).unwrap().flatten() {
        mode(&entry.path(), 0o444);
    }
    mode(&data, 0o555);
    mode(&place.path(""), 0o755);
    let before: Vec<Vec<u8>> = std::fs::read_dir(&data).unwrap().flatten().map(|entry| std::fs::read(entry.path()).unwrap()).collect();
    let mut practise = place.replay(&routine, &wav, "data");
    let mut history = tidecount(["history", "--data"]);
    history.arg(&data);
    // Reading needs no right to write.
    match history.by_ref_as(is_root).output() {
        Ok(done) => assert!(done.status.success() && out(&done).contains("grandpa"), "{}", err(&done)),
        Err(why) => skipping::skip(skipping::Missing::Right, &format!("the program cannot be run as somebody else here ({why})")),
    }
    for mut command in [
        practise.by_ref_as(is_root),
        record(&data, ["passphrase", "set"]).by_ref_as(is_root),
        record(&data, ["forget", "grandpa", "--yes"]).by_ref_as(is_root),
    ] {
        let done = match command.output() {
            Ok(done) => done,
            Err(why) => {
                skipping::skip(skipping::Missing::Right, &format!("the program cannot be run as somebody else here ({why})"));
                break;
            }
        };
        told(&done, &["practice.sqlite", "read-only", "--data DIR"]);
    }
    mode(&data, 0o755);
    let after: Vec<Vec<u8>> = std::fs::read_dir(&data).unwrap().flatten().map(|entry| std::fs::read(entry.path()).unwrap()).collect();
    assert_eq!(after, before);

    /// The same command, by somebody who may not write.
    trait As {
        fn by_ref_as(&mut self, is_root: bool) -> Command;
    }
    impl As for Command {
        fn by_ref_as(&mut self, is_root: bool) -> Command {
            let mut other = Command::new(self.get_program());
            other
                .args(self.get_args())
                .stdin(Stdio::null())
                .env("HOME", "/nonexistent")
                .env("TIDECOUNT_NEW_PASSPHRASE", "four words of test")
                .current_dir("/");
            if is_root {
                other.uid(65_534).gid(65_534);
            }
            other
        }
    }
}
