//! From greeting to summary.

use super::rig::*;
use crate::*;

#[test]
fn leads_every_way_of_timing_to_the_end() {
    let mut rig = Rig::new(whole(), SessionContext::default());
    rig.until_said("ask-agreement", 30.0);
    rig.command(Command::Yes);
    rig.begin();
    rig.until_said("ex-long-ah-cue", 20.0);
    rig.run_s(1.0);
    rig.hold(12.0);
    rig.until_said("ex-long-ah-cue", 20.0);
    rig.hold(14.5);
    rig.until_said("ask-position", 40.0);
    rig.command(Command::Ready);
    rig.run_s(90.0);
    // Paced breathing has led itself; now the swallows.
    rig.until_said("ex-tongue-hold-swallow-cue", 40.0);
    rig.run_s(3.0);
    rig.command(Command::Done);
    rig.until_said("ex-tongue-hold-swallow-cue", 20.0);
    rig.run_s(4.0);
    rig.command(Command::Done);
    rig.until_said("read-phrase", 20.0);
    rig.speak(1.5, 3);
    rig.until_said("read-phrase", 20.0);
    rig.speak(1.5, 3);
    rig.until_said("ex-syllable-repetition-cue", 20.0);
    rig.speak(5.0, 25);
    rig.until_said("question-clue", 20.0);
    rig.run_s(5.0);
    rig.event(Event::Answer { at_s: rig.now_s(), text: "bank".into(), confidence: 0.9 });
    rig.until_said("summary-all", 40.0);
    rig.run_s(5.0);
    assert!(rig.finished && rig.engine.is_over());
    insta::assert_json_snapshot!(rig.kinds());
    let held: Vec<f64> = rig
        .facts
        .iter()
        .filter_map(|entry| match &entry.fact {
            Fact::HoldMeasured { duration_s, complete: true, .. } => Some(*duration_s),
            _ => None,
        })
        .collect();
    assert_eq!(held, [12.0, 14.5]);
    let last = rig.facts.last().expect("entries");
    assert!(matches!(&last.fact, Fact::SessionEnded { reason, steps_done: 8, steps_prescribed: 8, .. } if reason == "completed"));
}

#[test]
fn counts_stand_on_the_beat_over_minutes() {
    let mut rig = Rig::new(vec![paced(40)], SessionContext::default());
    // Seven minutes of it are more than needs no word.
    rig.clinician_says("nasal-breathing");
    rig.begin();
    rig.until_said("summary-all", 600.0);
    let beats: Vec<f64> =
        rig.said.iter().filter(|s| s.1.starts_with("paced-in") || s.1 == "count" || s.1 == "paced-out").filter_map(|s| s.2).collect();
    assert_eq!(beats.len(), 40 * 11);
    let first_s = beats[0];
    for (index, beat_s) in beats.iter().enumerate().take(39 * 11) {
        assert!((beat_s - first_s - index as f64).abs() < 1e-6, "beat {index} at {beat_s}");
    }
    // Two beats of quiet, in which the last round is announced.
    assert!((beats[39 * 11] - first_s - 39.0 * 11.0 - 2.0).abs() < 1e-6);
    assert!(rig.said.iter().all(|s| s.2.is_none_or(|beat_s| beat_s > s.0)), "a count was asked for after its beat");
}

#[test]
fn a_posture_ends_when_its_seconds_are_over() {
    let mut rig = Rig::new(vec![posture()], SessionContext { agreed: ["lip-press-smile".to_owned()].into(), ..SessionContext::default() });
    rig.begin();
    rig.until_said("ask-position", 20.0);
    rig.command(Command::Ready);
    rig.until_said("posture-over", 80.0);
    let at = |key: &str| rig.said.iter().find(|s| s.1 == key).and_then(|s| s.2).expect(key);
    assert!((at("ex-lip-press-smile-phase-tighter") - at("ex-lip-press-smile-phase-hold") - 50.0).abs() < 1e-9);
    assert!((at("posture-over") - at("ex-lip-press-smile-phase-hold") - 60.0).abs() < 1e-9);
}

#[test]
fn where_stop_may_not_be_heard_it_is_said_each_time_how_to_stop_by_hand() {
    let unsure = [Understood::Nothing, Understood::Commands];
    for (first_session, understood) in [true, false].into_iter().flat_map(|first| unsure.map(|understood| (first, understood))) {
        let mut rig = Rig::new(vec![voiced(1)], SessionContext { first_session, understood, ..SessionContext::default() });
        rig.until_said(if first_session { "ask-ready-first" } else { "ask-ready" }, 30.0);
        assert!(rig.keys().contains(&"stop-by-hand") && !rig.keys().contains(&"you-can-stop"), "{:?}", rig.keys());
    }
    let mut rig = Rig::new(vec![voiced(1)], SessionContext { first_session: true, ..SessionContext::default() });
    rig.until_said("ask-ready-first", 30.0);
    assert!(rig.keys().contains(&"you-can-stop") && !rig.keys().contains(&"stop-by-hand"));
}

#[test]
fn without_agreement_the_exercise_is_left_out_and_the_journal_says_so() {
    let mut rig = Rig::new(vec![voiced(1), posture()], SessionContext { first_session: true, ..SessionContext::default() });
    rig.until_said("ask-agreement", 30.0);
    assert!(rig.keys().contains(&"aid-notice") && rig.keys().contains(&"ex-lip-press-smile-before"));
    rig.command(Command::No);
    rig.until_said("ask-ready-first", 20.0);
    rig.command(Command::Ready);
    rig.until_said("ex-long-ah-cue", 20.0);
    rig.hold(9.0);
    rig.until_said("summary-all-but", 20.0);
    assert_eq!(rig.count("ex-lip-press-smile-instruction"), 0);
    let left_out = rig.facts.iter().any(|e| matches!(&e.fact, Fact::StepLeftOut { exercise, .. } if exercise == "lip-press-smile"));
    assert!(left_out && rig.facts.iter().any(|e| matches!(e.fact, Fact::Agreement { given: false, .. })));
}

#[test]
fn goes_on_where_it_broke_off() {
    let from = Position { step: 1, set: 1, repetition: 2 };
    let mut rig = Rig::new(vec![voiced(3)], SessionContext { resume_from: Some(from), ..SessionContext::default() });
    rig.until_said("ask-resume", 20.0);
    rig.command(Command::Yes);
    assert_eq!(rig.resumed, Some(true));
    rig.until_said("ex-long-ah-cue", 20.0);
    rig.hold(8.0);
    rig.until_said("ex-long-ah-cue", 20.0);
    rig.hold(8.0);
    rig.until_said("summary-all", 20.0);
    let done = rig.facts.iter().find_map(|e| match e.fact {
        Fact::StepDone { repetitions_done, .. } => Some(repetitions_done),
        _ => None,
    });
    assert_eq!(done, Some(3));
}

#[test]
fn a_sip_is_offered_and_waited_for_in_silence() {
    let mut rig = Rig::new(vec![repeated(3, Some(1))], SessionContext::default());
    rig.begin();
    rig.until_said("ex-tongue-hold-swallow-cue", 20.0);
    rig.command(Command::Done);
    rig.until_said("ask-sip", 5.0);
    let said = rig.said.len();
    rig.run_s(15.0);
    assert_eq!(rig.said.len(), said, "spoke to a person with water in the mouth");
    rig.command(Command::Done);
    rig.until_said("ex-tongue-hold-swallow-cue", 10.0);
}
