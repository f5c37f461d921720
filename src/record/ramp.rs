//! On which days a client has done a growing dose, and at which stage, read from the journals of live sessions.

use std::collections::BTreeSet;

use jiff::civil::Date;

use super::error::RecordError;
use super::resume::completes;
use super::store::{Store, later};
use model::{Entry, Fact, SessionId, parse_line};
use routine::{Prescription, Ramp, StageDone, Step, doses_of, reaches_goal};

/// One entry of a step, with the local date on which it was made.
struct Row {
    session: i64,
    day: Date,
    entry: Entry,
}

/// A ramped step of one session, as far as it has been read.
struct Run {
    session: i64,
    step_number: u32,
    /// The stage in the ramp that is asked about.
    stage: u32,
    /// What was prescribed then.
    step: Step,
    done: BTreeSet<(u32, u32)>,
    begun: Date,
    whole: Option<Date>,
}

impl Store {
    /// What the client has done of the stages of `ramp` in live sessions, one item for each session and stage.
    ///
    /// A stage is known again by what it asks for (its exercise, sets, repetitions and lengths), not by its number: a routine
    /// may have been rewritten meanwhile. A session whose routine no longer passes the check counts for nothing.
    ///
    /// # Errors
    /// The database refuses or holds a line that cannot be read.
    pub fn stages_done(&self, client: &str, ramp: &Ramp) -> Result<Vec<StageDone>, RecordError> {
        let mut runs: Vec<Run> = Vec::new();
        let mut routine: Option<(i64, Option<Prescription>)> = None;
        for row in self.rows_of_ramps(client)? {
            if routine.as_ref().is_none_or(|(session, _)| *session != row.session) {
                routine = Some((row.session, self.routine_of(row.session)?));
            }
            let Some((_, Some(prescription))) = &routine else { continue };
            let Some(at) = row.entry.position else { continue };
            if let Fact::StepBegun { ramp_stage: Some(number), .. } = row.entry.fact {
                let step = prescribed(prescription, at.step, number);
                if let Some((step, stage)) = step.and_then(|step| Some((step.clone(), ramp.stage_of(step)?)))
                    && !runs.iter().any(|run| (run.session, run.step_number, run.stage) == (row.session, at.step, stage))
                {
                    let (session, step_number, begun) = (row.session, at.step, row.day);
                    runs.push(Run { session, step_number, stage, step, done: BTreeSet::new(), begun, whole: None });
                }
                continue;
            }
            let run = runs.iter_mut().rev().find(|run| (run.session, run.step_number) == (row.session, at.step));
            if let Some(run) = run.filter(|run| counts(&row.entry.fact, &run.step)) {
                run.done.insert((at.set, at.repetition));
                let all = u64::from(run.step.sets) * u64::from(run.step.repetitions);
                if run.done.len() as u64 >= all {
                    run.whole.get_or_insert(row.day);
                }
            }
        }
        Ok(runs.iter().map(|run| StageDone { stage: run.stage, day: run.whole.unwrap_or(run.begun), whole: run.whole.is_some() }).collect())
    }

    /// The entries of steps in all live sessions of the client that had a ramped step.
    fn rows_of_ramps(&self, client: &str) -> Result<Vec<Row>, RecordError> {
        let rows: Vec<(i64, u32, String, String)> = self.read(|db| {
            db.prepare(
                "SELECT s.id, e.seq, p.started_at, e.json FROM session s JOIN client c ON c.id = s.client
                 JOIN entry e ON e.session = s.id JOIN part p ON p.session = s.id AND p.number = e.part
                 WHERE c.name = ?1 AND s.source = 'live' AND s.id NOT IN (SELECT session FROM assessment) AND e.step IS NOT NULL AND EXISTS (
                     SELECT 1 FROM entry b WHERE b.session = s.id AND b.step = e.step AND b.kind = 'step_begun'
                     AND json_extract(b.json, '$.ramp_stage') IS NOT NULL)
                 ORDER BY s.id, e.seq",
            )?
            .query_map([client], |row| Ok((row.get(0)?, row.get(1)?, row.get(2)?, row.get(3)?)))?
            .collect()
        })?;
        let mut read = Vec::new();
        for (session, seq, started, json) in rows {
            let entry = parse_line(&json).map_err(|cause| self.bad_line(SessionId(session), seq as usize, cause))?;
            if let Some(made) = later(&started, entry.at_s) {
                read.push(Row { session, day: made.date(), entry });
            }
        }
        Ok(read)
    }

    fn routine_of(&self, session: i64) -> Result<Option<Prescription>, RecordError> {
        let text: String = self.read(|db| db.query_row("SELECT routine_text FROM session WHERE id = ?1", [session], |row| row.get(0)))?;
        // Commands, words and word packs may have changed since; the doses are what matters.
        Ok(doses_of(&text))
    }
}

/// The step of that number at that stage, both from 1.
fn prescribed(prescription: &Prescription, step: u32, stage: u32) -> Option<&Step> {
    let ramp = prescription.ramps.iter().find(|ramp| ramp.step == step)?;
    ramp.stages.get(usize::try_from(stage).ok()?.checked_sub(1)?)
}

fn counts(fact: &Fact, step: &Step) -> bool {
    match fact {
        Fact::HoldMeasured { duration_s, complete, .. } => *complete && reaches_goal(step, *duration_s),
        fact => completes(fact),
    }
}

#[cfg(test)]
#[path = "tests/ramp.rs"]
mod tests;
