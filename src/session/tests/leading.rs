//! Leading the way a good clinician does: pace, tiring, feedback, help, questions, sips.

use super::rig::*;
use crate::*;
use routine::{NamingItem, Timing, Work};

fn facts(rig: &Rig, wanted: impl Fn(&Fact) -> bool) -> usize {
    rig.facts.iter().filter(|entry| wanted(&entry.fact)).count()
}

#[test]
fn it_learns_how_long_a_person_takes_and_waits_accordingly() {
    let mut habits = Habits::default();
    for _ in 0..5 {
        habits.add(Response::Answer, 9.0);
    }
    let mut rig = Rig::new(vec![voiced(1)], SessionContext { habits, ..SessionContext::default() });
    rig.until_said("ask-ready", 30.0);
    rig.run_s(13.3);
    assert_eq!(rig.count("ask-ready-again"), 0, "asked again before this person's own time was over");
    rig.run_s(0.5);
    assert_eq!(rig.count("ask-ready-again"), 1);
    rig.run_s(2.0);
    rig.command(Command::Ready);
    let timed = rig.facts.iter().find_map(|entry| match entry.fact {
        Fact::ResponseTimed { to: Response::Answer, after_s } => Some(after_s),
        _ => None,
    });
    let after_s = timed.expect("the response is kept");
    assert!((after_s - 15.8).abs() < 0.2, "counted from the first asking: {after_s}");
}

#[test]
fn a_fall_over_the_last_trials_brings_the_offer_of_a_rest() {
    let mut rig = Rig::new(vec![voiced(5)], SessionContext::default());
    rig.begin();
    for held_s in [12.0, 10.5, 9.2] {
        rig.until_said("ex-long-ah-cue", 40.0);
        rig.hold(held_s);
    }
    rig.until_said("offer-rest", 20.0);
    assert_eq!(facts(&rig, |fact| matches!(fact, Fact::FallNoticed { of: Fall::Duration, .. })), 1);
    rig.command(Command::Yes);
    rig.until_said("resting", 10.0);
    rig.command(Command::Ready);
    rig.until_said("ex-long-ah-cue", 40.0);
    rig.hold(9.0);
    rig.until_said("ex-long-ah-cue", 40.0);
    assert_eq!(rig.count("offer-rest"), 1, "once in an exercise is enough");
}

#[test]
fn whoever_declines_the_rest_goes_on_and_whoever_is_silent_rests() {
    for (answer, rests) in [(Some(Command::No), false), (None, true)] {
        let mut rig = Rig::new(vec![voiced(4)], SessionContext::default());
        rig.begin();
        for held_s in [12.0, 10.5, 9.2] {
            rig.until_said("ex-long-ah-cue", 40.0);
            rig.hold(held_s);
        }
        rig.until_said("offer-rest", 20.0);
        match answer {
            Some(answer) => rig.command(answer),
            None => rig.run_s(50.0),
        }
        rig.run_s(8.0);
        assert_eq!(rig.count("resting") > 0, rests, "{answer:?}: {:?}", rig.keys());
        assert_eq!(facts(&rig, |fact| matches!(fact, Fact::RestOffered { taken } if *taken == rests)), 1);
    }
}

#[test]
fn usual_scatter_is_no_tiring() {
    let past = PastExercise { recent_trials: 10, mean_s: Some(11.0), sd_s: Some(2.0), ..PastExercise::default() };
    let start = SessionContext { past: PastResults { by_exercise: [("long-ah".to_owned(), past)].into() }, ..SessionContext::default() };
    let mut rig = Rig::new(vec![voiced(4)], start);
    rig.begin();
    for held_s in [12.0, 10.5, 9.2, 11.0] {
        rig.until_said("ex-long-ah-cue", 40.0);
        rig.hold(held_s);
    }
    rig.until_said("summary-all", 40.0);
    assert_eq!(rig.count("offer-rest"), 0);
}

#[test]
fn the_loud_time_of_a_routine_is_not_gone_past() {
    let mut rig = Rig::new(vec![voiced(5), rest(Some(1.0)), voiced(2)], SessionContext::default());
    rig.limit_loud_s(40.0);
    rig.begin();
    for _ in 0..2 {
        rig.until_said("ex-long-ah-cue", 40.0);
        rig.hold(14.0);
    }
    // 28 s are done; a third hold with its goal of 14 s would make 42.
    rig.until_said("loud-enough", 20.0);
    rig.until_said("summary-part", 40.0);
    assert_eq!(rig.count("ex-long-ah-cue"), 2);
    assert_eq!(facts(&rig, |fact| matches!(fact, Fact::StepLeftOut { reason, .. } if reason == "loud-time limit")), 1);
    assert_eq!(facts(&rig, |fact| matches!(fact, Fact::LoudLimitReached { .. })), 1);
}

#[test]
fn once_more_never_exceeds_the_dose() {
    let mut rig = Rig::new(vec![repeated(3, None)], SessionContext::default());
    rig.begin();
    for _ in 0..3 {
        rig.until_said("ex-tongue-hold-swallow-cue", 20.0);
        rig.command(Command::Done);
        rig.run_s(0.5);
        if rig.may_say(Command::Again) && !rig.keys().contains(&"step-done") {
            rig.command(Command::Again);
        }
    }
    rig.until_said("summary-all", 30.0);
    assert_eq!(facts(&rig, |fact| matches!(fact, Fact::RepetitionDone { .. })), 3);
}

#[test]
fn what_is_done_is_not_done_again_by_going_back() {
    let mut rig = Rig::new(vec![repeated(1, None), repeated(2, None)], SessionContext::default());
    rig.begin();
    rig.until_said("ex-tongue-hold-swallow-cue", 20.0);
    rig.command(Command::Done);
    rig.until_said("ex-tongue-hold-swallow-cue", 20.0);
    rig.command(Command::Skip);
    rig.until_said("skipped", 10.0);
    rig.run_s(0.0);
    assert!(rig.engine.is_over() || rig.may_say(Command::GoBack));
    let mut rig = Rig::new(vec![repeated(1, None), voiced(2)], SessionContext::default());
    rig.begin();
    rig.until_said("ex-tongue-hold-swallow-cue", 20.0);
    rig.command(Command::Done);
    rig.until_said("ex-long-ah-cue", 30.0);
    rig.command(Command::GoBack);
    rig.until_said("went-back-done", 10.0);
    rig.until_said("ex-long-ah-cue", 30.0);
    rig.hold(9.0);
    rig.until_said("ex-long-ah-cue", 30.0);
    rig.command(Command::GoBack);
    rig.until_said("went-back", 10.0);
    rig.until_said("ex-long-ah-cue", 30.0);
    rig.hold(9.0);
    rig.until_said("summary-all", 30.0);
    assert_eq!(facts(&rig, |fact| matches!(fact, Fact::HoldMeasured { complete: true, .. })), 2);
}

#[test]
fn results_are_told_after_each_fifth_trial_over_the_exercises_and_when_asked() {
    let mut rig = Rig::new(vec![voiced(3), rest(Some(1.0)), voiced(4)], SessionContext::default());
    rig.begin();
    for _ in 0..5 {
        rig.until_said("ex-long-ah-cue", 40.0);
        rig.hold(12.0);
    }
    rig.until_said("ex-long-ah-cue", 40.0);
    assert_eq!((rig.count("best"), rig.count("held")), (0, 1), "{:?}", rig.keys());
    rig.command(Command::HowDid);
    rig.run_s(2.0);
    assert_eq!(rig.count("held"), 2);
    assert_eq!(facts(&rig, |fact| matches!(fact, Fact::ResultTold { asked: true, .. })), 1);
    // Five weeks on, the fifth trial brings no number any more.
    let mut rig = Rig::new(vec![voiced(6)], SessionContext { practice_week: 5, ..SessionContext::default() });
    rig.begin();
    for _ in 0..6 {
        rig.until_said("ex-long-ah-cue", 40.0);
        rig.hold(12.0);
    }
    rig.until_said("summary-all", 40.0);
    assert_eq!(rig.count("held") + rig.count("best"), 0);
}

#[test]
fn the_cue_words_stand_before_every_trial() {
    let mut rig = Rig::new(vec![voiced(3)], SessionContext::default());
    rig.cue_words("strong voice");
    rig.begin();
    for _ in 0..3 {
        rig.until_said("ex-long-ah-cue", 40.0);
        rig.hold(12.0);
    }
    assert_eq!(rig.count("cue-words") + rig.count("cue-words-again"), 3);
}

#[test]
fn tell_me_why_gives_the_purpose_and_goes_on() {
    let mut rig = Rig::new(vec![voiced(1)], SessionContext::default());
    rig.begin();
    rig.until_said("ex-long-ah-cue", 20.0);
    rig.command(Command::Why);
    rig.until_said("ex-long-ah-purpose", 10.0);
    rig.hold(9.0);
    rig.until_said("summary-all", 20.0);
}

#[test]
fn a_near_answer_and_an_unknown_one_bring_the_hint_and_nobody_is_told_wrong() {
    let mut rig = Rig::new(vec![question()], SessionContext::default());
    rig.begin();
    rig.until_said("question-clue", 20.0);
    rig.run_s(3.0);
    rig.event(Event::Answer { at_s: rig.now_s(), text: "purse".into(), confidence: 0.9 });
    rig.until_said("question-near", 5.0);
    rig.event(Event::Answer { at_s: rig.now_s(), text: "bank".into(), confidence: 0.9 });
    rig.until_said("question-found", 5.0);
    assert_eq!(facts(&rig, |fact| matches!(fact, Fact::QuestionAnswered { correct: true, hint_given: true, .. })), 1);

    let mut rig = Rig::new(vec![question()], SessionContext::default());
    rig.begin();
    rig.until_said("question-clue", 20.0);
    rig.run_s(2.0);
    rig.speak(1.0, 2);
    rig.run_s(1.5);
    assert_eq!(rig.count("question-hint"), 1, "{:?}", rig.keys());
}

#[test]
fn talk_in_the_room_does_not_keep_a_question_open_for_ever() {
    let mut rig = Rig::new(vec![question()], SessionContext::default());
    rig.begin();
    rig.until_said("question-clue", 20.0);
    for _ in 0..60 {
        if rig.count("question-told") == 0 {
            rig.speak(2.0, 6);
        }
    }
    assert_eq!(rig.count("question-told"), 1);
}

#[test]
fn each_member_of_a_category_counts_once() {
    let item = NamingItem {
        clue: "Name as many animals as you can.".into(),
        category: "animals".into(),
        members: vec!["dog | dogs".into(), "cat".into()],
        fact: None,
    };
    let mut naming = step("category-naming", Timing::Question, 1, Work::Naming { items: vec![item], length_s: 60.0 });
    naming.exercise.cautions.clear();
    let mut rig = Rig::new(vec![naming], SessionContext::default());
    rig.begin();
    rig.until_said("question-clue", 20.0);
    for text in ["dog | dogs", "cat", "dog | dogs"] {
        rig.run_s(2.0);
        rig.event(Event::Answer { at_s: rig.now_s(), text: text.into(), confidence: 0.9 });
    }
    assert!(rig.listening.as_ref().is_some_and(|listening| listening.list));
    rig.until_said("naming-count", 60.0);
    let named = rig.facts.iter().find_map(|entry| match &entry.fact {
        Fact::CategoryNamed { named, duration_s, .. } => Some((named.clone(), *duration_s)),
        _ => None,
    });
    let (named, duration_s) = named.expect("kept");
    assert_eq!(named, ["dog", "cat"]);
    assert!((duration_s - 60.0).abs() < 0.05);
}

#[test]
fn the_rules_of_a_sip_are_said_in_every_practice() {
    let start = SessionContext { known: ["tongue-hold-swallow".to_owned()].into(), ..SessionContext::default() };
    let mut rig = Rig::new(vec![repeated(2, Some(1))], start);
    rig.begin();
    rig.until_said("sip-rules-now", 20.0);
    let mut rig = Rig::new(vec![repeated(2, None)], SessionContext::default());
    rig.begin();
    rig.until_said("ex-tongue-hold-swallow-cue", 20.0);
    assert_eq!(rig.count("sip-rules-now"), 0);
}

#[test]
fn a_class_is_counted_for_and_nobody_is_measured_or_hurried() {
    let mut rig = Rig::new(whole(), SessionContext { class: true, ..SessionContext::default() });
    rig.until_said("class-start", 30.0);
    rig.run_s(120.0);
    assert_eq!(rig.count("ask-ready-again"), 0);
    assert!(rig.volume_db > 0.0 && rig.slower > 1.0);
    let mut moves = 0;
    while !rig.finished && moves < 200 {
        assert!(rig.listening.as_ref().is_none_or(|listening| listening.voice == model::VoiceTask::Idle && listening.answers.is_empty()));
        // Voices of the class are no commands.
        rig.event(Event::Onset { at_s: rig.now_s(), onset_s: rig.now_s() });
        rig.event(Event::Command { at_s: rig.now_s(), command: Command::Skip, confidence: 0.7, text: "skip".into() });
        if rig.may_say(Command::GoOn) {
            rig.event(Event::Command { at_s: rig.now_s(), command: Command::GoOn, confidence: 1.0, text: "key".into() });
        }
        rig.run_s(5.0);
        moves += 1;
    }
    assert!(rig.finished, "{:?}", rig.keys());
    assert_eq!(rig.count("class-over"), 1);
    assert_eq!(facts(&rig, |fact| matches!(fact, Fact::HoldMeasured { .. } | Fact::PhraseRead { .. } | Fact::SyllablesCounted { .. })), 0);
    assert!(rig.count("count") > 10);
}

#[test]
fn the_forward_key_moves_a_class_on_from_everywhere() {
    let mut rig = Rig::new(whole(), SessionContext { class: true, ..SessionContext::default() });
    for _ in 0..400 {
        rig.run_s(0.7);
        rig.event(Event::Command { at_s: rig.now_s(), command: Command::GoOn, confidence: 1.0, text: "key".into() });
        if rig.finished {
            break;
        }
    }
    assert!(rig.finished, "{:?}", rig.keys());
    assert!(rig.now_s() < 120.0);
}

/// A press while it talks ends what is said and goes on: nobody presses twice for one step.
#[test]
fn the_forward_key_pressed_while_it_talks_begins_the_repetition() {
    let mut rig = Rig::new(vec![paced(1)], SessionContext { class: true, ..SessionContext::default() });
    let press = |rig: &mut Rig| {
        assert!(rig.is_speaking());
        rig.event(Event::Command { at_s: rig.now_s(), command: Command::Done, confidence: 1.0, text: "key".into() });
    };
    rig.run_s(0.5);
    press(&mut rig);
    rig.run_s(0.5);
    assert_eq!(rig.count("class-safety"), 1, "the one sentence of care comes in any case");
    press(&mut rig);
    rig.run_s(0.5);
    assert_eq!((rig.count("step-first"), rig.count("class-start")), (1, 0), "not asked whether to start: {:?}", rig.keys());
    press(&mut rig);
    rig.run_s(0.5);
    assert_eq!((rig.count("ex-nasal-breathing-cue"), rig.count("class-position")), (1, 0), "{:?}", rig.keys());
    press(&mut rig);
    rig.run_s(4.0);
    assert!(rig.count("count") + rig.count("paced-in") > 0, "it counts: {:?}", rig.keys());
}

#[test]
fn whoever_answers_is_not_talked_over_and_a_television_delays_asking_only_for_a_while() {
    let mut rig = Rig::new(vec![voiced(1)], SessionContext::default());
    rig.until_said("ask-ready", 30.0);
    rig.run_s(11.5);
    rig.event(Event::SpeechBegan { at_s: rig.now_s(), onset_s: rig.now_s() - 0.1 });
    rig.run_s(2.0);
    assert_eq!(rig.count("ask-ready-again"), 0, "talked over somebody who had begun");
    rig.command(Command::Ready);
    rig.until_said("step-first", 10.0);

    let mut rig = Rig::new(vec![voiced(1)], SessionContext::default());
    rig.until_said("ask-ready", 30.0);
    for _ in 0..26 {
        rig.event(Event::SpeechBegan { at_s: rig.now_s(), onset_s: rig.now_s() });
        rig.run_s(1.0);
    }
    assert!(rig.keys().iter().any(|key| *key == "ask-ready-again" || *key == "ready-not-understood"), "{:?}", rig.keys());
}

#[test]
fn whoever_is_not_understood_is_told_so() {
    let mut rig = Rig::new(vec![voiced(1)], SessionContext::default());
    rig.until_said("ask-ready", 30.0);
    rig.run_s(3.0);
    rig.speak(1.0, 2);
    rig.run_s(12.0);
    assert_eq!((rig.count("ready-not-understood"), rig.count("ask-ready-again")), (1, 0), "{:?}", rig.keys());
}

#[test]
fn a_skip_out_of_talk_is_asked_about_and_one_in_quiet_is_not() {
    let talking = |goes_on: bool| {
        let mut rig = Rig::new(vec![repeated(3, None), voiced(1)], SessionContext::default());
        rig.begin();
        rig.until_said("ex-tongue-hold-swallow-cue", 20.0);
        if goes_on {
            rig.event(Event::SpeechBegan { at_s: rig.now_s(), onset_s: rig.now_s() });
        }
        rig.run_s(5.0);
        rig.command(Command::Skip);
        rig.run_s(2.0);
        (rig.count("ask-confirm"), rig.count("skipped"))
    };
    assert_eq!(talking(true), (1, 0));
    assert_eq!(talking(false), (0, 1));
}

#[test]
fn a_pause_inside_a_phrase_does_not_end_it_and_counts_one_response() {
    let mut rig = Rig::new(vec![reading()], SessionContext::default());
    rig.begin();
    rig.until_said("read-phrase", 20.0);
    rig.run_s(2.0);
    let onset_s = rig.now_s();
    rig.speak(0.35, 1);
    rig.run_s(1.0);
    rig.speak(0.8, 2);
    rig.run_s(0.1);
    let read = rig.facts.iter().find_map(|entry| match &entry.fact {
        Fact::PhraseRead { duration_s, .. } => Some(*duration_s),
        _ => None,
    });
    let read_s = read.expect("read");
    assert!((read_s - (rig.now_s() - 0.1 - onset_s)).abs() < 0.5, "{read_s}");
    assert_eq!(facts(&rig, |fact| matches!(fact, Fact::ResponseTimed { to: Response::Voice, .. })), 1);
}

#[test]
fn further_sets_ask_further_questions() {
    let items = ["one", "two"].map(|clue| routine::QuestionItem {
        kind: None,
        clue: clue.into(),
        answers: vec!["bank".into()],
        near: vec![],
        hint: None,
        fact: None,
    });
    let mut games = step("word-questions", Timing::Question, 1, Work::Question { items: items.to_vec(), think_s: 30.0 });
    games.sets = 2;
    let mut rig = Rig::new(vec![games], SessionContext::default());
    rig.begin();
    for _ in 0..2 {
        rig.until_said("question-clue", 30.0);
        rig.event(Event::Answer { at_s: rig.now_s(), text: "bank".into(), confidence: 0.9 });
        rig.run_s(1.0);
    }
    let clues: Vec<String> = rig
        .facts
        .iter()
        .filter_map(|entry| if let Fact::QuestionAnswered { clue, .. } = &entry.fact { Some(clue.clone()) } else { None })
        .collect();
    assert_eq!(clues, ["one", "two"]);
}

#[test]
fn once_more_behind_an_exercise_is_that_exercise() {
    let mut rig = Rig::new(vec![voiced(1), paced(1)], SessionContext { class: true, ..SessionContext::default() });
    let key = |rig: &mut Rig, command| rig.event(Event::Command { at_s: rig.now_s(), command, confidence: 1.0, text: "key".into() });
    rig.until_said("class-start", 30.0);
    key(&mut rig, Command::Done);
    rig.until_said("class-position", 30.0);
    key(&mut rig, Command::Done);
    rig.until_said("step-done", 40.0);
    key(&mut rig, Command::Again);
    rig.run_s(3.0);
    assert_eq!(rig.count("ex-long-ah-cue"), 2, "{:?}", rig.keys());
    rig.until_said("step-next", 40.0);
    assert_eq!(rig.count("step-done"), 2);
}

#[test]
fn a_command_is_never_part_of_a_list() {
    let item = NamingItem { clue: "Name animals.".into(), category: "animals".into(), members: vec!["dog".into()], fact: None };
    let naming = step("category-naming", Timing::Question, 1, Work::Naming { items: vec![item], length_s: 60.0 });
    let mut rig = Rig::new(vec![naming], SessionContext::default());
    rig.begin();
    rig.run_s(1.0);
    assert!(rig.listening.as_ref().is_some_and(|listening| !listening.list && listening.answers.is_empty()), "before its turn");
    rig.until_said("question-clue", 20.0);
    assert!(rig.listening.as_ref().is_some_and(|listening| listening.list));
}

/// Counting words thin out as the person gets going, and only the last one is announced as such.
#[test]
fn not_every_repetition_is_counted_aloud() {
    let mut rig = Rig::new(vec![repeated(12, None)], SessionContext::default());
    rig.begin();
    for _ in 0..12 {
        rig.until(|rig| rig.may_say(Command::Done), 60.0);
        rig.run_s(3.0);
        rig.command(Command::Done);
        rig.run_s(0.5);
    }
    assert_eq!((rig.count("repetition-number"), rig.count("repetition-last")), (4, 1), "the second, third, fifth and tenth");
}

#[test]
fn a_rest_is_not_praised() {
    let mut rig = Rig::new(vec![rest(Some(2.0)), rest(Some(2.0))], SessionContext::default());
    rig.begin();
    rig.until(|rig| rig.finished, 60.0);
    assert_eq!((rig.count("rest-done"), rig.count("step-done")), (2, 0));
}

/// A dry mouth gets a moment: a sip only where a clinician has enabled sips for this client.
#[test]
fn a_dry_mouth_waits_and_speaks_of_a_sip_only_where_sips_are_enabled() {
    for (sips, key) in [(Some(3), "dry-sip"), (None, "dry-lips")] {
        let mut rig = Rig::new(vec![repeated(4, sips)], SessionContext::default());
        rig.begin();
        rig.until(|rig| rig.may_say(Command::Dry), 30.0);
        rig.command(Command::Dry);
        rig.until_said(key, 5.0);
        rig.idle_s(8.0);
        rig.command(Command::Ready);
        rig.until(|rig| rig.keys_since_mark().iter().any(|key| key.ends_with("-cue")), 20.0);
    }
}

/// Loud work is followed by easing the voice: by the routine's own soft exercise, or by a sentence and a moment for it.
#[test]
fn the_voice_is_eased_after_loud_work_once_and_a_hum_is_neither_loud_nor_cued() {
    let hum = || {
        let mut step = voiced(1);
        step.exercise.id = "easy-hum".into();
        step
    };
    for (steps, eased) in [(vec![voiced(1), voiced(1), question()], 1), (vec![voiced(1), hum()], 0), (vec![hum()], 0)] {
        let trials = steps.iter().filter(|step| matches!(step.work, Work::Voiced { .. })).count();
        let loud = steps.iter().filter(|step| step.exercise.id == "long-ah").count();
        let mut rig = Rig::new(steps, SessionContext::default());
        rig.cue_words("strong voice");
        rig.begin();
        for _ in 0..trials {
            rig.until(|rig| matches!(rig.listening.as_ref().map(|now| now.voice), Some(VoiceTask::Hold(_))), 60.0);
            rig.run_s(0.5);
            rig.hold(8.0);
            rig.run_s(1.0);
        }
        rig.run_s(6.0);
        assert_eq!(rig.count("wind-down"), eased, "{:?}", rig.keys());
        assert_eq!(rig.count("cue-words"), loud, "strong voice is no cue for a hum");
        assert!((rig.engine.practice.loud_s - 8.0 * loud as f64).abs() < 0.5, "{}", rig.engine.practice.loud_s);
    }
}
