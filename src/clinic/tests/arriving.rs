use super::*;
use handover::HandedPart;
use model::Command;
use serde_json::value::RawValue;

fn part(started: &str, lines: &[&str]) -> HandedPart {
    let entries = lines.iter().map(|line| RawValue::from_string((*line).to_owned()).expect("JSON")).collect();
    HandedPart { started_at: started.into(), entries }
}

fn handed(parts: Vec<HandedPart>) -> HandedSession {
    HandedSession {
        number: 7,
        package: None,
        started_at: "2026-03-02T23:50:00+01:00[Europe/Berlin]".into(),
        ended_at: None,
        end_reason: None,
        routine_title: "Evening".into(),
        routine_text: String::new(),
        software: "tidecount 0.1.0".into(),
        parts,
    }
}

const BEGUN: &str = r#"{"at_s":0.0,"kind":"session_begun","routine":"Evening","steps":3,"software":"tidecount 0.1.0"}"#;
const STEP: &str = r#"{"at_s":1.0,"kind":"step_begun","step":1,"set":1,"repetition":1,"exercise":"long-ah"}"#;
const HOLD: &str = r#"{"at_s":20.0,"kind":"hold_measured","step":1,"set":1,"repetition":1,"exercise":"long-ah","onset_s":8.0,"offset_s":20.0,"duration_s":12.0,"f0_median_hz":0.0,"f0_span_st":0.5,"level_mean_db":70.0,"level_fall_db":null,"level_weighting":"A","level_calibrated":true,"level_terms":{"time_weighting":"energy-mean","distance_cm":30.0,"calibration":"meter","auto_gain":false,"clipped_s":0.5},"breaks":1,"masked_s":0.0,"complete":true}"#;
const NOISE: &str = r#"{"at_s":20.1,"kind":"hold_in_noise","step":1,"set":1,"repetition":1,"exercise":"long-ah","over_room_db":2.5}"#;
const DIZZY: &str = r#"{"at_s":30.0,"kind":"safety_stop","step":1,"set":1,"repetition":2,"exercise":"long-ah","reason":"dizzy"}"#;
const FIRST: &str = "2026-03-02T23:50:00+01:00[Europe/Berlin]";
const SECOND: &str = "2026-03-03T00:20:00+01:00[Europe/Berlin]";

#[test]
fn a_practice_becomes_trials_steps_and_events_with_their_conditions() {
    let session = arriving(&handed(vec![part(FIRST, &[BEGUN, STEP, HOLD]), part(SECOND, &[DIZZY])])).expect("reads");
    assert_eq!((session.entries, session.marks.len(), session.part_starts.len()), (4, 4 * MARK_BYTES, 2));
    assert_eq!((session.day.to_string().as_str(), session.practised_s, session.steps_prescribed), ("2026-03-02", 50.0, 3));
    let [trial] = session.trials.as_slice() else { panic!("{:?}", session.trials) };
    assert_eq!(
        (trial.kind, trial.seq, trial.part, trial.value(Measure::HoldS), trial.value(Measure::LevelDb), trial.value(Measure::LevelFallDb)),
        (TrialKind::Hold, 3, 1, Some(12.0), Some(70.0), None)
    );
    assert_eq!((trial.value(Measure::F0MedianHz), trial.value(Measure::F0SpanSt)), (None, None), "a pitch of 0 Hz could not be measured");
    assert_eq!(
        (trial.conditions.distance_cm, trial.conditions.level_weighting.as_deref(), trial.conditions.clipped_s),
        (Some(30.0), Some("A"), 0.5)
    );
    assert_eq!(trial.discarded, [(Measure::LevelDb, Discard::Clipped)], "only the level is in doubt");
    assert_eq!(
        session.steps,
        [StepResult { step: 1, exercise: "long-ah".into(), ramp_stage: None, done: 1, prescribed: None, stopped: None }]
    );
    let [event] = session.events.as_slice() else { panic!("{:?}", session.events) };
    assert_eq!((event.seq, event.kind, event.what.as_str(), event.day.to_string().as_str()), (4, EventKind::Safety, "dizzy", "2026-03-03"));
}

#[test]
fn a_warning_sign_is_an_event_unless_it_was_taken_back() {
    let sign = |at_s: u32, sign: &str, answer: &str| {
        format!("{{\"at_s\":{at_s}.0,\"kind\":\"swallow_sign\",\"sign\":\"{sign}\",\"answer\":\"{answer}\"}}")
    };
    let told = [
        sign(31, "cough at meals", "yes"),
        sign(32, "wet voice", "yes"),
        sign(33, "wet voice", "no"),
        sign(34, "weight loss", "not sure"),
        sign(35, "chest infection", "passed over"),
    ];
    let lines: Vec<&str> = [BEGUN].into_iter().chain(told.iter().map(String::as_str)).collect();
    let session = arriving(&handed(vec![part(FIRST, &lines)])).expect("reads");
    let events: Vec<_> = session.events.iter().map(|event| (event.kind, event.what.as_str())).collect();
    assert_eq!(events, [(EventKind::Sign, "cough at meals"), (EventKind::Sign, "weight loss (not sure)")]);
}

#[test]
fn what_follows_a_trial_may_spoil_it() {
    let session = arriving(&handed(vec![part(FIRST, &[BEGUN, STEP, HOLD, NOISE])])).expect("reads");
    let trial = &session.trials[0];
    assert_eq!((trial.conditions.in_noise, trial.conditions.over_room_db), (true, Some(2.5)));
    assert_eq!(trial.discarded, [(Measure::HoldS, Discard::InNoise), (Measure::LevelDb, Discard::InNoise)]);
}

#[test]
fn an_earlier_hand_back_is_the_beginning_of_a_later_one_and_of_nothing_else() {
    let marks = |parts: Vec<HandedPart>| arriving(&handed(parts)).expect("reads").marks;
    let whole = marks(vec![part(FIRST, &[BEGUN, STEP, HOLD]), part(SECOND, &[DIZZY])]);
    assert!(whole.starts_with(&marks(vec![part(FIRST, &[BEGUN, STEP])])));
    assert!(whole.starts_with(&marks(vec![part(FIRST, &[BEGUN, STEP, HOLD]), part(SECOND, &[])])));
    let spaced = HOLD.replace(",\"kind\"", ", \"kind\"");
    for other in [
        vec![part(FIRST, &[BEGUN, HOLD])],
        // A blank more: not byte for byte the same.
        vec![part(FIRST, &[BEGUN, STEP, &spaced])],
        // The same lines, but of another part.
        vec![part(FIRST, &[BEGUN, STEP, HOLD, DIZZY])],
        vec![part(SECOND, &[BEGUN, STEP, HOLD])],
    ] {
        assert!(!whole.starts_with(&marks(other)));
    }
}

#[test]
fn what_cannot_be_read_is_named() {
    let mut no_time = handed(vec![part(FIRST, &[BEGUN])]);
    no_time.started_at = "yesterday".into();
    assert!(arriving(&no_time).is_err_and(|error| error.to_string().contains("yesterday")));
    let no_part = handed(vec![part("31 February", &[BEGUN])]);
    assert!(arriving(&no_part).is_err_and(|error| error.to_string().contains("31 February")));
    let no_entry = handed(vec![part(FIRST, &[BEGUN, r#"{"at_s":1.0}"#])]);
    assert!(arriving(&no_entry).is_err_and(|error| error.to_string().contains("entry 2")));
}

/// Every kind of entry is read without a fault, and what is no trial makes none.
#[test]
fn commands_and_rests_are_no_trials() {
    let entry =
        Entry { at_s: 1.0, fact: Fact::CommandHeard { command: Command::Ready, text: "ready".into(), confidence: 1.0 }, position: None };
    let line = serde_json::to_string(&entry).expect("JSON");
    let session = arriving(&handed(vec![part(FIRST, &[&line, r#"{"at_s":2.0,"kind":"rested","duration_s":9.0}"#])])).expect("reads");
    assert!(session.trials.is_empty() && session.events.is_empty() && session.steps.is_empty());
}
