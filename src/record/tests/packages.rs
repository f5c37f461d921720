use super::*;
use crate::Source;
use crate::samples::{agreed_to, agreement, begin, begun, ended, keep, time as at};

fn package(id: &str, taken_at: &str) -> TakenPackage {
    let time = |text: &str| text.parse::<Timestamp>().expect("a time");
    TakenPackage {
        id: id.into(),
        client: "grandpa".into(),
        made_at: time("2026-03-01T08:00:00Z"),
        taken_at: time(taken_at),
        clinician_key: "aa".into(),
    }
}

fn agrees(exercise: &str) -> PackageAgreement {
    PackageAgreement { exercise: exercise.into(), agreed_at: "2026-03-01T08:00:00Z".parse().expect("a time"), by: "12345".into() }
}

fn take(store: &mut Store, package: &TakenPackage, agreed: &[PackageAgreement]) {
    store.take_package(package, agreed, &[], || Ok::<(), ()>(())).expect("the database").expect("placed");
}

#[test]
fn an_agreement_counts_while_its_package_is_in_force_and_a_spoken_yes_beside_it() {
    let dir = tempfile::tempdir().expect("a folder");
    let mut store = Store::open(dir.path()).expect("opens");
    assert!(agreed_to(&store, "grandpa").is_empty());
    take(&mut store, &package("1", "2026-03-02T08:00:00Z"), &[agrees("effortful-swallow"), agrees("effortful-swallow")]);
    assert!(agreed_to(&store, "grandpa").iter().eq(["effortful-swallow"]));
    assert!(agreed_to(&store, "grandma").is_empty());
    keep(&mut store, "grandpa", Source::Live, "2026-03-03T10:00:00+01:00[Europe/Berlin]", &[begun(), agreement(true), ended(9.0)]);
    take(&mut store, &package("2", "2026-03-04T08:00:00Z"), &[agrees("chin-tuck")]);
    assert!(agreed_to(&store, "grandpa").iter().eq(["chin-tuck", "head-lift", "tongue-hold-swallow"]));
    let ids: Vec<String> = store.packages_taken("grandpa").expect("reads").into_iter().map(|package| package.id).collect();
    assert_eq!(ids, ["1", "2"]);
    assert_eq!(store.packages_in_force().expect("reads"), [package("2", "2026-03-04T08:00:00Z")]);
}

#[test]
fn a_package_whose_files_cannot_be_placed_is_not_noted() {
    let dir = tempfile::tempdir().expect("a folder");
    let mut store = Store::open(dir.path()).expect("opens");
    let outcome = store.take_package(&package("1", "2026-03-02T08:00:00Z"), &[agrees("chin-tuck")], &[], || Err("the disk is full"));
    assert_eq!(outcome.expect("the database"), Err("the disk is full"));
    assert_eq!(store.packages_taken("grandpa").expect("reads"), []);
    assert!(agreed_to(&store, "grandpa").is_empty());
}

#[test]
fn what_was_taken_and_agreed_cannot_be_changed() {
    let dir = tempfile::tempdir().expect("a folder");
    let mut store = Store::open(dir.path()).expect("opens");
    take(&mut store, &package("1", "2026-03-02T08:00:00Z"), &[agrees("chin-tuck")]);
    for sql in [
        "DELETE FROM package_taken",
        "UPDATE package_taken SET id = '2'",
        "DELETE FROM package_agreement",
        "UPDATE package_agreement SET exercise = 'head-lift'",
    ] {
        assert!(store.connection.execute(sql, []).is_err(), "{sql}");
    }
}

#[test]
fn results_are_known_by_the_reply_key_of_a_package_made_here() {
    let dir = tempfile::tempdir().expect("a folder");
    let mut store = Store::open(dir.path()).expect("opens");
    let made = MadePackage {
        id: "1".into(),
        client: "grandpa".into(),
        made_at: "2026-03-01T08:00:00Z".parse().expect("a time"),
        reply_key: "bb".into(),
    };
    store.note_made(&made).expect("notes");
    assert_eq!(store.made_for_reply_key("bb").expect("reads"), Some(made.clone()));
    assert_eq!(store.made_for_reply_key("cc").expect("reads"), None);
    assert!(store.note_made(&made).is_err(), "a key belongs to one package");
}

#[test]
fn a_record_of_an_earlier_form_is_brought_to_the_present_one() {
    let dir = tempfile::tempdir().expect("a folder");
    let path = dir.path().join(crate::DATABASE_NAME);
    let old = rusqlite::Connection::open(&path).expect("opens");
    for sql in [
        include_str!("../migration_1.sql"),
        include_str!("../migration_2.sql"),
        "PRAGMA user_version = 2; PRAGMA application_id = 0x54494445;",
    ] {
        old.execute_batch(sql).expect("the earlier form");
    }
    drop(old);
    let mut store = Store::open(dir.path()).expect("opens");
    begin(&mut store, "grandpa", Source::Live, &at("2026-03-03T10:00:00+01:00[Europe/Berlin]").to_string()).expect("begins");
    take(&mut store, &package("1", "2026-03-02T08:00:00Z"), &[agrees("chin-tuck")]);
}
