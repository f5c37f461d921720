use super::*;
use crate::samples::{at, entry, time};
use crate::{NewSession, Source};
use routine::{Hearing, check_text};

fn text(stages: &str) -> String {
    format!(
        "title = \"x\"\n[[step]]\nexercise = \"rest\"\n[[step]]\nexercise = \"head-lift-sustained\"\ncautions_acknowledged = true\nramp = {{ stages = [{stages}] }}\n"
    )
}

fn ramp(text: &str) -> Ramp {
    check_text("x", text, Hearing { commands: &[], knows_word: None, ..Hearing::default() })
        .unwrap_or_else(|faults| panic!("{faults}"))
        .ramps
        .remove(0)
}

fn begun(stage: u32) -> Entry {
    entry(1.0, at(2, 1, 1), Fact::StepBegun { exercise: "head-lift-sustained".into(), ramp_stage: Some(stage) })
}

fn lift(at_s: f64, repetition: u32, complete: bool) -> Entry {
    let exercise = "head-lift-sustained".into();
    entry(at_s, at(2, 1, repetition), Fact::PostureHeld { exercise, duration_s: 10.0, prescribed_s: 10.0, complete })
}

fn lifts(stage: u32, complete: [bool; 3]) -> Vec<Entry> {
    let held = complete.iter().enumerate().map(|(n, &complete)| lift(60.0 * (n + 1) as f64, n as u32 + 1, complete));
    std::iter::once(begun(stage)).chain(held).collect()
}

fn keep(store: &mut Store, source: Source, started: &str, routine_text: &str, entries: &[Entry]) -> crate::SessionId {
    let started_at = &time(started);
    let session = store.begin(&NewSession {
        protocol: None,
        client: "Client",
        routine_title: "x",
        routine_text,
        source,
        software: "tidecount",
        started_at,
    });
    let session = session.expect("begins");
    for entry in entries {
        store.append(session, entry).expect("keeps");
    }
    session
}

fn done(store: &Store, ramp: &Ramp) -> Vec<(u32, String, bool)> {
    store.stages_done("Client", ramp).expect("asks").iter().map(|done| (done.stage, done.day.to_string(), done.whole)).collect()
}

#[test]
fn days_of_a_stage_are_local_whole_and_live() {
    let dir = tempfile::tempdir().expect("a folder");
    let mut store = Store::open(dir.path()).expect("opens");
    let routine = text("{ hold_s = 10 }, { hold_s = 20 }");
    let ramp = ramp(&routine);
    let whole = lifts(1, [true, true, true]);
    keep(&mut store, Source::Live, "2026-11-02T19:00:00+01:00[Europe/Berlin]", &routine, &whole);
    keep(&mut store, Source::Live, "2026-11-03T19:00:00+01:00[Europe/Berlin]", &routine, &lifts(1, [true, false, true]));
    keep(&mut store, Source::Replay, "2026-11-04T19:00:00+01:00[Europe/Berlin]", &routine, &whole);
    // Half past eleven in New York is the next day in London; the client's own date counts.
    keep(&mut store, Source::Live, "2026-11-05T23:30:00-05:00[America/New_York]", &routine, &whole);
    let wanted = [(1, "2026-11-02", true), (1, "2026-11-03", false), (1, "2026-11-05", true)];
    assert_eq!(done(&store, &ramp), wanted.map(|(stage, day, whole)| (stage, day.to_owned(), whole)));
    assert!(store.stages_done("Other", &ramp).expect("asks").is_empty());
}

/// The clinician takes the first stage out: what was done at 20 s is now the first stage, and nobody is lifted to 40 s unseen.
#[test]
fn a_stage_is_known_by_its_dose_when_the_routine_is_rewritten() {
    let dir = tempfile::tempdir().expect("a folder");
    let mut store = Store::open(dir.path()).expect("opens");
    let before = text("{ hold_s = 10 }, { hold_s = 20 }, { hold_s = 30 }");
    keep(&mut store, Source::Live, "2026-11-02T19:00:00Z[UTC]", &before, &lifts(1, [true, true, true]));
    keep(&mut store, Source::Live, "2026-11-03T19:00:00Z[UTC]", &before, &lifts(2, [true, true, true]));
    let after = ramp(&text("{ hold_s = 20 }, { hold_s = 30 }, { hold_s = 40 }"));
    assert_eq!(done(&store, &after), [(1, "2026-11-03".to_owned(), true)]);
    // A routine that cannot be read any more counts for nothing.
    keep(&mut store, Source::Live, "2026-11-04T19:00:00Z[UTC]", "title = 1", &lifts(1, [true, true, true]));
    assert_eq!(done(&store, &after).len(), 1);
}

/// Interrupted after the first lift, and gone on with on the next morning: whole on the day it was finished.
#[test]
fn a_session_that_was_gone_on_with_is_one() {
    let dir = tempfile::tempdir().expect("a folder");
    let mut store = Store::open(dir.path()).expect("opens");
    let routine = text("{ hold_s = 10 }, { hold_s = 20 }");
    let all = lifts(1, [true, true, true]);
    let session = keep(&mut store, Source::Live, "2026-11-02T23:58:00Z[UTC]", &routine, &all[..2]);
    drop(store);
    let mut store = Store::open(dir.path()).expect("opens");
    store.resume(session, &time("2026-11-03T08:00:00Z[UTC]")).expect("goes on");
    for entry in std::iter::once(&begun(1)).chain(&all[2..]) {
        store.append(session, entry).expect("keeps");
    }
    assert_eq!(done(&store, &ramp(&routine)), [(1, "2026-11-03".to_owned(), true)]);
}
