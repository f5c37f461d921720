//! What can be said at any time.

use super::rig::*;
use crate::*;

/// Brings a session of this one step to the state in which it is performed.
fn performing(index: usize) -> Rig {
    let step = whole().into_iter().nth(index).expect("step");
    let agreed = [step.exercise.id.clone()].into();
    let waits = step.exercise.waits_for_ready;
    let mut rig = Rig::new(vec![step, voiced(1)], SessionContext { agreed, ..SessionContext::default() });
    rig.begin();
    if waits {
        rig.until_said("ask-position", 30.0);
        rig.command(Command::Ready);
    }
    rig.run_s(9.0);
    rig
}

#[test]
fn stop_silences_every_state_and_tells_the_ways_on() {
    for index in 0..whole().len() {
        let mut rig = performing(index);
        let said = rig.said.len();
        rig.command(Command::Stop);
        rig.run_s(0.9);
        assert_eq!(rig.said.len(), said, "step {index} spoke after stop");
        rig.run_s(3.0);
        assert_eq!(rig.count("stopped"), 1, "step {index}");
        rig.command(Command::GoOn);
        rig.run_s(3.0);
        assert!(!rig.finished);
        rig.command(Command::Stop);
        rig.run_s(3.0);
        rig.command(Command::Finish);
        rig.run_s(15.0);
        assert!(rig.finished, "step {index}");
    }
}

#[test]
fn stop_is_heard_while_it_greets_and_while_it_asks() {
    for wait_s in [0.5, 2.0, 4.0, 20.0] {
        let mut rig = Rig::new(vec![posture()], SessionContext { first_session: true, ..SessionContext::default() });
        rig.run_s(wait_s);
        rig.command(Command::Stop);
        rig.run_s(3.0);
        assert_eq!(rig.count("stopped"), 1, "at {wait_s} s");
        rig.command(Command::GoOn);
        rig.run_s(20.0);
        assert!(rig.keys().contains(&"ask-agreement"), "at {wait_s} s: {:?}", rig.keys());
    }
}

#[test]
fn whoever_answers_before_the_question_is_over_hears_no_more_of_it() {
    let mut rig = Rig::new(vec![voiced(1)], SessionContext::default());
    rig.until(|rig| rig.count("ask-ready") == 1, 30.0);
    assert!(rig.is_speaking());
    rig.command(Command::Ready);
    assert!(!rig.keys_since_mark().is_empty(), "it goes on at once");
    rig.until_said("ex-long-ah-cue", 20.0);
    assert_eq!(rig.count("ask-ready"), 1);
}

#[test]
fn nobody_agrees_aloud_before_the_question_is_over() {
    let mut rig = Rig::new(vec![posture()], SessionContext { first_session: true, ..SessionContext::default() });
    let agreed = |rig: &Rig| rig.facts.iter().any(|entry| matches!(entry.fact, Fact::Agreement { given: true, .. }));
    rig.until(|rig| rig.count("ask-agreement") == 1, 60.0);
    rig.command(Command::Yes);
    assert!(rig.is_speaking() && !agreed(&rig));
    rig.until(|rig| !rig.is_speaking(), 10.0);
    rig.command(Command::Yes);
    rig.run_s(1.0);
    assert!(agreed(&rig));
}

#[test]
fn a_hold_cut_off_by_a_command_is_kept_as_incomplete() {
    let mut rig = performing(0);
    let onset_s = rig.now_s();
    rig.event(Event::Onset { at_s: onset_s + 0.3, onset_s });
    rig.run_s(4.0);
    rig.command(Command::Stop);
    rig.event(Event::Offset { at_s: rig.now_s(), hold: hold(onset_s, 4.0) });
    let cut = rig.facts.iter().find(|e| matches!(e.fact, Fact::HoldMeasured { complete: false, .. })).expect("kept");
    assert_eq!(cut.position, Some(Position { step: 1, set: 1, repetition: 1 }));
}

#[test]
fn dizzy_leaves_the_exercise_says_what_to_do_and_is_recorded() {
    let mut rig = performing(1);
    rig.command(Command::Dizzy);
    rig.run_s(6.0);
    assert!(rig.keys().contains(&"unwell-dizzy"));
    let kinds = rig.kinds();
    assert!(kinds.contains(&"safety_stop".to_owned()) && kinds.contains(&"step_stopped".to_owned()));
    // The long vowel after it is left out, too: many full breaths make light-headed.
    rig.command(Command::GoOn);
    rig.until(|rig| rig.finished, 20.0);
    assert_eq!(rig.count("ex-long-ah-cue"), 0);
}

#[test]
fn help_explains_and_goes_on_with_the_same_repetition() {
    let mut rig = performing(3);
    rig.command(Command::Help);
    rig.run_s(8.0);
    assert!(rig.keys().contains(&"help") && rig.count("ex-tongue-hold-swallow-instruction") == 2);
    rig.command(Command::GoOn);
    rig.until_said("ex-tongue-hold-swallow-cue", 10.0);
}

/// Whoever calls for help hears one sentence, and is listened to before anything more is said.
#[test]
fn help_and_pain_are_answered_in_one_sentence_before_it_listens() {
    for (command, first, more) in [
        (Command::Help, "help", "help-more"),
        (Command::Hurts, "unwell-pain", "unwell-pain-more"),
        (Command::Dizzy, "unwell-dizzy", "unwell-dizzy-more"),
        (Command::FeelSick, "unwell-sick", "unwell-sick-more"),
    ] {
        let mut rig = performing(3);
        rig.command(command);
        rig.run_s(3.5);
        assert_eq!(rig.keys_since_mark(), [first], "{command:?}");
        assert!(!rig.is_speaking() && rig.may_say(Command::GoOn), "{command:?}: it listens");
        rig.run_s(8.0);
        assert_eq!(rig.count(more), 1, "{command:?}: the rest comes into the silence: {:?}", rig.keys());
        let mut rig = performing(3);
        rig.command(command);
        rig.run_s(2.5);
        rig.command(Command::GoOn);
        rig.run_s(8.0);
        assert_eq!(rig.count(more), 0, "{command:?}: whoever goes on is not kept");
    }
}

#[test]
fn skip_is_named_and_go_back_undoes_it() {
    let mut rig = performing(3);
    rig.command(Command::Skip);
    rig.until_said("skipped", 5.0);
    rig.command(Command::GoBack);
    rig.until_said("ex-tongue-hold-swallow-cue", 20.0);
}

#[test]
fn an_unsure_skip_is_asked_about_first() {
    let mut rig = performing(3);
    rig.unsure(Command::Skip, 0.65);
    rig.run_s(2.0);
    assert_eq!((rig.count("ask-confirm"), rig.count("skipped")), (1, 0));
    rig.command(Command::No);
    rig.until_said("ex-tongue-hold-swallow-cue", 10.0);
    rig.unsure(Command::Skip, 0.65);
    rig.run_s(2.0);
    rig.command(Command::Yes);
    rig.until_said("skipped", 5.0);
}

#[test]
fn slower_changes_the_next_round_and_how_long_answers() {
    let mut rig = Rig::new(vec![paced(4)], SessionContext::default());
    rig.begin();
    rig.until_said("ex-nasal-breathing-cue", 20.0);
    rig.run_s(3.0);
    rig.command(Command::Slower);
    rig.run_s(40.0);
    let beats: Vec<f64> = rig
        .facts
        .iter()
        .filter_map(|e| match e.fact {
            Fact::RoundPaced { beat_s, .. } => Some(beat_s),
            _ => None,
        })
        .collect();
    assert!(beats.len() >= 2 && (beats[0] - 1.0).abs() < 1e-9 && (beats[1] - 1.2).abs() < 1e-9, "{beats:?}");
}

#[test]
fn louder_rest_again_and_finish_do_what_they_say() {
    let mut rig = performing(3);
    rig.command(Command::Louder);
    assert!(rig.volume_db > 0.0);
    rig.run_s(2.0);
    let cues = rig.count("ex-tongue-hold-swallow-cue");
    rig.command(Command::Again);
    rig.run_s(2.0);
    assert_eq!(rig.count("ex-tongue-hold-swallow-cue"), cues + 1);
    rig.command(Command::Rest);
    rig.run_s(3.0);
    assert_eq!(rig.count("resting"), 1);
    rig.command(Command::Ready);
    rig.until_said("ex-tongue-hold-swallow-cue", 10.0);
    rig.command(Command::Stop);
    rig.run_s(3.0);
    rig.command(Command::Finish);
    rig.run_s(2.0);
    rig.command(Command::GoOn);
    rig.until_said("ex-tongue-hold-swallow-cue", 10.0);
    assert!(!rig.finished, "finish was taken back");
}

#[test]
fn a_finish_that_is_not_taken_back_keeps_the_step_that_it_ended() {
    let mut rig = performing(0);
    rig.command(Command::Stop);
    rig.run_s(3.0);
    rig.command(Command::Finish);
    rig.idle_s(30.0);
    assert!(rig.finished);
    assert_eq!(rig.kinds().iter().filter(|kind| *kind == "step_stopped").count(), 1, "{:?}", rig.kinds());
}

#[test]
fn an_interrupt_ends_at_once_with_everything_kept() {
    for index in 0..whole().len() {
        let mut rig = performing(index);
        rig.event(Event::Interrupt { at_s: rig.now_s() });
        assert!(rig.finished, "step {index}");
        let ends = rig.kinds();
        assert_eq!(ends.last().map(String::as_str), Some("session_ended"));
        assert!(ends.contains(&"step_stopped".to_owned()));
    }
}

#[test]
fn cautions_that_were_broken_off_go_on_with_the_exercise_under_way() {
    let mut second = posture();
    second.exercise.id = "neck-turns".into();
    let mut rig = Rig::new(vec![posture(), second], SessionContext { first_session: true, ..SessionContext::default() });
    rig.until_said("ask-agreement", 30.0);
    rig.command(Command::Yes);
    rig.until(|rig| rig.count("ex-neck-turns-before") == 1, 30.0);
    rig.command(Command::Stop);
    rig.run_s(4.0);
    rig.command(Command::GoOn);
    rig.until_said("ask-agreement", 30.0);
    assert_eq!((rig.count("ex-lip-press-smile-before"), rig.count("ex-neck-turns-before"), rig.count("cautions-first")), (1, 2, 1));
    let begun = rig.facts.iter().filter(|entry| matches!(entry.fact, Fact::SessionBegun { .. })).count();
    assert_eq!(begun, 1);
}

/// Each exercise is named and asked about by itself; nothing but a yes is one, and it leaves out that exercise alone.
#[test]
fn each_guarded_exercise_has_its_own_answer() {
    let guarded = |id: &str| {
        let mut step = posture();
        step.exercise.id = id.into();
        step
    };
    let ids = ["neck-turns", "neck-tilts", "tongue-press", "jaw-opening", "chin-tuck-ball"];
    let steps = ids.iter().map(|id| guarded(id)).collect();
    let mut rig = Rig::new(steps, SessionContext { first_session: true, ..SessionContext::default() });
    let answers = [Some(Command::Yes), Some(Command::No), Some(Command::NotSure), Some(Command::Hint), None];
    for (id, answer) in ids.iter().zip(answers) {
        rig.until_said("ask-agreement", 60.0);
        assert!(rig.keys().iter().rev().take(2).any(|key| *key == format!("ex-{id}-before")), "{:?}", rig.keys());
        match answer {
            Some(answer) => rig.command(answer),
            None => rig.idle_s(60.0),
        }
    }
    rig.until(|rig| rig.count("ask-ready-first") == 1, 60.0);
    let kept: Vec<(String, bool, String)> = rig
        .facts
        .iter()
        .filter_map(|entry| match &entry.fact {
            Fact::Agreement { given, exercises, answer: Some(answer), dose_band: Some(1..=4), .. } => {
                Some((exercises.join(" "), *given, answer.to_string()))
            }
            _ => None,
        })
        .collect();
    let expected = ["yes", "no", "not sure", "not sure", "no answer"];
    let expected: Vec<_> = ids.iter().zip(expected).map(|(id, answer)| ((*id).to_owned(), answer == "yes", answer.to_owned())).collect();
    assert_eq!(kept, expected);
    let out = |entry: &&Entry| matches!(entry.fact, Fact::StepLeftOut { .. });
    assert_eq!(rig.facts.iter().filter(out).count(), 4);
    rig.command(Command::Ready);
    rig.until(|rig| rig.keys().contains(&"ex-neck-turns-instruction"), 20.0);
    let care = rig.keys().iter().position(|key| *key == "ex-neck-turns-care");
    rig.run_s(5.0);
    assert!(care.is_some() || rig.keys().contains(&"ex-neck-turns-care"), "what matters every time is said");
}

/// A clinician has agreed in writing: nobody is asked, yet who must not do it is told once, also after a stop in the middle of it.
#[test]
fn what_is_agreed_in_writing_is_cautioned_about_once_and_not_asked() {
    let agreed = ["lip-press-smile".to_owned()].into();
    let mut rig = Rig::new(vec![posture(), posture()], SessionContext { first_session: true, agreed, ..SessionContext::default() });
    rig.until(|rig| rig.count("ex-lip-press-smile-before") == 1, 30.0);
    rig.command(Command::Stop);
    rig.run_s(4.0);
    rig.command(Command::GoOn);
    rig.until(|rig| rig.count("ask-ready-first") == 1, 30.0);
    assert_eq!((rig.count("ex-lip-press-smile-before"), rig.count("ask-agreement")), (2, 0));
}

/// What matters every time is said every time, also to somebody who knows the exercise well.
#[test]
fn the_care_of_an_exercise_is_said_in_every_practice() {
    let known = ["long-ah".to_owned()].into();
    let mut rig = Rig::new(vec![voiced(1)], SessionContext { known, ..SessionContext::default() });
    rig.begin();
    rig.until_said("ex-long-ah-cue", 30.0);
    assert_eq!((rig.count("ex-long-ah-short"), rig.count("ex-long-ah-care")), (1, 1));
    let mut class = Rig::new(vec![voiced(1)], SessionContext { class: true, ..SessionContext::default() });
    class.until_said("class-start", 30.0);
    class.command(Command::Ready);
    class.run_s(10.0);
    assert_eq!(class.count("ex-long-ah-care"), 0, "the clinician says it");
}

#[test]
fn a_trouble_is_kept_at_once_and_told_once_when_nothing_is_timed() {
    let mut rig = performing(1);
    let before = rig.said.len();
    for _ in 0..3 {
        rig.event(Event::Trouble { at_s: rig.now_s(), trouble: Trouble::MicrophoneGain });
    }
    assert_eq!(rig.kinds().iter().filter(|kind| *kind == "troubled").count(), 1);
    assert!(!rig.said.iter().skip(before).any(|(_, key, _)| key.starts_with("trouble-")), "not in the middle of an exercise");
    rig.command(Command::Stop);
    rig.until_said("trouble-microphone-gain", 20.0);
    rig.command(Command::GoOn);
    rig.run_s(20.0);
    assert_eq!(rig.count("trouble-microphone-gain"), 1);
}

#[test]
fn a_loud_room_is_kept_each_time_and_said_once() {
    let mut rig = Rig::new(vec![voiced(2), rest(Some(20.0))], SessionContext::default());
    rig.run_s(1.0);
    for loud in [true, false, true, false, true] {
        let at_s = rig.now_s();
        rig.event(Event::RoomLoud { at_s, loud, room_db: -35.0 });
        rig.run_s(4.0);
    }
    rig.run_s(20.0);
    assert_eq!(rig.count("trouble-room-too-loud"), 1, "{:?}", rig.keys());
    assert_eq!(rig.kinds().iter().filter(|kind| *kind == "room_loud").count(), 5, "{:?}", rig.kinds());
}

#[test]
fn nothing_is_said_of_a_loud_room_during_a_hold_and_the_hold_is_marked() {
    let mut rig = performing(0);
    let onset_s = rig.now_s();
    rig.event(Event::Onset { at_s: onset_s + 0.3, onset_s });
    rig.event(Event::RoomLoud { at_s: onset_s + 0.5, loud: true, room_db: -35.0 });
    rig.run_s(3.0);
    assert_eq!(rig.count("trouble-room-too-loud"), 0, "{:?}", rig.keys());
    let ended = model::Hold { over_room_db: 6.0, ..hold(onset_s, 3.0) };
    rig.event(Event::Offset { at_s: onset_s + 3.6, hold: ended });
    assert!(rig.kinds().iter().any(|kind| kind == "hold_in_noise"), "{:?}", rig.kinds());
}

/// Every state in which words are heard at all hears whoever is unwell, and each symptom has its own ending.
#[test]
fn whoever_is_unwell_is_heard_in_every_state_that_hears_words() {
    for index in 0..whole().len() {
        let rig = performing(index);
        let listening = rig.listening.as_ref().unwrap();
        if !listening.commands.is_empty() {
            for command in listening::SAFETY {
                assert!(rig.may_say(*command), "step {index} is deaf to {command:?}");
            }
        }
    }
    for state in [listening::READY, listening::NAMING, listening::FINISHING, listening::HALTED, listening::YES_NO] {
        assert!(listening::SAFETY.iter().all(|command| listening::with_safety(state).contains(command)));
    }
    assert!(listening::with_safety(&[]).is_empty(), "nothing is heard where nothing is listened for");
}

fn in_practice(number: Option<&str>) -> Rig {
    let context = SessionContext { emergency_number: number.map(str::to_owned), ..SessionContext::default() };
    let mut rig = Rig::new(vec![voiced(3), question()], context);
    rig.begin();
    rig.until_said("ex-long-ah-cue", 30.0);
    rig
}

fn in_trouble(command: Command, number: Option<&str>) -> Rig {
    let mut rig = in_practice(number);
    rig.command(command);
    rig
}

#[test]
fn chest_pain_ends_the_practice_says_the_number_and_waits_for_a_word() {
    for (command, symptom) in [(Command::ChestPain, "chest pain"), (Command::CantBreathe, "can't breathe")] {
        let mut rig = in_trouble(command, Some("112"));
        let reason = |fact: &Fact| matches!(fact, Fact::SafetyStop { exercise: Some(_), reason, .. } if reason.as_str() == symptom);
        assert!(rig.facts.iter().any(|entry| reason(&entry.fact)), "kept at once");
        assert!(rig.facts.iter().any(|entry| matches!(&entry.fact, Fact::StepStopped { reason, .. } if reason.as_str() == symptom)));
        rig.until_said("emergency-call", 5.0);
        rig.idle_s(120.0);
        assert!(rig.count("emergency-anybody") >= 3 && rig.count("emergency-call") >= 4, "it goes on calling: {:?}", rig.keys());
        let calls = rig.count("emergency-call");
        rig.command(Command::Help);
        rig.run_s(1.0);
        assert_eq!(rig.count("emergency-call"), calls + 1, "at once");
        assert!(!rig.may_say(Command::GoOn) && !rig.may_say(Command::Ready), "nothing leads back into the practice");
        let at_s = rig.now_s();
        rig.event(Event::Command { at_s, command: Command::Skip, confidence: 0.65, text: "skip".into() });
        rig.run_s(1.0);
        assert_eq!(rig.count("ask-confirm"), 0, "also what was half heard before does not");
        for also in [Command::Dizzy, command, Command::FeelSick, Command::Dizzy] {
            rig.command(also);
        }
        let stops = rig.facts.iter().filter_map(|entry| match &entry.fact {
            Fact::SafetyStop { exercise, exercise_before: None, reason } => Some((exercise.as_deref(), reason.as_str())),
            _ => None,
        });
        let during = Some("long-ah");
        assert_eq!(stops.collect::<Vec<_>>(), [(during, symptom), (during, "dizzy"), (during, "feels sick")], "each once");
        rig.command(Command::AllRight);
        rig.run_s(5.0);
        assert!(rig.finished && rig.count("emergency-passed") == 1);
        let ends = |fact: &Fact| matches!(fact, Fact::SessionEnded { reason: EndReason::Unwell, .. });
        assert!(rig.facts.iter().any(|entry| ends(&entry.fact)));
    }
}

#[test]
fn an_emergency_that_nobody_answers_ends_by_itself_and_stop_only_silences_it() {
    let mut rig = in_trouble(Command::ChestPain, None);
    rig.until_said("emergency-call-unknown", 5.0);
    rig.command(Command::Stop);
    let said = rig.said.len();
    rig.idle_s(300.0);
    assert_eq!(rig.said.len(), said, "quiet");
    assert!(!rig.finished && rig.may_say(Command::AllRight));
    rig.idle_s(310.0);
    assert!(rig.finished && rig.count("emergency-ends") == 1);
}

/// Heard unsurely it is asked about; whoever cannot answer is taken at their word.
#[test]
fn an_unsure_emergency_is_asked_about_and_silence_is_a_yes() {
    for (answer, ends) in [(Some(Command::Yes), true), (Some(Command::No), false), (None, true)] {
        let mut rig = in_practice(Some("112"));
        rig.unsure(Command::ChestPain, 0.6);
        rig.until_said("ask-confirm", 5.0);
        match answer {
            Some(answer) => rig.command(answer),
            None => rig.idle_s(45.0),
        }
        rig.run_s(3.0);
        assert_eq!(rig.count("emergency-chest-pain") == 1, ends, "{answer:?}: {:?}", rig.keys());
    }
}

/// The rest of the practice is led without what could bring it back, and so is the next one of the day.
#[test]
fn a_symptom_leaves_out_what_is_like_it_in_this_practice_and_for_the_day() {
    let exercise = |id: &str, mut step: routine::Step| {
        step.exercise.id = id.into();
        step.exercise.needs_agreement = false;
        step.exercise.waits_for_ready = false;
        step
    };
    let steps = || {
        vec![
            exercise("neck-turns", posture()),
            exercise("nasal-breathing", posture()),
            exercise("effortful-swallow", posture()),
            exercise("shoulder-rolls", posture()),
        ]
    };
    let left_out = |rig: &Rig| -> Vec<String> {
        let of = |entry: &Entry| match &entry.fact {
            Fact::StepLeftOut { exercise, .. } => Some(exercise.clone()),
            _ => None,
        };
        rig.facts.iter().filter_map(of).collect()
    };
    for (command, symptom, out, say) in [
        (Command::Dizzy, Symptom::Dizzy, vec!["nasal-breathing", "effortful-swallow"], "unwell-dizzy"),
        (Command::Choking, Symptom::Choking, vec!["effortful-swallow"], "unwell-choking"),
        (Command::Hurts, Symptom::Pain, vec![], "unwell-pain"),
        (Command::FeelSick, Symptom::Sick, vec!["nasal-breathing", "effortful-swallow"], "unwell-sick"),
    ] {
        let mut rig = Rig::new(steps(), SessionContext::default());
        rig.begin();
        rig.run_s(6.0);
        rig.command(command);
        rig.run_s(0.1);
        assert_eq!(rig.keys_since_mark().first(), Some(&say), "what to do comes first");
        assert_eq!(rig.keys_since_mark().contains(&"emergency-call-unknown"), command == Command::Choking);
        assert_eq!(left_out(&rig).into_iter().filter(|id| id != "neck-turns").collect::<Vec<_>>(), out, "{command:?}");
        rig.until_said("unwell-go-on", 15.0);
        rig.command(Command::GoOn);
        rig.run_s(4.0);
        let next = steps().into_iter().skip(1).find(|step| !out.contains(&step.exercise.id.as_str())).unwrap();
        assert!(rig.keys().contains(&format!("ex-{}-instruction", next.exercise.id).as_str()), "{:?}", rig.keys());

        let mut today = EarlierToday::default();
        today.unwell.push((symptom, Some("neck-turns".into())));
        let mut again = Rig::new(steps(), SessionContext { today, ..SessionContext::default() });
        again.begin();
        assert!(again.keys().contains(&"unwell-earlier"), "{:?}", again.keys());
        let out_again = left_out(&again);
        assert!(out_again.contains(&"neck-turns".to_owned()) && out.iter().all(|id| out_again.contains(&(*id).to_owned())));
    }
}

/// A practice that broke off is gone on with under the same care, or not at all.
#[test]
fn a_resumed_practice_keeps_what_was_left_out_for_the_day() {
    let resumed = |symptom: Symptom| {
        let mut today = EarlierToday::default();
        today.unwell.push((symptom, Some("long-ah".into())));
        let resume_from = Some(Position { step: 1, set: 1, repetition: 2 });
        let mut rig = Rig::new(vec![voiced(3), question()], SessionContext { today, resume_from, ..SessionContext::default() });
        rig.until_said("ask-resume", 30.0);
        rig.command(Command::Yes);
        rig.run_s(12.0);
        rig
    };
    let dizzy = resumed(Symptom::Dizzy);
    assert_eq!((dizzy.count("unwell-earlier"), dizzy.count("ex-long-ah-cue"), dizzy.finished), (1, 0, false), "{:?}", dizzy.keys());
    let grave = resumed(Symptom::Breathless);
    assert!(grave.finished && grave.count("unwell-earlier-no-practice") == 1, "{:?}", grave.keys());
}

#[test]
fn after_chest_pain_nothing_is_practised_on_the_same_day() {
    let mut today = EarlierToday::default();
    today.unwell.push((Symptom::ChestPain, None));
    let mut rig = Rig::new(vec![voiced(1)], SessionContext { today, ..SessionContext::default() });
    rig.run_s(12.0);
    assert!(rig.finished && rig.count("unwell-earlier-no-practice") == 1, "{:?}", rig.keys());
}

#[test]
fn what_hurts_between_two_exercises_is_kept_with_the_one_before() {
    let mut rig = Rig::new(vec![voiced(1), question()], SessionContext::default());
    rig.begin();
    rig.until_said("ex-long-ah-cue", 30.0);
    rig.hold(5.0);
    rig.until(|rig| rig.facts.iter().any(|entry| matches!(entry.fact, Fact::StepDone { .. })), 60.0);
    rig.command(Command::Hurts);
    let stop = rig.facts.iter().find_map(|entry| match &entry.fact {
        Fact::SafetyStop { exercise, exercise_before, .. } => Some((exercise.clone(), exercise_before.clone())),
        _ => None,
    });
    assert_eq!(stop, Some((None, Some("long-ah".to_owned()))));
}
