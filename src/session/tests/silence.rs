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

fn any_event() -> impl Strategy<Value = u32> {
    0u32..60
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
