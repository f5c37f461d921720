use super::*;
use crate::samples::{day, practice, practised};
use crate::{Cueing, Picture, StepTime};

#[test]
fn minutes_and_repetitions_stand_by_day_and_by_group() {
    let one = practice(1, day("2026-11-16"), "Evening", "", &[(1, "long-ah", 3, 3), (2, "effortful-swallow", 5, 8)]);
    let two = practice(2, day("2026-11-16"), "Evening", "", &[(1, "glide-up", 2, 2), (2, "gone-for-good", 1, 1)]);
    let later = practice(3, day("2026-11-18"), "Evening", "", &[(1, "long-ah", 3, 3)]);
    let wrong = Practice { misdated: true, ..practice(4, day("2026-11-19"), "Evening", "", &[(1, "long-ah", 3, 3)]) };
    let time = |session, step, time_s| StepTime { session, step, time_s };
    let mut all = practised(vec![one, two, later, wrong], Vec::new());
    // Gone on with after an interruption, a step has two times.
    all.step_times = vec![time(1, 1, 60.0), time(1, 1, 30.0), time(1, 2, 240.0), time(2, 1, 90.0), time(3, 1, 60.0), time(4, 1, 600.0)];
    let cueing = |session, answered_alone, answered_with_hint| Cueing { answered_alone, answered_with_hint, ..Cueing::of_session(session) };
    all.cueing = vec![cueing(1, 2, 1), cueing(3, 4, 0), cueing(4, 100, 0)];
    let picture = Picture::of(&all, Window { from: day("2026-11-16"), to: day("2026-11-22") });
    let days: Vec<_> = picture.given.days.iter().map(|given| (given.day, given.minutes, given.repetitions)).collect();
    assert_eq!(days, [(day("2026-11-16"), 20.0, 11), (day("2026-11-18"), 10.0, 3)]);
    let groups: Vec<_> = picture.given.groups.iter().map(|given| (given.group, given.minutes, given.repetitions, given.days)).collect();
    assert_eq!(groups, [(Some("Voice"), 4.0, 8, 2), (Some("Swallowing"), 4.0, 5, 1), (None, 0.0, 1, 1)]);
    assert_eq!((picture.cueing.questions(), picture.cueing.answered_alone, picture.cueing.answered_with_hint), (7, 6, 1));
}
