//! What is known of a client of the clinic, in words.

use clinic::{Digest, EventKind, SeenEvent};

/// As of when, on how much, and who looked when.
pub fn known(digest: &Digest) -> String {
    let mut parts = Vec::new();
    parts.push(digest.known_to.map_or_else(
        || "No results yet".to_owned(),
        |day| format!("Known up to {day}: {} practices, {} trials", digest.sessions, digest.trials),
    ));
    if let Some(day) = digest.seen_day {
        parts.push(digest.seen_note.as_ref().map_or_else(|| format!("seen {day}"), |note| format!("seen {day}: {note}")));
    }
    parts.join("; ")
}

/// What was told, during which exercise.
pub fn event_words(event: &SeenEvent, exercise: Option<&str>) -> String {
    let of = exercise.map_or_else(String::new, |exercise| format!(" ({exercise})"));
    let what = match (event.kind, event.what.as_str()) {
        (EventKind::Safety, "dizzy") => "said: dizzy".to_owned(),
        (EventKind::Safety, "pain") => "said: pain".to_owned(),
        (EventKind::Safety, "help") => "asked for help".to_owned(),
        (EventKind::Safety, other) => format!("said: {other}"),
        (EventKind::Sign, which) => format!("asked about swallowing: {which}"),
        (EventKind::LeftOut, why) => format!("left out: {why}"),
        (EventKind::Tired, of) => format!("{of} fell within the practice"),
        (EventKind::Trouble, what) => format!("trouble: {what}"),
    };
    format!("{what}{of}")
}
