use super::*;
use crate::Source;
use crate::samples::{at, entry, keep, time};
use session::Response;

fn timed(after_s: f64) -> Entry {
    entry(after_s, at(1, 1, 1), Fact::ResponseTimed { to: Response::Done, after_s })
}

fn asked(clue: &str) -> Entry {
    let fact = Fact::QuestionAnswered {
        exercise: "word-questions".into(),
        clue: clue.into(),
        answer: None,
        correct: false,
        hint_given: false,
        duration_s: 9.0,
    };
    entry(9.0, at(1, 1, 1), fact)
}

#[test]
fn habits_are_the_clients_own_live_responses_in_their_order() {
    let dir = tempfile::tempdir().expect("a folder");
    let mut store = Store::open(dir.path()).expect("opens");
    let mut save = |client, source, day, entries: &[Entry]| {
        keep(&mut store, client, source, &format!("2026-11-{day}T19:00:00+01:00[Europe/Berlin]"), entries)
    };
    // Twenty slow responses of long ago, then twenty quick ones: the newest twenty tell.
    save("client", Source::Live, "10", &vec![timed(20.0); 20]);
    save("client", Source::Live, "12", &vec![timed(2.0); 20]);
    save("client", Source::Replay, "13", &vec![timed(50.0); 20]);
    save("other", Source::Live, "13", &vec![timed(30.0); 20]);
    let usual = |client: &str| store.habits(client).expect("asks").usual_s(Response::Done);
    assert_eq!((usual("client"), usual("other"), usual("nobody")), (Some(2.0), Some(30.0), None));
}

#[test]
fn what_was_asked_is_counted_and_weeks_begin_with_the_first_live_practice() {
    let dir = tempfile::tempdir().expect("a folder");
    let mut store = Store::open(dir.path()).expect("opens");
    keep(&mut store, "client", Source::Replay, "2026-09-01T19:00:00+02:00[Europe/Berlin]", &[asked("replayed")]);
    keep(&mut store, "client", Source::Live, "2026-11-02T19:00:00+01:00[Europe/Berlin]", &[asked("one"), asked("two"), asked("one")]);
    let counts = store.asked("client").expect("asks");
    assert_eq!((counts.get("one"), counts.get("two"), counts.get("replayed")), (Some(&2), Some(&1), None));
    let week = |now: &str| store.practice_week("client", &time(now)).expect("asks");
    assert_eq!(week("2026-11-02T20:00:00+01:00[Europe/Berlin]"), 0);
    assert_eq!(week("2026-11-09T18:00:00+01:00[Europe/Berlin]"), 0);
    assert_eq!(week("2026-11-30T20:00:00+01:00[Europe/Berlin]"), 4);
    assert_eq!(store.practice_week("nobody", &time("2026-11-30T20:00:00+01:00[Europe/Berlin]")).expect("asks"), 0);
}
