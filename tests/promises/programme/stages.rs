//! A practice takes the stage of a ramp that is due.

use super::*;

/// One live or replayed practice of a head lift of three repetitions, as many of them done as are named.
fn keep_lifts(folder: &Path, routine_text: &str, source: Source, started: &str, stage: u32, done: u32) {
    let mut store = Store::open(folder).expect("opens");
    let started_at = &started.parse().expect("a time");
    let new = NewSession { protocol: None, client: "grandpa", routine_title: "x", routine_text, source, software: "tidecount", started_at };
    let session = store.begin(&new).expect("begins");
    let mut keep = |at_s: f64, repetition: u32, fact: Fact| {
        let position = Some(Position { step: 1, set: 1, repetition });
        store.append(session, &Entry { at_s, fact, position }).expect("keeps");
    };
    let exercise = || "head-lift-sustained".to_owned();
    keep(1.0, 1, Fact::StepBegun { exercise: exercise(), ramp_stage: Some(stage) });
    for repetition in 1..=done {
        let fact = Fact::PostureHeld { exercise: exercise(), duration_s: 10.0, prescribed_s: 10.0, complete: true };
        keep(70.0 * f64::from(repetition), repetition, fact);
    }
}

/// By hand: whole on 2 and 3 November with `days = 2`, so the second stage is due from the 4th.
#[test]
fn a_practice_takes_the_stage_that_is_due_and_an_interrupted_one_keeps_its_own() {
    let folder = tempfile::tempdir().expect("a folder");
    let text = ramped("head-lift-sustained", "{ days = 2, stages = [{ hold_s = 10 }, { hold_s = 20 }] }");
    keep_lifts(folder.path(), &text, Source::Live, "2026-11-02T10:00:00Z[UTC]", 1, 3);
    keep_lifts(folder.path(), &text, Source::Live, "2026-11-03T10:00:00Z[UTC]", 1, 3);
    let stage_at = |source: Source, now: &str| {
        let (store, mut prescription) = (Store::open(folder.path()).expect("opens"), checked(&text));
        take_stages(&mut prescription, &store, "grandpa", source, &now.parse().expect("a time")).expect("reads");
        let Work::Timed { phases, .. } = &prescription.routine.steps[0].work else { panic!("timed") };
        (prescription.routine.steps[0].ramp_stage, phases[0].length_s)
    };
    assert_eq!(stage_at(Source::Live, "2026-11-03T20:00:00Z[UTC]"), (Some(1), 10.0));
    assert_eq!(stage_at(Source::Live, "2026-11-04T08:00:00Z[UTC]"), (Some(2), 20.0));
    assert_eq!(stage_at(Source::Replay, "2026-11-04T08:00:00Z[UTC]"), (Some(1), 10.0));
    assert_eq!(stage_at(Source::Rehearsal, "2026-11-04T08:00:00Z[UTC]"), (Some(1), 10.0));
    // Begun late on the 3rd, broken off after one lift, and gone on with after midnight.
    keep_lifts(folder.path(), &text, Source::Live, "2026-11-03T23:50:00Z[UTC]", 1, 1);
    let (store, mut prescription) = (Store::open(folder.path()).expect("opens"), checked(&text));
    let now = "2026-11-04T00:10:00Z[UTC]".parse().expect("a time");
    let within = jiff::SignedDuration::from_hours(24);
    let found = stages_and_unfinished(&mut prescription, &text, &store, "grandpa", Source::Live, &now, within).expect("reads");
    let position = found.expect("an interrupted practice").position;
    assert_eq!((position.repetition, prescription.routine.steps[0].ramp_stage), (2, Some(1)));
}
