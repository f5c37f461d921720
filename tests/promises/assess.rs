//! Promise: a baseline is led hands-free from its first vowel to its last syllable, its figures are those of what the client really did,
//! and it stands apart from practice.

#[path = "../support/rehearsal.rs"]
mod rehearsal;

use jiff::ZonedDateTime;
use model::Measure;
use progress::{Assessment, assessments};
use record::{Source, Store};
use rehearsal::{RATE_HZ, Scene, lead_protocol};
use rehearse::RoomSpec;
use routine::VOICE;

const CLIENT: &str = r#"
seed = 5
reaction_s = [0.8, 1.4]
voice = { name = "rms", speed = 0.95, level_db = -26.0 }
[[rule]]
on = ["ask-ready*", "ask-position", "ask-rest-over", "wait-for-ready", "ready-not-understood"]
does = [{ say = "i'm ready" }]
[[rule]]
on = "ex-long-ah-cue"
nth = [2]
does = [{ breath = 1.2 }, { hold = { f0_hz = 118.0, length_s = 11.0, level_db = -27.0 } }]
[[rule]]
on = "ex-long-ah-cue"
does = [{ breath = 1.2 }, { hold = { f0_hz = 118.0, length_s = 9.0, level_db = -27.0 } }]
[[rule]]
on = "ex-comfortable-ah-cue"
does = [{ breath = 1.0 }, { hold = { f0_hz = 125.0, length_s = 5.0, level_db = -28.0 } }]
[[rule]]
on = "ex-glide-up-cue"
does = [{ breath = 1.0 }, { glide = { from_hz = 110.0, to_hz = 220.0, length_s = 3.5, level_db = -27.0 } }]
[[rule]]
on = "ex-glide-down-cue"
does = [{ breath = 1.0 }, { glide = { from_hz = 220.0, to_hz = 110.0, length_s = 3.5, level_db = -27.0 } }]
[[rule]]
on = "ex-reading-passage-cue"
does = [
    { say = "A dispute arose between the north wind and the sun, each claiming that he was stronger than the other" },
    { wait = 0.8 },
    { say = "At last they agreed to try their powers upon a traveller, to see which could soonest strip him of his cloak" },
    { wait = 0.8 },
    { say = "The north wind had the first try, and he came whirling furiously down upon the man, and caught up his cloak" },
    { wait = 0.8 },
    { say = "At first the sun beamed gently upon the traveller, who soon unclasped his cloak, and walked on with it hanging about him" },
]
[[rule]]
on = "talk-prompt"
does = [
    { say = "We went to the sea that summer, the five of us, and the weather was good all week" },
    { wait = 1.2 },
    { say = "In the morning we walked along the beach, and we picked up shells of every colour" },
    { wait = 1.2 },
    { say = "My sister had a red hat, and the wind took it, and it sailed away like a boat" },
    { wait = 1.2 },
    { say = "We laughed about that for years, and she never bought another hat in her life" },
    { wait = 1.2 },
    { say = "In the evening we cooked potatoes on a fire, and our father told us about the stars" },
    { wait = 1.2 },
    { say = "There was a dog that followed us, a brown one, and it slept beside the tent each night" },
    { wait = 1.2 },
    { say = "I think of that week when the days are short, and it makes me warm" },
    { wait = 1.2 },
    { say = "We always wanted to travel there again, and perhaps one day my grandchildren will" },
    { wait = 1.2 },
    { say = "That is what I remember best, the sea and the fire and all of us together" },
    { wait = 1.2 },
    { say = "And the bread that my mother baked in a pan, which tasted of smoke and salt" },
]
[[rule]]
on = "ex-syllable-repetition-cue"
does = [{ breath = 1.0 }, { syllables = { rate_hz = 5.0, length_s = 5.0, f0_hz = 120.0 } }]
"#;

fn value(one: &Assessment, exercise: &str, measure: Measure) -> f64 {
    let of_it = |reading: &&progress::Reading| reading.exercise == exercise && reading.measure == measure;
    one.readings.iter().find(of_it).unwrap_or_else(|| panic!("{exercise} {measure:?} in {:#?}", one.readings)).value
}

#[test]
#[ignore = "leads whole practices; tests/run.sh runs it"]
fn it_leads_every_task_and_measures_what_was_done() {
    let dir = tempfile::tempdir().expect("a folder");
    let room = RoomSpec::living_room(RATE_HZ);
    let scene = Scene { routine: VOICE.text, client: CLIENT, room, source: Source::Live, folder: dir.path(), name: "baseline" };
    let led = lead_protocol(&scene, Some(VOICE.name));
    let ended = led.journal.last().expect("entries");
    assert_eq!((ended["reason"].as_str(), ended["steps_done"].as_u64()), (Some("completed"), Some(7)), "{:#?}", led.said);
    assert_eq!(led.said("talk-read-on"), 0, "the passage was read to its end");

    let store = Store::open(&dir.path().join("record")).expect("opens");
    let today = ZonedDateTime::now().date();
    let all = assessments(&store.assessed("client", today).expect("reads"));
    assert_eq!((all.len(), all[0].whole), (1, true));
    let one = &all[0];
    let held_s = value(one, "long-ah", Measure::HoldS);
    assert!((held_s - 11.0).abs() < 0.2, "the best of three: {held_s}");
    let f0_hz = value(one, "comfortable-ah", Measure::F0MedianHz);
    assert!((f0_hz - 125.0).abs() < 3.0, "{f0_hz}");
    for glide in ["glide-up", "glide-down"] {
        // The 5th to the 95th percentile of an octave.
        let span_st = value(one, glide, Measure::F0SpanSt);
        assert!((9.0..=12.5).contains(&span_st), "{glide}: {span_st}");
    }
    let rate_hz = value(one, "syllable-repetition", Measure::SyllableRateHz);
    assert!((rate_hz - 5.0).abs() < 0.3, "{rate_hz}");
    // Nine rests of 1.2 s in the talk, if it was heard to its end, and what lies between the words.
    let pauses_pct = value(one, "talk-on-a-prompt", Measure::PauseSharePct);
    assert!((10.0..60.0).contains(&pauses_pct), "{pauses_pct}");
    assert!(value(one, "talk-on-a-prompt", Measure::TalkLevelDb).is_finite());
    assert!(value(one, "reading-passage", Measure::TalkF0Hz) > 60.0);
    let talked_s = led.journal.iter().find(|entry| entry["kind"] == "talked" && entry["prompt"].is_string()).expect("a talk");
    assert!((50.0..70.0).contains(&talked_s["duration_s"].as_f64().expect("a number")), "{talked_s}");

    assert!(store.practised("client", today).expect("reads").practices.is_empty(), "it is no practice");
}
