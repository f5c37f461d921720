//! Nobody answers; and no order of events breaks it.

use proptest::prelude::*;

use super::rig::*;
use crate::*;

#[test]
fn asks_twice_waits_and_ends_after_ten_minutes_with_all_kept() {
    let mut rig = Rig::new(vec![voiced(1)], SessionContext::default());
    rig.until_said("ask-ready", 20.0);
    rig.run_s(60.0);
    assert_eq!((rig.count("ask-ready-again"), rig.count("ask-ready-once-more"), rig.count("wait-for-ready")), (1, 1, 1));
    rig.run_s(560.0);
    assert!(rig.finished);
    assert!(matches!(&rig.facts.last().expect("entries").fact, Fact::SessionEnded { reason, .. } if reason == "no-answer"));
}

#[test]
fn a_trial_that_nobody_starts_is_asked_for_and_can_still_be_started() {
    let mut rig = Rig::new(vec![voiced(1)], SessionContext::default());
    rig.begin();
    rig.until_said("ex-long-ah-cue", 20.0);
    rig.run_s(60.0);
    assert_eq!((rig.count("voice-again"), rig.count("voice-once-more"), rig.count("wait-for-ready")), (1, 1, 1));
    rig.command(Command::Ready);
    rig.until_said("ex-long-ah-cue", 5.0);
    rig.hold(6.0);
    rig.until_said("summary-all", 20.0);
}

#[test]
fn from_every_state_silence_leads_to_an_end() {
    for index in 0..whole().len() {
        let steps: Vec<_> = whole().into_iter().skip(index).collect();
        let agreed = steps.iter().map(|s| s.exercise.id.clone()).collect();
        let mut rig = Rig::new(steps, SessionContext { agreed, ..SessionContext::default() });
        rig.begin();
        rig.idle_s(3600.0);
        assert!(rig.finished, "step {index} waits for ever; said {:?}", rig.keys());
    }
}

/// When a line was said first, s.
fn said_s(rig: &Rig, key: &str) -> Option<f64> {
    rig.said.iter().find(|said| said.1 == key).map(|said| said.0)
}

fn microphone_dies(rig: &mut Rig) {
    rig.event(Event::Trouble { at_s: rig.now_s(), trouble: Trouble::MicrophoneSilent });
}

#[test]
fn a_dead_microphone_is_told_once_in_place_of_asking_again_and_so_is_its_return() {
    let mut rig = Rig::new(vec![voiced(1)], SessionContext::default());
    rig.run_s(0.5);
    microphone_dies(&mut rig);
    rig.until_said("ask-ready", 30.0);
    let asked_s = rig.now_s();
    rig.run_s(200.0);
    let told_s = said_s(&rig, "trouble-microphone-silent").expect("it is told");
    assert!(told_s - asked_s < 15.0, "after {} s", told_s - asked_s);
    assert_eq!(rig.count("trouble-microphone-silent"), 1);
    assert_eq!(
        (rig.count("ask-ready-again"), rig.count("ask-ready-once-more"), rig.count("wait-for-ready")),
        (0, 0, 0),
        "{:?}",
        rig.keys()
    );
    rig.event(Event::SoundIsBack { at_s: rig.now_s() });
    rig.until_said("trouble-microphone-back", 2.0);
    rig.run_s(20.0);
    assert_eq!(rig.count("ask-ready-again"), 1, "now it can be answered");
    assert_eq!(rig.kinds().iter().filter(|kind| *kind == "troubled").count(), 1);
    // It dies once more, in front of a trial.
    rig.command(Command::Ready);
    rig.until_said("ex-long-ah-cue", 20.0);
    microphone_dies(&mut rig);
    rig.run_s(15.0);
    assert_eq!((rig.count("trouble-microphone-silent"), rig.count("voice-again")), (2, 0), "{:?}", rig.keys());
    rig.idle_s(700.0);
    assert!(rig.finished, "it does not wait for ever");
}

/// Nobody heard what was said meanwhile.
#[test]
fn after_the_loudspeaker_was_gone_whoever_is_waited_for_is_asked_once_more() {
    let mut rig = Rig::new(vec![voiced(2)], SessionContext::default());
    rig.begin();
    rig.until_said("ex-long-ah-cue", 60.0);
    rig.run_s(4.0);
    rig.event(Event::Trouble { at_s: rig.now_s(), trouble: Trouble::LoudspeakerGone });
    rig.run_s(1.0);
    let (announced, told) = (rig.count("ex-long-ah-cue"), rig.keys().len());
    rig.event(Event::VoiceIsBack { at_s: rig.now_s() });
    rig.run_s(4.0);
    assert_eq!(rig.keys()[told..], ["trouble-loudspeaker-back", "ex-long-ah-cue"]);
    assert_eq!((rig.count("ex-long-ah-cue"), rig.count("trouble-loudspeaker-gone")), (announced + 1, 0), "gone, nobody can be told aloud");
    // A hold is not talked over; and it stands once in the journal, however often it goes.
    let onset_s = rig.now_s();
    rig.event(Event::Onset { at_s: onset_s + 0.3, onset_s });
    rig.run_s(2.0);
    rig.event(Event::Trouble { at_s: rig.now_s(), trouble: Trouble::LoudspeakerGone });
    rig.event(Event::VoiceIsBack { at_s: rig.now_s() });
    rig.run_s(2.0);
    assert_eq!(rig.keys()[told..], ["trouble-loudspeaker-back", "ex-long-ah-cue"]);
    assert_eq!(rig.kinds().iter().filter(|kind| *kind == "troubled").count(), 1);
}

#[test]
fn after_the_loudspeaker_was_gone_a_question_is_asked_anew_and_a_class_hears_nothing_of_it() {
    let mut rig = Rig::new(vec![voiced(2)], SessionContext::default());
    rig.until_said("ask-ready", 30.0);
    rig.run_s(6.0);
    let asked = rig.count("ask-ready");
    rig.event(Event::VoiceIsBack { at_s: rig.now_s() });
    rig.run_s(6.0);
    assert_eq!((rig.count("trouble-loudspeaker-back"), rig.count("ask-ready")), (1, asked + 1), "{:?}", rig.keys());
    let mut class = Rig::new(vec![voiced(2)], SessionContext { class: true, ..SessionContext::default() });
    class.run_s(20.0);
    class.event(Event::VoiceIsBack { at_s: class.now_s() });
    class.run_s(4.0);
    assert_eq!(class.count("trouble-loudspeaker-back"), 0);
}

#[test]
fn whoever_answers_or_uses_the_keys_in_time_hears_nothing_of_a_silent_microphone() {
    let mut rig = Rig::new(vec![posture()], SessionContext { agreed: ["lip-press-smile".to_owned()].into(), ..SessionContext::default() });
    rig.run_s(0.5);
    microphone_dies(&mut rig);
    rig.until_said("ask-ready", 30.0);
    rig.run_s(4.0);
    rig.event(Event::SoundIsBack { at_s: rig.now_s() });
    rig.command(Command::Ready);
    rig.until_said("ask-position", 30.0);
    assert_eq!(rig.count("trouble-microphone-silent") + rig.count("trouble-microphone-back"), 0);
    microphone_dies(&mut rig);
    rig.run_s(2.0);
    rig.command(Command::Ready);
    rig.run_s(40.0);
    assert_eq!(rig.count("trouble-microphone-silent"), 0, "not into a posture that is counted: {:?}", rig.keys());
}

fn any_event() -> impl Strategy<Value = u32> {
    0u32..61
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(64))]

    #[test]
    fn no_order_of_events_breaks_it(events in prop::collection::vec((any_event(), 0u32..400), 0..60)) {
        let mut rig = Rig::new(whole(), SessionContext { first_session: true, ..SessionContext::default() });
        for (kind, ticks) in events {
            rig.idle_s(f64::from(ticks) * 0.02);
            let at_s = rig.now_s();
            let event = match kind {
                n @ 0..=39 => Event::Command {
                    at_s,
                    command: Command::ALL[(n % 20) as usize],
                    confidence: if n < 20 { 0.95 } else { 0.65 },
                    text: String::new(),
                },
                40..=44 => Event::Onset { at_s, onset_s: at_s - 0.3 },
                45..=49 => Event::Offset { at_s, hold: hold(at_s - 3.0, 3.0) },
                50..=52 => Event::SpeechBegan { at_s, onset_s: at_s },
                53..=55 => Event::Answer { at_s, text: "bank".into(), confidence: 0.9 },
                56 => Event::LineEnded { at_s, line: LineId(u64::from(ticks)) },
                57 => Event::Trouble { at_s, trouble: Trouble::MicrophoneSilent },
                58 => Event::SoundIsBack { at_s },
                59 => Event::VoiceIsBack { at_s },
                _ => Event::Tick { at_s: at_s - 5.0 },
            };
            rig.event(event);
        }
        rig.idle_s(7200.0);
        prop_assert!(rig.finished);
        let times: Vec<f64> = rig.facts.iter().map(|e| e.at_s).collect();
        prop_assert!(times.windows(2).all(|w| w[0] <= w[1]));
        let ends = rig.facts.iter().filter(|e| matches!(e.fact, Fact::SessionEnded { .. })).count();
        prop_assert_eq!(ends, 1);
    }
}

#[test]
fn a_reminder_that_is_due_waits_for_whoever_draws_breath() {
    let reminded_at_s = |stirs: &[f64]| {
        let mut rig = Rig::new(vec![voiced(1)], SessionContext::default());
        rig.begin();
        rig.until_said("ex-long-ah-cue", 30.0);
        rig.until(|rig| !rig.is_speaking(), 30.0);
        let began_s = rig.now_s();
        let mut stirs = stirs.iter().copied().peekable();
        while rig.count("voice-again") == 0 {
            rig.run_s(0.1);
            if stirs.next_if(|stirs_s| rig.now_s() - began_s >= *stirs_s).is_some() {
                rig.event(Event::Stirred { at_s: rig.now_s() });
            }
        }
        rig.now_s() - began_s
    };
    let due_s = reminded_at_s(&[]);
    let close = |a: f64, b: f64| (a - b).abs() < 0.25;
    assert!(close(reminded_at_s(&[due_s - 0.5]), due_s + 0.5), "a moment longer");
    assert!(close(reminded_at_s(&[due_s - 2.0]), due_s), "that was long ago");
    let restless: Vec<f64> = (0..60).map(|n| due_s - 1.0 + f64::from(n) * 0.1).collect();
    assert!(close(reminded_at_s(&restless), due_s + 3.0), "a restless room is talked into in the end");
}

#[test]
fn a_reminder_gives_way_to_whoever_begins_and_an_instruction_does_not() {
    let mut rig = Rig::new(vec![voiced(1)], SessionContext::default());
    rig.begin();
    assert!(rig.is_speaking(), "it explains");
    rig.event(Event::SpokenOver { at_s: rig.now_s() });
    assert!(rig.is_speaking());
    rig.until_said("ex-long-ah-cue", 30.0);
    rig.until(|rig| rig.count("voice-again") == 1, 60.0);
    rig.run_s(0.3);
    rig.event(Event::SpokenOver { at_s: rig.now_s() });
    assert!(!rig.is_speaking(), "broken off");
    rig.run_s(2.0);
    assert_eq!(rig.count("voice-again") + rig.count("voice-once-more"), 1, "whoever begins is not talked over again");
    rig.hold(5.0);
}
