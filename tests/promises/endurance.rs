//! Promise: killed at any entry of a practice, and at any moment of a backup, a passphrase change or a forgetting, the record is whole and at
//! most the entry under way is lost. A few kills here; `tests/endurance/run.sh` makes a thousand.

#[path = "../support/program.rs"]
mod program;

use program::{Place, err, out, output, tidecount};
use record::{DATABASE_NAME, Journal, NewSession, SessionId, Source, Store};
use session::{Entry, Fact};
use std::io::{BufRead, BufReader, Read};
use std::path::{Path, PathBuf};
use std::process::{Command, Stdio};
use std::time::{Duration, Instant};

pub const FOLDER: &str = "TIDECOUNT_TEST_ENDURANCE_FOLDER";
pub const STARTED: &str = "2026-11-24T19:00:00+01:00[Europe/Berlin]";
pub const PHRASE: &str = "four words of test";
/// Entries of a practice of half an hour or so.
pub const ENTRIES: u32 = 200;

/// Kills of each kind.
pub fn kills() -> u32 {
    std::env::var("TIDECOUNT_KILLS").ok().and_then(|kills| kills.parse().ok()).unwrap_or(5)
}

pub fn rested(number: u32) -> Entry {
    Entry { at_s: f64::from(number), fact: Fact::Rested { duration_s: f64::from(number) }, position: None }
}

fn new<'a>(client: &'a str, started_at: &'a jiff::ZonedDateTime) -> NewSession<'a> {
    NewSession {
        protocol: None,
        client,
        routine_title: "Evening",
        routine_text: "title = \"Evening\"\n",
        source: Source::Live,
        software: "test",
        started_at,
    }
}

/// Runs in the child alone: appends until it is killed, telling each entry that is kept.
#[test]
#[ignore = "the child of the test below"]
fn child_that_practises() {
    let folder = PathBuf::from(std::env::var_os(FOLDER).expect("set by the parent"));
    let started_at = STARTED.parse().expect("a time");
    let mut journal = Journal::begin(Store::open(&folder).expect("opens"), &new("grandpa", &started_at), None).expect("begins");
    for number in 1..=ENTRIES {
        journal.append(&rested(number)).expect("keeps");
        println!("\nkept {number}");
    }
}

/// Kills the child as soon as it has told this entry; gives the last one that it told.
fn killed_at(folder: &Path, entry: u32) -> u32 {
    let mut child = Command::new(std::env::current_exe().expect("this test"))
        .args(["--exact", "endurance::child_that_practises", "--ignored", "--nocapture"])
        .env(FOLDER, folder)
        .stdout(Stdio::piped())
        .spawn()
        .expect("starts");
    let mut told = BufReader::new(child.stdout.take().expect("piped"));
    let (mut text, mut line) = (String::new(), String::new());
    while line.trim() != format!("kept {entry}") {
        line.clear();
        assert!(told.read_line(&mut line).expect("reads") > 0, "it ended before entry {entry}: {text}");
        text.push_str(&line);
    }
    child.kill().expect("kills");
    child.wait().expect("is gone");
    told.read_to_string(&mut text).expect("reads the rest");
    let whole = text.rfind('\n').map_or("", |end| &text[..end]);
    whole.lines().filter_map(|line| line.strip_prefix("kept ")?.parse().ok()).next_back().expect("the child kept something")
}

fn whole(folder: &Path) -> u64 {
    let checked = Store::check(folder, &STARTED.parse().expect("a time")).expect("checks").expect("a record");
    assert_eq!(checked.faults, Vec::<String>::new());
    checked.entries
}

#[test]
fn a_practice_killed_at_any_entry_loses_at_most_the_one_under_way() {
    let kills = kills();
    let place = Place::new();
    let data = place.path("data");
    let mut before = 0;
    for kill in 0..kills {
        let entry = 1 + kill * (ENTRIES - 1) / kills;
        let told = killed_at(&data, entry);
        let entries = whole(&data);
        let store = Store::open(&data).expect("opens");
        let latest = store.history(None, 1).expect("lists")[0].id;
        let kept = store.entries(latest).expect("reads");
        assert!(kept.iter().zip(1..).all(|(kept, number)| *kept == rested(number)), "kill {kill}");
        let last = kept.len() as u32;
        assert!(last == told || last == told + 1, "kill {kill} at entry {entry}: told {told}, kept {last}");
        assert_eq!(entries, before + u64::from(last), "nothing of the practices before is gone");
        before = entries;
    }
    println!("practice: {kills} kills, no kept entry lost, every record whole");
}

/// Two clients with a practice each.
pub fn two_clients(folder: &Path) -> [SessionId; 2] {
    let mut store = Store::open(folder).expect("opens");
    let started_at = STARTED.parse().expect("a time");
    ["grandpa", "grandma"].map(|client| {
        let session = store.begin(&NewSession { source: Source::Replay, ..new(client, &started_at) }).expect("begins");
        (1..=ENTRIES).for_each(|number| store.append(session, &rested(number)).expect("keeps"));
        session
    })
}

fn copy(from: &Path, to: &Path) {
    std::fs::create_dir(to).expect("makes");
    std::fs::copy(from.join(DATABASE_NAME), to.join(DATABASE_NAME)).expect("copies");
}

fn record(data: &Path, args: &[&str]) -> Command {
    let mut command = tidecount(["record"]);
    command.args(args).arg("--data").arg(data).env("TIDECOUNT_NEW_PASSPHRASE", PHRASE).env_remove("TIDECOUNT_PASSPHRASE");
    command.stdout(Stdio::null()).stderr(Stdio::null());
    command
}

/// Runs the command on a fresh copy each time, kills it after a share of its time that grows evenly, and has `look` judge what is left.
fn killed_evenly(what: &str, args: impl Fn(&Place, u32) -> Vec<String>, look: impl Fn(&Place, &Path, u32)) {
    let kills = kills();
    let place = Place::new();
    let original = place.path("original");
    two_clients(&original);
    let run = |data: &Path, number: u32| {
        let args = args(&place, number);
        record(data, &args.iter().map(String::as_str).collect::<Vec<_>>())
    };
    let timed = place.path("timed");
    copy(&original, &timed);
    let began = Instant::now();
    assert!(run(&timed, kills).status().expect("runs").success(), "{what}");
    let time: Duration = began.elapsed();
    for kill in 0..kills {
        let data = place.path(&format!("killed-{kill}"));
        copy(&original, &data);
        let mut child = run(&data, kill).spawn().expect("starts");
        std::thread::sleep(time.mul_f64((f64::from(kill) + 0.5) / f64::from(kills)));
        child.kill().expect("kills");
        child.wait().expect("is gone");
        look(&place, &data, kill);
        std::fs::remove_dir_all(&data).expect("removes");
    }
    println!("{what}: {kills} kills over {:.2} s, every record whole", time.as_secs_f64());
}

pub fn check(data: &Path, entries: u64) {
    let mut command = tidecount(["record", "check", "--data"]);
    let done = output(command.arg(data).env("TIDECOUNT_PASSPHRASE", PHRASE));
    assert!(done.status.success() && out(&done).contains("is whole"), "{}{}", out(&done), err(&done));
    assert!(out(&done).contains(&format!("{entries} journal lines")), "{}", out(&done));
}

#[test]
fn a_backup_killed_at_any_moment_is_whole_or_not_there() {
    let name = |place: &Place, number: u32| place.path(&format!("{number}.backup"));
    killed_evenly(
        "backup",
        |place, number| vec!["backup".into(), name(place, number).display().to_string()],
        |place, data, number| {
            check(data, u64::from(2 * ENTRIES));
            let backup = name(place, number);
            if backup.exists() {
                let back = place.path(&format!("back-{number}"));
                Store::restore(&back, &backup, false, &STARTED.parse().expect("a time")).expect("is whole");
                assert_eq!(whole(&back), u64::from(2 * ENTRIES));
            }
        },
    );
}

#[test]
fn a_passphrase_change_killed_at_any_moment_leaves_one_whole_record() {
    killed_evenly("passphrase", |_, _| vec!["passphrase".into(), "set".into()], |_, data, _| check(data, u64::from(2 * ENTRIES)));
}

#[test]
fn a_forgetting_killed_at_any_moment_is_done_or_not_begun() {
    killed_evenly(
        "forget",
        |_, _| vec!["forget".into(), "grandpa".into(), "--yes".into()],
        |_, data, _| {
            let store = Store::open(data).expect("opens");
            let of = |client: &str| store.history(Some(client), 9).expect("lists").len();
            assert_eq!(of("grandma"), 1);
            let left = of("grandpa") as u64;
            drop(store);
            check(data, u64::from(ENTRIES) * (1 + left));
        },
    );
}
