use super::*;
use crate::samples::{at, begun, ended, entry, hold, keep};

#[test]
fn the_history_tells_what_was_done_newest_first() {
    let dir = tempfile::tempdir().expect("a folder");
    let mut store = Store::open(dir.path()).expect("opens");
    let done =
        |step| entry(100.0, at(step, 2, 3), Fact::StepDone { exercise: "long-ah".into(), repetitions_done: 6, repetitions_prescribed: 6 });
    let first = [
        begun(),
        hold(30.0, at(1, 1, 1), "long-ah", 11.0, true),
        hold(60.0, at(1, 1, 2), "long-ah", 12.5, true),
        hold(90.0, at(1, 1, 3), "long-ah", 30.0, false),
        ended(600.0),
    ];
    let one = keep(&mut store, "Client", Source::Live, "2026-11-24T19:00:00+01:00[Europe/Berlin]", &first);
    let two = keep(&mut store, "Other", Source::Replay, "2026-11-24T20:00:00+01:00[Europe/Berlin]", &[begun(), done(1), done(1)]);

    let all = store.history(None, 10).expect("lists");
    assert_eq!(all.iter().map(|summary| summary.id).collect::<Vec<_>>(), [two, one]);
    let [interrupted, ended] = all.as_slice() else { panic!("two") };
    assert_eq!((ended.steps_done, ended.steps_prescribed, ended.minutes), (1, 2, 10.0));
    assert_eq!(ended.best_holds, [BestHold { exercise: "long-ah".into(), duration_s: 12.5 }]);
    assert_eq!(ended.end_reason.as_deref(), Some("finished"));
    assert_eq!((interrupted.steps_done, interrupted.steps_prescribed, interrupted.end_reason.as_ref()), (1, 2, None));
    assert_eq!(store.history(Some("Client"), 10).expect("lists").len(), 1);
    assert_eq!(store.history(None, 1).expect("lists").len(), 1);
    assert!(matches!(store.summary(SessionId(99)), Err(RecordError::NoSuchSession { id: 99 })));
}
