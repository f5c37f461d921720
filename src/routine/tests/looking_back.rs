use super::*;
use crate::{Hearing, Prescription, check_text};

const STEPS: &str = "[[step]]\nexercise = \"long-ah\"\n";

fn read(top: &str, steps: &str) -> Result<Prescription, crate::Faults> {
    check_text("evening.toml", &format!("title = \"x\"\n{top}\n{steps}"), Hearing::default())
}

#[test]
fn nothing_is_asked_unless_the_routine_says_so() {
    let quiet = read("", STEPS).expect("a routine");
    assert_eq!(quiet.routine.looking_back, LookingBack::default());
    let asks = read("ratings = [\"pain\", \"effort\"]\nweekly_questions = true", STEPS).expect("a routine");
    assert_eq!(asks.routine.looking_back, LookingBack { ratings: vec![Rating::Pain, Rating::Effort], weekly: true });
}

#[test]
fn every_fault_names_file_line_and_remedy() {
    let cases = [
        ("ratings = []", FaultKind::Missing, "leave the key out"),
        ("ratings = [\"effort\", \"effort\"]", FaultKind::Twice, "Keep one"),
        ("ratings = [\"voice\"]", FaultKind::UnknownName, "weekly_questions = true"),
        ("ratings = [\"efort\"]", FaultKind::UnknownName, "`effort`"),
        ("ratings = [\"mood\"]", FaultKind::UnknownName, "Choose one of: effort, tiredness, pain"),
    ];
    for (line, kind, remedy) in cases {
        let faults = read(line, STEPS).expect_err(line);
        let [fault] = &faults.list[..] else { panic!("{line}: {faults}") };
        assert_eq!((fault.kind, fault.line), (kind, 2), "{line}");
        assert!(fault.remedy.contains(remedy), "{line}: {}", fault.remedy);
        assert!(faults.to_string().contains("evening.toml:2"), "{faults}");
    }
}

#[test]
fn swallow_work_is_what_the_catalogue_says_helps_swallowing() {
    let of = |exercise: &str| {
        let steps = format!("[[step]]\nexercise = \"{exercise}\"\ncautions_acknowledged = true\n");
        has_swallow_work(&read("", &steps).expect("a routine").routine)
    };
    assert!(of("effortful-swallow") && of("head-lift-sustained"));
    assert!(!of("long-ah"));
}
