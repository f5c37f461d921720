//! What an engine says and does, led through one exercise, stands on the page.

use super::*;
use hear::HoldSettings;
use routine::{Hearing, check_text};
use serde_json::Value;
use session::Position;

const ROUTINE: &str = r#"
title = "Evening"
client = "client"
[[step]]
exercise = "long-ah"
repetitions = 3
target_s = 12
[[step]]
exercise = "high-ee"
[[step]]
exercise = "nasal-breathing"
in = 3
out = 8
"#;

fn began(class: bool) -> (LiveHub, WebFollower) {
    let hub = LiveHub::new();
    let mut follower = WebFollower::new(hub.clone(), Words::english().expect("the catalogue"));
    let routine = check_text("routine", ROUTINE, Hearing::default()).expect("a routine").routine;
    let usual = [
        ("long-ah".to_owned(), UsualVoice { level_db: Some(-30.0), f0_hz: Some(110.0), ..UsualVoice::default() }),
        ("high-ee".to_owned(), UsualVoice { f0_hz: Some(220.0), ..UsualVoice::default() }),
    ];
    follower.begins(&Beginning { routine: &routine, usual: &BTreeMap::from(usual), class, by_page: false });
    (hub, follower)
}

fn state(hub: &LiveHub) -> Value {
    serde_json::from_str(&hub.whole()).expect("JSON")
}

fn view(follower: &mut WebFollower, exercise: &str, prompt: &str, shown: (&str, &str, &[&str])) {
    let args = vec![("name", Arg::Message(format!("ex-{exercise}-name")))];
    let view = View {
        heading: Some(Line { key: "heading-step".into(), args }),
        prompt: Some(Line { key: prompt.into(), args: Vec::new() }),
        ..View::default()
    };
    follower.viewed(0.0, &view);
    let (prompt, figure, can_say) = shown;
    let can_say = can_say.iter().map(|label| Offer { name: label.replace(' ', "-"), label: (*label).into() }).collect();
    follower.shown(
        0.0,
        &ShownView {
            heading: format!("{exercise} · 2 of 3"),
            prompt: prompt.into(),
            figure: figure.into(),
            can_say,
            ..ShownView::default()
        },
    );
}

fn listen(follower: &mut WebFollower, commands: &[Command], voice: VoiceTask) {
    let names: Vec<Offer> = commands.iter().map(|command| follower.command(*command)).collect();
    follower.listens(
        0.0,
        // As the engine gives it.
        &Listening {
            commands: listening::with_safety(commands),
            answers: Vec::new(),
            worded: Vec::new(),
            list: false,
            multiword_only: false,
            voice,
        },
        &names,
    );
}

const HOLD: VoiceTask = VoiceTask::Hold(HoldSettings { min_s: 1.0, max_break_s: 0.3, glide: false });

fn line(key: &str) -> Line {
    Line { key: key.into(), args: Vec::new() }
}

#[test]
fn a_hold_is_shown_with_its_goal_and_bar() {
    let (hub, mut follower) = began(false);
    assert_eq!((&state(&hub)["stage"]["phase"], &state(&hub)["stage"]["heading"]), (&"starting".into(), &"Evening".into()));
    view(&mut follower, "long-ah", "cue-words-shown", ("Strong voice", "", &["skip", "stop"]));
    let cued = state(&hub);
    assert_eq!((&cued["bar"]["kind"], &cued["bar"]["active"]), (&"level".into(), &false.into()));
    assert_eq!(cued["offers"]["now"], serde_json::json!([{ "name": "skip", "label": "skip" }]));
    assert_eq!(cued["offers"]["always"], serde_json::json!([{ "name": "stop", "label": "stop" }, { "name": "pause", "label": "pause" }]));
    listen(&mut follower, listening::BEFORE_ONSET, HOLD);
    listen(&mut follower, listening::HOLDING, HOLD);
    view(&mut follower, "long-ah", "cue-words-shown", ("Strong voice", "6", &["skip", "stop"]));
    for n in 0..100 {
        let frame = VoiceFrame { t_s: f64::from(n) * 0.01, level_db: -30.0, f0_hz: 115.0, periodicity: 0.9, voiced: true, masked: false };
        follower.voice(&frame, LevelScale::default());
    }
    let held = state(&hub);
    assert_eq!(
        (&held["stage"]["heading"], &held["stage"]["part"], &held["stage"]["prompt"]),
        (&"long-ah".into(), &"2 of 3".into(), &"Strong voice".into())
    );
    assert_eq!(
        (&held["figure"]["text"], &held["figure"]["of"], &held["figure"]["share"]),
        (&"6".into(), &"of 12 seconds".into(), &0.5.into())
    );
    assert_eq!(
        (&held["bar"]["goal"], &held["meter"]["at"], &held["meter"]["words"]),
        (&0.5.into(), &0.5.into(), &"as loud as usual".into())
    );
    assert_eq!(held["mood"]["name"], "holding");
    listen(&mut follower, listening::READY, VoiceTask::Idle);
    assert_eq!((&state(&hub)["bar"]["active"], &state(&hub)["meter"]["at"]), (&false.into(), &Value::Null));
}

#[test]
fn a_high_vowel_has_a_pitch_bar_and_counting_none() {
    let (hub, mut follower) = began(false);
    view(&mut follower, "high-ee", "ex-high-ee-cue", ("A high ee", "", &["stop"]));
    let shown = state(&hub);
    assert_eq!(shown["bar"]["kind"], "pitch");
    // An octave over the usual voice: a third and a third again of the three octaves of the bar.
    assert_eq!((&shown["bar"]["base"], &shown["bar"]["goal"]), (&0.333.into(), &0.667.into()));
    view(&mut follower, "nasal-breathing", "paced-out", ("Out", "5", &["slower", "stop"]));
    let shown = state(&hub);
    assert_eq!((&shown["bar"]["kind"], &shown["figure"]["of"]), (&"none".into(), &"of 8".into()));
}

#[test]
fn what_the_body_does_is_shown_and_told() {
    let (hub, mut follower) = began(false);
    let shown = || state(&hub)["picture"].clone();
    assert_eq!(shown()["name"], "");
    view(&mut follower, "nasal-breathing", "paced-in", ("In", "2", &["stop"]));
    assert_eq!(shown()["name"], "nasal-breathing-in");
    assert_eq!(shown()["described"], "A person with a closed mouth breathes in through the nose.");
    view(&mut follower, "nasal-breathing", "help-shown", ("Help", "", &["go on"]));
    assert_eq!(shown()["name"], "");
    follower.line_began(1.0, &line("rise-sit"), "Push yourself up until you sit.");
    assert_eq!(shown()["name"], "rise-sit");
    let ended = Fact::SessionEnded { reason: "finished".into(), steps_done: 1, steps_prescribed: 3, duration_s: 9.0 };
    follower.kept(&Entry { at_s: 9.0, fact: ended, position: None });
    assert_eq!(shown()["name"], "");
}

#[test]
fn nobody_in_a_class_is_measured() {
    let (hub, mut follower) = began(true);
    view(&mut follower, "long-ah", "ex-long-ah-cue", ("A long ah", "3", &["stop"]));
    listen(&mut follower, listening::CLASS_RUNNING, VoiceTask::Idle);
    assert_eq!((&state(&hub)["bar"]["kind"], &state(&hub)["meter"]["at"]), (&"none".into(), &Value::Null));
}

#[test]
fn every_line_is_captioned_and_counts_are_not_read_out() {
    let (hub, mut follower) = began(false);
    follower.line_began(1.0, &line("greeting"), "Evening. Three exercises, about five minutes.");
    assert_eq!(state(&hub)["mood"]["name"], "speaking");
    follower.line_ended(4.0, &line("greeting"), "");
    follower.line_began(5.0, &line("count"), "Seven");
    follower.line_ended(5.4, &line("count"), "");
    follower.heard(6.0, "ready");
    let shown = state(&hub);
    let rows: Vec<&str> = shown["rows"].as_array().expect("rows").iter().filter_map(|row| row["text"].as_str()).collect();
    assert_eq!(rows, ["Evening. Three exercises,", "about five minutes.", "You: “ready”"]);
    let said: Vec<&str> = shown["said"].as_array().expect("lines").iter().filter_map(|row| row["text"].as_str()).collect();
    assert_eq!(said, ["Evening. Three exercises, about five minutes.", "You: “ready”"]);
}

#[test]
fn the_end_stands_there_with_what_was_done() {
    let (hub, mut follower) = began(false);
    view(&mut follower, "long-ah", "ex-long-ah-cue", ("A long ah", "", &["stop"]));
    let at = Some(Position { step: 1, set: 1, repetition: 3 });
    let entry = |fact, position| Entry { at_s: 9.0, fact, position };
    follower.kept(&entry(Fact::StepDone { exercise: "long-ah".into(), repetitions_done: 3, repetitions_prescribed: 3 }, at));
    follower.kept(&entry(Fact::SessionEnded { reason: "finished".into(), steps_done: 1, steps_prescribed: 3, duration_s: 9.0 }, None));
    let over = state(&hub);
    assert_eq!((&over["stage"]["phase"], &over["stage"]["prompt"]), (&"over".into(), &"1 of 3 exercises done".into()));
    assert_eq!(over["done"], serde_json::json!([{ "name": "Long ah", "done": "3 of 3" }]));
    assert_eq!(over["offers"]["always"], serde_json::json!([]));
    assert!(hub.ask(Asked::Command("stop".into())).is_err());
    drop(follower);
    assert_eq!(state(&hub)["stage"]["prompt"], "1 of 3 exercises done");
}

#[test]
fn a_practice_that_breaks_off_says_so() {
    let (hub, follower) = began(false);
    drop(follower);
    assert_eq!(state(&hub)["stage"]["phase"], "over");
    assert!(state(&hub)["stage"]["prompt"].as_str().expect("words").contains("cut short"));
}

/// The bar runs while a phrase is read, and rests while it waits for a word.
#[test]
fn the_bar_is_active_in_the_clients_turn_to_read() {
    let hub = LiveHub::new();
    let mut follower = WebFollower::new(hub.clone(), Words::english().expect("the catalogue"));
    let text = "title = \"Phrases\"\n[[step]]\nexercise = \"functional-phrases\"\nphrases = [\"good morning to you\"]\n";
    let routine = check_text("routine", text, Hearing::default()).expect("a routine").routine;
    follower.begins(&Beginning { routine: &routine, usual: &BTreeMap::new(), class: false, by_page: false });
    view(&mut follower, "functional-phrases", "read-phrase-shown", ("good morning to you", "", &["skip", "stop"]));
    listen(&mut follower, listening::READING, VoiceTask::Speech { end_pause_s: 1.0 });
    assert_eq!(state(&hub)["bar"]["active"], true, "{}", state(&hub)["bar"]);
    listen(&mut follower, listening::READY, VoiceTask::Speech { end_pause_s: 1.0 });
    assert_eq!(state(&hub)["bar"]["active"], false, "{}", state(&hub)["bar"]);
}
