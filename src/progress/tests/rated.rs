use super::*;
use crate::samples::day;

#[test]
fn ratings_are_told_by_kind_as_they_are() {
    let rated = |session, on: &str, what, over, value| Rated { session, day: day(on), what, over, value };
    let (practice, week) = (RatedOver::Practice, RatedOver::Week);
    let ratings_given = vec![
        rated(1, "2026-11-16", Rating::Effort, practice, Some(3)),
        rated(2, "2026-11-17", Rating::Effort, practice, Some(6)),
        rated(3, "2026-11-18", Rating::Effort, practice, None),
        rated(4, "2026-11-18", Rating::Effort, practice, Some(4)),
        // No rating, whatever wrote it, and one before the window.
        rated(5, "2026-11-19", Rating::Effort, practice, Some(11)),
        rated(6, "2026-11-01", Rating::Effort, practice, Some(10)),
        rated(7, "2026-11-18", Rating::Pain, practice, None),
        rated(8, "2026-11-20", Rating::Voice, week, Some(7)),
    ];
    let practised = Practised { ratings: ratings_given, ..Practised::default() };
    let told = ratings(&practised, Window { from: day("2026-11-16"), to: day("2026-11-22") });
    let [effort, voice] = &told[..] else { panic!("pain was never rated: {told:?}") };
    assert_eq!((effort.given, effort.passed_over, effort.median, effort.low, effort.high, effort.latest), (3, 1, 4.0, 3, 6, 4));
    assert_eq!((voice.what, voice.over, voice.latest, voice.latest_day), (Rating::Voice, week, 7, day("2026-11-20")));
}
