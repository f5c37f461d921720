use super::*;
use crate::reason_text;
use jiff::civil::date;
use proptest::prelude::*;

const TODAY: Date = date(2026, 3, 16);

/// A client of whom nothing is to be told.
fn well(client: i64, name: &str) -> Digest {
    Digest {
        client,
        name: name.into(),
        desk: "desk".into(),
        newest_made: Some(date(2026, 3, 1)),
        follows_newest: Some(true),
        first_day: Some(date(2026, 3, 2)),
        last_day: Some(date(2026, 3, 15)),
        known_to: Some(date(2026, 3, 15)),
        sessions: 14,
        trials: 42,
        practised_s: 1400.0,
        planned_week: Some(7),
        gap_days: 2,
        recent: Share { counted: 40, prescribed: 42 },
        before: Share::default(),
        planned: true,
        said: Said::default(),
        last_safety: None,
        signs: 0,
        signs_what: None,
        left_out: 0,
        left_out_what: None,
        tired: 0,
        fallen: 0,
        fallen_what: None,
        risen: 0,
        microphone: Microphone::Fine,
        microphone_since: None,
        clock_wrong: 0,
        fresh: true,
        seen_day: None,
        seen_note: None,
    }
}

fn kinds(digest: &Digest) -> Vec<ReasonKind> {
    attention(digest, TODAY).reasons.iter().map(Reason::kind).collect()
}

fn order(digests: Vec<Digest>, why: Option<ReasonKind>) -> Vec<i64> {
    caseload(digests, TODAY, why).iter().map(|standing| standing.digest.client).collect()
}

#[test]
fn the_gravest_reason_comes_first_then_the_graver_of_its_kind_then_who_has_more() {
    let of = |client, change: &dyn Fn(&mut Digest)| {
        let mut digest = well(client, "client");
        change(&mut digest);
        digest
    };
    let away = |days: i8| move |digest: &mut Digest| digest.last_day = Some(date(2026, 3, 15 - days));
    let all = vec![
        of(1, &|_| {}),
        of(2, &|digest| digest.clock_wrong = 1),
        of(3, &|digest| digest.left_out = 1),
        of(4, &|digest| digest.recent = Share { counted: 20, prescribed: 42 }),
        of(5, &|digest| digest.recent = Share { counted: 10, prescribed: 42 }),
        of(6, &away(4)),
        of(7, &away(9)),
        of(8, &|digest| digest.said.help = 9),
        of(9, &|digest| digest.said.dizzy = 1),
        of(10, &|digest| (digest.said.pain, digest.left_out) = (1, 1)),
        of(11, &|digest| digest.fallen = 2),
        of(12, &|digest| digest.known_to = Some(date(2026, 2, 20))),
        of(13, &|digest| digest.microphone = Microphone::Void),
        of(14, &|digest| digest.follows_newest = Some(false)),
        of(15, &|digest| digest.tired = 1),
        of(16, &|digest| digest.signs = 1),
        of(17, &|digest| digest.said.sick = 2),
        of(18, &|digest| (digest.said.dizzy, digest.said.help) = (40, 40)),
        of(19, &|digest| digest.said.choking = 1),
    ];
    // 12: nothing has come since the package of 1 March; 15 days are more than 14.
    // One choking is graver than any dizziness.
    let expected = [19, 18, 17, 10, 9, 8, 16, 7, 6, 12, 5, 4, 11, 3, 15, 14, 13, 2, 1];
    assert_eq!(order(all.clone(), None), expected);
    // From the other end, the same.
    assert_eq!(order(all.iter().rev().cloned().collect(), None), expected);
    // Those with one reason are ordered by it.
    assert_eq!(order(all.clone(), Some(ReasonKind::LeftOut)), [10, 3]);
    assert_eq!(order(all, Some(ReasonKind::Programme)), [14]);
}

#[test]
fn equal_ones_stand_by_name_desk_and_number() {
    let mut all = vec![well(5, "b"), well(4, "a"), well(3, "a"), well(2, "a")];
    all[2].desk = "another".into();
    assert_eq!(order(all, None), [3, 2, 4, 5]);
}

proptest! {
    /// The order does not depend on the order in which the database gives the clients.
    #[test]
    fn the_order_is_of_the_clients_alone(
        dizzy in proptest::collection::vec((0_u32..3, 0_u32..2, 0_u32..43, 0_i8..9), 1..30),
        turn in 0_usize..30,
    ) {
        let digests: Vec<Digest> = (1..).zip(dizzy).map(|(client, (dizzy, left_out, counted, away))| {
            let mut digest = well(client, "client");
            (digest.said.dizzy, digest.left_out) = (dizzy, left_out);
            digest.recent = Share { counted, prescribed: 42 };
            digest.last_day = Some(date(2026, 3, 15 - away));
            digest
        }).collect();
        let mut turned = digests.clone();
        let length = turned.len();
        turned.rotate_left(turn % length);
        prop_assert_eq!(order(digests, None), order(turned, None));
    }
}

#[test]
fn adherence_is_told_where_it_is_low_or_fell_to_a_lower_band() {
    let with = |recent: (u32, u32), before: (u32, u32)| {
        let mut digest = well(1, "client");
        digest.recent = Share { counted: recent.0, prescribed: recent.1 };
        digest.before = Share { counted: before.0, prescribed: before.1 };
        kinds(&digest)
    };
    assert_eq!(with((60, 100), (0, 0)), []);
    assert_eq!(with((60, 100), (70, 100)), [], "the same band");
    assert_eq!(with((75, 100), (76, 100)), [ReasonKind::Adherence]);
    assert_eq!(with((49, 100), (49, 100)), [ReasonKind::Adherence]);
    assert_eq!(with((0, 0), (90, 100)), [], "nothing was prescribed");
}

#[test]
fn practice_is_measured_by_the_plan_and_up_to_the_results() {
    let away = |last: Date, known_to: Date, gap_days: u32| {
        let mut digest = well(1, "client");
        (digest.last_day, digest.known_to, digest.gap_days) = (Some(last), Some(known_to), gap_days);
        kinds(&digest)
    };
    assert_eq!(away(date(2026, 3, 13), date(2026, 3, 15), 2), []);
    assert_eq!(away(date(2026, 3, 12), date(2026, 3, 15), 2), [ReasonKind::NoPractice]);
    assert_eq!(away(date(2026, 3, 12), date(2026, 3, 15), 8), []);
    // What happened since the last results is not known, and not told as if it were.
    assert_eq!(away(date(2026, 3, 5), date(2026, 3, 5), 2), []);
    assert_eq!(away(date(2026, 2, 28), date(2026, 2, 28), 2), [ReasonKind::NoResults], "15 days after the package");
    // A clock that runs ahead, or a today before the results, is no time without practice.
    assert_eq!(attention(&well(1, "client"), date(2026, 1, 1)).reasons, []);
}

#[test]
fn what_was_seen_is_told_again_only_with_news_or_after_a_while() {
    let mut digest = well(1, "client");
    digest.recent = Share { counted: 1, prescribed: 42 };
    (digest.fallen, digest.clock_wrong, digest.follows_newest) = (1, 1, Some(false));
    (digest.microphone, digest.microphone_since) = (Microphone::Changed, Some(date(2026, 3, 10)));
    let told = kinds(&digest);
    assert_eq!(told, [ReasonKind::Adherence, ReasonKind::Decline, ReasonKind::Programme, ReasonKind::Microphone, ReasonKind::Clock]);
    (digest.seen_day, digest.fresh) = (Some(date(2026, 3, 12)), false);
    assert_eq!(kinds(&digest), []);
    digest.fresh = true;
    assert_eq!(kinds(&digest), [ReasonKind::Adherence, ReasonKind::Decline, ReasonKind::Programme, ReasonKind::Clock]);
    digest.microphone_since = Some(date(2026, 3, 13));
    assert!(kinds(&digest).contains(&ReasonKind::Microphone));
    // What time brings.
    let mut silent = well(1, "client");
    (silent.known_to, silent.seen_day, silent.fresh) = (Some(date(2026, 2, 1)), Some(date(2026, 3, 10)), false);
    silent.newest_made = Some(date(2026, 2, 1));
    assert_eq!(kinds(&silent), []);
    silent.seen_day = Some(date(2026, 3, 2));
    assert_eq!(kinds(&silent), [ReasonKind::NoResults]);
}

/// What is told says nothing of what it may mean.
#[test]
fn no_reason_diagnoses() {
    let mut digest = well(1, "client");
    (digest.said.dizzy, digest.said.pain, digest.said.help, digest.left_out, digest.tired, digest.fallen, digest.clock_wrong) =
        (1, 2, 3, 1, 1, 1, 2);
    (digest.last_day, digest.recent, digest.microphone) =
        (Some(date(2026, 3, 1)), Share { counted: 1, prescribed: 9 }, Microphone::Relative);
    let text: Vec<String> = attention(&digest, TODAY).reasons.iter().map(reason_text).collect();
    assert_eq!(text.len(), 8);
    for word in ["disease", "progress", "worse", "deteriorat", "symptom", "diagnos", "risk", "non-complian", "should"] {
        assert!(text.iter().all(|line| !line.contains(word)), "{word}: {text:#?}");
    }
    assert!(text[0].contains("dizzy once, pain twice, asked for help 3 times"), "{}", text[0]);
}
