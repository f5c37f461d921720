//! Limits that join fields, on the way: what is said, and what it leads to. By hand from `catalogue/safe-doses.toml`.

use std::collections::BTreeMap;

use super::rig::*;
use crate::*;
use routine::{Amount, Phase, Posture, Step, Timing, Work};

fn lift(repetitions: u32, length_s: f64, rest_s: f64) -> Step {
    let phases = vec![Phase { name: "lift".into(), length_s }];
    let work = Work::Timed { phases, count_every_s: 10, count_last_s: 5 };
    Step { rest_s, posture: Some(Posture::Lying), ..step("head-lift-sustained", Timing::Timed, repetitions, work) }
}

fn swallows(repetitions: u32) -> Step {
    Step {
        rest_s: 0.0,
        ..step("mid-swallow-hold", Timing::Repeated, repetitions, Work::Repeated { next_cue_after_s: None, sip_every: None, setting: None })
    }
}

fn rolls(repetitions: u32) -> Step {
    let work = Work::Repeated { next_cue_after_s: Some(3.0), sip_every: None, setting: None };
    Step { rest_s: 0.0, posture: Some(Posture::Sitting), ..step("shoulder-rolls", Timing::Repeated, repetitions, work) }
}

fn held(rig: &Rig) -> Vec<(f64, f64)> {
    let held = |entry: &Entry| if let Fact::PostureHeld { duration_s, .. } = entry.fact { Some((entry.at_s, duration_s)) } else { None };
    rig.facts.iter().filter_map(held).collect()
}

fn reasons(rig: &Rig) -> Vec<String> {
    let reason = |entry: &Entry| match &entry.fact {
        Fact::StepStopped { reason, .. } | Fact::StepLeftOut { reason, .. } => Some(reason.to_string()),
        _ => None,
    };
    rig.facts.iter().filter_map(reason).collect()
}

fn today(exercise: &str, amount: Amount) -> EarlierToday {
    EarlierToday {
        practices: 1,
        done: BTreeMap::from([(exercise.to_owned(), amount)]),
        loud_s: 0.0,
        unwell: Vec::new(),
        ago_s: Some(3600.0),
    }
}

/// Twenty seconds of lift need twenty of rest, however often "ready" and "again" are said.
#[test]
fn ready_does_not_cut_a_rest_that_the_body_needs() {
    let mut rig = Rig::new(vec![lift(2, 20.0, 30.0)], SessionContext::default());
    rig.begin();
    rig.until(|rig| held(rig).len() == 1, 60.0);
    rig.run_s(3.0);
    for command in [Command::Ready, Command::Again, Command::Ready] {
        rig.command(command);
        rig.run_s(3.0);
    }
    assert_eq!(rig.count("rest-longer"), 3, "{:?}", rig.keys());
    assert_eq!(rig.count("ex-head-lift-sustained-cue"), 1);
    // The needed rest is over, the prescribed one is not: now "ready" goes on.
    rig.run_s(10.0);
    rig.command(Command::Ready);
    rig.run_s(1.0);
    assert_eq!(rig.count("ex-head-lift-sustained-cue"), 2);
    rig.until(|rig| held(rig).len() == 2, 60.0);
    let lifts = held(&rig);
    assert!(lifts[1].0 - lifts[1].1 - lifts[0].0 >= 20.0, "{lifts:?}");
}

/// "Again" in the middle: what was held counts, and its rest comes first. 180 s are the limit of one practice.
#[test]
fn again_counts_what_was_held_and_ends_at_the_limit() {
    let mut rig = Rig::new(vec![lift(3, 60.0, 60.0), rolls(1)], SessionContext::default());
    rig.begin();
    for _ in 0..2 {
        rig.until_said("ex-head-lift-sustained-cue", 90.0);
        rig.run_s(41.0);
        rig.command(Command::Again);
        rig.until(|rig| rig.keys().last() == Some(&"rest-first"), 10.0);
    }
    // 80 s are held by now; one more of 60 is 140, and another would make 200.
    rig.until_said("enough-now", 200.0);
    let total_s: f64 = held(&rig).iter().map(|(_, seconds)| seconds).sum();
    assert!((130.0..=180.0).contains(&total_s), "{total_s}");
    assert_eq!(reasons(&rig), ["practice limit"]);
    // It goes on with the next step, and leads up to it.
    rig.until_said("rise-side", 10.0);
    rig.until_said("ex-shoulder-rolls-cue", 100.0);
}

/// Five mid-swallow holds, then a minute, said and led.
#[test]
fn a_row_of_swallows_ends_with_a_rest() {
    let mut rig = Rig::new(vec![swallows(6)], SessionContext::default());
    rig.begin();
    for _ in 0..5 {
        rig.until_said("ex-mid-swallow-hold-cue", 20.0);
        rig.run_s(2.0);
        rig.command(Command::Done);
    }
    let ended_s = rig.now_s();
    rig.until_said("rest-first", 10.0);
    rig.until_said("ex-mid-swallow-hold-cue", 80.0);
    assert!(rig.now_s() - ended_s >= 60.0);
}

/// In 3, out 8: 10 s out are the limit without a word, so the beat goes no further than 1.25 s; "faster" ends at 4 s a breath.
#[test]
fn slower_and_faster_keep_a_breath_within_its_limits_and_say_why() {
    let mut rig = Rig::new(vec![paced(20)], SessionContext::default());
    rig.begin();
    rig.until_said("ex-nasal-breathing-cue", 20.0);
    rig.run_s(3.0);
    rig.command(Command::Slower);
    rig.run_s(15.0);
    assert_eq!(rig.count("pace-slowest"), 0);
    for _ in 0..2 {
        rig.command(Command::Slower);
        rig.run_s(15.0);
    }
    assert_eq!(rig.count("pace-slowest"), 1, "{:?}", rig.keys());
    let beats = |rig: &Rig| -> Vec<f64> {
        rig.facts.iter().filter_map(|entry| if let Fact::RoundPaced { beat_s, .. } = entry.fact { Some(beat_s) } else { None }).collect()
    };
    rig.run_s(15.0);
    assert!((beats(&rig).last().expect("rounds") - 1.25).abs() < 1e-9, "{:?}", beats(&rig));
    for _ in 0..9 {
        rig.command(Command::Faster);
        rig.run_s(1.0);
    }
    assert!(rig.count("pace-fastest") >= 1);
    rig.run_s(25.0);
    assert!(*beats(&rig).last().expect("rounds") * 11.0 >= 4.0);
}

#[test]
fn what_was_done_earlier_today_counts() {
    // 540 s of lifts are the limit of a day: 500 were done, so one of 30 fits in.
    let context = SessionContext { today: today("head-lift-sustained", Amount { times: 9, seconds: 500.0 }), ..SessionContext::default() };
    let mut rig = Rig::new(vec![lift(3, 30.0, 30.0), voiced(1)], context);
    rig.begin();
    rig.until_said("enough-today", 120.0);
    assert_eq!((held(&rig).len(), reasons(&rig)), (1, vec!["day limit".to_owned()]));
    rig.until_said("ex-long-ah-cue", 30.0);
    // All of it was done: the step is left out, and that is said.
    let context = SessionContext { today: today("head-lift-sustained", Amount { times: 9, seconds: 540.0 }), ..SessionContext::default() };
    let mut rig = Rig::new(vec![lift(3, 30.0, 30.0), voiced(1)], context);
    rig.begin();
    rig.until_said("enough-today", 20.0);
    rig.until_said("ex-long-ah-cue", 30.0);
    assert_eq!((held(&rig).len(), reasons(&rig)), (0, vec!["day limit".to_owned()]));
}

#[test]
fn a_fourth_practice_of_a_day_needs_the_clinicians_word() {
    let context = || SessionContext { today: EarlierToday { practices: 3, ..EarlierToday::default() }, ..SessionContext::default() };
    let mut rig = Rig::new(vec![rolls(2)], context());
    rig.until_said("practices-enough", 20.0);
    rig.run_s(3.0);
    assert!(rig.finished && rig.count("ex-shoulder-rolls-cue") == 0);
    assert!(matches!(&rig.facts.last().expect("facts").fact, Fact::SessionEnded { reason, .. } if reason == "day limit"));
    let mut rig = Rig::new(vec![rolls(2)], context());
    rig.clinician_says_whole();
    rig.begin();
    rig.until_said("ex-shoulder-rolls-cue", 20.0);
}

#[test]
fn an_interrupted_practice_brings_its_dose_along() {
    let resumed = |yes: bool, other_day: bool| {
        let context = SessionContext {
            resume_other_day: other_day,
            resume_from: Some(Position { step: 1, set: 1, repetition: 3 }),
            resume_counts: [(1, 2)].into(),
            resume_amounts: [("head-lift-sustained".to_owned(), Amount { times: 4, seconds: 150.0 })].into(),
            resume_ago_s: Some(5.0),
            today: today("head-lift-sustained", Amount { times: 6, seconds: 340.0 }),
            ..SessionContext::default()
        };
        let mut rig = Rig::new(vec![lift(3, 60.0, 60.0), voiced(1)], context);
        rig.until_said("ask-resume", 30.0);
        rig.command(if yes { Command::Yes } else { Command::No });
        rig
    };
    // 150 s were held before the break, so 60 more would be past the 180 of a practice.
    let mut rig = resumed(true, false);
    rig.until_said("enough-now", 30.0);
    assert!(held(&rig).is_empty());
    // Not gone on with, they were done today: 340 + 150 + 60 is past the 540 of a day.
    let mut rig = resumed(false, false);
    rig.begin();
    rig.until_said("enough-today", 30.0);
    assert!(held(&rig).is_empty());
    // They were done yesterday: 340 + 60 is well within the day.
    let mut rig = resumed(false, true);
    rig.begin();
    rig.until_said("ex-head-lift-sustained-cue", 90.0);
}

#[test]
fn an_hour_is_the_end_of_a_practice() {
    let context = SessionContext {
        resume_from: Some(Position { step: 1, set: 1, repetition: 1 }),
        resume_led_s: 3_550.0,
        ..SessionContext::default()
    };
    let mut rig = Rig::new(vec![rolls(30), voiced(1)], context);
    rig.until_said("ask-resume", 30.0);
    rig.command(Command::Yes);
    rig.until_said("long-enough", 60.0);
    rig.run_s(6.0);
    assert!(rig.finished);
    assert_eq!(reasons(&rig), ["time limit"]);
    assert!(matches!(&rig.facts.last().expect("facts").fact, Fact::SessionEnded { reason, .. } if reason == "time limit"));
}

/// Standing still is no practice: an hour of pauses takes nothing away.
#[test]
fn pauses_do_not_use_up_the_hour() {
    let mut rig = Rig::new(vec![rolls(4)], SessionContext::default());
    rig.begin();
    rig.until_said("ex-shoulder-rolls-cue", 30.0);
    for _ in 0..8 {
        rig.command(Command::Pause);
        rig.run_s(550.0);
        rig.command(Command::GoOn);
        rig.run_s(1.5);
    }
    rig.until_said("summary-all", 60.0);
}

/// From the back to a chair: on the side 10 s, then 60 s sitting, each said, and neither can be hurried.
#[test]
fn getting_up_is_led_part_by_part() {
    let mut rig = Rig::new(vec![lift(1, 5.0, 0.0), rolls(1)], SessionContext::default());
    rig.begin();
    rig.until_said("rise-side", 60.0);
    let side_s = rig.now_s();
    rig.run_s(2.0);
    rig.command(Command::Ready);
    rig.run_s(2.0);
    assert_eq!(rig.count("rise-longer"), 1);
    rig.until_said("rise-sit", 20.0);
    let sit_s = rig.now_s();
    assert!(sit_s - side_s >= 10.0);
    rig.command(Command::Pause);
    rig.run_s(2.0);
    rig.command(Command::GoOn);
    // Broken off, the part is told again and has its whole time.
    rig.until_said("rise-sit", 10.0);
    let again_s = rig.now_s();
    rig.until_said("step-next", 80.0);
    assert!(rig.now_s() - again_s >= 60.0);
    rig.until_said("summary-all", 40.0);
    assert_eq!((rig.count("rise-side"), rig.count("rise-stand"), rig.count("rise-at-end")), (1, 0, 0));
    // Standing next: two minutes sitting, then up; and at the end of a practice that ends lying it is said.
    let mut rig = Rig::new(
        vec![lift(1, 5.0, 0.0), Step { posture: Some(Posture::Standing), ..rolls(1) }, lift(1, 5.0, 0.0)],
        SessionContext::default(),
    );
    rig.begin();
    rig.until_said("rise-sit", 60.0);
    let sit_s = rig.now_s();
    rig.until_said("rise-stand", 140.0);
    assert!(rig.now_s() - sit_s >= 120.0);
    rig.until_said("ex-shoulder-rolls-standing", 30.0);
    rig.until_said("summary-all", 60.0);
    assert_eq!(rig.count("rise-at-end"), 1);
}
