//! What was interrupted, and where to go on from.

use super::error::RecordError;
use super::running;
use super::store::{Store, later};
use jiff::{SignedDuration, ZonedDateTime};
use model::{SessionId, Source};
use routine::{Routine, is_soft};
use session::{Entry, Fact, Position};
use std::collections::{BTreeMap, BTreeSet};

/// An interrupted session that can be gone on with.
#[derive(Debug, Clone, PartialEq)]
pub struct Unfinished {
    pub session: SessionId,
    /// The first repetition that was not completed.
    pub position: Position,
    /// The exercises agreed to in it.
    pub agreed: BTreeSet<String>,
    /// The steps of it that were done to the end, counted from 1.
    pub steps_done: BTreeSet<u32>,
    /// Repetitions that were completed, by step counted from 1.
    pub counts: BTreeMap<u32, u32>,
    /// Loud holds so far, s.
    pub loud_s: f64,
    /// Its entries so far.
    pub entries: Vec<Entry>,
    /// Time since its last entry.
    pub age: SignedDuration,
}

impl Unfinished {
    /// An older interruption is not offered: another day, another practice.
    pub const OFFERED_WITHIN: SignedDuration = SignedDuration::from_hours(24);
}

impl Store {
    /// The latest session of this client that followed the same routine file (`routine_text`, byte for byte, so that a
    /// place in it means the same), came from the same kind of source, was led on this computer, was interrupted no longer than `within` ago, is
    /// not led by another process, has begun a step and has something left to do.
    ///
    /// # Errors
    /// The database refuses or holds a line that cannot be read.
    pub fn unfinished(
        &self,
        client: &str,
        routine: &Routine,
        routine_text: &str,
        source: Source,
        now: &ZonedDateTime,
        within: SignedDuration,
    ) -> Result<Option<Unfinished>, RecordError> {
        let candidates: Vec<(i64, String, f64)> = self.read(|db| {
            db.prepare(
                "SELECT s.id, p.started_at, coalesce((SELECT max(at_s) FROM entry WHERE session = s.id AND part = p.number), 0)
                 FROM session s JOIN client c ON c.id = s.client
                 JOIN part p ON p.session = s.id AND p.number = (SELECT max(number) FROM part WHERE session = s.id)
                 WHERE c.name = ?1 AND s.routine_text = ?2 AND s.source = ?3 AND s.ended_at IS NULL
                   AND s.id NOT IN (SELECT session FROM received) ORDER BY s.id DESC",
            )?
            .query_map([client, routine_text, source.as_str()], |row| Ok((row.get(0)?, row.get(1)?, row.get(2)?)))?
            .collect()
        })?;
        for (id, started, last_s) in candidates {
            let Some(last) = later(&started, last_s) else { continue };
            // A replay's sample clock runs ahead of the clock on the wall.
            let age = last.duration_until(now).max(SignedDuration::ZERO);
            if age > within || running::is_led(&self.folder, id) {
                continue;
            }
            let entries = self.entries(SessionId(id))?;
            // Broken off before the first step, there is nothing to go on with, and the cautions must be heard whole.
            let begun = entries.iter().any(|entry| entry.position.is_some());
            if let Some(position) = next_position(&entries, routine).filter(|_| begun) {
                let (agreed, steps_done, counts) = (agreed_in(&entries), done_in(&entries), counts_in(&entries));
                let loud_s = loud_in(&entries);
                return Ok(Some(Unfinished { session: SessionId(id), position, agreed, steps_done, counts, loud_s, entries, age }));
            }
        }
        Ok(None)
    }
}

fn agreed_in(entries: &[Entry]) -> BTreeSet<String> {
    let given = entries.iter().filter_map(|entry| match &entry.fact {
        Fact::Agreement { given: true, exercises, .. } => Some(exercises),
        _ => None,
    });
    given.flatten().cloned().collect()
}

/// Stopped, skipped and left-out steps are not among them.
fn done_in(entries: &[Entry]) -> BTreeSet<u32> {
    let done = entries.iter().filter(|entry| matches!(entry.fact, Fact::StepDone { .. }));
    done.filter_map(|entry| entry.position).map(|position| position.step).collect()
}

/// Repetitions completed, by step.
#[must_use]
pub fn counts_in(entries: &[Entry]) -> BTreeMap<u32, u32> {
    let mut counts = BTreeMap::new();
    for entry in entries.iter().filter(|entry| completes(&entry.fact)) {
        if let Some(at) = entry.position {
            *counts.entry(at.step).or_insert(0) += 1;
        }
    }
    counts
}

/// Holds together, also those that were cut off, s.
fn loud_in(entries: &[Entry]) -> f64 {
    let loud_s = |entry: &Entry| match &entry.fact {
        Fact::HoldMeasured { exercise, duration_s, .. } if !is_soft(exercise) => *duration_s,
        _ => 0.0,
    };
    entries.iter().map(loud_s).sum()
}

/// The first repetition that these entries do not complete; none where nothing is left.
///
/// A repetition that was only begun, cut off or not answered is done again. A step that was ended by voice stays ended;
/// one that was gone back to counts again.
#[must_use]
pub fn next_position(entries: &[Entry], routine: &Routine) -> Option<Position> {
    let first_of = |step: u32| Position { step, set: 1, repetition: 1 };
    let mut next = first_of(1);
    for entry in entries {
        let Some(at) = entry.position else { continue };
        match &entry.fact {
            Fact::StepBegun { .. } if at.step != next.step => next = at,
            Fact::StepDone { .. } | Fact::StepStopped { .. } | Fact::StepLeftOut { .. } => next = first_of(at.step.saturating_add(1)),
            fact if completes(fact) => next = after(at, routine),
            _ => {}
        }
    }
    let steps = u32::try_from(routine.steps.len()).unwrap_or(u32::MAX);
    (next.step <= steps).then_some(next)
}

pub(super) fn completes(fact: &Fact) -> bool {
    match fact {
        Fact::HoldMeasured { complete, .. } | Fact::PostureHeld { complete, .. } | Fact::RoundPaced { complete, .. } => *complete,
        Fact::RepetitionDone { .. } | Fact::PhraseRead { .. } | Fact::SyllablesCounted { .. } | Fact::QuestionAnswered { .. } => true,
        // What a command cut off is kept, too, but has no whole time; it is named again.
        Fact::CategoryNamed { complete, .. } | Fact::Talked { complete, .. } => *complete,
        _ => false,
    }
}

fn after(at: Position, routine: &Routine) -> Position {
    let step = usize::try_from(at.step).ok().and_then(|step| routine.steps.get(step.checked_sub(1)?));
    match step {
        Some(step) if at.repetition < step.repetitions => Position { repetition: at.repetition + 1, ..at },
        Some(step) if at.set < step.sets => Position { set: at.set + 1, repetition: 1, ..at },
        _ => Position { step: at.step.saturating_add(1), set: 1, repetition: 1 },
    }
}

#[cfg(test)]
#[path = "tests/resume.rs"]
mod tests;
