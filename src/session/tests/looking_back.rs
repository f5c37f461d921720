//! The short questions at the end of a practice.

use super::rig::*;
use crate::*;
use routine::Step;

/// To the first question: one breathing round is done.
fn at_the_end(ratings: &[Rating], week: Option<u32>) -> Rig {
    with_steps(vec![paced(1)], ratings, week)
}

fn with_steps(steps: Vec<Step>, ratings: &[Rating], week: Option<u32>) -> Rig {
    let week_to_ask = week.map(|days_missed| WeekToAsk { days_missed });
    let mut rig = Rig::new(steps, SessionContext { week_to_ask, ..SessionContext::default() });
    rig.asks(ratings, week.is_some());
    rig.begin();
    rig
}

fn rated(rig: &Rig) -> Vec<(Rating, RatedOver, Option<u8>)> {
    let of = |entry: &Entry| if let Fact::Rated { what, over, value } = entry.fact { Some((what, over, value)) } else { None };
    rig.facts.iter().filter_map(of).collect()
}

fn end_reason(rig: &Rig) -> String {
    match &rig.facts.last().expect("facts").fact {
        Fact::SessionEnded { reason, .. } => reason.to_string(),
        other => panic!("no end: {other:?}"),
    }
}

const ALL: [Rating; 3] = [Rating::Effort, Rating::Tiredness, Rating::Pain];
const OVER: RatedOver = RatedOver::Practice;

#[test]
fn without_a_word_of_the_routine_nothing_is_asked() {
    let mut rig = at_the_end(&[], None);
    rig.until(|rig| rig.finished, 60.0);
    assert!(!rig.keys().iter().any(|key| key.starts_with("ask-effort") || key.starts_with("questions")), "{:?}", rig.keys());
}

#[test]
fn an_answer_is_said_back_and_kept_and_the_next_question_comes() {
    let mut rig = at_the_end(&ALL, None);
    rig.until_said("ask-effort", 60.0);
    assert_eq!(rig.count("questions-first"), 1);
    rig.run_s(2.0);
    rig.answer("answer-4");
    assert_eq!(rig.keys_since_mark(), ["rating-taken"]);
    assert_eq!(rig.view.figure, "4");
    rig.until_said("ask-tiredness", 10.0);
    rig.command(Command::Skip);
    rig.until_said("ask-pain", 10.0);
    rig.answer("answer-0");
    rig.until(|rig| rig.finished, 20.0);
    assert_eq!(rated(&rig), [(Rating::Effort, OVER, Some(4)), (Rating::Tiredness, OVER, None), (Rating::Pain, OVER, Some(0))]);
    assert_eq!((rig.count("questions-first"), rig.count("questions-over"), end_reason(&rig).as_str()), (1, 1, "completed"));
}

#[test]
fn no_go_back_or_another_number_right_after_corrects_it() {
    let mut rig = at_the_end(&ALL, None);
    rig.until_said("ask-effort", 60.0);
    rig.answer("answer-9");
    rig.until_said("rating-taken", 5.0);
    rig.command(Command::No);
    rig.until_said("ask-effort", 5.0);
    rig.answer("answer-5");
    rig.until_said("rating-taken", 5.0);
    // The same again is no correction.
    rig.answer("answer-5");
    assert!(rig.keys_since_mark().is_empty());
    rig.answer("answer-6");
    rig.until_said("ask-tiredness", 10.0);
    // A question later "go back" leads to the one before.
    rig.command(Command::GoBack);
    rig.until_said("ask-effort", 5.0);
    rig.answer("answer-7");
    rig.until_said("ask-tiredness", 10.0);
    rig.command(Command::Finish);
    rig.until(|rig| rig.finished, 10.0);
    let effort: Vec<Option<u8>> = rated(&rig).into_iter().map(|(_, _, value)| value).collect();
    assert_eq!(effort, [Some(9), Some(5), Some(6), Some(7)], "the last one counts");
}

#[test]
fn a_number_over_our_own_voice_is_not_the_clients() {
    let mut rig = at_the_end(&ALL, None);
    rig.until(|rig| rig.keys().contains(&"ask-effort"), 60.0);
    assert!(rig.is_speaking());
    rig.answer("answer-10");
    assert!(rated(&rig).is_empty());
    // Pressed it is.
    rig.event(Event::Answer { at_s: rig.now_s(), text: "answer-10".into(), confidence: 1.0 });
    assert_eq!(rated(&rig), [(Rating::Effort, OVER, Some(10))]);
}

#[test]
fn silence_is_asked_once_more_and_then_passed_over_and_an_empty_room_is_left() {
    let mut rig = at_the_end(&ALL, None);
    rig.until_said("ask-effort", 60.0);
    rig.until(|rig| rig.finished, 120.0);
    assert_eq!(rated(&rig), [(Rating::Effort, OVER, None), (Rating::Tiredness, OVER, None)], "two in a row: nobody is there");
    assert_eq!((rig.count("ask-rating-again"), end_reason(&rig).as_str()), (2, "completed"));
}

#[test]
fn stop_and_finish_end_the_questions_at_once() {
    for (command, silent_s) in [(Command::Stop, 0.9), (Command::Pause, 0.9), (Command::Finish, 0.0)] {
        let mut rig = at_the_end(&ALL, None);
        rig.until_said("ask-effort", 60.0);
        rig.command(command);
        rig.run_s(silent_s);
        assert!(!rig.is_speaking(), "{command:?}");
        rig.until(|rig| rig.finished, 5.0);
        assert!(rated(&rig).is_empty());
        assert_eq!(end_reason(&rig), "completed");
    }
    // Over the summary, too: nothing leads back into the practice.
    let mut rig = at_the_end(&ALL, None);
    rig.until(|rig| rig.keys().contains(&"summary-all"), 60.0);
    rig.command(Command::Stop);
    rig.until(|rig| rig.finished, 5.0);
    assert_eq!(rig.count("ask-effort"), 0);
}

#[test]
fn once_a_week_the_week_is_asked_about() {
    let mut rig = with_steps(vec![paced(1), swallow()], &[Rating::Effort], Some(2));
    rig.until_said("ex-effortful-swallow-cue", 90.0);
    rig.run_s(2.0);
    rig.command(Command::Done);
    rig.until_said("ask-effort", 60.0);
    rig.answer("answer-3");
    rig.until_said("ask-voice", 10.0);
    rig.answer("answer-8");
    rig.until_said("ask-missed", 10.0);
    rig.answer("answer-too-tired");
    for (sign, command, said) in [
        (SwallowSign::Cough, Command::Yes, "sign-taken-yes"),
        (SwallowSign::WetVoice, Command::No, "sign-taken-no"),
        (SwallowSign::Weight, Command::Hint, "sign-taken-not-sure"),
        (SwallowSign::Chest, Command::Skip, "questions-over"),
    ] {
        rig.until_said(&sign.ask_key(), 10.0);
        rig.command(command);
        rig.until_said(said, 5.0);
    }
    rig.until(|rig| rig.finished, 10.0);
    let signs: Vec<SignAnswer> = rig
        .facts
        .iter()
        .filter_map(|entry| if let Fact::SwallowSign { answer, .. } = &entry.fact { Some(answer.clone()) } else { None })
        .collect();
    assert_eq!(signs, [SignAnswer::Yes, SignAnswer::No, SignAnswer::NotSure, SignAnswer::PassedOver]);
    assert_eq!(rated(&rig)[1], (Rating::Voice, RatedOver::Week, Some(8)));
    let missed = Fact::DaysMissed { days: 2, reason: Some(MissedReason::Tired) };
    assert!(rig.facts.iter().any(|entry| entry.fact == missed));
}

#[test]
fn without_swallow_work_or_missed_days_neither_is_asked() {
    let mut rig = at_the_end(&[], Some(0));
    rig.until_said("ask-voice", 60.0);
    rig.answer("answer-8");
    rig.until(|rig| rig.finished, 10.0);
    assert_eq!(rig.count("ask-missed") + rig.count("ask-sign-cough-at-meals"), 0);
}

#[test]
fn a_go_back_takes_back_the_answer_to_a_sign_and_a_second_no_does_not() {
    let mut rig = with_steps(vec![swallow()], &[], Some(0));
    rig.until_said("ex-effortful-swallow-cue", 90.0);
    rig.run_s(2.0);
    rig.command(Command::Done);
    rig.until_said("ask-voice", 60.0);
    rig.command(Command::Skip);
    rig.until_said("ask-sign-cough-at-meals", 10.0);
    rig.command(Command::No);
    rig.until_said("sign-taken-no", 5.0);
    assert!(!rig.may_say(Command::No));
    rig.command(Command::GoBack);
    rig.until_said("ask-sign-cough-at-meals", 5.0);
    rig.command(Command::Yes);
    rig.until_said("ask-sign-wet-voice", 10.0);
}

#[test]
fn who_breaks_off_is_asked_about_today_alone_and_not_where_something_was_wrong() {
    let mut rig = with_steps(vec![paced(1), voiced(3)], &ALL, Some(1));
    rig.until_said("ex-long-ah-cue", 90.0);
    finish(&mut rig);
    rig.until_said("ask-effort", 30.0);
    for _ in 0..3 {
        rig.command(Command::Skip);
        rig.run_s(4.0);
    }
    assert!(rig.finished);
    assert_eq!((rig.count("ask-voice"), end_reason(&rig).as_str()), (0, "finished"));

    // Said twice, it wants no questions either.
    let mut hurried = with_steps(vec![paced(1), voiced(3)], &ALL, None);
    hurried.until_said("ex-long-ah-cue", 90.0);
    finish(&mut hurried);
    hurried.run_s(2.0);
    hurried.command(Command::Finish);
    hurried.until(|rig| rig.finished, 10.0);
    assert_eq!(hurried.count("ask-effort"), 0);

    let mut unwell = with_steps(vec![paced(1), voiced(3)], &ALL, None);
    unwell.until_said("ex-long-ah-cue", 90.0);
    unwell.command(Command::Hurts);
    unwell.until_said("unwell-go-on", 60.0);
    finish(&mut unwell);
    unwell.until(|rig| rig.finished, 30.0);
    assert_eq!(unwell.count("ask-effort"), 0);
}

#[test]
fn a_class_and_an_emergency_are_asked_nothing() {
    let mut class = Rig::new(vec![paced(1)], SessionContext { class: true, ..SessionContext::default() });
    class.asks(&ALL, false);
    class.until_said("class-start", 30.0);
    class.command(Command::Ready);
    class.until_said("class-position", 30.0);
    class.command(Command::Ready);
    class.until(|rig| rig.finished, 120.0);
    assert_eq!(class.count("ask-effort"), 0);

    let mut emergency = at_the_end(&ALL, None);
    emergency.until_said("ask-effort", 60.0);
    emergency.command(Command::ChestPain);
    emergency.until_said("emergency-call-unknown", 30.0);
    emergency.command(Command::AllRight);
    emergency.until(|rig| rig.finished, 30.0);
    assert_eq!((emergency.count("ask-effort"), end_reason(&emergency).as_str()), (1, "unwell"));
}

#[test]
fn who_is_dizzy_or_calls_for_help_is_told_what_to_do_and_listened_to() {
    for (command, said) in [(Command::Dizzy, "unwell-dizzy"), (Command::Help, "help")] {
        let mut rig = at_the_end(&ALL, None);
        rig.until_said("ask-effort", 60.0);
        rig.command(command);
        rig.until_said(said, 10.0);
        rig.until_said("questions-unwell", 20.0);
        assert!(rig.may_say(Command::ChestPain) && rig.may_say(Command::AllRight));
        assert!(rig.facts.iter().any(|entry| matches!(entry.fact, Fact::SafetyStop { .. })));
        rig.run_s(60.0);
        assert!(!rig.finished);
        rig.command(Command::AllRight);
        rig.until(|rig| rig.finished, 10.0);
        assert_eq!(end_reason(&rig), "completed");
    }
    let mut silent = at_the_end(&ALL, None);
    silent.until_said("ask-effort", 60.0);
    silent.command(Command::Dizzy);
    silent.until(|rig| rig.finished, 160.0);
}

#[test]
fn a_doubtful_call_for_help_is_asked_about_and_a_no_leads_back_to_the_question() {
    let mut rig = at_the_end(&ALL, None);
    rig.until_said("ask-effort", 60.0);
    rig.unsure(Command::ChestPain, 0.6);
    rig.until_said("ask-confirm", 5.0);
    rig.command(Command::No);
    rig.until_said("ask-effort", 5.0);
    rig.answer("answer-2");
    rig.until_said("ask-tiredness", 10.0);
}

#[test]
fn an_interrupt_among_the_questions_changes_nothing_of_how_it_ended() {
    let mut rig = at_the_end(&ALL, None);
    rig.until_said("ask-effort", 60.0);
    let at_s = rig.now_s();
    rig.event(Event::Interrupt { at_s });
    assert!(rig.finished);
    assert_eq!(end_reason(&rig), "completed");
}

fn finish(rig: &mut Rig) {
    rig.command(Command::Stop);
    rig.run_s(2.0);
    rig.command(Command::Finish);
}

fn swallow() -> Step {
    let mut step = repeated(1, None);
    step.exercise.id = "effortful-swallow".into();
    step
}

/// To the question about a moment of the week, where what is told can be kept.
fn at_the_moment() -> Rig {
    let context = SessionContext { week_to_ask: Some(WeekToAsk::default()), keeps_sound: true, ..SessionContext::default() };
    let mut rig = Rig::new(vec![paced(1)], context);
    rig.asks(&[], true);
    rig.begin();
    rig.until_said("ask-voice", 60.0);
    rig.answer("answer-8");
    rig.until_said("ask-moment", 10.0);
    rig
}

fn moments(rig: &Rig) -> Vec<Option<(f64, f64)>> {
    let of = |entry: &Entry| if let Fact::MomentTold { from_s, until_s, .. } = entry.fact { Some(from_s.zip(until_s)) } else { None };
    rig.facts.iter().filter_map(of).collect()
}

#[test]
fn nobody_is_asked_to_tell_what_cannot_be_kept() {
    let mut rig = at_the_end(&[], Some(0));
    rig.until_said("ask-voice", 60.0);
    rig.answer("answer-8");
    rig.until(|rig| rig.finished, 20.0);
    assert_eq!(rig.count("ask-moment"), 0);
}

#[test]
fn a_moment_is_told_in_the_clients_own_time() {
    let mut rig = at_the_moment();
    rig.run_s(2.0);
    let from_s = rig.now_s();
    rig.speak(3.0, 12);
    rig.run_s(2.0);
    rig.speak(4.0, 16);
    rig.until_said("moment-taken", 10.0);
    assert_eq!(rig.count("ask-moment-again"), 0, "a pause for thought is no silence");
    rig.until(|rig| rig.finished, 20.0);
    let [Some((told_s, until_s))] = moments(&rig)[..] else { panic!("told once: {:?}", moments(&rig)) };
    assert!((told_s - from_s).abs() < 0.1 && until_s - told_s >= 8.9, "{told_s} to {until_s}");
    assert_eq!((rig.count("questions-over"), end_reason(&rig).as_str()), (1, "completed"));
}

#[test]
fn no_moment_is_an_answer_yes_asks_on_and_next_passes_over() {
    let mut rig = at_the_moment();
    rig.run_s(1.0);
    rig.command(Command::No);
    rig.until_said("moment-none", 5.0);
    rig.until(|rig| rig.finished, 20.0);
    assert_eq!(moments(&rig), [None]);

    let mut rig = at_the_moment();
    rig.run_s(1.0);
    rig.command(Command::Yes);
    rig.until_said("moment-tell", 5.0);
    rig.run_s(1.0);
    rig.speak(3.0, 12);
    rig.until_said("moment-taken", 10.0);
    // Thought better of: it is taken back, and nothing of it counts.
    rig.command(Command::No);
    rig.until_said("ask-moment", 5.0);
    rig.run_s(1.0);
    rig.command(Command::Skip);
    rig.until(|rig| rig.finished, 20.0);
    let told = moments(&rig);
    assert!(told.len() == 2 && told[0].is_some() && told[1].is_none(), "the last one counts: {told:?}");
}

#[test]
fn a_single_word_is_asked_about_and_silence_is_passed_over() {
    let mut rig = at_the_moment();
    rig.run_s(1.0);
    rig.speak(0.6, 2);
    rig.until_said("ask-moment-again", 10.0);
    rig.run_s(1.0);
    rig.speak(3.0, 10);
    rig.until_said("moment-taken", 10.0);
    let mut rig = at_the_moment();
    rig.until(|rig| rig.finished, 120.0);
    assert_eq!((moments(&rig), rig.count("ask-moment-again")), (vec![None], 1));
}

#[test]
fn finish_keeps_what_was_told_and_stop_does_not() {
    for (command, kept) in [(Command::Finish, 1), (Command::Stop, 0)] {
        let mut rig = at_the_moment();
        rig.run_s(1.0);
        rig.speak(3.0, 12);
        rig.command(command);
        rig.until(|rig| rig.finished, 10.0);
        assert_eq!(moments(&rig).len(), kept, "{command:?}");
        assert_eq!(end_reason(&rig), "completed");
    }
}
