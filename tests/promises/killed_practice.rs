//! A practice killed at any instant loses at most the entry under way, and the next start goes on from there.

use rand::{Rng, SeedableRng};
use record::{Journal, NewSession, Source, Store, Unfinished, journal_text, read_journal};
use routine::{Exercise, NoAnswer, Routine, Step, Timing, Work};
use session::{Entry, Fact, Position};
use std::io::{BufRead, BufReader, Read};
use std::path::{Path, PathBuf};
use std::process::{Command, Stdio};
use std::time::Duration;

const FOLDER: &str = "TIDECOUNT_TEST_KILL_FOLDER";
const TEXT: &str = "title = \"Evening routine\"\n";
const STARTED: &str = "2026-11-24T19:00:00+01:00[Europe/Berlin]";

fn routine() -> Routine {
    Routine {
        title: "Evening routine".into(),
        steps: vec![Step {
            exercise: Exercise {
                id: "tongue-hold-swallow".into(),
                timing: Timing::Repeated,
                cautions: Vec::new(),
                needs_agreement: false,
                waits_for_ready: false,
            },
            sets: 1,
            repetitions: 1_000_000,
            rest_s: 0.0,
            set_rest_s: 0.0,
            work: Work::Repeated { next_cue_after_s: None, sip_every: None, setting: None },
            posture: None,
            ramp_stage: None,
        }],
        no_answer: NoAnswer { ask_again_after_s: 12.0, asks: 2, give_up_after_s: 600.0 },
        cue_words: None,
        feedback_every: 0,
        loud_limit_s: 300.0,
        clinician: routine::ClinicianWords::default(),
        looking_back: routine::LookingBack::default(),
    }
}

fn repetition(number: u32) -> Entry {
    Entry {
        at_s: f64::from(number) * 0.001,
        fact: Fact::RepetitionDone { exercise: "tongue-hold-swallow".into(), duration_s: 4.2, ended_by: "done".into(), asked: None },
        position: Some(Position { step: 1, set: 1, repetition: number }),
    }
}

fn unfinished(store: &Store) -> Option<Unfinished> {
    let now = STARTED.parse().expect("a time");
    store.unfinished("Client", &routine(), TEXT, Source::Live, &now, Unfinished::OFFERED_WITHIN).expect("asks")
}

/// Runs in the child alone: begins or goes on, and appends until it is killed, telling each repetition that was kept.
#[test]
#[ignore = "the child of the test below"]
fn child_that_practises() {
    let folder = PathBuf::from(std::env::var_os(FOLDER).expect("set by the parent"));
    let lines = folder.join("practice.jsonl");
    let store = Store::open(&folder).expect("opens");
    let started_at = STARTED.parse().expect("a time");
    let (mut journal, first) = match unfinished(&store) {
        Some(from) => (Journal::resume(store, &from, &started_at, Some(&lines)).expect("resumes"), from.position.repetition),
        None => {
            let new = NewSession {
                protocol: None,
                client: "Client",
                routine_title: "Evening routine",
                routine_text: TEXT,
                source: Source::Live,
                software: "test",
                started_at: &started_at,
            };
            (Journal::begin(store, &new, Some(&lines)).expect("begins"), 1)
        }
    };
    for number in first.. {
        journal.append(&repetition(number)).expect("keeps");
        println!("\nkept {number}");
    }
}

/// Starts the child, kills it after it has kept something and a random while has passed; gives the last number it told.
fn practise_and_kill(folder: &Path, while_us: u64) -> u32 {
    let mut child = Command::new(std::env::current_exe().expect("this test"))
        .args(["--exact", "killed_practice::child_that_practises", "--ignored", "--nocapture"])
        .env(FOLDER, folder)
        .stdout(Stdio::piped())
        .spawn()
        .expect("starts");
    let mut told = BufReader::new(child.stdout.take().expect("piped"));
    let mut text = String::new();
    while !text.contains("kept") && told.read_line(&mut text).expect("reads") > 0 {}
    std::thread::sleep(Duration::from_micros(while_us));
    child.kill().expect("kills");
    child.wait().expect("is gone");
    told.read_to_string(&mut text).expect("reads the rest");
    // The kill may have cut the last line; only whole ones count as told.
    let whole = text.rfind('\n').map_or("", |end| &text[..end]);
    whole.lines().filter_map(|line| line.strip_prefix("kept ")?.parse().ok()).next_back().expect("the child kept something")
}

#[test]
fn nothing_that_was_kept_is_lost_by_a_kill() {
    let dir = tempfile::tempdir().expect("a folder");
    let mut random = rand::rngs::StdRng::seed_from_u64(3);
    for round in 0..12 {
        let told = practise_and_kill(dir.path(), random.random_range(0..30_000));

        // The JSON Lines file as the kill left it.
        let text = std::fs::read_to_string(dir.path().join("practice.jsonl")).expect("reads");
        let written = read_journal("practice.jsonl", &text).expect("at most the last line is partial");
        assert!(written.entries.len() >= told as usize, "round {round}: told {told}, written {}", written.entries.len());

        // The database: intact, nothing told is missing, nothing came twice.
        let store = Store::open(dir.path()).expect("is intact");
        let found = unfinished(&store).expect("is offered");
        let kept: Vec<u32> = found.entries.iter().filter_map(|entry| entry.position).map(|at| at.repetition).collect();
        let last = *kept.last().expect("some");
        assert_eq!(kept, (1..=last).collect::<Vec<_>>(), "round {round}");
        assert!(last == told || last == told + 1, "round {round}: told {told}, kept {last}");
        assert_eq!(found.position.repetition, last + 1);

        // Both tell the same, but for the entry under way.
        let kept_text = journal_text(&found.entries).expect("text");
        let written_text = journal_text(&written.entries).expect("text");
        assert!(kept_text.starts_with(&written_text) && found.entries.len() - written.entries.len() <= 1);
    }
}
