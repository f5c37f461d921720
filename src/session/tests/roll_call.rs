//! Who of a class is there, and what that means for each exercise.

use super::rig::*;
use crate::*;
use routine::{Called, HeardAs, Participant};

fn one(called: Called, leaves_out: &[&str], seated: &[&str]) -> Participant {
    let ids = |list: &[&str]| list.iter().map(|id| (*id).to_owned()).collect();
    let name = called.to_string().to_lowercase();
    let heard = Some(HeardAs { here: format!("{name} is here"), not_here: format!("{name} is not here") });
    Participant { called, leaves_out: ids(leaves_out), seated: ids(seated), reason: None, heard }
}

fn class() -> SessionContext {
    let participants = vec![
        one(Called::Name("Plum".into()), &["long-ah"], &[]),
        one(Called::Number(7), &["long-ah"], &[]),
        one(Called::Name("Hazel".into()), &[], &["long-ah"]),
        one(Called::Name("Moss".into()), &[], &[]),
    ];
    SessionContext { class: true, participants, ..SessionContext::default() }
}

fn called(context: SessionContext) -> Rig {
    let mut rig = Rig::new(vec![voiced(1), paced(1)], context);
    rig.until_said("class-roll", 30.0);
    rig.until_said("class-call", 5.0);
    rig
}

fn answer(rig: &mut Rig, text: &str, confidence: f64) {
    rig.event(Event::Answer { at_s: rig.now_s(), text: text.into(), confidence });
}

fn attended(rig: &Rig) -> Vec<(&str, Option<bool>)> {
    rig.attended.iter().map(|(name, present)| (name.as_str(), *present)).collect()
}

fn aside(rig: &Rig) -> Vec<(String, Vec<Arg>)> {
    rig.view.aside.iter().map(|line| (line.key.clone(), line.args.iter().map(|arg| arg.1.clone()).collect())).collect()
}

fn names(key: &str, names: &str) -> (String, Vec<Arg>) {
    (key.into(), vec![Arg::Text(names.into())])
}

/// To the first exercise.
fn begin(rig: &mut Rig) {
    rig.until_said("class-start", 30.0);
    rig.command(Command::Ready);
    rig.until_said("class-position", 30.0);
}

#[test]
fn each_is_called_and_only_who_may_be_in_the_room_is_named_at_an_exercise() {
    let mut rig = called(class());
    assert_eq!((rig.view.figure.as_str(), &rig.view.can_say[..2]), ("1/4", &[Command::Yes, Command::No][..]));
    rig.command(Command::No);
    rig.until_said("class-call-number", 5.0);
    rig.command(Command::Yes);
    rig.until_said("class-call", 5.0);
    rig.command(Command::NotSure);
    rig.until_said("class-call", 5.0);
    rig.command(Command::Yes);
    begin(&mut rig);
    assert_eq!(attended(&rig), [("Plum", Some(false)), ("7", Some(true)), ("Moss", Some(true))]);
    assert_eq!(aside(&rig), [names("class-leave-out", "7"), names("class-seated", "Hazel")], "Plum is away, and nobody knows of Hazel");
    assert_eq!(rig.count("class-leave-out"), 0, "it is shown, and not said unless it is wanted");
    // The next exercise is everybody's.
    rig.command(Command::Skip);
    rig.until_said("class-position", 30.0);
    assert!(aside(&rig).is_empty(), "{:?}", rig.view);
}

#[test]
fn here_we_go_ends_the_roll_and_nobody_is_marked_by_it() {
    let mut rig = called(class());
    rig.command(Command::Yes);
    rig.until_said("class-call-number", 5.0);
    rig.command(Command::Ready);
    rig.until_said("class-roll-over", 5.0);
    begin(&mut rig);
    assert_eq!(attended(&rig), [("Plum", Some(true))]);
    assert_eq!(aside(&rig)[0], names("class-leave-out", "Plum, 7"), "whoever was not asked may be there");
    assert_eq!(rig.count("class-roll-over"), 1);
}

#[test]
fn the_roll_waits_as_long_as_it_takes_and_the_keys_answer_it() {
    let mut rig = called(class());
    rig.idle_s(600.0);
    assert_eq!(rig.keys().iter().filter(|key| key.starts_with("class-call")).count(), 1, "nobody is hurried");
    let key = |rig: &mut Rig, command| {
        rig.event(Event::Command { at_s: rig.now_s(), command, confidence: 1.0, text: "key".into() });
        rig.run_s(1.5);
    };
    key(&mut rig, Command::Yes);
    key(&mut rig, Command::Skip);
    key(&mut rig, Command::GoBack);
    key(&mut rig, Command::No);
    key(&mut rig, Command::GoBack);
    key(&mut rig, Command::GoBack);
    assert_eq!(attended(&rig), [("Plum", Some(true)), ("7", Some(false)), ("7", None), ("Plum", None)]);
    // The forward key leaves it.
    key(&mut rig, Command::Done);
    rig.until_said("class-start", 30.0);
}

#[test]
fn somebody_who_was_named_out_of_turn_is_not_called_and_a_half_heard_name_marks_nobody() {
    let mut rig = called(class());
    assert!(
        rig.listening.as_ref().is_some_and(|listening| listening.multiword_only && listening.answers.contains(&"hazel is here".into()))
    );
    answer(&mut rig, "hazel is here", 0.7);
    assert!(rig.attended.is_empty());
    answer(&mut rig, "hazel is here", 0.9);
    answer(&mut rig, "moss is not here", 0.9);
    rig.until(|rig| !rig.is_speaking(), 5.0);
    rig.command(Command::Yes);
    rig.until_said("class-call-number", 5.0);
    rig.command(Command::Yes);
    rig.until_said("class-roll-over", 5.0);
    assert_eq!(attended(&rig), [("Hazel", Some(true)), ("Moss", Some(false)), ("Plum", Some(true)), ("7", Some(true))]);
    // Behind the roll, what the class says about each other is talk.
    begin(&mut rig);
    answer(&mut rig, "moss is here", 1.0);
    assert_eq!(rig.attended.len(), 4);
}

#[test]
fn who_leaves_out_is_said_where_it_is_wanted() {
    let mut rig = called(SessionContext { names_aloud: true, ..class() });
    rig.command(Command::Ready);
    begin(&mut rig);
    let told: Vec<&str> = rig
        .keys()
        .into_iter()
        .filter(|key| ["step-first", "class-leave-out", "class-seated", "ex-long-ah-instruction"].contains(key))
        .collect();
    assert_eq!(told, ["step-first", "class-leave-out", "class-seated", "ex-long-ah-instruction"]);
}

#[test]
fn a_stop_in_the_roll_goes_on_with_the_same_one() {
    let mut rig = called(class());
    rig.command(Command::Yes);
    rig.until_said("class-call-number", 5.0);
    rig.command(Command::Stop);
    rig.until_said("class-halted", 10.0);
    rig.command(Command::GoOn);
    rig.until_said("class-call-number", 5.0);
    assert_eq!(attended(&rig), [("Plum", Some(true))]);
}

#[test]
fn a_class_without_a_list_calls_nobody() {
    let mut rig = Rig::new(vec![voiced(1)], SessionContext { class: true, ..SessionContext::default() });
    rig.until_said("class-start", 30.0);
    assert!(rig.keys().iter().all(|key| !key.starts_with("class-roll") && !key.starts_with("class-call")));
}
