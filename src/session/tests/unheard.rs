//! Word games where no answer can be heard: they are led, and nothing is judged.

use super::rig::*;
use crate::*;
use routine::{NamingItem, Step, Timing, Work};

fn nobody_is_heard() -> SessionContext {
    SessionContext { deaf: true, ..SessionContext::default() }
}

fn naming() -> Step {
    let item = NamingItem { clue: "Name animals.".into(), category: "animals".into(), members: vec!["dog".into()], fact: None };
    step("category-naming", Timing::Question, 1, Work::Naming { items: vec![item], length_s: 20.0 })
}

/// What ended each repetition, and what was asked in it.
fn unjudged<'a>(rig: &'a Rig) -> Vec<(&'a str, Option<&'a str>)> {
    let of = |entry: &'a Entry| match &entry.fact {
        Fact::RepetitionDone { ended_by, asked, .. } => Some((ended_by.as_str(), asked.as_deref())),
        _ => None,
    };
    rig.facts.iter().filter_map(of).collect()
}

#[test]
fn whoever_has_said_the_word_presses_done_and_is_told_it() {
    let mut rig = Rig::new(vec![question()], nobody_is_heard());
    rig.begin();
    rig.until_said("question-clue", 30.0);
    rig.run_s(6.0);
    assert!(rig.may_say(Command::Done) && unjudged(&rig).is_empty());
    rig.command(Command::Done);
    assert_eq!(unjudged(&rig), [("done", Some("It holds money and has a river beside it."))]);
    rig.run_s(3.0);
    assert_eq!((rig.count("question-told"), rig.count("question-found")), (1, 0));
    assert!(!rig.kinds().contains(&"question_answered".to_owned()), "nothing is judged that was not heard");
    rig.run_s(10.0);
    assert!(rig.facts.iter().any(|entry| matches!(entry.fact, Fact::StepDone { repetitions_done: 1, .. })));
}

#[test]
fn whoever_presses_nothing_is_told_it_when_the_time_is_over() {
    let mut rig = Rig::new(vec![question(), naming()], nobody_is_heard());
    rig.begin();
    rig.until_said("question-told", 90.0);
    assert_eq!((rig.count("question-hint"), unjudged(&rig)[0].0), (1, "next cue"));
    rig.until_said("naming-over", 90.0);
    assert_eq!(unjudged(&rig)[1], ("next cue", Some("animals")));
    assert!(!rig.kinds().contains(&"category_named".to_owned()), "what could not be heard is not counted as nothing");
}

/// Where answers are heard, "done" answers nothing.
#[test]
fn whoever_is_heard_is_judged_as_ever() {
    let mut rig = Rig::new(vec![question()], SessionContext::default());
    rig.begin();
    rig.until_said("question-clue", 30.0);
    rig.run_s(6.0);
    assert!(!rig.may_say(Command::Done));
    rig.event(Event::Command { at_s: rig.now_s(), command: Command::Done, confidence: 0.95, text: "done".into() });
    rig.run_s(1.0);
    assert!(unjudged(&rig).is_empty() && rig.count("question-told") == 0);
}
