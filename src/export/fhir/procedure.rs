//! Practices and their steps as Procedures; what the client reported as Observations.

use std::io::{self, Write};

use serde_json::{Map, Value, json};

use super::build::{narrative, note, plain, put, reference, therapy};
use super::bundle::FhirExport;
use super::plan_state::{plan_id, request_id};
use crate::ids::uuid;
use crate::moment::moment;
use crate::steps::{StepOutcome, StepStatus};
use crate::{Moment, Practice, iso};
use model::Fact;

/// Names the Procedure of a step.
pub(super) fn step_id(practice: &Practice<'_>, step: &StepOutcome) -> String {
    uuid(&["step", &practice.id, &step.key()])
}

impl<W: Write> FhirExport<'_, W> {
    pub(super) fn procedures(&mut self, practice: &Practice<'_>) -> io::Result<()> {
        let head = &practice.kept.head;
        let plan = plan_id(&self.patient, &head.routine_text);
        let program = self.program(&head.software)?;
        let mut devices = vec![program];
        for trial in practice.trials.iter().filter(|trial| trial.level_terms().is_some()) {
            let microphone = self.microphone(trial.mic)?;
            if !devices.contains(&microphone) {
                devices.push(microphone);
            }
        }
        let status = status_of(practice);
        let reason = practice.end_reason().to_owned();
        let mut procedure = self.procedure(&practice.id, status, &format!("Practice \"{}\": {status}, {reason}", head.routine_title));
        procedure.insert("basedOn".into(), json!([reference(&plan)]));
        if status != "completed" {
            procedure.insert("statusReason".into(), self.codes.reason(&reason));
        }
        let mut code = self.codes.own("practice");
        if let Value::Object(code) = &mut code {
            code.insert("text".into(), plain(&head.routine_title).into());
        }
        procedure.insert("code".into(), code);
        let end = head.end.as_ref().map(|(at, _)| at.clone()).or_else(|| practice.end().map(|end| end.time));
        procedure.insert("performedPeriod".into(), period(&head.started_at, end.as_ref()));
        procedure.insert("usedReference".into(), devices.iter().map(|device| reference(device)).collect::<Vec<_>>().into());
        let notes = notes(practice);
        if !notes.is_empty() {
            procedure.insert("note".into(), notes.into());
        }
        self.write(Value::Object(in_order(procedure)))?;
        for step in &practice.steps {
            self.step(practice, &plan, step)?;
        }
        for (part, kept) in practice.entries() {
            if let Fact::SafetyStop { reason, .. } = &kept.entry.fact {
                let at = moment(practice.kept, part, kept.entry.at_s);
                self.symptom(practice, kept.number, reason, at)?;
            }
        }
        Ok(())
    }

    fn procedure(&self, id: &str, status: &str, told: &str) -> Map<String, Value> {
        let mut map = Map::new();
        map.insert("resourceType".into(), "Procedure".into());
        map.insert("id".into(), id.into());
        map.insert("text".into(), narrative(told));
        map.insert("status".into(), status.into());
        map.insert("subject".into(), reference(&self.patient));
        map
    }

    fn step(&mut self, practice: &Practice<'_>, plan: &str, step: &StepOutcome) -> io::Result<()> {
        let status = match step.status {
            StepStatus::Done => "completed",
            StepStatus::Stopped => "stopped",
            StepStatus::LeftOut | StepStatus::NotReached => "not-done",
        };
        let count = step.repetitions_done.zip(step.repetitions_prescribed).map(|(done, of)| format!("{done} of {of} repetitions done"));
        let reason = step.reason.as_deref().filter(|_| status != "completed");
        let told: Vec<&str> =
            [Some(step.exercise.as_str()), Some(step.status.name()), reason, count.as_deref()].into_iter().flatten().collect();
        let mut procedure = self.procedure(&step_id(practice, step), status, &told.join(", "));
        if let Some(number) =
            step.step.filter(|number| usize::try_from(*number).is_ok_and(|number| number <= practice.outline.exercises.len()))
        {
            procedure.insert("basedOn".into(), json!([reference(&request_id(plan, number))]));
        }
        procedure.insert("partOf".into(), json!([reference(&practice.id)]));
        put(&mut procedure, "statusReason", reason.map(|reason| self.codes.reason(reason)));
        procedure.insert("code".into(), self.codes.exercise(&step.exercise, self.say));
        if let Some(began) = &step.began {
            procedure.insert("performedPeriod".into(), period(&began.time, step.ended.as_ref().map(|at| &at.time)));
        }
        let stage = step.ramp_stage.map(|stage| format!("stage {stage} of a dose that grows"));
        let notes: Vec<Value> = count.into_iter().chain(stage).map(|text| note(&text)).collect();
        if !notes.is_empty() {
            procedure.insert("note".into(), notes.into());
        }
        self.write(Value::Object(in_order(procedure)))
    }

    fn symptom(&mut self, practice: &Practice<'_>, number: u32, reason: &str, at: Option<Moment>) -> io::Result<()> {
        let mut observation = Map::new();
        observation.insert("resourceType".into(), "Observation".into());
        observation.insert("id".into(), uuid(&["symptom", &practice.id, &number.to_string()]).into());
        observation.insert("text".into(), narrative(&format!("The client reported: {reason}")));
        observation.insert("partOf".into(), json!([reference(&practice.id)]));
        observation.insert("status".into(), "final".into());
        observation.insert("category".into(), therapy());
        observation.insert("code".into(), self.codes.own("symptom-reported"));
        observation.insert("subject".into(), reference(&self.patient));
        put(&mut observation, "effectiveDateTime", at.map(|at| iso(&at.time).into()));
        observation.insert("performer".into(), json!([reference(&self.patient)]));
        observation.insert("valueCodeableConcept".into(), self.codes.symptom(reason));
        self.write(Value::Object(observation))
    }
}

/// The code of FHIR's EventStatus.
fn status_of(practice: &Practice<'_>) -> &'static str {
    let all_done = !practice.steps.is_empty() && practice.steps.iter().all(|step| step.status == StepStatus::Done);
    let begun = practice.steps.iter().any(|step| step.began.is_some());
    match practice.end_reason() {
        "completed" => "completed",
        _ if all_done => "completed",
        _ if begun => "stopped",
        _ => "not-done",
    }
}

pub(super) fn period(from: &jiff::ZonedDateTime, to: Option<&jiff::ZonedDateTime>) -> Value {
    let mut period = Map::new();
    period.insert("start".into(), iso(from).into());
    // A clock that was set back gives no period that ends before it begins.
    put(&mut period, "end", to.filter(|to| to.timestamp() >= from.timestamp()).map(|to| iso(to).into()));
    Value::Object(period)
}

/// What bore on the practice and its figures.
fn notes(practice: &Practice<'_>) -> Vec<Value> {
    let told = practice.entries().filter_map(|(_, kept)| match &kept.entry.fact {
        Fact::Troubled { trouble } => Some(format!("Trouble: {}", trouble.name().replace('-', " "))),
        Fact::MicrophoneNoted { text, .. } => Some(plain(text)),
        Fact::SoundLost { lost_s } => Some(format!("{lost_s} s of sound were lost")),
        Fact::RecogniserRestarted { lost_s } => Some(format!("The recogniser was restarted; {lost_s} s went unheard")),
        Fact::LoudLimitReached { loud_s, limit_s } => {
            Some(format!("Loud holds reached {loud_s} of {limit_s} s and were left for another day"))
        }
        Fact::SessionResumed { .. } => Some("It was interrupted and gone on with".to_owned()),
        _ => None,
    });
    let mut notes: Vec<String> = Vec::new();
    for note in told {
        if !notes.contains(&note) {
            notes.push(note);
        }
    }
    if practice.misdated {
        notes.insert(0, "The clock was wrong: nobody knows when it was".to_owned());
    }
    if practice.kept.head.source != model::Source::Live {
        notes.insert(0, format!("No person at a microphone made this: {}", practice.kept.head.source.as_str()));
    }
    notes.into_iter().map(|text| note(&text)).collect()
}

/// The keys in the order of the standard's page, for whoever reads the file.
fn in_order(mut map: Map<String, Value>) -> Map<String, Value> {
    const ORDER: [&str; 12] = [
        "resourceType",
        "id",
        "text",
        "basedOn",
        "partOf",
        "status",
        "statusReason",
        "code",
        "subject",
        "performedPeriod",
        "usedReference",
        "note",
    ];
    ORDER.iter().filter_map(|key| Some(((*key).to_owned(), map.shift_remove(*key)?))).collect()
}
