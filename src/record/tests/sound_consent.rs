use super::*;
use crate::Source;
use crate::samples::{begin, begun, entry, keep, time};
use session::Fact;

const DAY_1: &str = "2026-11-24T10:00:00+01:00[Europe/Berlin]";
const DAY_2: &str = "2026-11-25T19:00:00+01:00[Europe/Berlin]";

fn store() -> (tempfile::TempDir, Store) {
    let dir = tempfile::tempdir().expect("a folder");
    let store = Store::open(dir.path()).expect("opens");
    (dir, store)
}

/// On the second day.
fn to_ask(store: &Store) -> Option<u32> {
    store.sound_to_ask("Client", &time(DAY_2)).expect("asks").map(|question| question.days)
}

#[test]
fn after_thirty_days_the_voice_is_asked_again_and_can_take_it_back() {
    let (_dir, mut store) = store();
    store.sound_wish("Client", 90, &time(DAY_1)).expect("wishes");
    assert_eq!(store.sound_to_ask("Client", &time(DAY_1)).expect("asks"), Some(SoundQuestion { days: 90, again: false }));
    store.sound_consent_by_voice("Client", true, 90, &time(DAY_1)).expect("answers");
    let later = |day: &str| time(&format!("{day}T19:00:00+01:00[Europe/Berlin]"));
    assert_eq!(store.sound_to_ask("Client", &later("2026-12-23")).expect("asks"), None);
    assert_eq!(store.sound_to_ask("Client", &later("2026-12-25")).expect("asks"), Some(SoundQuestion { days: 90, again: true }));
    store.sound_consent_by_voice("Client", true, 90, &later("2026-12-25")).expect("answers");
    assert_eq!(
        (store.sound_to_ask("Client", &later("2027-01-20")).expect("asks"), store.sound_allowed("Client").expect("asks")),
        (None, Some(90))
    );
    let state = store.sound_consent_by_voice("Client", false, 90, &later("2027-02-01")).expect("answers");
    assert_eq!(state, SoundConsent::Withdrawn { at: later("2027-02-01").to_string(), by: SoundSide::Voice });
}

#[test]
fn nothing_is_allowed_until_page_and_voice_have_both_said_so() {
    let (_dir, mut store) = store();
    assert_eq!((store.sound_consent("Client").expect("asks"), to_ask(&store)), (SoundConsent::Never, None));
    // The voice alone is nothing.
    store.sound_consent_by_voice("Client", true, 30, &time(DAY_1)).expect("asks");
    assert_eq!(store.sound_allowed("Client").expect("asks"), None);
    store.sound_wish("Client", 30, &time(DAY_1)).expect("wishes");
    assert_eq!((store.sound_allowed("Client").expect("asks"), to_ask(&store)), (None, Some(30)));
    // A yes to another length is none.
    store.sound_consent_by_voice("Client", true, 7, &time(DAY_2)).expect("answers");
    assert_eq!(store.sound_allowed("Client").expect("asks"), None);
    let given = store.sound_consent_by_voice("Client", true, 30, &time(DAY_2)).expect("answers");
    assert_eq!(given, SoundConsent::Given { days: 30, by_page_at: time(DAY_1).to_string(), by_voice_at: time(DAY_2).to_string() });
    assert_eq!((store.sound_allowed("Client").expect("asks"), to_ask(&store)), (Some(30), None));
    assert_eq!(store.sound_allowed("Somebody").expect("asks"), None, "nobody's consent is another's");
}

#[test]
fn either_side_can_take_it_back_and_a_no_is_kept_until_the_page_asks_anew() {
    let (_dir, mut store) = store();
    for by in [SoundSide::Page, SoundSide::Voice, SoundSide::Command] {
        store.sound_wish("Client", 30, &time(DAY_1)).expect("wishes");
        store.sound_consent_by_voice("Client", true, 30, &time(DAY_1)).expect("answers");
        assert_eq!(store.sound_allowed("Client").expect("asks"), Some(30));
        let state = store.withdraw_sound("Client", by, &time(DAY_2)).expect("withdraws");
        assert_eq!(state, SoundConsent::Withdrawn { at: time(DAY_2).to_string(), by });
        assert_eq!((store.sound_allowed("Client").expect("asks"), to_ask(&store)), (None, None));
    }
    store.sound_wish("Client", 14, &time(DAY_1)).expect("wishes");
    store.sound_consent_by_voice("Client", false, 14, &time(DAY_2)).expect("answers");
    assert!(matches!(store.sound_consent("Client").expect("asks"), SoundConsent::Refused { days: 14, .. }));
    assert_eq!(to_ask(&store), None);
    // A later yes without a new wish changes nothing.
    store.sound_consent_by_voice("Client", true, 14, &time(DAY_2)).expect("answers");
    assert_eq!(store.sound_allowed("Client").expect("asks"), None);
    store.sound_wish("Client", 14, &time(DAY_2)).expect("wishes");
    assert_eq!(to_ask(&store), Some(14));
}

#[test]
fn the_same_wish_again_asks_nobody_and_another_length_asks_anew() {
    let (_dir, mut store) = store();
    store.sound_wish("Client", 30, &time(DAY_1)).expect("wishes");
    store.sound_consent_by_voice("Client", true, 30, &time(DAY_1)).expect("answers");
    assert!(matches!(store.sound_wish("Client", 30, &time(DAY_2)).expect("wishes"), SoundConsent::Given { .. }));
    assert!(matches!(store.sound_wish("Client", 90, &time(DAY_2)).expect("wishes"), SoundConsent::Asked { days: 90, .. }));
    assert_eq!(store.sound_allowed("Client").expect("asks"), None, "it was not said to ninety days");
    for days in [0, 3651] {
        assert!(matches!(store.sound_wish("Client", days, &time(DAY_2)), Err(RecordError::SoundDays { .. })));
    }
}

#[test]
fn the_journal_of_a_live_practice_keeps_the_answer_and_no_other_does() {
    let (_dir, mut store) = store();
    let answer = |given| entry(12.0, None, Fact::SoundConsent { given, days: 30 });
    store.sound_wish("Client", 30, &time(DAY_1)).expect("wishes");
    for source in [Source::Replay, Source::Rehearsal] {
        keep(&mut store, "Client", source, DAY_2, &[begun(), answer(Some(true))]);
        assert_eq!(store.sound_allowed("Client").expect("asks"), None, "{source:?}");
    }
    keep(&mut store, "Client", Source::Live, DAY_2, &[begun(), answer(None)]);
    assert_eq!(to_ask(&store), Some(30), "silence is no answer");
    let live = begin(&mut store, "Client", Source::Live, DAY_2).expect("begins");
    store.append(live, &answer(Some(true))).expect("keeps");
    let SoundConsent::Given { by_voice_at, .. } = store.sound_consent("Client").expect("asks") else { panic!("not given") };
    assert_eq!(by_voice_at, "2026-11-25T19:00:12+01:00[Europe/Berlin]");
}
