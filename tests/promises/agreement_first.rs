//! Promise: before a client's first session the cautions are gone through and a clinician's agreement is asked for; without
//! it the exercises that need it are left out. What hurts is recorded and stops the exercise.

#[path = "../support/program.rs"]
mod program;
#[path = "../support/rehearsal.rs"]
mod rehearsal;

use program::of_kind;
use record::Source;
use rehearsal::{Led, RATE_HZ, Scene, lead};
use rehearse::RoomSpec;
use std::path::Path;

const ROUTINE: &str = r#"
title = "Swallows"
[[step]]
exercise = "effortful-swallow"
cautions_acknowledged = true
repetitions = 1
[[step]]
exercise = "rest"
length_s = 1
"#;

/// Answers the question for agreement with `answer`, is ready and done.
fn client(answer: &str) -> String {
    format!(
        r#"
seed = 4
reaction_s = [1.0, 1.5]
voice = {{ name = "rms", speed = 0.9, level_db = -26.0 }}
[[rule]]
on = ["ask-agreement", "ask-agreement-again"]
does = [{answer}]
[[rule]]
on = "ask-ready*"
does = [{{ say = "ready" }}]
[[rule]]
on = ["ex-effortful-swallow-cue", "done-*"]
does = [{{ swallow = 2.0 }}, {{ say = "done" }}]
"#
    )
}

fn practise(folder: &Path, name: &str, source: Source, answer: &str) -> Led {
    let client = client(answer);
    lead(&Scene { routine: ROUTINE, client: &client, room: RoomSpec::living_room(RATE_HZ), source, folder, name })
}

const YES: &str = "{ say = \"yes\" }";
const NO: &str = "{ say = \"no\" }";

fn left_out(led: &Led) -> Vec<&str> {
    of_kind(&led.journal, "step_left_out").iter().filter_map(|entry| entry["exercise"].as_str()).collect()
}

fn done(led: &Led) -> Vec<&str> {
    of_kind(&led.journal, "step_done").iter().filter_map(|entry| entry["exercise"].as_str()).collect()
}

#[test]
#[ignore = "leads whole practices; tests/run.sh runs it"]
fn without_a_yes_it_is_left_out_and_a_yes_is_kept_for_the_next_session() {
    let dir = tempfile::tempdir().expect("a folder");
    // A recording's "yes" is not the client's.
    let led = practise(dir.path(), "recording", Source::Replay, YES);
    assert_eq!(done(&led), ["effortful-swallow", "rest"], "{:#?}", led.journal);
    for (name, answer) in [("no", NO), ("silence", "\"nothing\"")] {
        let led = practise(dir.path(), name, Source::Live, answer);
        assert_eq!(led.said("ask-agreement"), 1, "{name}");
        let agreement = of_kind(&led.journal, "agreement");
        assert_eq!(agreement.len(), 1, "{name}: {:#?}", led.journal);
        assert_eq!(agreement[0]["given"], false);
        assert_eq!(left_out(&led), ["effortful-swallow"], "{name}");
        assert_eq!(done(&led), ["rest"], "{name}");
        let ended = led.journal.last().expect("entries");
        assert_eq!((ended["steps_done"].as_u64(), ended["steps_prescribed"].as_u64()), (Some(1), Some(2)), "{name}: {ended}");
        if name == "no" {
            assert_eq!((led.said("aid-notice"), led.said("cautions-first")), (1, 1), "the first session");
            assert!(led.said("ex-effortful-swallow-before") == 1, "{:#?}", led.said);
        }
    }
    let led = practise(dir.path(), "yes", Source::Live, YES);
    assert_eq!(led.said("ask-agreement"), 1);
    assert_eq!(of_kind(&led.journal, "agreement")[0]["given"], true);
    assert_eq!(done(&led), ["effortful-swallow", "rest"], "{:#?}", led.journal);

    let led = practise(dir.path(), "next", Source::Live, NO);
    assert_eq!((led.said("ask-agreement"), led.said("aid-notice")), (0, 0));
    assert_eq!((left_out(&led), done(&led)), (vec![], vec!["effortful-swallow", "rest"]));
}

#[test]
#[ignore = "leads whole practices; tests/run.sh runs it"]
fn dizzy_hurts_and_help_stop_the_exercise_say_what_to_do_and_are_recorded() {
    let routine = r#"
title = "Shoulders"
[[step]]
exercise = "tongue-side-to-side"
repetitions = 3
next_cue_after_s = 6
[[step]]
exercise = "shoulder-rolls"
repetitions = 3
next_cue_after_s = 6
[[step]]
exercise = "functional-phrases"
phrases = ["good morning to you"]
"#;
    let client = r#"
seed = 6
reaction_s = [1.0, 1.5]
voice = { name = "rms", speed = 0.9, level_db = -26.0 }
[[rule]]
on = "ask-ready*"
does = [{ say = "ready" }]
[[rule]]
on = "ex-tongue-side-to-side-cue"
does = [{ say = "it hurts" }]
[[rule]]
on = "ex-shoulder-rolls-cue"
does = [{ say = "i'm dizzy" }]
[[rule]]
on = "read-phrase"
nth = [1]
does = [{ say = "help me" }]
[[rule]]
on = "read-phrase"
does = [{ read = "phrase" }]
[[rule]]
on = ["unwell-go-on", "help-go-on", "halted-reminder"]
does = [{ say = "go on" }]
"#;
    let dir = tempfile::tempdir().expect("a folder");
    let room = RoomSpec::living_room(RATE_HZ);
    let led = lead(&Scene { routine, client, room, source: Source::Rehearsal, folder: dir.path(), name: "unwell" });
    let stops: Vec<(&str, u64)> =
        of_kind(&led.journal, "safety_stop").iter().map(|e| (e["reason"].as_str().unwrap(), e["step"].as_u64().unwrap())).collect();
    assert_eq!(stops, [("pain", 1), ("dizzy", 2), ("help", 3)], "{:#?}", led.journal);
    for key in ["unwell-dizzy", "unwell-pain", "help"] {
        assert_eq!(led.said(key), 1, "{key}");
    }
    let stopped: Vec<_> = of_kind(&led.journal, "step_stopped").iter().map(|e| (e["step"].as_u64(), e["reason"].as_str())).collect();
    assert_eq!(stopped, [(Some(1), Some("pain")), (Some(2), Some("dizzy"))]);
    let ended = led.journal.last().expect("entries");
    assert_eq!((ended["steps_done"].as_u64(), ended["reason"].as_str()), (Some(1), Some("completed")), "{ended}");
}

/// Whoever practises for the first time is asked about each guarded exercise within a minute, or little more where there are four with long lists,
/// and each block names its exercise.
#[test]
#[ignore = "leads whole practices; tests/run.sh runs it"]
fn the_demos_cautions_are_short_and_name_their_exercises() {
    let client = r#"
seed = 4
reaction_s = [1.0, 2.0]
voice = { name = "rms", speed = 0.9, level_db = -26.0 }
[[rule]]
on = ["ask-agreement", "ask-agreement-again"]
does = [{ say = "yes" }]
[[rule]]
on = "ask-ready*"
does = [{ say = "finish for today" }]
"#;
    let words = speak::Words::english().expect("the catalogue");
    // The swallow practice guards each of its four exercises, and they have the longest lists.
    for (routine, within_s) in [("evening", 60.0), ("voice-short", 60.0), ("stretch", 60.0), ("swallow", 80.0)] {
        let text = std::fs::read_to_string(format!("{}/demo/{routine}.toml", env!("CARGO_MANIFEST_DIR"))).expect("reads");
        let dir = tempfile::tempdir().expect("a folder");
        let room = RoomSpec::living_room(RATE_HZ);
        let led = lead(&Scene { routine: &text, client, room, source: Source::Live, folder: dir.path(), name: routine });
        let at_s = |wanted: &dyn Fn(&str) -> bool| led.said.iter().filter(|line| wanted(&line.1)).map(|line| line.0).collect::<Vec<_>>();
        let began_s = at_s(&|key| key == "cautions-first");
        let asked_s = at_s(&|key| key == "ask-agreement");
        // What comes behind the last answer.
        let over_s = led.said.iter().map(|line| line.0).find(|at_s| asked_s.last().is_some_and(|asked_s| at_s > asked_s));
        if let (Some(began_s), Some(over_s)) = (began_s.first(), over_s) {
            println!("{routine}: {:.1} s", over_s - began_s);
            assert!(over_s - began_s < within_s, "{routine}: {} s", over_s - began_s);
        }
        let guarded: Vec<_> =
            led.said.iter().filter_map(|line| Some((line.1.strip_prefix("ex-")?.strip_suffix("-before")?, &line.2))).collect();
        assert_eq!(guarded.len(), asked_s.len(), "{routine}: {:#?}", led.said);
        let least = match routine {
            "evening" => 1,
            "swallow" => 4,
            _ => 0,
        };
        assert!(guarded.len() >= least, "{routine}: guarded exercises");
        for (id, said) in guarded {
            let name = words.text(&session::Line { key: format!("ex-{id}-name"), args: Vec::new() }).expect("a name");
            assert!(said.to_lowercase().contains(&name.to_lowercase()), "{routine}: {id}: {said}");
        }
    }
}
