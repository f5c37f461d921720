use super::*;
use clap::Parser;
use model::{Entry, Fact, Position, Source};
use record::{Journal, NewSession};

#[derive(Parser)]
struct Typed {
    #[command(flatten)]
    args: AssessArgs,
}

fn typed(words: &[&str]) -> AssessArgs {
    Typed::try_parse_from(std::iter::once("assess").chain(words.iter().copied())).expect("arguments").args
}

fn hold(seq: u32, duration_s: f64) -> Entry {
    let fact = Fact::HoldMeasured {
        exercise: "long-ah".into(),
        onset_s: 1.0,
        offset_s: 1.0 + duration_s,
        duration_s,
        f0_median_hz: 150.0,
        f0_span_st: 1.0,
        f0_sd_st: Some(0.2),
        level_mean_db: -30.0,
        level_fall_db: 0.0,
        level_slope_db_per_s: Some(0.0),
        level_weighting: "A".into(),
        level_calibrated: false,
        level_terms: Some(model::LevelTerms::default()),
        quality: None,
        climb: None,
        breaks: 0,
        masked_s: 0.0,
        complete: true,
    };
    Entry { at_s: 20.0 * f64::from(seq), position: Some(Position { step: 1, set: 1, repetition: seq }), fact }
}

fn keep(folder: &Path, started: &str, protocol: Option<&str>, holds: [f64; 3]) {
    let new = NewSession {
        client: "grandma",
        routine_title: "Voice baseline",
        routine_text: VOICE.text,
        source: Source::Live,
        protocol,
        software: "test",
        started_at: &started.parse().expect("a time"),
    };
    let mut journal = Journal::begin(Store::open(folder).expect("opens"), &new, None).expect("begins");
    let begun = Fact::SessionBegun { routine: "Voice baseline".into(), steps: 7, software: "test".into() };
    journal.append(&Entry { at_s: 0.0, position: None, fact: begun }).expect("keeps");
    for (seq, held_s) in (1..).zip(holds) {
        journal.append(&hold(seq, held_s)).expect("keeps");
    }
}

#[test]
fn baselines_stand_apart_from_practice_and_a_re_test_beside_the_first() {
    let dir = tempfile::tempdir().expect("a folder");
    keep(dir.path(), "2026-01-02T10:00:00+01:00[Europe/Berlin]", Some("voice-1"), [9.5, 11.0, 10.0]);
    keep(dir.path(), "2026-03-02T10:00:00+01:00[Europe/Berlin]", Some("voice-1"), [12.0, 14.5, 13.0]);
    keep(dir.path(), "2026-03-02T16:00:00+01:00[Europe/Berlin]", Some("voice-1"), [9.5, 11.02, 10.0]);
    keep(dir.path(), "2026-03-03T10:00:00+01:00[Europe/Berlin]", None, [7.0, 7.0, 7.0]);
    let today: Date = "2026-03-04".parse().expect("a date");
    let text = shown(&typed(&["--show", "--age", "74", "--sex", "woman"]), dir.path(), today).expect("shows");
    assert_eq!(text.matches("Voice baseline of grandma").count(), 3, "{text}");
    assert!(text.contains("Long ah, hold time: 14.5 s, the best of 12.0, 14.5, 13.0."), "{text}");
    assert!(text.contains("Published: mean 21.0 s (standard error 0.9)") && text.contains("median 12 s"), "{text}");
    assert!(text.contains("Against 2 Jan 2026: 3.5 s more."), "{text}");
    assert!(text.contains("Against 2 Jan 2026: the same.") && !text.contains("0.0 s more"), "{text}");
    assert!(!text.contains("7.0"), "a practice is no baseline: {text}");
    let store = Store::open(dir.path()).expect("opens");
    assert_eq!(store.practised("grandma", today).expect("reads").practices.len(), 1, "and a baseline is no practice");
    assert_eq!(store.kept_heads(Some("grandma")).expect("reads").len(), 1);
}

#[test]
fn without_an_age_none_is_made_up_and_without_a_baseline_it_says_how_to_get_one() {
    let dir = tempfile::tempdir().expect("a folder");
    let today: Date = "2026-03-04".parse().expect("a date");
    assert!(shown(&typed(&["--show"]), dir.path(), today).is_err());
    keep(dir.path(), "2026-03-03T10:00:00+01:00[Europe/Berlin]", None, [7.0, 7.0, 7.0]);
    let none = shown(&typed(&["--show"]), dir.path(), today).expect_err("none").to_string();
    assert!(none.contains("tidecount assess --client grandma"), "{none}");
    keep(dir.path(), "2026-03-03T12:00:00+01:00[Europe/Berlin]", Some("voice-1"), [7.0, 8.0, 7.0]);
    let text = shown(&typed(&["--show"]), dir.path(), today).expect("shows");
    assert!(text.contains("give the age with --age") && !text.contains("Published:"), "{text}");
    let lines = shown(&typed(&["--show", "--json"]), dir.path(), today).expect("shows");
    let line: serde_json::Value = serde_json::from_str(lines.trim()).expect("JSON");
    assert_eq!(line["readings"][0]["value"], 8.0);
}
