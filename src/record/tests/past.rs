use super::*;
use crate::Source;
use crate::samples::{at, hold, keep, time};
use session::Weekday;

fn holds(durations_s: &[f64]) -> Vec<session::Entry> {
    durations_s
        .iter()
        .enumerate()
        .map(|(n, duration_s)| hold(30.0 * (n + 1) as f64, at(1, 1, n as u32 + 1), "long-ah", *duration_s, true))
        .collect()
}

#[test]
fn the_past_of_an_exercise_is_its_live_complete_holds() {
    let dir = tempfile::tempdir().expect("a folder");
    let mut store = Store::open(dir.path()).expect("opens");
    let mut save = |source, started: &str, entries: &[session::Entry]| keep(&mut store, "Client", source, started, entries);
    save(Source::Live, "2026-10-30T19:00:00+01:00[Europe/Berlin]", &holds(&[15.0]));
    save(Source::Live, "2026-11-23T19:00:00+01:00[Europe/Berlin]", &holds(&[14.0, 12.0]));
    save(Source::Live, "2026-11-24T19:00:00+01:00[Europe/Berlin]", &holds(&[10.0, 12.0, 11.0]));
    save(Source::Live, "2026-11-24T20:00:00+01:00[Europe/Berlin]", &[hold(30.0, at(1, 1, 1), "long-ah", 40.0, false)]);
    save(Source::Replay, "2026-11-24T21:00:00+01:00[Europe/Berlin]", &holds(&[50.0]));
    let present = save(Source::Live, "2026-11-25T19:00:00+01:00[Europe/Berlin]", &holds(&[60.0]));

    let past = store.past("Client", &time("2026-11-25T19:10:00+01:00[Europe/Berlin]"), Some(present)).expect("asks");
    let long_ah = past.by_exercise.get("long-ah").expect("is there");
    let last = long_ah.last.as_ref().expect("a last session");
    assert_eq!((last.duration_s, last.weekday, last.date.as_str(), last.days_ago), (12.0, Weekday::Tuesday, "2026-11-24", 1));
    let month = long_ah.best_this_month.as_ref().expect("a best");
    assert_eq!((month.duration_s, month.weekday, month.days_ago), (14.0, Weekday::Monday, 2));
    assert_eq!((long_ah.sessions, long_ah.recent_trials), (3, 6));
    // 15, 14, 12, 10, 12, 11: mean 74/6; sum of squares 930, so the variance is (930 - 74²/6) / 5 = 52/15.
    assert!((long_ah.mean_s.expect("a mean") - 74.0 / 6.0).abs() < 1e-12);
    assert!((long_ah.sd_s.expect("a scatter") - (52.0_f64 / 15.0).sqrt()).abs() < 1e-12);
}

#[test]
fn the_scatter_rests_on_the_newest_ten() {
    let dir = tempfile::tempdir().expect("a folder");
    let mut store = Store::open(dir.path()).expect("opens");
    let mut durations = vec![100.0; 5];
    durations.extend([10.0; 10]);
    keep(&mut store, "Client", Source::Live, "2026-11-24T19:00:00+01:00[Europe/Berlin]", &holds(&durations));
    let past = store.past("Client", &time("2026-11-25T19:00:00+01:00[Europe/Berlin]"), None).expect("asks");
    let long_ah = past.by_exercise.get("long-ah").expect("is there");
    assert_eq!((long_ah.recent_trials, long_ah.mean_s, long_ah.sd_s), (10, Some(10.0), Some(0.0)));
    assert!(store.past("Other", &time("2026-11-25T19:00:00+01:00[Europe/Berlin]"), None).expect("asks").by_exercise.is_empty());
}

#[test]
fn only_live_sessions_make_an_exercise_known() {
    use crate::samples::entry;
    use session::Fact;
    let dir = tempfile::tempdir().expect("a folder");
    let mut store = Store::open(dir.path()).expect("opens");
    let step = [entry(3.0, at(1, 1, 1), Fact::StepBegun { exercise: "long-ah".into(), ramp_stage: None })];
    keep(&mut store, "Client", Source::Replay, "2026-11-24T19:00:00+01:00[Europe/Berlin]", &step);
    assert!(store.exercises_begun("Client").expect("asks").is_empty());
    keep(&mut store, "Client", Source::Live, "2026-11-24T19:00:00+01:00[Europe/Berlin]", &step);
    assert_eq!(store.exercises_begun("Client").expect("asks").into_iter().collect::<Vec<_>>(), ["long-ah"]);
}
