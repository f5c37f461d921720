//! A practice as it stands in a record and as it is handed over.

use serde_json::value::RawValue;

use crate::error::Failure;
use handover::{HandedPart, HandedSession};
use record::{WholePart, WholeSession};

/// As it is handed over.
///
/// # Errors
/// An entry is damaged.
pub fn handed(session: &WholeSession) -> Result<HandedSession, Failure> {
    let raw = |line: &String| {
        RawValue::from_string(line.clone()).map_err(|error| {
            Failure::Contents(format!(
                "an entry of practice {} is damaged ({error}): hand back the later ones with --since DATE",
                session.number
            ))
        })
    };
    let part = |part: &WholePart| {
        Ok(HandedPart { started_at: part.started_at.clone(), entries: part.lines.iter().map(raw).collect::<Result<_, Failure>>()? })
    };
    let (ended_at, end_reason) = session.end.clone().unzip();
    Ok(HandedSession {
        number: session.number,
        package: session.package.clone(),
        started_at: session.started_at.clone(),
        ended_at,
        end_reason,
        routine_title: session.routine_title.clone(),
        routine_text: session.routine_text.clone(),
        software: session.software.clone(),
        parts: session.parts.iter().map(part).collect::<Result<_, Failure>>()?,
    })
}

/// As it stands in a record.
#[must_use]
pub fn whole(session: HandedSession) -> WholeSession {
    let part = |part: HandedPart| WholePart {
        started_at: part.started_at,
        lines: part.entries.iter().map(|entry| entry.get().to_owned()).collect(),
    };
    WholeSession {
        number: session.number,
        package: session.package,
        started_at: session.started_at,
        end: session.ended_at.zip(session.end_reason),
        routine_title: session.routine_title,
        routine_text: session.routine_text,
        software: session.software,
        parts: session.parts.into_iter().map(part).collect(),
    }
}
