//! Promise: steps of loudness and pitch, the melody and the pace of sentences, and what is done against resistance are led through the
//! real ears; each step is measured against the one before, and two knocks stand for "done" after a swallow.

#[path = "../support/rehearsal.rs"]
mod rehearsal;

use record::Source;
use rehearsal::{Led, RATE_HZ, Scene, lead};
use rehearse::RoomSpec;
use serde_json::{Value, json};

const ROUTINE: &str = r#"
title = "Steps"
client = "client"
feedback_every = 1
[[step]]
exercise = "loudness-steps"
sets = 1
[[step]]
exercise = "pitch-steps"
sets = 1
[[step]]
exercise = "sentence-melody"
phrases = ["You're going home?", "You're going home.", "It's raining outside?"]
[[step]]
exercise = "sentence-stress"
phrases = ["The red cup, not the blue one."]
[[step]]
exercise = "paced-phrases"
phrases = ["Good morning to you all"]
[[step]]
exercise = "tongue-against-spoon"
cautions_acknowledged = true
repetitions = 1
[[step]]
exercise = "lips-around-spoon"
repetitions = 1
[[step]]
exercise = "effortful-swallow"
repetitions = 2
cautions_acknowledged = true
[[step]]
exercise = "breath-out-resistance"
repetitions = 2
setting = "two turns of the dial"
cautions_acknowledged = true
[[step]]
exercise = "voluntary-cough"
repetitions = 2
setting = "one cough at a time"
cautions_acknowledged = true
"#;

/// Soft to medium is 6 dB, medium to strong 6 dB; low to middle 4 semitones, middle to high only half of one.
const CLIENT: &str = r#"
seed = 11
reaction_s = [0.8, 1.4]
voice = { name = "rms", speed = 0.95, level_db = -26.0 }
[[rule]]
on = ["ask-agreement", "ask-agreement-again", "ask-confirm"]
does = [{ say = "yes" }]
[[rule]]
on = ["ask-ready*", "ask-position", "wait-for-ready", "ready-not-understood"]
does = [{ say = "i'm ready" }]
[[rule]]
on = "ex-loudness-steps-rung-low"
does = [{ breath = 1.0 }, { hold = { f0_hz = 120.0, length_s = 3.0, level_db = -34.0 } }]
[[rule]]
on = "ex-loudness-steps-rung-middle"
does = [{ breath = 1.0 }, { hold = { f0_hz = 120.0, length_s = 3.0, level_db = -28.0 } }]
[[rule]]
on = "ex-loudness-steps-rung-high"
does = [{ breath = 1.0 }, { hold = { f0_hz = 120.0, length_s = 3.0, level_db = -22.0 } }]
[[rule]]
on = "ex-pitch-steps-rung-low"
does = [{ breath = 1.0 }, { hold = { f0_hz = 110.0, length_s = 3.0, level_db = -27.0 } }]
[[rule]]
on = "ex-pitch-steps-rung-middle"
does = [{ breath = 1.0 }, { hold = { f0_hz = 138.6, length_s = 3.0, level_db = -27.0 } }]
[[rule]]
on = "ex-pitch-steps-rung-high"
does = [{ breath = 1.0 }, { hold = { f0_hz = 142.7, length_s = 3.0, level_db = -27.0 } }]
[[rule]]
on = "read-phrase"
hears = "home?"
does = [{ glide = { from_hz = 110.0, to_hz = 180.0, length_s = 1.4, level_db = -27.0 } }]
[[rule]]
on = "read-phrase"
hears = "home."
does = [{ glide = { from_hz = 150.0, to_hz = 95.0, length_s = 1.4, level_db = -27.0 } }]
[[rule]]
on = "read-phrase"
hears = "outside?"
does = [{ glide = { from_hz = 150.0, to_hz = 95.0, length_s = 1.4, level_db = -27.0 } }]
[[rule]]
on = "read-phrase"
hears = "morning"
does = [{ wait = 4.5 }, { read = "phrase" }]
[[rule]]
on = "read-phrase"
does = [{ read = "phrase" }]
[[rule]]
on = "ex-effortful-swallow-cue"
does = [{ swallow = 2.0 }, "knock"]
[[rule]]
on = "ex-breath-out-resistance-cue"
does = [{ breath = 2.0 }, { say = "done" }]
[[rule]]
on = "ex-voluntary-cough-cue"
does = ["cough", { wait = 1.5 }, "knock"]
[[rule]]
on = ["done-again", "done-once-more", "done-not-understood"]
does = [{ say = "i'm done" }]
"#;

fn all<'a>(led: &'a Led, kind: &str, exercise: &str) -> Vec<&'a Value> {
    led.journal.iter().filter(|entry| entry["kind"] == kind && entry["exercise"] == exercise).collect()
}

#[test]
#[ignore = "leads whole practices; tests/run.sh runs it"]
fn each_step_is_measured_against_the_one_before() {
    let dir = tempfile::tempdir().expect("a folder");
    let room = RoomSpec::living_room(RATE_HZ);
    let led = lead(&Scene { routine: ROUTINE, client: CLIENT, room, source: Source::Rehearsal, folder: dir.path(), name: "steps" });
    let ended = led.journal.last().expect("entries");
    assert_eq!((ended["reason"].as_str(), ended["steps_done"].as_u64()), (Some("completed"), Some(10)), "{:#?}", led.said);

    let climbs = |exercise: &str, field: &str| -> Vec<(Value, Option<f64>)> {
        let of = |entry: &&Value| (entry["climb"]["rung"].clone(), entry["climb"][field].as_f64());
        all(&led, "hold_measured", exercise).iter().map(of).collect()
    };
    let levels = climbs("loudness-steps", "step_db");
    let rungs: Vec<&Value> = levels.iter().map(|(rung, _)| rung).collect();
    assert_eq!(rungs, [&json!("low"), &json!("middle"), &json!("high"), &json!("middle")]);
    assert_eq!(levels[0].1, None, "the first has nothing to climb from");
    // Down to medium again counts as a step in the direction that was asked for.
    for (_, step_db) in &levels[1..] {
        assert!((step_db.expect("measured") - 6.0).abs() < 0.7, "{levels:?}");
    }
    let pitches = climbs("pitch-steps", "step_st");
    for ((_, step_st), wanted) in pitches[1..].iter().zip([4.0, 0.5, 0.5]) {
        assert!((step_st.expect("measured") - wanted).abs() < 0.3, "{pitches:?}");
    }
    let results: Vec<&(f64, String, String)> = led.said.iter().filter(|line| line.2.contains("steps were clear")).collect();
    assert_eq!(results.len(), 2, "{:#?}", led.said);
    assert!(results[0].2.contains("Three of three") && results[1].2.contains("One of three"), "{results:?}");

    let melody: Vec<f64> = all(&led, "phrase_read", "sentence-melody")
        .iter()
        .map(|entry| entry["prosody"]["f0_final_st"].as_f64().expect("measured"))
        .collect();
    assert!(melody.len() == 3 && melody[0] > 2.0 && melody[1] < -2.0 && melody[2] < -2.0, "{melody:?}");
    assert!(led.said.iter().any(|line| line.2.contains("Two of three went")), "the last question fell: {:#?}", led.said);
    let paced = all(&led, "phrase_read", "paced-phrases");
    assert!(paced.len() == 1 && paced[0]["prosody"]["syllable_rate_hz"].as_f64().is_some_and(|rate_hz| rate_hz > 0.5), "{paced:?}");
    assert!(all(&led, "phrase_read", "sentence-stress")[0]["prosody"]["f0_span_st"].as_f64().is_some_and(|span_st| span_st > 0.5));

    for exercise in ["tongue-against-spoon", "lips-around-spoon"] {
        assert!(all(&led, "posture_held", exercise).iter().all(|entry| entry["complete"] == true), "{exercise}");
    }
    for exercise in ["effortful-swallow", "breath-out-resistance", "voluntary-cough"] {
        assert_eq!(all(&led, "repetition_done", exercise).len(), 2, "{exercise}");
    }
    let knocks = led.journal.iter().filter(|entry| entry["kind"] == "command_heard" && entry["text"] == "two knocks").count();
    assert_eq!(knocks, 4, "two swallows and two coughs: {:#?}", led.said);
    assert!(led.said.iter().any(|line| line.2.contains("two turns of the dial")), "the setting is told");
}
