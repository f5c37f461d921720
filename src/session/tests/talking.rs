//! Talk on a prompt and a passage read aloud.

use super::rig::*;
use crate::*;
use routine::{Step, Timing, Work};

fn talk(passage: Option<&str>, prompts: &[&str], repetitions: u32) -> Step {
    let work = Work::Talk {
        passage: passage.map(str::to_owned),
        prompts: prompts.iter().map(|prompt| (*prompt).to_owned()).collect(),
        length_s: 30.0,
    };
    step(if passage.is_some() { "reading-passage" } else { "talk-on-a-prompt" }, Timing::Talk, repetitions, work)
}

/// Prompt, duration, speaking time, pauses and whether it is whole.
fn talked(rig: &Rig) -> Vec<(Option<String>, f64, f64, u32, bool)> {
    let of = |fact: &Fact| match fact {
        Fact::Talked { prompt, duration_s, speaking_s, pauses, complete, .. } => {
            Some((prompt.clone(), *duration_s, *speaking_s, *pauses, *complete))
        }
        _ => None,
    };
    rig.facts.iter().filter_map(|entry| of(&entry.fact)).collect()
}

#[test]
fn a_talk_runs_for_its_time_and_its_last_sentence_may_be_ended() {
    let mut rig = Rig::new(vec![talk(None, &["Your garden?", "Your kitchen?"], 2)], SessionContext::default());
    rig.begin();
    rig.until_said("talk-prompt", 20.0);
    rig.run_s(2.0);
    for _ in 0..4 {
        rig.speak(5.0, 18);
        rig.run_s(1.0);
    }
    // Begun before the time was up.
    rig.speak(8.0, 26);
    rig.run_s(0.2);
    let first = talked(&rig);
    let (prompt, duration_s, speaking_s, pauses, complete) = first[0].clone();
    assert_eq!((prompt.as_deref(), pauses, complete), (Some("Your garden?"), 4, true));
    assert!((speaking_s - 28.0).abs() < 0.1 && (duration_s - 32.8).abs() < 0.5, "{first:?}");
    assert_eq!((rig.count("talk-over"), rig.count("talk-go-on")), (1, 0));
    rig.until_said("talk-prompt", 30.0);
    rig.run_s(2.0);
    rig.speak(4.0, 12);
    rig.run_s(12.0);
    assert_eq!(rig.count("talk-go-on"), 1, "one hint in a long silence");
    rig.command(Command::Done);
    rig.run_s(1.0);
    let both = talked(&rig);
    assert_eq!((both.len(), both[1].0.as_deref(), both[1].4), (2, Some("Your kitchen?"), true));
    rig.run_s(5.0);
    assert!(rig.facts.iter().any(|entry| matches!(entry.fact, Fact::StepDone { repetitions_done: 2, .. })));
}

/// Whoever speaks on past the time, or has a fan beside the microphone, gives no part that has ended: what was heard is kept all the same.
#[test]
fn a_talk_without_a_pause_is_kept_when_its_time_is_over() {
    let mut rig = Rig::new(vec![talk(None, &["Your garden?"], 1)], SessionContext::default());
    rig.begin();
    rig.until_said("talk-prompt", 20.0);
    rig.run_s(2.0);
    rig.event(Event::SpeechBegan { at_s: rig.now_s(), onset_s: rig.now_s() });
    rig.run_s(33.0);
    assert!(talked(&rig).is_empty(), "a last sentence may be ended");
    rig.run_s(2.0);
    let kept = talked(&rig);
    let [(_, duration_s, speaking_s, 0, true)] = kept[..] else { panic!("{kept:?}") };
    assert!((duration_s - 34.0).abs() < 0.3 && duration_s == speaking_s, "{kept:?}");
    let level_db =
        rig.facts.iter().find_map(|entry| if let Fact::Talked { level_mean_db, .. } = entry.fact { Some(level_mean_db) } else { None });
    assert!(level_db.is_some_and(f64::is_nan), "no level of what was never measured: {level_db:?}");
}

#[test]
fn a_passage_is_shown_and_ends_with_the_quiet_behind_it() {
    // 300 letters: 20 s at the usual pace, and half of them are enough.
    let mut rig = Rig::new(vec![talk(Some(&"word ".repeat(60)), &[], 1)], SessionContext::default());
    rig.begin();
    rig.until_said("ex-reading-passage-cue", 20.0);
    rig.run_s(1.0);
    rig.speak(5.0, 18);
    rig.run_s(5.0);
    assert_eq!((rig.count("talk-read-on"), talked(&rig).len()), (1, 0), "that was not all of it");
    rig.speak(7.0, 25);
    rig.run_s(3.5);
    assert!(talked(&rig).is_empty(), "it may still go on");
    rig.run_s(1.0);
    let read = talked(&rig);
    assert_eq!((read.len(), read[0].0.clone(), read[0].3, read[0].4), (1, None, 1, true), "{read:?}");
    assert_eq!(rig.count("read-passage-shown"), 0, "it is not read to the client");
}

#[test]
fn a_talk_that_is_cut_off_is_kept_as_such_and_made_again() {
    let mut rig = Rig::new(vec![talk(None, &[], 1)], SessionContext::default());
    rig.begin();
    rig.until_said("ex-talk-on-a-prompt-cue", 20.0);
    rig.run_s(1.0);
    rig.speak(5.0, 18);
    rig.run_s(0.5);
    rig.command(Command::Stop);
    assert_eq!(talked(&rig).iter().map(|talk| talk.4).collect::<Vec<_>>(), [false]);
    rig.run_s(2.0);
    rig.command(Command::GoOn);
    rig.until_said("ex-talk-on-a-prompt-cue", 20.0);
}
