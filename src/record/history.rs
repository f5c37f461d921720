//! Past practices, one summary each.

use super::error::RecordError;
use super::store::Store;
use super::{running, time};
use jiff::ZonedDateTime;
use model::{Entry, Fact, SessionId, Source};
use rusqlite::{OptionalExtension, Row};
use std::collections::BTreeMap;

/// The best complete hold of one exercise in one session.
#[derive(Debug, Clone, PartialEq)]
pub struct BestHold {
    /// The exercise's id.
    pub exercise: String,
    /// Its duration, s.
    pub duration_s: f64,
}

/// One practice at a glance.
#[derive(Debug, Clone, PartialEq)]
pub struct SessionSummary {
    pub id: SessionId,
    pub client: String,
    /// Local time of day at the start.
    pub started_at: ZonedDateTime,
    /// The routine's title.
    pub routine: String,
    pub source: Source,
    /// Name and version of the program that led it.
    pub software: String,
    pub steps_done: u32,
    pub steps_prescribed: u32,
    /// In the order in which the exercises came.
    pub best_holds: Vec<BestHold>,
    /// Time practised, all parts together, min.
    pub minutes: f64,
    /// How it ended; none where it is under way or was interrupted.
    pub end_reason: Option<String>,
    /// A process leads it now.
    pub under_way: bool,
}

pub(super) const SUMMARY: &str = "SELECT s.id, c.name, s.started_at, s.routine_title, s.source, s.software, s.end_reason,
    (SELECT coalesce(sum(length_s), 0) FROM (SELECT max(at_s) AS length_s FROM entry WHERE session = s.id GROUP BY part))
    FROM session s JOIN client c ON c.id = s.client";

impl Store {
    /// The latest practices, newest first: of one client or of all, at most `limit`.
    ///
    /// # Errors
    /// The database refuses or holds a line that cannot be read.
    pub fn history(&self, client: Option<&str>, limit: u32) -> Result<Vec<SessionSummary>, RecordError> {
        let rows: Vec<SessionSummary> = self.read(|db| {
            db.prepare(&format!("{SUMMARY} WHERE ?1 IS NULL OR c.name = ?1 ORDER BY s.id DESC LIMIT ?2"))?
                .query_map((client, limit), summary)?
                .collect()
        })?;
        rows.into_iter().map(|row| self.with_results(row)).collect()
    }

    /// One practice at a glance.
    ///
    /// # Errors
    /// There is no such session, or a stored line cannot be read.
    pub fn history_of(&self, session: SessionId) -> Result<SessionSummary, RecordError> {
        self.with_results(self.summary(session)?)
    }

    /// What the session's own row tells, without its results.
    pub(super) fn summary(&self, session: SessionId) -> Result<SessionSummary, RecordError> {
        self.read(|db| db.query_row(&format!("{SUMMARY} WHERE s.id = ?1"), [session.0], summary).optional())?
            .ok_or(RecordError::NoSuchSession { id: session.0 })
    }

    fn with_results(&self, mut summary: SessionSummary) -> Result<SessionSummary, RecordError> {
        let entries = self.entries(summary.id)?;
        (summary.steps_done, summary.steps_prescribed) = steps(&entries);
        summary.best_holds = best_holds(&entries);
        summary.under_way = summary.end_reason.is_none() && running::is_led(&self.folder, summary.id.0);
        Ok(summary)
    }
}

pub(super) fn summary(row: &Row<'_>) -> Result<SessionSummary, rusqlite::Error> {
    let unreadable = |column: usize, text: &str| {
        let cause = format!("cannot read {text:?}");
        rusqlite::Error::FromSqlConversionFailure(column, rusqlite::types::Type::Text, cause.into())
    };
    let (started, source): (String, String) = (row.get(2)?, row.get(4)?);
    Ok(SessionSummary {
        id: SessionId(row.get(0)?),
        client: row.get(1)?,
        started_at: time::read(&started).ok_or_else(|| unreadable(2, &started))?,
        routine: row.get(3)?,
        source: Source::from_word(&source).ok_or_else(|| unreadable(4, &source))?,
        software: row.get(5)?,
        steps_done: 0,
        steps_prescribed: 0,
        best_holds: Vec::new(),
        minutes: row.get::<_, f64>(7)? / 60.0,
        end_reason: row.get(6)?,
        under_way: false,
    })
}

/// Steps done and prescribed: as said at the end, else counted from what was kept.
fn steps(entries: &[Entry]) -> (u32, u32) {
    let mut done = std::collections::BTreeSet::new();
    let mut prescribed = 0;
    for entry in entries {
        match &entry.fact {
            Fact::SessionBegun { steps, .. } => prescribed = *steps,
            Fact::StepDone { .. } => {
                done.extend(entry.position.map(|at| at.step));
            }
            Fact::SessionEnded { steps_done, steps_prescribed, .. } => return (*steps_done, *steps_prescribed),
            _ => {}
        }
    }
    (u32::try_from(done.len()).unwrap_or(u32::MAX), prescribed)
}

fn best_holds(entries: &[Entry]) -> Vec<BestHold> {
    let mut order: BTreeMap<&str, usize> = BTreeMap::new();
    let mut holds: Vec<BestHold> = Vec::new();
    for entry in entries {
        let Fact::HoldMeasured { exercise, duration_s, complete: true, .. } = &entry.fact else { continue };
        let index = *order.entry(exercise).or_insert(holds.len());
        match holds.get_mut(index) {
            Some(hold) => hold.duration_s = hold.duration_s.max(*duration_s),
            None => holds.push(BestHold { exercise: exercise.clone(), duration_s: *duration_s }),
        }
    }
    holds
}

#[cfg(test)]
#[path = "tests/history.rs"]
mod tests;
