//! One practice of a results file, read. Pure.

use super::facts::{ArrivingSession, Event, EventKind, Trial};
use handover::HandedSession;
use jiff::ZonedDateTime;
use jiff::civil::Date;
use model::{Entry, Fact, Measure, MicrophoneNote, Position, SignAnswer, StepReason, TrialKind};
use progress::{Conditions, Discard, Microphone, StepResult};
use sha2::{Digest as _, Sha256};
use std::collections::BTreeMap;

/// Bytes kept of each entry's hash. Two entries that differ have the same with a chance of 1 in 2^64; the seal has ruled out
/// intent.
pub(super) const MARK_BYTES: usize = 8;

/// Why a practice cannot be read.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
#[error("the practice of {started} cannot be taken in ({cause})")]
pub struct SessionError {
    pub started: String,
    pub cause: String,
}

/// Reads one practice.
///
/// # Errors
/// A time is no time, or an entry is no journal entry.
pub fn arriving(session: &HandedSession) -> Result<ArrivingSession, SessionError> {
    let short = |text: &str| text.chars().take(80).collect::<String>();
    let bad = |cause: String| SessionError { started: short(&session.started_at), cause };
    let time = |text: &str| text.parse::<ZonedDateTime>().map_err(|error| bad(format!("{:?} is no time of day: {error}", short(text))));
    let began = time(&session.started_at)?;
    if let Some(end) = &session.ended_at {
        time(end)?;
    }
    let mut reader = Reader::new();
    let mut marks = Vec::new();
    let mut seq = 0_u32;
    for (number, part) in (1_u32..).zip(&session.parts) {
        let started = time(&part.started_at)?;
        let mut last_s = 0.0_f64;
        for raw in &part.entries {
            seq = seq.saturating_add(1);
            let line = raw.get();
            let entry: Entry = serde_json::from_str(line).map_err(|error| {
                bad(format!(
                    "its entry {seq} is no journal entry that this version knows: {error}; it was led by {}",
                    short(&session.software)
                ))
            })?;
            marks.extend(mark(number, &part.started_at, line));
            last_s = last_s.max(entry.at_s);
            reader.take(seq, &entry, (number, started.date()));
        }
        reader.practised_s += last_s;
        // A later part begins with what is noted anew there.
        (reader.calibration_note, reader.microphone) = (None, None);
    }
    let Reader { trials, events, steps, practised_s, steps_prescribed, ended, .. } = reader;
    let done = steps.values().filter(|step| step.whole).count();
    let (steps_done, steps_prescribed) = ended.unwrap_or((u32::try_from(done).unwrap_or(u32::MAX), steps_prescribed));
    Ok(ArrivingSession {
        number: session.number,
        started_at: session.started_at.clone(),
        day: began.date(),
        began_s: began.timestamp().as_second(),
        end: session.ended_at.clone().zip(session.end_reason.clone()),
        routine_title: session.routine_title.clone(),
        routine_text: session.routine_text.clone(),
        package: session.package.clone(),
        software: session.software.clone(),
        entries: seq,
        marks,
        part_starts: session.parts.iter().map(|part| part.started_at.clone()).collect(),
        practised_s,
        steps_done,
        steps_prescribed,
        steps: steps.into_iter().map(|(number, step)| step.result(number)).collect(),
        trials,
        events,
    })
}

fn mark(part: u32, started: &str, line: &str) -> [u8; MARK_BYTES] {
    let hash = Sha256::new().chain_update(part.to_be_bytes()).chain_update(started).chain_update([0]).chain_update(line).finalize();
    let mut mark = [0; MARK_BYTES];
    mark.iter_mut().zip(hash).for_each(|(to, from)| *to = from);
    mark
}

/// A step as far as it has been read.
#[derive(Default)]
struct StepSoFar {
    exercise: String,
    ramp_stage: Option<u32>,
    /// Repetitions completed, counted.
    completed: u32,
    /// Done and prescribed, as said at its end.
    said: Option<(u32, u32)>,
    stopped: Option<StepReason>,
    whole: bool,
}

impl StepSoFar {
    fn result(self, step: u32) -> StepResult {
        let (done, prescribed) = self.said.map_or((self.completed, None), |(done, prescribed)| (done, Some(prescribed)));
        StepResult { step, exercise: self.exercise, ramp_stage: self.ramp_stage, done, prescribed, stopped: self.stopped }
    }
}

/// Reads the entries of one practice in order.
struct Reader {
    trials: Vec<Trial>,
    events: Vec<Event>,
    steps: BTreeMap<u32, StepSoFar>,
    practised_s: f64,
    steps_prescribed: u32,
    /// Steps done and prescribed as said at the end.
    ended: Option<(u32, u32)>,
    calibration_note: Option<String>,
    microphone: Option<Microphone>,
}

impl Reader {
    fn new() -> Self {
        Self {
            trials: Vec::new(),
            events: Vec::new(),
            steps: BTreeMap::new(),
            practised_s: 0.0,
            steps_prescribed: 0,
            ended: None,
            calibration_note: None,
            microphone: None,
        }
    }

    fn event(&mut self, seq: u32, day: Date, kind: EventKind, what: &str, exercise: Option<&String>) {
        self.events.push(Event { seq, kind, what: what.to_owned(), exercise: exercise.cloned(), day });
    }

    fn end_step(&mut self, at: Option<Position>, exercise: &str, said: (u32, u32), stopped: Option<&StepReason>) {
        let Some(at) = at else { return };
        let step = self.steps.entry(at.step).or_default();
        step.exercise = exercise.to_owned();
        // A step that was gone back to and ended again: the better end counts.
        if step.said.is_none_or(|(before, _)| said.0 >= before) {
            step.said = Some(said);
            step.stopped = stopped.cloned();
        }
        step.whole |= stopped.is_none();
    }

    fn take(&mut self, seq: u32, entry: &Entry, (part, day): (u32, Date)) {
        let at = entry.position;
        if let Some(trial) = self.trial(seq, entry, part) {
            if trial.complete
                && let Some(at) = at
            {
                let step = self.steps.entry(at.step).or_default();
                step.exercise.clone_from(&trial.exercise);
                step.completed = step.completed.saturating_add(1);
            }
            self.trials.push(trial);
            return;
        }
        match &entry.fact {
            Fact::SessionBegun { steps, .. } => self.steps_prescribed = *steps,
            Fact::StepBegun { exercise, ramp_stage } => {
                if let Some(at) = at {
                    let step = self.steps.entry(at.step).or_default();
                    step.exercise.clone_from(exercise);
                    step.ramp_stage = ramp_stage.or(step.ramp_stage);
                }
            }
            Fact::StepDone { exercise, repetitions_done, repetitions_prescribed } => {
                self.end_step(at, exercise, (*repetitions_done, *repetitions_prescribed), None)
            }
            Fact::StepStopped { exercise, reason, repetitions_done, repetitions_prescribed } => {
                self.end_step(at, exercise, (*repetitions_done, *repetitions_prescribed), Some(reason));
            }
            Fact::StepLeftOut { exercise, reason } => self.event(seq, day, EventKind::LeftOut, reason, Some(exercise)),
            Fact::SafetyStop { exercise, reason, .. } => self.event(seq, day, EventKind::Safety, reason, exercise.as_ref()),
            Fact::SwallowSign { sign, answer } => {
                // An answer can be corrected: the last one counts.
                self.events.retain(|event| !(event.kind == EventKind::Sign && event.what.starts_with(sign.as_str())));
                match answer {
                    SignAnswer::Yes => self.event(seq, day, EventKind::Sign, sign, None),
                    SignAnswer::NotSure => self.event(seq, day, EventKind::Sign, &format!("{sign} ({answer})"), None),
                    _ => {}
                }
            }
            Fact::FallNoticed { exercise, of, .. } => self.event(seq, day, EventKind::Tired, of.name(), Some(exercise)),
            Fact::Troubled { trouble } => self.event(seq, day, EventKind::Trouble, trouble.name(), None),
            Fact::MicrophoneUsed { system, name, rate_hz, gain } => {
                self.microphone = Some(Microphone { system: system.clone(), name: name.clone(), rate_hz: *rate_hz, gain: gain.clone() });
            }
            Fact::MicrophoneNoted { what: MicrophoneNote::Calibration, text } => self.calibration_note = Some(text.clone()),
            Fact::MicrophoneNoted { .. } => self.calibration_note = None,
            Fact::HoldInNoise { over_room_db, .. } => {
                if let Some(trial) = self.trials.last_mut().filter(|trial| trial.kind == TrialKind::Hold && trial.position == at) {
                    trial.conditions.in_noise = true;
                    trial.conditions.over_room_db = Some(*over_room_db).filter(|db| db.is_finite());
                    trial.discarded = discarded(trial);
                }
            }
            Fact::SessionEnded { steps_done, steps_prescribed, .. } => self.ended = Some((*steps_done, *steps_prescribed)),
            _ => {}
        }
    }

    /// The trial that an entry tells of, if it does.
    fn trial(&self, seq: u32, entry: &Entry, part: u32) -> Option<Trial> {
        let of = entry.fact.trial()?;
        let mut trial = Trial {
            seq,
            exercise: of.exercise.to_owned(),
            kind: of.kind,
            part,
            at_s: entry.at_s,
            position: entry.position,
            complete: of.complete,
            duration_s: of.duration_s,
            values: Measure::of_kind(of.kind).filter_map(|measure| Some((measure, measure.measured(&entry.fact)?))).collect(),
            correct: if let Fact::QuestionAnswered { correct, .. } = &entry.fact { Some(*correct) } else { None },
            conditions: Conditions::of(&entry.fact, self.calibration_note.as_deref(), self.microphone.as_ref()),
            discarded: Vec::new(),
        };
        trial.discarded = discarded(&trial);
        Some(trial)
    }
}

/// Which of its values stand in no figure, and why.
fn discarded(trial: &Trial) -> Vec<(Measure, Discard)> {
    let known = Measure::followed(trial.kind).filter(|measure| trial.value(*measure).is_some());
    let why = |measure: Measure| Discard::of(measure, &trial.conditions, trial.complete, trial.duration_s);
    known.filter_map(|measure| why(measure).map(|why| (measure, why))).collect()
}

#[cfg(test)]
#[path = "tests/arriving.rs"]
mod tests;
