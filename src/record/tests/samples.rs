//! Entries and sessions for the tests of this room.

use crate::{NewSession, RecordError, SessionId, Source, Store};
use jiff::ZonedDateTime;
use routine::{Exercise, NoAnswer, Routine, Step, Timing, Work};
use session::{Entry, Fact};

#[path = "../../model/tests/entries.rs"]
#[allow(dead_code, reason = "any entry at all is only for the tests of the model")]
mod entries;
pub use entries::{at, begun, entry, hold};

pub fn ended(at_s: f64) -> Entry {
    entry(at_s, None, Fact::SessionEnded { reason: "finished".into(), steps_done: 1, steps_prescribed: 2, duration_s: at_s })
}

pub fn agreement(given: bool) -> Entry {
    entry(
        5.0,
        None,
        Fact::Agreement {
            given,
            exercises: vec!["head-lift".into(), "tongue-hold-swallow".into()],
            answer: None,
            dose_band: None,
            posture: None,
        },
    )
}

/// Two steps: "long-ah" with 2 sets of 3, then "tongue-hold-swallow" with 1 set of 4.
pub fn routine() -> Routine {
    let step = |id: &str, sets, repetitions| Step {
        exercise: Exercise {
            id: id.into(),
            timing: Timing::Repeated,
            cautions: Vec::new(),
            needs_agreement: false,
            waits_for_ready: false,
        },
        sets,
        repetitions,
        rest_s: 5.0,
        set_rest_s: 20.0,
        work: Work::Repeated { next_cue_after_s: None, sip_every: None, setting: None },
        posture: None,
        ramp_stage: None,
    };
    Routine {
        title: "Evening routine".into(),
        steps: vec![step("long-ah", 2, 3), step("tongue-hold-swallow", 1, 4)],
        no_answer: NoAnswer { ask_again_after_s: 12.0, asks: 2, give_up_after_s: 600.0 },
        cue_words: None,
        feedback_every: 0,
        loud_limit_s: 300.0,
        clinician: routine::ClinicianWords::default(),
        looking_back: routine::LookingBack::default(),
    }
}

pub const ROUTINE_TEXT: &str = "title = \"Evening routine\"\n";

pub fn time(text: &str) -> ZonedDateTime {
    text.parse().expect("a time in a test")
}

pub fn begin(store: &mut Store, client: &str, source: Source, started: &str) -> Result<SessionId, RecordError> {
    store.begin(&NewSession {
        protocol: None,
        client,
        routine_title: "Evening routine",
        routine_text: ROUTINE_TEXT,
        source,
        software: "tidecount 0.1.0",
        started_at: &time(started),
    })
}

/// Keeps a whole session with these entries.
pub fn keep(store: &mut Store, client: &str, source: Source, started: &str, entries: &[Entry]) -> SessionId {
    let session = begin(store, client, source, started).expect("begins");
    for entry in entries {
        store.append(session, entry).expect("keeps");
    }
    session
}

/// The exercises to which an agreement stands, whatever its age and dose.
pub fn agreed_to(store: &Store, client: &str) -> Vec<String> {
    store.agreements(client).expect("reads").into_iter().map(|one| one.exercise).collect()
}
