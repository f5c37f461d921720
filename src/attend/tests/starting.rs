use super::*;

#[test]
fn one_person_with_one_routine_starts_at_once() {
    for said in [Said::StartMine, Said::StartCalled("evening routine".into()), Said::StartFor(0)] {
        let mut rig = Rig::new(alone(), 10, 0);
        rig.hear(said);
        assert_eq!((rig.keys(), rig.started.clone()), (vec!["attend-starting"], vec![(0, 0)]));
    }
}

#[test]
fn a_yes_right_after_the_invitation_starts_and_a_later_one_is_not_heard() {
    let mut rig = Rig::new(alone(), 18, 29);
    rig.pass_to(18, 30);
    rig.pass(4.0);
    rig.hear(Said::Yes);
    assert_eq!(rig.started, [(0, 0)]);
    let mut rig = Rig::new(alone(), 18, 29);
    rig.pass_to(18, 31);
    rig.hear(Said::Yes);
    assert!(rig.started.is_empty());
}

#[test]
fn a_call_name_of_two_persons_is_asked_about() {
    let mut rig = Rig::new(couple(), 11, 0);
    rig.hear(Said::StartCalled("evening routine".into()));
    assert_eq!(rig.words(), ["Who is it for? Grandpa, or Grandma?"]);
    rig.hear(Said::Name(1));
    assert_eq!((rig.words(), rig.started.clone()), (vec!["For Grandma. One moment.".to_owned()], vec![(1, 0)]));
}

#[test]
fn a_call_name_of_one_person_is_not() {
    let mut rig = Rig::new(couple(), 11, 0);
    rig.hear(Said::StartCalled("morning routine".into()));
    assert_eq!(rig.started, [(1, 1)]);
}

#[test]
fn start_my_practice_asks_unless_one_is_due() {
    let mut rig = Rig::new(couple(), 12, 0);
    rig.hear(Said::StartMine);
    assert_eq!(rig.keys(), ["attend-for-whom-two"]);
    let mut rig = Rig::new(couple(), 18, 20);
    rig.hear(Said::StartMine);
    assert_eq!(rig.started, [(0, 0)], "grandpa's is due in ten minutes");
    // Both are due at eight, grandpa's at half past six not having been done.
    let mut rig = Rig::new(couple(), 20, 1);
    rig.hear(Said::StartMine);
    assert!(rig.started.is_empty() && rig.keys().contains(&"attend-for-whom-two"), "{:?}", rig.keys());
}

#[test]
fn of_several_routines_of_one_person_the_due_one_is_taken_or_it_is_asked() {
    let mut rig = Rig::new(couple(), 9, 30);
    rig.hear(Said::StartFor(1));
    assert_eq!(rig.started, [(1, 1)], "the morning routine was due at nine");
    let mut rig = Rig::new(couple(), 14, 0);
    rig.hear(Said::StartFor(1));
    assert_eq!(rig.words(), ["Which one? The evening routine, or the morning routine?"]);
    rig.hear(Said::Called("evening routine".into()));
    assert_eq!(rig.started, [(1, 0)]);
    let mut rig = Rig::new(couple(), 14, 0);
    let practised = rig.practised((1, 1), 5, End::Completed);
    rig.on(Event::Record { at_s: rig.at_s, today: Today { day: 1, practices: vec![practised] } });
    rig.hear(Said::StartFor(1));
    assert_eq!(rig.started, [(1, 0)], "the other one is done");
}

#[test]
fn what_is_unsure_is_asked_about_and_what_is_hardly_heard_is_nothing() {
    let mut rig = Rig::new(couple(), 11, 0);
    rig.hear_with(Said::StartFor(0), 0.45);
    assert!(rig.said.is_empty());
    rig.hear_with(Said::StartFor(0), 0.6);
    assert_eq!((rig.words(), rig.started.len()), (vec!["Was that: start for Grandpa? Yes, or no?".to_owned()], 0));
    rig.hear(Said::Yes);
    assert_eq!(rig.started, [(0, 0)]);
    let mut rig = Rig::new(couple(), 11, 0);
    rig.hear_with(Said::StartCalled("morning routine".into()), 0.6);
    assert_eq!(rig.words(), ["Was that: start the morning routine? Yes, or no?"]);
    rig.hear(Said::No);
    assert_eq!((rig.words(), rig.started.len()), (vec!["All right.".to_owned()], 0));
    rig.hear(Said::Yes);
    assert!(rig.started.is_empty(), "the question is over");
}

#[test]
fn a_question_is_asked_twice_and_then_dropped() {
    let mut rig = Rig::new(couple(), 12, 0);
    rig.hear(Said::StartMine);
    rig.pass(60.0);
    assert_eq!(rig.keys(), ["attend-for-whom-two", "attend-for-whom-two"]);
    assert!(!rig.listening.contains(&Said::Name(0)));
    rig.hear(Said::StartFor(0));
    assert_eq!(rig.started, [(0, 0)], "the routine that is not done yet");
}

#[test]
fn a_question_is_let_go_when_told_so_in_its_silence_too_and_the_answer_says_it_was_heard() {
    for said in [Said::Stop, Said::NeverMind, Said::NotNow, Said::No] {
        let mut rig = Rig::new(couple(), 14, 0);
        rig.hear(Said::StartFor(1));
        assert_eq!(rig.keys(), ["attend-which-two"]);
        rig.hear(said.clone());
        assert_eq!(rig.keys(), ["attend-which-two", "attend-dropped"], "{said:?}");
        rig.pass(60.0);
        assert_eq!(rig.said.len(), 2, "it does not ask again after {said:?}");
    }
}

#[test]
fn stop_silences_it_and_takes_back_a_start_that_is_being_announced() {
    let mut rig = Rig::new(alone(), 10, 0);
    rig.on(Event::Heard { at_s: rig.at_s, said: Said::StartMine, confidence: 0.9 });
    rig.pass(1.0);
    rig.hear(Said::Stop);
    rig.pass(10.0);
    assert!(rig.started.is_empty());
    rig.hear(Said::StartMine);
    assert_eq!(rig.started, [(0, 0)]);
}

#[test]
fn while_a_practice_runs_nothing_is_acted_on_and_afterwards_everything_again() {
    let mut rig = Rig::new(alone(), 10, 0);
    rig.hear(Said::StartMine);
    rig.on(Event::Heard { at_s: rig.at_s, said: Said::StartMine, confidence: 0.95 });
    assert_eq!(rig.started.len(), 1);
    let outcome = rig.practised((0, 0), 5, End::Completed);
    rig.ends(outcome);
    rig.hear(Said::StartMine);
    assert_eq!(rig.started.len(), 2);
}

#[test]
fn a_practice_that_cannot_begin_is_told() {
    let mut rig = Rig::new(alone(), 10, 0);
    rig.hear(Said::StartMine);
    rig.on(Event::PracticeFailed { at_s: rig.at_s });
    assert_eq!(rig.keys().last(), Some(&"attend-not-begun"));
    rig.pass(3.0);
    rig.hear(Said::StartMine);
    assert_eq!(rig.started.len(), 2);
}

#[test]
fn two_in_one_breath_start_nobody_before_it_is_asked_who_goes_first() {
    for confidence in [0.95, 0.6] {
        let mut rig = Rig::new(couple(), 11, 0);
        rig.hear_with(Said::StartForSeveral(vec![0, 1]), confidence);
        assert_eq!(rig.words(), ["I lead one person at a time. Who goes first? Grandpa, or Grandma?"]);
        assert!(rig.started.is_empty());
        rig.hear(Said::Name(0));
        assert_eq!(rig.started, [(0, 0)]);
    }
}

#[test]
fn a_name_that_nobody_has_is_answered_with_those_that_are_known() {
    let mut rig = Rig::new(couple(), 11, 0);
    rig.hear_with(Said::StartForUnknown, 0.6);
    assert_eq!(rig.words(), ["I don't know that name. I know Grandpa and Grandma. Who is it for?"]);
    rig.hear(Said::Name(0));
    assert_eq!(rig.started, [(0, 0)]);
    let mut rig = Rig::new(alone(), 10, 0);
    rig.hear(Said::StartForUnknown);
    assert_eq!((rig.words(), rig.started.len()), (vec!["I don't know that name. I know Grandpa.".to_owned()], 0));
    rig.hear(Said::StartMine);
    assert_eq!(rig.started, [(0, 0)]);
}

#[test]
fn three_can_be_named_two_by_two_and_all_together() {
    let mut household = couple();
    household.persons.push(person("mia", Pronoun::She, vec![routine("bedtime routine", &[])]));
    let mut rig = Rig::new(household, 11, 0);
    for group in [vec![0, 1], vec![0, 2], vec![1, 2], vec![0, 1, 2]] {
        assert!(rig.listening.contains(&Said::StartForSeveral(group.clone())), "{group:?}");
    }
    rig.hear(Said::StartForSeveral(vec![0, 1, 2]));
    assert_eq!(rig.words(), ["I lead one person at a time. Who goes first? Please say the name."]);
    rig.hear(Said::Name(2));
    assert_eq!(rig.started, [(2, 0)]);
}
