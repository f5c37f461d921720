//! Trials as Observations, and the best of them as panels.

use std::io::{self, Write};

use serde_json::{Map, Value, json};

use super::build::{absent, narrative, put, quantity, reference, therapy};
use super::bundle::FhirExport;
use super::plan_state::{plan_id, request_id};
use super::procedure::{period, step_id};
use super::value::{components, main_value, notes};
use crate::ids::uuid;
use crate::steps::{StepOutcome, is_glide};
use crate::trial::Trial;
use crate::{Practice, iso};
use model::{Fact, TrialKind};

fn trial_id(practice: &Practice<'_>, trial: &Trial<'_>) -> String {
    uuid(&["trial", &practice.id, &trial.kept.number.to_string()])
}

/// What the pitch of a glide went through, semitones.
fn span_st(trial: &Trial<'_>) -> f64 {
    match trial.kept.entry.fact {
        Fact::HoldMeasured { f0_median_hz, f0_span_st, .. } if f0_median_hz > 0.0 => f0_span_st,
        _ => f64::NAN,
    }
}

/// The step that a trial belongs to.
fn step_of<'p>(practice: &'p Practice<'_>, trial: &Trial<'_>) -> Option<&'p StepOutcome> {
    practice
        .steps
        .iter()
        .find(|step| step.step.is_some() && step.step == trial.position.map(|at| at.step) && step.exercise == trial.exercise)
}

impl<W: Write> FhirExport<'_, W> {
    pub(super) fn observations(&mut self, practice: &Practice<'_>) -> io::Result<()> {
        for trial in &practice.trials {
            self.trial(practice, trial)?;
        }
        for step in &practice.steps {
            self.best(practice, step)?;
        }
        Ok(())
    }

    /// What all observations of a step have.
    fn observation(&self, practice: &Practice<'_>, step: Option<&StepOutcome>, id: &str, told: &str, code: &str) -> Map<String, Value> {
        let plan = plan_id(&self.patient, &practice.kept.head.routine_text);
        let mut map = Map::new();
        map.insert("resourceType".into(), "Observation".into());
        map.insert("id".into(), id.into());
        map.insert("text".into(), narrative(told));
        let steps = practice.outline.exercises.len();
        let number = step.and_then(|step| step.step).filter(|number| usize::try_from(*number).is_ok_and(|number| number <= steps));
        put(&mut map, "basedOn", number.map(|number| json!([reference(&request_id(&plan, number))])));
        let part_of = step.map_or_else(|| practice.id.clone(), |step| step_id(practice, step));
        map.insert("partOf".into(), json!([reference(&part_of)]));
        map.insert("status".into(), "final".into());
        map.insert("category".into(), therapy());
        map.insert("code".into(), self.codes.own(code));
        map.insert("subject".into(), reference(&self.patient));
        map
    }

    fn trial(&mut self, practice: &Practice<'_>, trial: &Trial<'_>) -> io::Result<()> {
        let Some(main) = main_value(&trial.kept.entry.fact) else { return Ok(()) };
        let software = &practice.kept.head.software;
        let device = match trial.level_terms() {
            Some(terms) => self.level_metric(trial.mic, terms.calibration, software)?,
            None => self.program(software)?,
        };
        let discarded = if trial.counts() { "" } else { ", discarded" };
        let told = format!("{}, {}: {} s{discarded}", trial.exercise, trial.kind.name(), trial.duration_s);
        let mut observation = self.observation(practice, step_of(practice, trial), &trial_id(practice, trial), &told, main.code);
        match &trial.began {
            Some(began) => put(&mut observation, "effectivePeriod", Some(period(&began.time, Some(&trial.ended.time)))),
            None => put(&mut observation, "effectiveDateTime", Some(iso(&trial.ended.time).into())),
        }
        observation.insert("performer".into(), json!([reference(&self.patient)]));
        observation.insert(main.key.into(), main.value);
        let notes = notes(trial);
        if !notes.is_empty() {
            observation.insert("note".into(), notes.into());
        }
        observation.insert("device".into(), reference(&device));
        let exercise = self.codes.exercise(trial.exercise, self.say);
        observation.insert("component".into(), components(trial, exercise, &self.codes).into());
        self.write(Value::Object(observation))
    }

    /// The best of the first three held sounds of a step that count, with those three as members; without any, why there is none.
    fn best(&mut self, practice: &Practice<'_>, step: &StepOutcome) -> io::Result<()> {
        let of_step =
            |trial: &&Trial<'_>| trial.kind == TrialKind::Hold && step_of(practice, trial).is_some_and(|of| std::ptr::eq(of, step));
        let all: Vec<&Trial<'_>> = practice.trials.iter().filter(of_step).collect();
        let glide = is_glide(&step.exercise);
        let figure = |trial: &Trial<'_>| if glide { span_st(trial) } else { trial.duration_s };
        let counted = all.iter().copied().filter(|trial| trial.counts() && figure(trial).is_finite());
        let three: Vec<&Trial<'_>> = counted.clone().take(3).collect();
        let members = if three.is_empty() { &all } else { &three };
        let (Some(first), Some(last)) = (members.first(), members.last()) else { return Ok(()) };
        let best = three.iter().max_by(|one, other| figure(one).total_cmp(&figure(other)));
        let (unit, ucum) = if glide { ("semitone", "{semitone}") } else { ("s", "s") };
        let id = uuid(&["best", &practice.id, &step.key()]);
        let told = best.map_or_else(|| "none counts".to_owned(), |best| format!("{} {unit}", figure(best)));
        let mut panel = self.observation(practice, Some(step), &id, &format!("{}, best of three: {told}", step.exercise), "best-of-three");
        let from = first.began.as_ref().unwrap_or(&first.ended);
        panel.insert("effectivePeriod".into(), period(&from.time, Some(&last.ended.time)));
        panel.insert("performer".into(), json!([reference(&self.patient)]));
        match best {
            Some(best) => panel.insert("valueQuantity".into(), quantity(figure(best), unit, ucum)),
            None => panel.insert("dataAbsentReason".into(), absent("not-performed", "Not Performed", "No trial counts.")),
        };
        panel.insert("hasMember".into(), members.iter().map(|trial| reference(&trial_id(practice, trial))).collect::<Vec<_>>().into());
        put(&mut panel, "derivedFrom", best.map(|best| json!([reference(&trial_id(practice, best))])));
        let exercise = self.codes.exercise(&step.exercise, self.say);
        panel.insert(
            "component".into(),
            json!([
                {"code": self.codes.own("exercise"), "valueCodeableConcept": exercise},
                {"code": self.codes.own("trials-made"), "valueInteger": all.len()},
                {"code": self.codes.own("trials-counted"), "valueInteger": counted.count()},
            ]),
        );
        self.write(Value::Object(panel))
    }
}
