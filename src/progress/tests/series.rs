use super::*;
use crate::samples::{after, day, microphone, practised, trial};
use crate::{Interval, Picture};

const FIRST: &str = "2026-03-02";

fn all() -> Window {
    Window { from: day(FIRST), to: day("2027-12-31") }
}

fn mic(name: &str) -> Conditions {
    Conditions { microphone: Some(microphone(name)), ..Conditions::default() }
}

fn hold(days: i64, seq: i64, seconds: f64, conditions: Conditions) -> Trial {
    trial(
        after(day(FIRST), days),
        days,
        seq,
        "long-ah",
        &[(Measure::HoldS, seconds), (Measure::LevelDb, 70.0 + seconds / 10.0)],
        conditions,
    )
}

fn holds(trials: Vec<Trial>) -> Series {
    series(&practised(Vec::new(), trials), all()).into_iter().find(|series| series.measure == Measure::HoldS).expect("holds")
}

fn levels(trials: Vec<Trial>) -> Series {
    series(&practised(Vec::new(), trials), all()).into_iter().find(|series| series.measure == Measure::LevelDb).expect("levels")
}

#[test]
fn a_day_is_the_median_of_its_trials() {
    let found = holds(vec![hold(0, 1, 9.0, mic("a")), hold(0, 2, 15.0, mic("a")), hold(0, 3, 10.0, mic("a")), hold(1, 1, 8.0, mic("a"))]);
    let [segment] = &found.segments[..] else { panic!("one segment") };
    let days: Vec<(f64, usize)> = segment.days.iter().map(|day| (day.median, day.trials.len())).collect();
    assert_eq!((days, found.counted), (vec![(10.0, 3), (8.0, 1)], 4));
}

#[test]
fn another_microphone_breaks_every_series_and_is_told() {
    let trials = || {
        vec![
            hold(0, 1, 9.0, mic("laptop")),
            hold(1, 1, 9.0, mic("laptop")),
            hold(1, 2, 12.0, mic("headset")),
            hold(2, 1, 12.0, mic("headset")),
        ]
    };
    for found in [holds(trials()), levels(trials())] {
        let [_, second] = &found.segments[..] else { panic!("two segments: {found:?}") };
        let broken = second.broken_by.as_ref().expect("a break");
        assert_eq!((broken.before, broken.after), (day("2026-03-03"), day("2026-03-03")), "changed on one day");
        assert_eq!(broken.reasons, [BreakReason::Microphone { from: "laptop".into(), to: "headset".into() }]);
    }
    // A practice that does not tell its microphone hides no change.
    let silent = Conditions::default();
    let hidden = holds(vec![hold(0, 1, 9.0, mic("laptop")), hold(1, 1, 9.0, silent.clone()), hold(2, 1, 12.0, mic("headset"))]);
    assert_eq!(hidden.segments.len(), 2);
    assert_eq!(holds(vec![hold(0, 1, 9.0, silent), hold(1, 1, 9.0, mic("laptop"))]).segments.len(), 1, "the first one told is no change");
}

#[test]
fn a_gap_is_longer_than_a_week_and_than_this_persons_rhythm() {
    let daily = |pause: i64| holds((0..10).chain(9 + pause..15 + pause).map(|days| hold(days, 1, 9.0, mic("a"))).collect());
    assert_eq!(daily(7).segments.len(), 1, "six days without");
    let broken = daily(8);
    let [_, second] = &broken.segments[..] else { panic!("two segments") };
    assert_eq!(second.broken_by.as_ref().expect("a break").reasons, [BreakReason::Gap { days: 7 }]);
    let weekly = |pause: i64| {
        holds(
            (0..6).map(|week| 7 * week).chain((0..3).map(|week| 35 + pause + 7 * week)).map(|days| hold(days, 1, 9.0, mic("a"))).collect(),
        )
    };
    assert_eq!(weekly(21).segments.len(), 1);
    assert_eq!(weekly(22).segments.len(), 2);
}

#[test]
fn a_level_breaks_with_its_scale_and_a_hold_does_not() {
    let calibrated = |note: &str| Conditions {
        calibration: LevelCalibration::Meter,
        calibration_note: Some(note.into()),
        distance_cm: Some(30.0),
        ..mic("a")
    };
    let louder = |gain: &str| Conditions { microphone: Some(Microphone { gain: gain.into(), ..microphone("a") }), ..Conditions::default() };
    let cases = [
        (mic("a"), calibrated("x"), "Calibration"),
        (calibrated("of May"), calibrated("of June"), "Calibration"),
        (louder("60 %"), louder("80 %"), "Gain"),
        (Conditions { distance_cm: Some(30.0), ..mic("a") }, Conditions { distance_cm: Some(60.0), ..mic("a") }, "Distance"),
        (
            Conditions { level_weighting: Some("A".into()), ..mic("a") },
            Conditions { level_weighting: Some("C".into()), ..mic("a") },
            "Weighting",
        ),
    ];
    for (before, after, reason) in cases {
        let trials = || vec![hold(0, 1, 9.0, before.clone()), hold(1, 1, 9.0, after.clone())];
        let broken = levels(trials());
        let [_, second] = &broken.segments[..] else { panic!("{reason}: {broken:?}") };
        let reasons = &second.broken_by.as_ref().expect("a break").reasons;
        assert!(matches!(&reasons[..], [one] if format!("{one:?}").starts_with(reason)), "{reasons:?}");
        assert_eq!(holds(trials()).segments.len(), 1, "{reason}");
    }
    let void = Conditions { calibration: LevelCalibration::Void, ..mic("a") };
    assert_eq!(levels(vec![hold(0, 1, 9.0, mic("a")), hold(1, 1, 9.0, void)]).segments.len(), 1, "both are relative");
}

#[test]
fn what_is_doubtful_counts_nowhere_and_is_told() {
    let noisy = Conditions { in_noise: true, ..mic("a") };
    let clipped = Conditions { clipped_s: 0.2, ..mic("a") };
    let gained = Conditions { auto_gain: true, ..mic("a") };
    let trials = || {
        vec![
            hold(0, 1, 9.0, mic("a")),
            hold(0, 2, 30.0, noisy.clone()),
            hold(0, 3, 10.0, clipped.clone()),
            hold(0, 4, 11.0, gained.clone()),
        ]
    };
    let (holds, levels) = (holds(trials()), levels(trials()));
    assert_eq!((holds.counted, &holds.discarded[..]), (3, &[(Discard::InNoise, 1)][..]));
    assert_eq!((levels.counted, &levels.discarded[..]), (1, &[(Discard::InNoise, 1), (Discard::AutoGain, 1), (Discard::Clipped, 1)][..]));
    assert_eq!(levels.segments[0].days[0].trials.len(), 1);
}

#[test]
fn the_baseline_may_lie_before_the_window_and_weeks_may_not() {
    let trials: Vec<Trial> =
        (0..56).flat_map(|days| (1..4).map(move |seq| hold(days, seq, 10.0 + (days % 3) as f64 + seq as f64 * 0.2, mic("a")))).collect();
    let window = Window::weeks(after(day(FIRST), 55), 2);
    assert_eq!((window.from, window.to), (day("2026-04-13"), day("2026-04-26")));
    let found = series(&practised(Vec::new(), trials), window);
    let segment = &found.iter().find(|series| series.measure == Measure::HoldS).expect("holds").segments[0];
    let baseline = segment.baseline.as_ref().expect("a baseline");
    assert_eq!((baseline.from, baseline.to, baseline.days, baseline.trials), (day(FIRST), day("2026-03-06"), 5, 15));
    // Days' medians 10.4, 11.4, 12.4, 10.4, 11.4: five of them cover 15/16.
    assert_eq!((baseline.median, baseline.interval), (11.4, Some(Interval { low: 10.4, high: 12.4, wanted: 0.95, covers: 0.9375 })));
    assert_eq!(
        segment.weeks.iter().map(|week| (week.monday, week.days, week.trials)).collect::<Vec<_>>(),
        [(day("2026-04-13"), 7, 21), (day("2026-04-20"), 7, 21)]
    );
    assert!(segment.weeks.iter().all(|week| week.interval.is_some_and(|interval| interval.reaches())));
    assert!(segment.slope.is_none(), "13 days are no fortnight");
    let change = segment.change.expect("a change");
    assert_eq!((change.latest_days, change.exceeds_95), (5, Some(false)));
}

#[test]
fn what_has_ended_before_the_window_is_not_there() {
    let trials = vec![hold(0, 1, 9.0, mic("old")), hold(60, 1, 9.0, mic("new"))];
    let window = Window { from: after(day(FIRST), 50), to: after(day(FIRST), 70) };
    let found = series(&practised(Vec::new(), trials.clone()), window);
    let segments = &found[0].segments;
    assert_eq!(segments.len(), 1);
    assert_eq!(segments[0].broken_by.as_ref().map(|broken| broken.reasons.len()), Some(2), "the break before it stays told");
    let later = Window { from: after(day(FIRST), 70), to: after(day(FIRST), 80) };
    assert_eq!(series(&practised(Vec::new(), trials), later), Vec::new());
}

#[test]
fn nothing_gives_an_empty_picture() {
    let picture = Picture::of(&practised(Vec::new(), Vec::new()), Window::weeks(day(FIRST), 12));
    assert!(picture.series.is_empty() && picture.adherence.days.is_empty() && picture.first_day.is_none());
    assert_eq!(picture.adherence.share(), None);
    assert!(serde_json::to_string(&picture).is_ok_and(|text| text.contains("\"series\":[]")));
}

#[test]
fn the_best_of_three_is_of_three_however_many_there_were() {
    let trials = vec![
        hold(0, 1, 9.0, mic("a")),
        hold(0, 2, 12.0, mic("a")),
        hold(0, 3, 10.0, mic("a")),
        hold(0, 4, 19.0, mic("a")),
        hold(1, 1, 8.0, mic("a")),
    ];
    let bests = crate::best_of_three(&practised(Vec::new(), trials));
    let seen: Vec<_> = bests.iter().map(|best| (best.trials.clone(), best.best, best.best_index, best.of)).collect();
    assert_eq!(seen, [(vec![9.0, 12.0, 10.0], 12.0, 2, 4), (vec![8.0], 8.0, 1, 1)]);
    let glide = trial(day(FIRST), 1, 1, "glide-up", &[(Measure::HoldS, 4.0), (Measure::F0SpanSt, 11.5)], Conditions::default());
    let best = crate::best_of_three(&practised(Vec::new(), vec![glide]));
    assert_eq!(best.iter().map(|best| (best.measure, best.best)).collect::<Vec<_>>(), [(Measure::F0SpanSt, 11.5)]);
}
