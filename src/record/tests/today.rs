use super::*;
use crate::Source;
use crate::samples::{at, entry, keep, time};

fn lift(at_s: f64, duration_s: f64, complete: bool) -> Entry {
    let exercise = "head-lift-sustained".into();
    entry(at_s, at(1, 1, 1), Fact::PostureHeld { exercise, duration_s, prescribed_s: 60.0, complete })
}

fn swallow(at_s: f64) -> Entry {
    entry(
        at_s,
        at(2, 1, 1),
        Fact::RepetitionDone { exercise: "mid-swallow-hold".into(), duration_s: 4.0, ended_by: "done".into(), asked: None },
    )
}

/// By hand: two practices of the day, one of them begun the evening before; a replay, another client and yesterday do not count.
#[test]
fn what_was_done_today_is_that_of_the_clients_own_live_practices() {
    let dir = tempfile::tempdir().expect("a folder");
    let mut store = Store::open(dir.path()).expect("opens");
    keep(&mut store, "Client", Source::Live, "2026-11-03T08:00:00+01:00[Europe/Berlin]", &[lift(10.0, 60.0, true)]);
    // Past midnight on its way: one lift belongs to the 3rd, one to the 4th.
    keep(
        &mut store,
        "Client",
        Source::Live,
        "2026-11-03T23:58:00+01:00[Europe/Berlin]",
        &[lift(60.0, 60.0, true), lift(180.0, 20.0, false)],
    );
    let morning = keep(
        &mut store,
        "Client",
        Source::Live,
        "2026-11-04T08:00:00+01:00[Europe/Berlin]",
        &[lift(70.0, 60.0, true), swallow(90.0), swallow(100.0)],
    );
    keep(&mut store, "Client", Source::Replay, "2026-11-04T09:00:00+01:00[Europe/Berlin]", &[swallow(5.0)]);
    keep(&mut store, "Other", Source::Live, "2026-11-04T09:00:00+01:00[Europe/Berlin]", &[swallow(5.0)]);
    // Nothing was done in this one.
    keep(&mut store, "Client", Source::Live, "2026-11-04T09:30:00+01:00[Europe/Berlin]", &[]);
    let now = time("2026-11-04T10:00:00+01:00[Europe/Berlin]");
    let today = store.earlier_today("Client", &now, None).expect("asks");
    assert_eq!((today.practices, today.loud_s), (2, 0.0));
    assert_eq!(today.done["head-lift-sustained"], Amount { times: 2, seconds: 80.0 });
    assert_eq!(today.done["mid-swallow-hold"], Amount { times: 2, seconds: 0.0 });
    assert_eq!(today.ago_s, Some(2.0 * 3600.0 - 100.0));
    let without = store.earlier_today("Client", &now, Some(morning)).expect("asks");
    assert_eq!((without.practices, without.done.len()), (1, 1));
    assert_eq!(
        store.earlier_today("Client", &time("2026-11-05T10:00:00+01:00[Europe/Berlin]"), None).expect("asks"),
        EarlierToday::default()
    );
}

#[test]
fn what_was_wrong_today_is_known_also_of_a_practice_that_is_gone_on_with() {
    let dir = tempfile::tempdir().expect("a folder");
    let mut store = Store::open(dir.path()).expect("opens");
    let wrong = |at_s: f64, reason: Symptom, exercise: Option<&str>| {
        entry(at_s, at(1, 1, 1), Fact::SafetyStop { exercise_before: None, exercise: exercise.map(str::to_owned), reason })
    };
    let after = Fact::SafetyStop { exercise: None, exercise_before: Some("jaw-opening".into()), reason: Symptom::Pain };
    let say = |store: &mut Store, who: &str, source: Source, when: &str, what: Entry| keep(store, who, source, when, &[what]);
    say(&mut store, "Client", Source::Live, "2026-11-03T08:00:00+01:00[Europe/Berlin]", wrong(9.0, Symptom::Pain, None));
    let morning =
        say(&mut store, "Client", Source::Live, "2026-11-04T08:00:00+01:00[Europe/Berlin]", wrong(9.0, Symptom::Dizzy, Some("neck-turns")));
    say(&mut store, "Client", Source::Live, "2026-11-04T08:05:00+01:00[Europe/Berlin]", entry(9.0, None, after));
    say(&mut store, "Client", Source::Replay, "2026-11-04T08:10:00+01:00[Europe/Berlin]", wrong(9.0, Symptom::ChestPain, None));
    say(&mut store, "Other", Source::Live, "2026-11-04T08:10:00+01:00[Europe/Berlin]", wrong(9.0, Symptom::ChestPain, None));
    let now = time("2026-11-04T10:00:00+01:00[Europe/Berlin]");
    let today = store.earlier_today("Client", &now, Some(morning)).expect("asks");
    assert_eq!(today.unwell, [(Symptom::Dizzy, Some("neck-turns".to_owned())), (Symptom::Pain, Some("jaw-opening".to_owned()))]);
}

#[test]
fn an_interrupted_practice_says_what_it_did_and_how_long_it_took() {
    let entries = [lift(70.0, 60.0, true), lift(100.0, 20.0, false), swallow(20.0), swallow(50.0)];
    assert_eq!(amounts_in(&entries)["head-lift-sustained"], Amount { times: 2, seconds: 80.0 });
    assert_eq!(led_in(&entries), 150.0, "100 s, and 50 s after it was gone on with");
    assert_eq!(led_in(&[]), 0.0);
}
