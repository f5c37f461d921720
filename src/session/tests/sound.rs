//! Asking by voice whether the sound may be kept.

use super::rig::{Rig, voiced};
use crate::*;

fn start() -> SessionContext {
    SessionContext { sound_days: Some(30), ..SessionContext::default() }
}

fn answers(rig: &Rig) -> Vec<(Option<bool>, u32)> {
    rig.facts
        .iter()
        .filter_map(|entry| if let Fact::SoundConsent { given, days } = entry.fact { Some((given, days)) } else { None })
        .collect()
}

#[test]
fn it_is_asked_once_before_the_first_exercise_and_either_answer_goes_on() {
    for (word, given, key) in [(Command::Yes, true, "sound-agreed"), (Command::No, false, "sound-not-agreed")] {
        let mut rig = Rig::new(vec![voiced(1)], start());
        rig.until_said("ask-sound", 30.0);
        assert_eq!(rig.count("ask-ready"), 0, "one question at a time");
        rig.run_s(1.0);
        rig.command(word);
        rig.until_said(key, 5.0);
        rig.begin();
        rig.until_said("ex-long-ah-cue", 20.0);
        assert_eq!((answers(&rig), rig.count("ask-sound")), (vec![(Some(given), 30)], 1));
    }
}

#[test]
fn silence_is_no_yes_and_ready_is_no_answer() {
    let mut rig = Rig::new(vec![voiced(1)], start());
    rig.until_said("ask-sound", 30.0);
    assert!(!rig.may_say(Command::Ready) && rig.may_say(Command::Yes) && rig.may_say(Command::No));
    rig.until_said("ask-yes-no-again", 20.0);
    rig.until_said("sound-not-agreed", 60.0);
    rig.until_said("ask-ready", 20.0);
    assert_eq!(answers(&rig), [(None, 30)]);
}

#[test]
fn a_yes_of_long_ago_is_asked_about_and_silence_changes_nothing() {
    let mut rig = Rig::new(vec![voiced(1)], SessionContext { sound_again: true, ..start() });
    rig.until_said("ask-sound-again", 30.0);
    assert_eq!(rig.count("ask-sound"), 0);
    rig.until_said("sound-unanswered", 80.0);
    rig.until_said("ask-ready", 20.0);
    assert_eq!(answers(&rig), [(None, 30)]);
}

#[test]
fn it_comes_after_the_agreement_and_stopping_in_it_does_not_lose_it() {
    let mut rig = Rig::new(vec![super::rig::posture(), voiced(1)], SessionContext { first_session: true, ..start() });
    rig.until_said("ask-agreement", 60.0);
    rig.command(Command::Yes);
    rig.until_said("ask-sound", 30.0);
    rig.command(Command::Stop);
    rig.until_said("stopped", 10.0);
    assert_eq!(answers(&rig), []);
    rig.command(Command::GoOn);
    rig.until_said("ask-sound", 20.0);
    rig.command(Command::Yes);
    rig.until_said("ask-ready-first", 20.0);
    assert_eq!(answers(&rig), [(Some(true), 30)]);
}

#[test]
fn nobody_is_asked_where_the_page_did_not_ask_nor_in_a_class() {
    let mut rig = Rig::new(vec![voiced(1)], SessionContext::default());
    rig.begin();
    assert_eq!(rig.count("ask-sound"), 0);
    let mut rig = Rig::new(vec![voiced(1)], SessionContext { class: true, ..start() });
    rig.until_said("class-start", 30.0);
    assert_eq!(rig.count("ask-sound"), 0);
}
