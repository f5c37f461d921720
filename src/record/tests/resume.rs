use super::*;
use crate::samples::{ROUTINE_TEXT, agreement, at, begin, begun, ended, entry, hold, keep, routine, time};

const START: &str = "2026-11-24T19:00:00+01:00[Europe/Berlin]";
const LATER: &str = "2026-11-24T19:30:00+01:00[Europe/Berlin]";

fn next(entries: &[Entry]) -> Option<(u32, u32, u32)> {
    next_position(entries, &routine()).map(|at| (at.step, at.set, at.repetition))
}

fn done(position: Option<Position>) -> Entry {
    hold(9.0, position, "long-ah", 4.0, true)
}

#[test]
fn it_goes_on_after_the_last_completed_repetition() {
    assert_eq!(next(&[begun()]), Some((1, 1, 1)));
    assert_eq!(next(&[begun(), done(at(1, 1, 1))]), Some((1, 1, 2)));
    assert_eq!(next(&[begun(), done(at(1, 1, 3))]), Some((1, 2, 1)));
    assert_eq!(next(&[begun(), done(at(1, 2, 3))]), Some((2, 1, 1)));
    assert_eq!(next(&[begun(), done(at(2, 1, 4))]), None);
}

#[test]
fn a_repetition_that_was_cut_off_or_not_answered_is_done_again() {
    let cut = hold(20.0, at(1, 1, 2), "long-ah", 2.0, false);
    let silent = entry(30.0, at(1, 1, 2), Fact::NoAnswer { asked: 2 });
    assert_eq!(next(&[begun(), done(at(1, 1, 1)), cut]), Some((1, 1, 2)));
    assert_eq!(next(&[begun(), done(at(1, 1, 1)), silent]), Some((1, 1, 2)));
}

#[test]
fn an_ended_step_stays_ended_and_one_gone_back_to_counts_again() {
    let stopped = entry(
        20.0,
        at(1, 1, 2),
        Fact::StepStopped { exercise: "long-ah".into(), reason: "dizzy".into(), repetitions_done: 1, repetitions_prescribed: 6 },
    );
    assert_eq!(next(&[done(at(1, 1, 1)), stopped.clone()]), Some((2, 1, 1)));
    let back = entry(30.0, at(1, 1, 1), Fact::StepBegun { exercise: "long-ah".into(), ramp_stage: None });
    assert_eq!(next(&[done(at(1, 1, 1)), stopped, back]), Some((1, 1, 1)));
}

#[test]
fn a_step_announced_again_after_resuming_does_not_lose_what_was_done() {
    let announced = entry(0.5, at(1, 1, 1), Fact::StepBegun { exercise: "long-ah".into(), ramp_stage: None });
    assert_eq!(next(&[announced.clone(), done(at(1, 1, 2)), announced]), Some((1, 1, 3)));
}

fn offered(store: &Store, client: &str, text: &str, source: Source, now: &str) -> Option<Unfinished> {
    store.unfinished(client, &routine(), text, source, &time(now), Unfinished::OFFERED_WITHIN).expect("asks")
}

#[test]
fn an_interrupted_session_is_offered_to_its_own_kind_only() {
    let dir = tempfile::tempdir().expect("a folder");
    let mut store = Store::open(dir.path()).expect("opens");
    let session = keep(&mut store, "Client", Source::Live, START, &[begun(), agreement(true), done(at(1, 1, 1))]);
    assert!(offered(&store, "Client", ROUTINE_TEXT, Source::Live, LATER).is_none(), "it is still being led");
    drop(store);
    let store = Store::open(dir.path()).expect("opens");
    let found = offered(&store, "Client", ROUTINE_TEXT, Source::Live, LATER).expect("is offered");
    assert_eq!((found.session, found.position), (session, Position { step: 1, set: 1, repetition: 2 }));
    assert_eq!(found.age, SignedDuration::from_secs(30 * 60 - 9));
    assert_eq!(found.agreed.len(), 2);
    assert!(offered(&store, "Client", ROUTINE_TEXT, Source::Replay, LATER).is_none());
    assert!(offered(&store, "Other", ROUTINE_TEXT, Source::Live, LATER).is_none());
    assert!(offered(&store, "Client", "title = \"Changed\"\n", Source::Live, LATER).is_none());
    assert!(offered(&store, "Client", ROUTINE_TEXT, Source::Live, "2026-11-25T19:30:00+01:00[Europe/Berlin]").is_none());
}

#[test]
fn a_session_gone_on_with_is_one_session_in_two_parts() {
    let dir = tempfile::tempdir().expect("a folder");
    let mut store = Store::open(dir.path()).expect("opens");
    let session = begin(&mut store, "Client", Source::Live, START).expect("begins");
    store.append(session, &begun()).expect("keeps");
    store.append(session, &hold(120.0, at(1, 1, 1), "long-ah", 4.0, true)).expect("keeps");
    drop(store);
    let mut store = Store::open(dir.path()).expect("opens");
    store.resume(session, &time(LATER)).expect("resumes");
    store.append(session, &hold(60.0, at(1, 1, 2), "long-ah", 5.0, true)).expect("keeps");
    drop(store);
    let mut store = Store::open(dir.path()).expect("opens");
    let found = offered(&store, "Client", ROUTINE_TEXT, Source::Live, "2026-11-24T19:32:00+01:00[Europe/Berlin]").expect("again");
    assert_eq!((found.position.repetition, found.age), (3, SignedDuration::from_secs(60)));
    store.resume(session, &time("2026-11-24T19:32:00+01:00[Europe/Berlin]")).expect("resumes");
    store.append(session, &ended(240.0)).expect("keeps");
    assert!(offered(&store, "Client", ROUTINE_TEXT, Source::Live, LATER).is_none());
    let summary = store.history(None, 5).expect("lists").remove(0);
    assert_eq!(summary.minutes, (120.0 + 60.0 + 240.0) / 60.0);
    let end: String = store.connection.query_row("SELECT ended_at FROM session", [], |row| row.get(0)).expect("asks");
    assert_eq!(end, "2026-11-24T19:36:00+01:00[Europe/Berlin]");
}
