use super::*;
use crate::samples::{day, practice, practised};

const OLD: &str = r#"
title = "Evening routine"
plan = [{ days = ["monday", "wednesday"], at = "18:30" }]
[[step]]
exercise = "long-ah"
repetitions = 3
target_s = 10
[[step]]
exercise = "high-ee"
repetitions = 6
[[step]]
exercise = "glide-up"
"#;

const NEW: &str = r#"
title = "Evening routine"
cue_words = "strong voice"
plan = [{ at = "08:00" }]
[[step]]
exercise = "glide-up"
[[step]]
exercise = "long-ah"
repetitions = 5
target_s = 12
[[step]]
exercise = "syllable-repetition"
"#;

#[test]
fn what_changed_between_two_texts_is_told_field_by_field() {
    let practices = vec![
        practice(1, day("2026-03-02"), "Evening routine", OLD, &[]),
        practice(2, day("2026-03-04"), "Evening routine", OLD, &[]),
        practice(3, day("2026-03-09"), "Evening routine", NEW, &[]),
    ];
    let all = practised(practices, Vec::new());
    let found = changes(&all, Window { from: day("2026-03-01"), to: day("2026-03-31") });
    let [begun, changed] = &found[..] else { panic!("{found:?}") };
    assert_eq!((begun.day, begun.session), (day("2026-03-02"), 1));
    let exercises = ["long-ah", "high-ee", "glide-up"].map(str::to_owned).to_vec();
    assert_eq!(begun.items, [ProgrammeItem::RoutineBegun { exercises }]);
    assert_eq!((changed.day, changed.session), (day("2026-03-09"), 3));
    let has = |item: ProgrammeItem| assert!(changed.items.contains(&item), "{item:?} in {:#?}", changed.items);
    has(ProgrammeItem::ExerciseRemoved { exercise: "high-ee".into(), dose: "6 ×, 4 s".into() });
    has(ProgrammeItem::DoseChanged { exercise: "long-ah".into(), field: "repetitions".into(), from: "3".into(), to: "5".into() });
    has(ProgrammeItem::DoseChanged { exercise: "long-ah".into(), field: "target_s".into(), from: "10".into(), to: "12".into() });
    has(ProgrammeItem::OrderChanged);
    has(ProgrammeItem::PlanChanged { from: "mon wed 18:30".into(), to: "daily 08:00".into() });
    has(ProgrammeItem::SettingChanged { field: "cue_words".into(), from: String::new(), to: "strong voice".into() });
    assert!(
        changed.items.iter().any(|item| matches!(item, ProgrammeItem::ExerciseAdded { exercise, .. } if exercise == "syllable-repetition"))
    );
    assert_eq!(changed.items.len(), 7, "{:#?}", changed.items);
    assert_eq!(changes(&all, Window { from: day("2026-03-10"), to: day("2026-03-31") }), []);
}

#[test]
fn a_text_that_cannot_be_read_any_more_stops_nothing() {
    let practices = vec![practice(1, day("2026-03-02"), "Old", "title = ", &[]), practice(2, day("2026-03-03"), "Old", OLD, &[])];
    let found = changes(&practised(practices, Vec::new()), Window { from: day("2026-03-01"), to: day("2026-03-31") });
    // That it is another text is told all the same.
    let items: Vec<_> = found.iter().flat_map(|change| &change.items).collect();
    assert!(matches!(items[..], [ProgrammeItem::RoutineBegun { .. }, ProgrammeItem::SettingChanged { .. }]), "{items:?}");
}

#[test]
fn another_posture_is_a_change() {
    let text = |posture: &str| {
        format!("title = \"Neck\"\n[[step]]\nexercise = \"neck-turns\"\ncautions_acknowledged = true\nposture = \"{posture}\"\n")
    };
    let (sitting, standing) = (text("sitting"), text("standing"));
    let practices = vec![practice(1, day("2026-03-02"), "Neck", &sitting, &[]), practice(2, day("2026-03-04"), "Neck", &standing, &[])];
    let all = practised(practices, Vec::new());
    let found = changes(&all, Window { from: day("2026-03-01"), to: day("2026-03-31") });
    let posture = ProgrammeItem::DoseChanged {
        exercise: "neck-turns".into(),
        field: "posture".into(),
        from: "sitting".into(),
        to: "standing".into(),
    };
    assert_eq!(found.last().map(|change| change.items.as_slice()), Some(&[posture][..]), "{found:#?}");
}
