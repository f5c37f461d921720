//! Practices as JSON Lines: one line that tells of the practice, then one for each journal entry.

use std::io::{self, Write};

use serde_json::{Map, Value, json};

use super::goal::goal_schema;
use super::moment::{iso, moment};
use super::practice::Practice;
use model::journal_schema;

/// Writes one practice.
///
/// # Errors
/// It cannot be written.
pub fn write_practice(practice: &Practice<'_>, to: &mut dyn Write) -> io::Result<()> {
    writeln!(to, "{}", header(practice))?;
    for (part, kept) in practice.entries() {
        let mut line = Map::new();
        line.insert("line".into(), "entry".into());
        line.insert("practice".into(), practice.id.as_str().into());
        line.insert("entry".into(), kept.number.into());
        line.insert("part".into(), part.into());
        let time = moment(practice.kept, part, kept.entry.at_s).map(|at| iso(&at.time));
        line.insert("at".into(), time.into());
        let journal: Map<String, Value> = serde_json::from_str(&kept.line)?;
        line.extend(journal);
        writeln!(to, "{}", Value::Object(line))?;
    }
    Ok(())
}

fn header(practice: &Practice<'_>) -> Value {
    let head = &practice.kept.head;
    let parts: Vec<Value> = practice.kept.parts.iter().map(|part| json!({"started_at": iso(&part.started_at)})).collect();
    json!({
        "line": "practice",
        "practice": practice.id,
        "practice_number": head.number,
        "client": head.client,
        "source": head.source.as_str(),
        "received": head.received,
        "routine": head.routine_title,
        "routine_text": &*head.routine_text,
        "started_at": iso(&head.started_at),
        "ended_at": head.end.as_ref().map(|(at, _)| iso(at)),
        "end_reason": practice.end_reason(),
        "time_zone": head.started_at.time_zone().iana_name(),
        "software": head.software,
        "parts": parts,
    })
}

/// The JSON Schema (2020-12) of one line. `docs/practice-lines.schema.json` holds the same.
#[must_use]
pub fn lines_schema() -> Value {
    let time = json!({"type": "string", "format": "date-time"});
    let uuid = json!({"type": "string", "pattern": "^[0-9a-f]{8}(-[0-9a-f]{4}){3}-[0-9a-f]{12}$"});
    let text = json!({"type": "string"});
    let place = json!({
        "line": {"const": "entry"},
        "practice": uuid,
        "entry": {"type": "integer", "minimum": 1, "description": "Counts the entries of the practice from 1."},
        "part": {"type": "integer", "minimum": 1, "description": "The part of the practice; at_s counts from the beginning of its part."},
        "at": {"type": ["string", "null"], "format": "date-time", "description": "Local time of day of at_s."},
    });
    let Value::Object(mut entry) = journal_schema() else { return Value::Null };
    entry.shift_remove("$schema");
    entry.insert("title".into(), "One journal entry".into());
    let definitions = entry.shift_remove("$defs").unwrap_or_else(|| json!({}));
    match entry.get_mut("properties") {
        Some(Value::Object(properties)) => properties.extend(place.as_object().cloned().unwrap_or_default()),
        _ => {
            entry.insert("properties".into(), place);
        }
    }
    match entry.get_mut("required") {
        Some(Value::Array(required)) => required.extend(["line", "practice", "entry", "part", "at"].map(Value::from)),
        _ => {
            entry.insert("required".into(), json!(["line", "practice", "entry", "part", "at"]));
        }
    }
    let header = json!({
        "title": "One practice",
        "type": "object",
        "properties": {
            "line": {"const": "practice"},
            "practice": {"description": "Identifier of the practice, the same at each export.", "allOf": [uuid]},
            "practice_number": {"type": "integer", "description": "Its number in the record where it was led."},
            "client": text,
            "source": {"enum": ["live", "replay", "rehearsal"], "description": "A person at a microphone, a recording, or a simulated client."},
            "received": {"type": "boolean", "description": "It was led on another computer and came from there."},
            "routine": {"type": "string", "description": "Title of the routine."},
            "routine_text": {"type": "string", "description": "The routine file as prescribed, TOML."},
            "started_at": time,
            "ended_at": {"type": ["string", "null"], "format": "date-time", "description": "Null where it was interrupted."},
            "end_reason": text,
            "time_zone": {"type": ["string", "null"], "description": "IANA name."},
            "software": text,
            "parts": {"type": "array", "minItems": 1, "items": {"type": "object", "properties": {"started_at": time}, "required": ["started_at"], "additionalProperties": false}},
        },
        "required": [
            "line", "practice", "practice_number", "client", "source", "received", "routine", "routine_text", "started_at", "ended_at", "end_reason",
            "time_zone", "software", "parts",
        ],
        "additionalProperties": false,
    });
    json!({
        "$schema": "https://json-schema.org/draft/2020-12/schema",
        "title": "One line of a tidecount export of practices",
        "description": "A line that tells of a practice is followed by one line for each entry of its journal. The goals come last, a line each.",
        "oneOf": [header, entry, goal_schema()],
        "$defs": definitions,
    })
}
