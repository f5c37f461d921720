//! Promise: killed at any entry of a practice with or without sound kept, and at any moment of a backup, a passphrase change, a forgetting,
//! an import into a clinic's database, the taking of a package or the change of an older record to today's form, the record is whole
//! and at most the entry under way is lost. A few kills here; `tests/endurance/run.sh` makes a thousand.

mod arrivals;
#[path = "../../support/clinic_world.rs"]
mod clinic_world;
mod commands;
mod older_form;
#[path = "../../support/program.rs"]
mod program;
mod sound;

use program::{Place, err, out, output, tidecount};
use record::{Journal, NewSession, SessionId, Source, Store};
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

/// Kills the child, a test of this program, as soon as it has told this entry; gives the last one that it told.
fn killed_at(child: &str, folder: &Path, entry: u32) -> u32 {
    let mut child = Command::new(std::env::current_exe().expect("this test"))
        .args(["--exact", child, "--ignored", "--nocapture"])
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
        let told = killed_at("endurance::child_that_practises", &data, entry);
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

/// All files of a folder and of those in it.
fn copy(from: &Path, to: &Path) {
    std::fs::create_dir(to).expect("makes");
    for file in std::fs::read_dir(from).expect("reads") {
        let (from, name) = file.map(|file| (file.path(), file.file_name())).expect("a file");
        if from.is_dir() {
            copy(&from, &to.join(name));
        } else {
            std::fs::copy(&from, to.join(name)).expect("copies");
        }
    }
}

/// Runs the command on a fresh copy of a folder each time, kills it after a share of its time that grows evenly, and has `look` judge what is
/// left. The commands are told the number of the kill.
fn killed_evenly(what: &str, original: &Path, command: impl Fn(&Path, u32) -> Command, look: impl Fn(&Path, u32)) {
    let kills = kills();
    let place = Place::new();
    let silent = |data: &Path, number: u32| {
        let mut command = command(data, number);
        command.stdin(Stdio::null()).stdout(Stdio::null()).stderr(Stdio::null());
        command
    };
    let timed = place.path("timed");
    copy(original, &timed);
    let began = Instant::now();
    assert!(silent(&timed, kills).status().expect("runs").success(), "{what}");
    let time: Duration = began.elapsed();
    for kill in 0..kills {
        let data = place.path(&format!("killed-{kill}"));
        copy(original, &data);
        let mut child = silent(&data, kill).spawn().expect("starts");
        std::thread::sleep(time.mul_f64((f64::from(kill) + 0.5) / f64::from(kills)));
        child.kill().expect("kills");
        child.wait().expect("is gone");
        look(&data, kill);
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
