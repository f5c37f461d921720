use super::*;
use crate::samples::{after, day, practised, trial};
use crate::{Conditions, Direction, Mark, Trial};
use routine::find;

const FIRST: &str = "2026-03-02";

/// Three holds a day, a second apart: SEM is 1 s, the smallest change that counts 1.96·√2·1 s = 2.77 s (Weir 2005).
fn holds(days: &[(i64, f64)]) -> Vec<Trial> {
    let one = |(after_days, typical): &(i64, f64)| {
        [-1.0, 0.0, 1.0].map(|by| (*after_days, typical + by)).into_iter().enumerate().map(|(seq, (days, seconds))| {
            let at = after(day(FIRST), days);
            trial(at, days, seq as i64, "long-ah", &[(Measure::HoldS, seconds)], Conditions::default())
        })
    };
    days.iter().flat_map(one).collect()
}

/// Five days of baseline at 10 s, then five at `latest`, a day apart.
fn grown(latest: f64) -> Vec<Trial> {
    holds(&(0..10).map(|n| (n, if n < 5 { 10.0 } else { latest })).collect::<Vec<_>>())
}

fn hold_goal(direction: Direction, target: f64, due: i64) -> Goal {
    let aim = Aim { exercise: "long-ah".into(), measure: Measure::HoldS, direction, target };
    goal(Some(aim), due)
}

fn goal(aim: Option<Aim>, due: i64) -> Goal {
    let words = "Read a whole page to my grandson.".to_owned();
    Goal { id: 1, words, aim, set_on: day(FIRST), due: after(day(FIRST), due), set_by: "clinician".into(), marks: Vec::new() }
}

fn standing_of(goal: &Goal, trials: Vec<Trial>, today: i64) -> (Standing, Option<f64>) {
    let practised = Practised { goals: vec![goal.clone()], ..practised(Vec::new(), trials) };
    let [state] = &goals(&practised, after(day(FIRST), today))[..] else { panic!("one goal") };
    (state.standing, state.typical)
}

/// Worked by hand. Days 0 to 4 at 10 s, 5 to 9 at 14 s: the Theil–Sen line rises 0.5 s a day from 9.75 s; about it the days scatter by
/// √(10.625/8) = 1.15 s, more than the 1 s within them. So MDC95 = 1.96·√2·1.15 s = 3.19 s, and the change of 4 s is beyond it. With
/// 12 s the days scatter by 0.58 s, so the 1 s within them counts: MDC95 = 2.77 s, and the change of 2 s is not.
#[test]
fn met_is_a_typical_value_at_the_target_and_a_change_beyond_scatter() {
    let at_least = |target| hold_goal(Direction::AtLeast, target, 30);
    assert_eq!(standing_of(&at_least(14.0), grown(14.0), 10), (Standing::Met, Some(14.0)), "before its day, too");
    assert_eq!(standing_of(&at_least(14.0), grown(14.0), 30), (Standing::Met, Some(14.0)));
    // One that is nearly there.
    assert_eq!(standing_of(&at_least(14.5), grown(14.0), 30), (Standing::NotMet(NotMet::Short), Some(14.0)));
    assert_eq!(standing_of(&at_least(14.5), grown(14.0), 29), (Standing::TooEarly(TooEarly::BeforeDue), Some(14.0)));
    // 12 s is reached, and 2 s over the baseline is less than the 2.77 s that this person scatters.
    assert_eq!(standing_of(&at_least(12.0), grown(12.0), 30), (Standing::NotMet(NotMet::WithinScatter), Some(12.0)));
    // There from the beginning: nothing has changed.
    assert_eq!(standing_of(&at_least(9.0), grown(10.0), 30), (Standing::NotMet(NotMet::WithinScatter), Some(10.0)));
}

#[test]
fn a_goal_may_be_to_have_less() {
    let at_most = |target| hold_goal(Direction::AtMost, target, 30);
    assert_eq!(standing_of(&at_most(6.0), grown(6.0), 30), (Standing::Met, Some(6.0)));
    // Above the target, whichever way it went.
    assert_eq!(standing_of(&at_most(6.0), grown(14.0), 30), (Standing::NotMet(NotMet::Short), Some(14.0)));
    // Below it, and it has grown: not what was wanted.
    assert_eq!(standing_of(&at_most(15.0), grown(14.0), 30), (Standing::NotMet(NotMet::WithinScatter), Some(14.0)));
}

#[test]
fn too_few_days_and_days_long_past_say_nothing() {
    let goal = hold_goal(Direction::AtLeast, 14.0, 0);
    let early = |trials, today| standing_of(&goal, trials, today).0;
    assert_eq!(early(Vec::new(), 30), Standing::TooEarly(TooEarly::NoTrials));
    // Five days of baseline and two behind it.
    assert_eq!(early(grown(14.0).into_iter().take(21).collect(), 30), Standing::TooEarly(TooEarly::FewDays));
    // The last trials are of day 9.
    assert_eq!((early(grown(14.0), 36), early(grown(14.0), 37)), (Standing::Met, Standing::TooEarly(TooEarly::NoTrials)));
    // After three weeks without a trial a new series begins, and with it a new baseline.
    let mut broken = grown(14.0);
    broken.extend(holds(&[(31, 15.0), (32, 15.0)]));
    assert_eq!(early(broken, 33), Standing::TooEarly(TooEarly::FewDays));
}

#[test]
fn a_level_is_a_goal_only_on_a_calibrated_scale() {
    let levels = |calibration: LevelCalibration| -> Vec<Trial> {
        let conditions = Conditions { calibration, ..Conditions::default() };
        let one = |n: i64| {
            let typical = if n < 5 { 60.0 } else { 68.0 };
            [-1.0, 0.0, 1.0].map(|by| {
                trial(
                    after(day(FIRST), n),
                    n,
                    by as i64 + 2,
                    "functional-phrases",
                    &[(Measure::PhraseLevelDb, typical + by)],
                    conditions.clone(),
                )
            })
        };
        (0..10).flat_map(one).collect()
    };
    let aim = Aim { exercise: "functional-phrases".into(), measure: Measure::PhraseLevelDb, direction: Direction::AtLeast, target: 67.0 };
    let goal = goal(Some(aim), 30);
    assert_eq!(standing_of(&goal, levels(LevelCalibration::Meter), 30), (Standing::Met, Some(68.0)));
    for calibration in [LevelCalibration::None, LevelCalibration::Void, LevelCalibration::Rough] {
        assert_eq!(standing_of(&goal, levels(calibration), 30), (Standing::TooEarly(TooEarly::NotCalibrated), None), "{calibration:?}");
    }
}

#[test]
fn an_activity_is_judged_by_people_alone() {
    let mut goal = goal(None, 30);
    assert_eq!(standing_of(&goal, grown(14.0), 10).0, Standing::TooEarly(TooEarly::BeforeDue));
    assert_eq!(standing_of(&goal, grown(14.0), 30).0, Standing::TooEarly(TooEarly::NotMarked));
    let mark = |kind, on: i64| Mark { kind, on: after(day(FIRST), on), by: "clinician".into() };
    goal.marks = vec![mark(MarkKind::NotMet, 20), mark(MarkKind::Met, 25), mark(MarkKind::Removed, 40)];
    assert_eq!(standing_of(&goal, Vec::new(), 20).0, Standing::NotMet(NotMet::Marked));
    assert_eq!(standing_of(&goal, Vec::new(), 39).0, Standing::Met, "the last mark counts");
    let practised = Practised { goals: vec![goal], ..Practised::default() };
    assert!(goals(&practised, after(day(FIRST), 40)).is_empty() && goals(&practised, after(day(FIRST), -1)).is_empty());
}

#[test]
fn what_an_exercise_does_not_measure_is_no_goal_for_it() {
    let of = |id: &str| goal_measures(find(id).expect("in the catalogue"));
    assert!(of("long-ah").contains(&Measure::HoldS) && !of("long-ah").contains(&Measure::CppsDb));
    assert_eq!(of("syllable-repetition"), [Measure::SyllableRateHz, Measure::SyllableIrregularityPct]);
    assert!(of("effortful-swallow").is_empty(), "swallows are counted, not measured");
}
