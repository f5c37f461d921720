use super::*;
use crate::TakenPackage;
use crate::samples::{ROUTINE_TEXT, at, begun, ended, entry, hold, keep, routine, time};
use jiff::SignedDuration;
use session::Fact;

const EVENING: &str = "2026-03-02T18:00:00+01:00[Europe/Berlin]";
const MORNING: &str = "2026-03-03T09:00:00+01:00[Europe/Berlin]";

fn folder() -> tempfile::TempDir {
    tempfile::tempdir().expect("a folder")
}

fn open(dir: &tempfile::TempDir) -> Store {
    Store::open(dir.path()).expect("opens")
}

fn some_entries() -> Vec<Entry> {
    vec![
        begun(),
        entry(2.0, at(1, 1, 1), Fact::StepBegun { exercise: "long-ah".into(), ramp_stage: None }),
        hold(9.0, at(1, 1, 1), "long-ah", 6.0, true),
    ]
}

fn led_home(store: &mut Store) {
    let mut entries = some_entries();
    entries.push(ended(12.0));
    keep(store, "grandpa", Source::Live, EVENING, &entries);
    keep(store, "grandpa", Source::Rehearsal, EVENING, &entries);
    keep(store, "grandma", Source::Live, EVENING, &entries);
}

#[test]
fn a_practice_arrives_byte_for_byte_and_counts_in_the_history() {
    let (home, clinic) = (folder(), folder());
    let (mut from, mut to) = (open(&home), open(&clinic));
    led_home(&mut from);
    let sessions = from.whole_sessions("grandpa", None).expect("reads");
    assert_eq!(sessions.len(), 1, "neither rehearsals nor another client's");
    assert_eq!(to.receive("client 7", &sessions).expect("receives"), Received { new: 1, more: 0, known: 0 });
    let there = to.history(Some("client 7"), 9).expect("reads");
    let here = from.history(Some("grandpa"), 9).expect("reads");
    let here = here.iter().find(|one| one.source == Source::Live).expect("the live one");
    assert_eq!(there.len(), 1);
    assert_eq!(
        (&there[0].started_at, &there[0].best_holds, there[0].minutes, &there[0].end_reason),
        (&here.started_at, &here.best_holds, here.minutes, &here.end_reason)
    );
    assert_eq!(to.lines(there[0].id).expect("reads"), from.lines(here.id).expect("reads"));
    assert!(to.whole_sessions("client 7", None).expect("reads").is_empty(), "what was received is not handed on");
}

#[test]
fn the_same_twice_adds_nothing_and_a_later_file_only_what_is_new() {
    let (home, clinic) = (folder(), folder());
    let (mut from, mut to) = (open(&home), open(&clinic));
    let id = keep(&mut from, "grandpa", Source::Live, EVENING, &some_entries());
    drop(from);
    let mut from = open(&home);
    let first = from.whole_sessions("grandpa", None).expect("reads");
    for expected in [Received { new: 1, ..Received::default() }, Received { known: 1, ..Received::default() }] {
        assert_eq!(to.receive("grandpa", &first).expect("receives"), expected);
    }
    // An interrupted practice of elsewhere is not offered here to be gone on with.
    let now = time(EVENING);
    assert_eq!(
        to.unfinished("grandpa", &routine(), ROUTINE_TEXT, Source::Live, &now, SignedDuration::from_hours(24)).expect("reads"),
        None
    );

    from.resume(id, &time(MORNING)).expect("goes on");
    assert!(from.whole_sessions("grandpa", None).expect("reads").is_empty(), "it is under way");
    from.append(id, &ended(5.0)).expect("keeps");
    let later = from.whole_sessions("grandpa", None).expect("reads");
    assert_eq!(later[0].parts.len(), 2);
    assert_eq!(to.receive("grandpa", &later).expect("receives"), Received { more: 1, ..Received::default() });
    assert_eq!(to.receive("grandpa", &first).expect("an older file"), Received { known: 1, ..Received::default() });
    let there = &to.history(Some("grandpa"), 9).expect("reads")[0];
    assert_eq!((there.end_reason.as_deref(), to.entries(there.id).expect("reads").len()), (Some("finished"), 4));
}

#[test]
fn what_was_handed_back_is_not_handed_back_again_unless_a_day_is_named() {
    let home = folder();
    let mut store = open(&home);
    led_home(&mut store);
    let all = store.whole_sessions("grandpa", None).expect("reads");
    store.note_handed_back(&all, Timestamp::UNIX_EPOCH).expect("notes");
    assert!(store.whole_sessions("grandpa", None).expect("reads").is_empty());
    let since = |day: &str| store.whole_sessions("grandpa", Some(day.parse().expect("a day"))).expect("reads").len();
    assert_eq!((since("2026-03-02"), since("2026-03-03")), (1, 0));
    keep(&mut store, "grandpa", Source::Live, MORNING, &[begun(), ended(3.0)]);
    assert_eq!(store.whole_sessions("grandpa", None).expect("reads").len(), 1);
}

#[test]
fn a_practice_belongs_to_the_package_in_force_when_it_began() {
    let home = folder();
    let mut store = open(&home);
    let mut take = |id: &str, taken_at: &str| {
        let at: Timestamp = taken_at.parse().expect("a time");
        let package = TakenPackage { id: id.into(), client: "grandpa".into(), made_at: at, taken_at: at, clinician_key: "aa".into() };
        store.take_package(&package, &[], &[], || Ok::<(), ()>(())).expect("the database").expect("placed");
    };
    take("a", "2026-03-02T17:30:00Z");
    take("b", "2026-03-03T07:59:00Z");
    for started in [EVENING, MORNING, "2026-03-02T18:40:00+01:00[Europe/Berlin]"] {
        keep(&mut store, "grandpa", Source::Live, started, &[begun(), ended(3.0)]);
    }
    let packages: Vec<Option<String>> = store.whole_sessions("grandpa", None).expect("reads").into_iter().map(|one| one.package).collect();
    assert_eq!(packages, [None, Some("b".to_owned()), Some("a".to_owned())]);
}

#[test]
fn results_read_back_where_they_were_led_add_nothing() {
    let home = folder();
    let mut store = open(&home);
    led_home(&mut store);
    let mut sessions = store.whole_sessions("grandpa", None).expect("reads");
    assert_eq!(store.receive("grandpa", &sessions).expect("receives"), Received { known: 1, ..Received::default() });
    let more = sessions[0].parts[0].lines[0].clone();
    sessions[0].parts[0].lines.push(more);
    assert!(store.receive("grandpa", &sessions).is_err(), "nobody adds to a practice that was led here");
    assert_eq!(store.history(Some("grandpa"), 9).expect("reads").len(), 2);
}

#[test]
fn what_does_not_fit_is_refused_whole() {
    let (home, clinic) = (folder(), folder());
    let (mut from, mut to) = (open(&home), open(&clinic));
    led_home(&mut from);
    let good = from.whole_sessions("grandpa", None).expect("reads").remove(0);
    let changed = |change: fn(&mut WholeSession)| {
        let mut session = good.clone();
        session.number = 99;
        change(&mut session);
        session
    };
    let tricks: [fn(&mut WholeSession); 7] = [
        |s| s.parts[0].lines[1] = "{}".into(),
        |s| s.parts[0].lines[1] = "[".repeat(100_000) + &"]".repeat(100_000),
        |s| s.parts[0].lines[1] = s.parts[0].lines[1].replacen("2.0", "1e999", 1),
        |s| s.parts[0].lines[1] = s.parts[0].lines[1].replacen(',', ",\n", 1),
        |s| s.started_at = "yesterday".into(),
        |s| s.parts[0].started_at = "9999999-01-01T00:00:00+00:00[UTC]".into(),
        |s| s.end = Some(("later".into(), "finished".into())),
    ];
    for (n, trick) in tricks.into_iter().enumerate() {
        let text = to.receive("grandpa", &[good.clone(), changed(trick)]).expect_err(&format!("trick {n}")).to_string();
        assert!(text.contains("Nothing was added"), "{text}");
        assert!(to.history(None, 9).expect("reads").is_empty(), "trick {n}");
    }
    to.receive("grandpa", std::slice::from_ref(&good)).expect("receives");
    let mut other = good.clone();
    other.parts[0].lines[2] = other.parts[0].lines[2].replacen("long-ah", "short-ah", 1);
    let text = to.receive("grandpa", &[changed(|_| {}), other]).expect_err("differs").to_string();
    assert!(text.contains("differs from what came of it before"), "{text}");
    assert_eq!(to.history(None, 9).expect("reads").len(), 1);
}
