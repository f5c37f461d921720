use super::*;

#[test]
fn it_invites_at_the_agreed_time_once_more_ten_minutes_later_and_then_lets_it_be() {
    let mut rig = Rig::new(alone(), 18, 0);
    rig.pass_to(18, 29);
    assert!(rig.said.is_empty());
    rig.pass_to(18, 31);
    assert_eq!(rig.words(), ["It's half past six, time for the evening routine. Say start my practice when you like."]);
    rig.pass_to(18, 39);
    assert!(rig.said.is_empty());
    rig.pass_to(18, 41);
    assert_eq!(rig.words(), ["I'm still here for the evening routine. Say start my practice when you like, or say later."]);
    rig.pass_to(23, 59);
    assert!(rig.said.is_empty(), "{:?}", rig.said);
}

#[test]
fn not_now_is_asked_again_in_half_an_hour_and_the_third_time_left_for_today() {
    let mut rig = Rig::new(alone(), 18, 29);
    rig.pass_to(18, 31);
    rig.hear(Said::NotNow);
    assert_eq!(rig.keys(), ["attend-invite", "attend-postponed"]);
    rig.pass_to(19, 0);
    assert_eq!(rig.said.len(), 2);
    rig.pass_to(19, 2);
    assert_eq!(rig.keys().last(), Some(&"attend-invite-again"));
    rig.hear(Said::NotNow);
    rig.pass_to(19, 35);
    rig.hear(Said::NotNow);
    assert_eq!(rig.keys().last(), Some(&"attend-left-alone"));
    let so_far = rig.said.len();
    rig.pass_to(23, 0);
    assert_eq!(rig.said.len(), so_far);
    rig.hear(Said::NotNow);
    assert_eq!(rig.said.len(), so_far, "nothing is asked, so nothing is put off");
}

#[test]
fn it_says_nothing_while_somebody_speaks() {
    let mut rig = Rig::new(alone(), 18, 29);
    rig.pass_with(90.0, true);
    assert!(rig.said.is_empty());
    rig.pass(2.0);
    assert!(rig.said.is_empty(), "perhaps only a pause");
    rig.pass(1.5);
    assert_eq!(rig.keys(), ["attend-invite"]);
}

#[test]
fn beside_a_television_it_takes_a_short_pause_in_the_end() {
    let mut rig = Rig::new(alone(), 18, 0);
    rig.pass_to(18, 29);
    for _ in 0..2 {
        rig.pass_with(179.0, true);
        rig.pass(0.5);
    }
    assert!(rig.said.is_empty(), "six minutes, of them five past the time");
    rig.pass_with(60.0, true);
    rig.pass(0.5);
    assert_eq!(rig.keys(), ["attend-invite"]);
}

#[test]
fn what_was_done_already_is_not_invited_to() {
    for (done, end, invited) in [(3, End::Finished, false), (5, End::Completed, false), (0, End::NoAnswer, true), (0, End::Finished, false)]
    {
        let mut rig = Rig::new(alone(), 16, 0);
        let practised = rig.practised((0, 0), done, end);
        rig.on(Event::Record { at_s: rig.at_s, today: Today { day: 1, practices: vec![practised] } });
        rig.pass_to(18, 45);
        assert_eq!(!rig.said.is_empty(), invited, "{done} {end:?}");
    }
}

#[test]
fn two_times_a_day_are_two_invitations() {
    let household =
        Household { persons: vec![person("grandpa", Pronoun::He, vec![routine("voice practice", &[540, 1080])])], ..Household::default() };
    let mut rig = Rig::new(household, 8, 0);
    let practised = rig.practised((0, 0), 5, End::Completed);
    rig.on(Event::Record { at_s: rig.at_s, today: Today { day: 1, practices: vec![practised] } });
    rig.pass_to(9, 30);
    assert!(rig.said.is_empty());
    rig.pass_to(18, 2);
    assert_eq!(rig.keys(), ["attend-invite"]);
}

#[test]
fn whoever_comes_late_to_a_time_does_not_invite_and_the_next_day_begins_anew() {
    let mut rig = Rig::new(alone(), 20, 0);
    rig.pass_to(23, 0);
    assert!(rig.said.is_empty());
    // Thursday has no plan; the same wall clock on a planned day would invite again.
    rig.pass_to(24 + 19, 0);
    assert!(rig.said.is_empty());
}

#[test]
fn what_is_left_and_how_it_went_are_told() {
    let mut rig = Rig::new(couple(), 11, 0);
    rig.hear(Said::HowDidItGo);
    assert_eq!(rig.words(), ["Nobody has practised yet today."]);
    let mut practised = rig.practised((1, 1), 4, End::Finished);
    practised.left_out = vec!["head lift".into()];
    practised.unwell = vec![Unwell { reason: "pain".into(), exercise: Some("head lift".into()) }];
    rig.on(Event::Record { at_s: rig.at_s, today: Today { day: 1, practices: vec![practised] } });
    rig.hear(Said::HowDidItGo);
    assert_eq!(rig.words(), ["Grandma did four of five; the head lift was left out.", "It ended early: something hurt."]);
    rig.hear(Said::WhatIsLeft);
    assert_eq!(
        rig.words(),
        [
            "Still to do: the evening routine for Grandpa, at half past six.",
            "Still to do: the evening routine for Grandma, at eight o'clock."
        ]
    );
}

#[test]
fn one_person_is_told_of_by_pronoun() {
    let mut rig = Rig::new(alone(), 10, 0);
    let practised = Practised { left_out: vec!["long ah".into(), "neck turns".into()], ..rig.practised((0, 0), 3, End::Completed) };
    rig.on(Event::Record { at_s: rig.at_s, today: Today { day: 1, practices: vec![practised] } });
    rig.hear(Said::HowDidItGo);
    assert_eq!(rig.words(), ["He did three of five; the long ah and the neck turns were left out."]);
    rig.hear(Said::WhatIsLeft);
    assert_eq!(rig.words(), ["There's nothing left to do today."]);
    let mut rig = Rig::new(alone(), 10, 0);
    rig.hear(Said::WhatIsLeft);
    assert_eq!(rig.words(), ["Still to do: the evening routine, at half past six."]);
}

/// Times as they are said in English (common practice, no source).
#[test]
fn the_time_of_day_is_said_as_people_say_it() {
    let words = speak::Words::english().unwrap();
    for (minute, said) in [
        (0, "twelve o'clock"),
        (540, "nine o'clock"),
        (725, "five past twelve"),
        (735, "quarter past twelve"),
        (1110, "half past six"),
        (1112, "half past six"),
        (1113, "twenty-five to seven"),
        (1125, "quarter to seven"),
        (1139, "seven o'clock"),
        (1425, "quarter to twelve"),
        (1439, "twelve o'clock"),
    ] {
        let mut args = super::super::clock::spoken(minute);
        args.push(("the", session::Arg::Text("it".into())));
        let text = words.text(&Line { key: "attend-invite".into(), args }).unwrap();
        assert!(text.starts_with(&format!("It's {said}, ")), "{minute}: {text}");
    }
}
