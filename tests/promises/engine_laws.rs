//! The engine against its laws, for millions of steps: time never runs back, "stop" always ends what is under way within one
//! step, no step is counted twice, a dose is never exceeded, every pause can be left, a resumed practice equals an unbroken one.
//!
//! `PROPTEST_CASES=20000 cargo test --test engine_laws` goes on for longer. Laws that hold at each event are watched in
//! `support/engine_world.rs`.

mod doses;
#[path = "../support/engine_world.rs"]
mod engine_world;

use std::collections::{BTreeMap, BTreeSet};

use engine_world::{World, diligent, hold, is_whole, routine, step, utterance};
use proptest::prelude::*;
use record::{amounts_in, counts_in, led_in, next_position};
use routine::{AFTER_A_PRACTICE, LookingBack, Routine};
use session::{Command, EndReason, Entry, Event, Fact, Position, SessionContext, Trouble, WeekToAsk};

/// What can happen to a practice.
#[derive(Debug, Clone)]
enum Act {
    Run(u16),
    Say(Command, f64),
    Hold(f64),
    Onset,
    Speak(f64, u32),
    Answer(&'static str),
    Trouble,
    RoomLoud(bool),
    /// Two knocks.
    Knock,
    Stir,
    /// A late event, with a time that lies behind.
    Late,
    Interrupt,
}

fn command() -> impl Strategy<Value = Command> {
    prop_oneof![
        6 => Just(Command::Ready), 6 => Just(Command::Done), 4 => Just(Command::Yes), 6 => Just(Command::GoOn),
        2 => Just(Command::Stop), 2 => Just(Command::Rest), 2 => Just(Command::Again), 2 => Just(Command::GoBack), 1 => Just(Command::Skip),
        5 => proptest::sample::select(Command::ALL.to_vec()),
    ]
}

fn act() -> impl Strategy<Value = Act> {
    prop_oneof![
        40 => (1_u16..40).prop_map(Act::Run),
        6 => (40_u16..200).prop_map(Act::Run),
        30 => (command(), prop_oneof![1 => Just(0.3), 2 => Just(0.65), 9 => Just(0.95)]).prop_map(|(c, p)| Act::Say(c, p)),
        10 => (0.4_f64..30.0).prop_map(Act::Hold),
        2 => Just(Act::Onset),
        8 => (0.1_f64..6.0, 0_u32..30).prop_map(|(s, n)| Act::Speak(s, n)),
        6 => proptest::sample::select(vec!["bank", "purse", "dog | dogs", "cat", "nothing of it", "answer-3", "answer-7", "answer-forgot"]).prop_map(Act::Answer),
        1 => Just(Act::Trouble),
        1 => any::<bool>().prop_map(Act::RoomLoud),
        2 => Just(Act::Knock),
        2 => Just(Act::Stir),
        2 => Just(Act::Late),
    ]
}

fn a_routine() -> impl Strategy<Value = Routine> {
    let one = (0_u8..16, 1_u32..=2, 1_u32..=4, prop_oneof![Just(0.0), Just(3.0)])
        .prop_map(|(kind, sets, repetitions, rest_s)| step(kind, sets, repetitions, rest_s));
    let asks = (proptest::sample::subsequence(AFTER_A_PRACTICE.to_vec(), 0..=3), any::<bool>())
        .prop_map(|(ratings, weekly)| LookingBack { ratings, weekly });
    (proptest::collection::vec(one, 1..6), prop_oneof![Just(300.0), Just(40.0)], asks)
        .prop_map(|(steps, limit_s, looking_back)| Routine { looking_back, ..routine(steps, limit_s) })
}

fn do_it(world: &mut World, act: &Act) {
    let at_s = world.now_s;
    match act {
        Act::Run(tenths) => world.run_s(f64::from(*tenths) / 10.0),
        Act::Say(command, confidence) => world.command(*command, *confidence),
        Act::Hold(duration_s) => {
            world.event(Event::Onset { at_s: at_s + 0.2, onset_s: at_s });
            world.run_s(*duration_s);
            world.event(Event::Offset { at_s: world.now_s, hold: hold(at_s, *duration_s) });
        }
        Act::Onset => world.event(Event::Onset { at_s, onset_s: at_s - 0.2 }),
        Act::Speak(duration_s, syllables) => {
            world.event(Event::SpeechBegan { at_s, onset_s: at_s });
            world.run_s(*duration_s);
            world.event(Event::Spoken { at_s: world.now_s, utterance: utterance(at_s, *duration_s, *syllables) });
        }
        Act::Answer(text) => world.event(Event::Answer { at_s, text: (*text).into(), confidence: 0.9 }),
        Act::Trouble => world.event(Event::Trouble { at_s, trouble: Trouble::MicrophoneGain }),
        Act::RoomLoud(loud) => world.event(Event::RoomLoud { at_s, loud: *loud, room_db: -30.0 }),
        Act::Stir => world.event(Event::Stirred { at_s }),
        Act::Knock => world.event(Event::Knocked { at_s }),
        Act::Late => world.event(Event::Tick { at_s: at_s - 5.0 }),
        Act::Interrupt => world.event(Event::Interrupt { at_s }),
    }
}

/// From any place: "stop", then "go on" leads out of the pause, and "finish" twice to the end.
fn can_be_left(world: &World) {
    if world.engine.is_over() {
        return;
    }
    let mut gone_on = world.clone();
    gone_on.command(Command::Stop, 0.95);
    gone_on.run_s(4.0);
    // After chest pain nothing leads back into the practice but to its end.
    let emergency = gone_on.is_emergency();
    gone_on.command(if emergency { Command::AllRight } else { Command::GoOn }, 0.95);
    gone_on.run_s(if emergency { 30.0 } else { 3.0 });
    assert!(gone_on.engine.is_over() || !emergency, "an emergency that has passed does not end it");
    assert!(!gone_on.is_halted(), "\"go on\" does not lead out of the pause; said last: {:?}", gone_on.said);
    let mut ended = world.clone();
    ended.command(Command::Stop, 0.95);
    ended.command(Command::Finish, 0.95);
    ended.run_s(5.0);
    ended.command(Command::Finish, 0.95);
    ended.run_s(30.0);
    assert!(ended.finished && ended.engine.is_over(), "\"finish\" does not end it");
    let mut interrupted = world.clone();
    do_it(&mut interrupted, &Act::Interrupt);
    assert!(interrupted.engine.is_over(), "an interrupt does not end it");
}

fn check_end(world: &World, done_before: usize) {
    let done: BTreeSet<u32> =
        world.facts.iter().filter(|e| matches!(e.fact, Fact::StepDone { .. })).filter_map(|e| e.position).map(|p| p.step).collect();
    if let Some(Fact::SessionEnded { steps_done, steps_prescribed, .. }) = world.facts.last().map(|entry| &entry.fact) {
        assert_eq!(*steps_done as usize, done.len() + done_before);
        assert!(steps_done <= steps_prescribed);
    }
    assert!(world.count(|fact| matches!(fact, Fact::SessionEnded { .. })) <= 1);
}

/// 1,000 practices of each kind, some ten million steps; PROPTEST_CASES asks for more.
fn config() -> ProptestConfig {
    let asked = std::env::var_os("PROPTEST_CASES").is_some();
    let usual = ProptestConfig { max_shrink_iters: 4000, ..ProptestConfig::default() };
    if asked { usual } else { ProptestConfig { cases: 1000, ..usual } }
}

proptest! {
    #![proptest_config(config())]

    #[test]
    fn the_laws_hold_whatever_happens(routine in a_routine(), acts in proptest::collection::vec(act(), 50..600)) {
        let week_to_ask = (acts.len() % 3 == 0).then_some(WeekToAsk { days_missed: 1 });
        let start = SessionContext { first_session: acts.len() % 2 == 0, week_to_ask, ..SessionContext::default() };
        let mut world = World::new(&routine, start);
        for (number, act) in acts.iter().enumerate() {
            do_it(&mut world, act);
            if number % 37 == 0 {
                can_be_left(&world);
            }
        }
        can_be_left(&world);
        check_end(&world, 0);
    }

    /// Killed anywhere, gone on with later: what was done in both parts together is what an unbroken practice does.
    #[test]
    fn a_resumed_practice_equals_an_unbroken_one(routine in a_routine(), cut_tenths in 1_u32..4000, clean in any::<bool>()) {
        let start = || SessionContext { first_session: true, ..SessionContext::default() };
        let mut unbroken = World::new(&routine, start());
        lead_to_the_end(&mut unbroken);
        prop_assert_eq!(ended(&unbroken), Some(EndReason::Completed));
        let mut first = World::new(&routine, start());
        while !first.finished && first.now_s * 10.0 < f64::from(cut_tenths) {
            first.run_s(0.5);
            diligent(&mut first);
        }
        if clean && !first.finished {
            do_it(&mut first, &Act::Interrupt);
        }
        let begun = first.facts.iter().any(|entry| entry.position.is_some());
        // A practice that came to its own end is not gone on with; a clean interrupt ends the record, so nothing is resumed.
        if begun && !first.finished && let Some(from) = next_position(&first.facts, &routine) {
            let mut second = World::new(&routine, resumed(&first.facts, from));
            let done_before = done_steps(&first.facts).len();
            lead_to_the_end(&mut second);
            check_end(&second, done_before);
            let both: Vec<Entry> = first.facts.iter().chain(&second.facts).cloned().collect();
            prop_assert_eq!(whole(&both), whole(&unbroken.facts));
            prop_assert_eq!(done_steps(&both), done_steps(&unbroken.facts));
        }
    }
}

fn lead_to_the_end(world: &mut World) {
    for _ in 0..40_000 {
        if world.finished {
            return;
        }
        world.run_s(0.5);
        diligent(world);
    }
    panic!("a diligent client does not come to the end; last: {:?}", world.facts.last());
}

fn ended(world: &World) -> Option<EndReason> {
    world.facts.iter().find_map(|entry| if let Fact::SessionEnded { reason, .. } = &entry.fact { Some(reason.clone()) } else { None })
}

fn resumed(facts: &[Entry], from: Position) -> SessionContext {
    let agreed = facts.iter().filter_map(|entry| match &entry.fact {
        Fact::Agreement { given: true, exercises, .. } => Some(exercises.clone()),
        _ => None,
    });
    let loud = facts.iter().map(|entry| if let Fact::HoldMeasured { duration_s, .. } = &entry.fact { *duration_s } else { 0.0 });
    SessionContext {
        agreed: agreed.flatten().collect(),
        resume_from: Some(from),
        resume_done: done_steps(facts),
        resume_counts: counts_in(facts),
        resume_loud_s: loud.sum(),
        resume_amounts: amounts_in(facts),
        resume_led_s: led_in(facts),
        ..SessionContext::default()
    }
}

fn next_position_in(facts: &[Entry], routine: &Routine) -> Option<Position> {
    next_position(facts, routine).filter(|_| facts.iter().any(|entry| entry.position.is_some()))
}

fn done_steps(facts: &[Entry]) -> BTreeSet<u32> {
    facts.iter().filter(|e| matches!(e.fact, Fact::StepDone { .. })).filter_map(|e| e.position).map(|p| p.step).collect()
}

/// Whole repetitions by step.
fn whole(facts: &[Entry]) -> BTreeMap<u32, usize> {
    let mut whole = BTreeMap::new();
    for entry in facts.iter().filter(|entry| is_whole(&entry.fact)) {
        if let Some(at) = entry.position {
            *whole.entry(at.step).or_insert(0) += 1;
        }
    }
    whole
}

/// How many steps a practice of the kind above takes: the claim of millions is counted, not guessed.
#[test]
fn a_thousand_practices_take_millions_of_steps() {
    use proptest::strategy::ValueTree;
    use proptest::test_runner::TestRunner;
    let mut runner = TestRunner::deterministic();
    let mut steps = 0;
    for _ in 0..20 {
        let routine = a_routine().new_tree(&mut runner).expect("a routine").current();
        let acts = proptest::collection::vec(act(), 50..600).new_tree(&mut runner).expect("acts").current();
        let mut world = World::new(&routine, SessionContext::default());
        acts.iter().for_each(|act| do_it(&mut world, act));
        steps += world.steps;
    }
    assert!(steps / 20 * 1000 > 2_000_000, "{steps} steps in 20 practices");
}

/// A diligent client does every kind of exercise to its end: what is given up in the laws above is given up by the engine.
#[test]
fn a_diligent_client_gives_nothing_up() {
    for kind in 0..16 {
        let routine = routine(vec![step(kind, 2, 2, 3.0)], 300.0);
        let mut world = World::new(&routine, SessionContext { first_session: true, ..SessionContext::default() });
        lead_to_the_end(&mut world);
        let id = &routine.steps[0].exercise.id;
        assert!(world.facts.iter().any(|entry| matches!(entry.fact, Fact::StepDone { .. })), "{id}: {:?}", world.facts.last());
    }
}

/// The checks above can fail: a world in which a law is broken is found out.
#[test]
#[should_panic(expected = "counted twice")]
fn a_broken_law_is_found_out() {
    let routine = routine(vec![step(3, 1, 1, 0.0)], 300.0);
    let mut world = World::new(&routine, SessionContext { agreed: ["tongue-hold-swallow".to_owned()].into(), ..SessionContext::default() });
    lead_to_the_end(&mut world);
    let done = world.facts.iter().find(|entry| matches!(entry.fact, Fact::StepDone { .. })).cloned().expect("done");
    world.replay(Entry { at_s: world.now_s, ..done });
}

/// Ten minutes of a paced exercise and of postures: each count stands on its beat to within a millisecond, whatever the
/// steps of the clock.
#[test]
fn counts_stand_on_the_beat_for_ten_minutes() {
    use routine::{CountedPhase, Work};
    let mut breathing = step(2, 1, 55, 0.0);
    breathing.work = Work::Paced {
        phases: vec![CountedPhase { name: "in".into(), counts: 3 }, CountedPhase { name: "out".into(), counts: 8 }],
        beat_s: 1.0,
    };
    let mut routine = routine(vec![breathing], 300.0);
    let word = routine::ClinicianWord { who: "the speech therapist".into(), why: "as in the clinic".into() };
    routine.clinician.exercises.insert("nasal-breathing".into(), word);
    let mut world = World::new(&routine, SessionContext::default());
    world.keep_beats();
    lead_to_the_end(&mut world);
    let beats = world.beats_kept();
    assert_eq!(beats.iter().filter(|beat| beat.0 != "paced-over" && beat.0 != "paced-last-round").count(), 55 * 11);
    let counted: Vec<f64> = beats.iter().filter(|beat| beat.0 != "paced-over" && beat.0 != "paced-last-round").map(|beat| beat.1).collect();
    assert!(counted[54 * 11 - 1] - counted[0] > 590.0);
    for (number, beat_s) in counted.iter().take(54 * 11).enumerate() {
        assert!((beat_s - counted[0] - number as f64).abs() < 1e-3, "count {number} at {beat_s}");
    }
}
