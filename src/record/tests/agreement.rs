use super::*;
use crate::Source;
use crate::samples::{agreed_to, agreement, begun, ended, keep};

fn at(text: &str) -> ZonedDateTime {
    text.parse().expect("a time")
}

fn agreed(store: &Store) -> Vec<String> {
    agreed_to(store, "Client")
}

#[test]
fn what_is_agreed_on_a_page_counts_and_can_be_withdrawn() {
    let dir = tempfile::tempdir().expect("a folder");
    let mut store = Store::open(dir.path()).expect("opens");
    let exercises = ["head-lift".to_owned(), "effortful-swallow".to_owned()];
    store.agree_by_page("Client", &exercises, "Dr Example", &at("2026-11-24T10:00:00+01:00[Europe/Berlin]")).expect("keeps");
    assert_eq!(agreed(&store), ["effortful-swallow", "head-lift"]);
    assert!(agreed_to(&store, "Other").is_empty());
    let all = store.agreements("Client").expect("reads");
    assert!(all.iter().all(|one| one.how == AgreedHow::Page { by: "Dr Example".into() } && one.at.starts_with("2026-11-24T10:00")));
    store.withdraw_by_page("Client", "head-lift", "carer", &at("2026-11-24T11:00:00+01:00[Europe/Berlin]")).expect("keeps");
    assert_eq!(agreed(&store), ["effortful-swallow"]);
    store.agree_by_page("Client", &exercises[..1], "Dr Example", &at("2026-11-24T12:00:00+01:00[Europe/Berlin]")).expect("keeps");
    assert_eq!(agreed(&store), ["effortful-swallow", "head-lift"]);
}

#[test]
fn the_latest_word_counts_whether_aloud_or_on_the_page() {
    let dir = tempfile::tempdir().expect("a folder");
    let mut store = Store::open(dir.path()).expect("opens");
    keep(&mut store, "Client", Source::Live, "2026-11-24T19:00:00+01:00[Europe/Berlin]", &[begun(), agreement(true), ended(60.0)]);
    assert_eq!(agreed(&store), ["head-lift", "tongue-hold-swallow"]);
    store.withdraw_by_page("Client", "head-lift", "carer", &at("2026-11-25T09:00:00+01:00[Europe/Berlin]")).expect("keeps");
    assert_eq!(agreed(&store), ["tongue-hold-swallow"]);
    // Said aloud again, later than the withdrawal; the same instant in another zone is no later.
    keep(&mut store, "Client", Source::Live, "2026-11-25T19:00:00+01:00[Europe/Berlin]", &[begun(), agreement(true), ended(60.0)]);
    assert_eq!(agreed(&store), ["head-lift", "tongue-hold-swallow"]);
    // A replay never agrees.
    keep(&mut store, "Other", Source::Replay, "2026-11-25T19:00:00+01:00[Europe/Berlin]", &[begun(), agreement(true), ended(60.0)]);
    assert!(agreed_to(&store, "Other").is_empty());
}

fn evening(text: &str) -> Prescription {
    routine::check_text("evening.toml", &format!("title = \"Evening\"\n{text}"), routine::Hearing::default()).expect("in order")
}

const SWALLOWS: &str = "[[step]]\nexercise = \"effortful-swallow\"\ncautions_acknowledged = true\nrepetitions = 3\n";

fn says_yes(dose_band: Option<u32>, posture: Option<&str>) -> model::Entry {
    let (exercises, posture) = (vec!["effortful-swallow".to_owned(), "neck-turns".to_owned()], posture.map(str::to_owned));
    crate::samples::entry(5.0, None, Fact::Agreement { given: true, exercises, answer: None, dose_band, posture })
}

fn holds(store: &Store, prescription: &Prescription, now: &str) -> bool {
    store.agreed_now("Client", prescription, &at(now)).expect("reads").contains("effortful-swallow")
}

#[test]
fn an_agreement_expires_when_the_routine_says_so() {
    let dir = tempfile::tempdir().expect("a folder");
    let mut store = Store::open(dir.path()).expect("opens");
    let begun_at = "2026-01-10T10:00:00+01:00[Europe/Berlin]";
    keep(&mut store, "Client", Source::Live, begun_at, &[begun(), says_yes(Some(1), None), ended(60.0)]);
    let (usual, short) = (evening(SWALLOWS), evening(&format!("agreement_months = 2\n{SWALLOWS}")));
    let (day_before, day_after) = ("2026-07-09T10:00:00+02:00[Europe/Berlin]", "2026-07-11T12:00:00+02:00[Europe/Berlin]");
    assert!(holds(&store, &usual, day_before) && !holds(&store, &usual, day_after), "six months");
    assert!(!holds(&store, &short, day_before) && holds(&store, &short, "2026-03-09T10:00:00+01:00[Europe/Berlin]"), "two months");
}

#[test]
fn an_agreement_covers_its_dose_band_and_posture_and_ends_with_what_hurt() {
    let now = "2026-01-12T10:00:00+01:00[Europe/Berlin]";
    let mut more = evening(SWALLOWS);
    more.routine.steps.iter_mut().for_each(|step| step.repetitions = 18);
    let standing = "[[step]]\nexercise = \"neck-turns\"\ncautions_acknowledged = true\nposture = \"standing\"\n";
    let with = |entries: &[model::Entry]| {
        let dir = tempfile::tempdir().expect("a folder");
        let mut store = Store::open(dir.path()).expect("opens");
        let mut all = vec![begun()];
        all.extend_from_slice(entries);
        keep(&mut store, "Client", Source::Live, "2026-01-10T10:00:00+01:00[Europe/Berlin]", &all);
        (dir, store)
    };
    let (_dir, store) = with(&[says_yes(Some(1), Some("sitting"))]);
    assert!(holds(&store, &evening(SWALLOWS), now) && !holds(&store, &more, now), "the dose has risen over its band");
    let agreed = store.agreed_now("Client", &evening(standing), &at(now)).expect("reads");
    assert!(!agreed.contains("neck-turns"), "it was asked about sitting");
    let (_dir, store) = with(&[says_yes(None, None)]);
    assert!(holds(&store, &more, now), "agreed to before doses were noted");

    let wrong = |at_s: f64, exercise: &str, reason: Symptom| {
        crate::samples::entry(at_s, None, Fact::SafetyStop { exercise_before: None, exercise: Some(exercise.into()), reason })
    };
    let after = Fact::SafetyStop { exercise: None, exercise_before: Some("effortful-swallow".into()), reason: Symptom::Pain };
    for (stop, still) in [
        (crate::samples::entry(9.0, None, after), false),
        (wrong(9.0, "effortful-swallow", Symptom::Pain), false),
        (wrong(9.0, "effortful-swallow", Symptom::Dizzy), false),
        (wrong(9.0, "effortful-swallow", Symptom::Help), true),
        (wrong(9.0, "neck-turns", Symptom::Pain), true),
        (wrong(2.0, "effortful-swallow", Symptom::Pain), true),
    ] {
        let mut entries = vec![says_yes(Some(1), None), stop.clone()];
        entries.sort_by(|one, other| one.at_s.total_cmp(&other.at_s));
        let (_dir, store) = with(&entries);
        assert_eq!(holds(&store, &evening(SWALLOWS), now), still, "{stop:?}");
    }
}
