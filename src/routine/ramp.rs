//! A dose that grows over the weeks, stage by stage.
//!
//! The rule: a stage goes up when every repetition of the step was done at it on `days` different days, and from the next
//! day on. It never goes down by itself, and never two up in one day. Where the client stands is derived from what was
//! done, and kept nowhere.

use std::collections::BTreeSet;

use jiff::civil::Date;

use super::bounds::MAX_STAGES;
use super::catalogue::CatalogueEntry;
use super::dose;
use super::fault::{FaultKind, Finder};
use super::file::{At, PhaseFile, RampFile, StageFile, StepFile};
use super::prescribed::{Step, Timing, Work};
use super::text::Hearing;

/// Days that a stage must be done whole where the routine says nothing else; our own choice, no source. That a programme
/// should grow step by step is advised by Easterling et al. 2005 (seen); it gives no rule for when.
const DAYS: u32 = 3;
/// The stages of one step.
#[derive(Debug, Clone, PartialEq)]
pub struct Ramp {
    /// The step, counted from 1.
    pub step: u32,
    /// On how many different days a stage is done whole before the next.
    pub days: u32,
    /// The whole step at each stage, at least two, no two alike; their `ramp_stage` counts from 1.
    pub stages: Vec<Step>,
}

/// One practice of a ramped step.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct StageDone {
    /// Counted from 1.
    pub stage: u32,
    /// The client's local date.
    pub day: Date,
    /// Every repetition was done.
    pub whole: bool,
}

impl Ramp {
    /// The stage that is due on the day `today`, from 1: one above the highest that was begun, if that one was done whole on
    /// enough days before today; else that one. The first where nothing was begun yet; never beyond the last.
    #[must_use]
    pub fn stage_on(&self, today: Date, history: &[StageDone]) -> u32 {
        let reached = history.iter().filter(|done| done.day <= today).map(|done| done.stage).max().unwrap_or(1);
        let whole = history.iter().filter(|done| done.whole && done.stage == reached && done.day < today);
        let days: BTreeSet<Date> = whole.map(|done| done.day).collect();
        let up = u32::from(days.len() >= usize::try_from(self.days).unwrap_or(usize::MAX));
        let last = u32::try_from(self.stages.len()).unwrap_or(u32::MAX);
        (reached + up).clamp(1, last.max(1))
    }

    /// The number of the stage that asks for the same work as `step`, from 1. Rests do not matter.
    #[must_use]
    pub fn stage_of(&self, step: &Step) -> Option<u32> {
        self.stages.iter().find(|stage| same_work(stage, step)).and_then(|stage| stage.ramp_stage)
    }
}

fn same_work(one: &Step, other: &Step) -> bool {
    one.exercise.id == other.exercise.id && one.sets == other.sets && one.repetitions == other.repetitions && one.work == other.work
}

/// The ramp of a step; every fault is noted, and a stage out of the exercise's limits is one, as in any dose.
pub(super) fn read(
    typed: &At<StepFile>,
    number: usize,
    entry: &CatalogueEntry,
    hearing: Hearing<'_>,
    faults: &mut Finder<'_>,
) -> Option<Ramp> {
    let ramp = typed.value.ramp.as_ref().filter(|_| !entry.stage_fields().is_empty())?;
    let days = days(&ramp.value, faults);
    let given = ramp.value.stages.as_ref()?;
    if given.value.len() < 2 {
        faults.add(
            FaultKind::Missing,
            given.span.clone(),
            format!("the ramp of `{}` has {} stages, but grows only over two or more", entry.id, given.value.len()),
            "Add stages, as in `stages = [{ repetitions = 3 }, { repetitions = 4 }]`, or leave `ramp` out.",
        );
    }
    if given.value.len() > MAX_STAGES {
        let what = format!("the ramp of `{}` has {} stages, more than {MAX_STAGES}", entry.id, given.value.len());
        faults.add(FaultKind::OutOfRange, given.span.clone(), what, "Take larger steps.");
        return None;
    }
    let mut stages: Vec<Step> = Vec::new();
    for stage in &given.value {
        let before = faults.list.len();
        let step = stage_step(&typed.value, stage, entry, hearing, faults)?;
        let sound = faults.list.len() == before;
        if let Some(same) = stages.iter().position(|earlier| sound && same_work(earlier, &step)) {
            let what = format!("stage {} of `{}` asks for the same as stage {}", stages.len() + 1, entry.id, same + 1);
            faults.add(FaultKind::Twice, stage.span.clone(), what, "Change one of them, or take it out.");
        }
        let ramp_stage = u32::try_from(stages.len() + 1).ok();
        stages.push(Step { ramp_stage, ..step });
    }
    Some(Ramp { step: u32::try_from(number).ok()?, days, stages })
}

fn days(ramp: &RampFile, faults: &mut Finder<'_>) -> u32 {
    let Some(days) = &ramp.days else { return DAYS };
    #[allow(clippy::cast_precision_loss, reason = "only compared with a small limit")]
    dose::check_number("days", days.value as f64, days.span.clone(), None, faults);
    u32::try_from(days.value).unwrap_or(DAYS)
}

/// The step as it is at this stage: what the stage leaves out is the step's own.
fn stage_step(
    step: &StepFile,
    stage: &At<StageFile>,
    entry: &CatalogueEntry,
    hearing: Hearing<'_>,
    faults: &mut Finder<'_>,
) -> Option<Step> {
    let suited = entry.stage_fields();
    let present = stage.value.present();
    for (field, span) in present.iter().filter(|(field, _)| !suited.contains(field)) {
        faults.add(
            FaultKind::NotForThisExercise,
            span.clone(),
            format!("`{field}` does not belong to a stage of `{}`", entry.id),
            format!("Take it out; a stage of it has: {}.", suited.join(", ")),
        );
    }
    if present.is_empty() {
        faults.add(FaultKind::Missing, stage.span.clone(), "a stage says nothing", format!("Give one or more of: {}.", suited.join(", ")));
    }
    let at = &stage.value;
    let phases = match &at.hold_s {
        Some(hold_s) => held(step, hold_s, entry, faults),
        None => at.phases.clone(),
    };
    let mut merged = StepFile { ramp: None, ..step.clone() };
    let suits = |field: &str| suited.contains(&field);
    over(&mut merged.sets, &at.sets, suits("sets"));
    over(&mut merged.repetitions, &at.repetitions, suits("repetitions"));
    over(&mut merged.target_s, &at.target_s, suits("target_s"));
    over(&mut merged.phases, &phases, suits("phases"));
    over(&mut merged.counts_in, &at.counts_in, suits("in"));
    over(&mut merged.counts_out, &at.counts_out, suits("out"));
    over(&mut merged.length_s, &at.length_s, suits("length_s"));
    // Faults of the step itself are found again here and noted once.
    dose::build(&At { value: merged, span: stage.span.clone() }, entry, hearing, faults)
}

/// The step's only phase, held this long.
fn held(step: &StepFile, hold_s: &At<f64>, entry: &CatalogueEntry, faults: &mut Finder<'_>) -> Option<At<Vec<At<PhaseFile>>>> {
    let usual = step.phases.as_ref().or(entry.dose.phases.as_ref()).filter(|_| entry.timing == Timing::Timed)?;
    let [phase] = &usual.value[..] else {
        faults.add(
            FaultKind::NotForThisExercise,
            hold_s.span.clone(),
            format!("`hold_s` does not say which of the {} phases of `{}` it means", usual.value.len(), entry.id),
            "Give the phases whole, as in `phases = [{ name = \"…\", length_s = 10 }, …]`.",
        );
        return None;
    };
    let phase = PhaseFile { name: phase.value.name.clone(), length_s: Some(hold_s.clone()) };
    let span = hold_s.span.clone();
    Some(At { value: vec![At { value: phase, span: span.clone() }], span })
}

fn over<T: Clone>(own: &mut Option<At<T>>, stage: &Option<At<T>>, suits: bool) {
    if stage.is_some() && suits {
        own.clone_from(stage);
    }
}

/// Whether a hold of this length fulfils the step: where a goal is set it must be reached.
#[must_use]
pub fn reaches_goal(step: &Step, duration_s: f64) -> bool {
    match step.work {
        Work::Voiced { target_s: Some(target_s), .. } => duration_s >= target_s,
        _ => true,
    }
}

#[cfg(test)]
#[path = "tests/ramp.rs"]
mod tests;
