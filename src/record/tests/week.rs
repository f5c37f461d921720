use super::*;
use crate::samples::{entry, keep, time};
use crate::{NewSession, RecordError, Source};
use model::{Entry, Fact, RatedOver, Rating};

const PLANNED: &str = "title = \"Evening routine\"\nplan = [{ at = \"18:30\" }]\n[[step]]\nexercise = \"long-ah\"\n";

fn store() -> (tempfile::TempDir, Store) {
    let folder = tempfile::tempdir().expect("a folder");
    let store = Store::open(folder.path()).expect("opens");
    (folder, store)
}

fn rated(over: RatedOver) -> Entry {
    entry(60.0, None, Fact::Rated { what: Rating::Voice, over, value: None })
}

fn due(store: &Store, now: &str) -> Option<u32> {
    store.week_to_ask("anna", &time(now)).expect("reads").map(|week| week.days_missed)
}

#[test]
fn the_week_is_asked_about_where_it_never_was_and_again_after_seven_days() {
    let (_folder, mut store) = store();
    assert_eq!(due(&store, "2026-03-02T18:00:00+01:00[Europe/Berlin]"), Some(0));
    // A rating of a practice is none of the week; what was passed over was asked.
    keep(&mut store, "anna", Source::Live, "2026-03-01T18:30:00+01:00[Europe/Berlin]", &[rated(RatedOver::Practice)]);
    assert_eq!(due(&store, "2026-03-02T18:00:00+01:00[Europe/Berlin]"), Some(0));
    keep(&mut store, "anna", Source::Live, "2026-03-02T18:30:00+01:00[Europe/Berlin]", &[rated(RatedOver::Week)]);
    for (day, asks) in [("02", false), ("08", false), ("09", true), ("20", true)] {
        assert_eq!(due(&store, &format!("2026-03-{day}T08:00:00+01:00[Europe/Berlin]")).is_some(), asks, "{day}");
    }
    // A clock that went back does not silence it.
    assert!(due(&store, "2026-02-20T18:00:00+01:00[Europe/Berlin]").is_some());
    // Nobody else is asked the less, and a rehearsal asks nobody.
    assert!(store.week_to_ask("ben", &time("2026-03-03T08:00:00+01:00[Europe/Berlin]")).expect("reads").is_some());
    keep(&mut store, "ben", Source::Rehearsal, "2026-03-02T18:30:00+01:00[Europe/Berlin]", &[rated(RatedOver::Week)]);
    assert!(store.week_to_ask("ben", &time("2026-03-03T08:00:00+01:00[Europe/Berlin]")).expect("reads").is_some());
}

#[test]
fn planned_days_without_practice_are_missed_and_today_is_not_over() -> Result<(), RecordError> {
    let (_folder, mut store) = store();
    for day in ["02", "03", "06"] {
        let started = format!("2026-03-{day}T18:30:00+01:00[Europe/Berlin]");
        store.begin(&NewSession {
            client: "anna",
            routine_title: "Evening routine",
            routine_text: PLANNED,
            source: Source::Live,
            software: "tidecount",
            started_at: &time(&started),
            protocol: None,
        })?;
    }
    // From the 2nd, the first practice, to the 7th: the 4th, 5th and 7th were missed.
    assert_eq!(due(&store, "2026-03-08T18:00:00+01:00[Europe/Berlin]"), Some(3));
    Ok(())
}
