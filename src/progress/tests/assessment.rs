use super::*;
use crate::samples::{after, day, microphone, practice, practised, trial};
use crate::{Conditions, Trial};

fn hold(on: Date, session: i64, seq: i64, seconds: f64) -> Trial {
    trial(on, session, seq, "long-ah", &[(Measure::HoldS, seconds)], Conditions::default())
}

fn baseline(on: Date, session: i64, holds: [f64; 3]) -> (crate::Practice, Vec<Trial>) {
    let trials = (1..).zip(holds).map(|(seq, seconds)| hold(on, session, seq, seconds)).collect();
    (practice(session, on, "Voice baseline", "", &[(1, "long-ah", 3, 3)]), trials)
}

/// Three holds a day that scatter about 12 s.
fn practising(days: i64) -> Practised {
    let on = |n| after(day("2026-01-05"), n);
    let scatter = [-0.6, 0.4, 0.1, 0.7, -0.3];
    let trials = (0..days).flat_map(|n| {
        (0..3_i64).map(move |trial| hold(on(n), 100 + n, trial, 12.0 + scatter[usize::try_from(n + trial).expect("small") % 5]))
    });
    practised((0..days).map(|n| practice(100 + n, on(n), "Evening", "", &[(1, "long-ah", 3, 3)])).collect(), trials.collect())
}

#[test]
fn the_best_of_the_trials_is_read_and_all_of_them_are_told() {
    let (led, trials) = baseline(day("2026-01-02"), 1, [9.5, 11.0, 10.0]);
    let all = assessments(&practised(vec![led], trials));
    assert_eq!(all.len(), 1);
    let reading = &all[0].readings[0];
    assert_eq!((reading.measure, reading.taken, reading.value), (Measure::HoldS, Taken::Best, 11.0));
    assert_eq!((reading.trials.as_slice(), reading.discarded, all[0].whole), (&[9.5, 11.0, 10.0][..], 0, true));
}

#[test]
fn a_re_test_differs_only_where_it_differs_by_more_than_the_persons_own_scatter() {
    let retest = |holds| {
        let (first, mut trials) = baseline(day("2026-01-02"), 1, [9.5, 11.0, 10.0]);
        let (second, more) = baseline(day("2026-03-02"), 2, holds);
        trials.extend(more);
        assessments(&practised(vec![first, second], trials))
    };
    let today = day("2026-03-02");
    let told = |holds, practised: &Practised| {
        let all = retest(holds);
        compared(&all[1].readings[0], &all[0], practised, today).expect("compared")
    };
    let scatter = practising(30);
    let Compared::Within { difference, mdc95 } = told([11.2, 11.4, 11.3], &scatter) else { panic!("within") };
    assert!((difference - 0.4).abs() < 1e-9 && (0.4..4.0).contains(&mdc95), "{mdc95}");
    assert!(matches!(told([18.0, 17.0, 16.0], &scatter), Compared::Beyond { difference, .. } if (difference - 7.0).abs() < 1e-9));
    assert!(matches!(told([18.0, 17.0, 16.0], &practised(vec![], vec![])), Compared::ScatterUnknown { .. }));
}

#[test]
fn levels_of_another_scale_are_not_set_beside_each_other() {
    let of = |session, calibration, distance_cm| {
        let on = after(day("2026-01-02"), session);
        let conditions = Conditions { calibration, distance_cm, microphone: Some(microphone("Desk")), ..Conditions::default() };
        let trials = vec![trial(on, session, 1, "comfortable-ah", &[(Measure::LevelDb, 70.0)], conditions)];
        (practice(session, on, "Voice baseline", "", &[(2, "comfortable-ah", 3, 3)]), trials)
    };
    let told_at = |second, distance_cm| {
        let ((one, mut trials), (two, more)) = (of(1, model::LevelCalibration::Meter, distance_cm), of(2, second, distance_cm));
        trials.extend(more);
        let all = assessments(&practised(vec![one, two], trials));
        compared(&all[1].readings[0], &all[0], &practised(vec![], vec![]), day("2026-01-05"))
    };
    let told = |second| told_at(second, Some(30.0));
    assert_eq!(told_at(model::LevelCalibration::Meter, None), Some(Compared::OtherConditions), "nobody said where the microphone stood");
    assert_eq!(told(model::LevelCalibration::None), Some(Compared::OtherConditions));
    assert!(matches!(told(model::LevelCalibration::Meter), Some(Compared::ScatterUnknown { .. })));
}

#[test]
fn all_baselines_together_give_first_and_latest_of_each_figure() {
    let today = day("2026-03-04");
    let (first, mut trials) = baseline(day("2026-01-02"), 1, [9.5, 11.0, 10.0]);
    let (middle, more) = baseline(day("2026-02-02"), 2, [12.0, 12.0, 12.0]);
    let (last, most) = baseline(day("2026-03-02"), 3, [18.0, 17.0, 16.0]);
    trials.extend(more.into_iter().chain(most));
    let misdated = crate::Practice { misdated: true, ..practice(4, day("2031-01-01"), "Voice baseline", "", &[(1, "long-ah", 3, 3)]) };
    let assessed = practised(vec![first.clone(), middle, last, misdated], trials.clone());
    let told = baselines(&assessed, &practising(30), today).expect("some");
    let [figure] = &told.figures[..] else { panic!("one figure: {told:?}") };
    assert_eq!((figure.first_on, figure.first.value), (day("2026-01-02"), 11.0));
    let (on, latest) = figure.latest.as_ref().expect("a re-test");
    assert_eq!((*on, latest.value), (day("2026-03-02"), 18.0));
    assert!(matches!(figure.compared, Some(Compared::Beyond { .. })), "{:?}", figure.compared);
    assert_eq!(told.led.iter().map(|(on, _)| *on).collect::<Vec<_>>(), ["2026-01-02", "2026-02-02", "2026-03-02"].map(day));
    // One alone is set beside nothing, and none is none.
    let alone = baselines(&practised(vec![first], trials), &practising(30), today).expect("some");
    assert_eq!((alone.figures[0].latest.is_none(), alone.figures[0].compared), (true, None));
    assert_eq!(baselines(&practised(vec![], vec![]), &practising(30), today), None);
}
