use super::*;
use crate::Source;
use crate::samples::{agreement, begun, ended, keep};

fn at(text: &str) -> ZonedDateTime {
    text.parse().expect("a time")
}

fn agreed(store: &Store) -> Vec<String> {
    store.agreed("Client").expect("reads").into_iter().collect()
}

#[test]
fn what_is_agreed_on_a_page_counts_and_can_be_withdrawn() {
    let dir = tempfile::tempdir().expect("a folder");
    let mut store = Store::open(dir.path()).expect("opens");
    let exercises = ["head-lift".to_owned(), "effortful-swallow".to_owned()];
    store.agree_by_page("Client", &exercises, "Dr Example", &at("2026-11-24T10:00:00+01:00[Europe/Berlin]")).expect("keeps");
    assert_eq!(agreed(&store), ["effortful-swallow", "head-lift"]);
    assert!(store.agreed("Other").expect("reads").is_empty());
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
    assert!(store.agreed("Other").expect("reads").is_empty());
}
