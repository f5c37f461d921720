use super::*;

fn after(outcome: impl FnOnce(Practised) -> Practised) -> Rig {
    let mut rig = Rig::new(alone(), 10, 0);
    rig.hear(Said::StartMine);
    rig.said.clear();
    let outcome = outcome(rig.practised((0, 0), 2, End::Completed));
    rig.ends(outcome);
    rig
}

fn unwell(reason: &str, exercise: Option<&str>) -> Vec<Unwell> {
    vec![Unwell { reason: reason.into(), exercise: exercise.map(str::to_owned) }]
}

#[test]
fn what_hurts_is_told_aloud_thrice_a_minute_apart() {
    let mut rig = after(|outcome| Practised { unwell: unwell("pain", Some("head lift")), ..outcome });
    rig.pass(600.0);
    let times: Vec<f64> = rig.said.iter().filter(|line| line.1.key == "attend-notice-pain-during").map(|line| line.0).collect();
    assert_eq!(times.len(), 3, "{:?}", rig.said);
    assert!((times[1] - times[0] - 60.0).abs() < 1.0 && (times[2] - times[1] - 60.0).abs() < 1.0, "{times:?}");
    assert_eq!(rig.kept, [1, 2, 3].map(|n| (Some(0), "attend-notice-pain-during".to_owned(), Keeping::Said(n))));
    assert_eq!(
        rig.words()[..2],
        ["Grandpa said it hurts during the head lift. Please look in.", "Say thank you when you have heard this."]
    );
    assert!(!rig.listening.contains(&Said::Thanks));
}

#[test]
fn thank_you_ends_it_and_an_unsure_one_does_not() {
    let mut rig = after(|outcome| Practised { unwell: unwell("dizzy", None), end: End::Finished, ..outcome });
    rig.pass(5.0);
    rig.hear_with(Said::Thanks, 0.6);
    rig.pass(70.0);
    assert_eq!(rig.keys().iter().filter(|key| **key == "attend-notice-dizzy").count(), 2);
    rig.hear(Said::Thanks);
    rig.pass(600.0);
    assert_eq!(rig.keys().iter().filter(|key| **key == "attend-notice-dizzy").count(), 2);
    assert_eq!(rig.kept.last(), Some(&(Some(0), "attend-notice-dizzy".to_owned(), Keeping::Answered)));
    assert_eq!(rig.keys().last(), Some(&"attend-notice-answered"));
}

#[test]
fn the_screen_keeps_it_in_sight_until_it_is_answered_or_the_person_practises_again() {
    let hurt = |rig: &Rig| Practised { unwell: unwell("pain", None), ..rig.practised((0, 0), 2, End::Completed) };
    let shown = |rig: &Rig| rig.view.as_ref().map(|view| view.prompt.key.clone()).unwrap_or_default();
    let mut rig = after(|outcome| Practised { unwell: unwell("pain", None), ..outcome });
    rig.pass(10.0);
    assert_eq!(shown(&rig), "attend-notice-pain");
    let offered = rig.view.as_ref().map(|view| view.can_say.clone()).unwrap_or_default();
    assert!(offered.first() == Some(&Said::Thanks) && offered.len() <= 4, "{offered:?}");
    rig.pass(3600.0);
    assert_eq!(shown(&rig), "attend-notice-pain", "long after it was last said aloud");
    rig.hear(Said::StartMine);
    let well = rig.practised((0, 0), 2, End::Completed);
    rig.ends(well);
    rig.pass(5.0);
    assert_eq!(shown(&rig), "attend-waiting-shown");

    rig.hear(Said::StartMine);
    let outcome = hurt(&rig);
    rig.ends(outcome);
    rig.pass(10.0);
    rig.hear(Said::Thanks);
    rig.pass(5.0);
    assert_eq!(shown(&rig), "attend-waiting-shown");
}

#[test]
fn no_answer_is_told_and_a_practice_that_went_well_is_not() {
    let rig = after(|outcome| Practised { end: End::NoAnswer, missed: 1, ..outcome });
    assert_eq!(rig.keys()[0], "attend-notice-no-answer");
    let rig = after(|outcome| Practised { missed: 3, ..outcome });
    assert_eq!(rig.keys()[0], "attend-notice-missed");
    let mut rig = after(|outcome| outcome);
    rig.pass(300.0);
    assert!(rig.said.is_empty() && rig.kept.is_empty());
}

#[test]
fn help_is_told_unless_the_practice_went_to_its_end() {
    let rig = after(|outcome| Practised { unwell: unwell("help", Some("long ah")), ..outcome });
    assert!(rig.said.is_empty(), "he heard the instruction again and went on");
    let mut rig = after(|outcome| Practised { unwell: unwell("help", Some("long ah")), end: End::NoAnswer, ..outcome });
    rig.pass(3.0);
    assert_eq!(rig.words()[0], "Grandpa asked for help. Please look in.");
}

#[test]
fn a_summary_follows_the_practice_where_the_household_wants_it() {
    let mut household = alone();
    household.persons[0].summary_after = true;
    let mut rig = Rig::new(household, 10, 0);
    rig.hear(Said::StartMine);
    rig.said.clear();
    let outcome = rig.practised((0, 0), 4, End::Finished);
    rig.ends(outcome);
    assert_eq!(rig.words(), ["He did four of five.", "It ended early, by choice."]);
}

#[test]
fn a_dead_microphone_is_told_now_and_after_one_five_and_fifteen_minutes_and_its_return_too() {
    for (hearing, key) in
        [(Hearing::Gone, "attend-deaf-gone"), (Hearing::Silent, "attend-deaf-silent"), (Hearing::NoWords, "attend-deaf-words")]
    {
        let mut rig = Rig::new(alone(), 10, 0);
        rig.on(Event::Hearing { at_s: rig.at_s, hearing });
        let began_s = rig.at_s;
        rig.pass(3600.0);
        let times: Vec<f64> = rig.said.iter().map(|line| ((line.0 - began_s) / 60.0).round()).collect();
        assert_eq!(times, [0.0, 1.0, 5.0, 15.0], "{key}");
        assert!(rig.keys().iter().all(|said| *said == key));
        rig.on(Event::Hearing { at_s: rig.at_s, hearing: Hearing::Well });
        assert_eq!(rig.keys().last(), Some(&"attend-hears-again"));
        assert_eq!(rig.kept.last().map(|kept| kept.2), Some(Keeping::Over));
        rig.pass(600.0);
        assert_eq!(rig.said.len(), 5);
    }
}

#[test]
fn deaf_it_does_not_invite_and_hearing_again_it_does() {
    let mut rig = Rig::new(alone(), 18, 25);
    rig.on(Event::Hearing { at_s: rig.at_s, hearing: Hearing::Gone });
    rig.pass_to(18, 40);
    assert!(!rig.keys().contains(&"attend-invite"));
    rig.on(Event::Hearing { at_s: rig.at_s, hearing: Hearing::Well });
    rig.pass(10.0);
    assert!(rig.keys().contains(&"attend-invite"));
}

#[test]
fn a_session_s_entries_give_what_is_told() {
    use session::{Entry, Fact, Position};
    let at = |step, fact| Entry { at_s: 1.0, fact, position: Some(Position { step, set: 1, repetition: 1 }) };
    let none = |fact| Entry { at_s: 1.0, fact, position: None };
    let done = |exercise: &str| Fact::StepDone { exercise: exercise.into(), repetitions_done: 1, repetitions_prescribed: 1 };
    let stopped = |exercise: &str, reason: &str| Fact::StepStopped {
        exercise: exercise.into(),
        reason: reason.into(),
        repetitions_done: 0,
        repetitions_prescribed: 1,
    };
    let entries = [
        none(Fact::SessionBegun { routine: "Evening".into(), steps: 5, software: String::new() }),
        none(Fact::StepLeftOut { exercise: "tongue-reach".into(), reason: "no spoken agreement".into() }),
        at(1, done("long-ah")),
        at(2, stopped("neck-turns", "skipped")),
        at(2, done("neck-turns")),
        at(3, stopped("cheek-puff", "skipped")),
        at(4, Fact::SafetyStop { exercise_before: None, exercise: Some("head-lift-sustained".into()), reason: "pain".into() }),
        at(4, stopped("head-lift-sustained", "pain")),
    ];
    let name = |id: &str| id.replace('-', " ");
    let broken_off = Practised::of(0, 0, 600, &entries, &name);
    assert_eq!((broken_off.done, broken_off.prescribed, broken_off.end), (2, 5, End::BrokenOff));
    assert_eq!(broken_off.left_out, ["tongue reach", "cheek puff"], "what was gone back to is not left out");
    assert_eq!(broken_off.unwell, [Unwell { reason: "pain".into(), exercise: Some("head lift sustained".into()) }]);
    let ended = none(Fact::SessionEnded { reason: "finished".into(), steps_done: 2, steps_prescribed: 5, duration_s: 60.0 });
    let finished = Practised::of(0, 0, 600, &[&entries[..], &[ended]].concat(), &name);
    assert_eq!((finished.done, finished.prescribed, finished.end), (2, 5, End::Finished));
    assert!(finished.counts());
}

#[test]
fn in_quiet_hours_only_what_concerns_a_person_is_said() {
    let mut household = alone();
    household.home.quiet = Some(crate::QuietHours { from_min: 1_080, to_min: 1_200 });
    let mut rig = Rig::new(household, 17, 59);
    rig.pass_to(18, 1);
    rig.on(Event::Hearing { at_s: rig.at_s, hearing: Hearing::Silent });
    rig.pass(300.0);
    assert!(rig.said.is_empty(), "{:?}", rig.keys());
    assert!(!rig.attendant.is_busy());
    let mut outcome = rig.practised((0, 0), 1, End::NoAnswer);
    outcome.missed = 3;
    rig.ends(outcome);
    rig.pass(30.0);
    assert!(rig.keys().contains(&"attend-notice-no-answer"), "{:?}", rig.keys());
    rig.pass_to(20, 1);
    assert!(rig.keys().contains(&"attend-deaf-silent"), "{:?}", rig.keys());
}

#[test]
fn who_is_to_be_told_of_a_fault_is_said_with_it() {
    let mut household = alone();
    household.home.tell_faults_to = Some("your daughter".into());
    let mut rig = Rig::new(household, 10, 0);
    rig.on(Event::Hearing { at_s: rig.at_s, hearing: Hearing::Gone });
    rig.pass(10.0);
    assert_eq!(rig.words().last().map(String::as_str), Some("Please tell your daughter."));
}
