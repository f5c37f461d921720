use super::*;
use crate::samples::{day, practice, practised};
use crate::{Picture, ProgrammeItem};

/// Nine repetitions, on Monday and Wednesday.
const TEXT: &str = r#"
title = "Evening routine"
plan = [{ days = ["monday", "wednesday"], at = "18:30" }]
[[step]]
exercise = "long-ah"
repetitions = 3
[[step]]
exercise = "rest"
length_s = 20
[[step]]
exercise = "high-ee"
repetitions = 6
"#;

const UNPLANNED: &str = "title = \"Now and then\"\n[[step]]\nexercise = \"long-ah\"\nrepetitions = 4\n";

fn evening(session: i64, date: &str, ah: u32, ee: u32) -> Practice {
    practice(session, day(date), "Evening routine", TEXT, &[(1, "long-ah", ah, 3), (2, "rest", 1, 1), (3, "high-ee", ee, 6)])
}

fn window(from: &str, to: &str) -> Window {
    Window { from: day(from), to: day(to) }
}

fn figures(found: &Adherence) -> Vec<(String, u32, u32, u32)> {
    found
        .days
        .iter()
        .filter(|day| day.prescribed + day.extra > 0)
        .map(|day| (day.day.to_string(), day.done, day.prescribed, day.extra))
        .collect()
}

#[test]
fn a_planned_day_without_practice_counts_as_nothing_done() {
    // 2026-03-02 is a Monday. Practised on that Monday, on the next Tuesday and Wednesday; not on the first Wednesday.
    let all = practised(vec![evening(1, "2026-03-02", 3, 6), evening(2, "2026-03-10", 3, 6), evening(3, "2026-03-11", 3, 2)], Vec::new());
    let found = adherence(&all, window("2026-02-23", "2026-03-15"));
    let row = |day: &str, done, prescribed, extra| (day.to_owned(), done, prescribed, extra);
    let days = [
        row("2026-03-02", 9, 9, 0),
        row("2026-03-04", 0, 9, 0),
        row("2026-03-09", 0, 9, 0),
        row("2026-03-10", 0, 0, 9),
        row("2026-03-11", 5, 9, 0),
    ];
    assert_eq!(figures(&found), days, "rests are not counted, and a practice on a rest day is extra");
    let weeks: Vec<_> = found
        .weeks
        .iter()
        .map(|week| (week.monday, week.done, week.prescribed, week.extra, week.days_practised, week.days_planned))
        .collect();
    assert_eq!(weeks, [(day("2026-03-02"), 9, 18, 0, 1, 2), (day("2026-03-09"), 5, 18, 9, 1, 2)]);
    assert_eq!((found.done, found.prescribed, found.share()), (14, 36, Some(14.0 / 36.0)));
    assert_eq!(found.days.first().map(|first| first.day), Some(day("2026-03-02")), "before the first practice nothing was missed");
}

#[test]
fn more_than_prescribed_is_told_and_makes_no_more_than_all() {
    let all = practised(vec![evening(1, "2026-03-02", 3, 6), evening(2, "2026-03-02", 3, 1), evening(3, "2026-03-04", 9, 0)], Vec::new());
    let found = adherence(&all, window("2026-03-02", "2026-03-04"));
    assert_eq!(
        figures(&found).iter().map(|(_, done, prescribed, extra)| (*done, *prescribed, *extra)).collect::<Vec<_>>(),
        [(9, 9, 4), (3, 9, 6)]
    );
    assert!(found.days.iter().filter_map(DayAdherence::share).all(|share| share <= 1.0));
}

#[test]
fn without_a_plan_only_what_was_begun_can_be_told() {
    let once = practice(1, day("2026-03-02"), "Now and then", UNPLANNED, &[(1, "long-ah", 2, 4)]);
    let found = adherence(&practised(vec![once], Vec::new()), window("2026-03-02", "2026-03-08"));
    let bases: Vec<PlanBasis> = found.days.iter().map(|day| day.basis).collect();
    assert_eq!(bases, [vec![PlanBasis::PractisedOnly], vec![PlanBasis::Nothing; 6]].concat());
    assert_eq!((found.done, found.prescribed), (2, 4));
}

#[test]
fn today_is_not_over() {
    let mut all = practised(vec![evening(1, "2026-03-02", 3, 6)], Vec::new());
    all.today = Some(day("2026-03-04"));
    let found = adherence(&all, window("2026-03-02", "2026-03-04"));
    assert_eq!(found.days.last().map(|day| (day.open, day.prescribed)), Some((true, 9)));
    assert_eq!((found.done, found.prescribed), (9, 9));
    all.practices.push(evening(2, "2026-03-04", 3, 6));
    assert_eq!(adherence(&all, window("2026-03-02", "2026-03-04")).prescribed, 18, "what is done is done");
}

/// A practice that was interrupted today is told today: what was done of it, of what it asked for.
#[test]
fn of_today_what_was_begun_counts_and_what_is_still_to_come_is_not_missed() {
    let once = practice(1, day("2026-03-02"), "Now and then", UNPLANNED, &[(1, "long-ah", 2, 4)]);
    let mut all = practised(vec![once], Vec::new());
    all.today = Some(day("2026-03-02"));
    let found = adherence(&all, window("2026-03-02", "2026-03-02"));
    assert_eq!((found.done, found.prescribed, found.share()), (2, 4, Some(0.5)));
    assert!(found.days[0].open && found.days[0].counts());
    // Planned twice a day, the morning's done: the evening's is not missed.
    let twice = TEXT.replace("[{ days", "[{ days = [\"monday\"], at = \"09:00\" }, { days");
    let mut morning = evening(1, "2026-03-02", 3, 4);
    morning.routine_text = twice;
    let mut all = practised(vec![morning], Vec::new());
    all.today = Some(day("2026-03-02"));
    let found = adherence(&all, window("2026-03-02", "2026-03-02"));
    assert_eq!((found.days[0].done, found.days[0].prescribed, found.days[0].begun), (7, 18, 9));
    assert_eq!((found.done, found.prescribed), (7, 9));
    assert_eq!(found.weeks.iter().map(|week| (week.days_planned, week.days_practised)).collect::<Vec<_>>(), [(1, 1)]);
}

#[test]
fn a_new_text_counts_from_its_first_practice_on() {
    let more = TEXT.replace("repetitions = 6", "repetitions = 8").replace("\"wednesday\"", "\"friday\"");
    let mut second = evening(2, "2026-03-09", 3, 8);
    second.routine_text = more;
    let all = practised(vec![evening(1, "2026-03-02", 3, 6), second], Vec::new());
    let found = adherence(&all, window("2026-03-02", "2026-03-15"));
    assert_eq!(
        figures(&found).iter().map(|(day, _, prescribed, _)| (day.as_str(), *prescribed)).collect::<Vec<_>>(),
        [("2026-03-02", 9), ("2026-03-04", 9), ("2026-03-09", 11), ("2026-03-13", 11)]
    );
}

#[test]
fn a_routine_that_took_anothers_place_leaves_nothing_missed() {
    let other = TEXT.replace("Evening routine", "Spring routine");
    let spring =
        |session, date: &str| practice(session, day(date), "Spring routine", &other, &[(1, "long-ah", 3, 3), (3, "high-ee", 6, 6)]);
    let all = practised(vec![evening(1, "2026-03-02", 3, 6), spring(2, "2026-03-09"), spring(3, "2026-03-11")], Vec::new());
    let found = adherence(&all, window("2026-03-09", "2026-03-15"));
    assert_eq!((found.done, found.prescribed), (18, 18));
    let picture = Picture::of(&all, window("2026-03-09", "2026-03-15"));
    assert!(picture.programme.iter().any(|change| change.items == [ProgrammeItem::RoutineReplaced { by: "Spring routine".into() }]));
    // One for another time of day stands beside it.
    let morning = other.replace("18:30", "08:00").replace("Spring", "Morning");
    let early = practice(2, day("2026-03-09"), "Morning routine", &morning, &[(1, "long-ah", 3, 3), (3, "high-ee", 6, 6)]);
    let both = practised(vec![evening(1, "2026-03-02", 3, 6), early], Vec::new());
    assert_eq!(adherence(&both, window("2026-03-09", "2026-03-09")).prescribed, 18);
}

#[test]
fn a_growing_dose_counts_at_its_stage() {
    let text = r#"
title = "Growing"
plan = [{ at = "18:30" }]
[[step]]
exercise = "long-ah"
[step.ramp]
days = 2
stages = [{ repetitions = 2 }, { repetitions = 5 }]
"#;
    let at_stage = |session, date: &str, stage, done| {
        let mut practice = practice(session, day(date), "Growing", text, &[(1, "long-ah", done, done)]);
        practice.steps[0].ramp_stage = Some(stage);
        practice
    };
    let all =
        practised(vec![at_stage(1, "2026-03-02", 1, 2), at_stage(2, "2026-03-03", 1, 2), at_stage(3, "2026-03-04", 2, 5)], Vec::new());
    let found = adherence(&all, window("2026-03-02", "2026-03-05"));
    assert_eq!(found.days.iter().map(|day| (day.done, day.prescribed)).collect::<Vec<_>>(), [(2, 2), (2, 2), (5, 5), (0, 5)]);
    let changes = crate::changes(&all, window("2026-03-02", "2026-03-05"));
    let stage = ProgrammeItem::StageChanged { exercise: "long-ah".into(), from: 1, to: 2, dose: "5 ×".into() };
    assert!(changes.iter().any(|change| change.day == day("2026-03-04") && change.items == [stage.clone()]), "{changes:?}");
}

#[test]
fn a_misdated_practice_makes_no_plan_for_decades() {
    let mut lost = evening(1, "1970-01-05", 3, 6);
    lost.misdated = true;
    let all = practised(vec![lost, evening(2, "2026-03-02", 3, 6)], Vec::new());
    let picture = Picture::of(&all, Window::all(&all, day("2026-03-03")));
    assert_eq!((picture.window.from, picture.adherence.prescribed, picture.misdated), (day("2026-03-02"), 9, 1));
}

#[test]
fn what_was_not_reached_is_told() {
    let mut short = practice(1, day("2026-03-02"), "Evening routine", TEXT, &[(1, "long-ah", 3, 3)]);
    short.end_reason = Some("finished".into());
    let picture = Picture::of(&practised(vec![short], Vec::new()), window("2026-03-02", "2026-03-02"));
    let left: Vec<_> = picture.left_out.iter().map(|step| (step.exercise.as_str(), step.reason.as_str())).collect();
    assert_eq!(left, [("high-ee", "not reached: finished")]);
}
