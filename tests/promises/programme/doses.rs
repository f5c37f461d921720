//! Plans, ramps and templates: what is read, what is refused, and where.

use super::*;

#[test]
fn a_plan_is_days_and_times() {
    let plan = checked(&planned("[{ days = [\"wednesday\", \"monday\"], at = \"18:30\" }, { at = \"8:05\" }]")).plan;
    assert_eq!(plan.len(), 2);
    assert_eq!(plan[0].days.iter().copied().collect::<Vec<_>>(), [Weekday::Monday, Weekday::Wednesday]);
    assert_eq!((plan[0].at_min, plan[0].at_text().as_str()), (1110, "18:30"));
    assert_eq!((plan[1].days.len(), plan[1].at_min), (7, 485));
    // The same day at another time, and the same time on another day.
    checked(&planned(
        "[{ days = [\"monday\"], at = \"18:30\" }, { days = [\"monday\"], at = \"9:00\" }, { days = [\"sunday\"], at = \"18:30\" }]",
    ));
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

#[test]
fn a_ramp_begins_at_its_first_stage_and_is_checked_like_any_dose() {
    let read = checked(&ramped("head-lift-sustained", "{ stages = [{ repetitions = 2, hold_s = 10 }, { hold_s = 20 }] }"));
    let step = &read.routine.steps[0];
    assert_eq!((step.repetitions, step.ramp_stage, read.ramps[0].days), (2, Some(1), 3));
    // What the second stage leaves out is the step's own, here the catalogue's three lifts.
    assert_eq!(read.ramps[0].stages[1].repetitions, 3);
    let voiced = checked(&ramped("long-ah", "{ days = 2, stages = [{ target_s = 6 }, { target_s = 8 }] }"));
    assert!(matches!(voiced.ramps[0].stages[1].work, Work::Voiced { target_s: Some(8.0), .. }));
    let paced = checked(&ramped("nasal-breathing", "{ stages = [{ in = 3, out = 5 }, { out = 6 }] }"));
    assert!(matches!(&paced.ramps[0].stages[1].work, Work::Paced { phases, .. } if phases[1].counts == 6));
}

#[test]
fn bad_ramps_are_faults_with_line_and_remedy() {
    let lift = |ramp: &str| ramped("head-lift-sustained", ramp);
    only(
        &lift("{ stages = [{ hold_s = 10 }, { hold_s = 61 }] }"),
        FaultKind::OutOfRange,
        5,
        "`length_s` of `head-lift-sustained` is 61, outside 2 to 60",
        "Easterling",
    );
    only(
        &lift("{ stages = [{ hold_s = 10 }, { repetitions = 9 }] }"),
        FaultKind::OutOfRange,
        5,
        "`repetitions` of `head-lift-sustained` is 9",
        "Give a value",
    );
    only(&lift("{ stages = [{ hold_s = 10 }] }"), FaultKind::Missing, 5, "has 1 stages", "Add stages");
    only(&lift("{ days = 3 }"), FaultKind::Missing, 5, "no `stages`", "stages = ");
    only(
        &lift("{ days = 0, stages = [{ hold_s = 10 }, { hold_s = 20 }] }"),
        FaultKind::OutOfRange,
        5,
        "`days` is 0, outside 1 to 14",
        "Give",
    );
    only(
        &lift("{ stages = [{ hold_s = 10 }, { hold_s = 10 }] }"),
        FaultKind::Twice,
        5,
        "stage 2 of `head-lift-sustained` asks for the same as stage 1",
        "Change",
    );
    only(&lift("{ stages = [{ hold_s = 20 }, { }] }"), FaultKind::Missing, 5, "says nothing", "hold_s");
    only(
        &lift("{ stages = [{ hold_s = 10 }, { target_s = 20 }] }"),
        FaultKind::NotForThisExercise,
        5,
        "`target_s` does not belong to a stage",
        "hold_s",
    );
    only(
        &lift("{ stages = [{ hold_s = 10 }, { hold = 20, repetitions = 2 }] }"),
        FaultKind::UnknownKey,
        5,
        "`hold`",
        "Did you mean `hold_s`?",
    );
    only(
        &ramped("rest", "{ stages = [{ length_s = 10 }, { length_s = 20 }] }"),
        FaultKind::NotForThisExercise,
        5,
        "`ramp` does not belong to `rest`",
        "length_s",
    );
    let lips = ramped("lip-press-smile", "{ stages = [{ hold_s = 10 }, { repetitions = 4 }] }");
    only(&lips, FaultKind::NotForThisExercise, 5, "which of the 3 phases", "phases = [");
    only(
        &ramped("long-ah", "{ stages = [{ target_s = 10 }, { target_s = 20, repetitions = 30 }] }"),
        FaultKind::OutOfRange,
        5,
        "add up to 600 s",
        "vocal fatigue",
    );
    let many = (1..=31).map(|n| format!("{{ hold_s = {} }}", n + 5)).collect::<Vec<_>>().join(", ");
    only(&lift(&format!("{{ stages = [{many}] }}")), FaultKind::OutOfRange, 5, "31 stages", "larger steps");
}

/// Source: the head-lift rows of `tests/checks/doses.tsv` (goal 3 × 60 s, 60 s rest: hospital leaflet 2022) and the advice to
/// grow (Easterling et al. 2005), as transcribed there; the first stage of 10 s is the issue's own example.
#[test]
fn the_head_lift_template_grows_from_ten_to_sixty_seconds() {
    let ramp = ramp_template("head-lift-sustained").expect("a template");
    let doses: Vec<_> = ramp.stages.iter().map(|stage| (stage.repetitions, stage.hold_s)).collect();
    assert_eq!((doses[0], doses[doses.len() - 1]), ((Some(3), Some(10.0)), (Some(3), Some(60.0))));
    assert_eq!(ramp.rest_s, Some(60.0));
    assert!(ramp.source.contains("Easterling et al. 2005") && ramp.source.contains("hospital leaflet 2022"));
}

/// Source: `tests/checks/doses.tsv`. What a template takes over is within the published numbers, or is not offered.
#[test]
fn templates_take_over_what_the_sources_say() {
    let table = std::fs::read_to_string(root().join("tests/checks/doses.tsv")).expect("the table");
    let mut compared = 0;
    for line in table.lines().filter(|line| !line.starts_with(['#', 'e'])).chain(table.lines().filter(|line| line.starts_with("effortful")))
    {
        let cells: Vec<&str> = line.split('\t').collect();
        let entry = find(cells[0]).unwrap_or_else(|| panic!("{line}"));
        let within = |cell: &str, value: f64| {
            let (low, high) = cell.split_once("..").unwrap_or((cell, cell));
            (low.parse::<f64>().expect(cell)..=high.parse::<f64>().expect(cell)).contains(&value)
        };
        for template in templates(entry).iter().filter(|template| template.dose.source.contains(cells[1])) {
            for (field, cell) in [("repetitions", cells[2]), ("hold_s", cells[3]), ("target_s", cells[3]), ("rest_s", cells[4])] {
                let taken = template.numbers.iter().find(|(name, _)| *name == field).map(|(_, value)| *value);
                // Where a source gives no rest, the shortest that needs no clinician's word is added.
                if let (Some(value), "rest_s", "-") = (taken, field, cell) {
                    let share = safe_dose(&entry.id).and_then(|safe| safe.rest_per_hold.as_ref()).expect("a rest").in_force(false);
                    let hold_s = template.numbers.iter().find(|(name, _)| *name == "hold_s").map(|(_, value)| *value).expect("a hold");
                    assert_eq!(value, (share * hold_s).ceil(), "{line}");
                } else if let Some(value) = taken {
                    assert!(cell != "-" && within(cell, value), "{line}: {field} {value}");
                    compared += 1;
                }
            }
        }
    }
    assert!(compared >= 40, "{compared}");
    let text = print_templates(Some("chin-tuck-ball"));
    let (park, kim) = (text.find("Park JS et al. 2018").expect("one side"), text.find("Kim & Park 2019").expect("the other"));
    assert!(park < kim && text.contains("3 × 60 s") && text.contains("3 × 10 s") && text.contains("Sources disagree"), "{text}");
    let text = print_templates(Some("tongue-hold-swallow"));
    assert!(text.contains("changed nothing in healthy people") && text.contains("pressure in the throat rises"), "{text}");
    let all = print_templates(None);
    for entry in catalogue() {
        assert!(all.contains(&format!("({})", entry.id)), "{}", entry.id);
    }
}
