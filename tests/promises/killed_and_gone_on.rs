//! Promise: a practice killed at any instant loses at most the repetition under way; the next start offers to go on.

#[path = "../support/program.rs"]
mod program;

use program::{Place, Tape, err, journal, number, of_kind, out, output, tidecount, wait_for_lines};
use record::DATABASE_NAME;
use rusqlite::Connection;
use serde_json::Value;
use std::path::{Path, PathBuf};
use std::process::{Child, Stdio};

const REPETITIONS: u64 = 6;
/// The repetitions are long: a replay runs through short ones faster than a busy machine comes to kill it, and behind the last of them
/// there is nothing to go on with.
const ROUTINE: &str = r#"
title = "Shoulders"
[[step]]
exercise = "shoulder-rolls"
repetitions = 6
next_cue_after_s = 15
[[step]]
exercise = "rest"
length_s = 1
"#;

const CLIENT: &str = r#"
seed = 3
reaction_s = [1.0, 1.5]
voice = { name = "rms", speed = 0.9, level_db = -26.0 }
[[rule]]
on = "ask-ready*"
does = [{ say = "ready" }]
"#;

/// What every test here needs: the routine, a client who says "ready", and the journal of a practice nobody killed.
struct Scene {
    place: Place,
    routine: PathBuf,
    ready: PathBuf,
    whole: Vec<String>,
}

impl Scene {
    fn new() -> Self {
        let place = Place::new();
        let routine = place.write("routine.toml", ROUTINE);
        let truth = place.rehearse(&routine, CLIENT);
        let ready = Tape::of(&truth, 16_000).write(&place.path("ready.wav"), 1);
        let lines = place.path("whole.jsonl");
        let done = output(place.replay(&routine, &ready, "whole").arg("--journal").arg(&lines));
        assert!(done.status.success(), "{}{}", out(&done), err(&done));
        let whole = std::fs::read_to_string(&lines).unwrap().lines().map(str::to_owned).collect();
        Self { place, routine, ready, whole }
    }

    /// Says one word again and again, from before it is asked to go on until well after.
    fn answers(&self, word: &str) -> PathBuf {
        let mut tape = Tape::new(16_000, 240.0);
        tape.say_every(4.0, 22.0, 3.1, word);
        tape.write(&self.place.path(&format!("{word}.wav")), 1)
    }

    fn start(&self, wav: &Path, data: &str, lines: &Path, fast: bool) -> Child {
        let mut command = if fast { self.place.replay(&self.routine, wav, data) } else { tidecount(["practise"]) };
        if !fast {
            command.arg(&self.routine).arg("--mic").arg(wav).arg("--data").arg(self.place.path(data));
        }
        command.arg("--journal").arg(lines).stdout(Stdio::null()).stderr(Stdio::null()).spawn().expect("starts")
    }

    /// Killed as soon as the journal has so many lines; gives the lines that the database then holds.
    fn killed(&self, data: &str, lines: &Path, after_lines: usize, fast: bool) -> Vec<String> {
        let mut child = self.start(&self.ready, data, lines, fast);
        wait_for_lines(lines, after_lines, &mut child);
        child.kill().expect("kills");
        child.wait().expect("is gone");
        let written = std::fs::read_to_string(lines).unwrap();
        let kept = kept(&self.place.path(data));
        // Not the kill's doing if the practice was over first.
        assert!(kept.len() < self.whole.len(), "the kill came too late");
        assert!(kept.len() >= after_lines);
        assert_eq!(kept, self.whole[..kept.len()], "after {after_lines} lines: the record is not the practice's begin");
        let whole_lines = written.matches('\n').count();
        assert!(kept.len() - whole_lines <= 1, "{} kept, {whole_lines} written", kept.len());
        kept
    }
}

/// The lines in the database of a data folder, which must be sound.
fn kept(data: &Path) -> Vec<String> {
    let db = Connection::open(data.join(DATABASE_NAME)).expect("opens");
    let sound: String = db.query_row("PRAGMA integrity_check", [], |row| row.get(0)).expect("checks");
    assert_eq!(sound, "ok");
    let mut query = db.prepare("SELECT json FROM entry ORDER BY session, seq").expect("a query");
    query.query_map([], |row| row.get(0)).expect("reads").map(|line| line.expect("a line")).collect()
}

/// How each session of a data folder ended; none where it was left open.
fn ends(data: &Path) -> Vec<Option<String>> {
    let db = Connection::open(data.join(DATABASE_NAME)).expect("opens");
    let mut query = db.prepare("SELECT end_reason FROM session ORDER BY id").expect("a query");
    query.query_map([], |row| row.get(0)).expect("reads").map(|reason| reason.expect("a reason")).collect()
}

fn repetitions(entries: &[Value]) -> Vec<u64> {
    of_kind(entries, "repetition_done").iter().map(|entry| entry["repetition"].as_u64().expect("a number")).collect()
}

#[test]
#[ignore = "leads whole practices; tests/run.sh runs it"]
fn after_a_kill_yes_goes_on_at_the_right_repetition_and_no_starts_anew() {
    let scene = Scene::new();
    let (yes, no) = (scene.answers("yes"), scene.answers("no"));
    let mut answered_no = false;
    // The fourth line begins the first step: before it there is nothing to go on with.
    for after_lines in [4, 5, 7] {
        let data = format!("killed after {after_lines}");
        let lines = scene.place.path(&format!("{data}.jsonl"));
        let before = scene.killed(&data, &lines, after_lines, true).len();

        let done = output(scene.place.replay(&scene.routine, &yes, &data).arg("--journal").arg(&lines));
        assert!(done.status.success() && out(&done).contains("Last time we didn't get to the end"), "{}{}", out(&done), err(&done));
        let entries = journal(&lines);
        assert_eq!(of_kind(&entries[before..], "session_resumed").len(), 1, "{entries:#?}");
        assert_eq!(repetitions(&entries), (1..=REPETITIONS).collect::<Vec<_>>(), "each repetition once: {entries:#?}");
        let ended = entries.last().expect("entries");
        assert_eq!((ended["reason"].as_str(), ended["steps_done"].as_u64()), (Some("completed"), Some(2)), "{ended}");
        let step = of_kind(&entries, "step_done")[0];
        assert_eq!((number(step, "repetitions_done"), number(step, "repetitions_prescribed")), (6.0, 6.0));
        assert_eq!(ends(&scene.place.path(&data)), [Some("completed".into())]);
        assert_eq!(kept(&scene.place.path(&data)).len(), entries.len());

        if !answered_no {
            answered_no = true;
            let (data, lines) = ("refused", scene.place.path("refused.jsonl"));
            scene.killed(data, &lines, after_lines, true);
            // Nobody says "ready" after "no", so it is ended by hand once it has begun anew.
            let again = scene.place.path("again.jsonl");
            let mut child = scene.start(&no, data, &again, true);
            wait_for_lines(&again, 1, &mut child);
            child.kill().expect("kills");
            child.wait().expect("is gone");
            let begun = journal(&again);
            assert_eq!(begun[0]["kind"], "command_heard", "{begun:#?}");
            assert_eq!(ends(&scene.place.path(data)), [Some("abandoned".into()), None]);
        }
    }
}

#[test]
#[ignore = "leads whole practices; tests/run.sh runs it"]
fn a_practice_broken_off_in_the_cautions_is_begun_again_with_all_cautions() {
    let scene = Scene::new();
    let lines = scene.place.path("cautions.jsonl");
    // The first line is written when the cautions begin.
    let mut child = scene.start(&scene.ready, "cautions", &lines, false);
    wait_for_lines(&lines, 1, &mut child);

    // Another practice at the same time, in the same folder, is its own.
    let other = scene.place.path("other.jsonl");
    let done = output(scene.place.replay(&scene.routine, &scene.ready, "cautions").arg("--journal").arg(&other));
    assert!(done.status.success(), "{}{}", out(&done), err(&done));
    assert_eq!(std::fs::read_to_string(&other).unwrap().lines().collect::<Vec<_>>(), scene.whole);
    assert!(child.try_wait().expect("the child").is_none(), "the first practice is still under way");
    child.kill().expect("kills");
    child.wait().expect("is gone");
    assert_eq!(ends(&scene.place.path("cautions")), [None, Some("completed".into())]);

    let third = scene.place.path("third.jsonl");
    let done = output(scene.place.replay(&scene.routine, &scene.ready, "cautions").arg("--journal").arg(&third));
    assert!(done.status.success(), "{}{}", out(&done), err(&done));
    assert_eq!(std::fs::read_to_string(&third).unwrap().lines().collect::<Vec<_>>(), scene.whole);
}

#[test]
#[ignore = "leads whole practices; tests/run.sh runs it"]
fn a_demo_killed_leaves_a_sound_record() {
    let place = Place::new();
    let folder = place.path("demo");
    let mut command = tidecount(["demo", "--out"]);
    let mut child = command.arg(&folder).stdout(Stdio::null()).stderr(Stdio::null()).spawn().expect("starts");
    let lines = folder.join("journal.jsonl");
    wait_for_lines(&lines, 8, &mut child);
    child.kill().expect("kills");
    child.wait().expect("is gone");
    let text = std::fs::read_to_string(&lines).unwrap();
    let kept = kept(&folder.join("record"));
    let written: Vec<&str> = text.split_inclusive('\n').filter_map(|line| line.strip_suffix('\n')).collect();
    assert!(written.len() >= 8 && kept.len() - written.len() <= 1, "{} kept, {} written", kept.len(), written.len());
    assert_eq!(kept[..written.len()], written);
}
