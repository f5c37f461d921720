//! Promise: a programme is written by answering questions and says what was answered; plans and ramps are checked and
//! stepped as their rules say; the handout holds all of it.

use tidecount::routine::{Fault, FaultKind, Hearing, Prescription, Weekday, check_text};

const NOTHING_LISTENED_FOR: Hearing<'_> = Hearing { commands: &[], knows_word: None };

fn checked(text: &str) -> Prescription {
    check_text("routine.toml", text, NOTHING_LISTENED_FOR).unwrap_or_else(|faults| panic!("{faults}\n{text}"))
}

/// The text has exactly this one fault.
#[track_caller]
fn only(text: &str, kind: FaultKind, line: usize, what: &str, remedy: &str) {
    let found: Vec<Fault> = check_text("routine.toml", text, NOTHING_LISTENED_FOR).err().map_or(Vec::new(), |faults| faults.list);
    let [fault] = &found[..] else { panic!("{found:#?}") };
    assert_eq!((fault.kind, fault.line), (kind, line), "{fault:#?}");
    assert!(fault.what.contains(what), "{}", fault.what);
    assert!(fault.remedy.contains(remedy), "{}", fault.remedy);
}

fn planned(plan: &str) -> String {
    format!("title = \"Evening\"\nplan = {plan}\n[[step]]\nexercise = \"rest\"\n")
}

#[test]
fn a_plan_is_days_and_times() {
    let plan = checked(&planned("[{ days = [\"wednesday\", \"monday\"], at = \"18:30\" }, { at = \"8:05\" }]")).plan;
    assert_eq!(plan.len(), 2);
    assert_eq!(plan[0].days.iter().copied().collect::<Vec<_>>(), [Weekday::Monday, Weekday::Wednesday]);
    assert_eq!((plan[0].at_min, plan[0].at_text().as_str()), (1110, "18:30"));
    assert_eq!((plan[1].days.len(), plan[1].at_min), (7, 485));
    // The same day at another time, and the same time on another day.
    checked(&planned("[{ days = [\"monday\"], at = \"18:30\" }, { days = [\"monday\"], at = \"9:00\" }, { days = [\"sunday\"], at = \"18:30\" }]"));
    assert!(checked("title = \"x\"\n[[step]]\nexercise = \"rest\"").plan.is_empty());
}

#[test]
fn bad_plans_are_faults_with_line_and_remedy() {
    for bad in ["24:00", "18:60", "half past six", "18.30", ""] {
        only(&planned(&format!("[{{ at = \"{bad}\" }}]")), FaultKind::OutOfRange, 2, "no time of day", "`at = \"18:30\"`");
    }
    only(&planned("[{ at = 18:30:00 }]"), FaultKind::WrongType, 2, "`at` is a date or time", "at = \"18:30\"");
    only(&planned("[{ days = [\"monday\"] }]"), FaultKind::Missing, 2, "no `at`", "at = \"18:30\"");
    only(&planned("[{ days = [\"mnoday\"], at = \"9:00\" }]"), FaultKind::UnknownName, 2, "\"mnoday\"", "Did you mean `monday`?");
    only(&planned("[{ days = [], at = \"9:00\" }]"), FaultKind::Missing, 2, "`days` is empty", "every day");
    only(&planned("[]"), FaultKind::Missing, 2, "`plan` is empty", "at = ");
    only(&planned("[{ days = [\"monday\", \"monday\"], at = \"9:00\" }]"), FaultKind::Twice, 2, "monday twice", "Keep one");
    let twice = "[\n{ days = [\"monday\"], at = \"9:00\" },\n{ at = \"09:00\" },\n]";
    only(&planned(twice), FaultKind::Twice, 4, "monday at 09:00 stands in the plan twice", "Keep one");
    only(&planned("[{ day = \"monday\", at = \"9:00\" }]"), FaultKind::UnknownKey, 2, "`day`", "Did you mean `days`?");
}
