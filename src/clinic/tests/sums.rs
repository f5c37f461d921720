use super::*;
use jiff::ZonedDateTime;
use model::Measure;

fn days(names: &[&str]) -> BTreeSet<Weekday> {
    names.iter().map(|name| Weekday::of_name(name).expect("a day")).collect()
}

#[test]
fn the_longest_gap_is_that_over_the_weekend_too() {
    assert_eq!(longest_gap(&days(&[])), None);
    assert_eq!(longest_gap(&Weekday::ALL.into_iter().collect()), Some(1));
    assert_eq!(longest_gap(&days(&["monday", "thursday"])), Some(4));
    assert_eq!(longest_gap(&days(&["wednesday"])), Some(7));
    assert_eq!(longest_gap(&days(&["monday", "tuesday", "wednesday", "thursday", "friday"])), Some(3));
}

#[test]
fn the_words_kept_are_read_back() {
    for microphone in Microphone::ALL {
        assert_eq!(Microphone::of_word(microphone.word()), microphone);
    }
}

fn level(day: &str, microphone: Option<&str>, calibration: LevelCalibration) -> Trial {
    let when: ZonedDateTime = format!("{day}T18:00:00+00:00[UTC]").parse().expect("a time");
    let microphone =
        microphone.map(|name| progress::Microphone { system: "test".into(), name: name.into(), rate_hz: 48_000, gain: "100 %".into() });
    Trial {
        day: when.date(),
        when,
        session: 1,
        seq: 1,
        exercise: "long-ah".into(),
        position: None,
        values: vec![progress::Value { measure: Measure::LevelDb, value: 70.0, discard: None }],
        conditions: Conditions { calibration, microphone, ..Conditions::default() },
        complete: true,
        duration_s: 10.0,
        misdated: false,
    }
}

#[test]
fn a_change_of_microphone_is_told_while_it_is_recent() {
    use LevelCalibration::{Meter, None as Not, Void};
    let known_to = jiff::civil::date(2026, 3, 31);
    let state = |trials: &[Trial]| microphone(trials, known_to);
    assert_eq!(state(&[]), (Microphone::Fine, None));
    assert_eq!(state(&[level("2026-03-01", Some("a"), Meter), level("2026-03-30", Some("a"), Meter)]).0, Microphone::Fine);
    assert_eq!(state(&[level("2026-03-01", Some("a"), Not)]).0, Microphone::Relative);
    assert_eq!(state(&[level("2026-03-01", Some("a"), Meter), level("2026-03-30", Some("a"), Void)]).0, Microphone::Void);
    let changed =
        state(&[level("2026-03-01", Some("a"), Meter), level("2026-03-20", Some("b"), Meter), level("2026-03-30", Some("b"), Meter)]);
    assert_eq!(changed, (Microphone::Changed, Some(jiff::civil::date(2026, 3, 20))));
    let long_ago =
        state(&[level("2026-01-01", Some("a"), Meter), level("2026-01-20", Some("b"), Meter), level("2026-03-30", Some("b"), Meter)]);
    assert_eq!(long_ago.0, Microphone::Fine);
    // Before microphones were kept.
    assert_eq!(state(&[level("2026-03-01", None, Meter), level("2026-03-30", Some("b"), Meter)]).0, Microphone::Fine);
    let mut gained = level("2026-03-30", Some("a"), Not);
    gained.conditions.auto_gain = true;
    assert_eq!(state(&[gained]).0, Microphone::AutoGain);
}
