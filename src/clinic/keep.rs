//! One practice into its rows: new, more of it, or known.

use super::arriving::MARK_BYTES;
use super::engine::{Engine, one};
use super::error::ClinicError;
use super::facts::{ArrivingSession, Event, Trial};
use super::measured;
use super::rows::{ConditionRow, StepRow, TrialRow};
use super::typed::{self, Columns};
use super::value::{Value, values};
use handover::hex;
use progress::{Conditions, StepResult};
use sha2::{Digest, Sha256};
use std::collections::HashMap;

/// What a practice was.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Arrival {
    New,
    More,
    Known,
}

const EVENT: [&str; 7] = ["session", "seq", "client", "kind", "what", "exercise", "day"];

/// What is here of a practice already.
struct Here {
    id: i64,
    marks: Vec<u8>,
    end: Option<(String, String)>,
    package: Option<String>,
    unchanging: (String, String),
}

/// Keeps it. The client's rows are this transaction's.
///
/// # Errors
/// It differs from what came of it before, or the database refuses.
pub(super) fn keep_session(engine: &mut dyn Engine, client: i64, session: &ArrivingSession) -> Result<Arrival, ClinicError> {
    let routine_hash = hex(&Sha256::digest(format!("{}\n{}", session.routine_title, session.routine_text)));
    let here = one(
        engine,
        "SELECT s.id, s.marks, s.ended_at, s.end_reason, s.package, r.hash, s.software FROM session s JOIN routine r ON r.id = s.routine
         WHERE s.client = $1 AND s.started_at = $2 AND s.number = $3",
        &values![client, &session.started_at, session.number],
        |row| {
            let end = row.maybe_text(2)?.zip(row.maybe_text(3)?);
            Ok(Here {
                id: row.int(0)?,
                marks: row.blob(1)?.to_vec(),
                end,
                package: row.maybe_text(4)?,
                unchanging: (row.text(5)?, row.text(6)?),
            })
        },
    )?;
    let Some(here) = here else {
        let id = insert(engine, client, session, &routine_hash)?;
        keep_rows(engine, client, id, session, 0)?;
        return Ok(Arrival::New);
    };
    let differs = |what: &str| {
        Err(ClinicError::NotTaken(format!(
            "its practice of {} differs from what came of it before ({what}): ask for the results to be made again, with --since DATE",
            session.started_at
        )))
    };
    let (shorter, longer) =
        if here.marks.len() <= session.marks.len() { (&here.marks, &session.marks) } else { (&session.marks, &here.marks) };
    if !longer.starts_with(shorter) {
        return differs("its entries");
    }
    if here.unchanging != (routine_hash, stored(&session.software)) {
        return differs("its routine or program");
    }
    if here.end.is_some() && session.end.is_some() && here.end != session.end {
        return differs("its end");
    }
    let longer = session.marks.len() > here.marks.len();
    let ends = here.end.is_none() && session.end.is_some();
    // Which package was in force is worked out anew at home each time; should that ever differ, the order of files does not matter.
    let package = here.package.clone().max(session.package.clone());
    if longer {
        let entries_here = u32::try_from(here.marks.len() / MARK_BYTES).unwrap_or(u32::MAX);
        engine.run(
            "UPDATE session SET entries = $2, marks = $3, practised_s = $4, steps_done = $5, steps_prescribed = $6, part_starts = $7 WHERE id = $1",
            &values![here.id, session.entries, session.marks.clone(), session.practised_s, session.steps_done, session.steps_prescribed, session.part_starts.join("\n")],
        )?;
        // A note behind a trial may tell of it, so all of them are made anew; what was seen of the events stays.
        engine.run("DELETE FROM trial WHERE session = $1", &values![here.id])?;
        engine.run("DELETE FROM step WHERE session = $1", &values![here.id])?;
        keep_rows(engine, client, here.id, session, entries_here)?;
    }
    if ends || package != here.package {
        let (ended_at, reason) = here.end.or_else(|| session.end.clone()).unzip();
        engine.run(
            "UPDATE session SET ended_at = $2, end_reason = $3, package = $4 WHERE id = $1",
            &values![here.id, ended_at, reason, package],
        )?;
    }
    Ok(if longer || ends { Arrival::More } else { Arrival::Known })
}

/// A text as it comes back from the database.
fn stored(text: &str) -> String {
    match Value::from(text) {
        Value::Text(text) => text,
        _ => String::new(),
    }
}

fn insert(engine: &mut dyn Engine, client: i64, session: &ArrivingSession, routine_hash: &str) -> Result<i64, ClinicError> {
    let find = "SELECT id FROM routine WHERE client = $1 AND hash = $2";
    let missing = |engine: &dyn Engine| ClinicError::Unreadable {
        place: engine.place().to_owned(),
        cause: "a row that was just added is not there".to_owned(),
    };
    let routine = match one(engine, find, &values![client, routine_hash], |row| row.int(0))? {
        Some(routine) => routine,
        None => one(
            engine,
            "INSERT INTO routine (client, hash, title, body) VALUES ($1, $2, $3, $4) RETURNING id",
            &values![client, routine_hash, &session.routine_title, &session.routine_text],
            |row| row.int(0),
        )?
        .ok_or_else(|| missing(engine))?,
    };
    let (ended_at, reason) = session.end.clone().unzip();
    one(
        engine,
        "INSERT INTO session (client, started_at, number, day, began_s, ended_at, end_reason, routine, package, software, entries, marks, practised_s, steps_done,
             steps_prescribed, part_starts) VALUES ($1, $2, $3, $4, $5, $6, $7, $8, $9, $10, $11, $12, $13, $14, $15, $16) RETURNING id",
        &values![
            client,
            &session.started_at,
            session.number,
            session.day,
            session.began_s,
            ended_at,
            reason,
            routine,
            session.package.clone(),
            &session.software,
            session.entries,
            session.marks.clone(),
            session.practised_s,
            session.steps_done,
            session.steps_prescribed,
            session.part_starts.join("\n"),
        ],
        |row| row.int(0),
    )?
    .ok_or_else(|| missing(engine))
}

/// Trials and steps whole, events behind the `known` first entries.
fn keep_rows(engine: &mut dyn Engine, client: i64, id: i64, session: &ArrivingSession, known: u32) -> Result<(), ClinicError> {
    let mut conditions: HashMap<String, i64> = HashMap::new();
    let mut rows = Vec::with_capacity(session.trials.len());
    for trial in &session.trials {
        let label = label(&trial.conditions);
        let condition = match conditions.get(&label) {
            Some(condition) => *condition,
            None => {
                let condition = condition_row(engine, client, &label, &trial.conditions)?;
                conditions.insert(label, condition);
                condition
            }
        };
        rows.push(trial_row(id, trial, condition));
    }
    engine.add("trial", &measured::names(), &rows)?;
    let step = |step: &StepResult| StepRow {
        session: id,
        step: step.step,
        exercise: step.exercise.clone(),
        ramp_stage: step.ramp_stage,
        done: step.done,
        prescribed: step.prescribed,
        stopped: step.stopped.clone(),
    };
    typed::add(engine, "step", session.steps.iter().map(step))?;
    let event = |event: &Event| values![id, event.seq, client, event.kind.word(), &event.what, event.exercise.clone(), event.day].to_vec();
    let events: Vec<Vec<Value>> = session.events.iter().filter(|event| event.seq > known).map(event).collect();
    engine.add("event", &EVENT, &events)
}

fn trial_row(session: i64, trial: &Trial, condition: i64) -> Vec<Value> {
    let conditions = &trial.conditions;
    let discarded: Vec<String> = trial.discarded.iter().map(|(measure, why)| format!("{}={}", measure.id(), why.name())).collect();
    let row = TrialRow {
        session,
        seq: trial.seq.into(),
        exercise: trial.exercise.clone(),
        kind: trial.kind.name().to_owned(),
        part: trial.part,
        at_s: trial.at_s,
        step: trial.position.map(|at| at.step),
        set_no: trial.position.map(|at| at.set),
        repetition: trial.position.map(|at| at.repetition),
        complete: trial.complete,
        clipped_s: (conditions.clipped_s > 0.0).then_some(conditions.clipped_s),
        in_noise: conditions.in_noise.then_some(true),
        over_room_db: conditions.over_room_db,
        correct: trial.correct,
        condition: Some(condition),
        discarded: (!discarded.is_empty()).then(|| discarded.join(" ")),
    };
    row.values().into_iter().chain(measured::values(&trial.values)).collect()
}

/// What is the same for many trials, as one text.
fn label(conditions: &Conditions) -> String {
    let part = |text: Option<&str>| text.unwrap_or("-").replace('|', "/");
    let microphone = conditions
        .microphone
        .as_ref()
        .map_or_else(|| "-".to_owned(), |mic| format!("{:?} {:?} {} {:?}", mic.system, mic.name, mic.rate_hz, mic.gain));
    stored(&format!(
        "{}|{}|{}|{}|{}|{}|{microphone}",
        part(conditions.level_weighting.as_deref()),
        part(conditions.time_weighting.as_deref()),
        conditions.calibration.name(),
        part(conditions.calibration_note.as_deref()),
        conditions.distance_cm.map_or_else(|| "-".to_owned(), |distance| distance.to_string()),
        u8::from(conditions.auto_gain),
    ))
}

fn condition_row(engine: &mut dyn Engine, client: i64, label: &str, conditions: &Conditions) -> Result<i64, ClinicError> {
    let find = |engine: &mut dyn Engine| {
        one(engine, "SELECT id FROM condition WHERE client = $1 AND label = $2", &values![client, label], |row| row.int(0))
    };
    if let Some(id) = find(engine)? {
        return Ok(id);
    }
    let row = [Value::from(client), Value::from(label)].into_iter().chain(ConditionRow::from(conditions).values()).collect();
    let names: Vec<&str> = ["client", "label"].into_iter().chain(ConditionRow::NAMES.iter().copied()).collect();
    engine.add("condition", &names, &[row])?;
    find(engine)?.ok_or_else(|| ClinicError::Unreadable {
        place: engine.place().to_owned(),
        cause: "a row that was just added is not there".to_owned(),
    })
}
