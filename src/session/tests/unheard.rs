//! Word games where no answer can be heard: they are led, and nothing is judged.

use super::rig::*;
use crate::*;
use routine::{NamingItem, Step, Timing, Work};

fn nobody_is_heard() -> SessionContext {
    SessionContext { understood: Understood::Nothing, ..SessionContext::default() }
}

fn only_commands_are_heard() -> SessionContext {
    SessionContext { understood: Understood::Commands, ..SessionContext::default() }
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

#[test]
fn whoever_has_said_the_word_says_done_where_commands_alone_are_heard() {
    let mut rig = Rig::new(vec![question()], only_commands_are_heard());
    rig.begin();
    rig.until_said("question-clue", 30.0);
    rig.run_s(6.0);
    let listening = rig.listening.clone().expect("listens");
    assert!(listening.answers.is_empty(), "no answer is listened for that nobody can hear: {:?}", listening.answers);
    assert!([Command::Done, Command::Hint, Command::Skip].into_iter().all(|command| rig.may_say(command)));
    rig.event(Event::Command { at_s: rig.now_s(), command: Command::Hint, confidence: 0.9, text: "hint".into() });
    rig.run_s(3.0);
    assert_eq!(rig.count("question-hint-asked"), 1);
    rig.event(Event::Command { at_s: rig.now_s(), command: Command::Done, confidence: 0.9, text: "done".into() });
    assert_eq!(unjudged(&rig), [("done", Some("It holds money and has a river beside it."))]);
    rig.run_s(3.0);
    assert_eq!((rig.count("question-told"), rig.count("question-found")), (1, 0));
}

#[test]
fn a_list_is_not_counted_where_commands_alone_are_heard_and_the_next_exercise_can_be_asked_for() {
    let mut rig = Rig::new(vec![naming(), question()], only_commands_are_heard());
    rig.begin();
    rig.until_said("question-clue", 60.0);
    rig.run_s(6.0);
    let listening = rig.listening.clone().expect("listens");
    assert!(listening.answers.is_empty() && !listening.list && rig.may_say(Command::Skip), "{listening:?}");
    rig.command(Command::Skip);
    rig.run_s(30.0);
    assert!(!rig.kinds().contains(&"category_named".to_owned()), "what could not be heard is not counted as nothing");
    assert!(rig.keys().contains(&"ex-word-questions-instruction"), "{:?}", rig.keys());
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
