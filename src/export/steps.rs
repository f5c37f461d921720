//! What became of each prescribed step.

use std::collections::BTreeMap;

use super::moment::{INTERRUPTED, Moment, entries, moment};
use super::outline::Outline;
use super::trial::Trial;
use model::{Fact, KeptPractice, TrialKind};

/// How a step came out.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum StepStatus {
    /// Every repetition was done.
    Done,
    /// Begun and left unfinished.
    Stopped,
    /// Left out on purpose.
    LeftOut,
    /// The practice ended before its turn came.
    NotReached,
}

impl StepStatus {
    pub const ALL: [Self; 4] = [Self::Done, Self::Stopped, Self::LeftOut, Self::NotReached];

    /// The word for it in every export.
    #[must_use]
    pub fn name(self) -> &'static str {
        match self {
            Self::Done => "done",
            Self::Stopped => "stopped",
            Self::LeftOut => "left-out",
            Self::NotReached => "not-reached",
        }
    }
}

/// One prescribed step of a practice.
#[derive(Debug, Clone, PartialEq)]
pub struct StepOutcome {
    /// Its number in the routine, from 1; none where that is not known.
    pub step: Option<u32>,
    pub exercise: String,
    pub status: StepStatus,
    /// Why it was stopped, left out or not reached.
    pub reason: Option<String>,
    pub repetitions_done: Option<u32>,
    pub repetitions_prescribed: Option<u32>,
    /// The stage of a dose that grows over the weeks, from 1.
    pub ramp_stage: Option<u32>,
    /// When it was first begun.
    pub began: Option<Moment>,
    /// When it was done or stopped for the last time.
    pub ended: Option<Moment>,
    /// The longest of the first three holds that count, s, where it is no glide: the best of many is larger for no other reason than that there were many.
    pub best_of_three_s: Option<f64>,
}

impl StepOutcome {
    fn new(step: Option<u32>, exercise: &str, status: StepStatus, reason: Option<&str>) -> Self {
        Self {
            step,
            exercise: exercise.to_owned(),
            status,
            reason: reason.map(str::to_owned),
            repetitions_done: None,
            repetitions_prescribed: None,
            ramp_stage: None,
            began: None,
            ended: None,
            best_of_three_s: None,
        }
    }

    /// Names it within its practice.
    #[must_use]
    pub fn key(&self) -> String {
        self.step.map_or_else(|| format!("step {}", self.exercise), |step| format!("step {step}"))
    }
}

/// Of a glide the length says nothing, but what the pitch goes through.
pub(super) fn is_glide(exercise: &str) -> bool {
    routine::find(exercise).is_some_and(|entry| entry.glide)
}

/// The steps in the order of the routine, what was left out without a known place last.
pub(super) fn outcomes(kept: &KeptPractice, outline: &Outline, trials: &[Trial<'_>]) -> Vec<StepOutcome> {
    let mut steps: BTreeMap<u32, StepOutcome> = BTreeMap::new();
    let mut left_out: Vec<(&str, &str)> = Vec::new();
    for (part, entry) in entries(kept) {
        let now = moment(kept, part, entry.entry.at_s);
        match (&entry.entry.fact, entry.entry.position) {
            (Fact::StepBegun { exercise, ramp_stage }, Some(at)) => {
                // Until something else is told, nobody ended it.
                let step = steps
                    .entry(at.step)
                    .or_insert_with(|| StepOutcome::new(Some(at.step), exercise, StepStatus::Stopped, Some(INTERRUPTED)));
                step.began = step.began.take().or(now);
                step.ramp_stage = step.ramp_stage.or(*ramp_stage);
            }
            (Fact::StepDone { exercise, repetitions_done, repetitions_prescribed }, Some(at)) => {
                let step = steps.entry(at.step).or_insert_with(|| StepOutcome::new(Some(at.step), exercise, StepStatus::Done, None));
                (step.status, step.reason, step.ended) = (StepStatus::Done, None, now);
                (step.repetitions_done, step.repetitions_prescribed) = (Some(*repetitions_done), Some(*repetitions_prescribed));
            }
            (Fact::StepStopped { exercise, reason, repetitions_done, repetitions_prescribed }, Some(at)) => {
                let step = steps.entry(at.step).or_insert_with(|| StepOutcome::new(Some(at.step), exercise, StepStatus::Stopped, None));
                if step.status != StepStatus::Done {
                    (step.reason, step.ended) = (Some(reason.to_string()), now);
                    (step.repetitions_done, step.repetitions_prescribed) = (Some(*repetitions_done), Some(*repetitions_prescribed));
                }
            }
            // A resumed practice says once more what is left out.
            (Fact::StepLeftOut { exercise, reason }, _) => left_out.push((exercise, reason)),
            _ => {}
        }
    }
    let mut placeless: Vec<StepOutcome> = Vec::new();
    for (exercise, reason) in left_out {
        let places = (1_u32..).zip(&outline.exercises).filter(|(_, known)| *known == exercise).map(|(step, _)| step);
        let told = |step: &u32| steps.get(step).is_some_and(|known| known.status == StepStatus::LeftOut);
        let places: Vec<u32> = places.collect();
        let free = places.iter().copied().find(|step| !steps.contains_key(step));
        match free {
            Some(step) => {
                steps.insert(step, StepOutcome::new(Some(step), exercise, StepStatus::LeftOut, Some(reason)));
            }
            None if places.iter().any(told) || placeless.iter().any(|known| known.exercise == exercise) => {}
            None => placeless.push(StepOutcome::new(None, exercise, StepStatus::LeftOut, Some(reason))),
        }
    }
    let end = kept.head.end.as_ref().map_or(INTERRUPTED, |(_, reason)| reason);
    for (step, exercise) in (1..).zip(&outline.exercises) {
        steps.entry(step).or_insert_with(|| StepOutcome::new(Some(step), exercise, StepStatus::NotReached, Some(end)));
    }
    for (number, step) in &mut steps {
        let of_step = |trial: &&Trial<'_>| trial.position.is_some_and(|at| at.step == *number) && trial.exercise == step.exercise;
        let counted =
            trials.iter().filter(of_step).filter(|trial| trial.kind == TrialKind::Hold && trial.counts() && !is_glide(trial.exercise));
        step.best_of_three_s = counted.take(3).map(|trial| trial.duration_s).max_by(f64::total_cmp);
        if step.status == StepStatus::Stopped && step.ended.is_none() {
            step.ended = trials.iter().rfind(of_step).map(|trial| trial.ended.clone());
        }
        // Nobody ended it: what was done is in its trials, what was prescribed in the routine.
        if step.status == StepStatus::Stopped && step.repetitions_done.is_none() {
            let done = trials.iter().filter(of_step).filter(|trial| trial.complete).count();
            step.repetitions_done = u32::try_from(done).ok();
            step.repetitions_prescribed = outline.repetitions(*number, step.ramp_stage);
        }
    }
    steps.into_values().chain(placeless).collect()
}
