//! Steps of a dose that a clinician may want to take, by plain arithmetic over the latest trials. The tool takes none of them.

use super::practised::Practised;
use super::prescribed::RoutineLife;
use super::window::Window;
use jiff::civil::Date;
use model::Measure;
use routine::Work;
use serde::Serialize;

/// So many of the latest trials are looked at; fewer tell nothing. Own choice, no source.
const LOOKED_AT: usize = 10;
/// They are no older than this, days.
const LATEST_DAYS: i64 = 21;
/// From so many of them on a longer goal is worth a thought, and up to so many a shorter one. A task is practised best where most
/// trials succeed and some do not (common practice, no source).
const UP_FROM: u32 = 9;
const DOWN_TO: u32 = 2;

/// A goal of a held exercise that nearly always, or hardly ever, was reached.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct ProposedDose {
    pub exercise: String,
    /// The goal in force, s.
    pub target_s: f64,
    /// How many of the latest trials reached it.
    pub reached: u32,
    pub of: u32,
}

impl ProposedDose {
    /// A longer goal is proposed; else a shorter one.
    #[must_use]
    pub fn is_up(&self) -> bool {
        self.reached >= UP_FROM
    }
}

/// What the trials up to the end of the window propose, by exercise; a dose that grows by itself proposes nothing.
pub(super) fn proposed(practised: &Practised, lives: &[RoutineLife<'_>], window: Window) -> Vec<ProposedDose> {
    let recent = |day: Date| day <= window.to && day.duration_until(window.to).as_hours() / 24 <= LATEST_DAYS;
    let mut all: Vec<ProposedDose> = Vec::new();
    let in_force = lives.iter().filter(|life| life.replaced.is_none_or(|(from, _)| from > window.to));
    for prescription in
        in_force.filter_map(|life| life.versions.iter().rev().find(|version| version.from <= window.to)?.prescription.as_ref())
    {
        for (place, step) in prescription.routine.steps.iter().enumerate() {
            let grows = prescription.ramps.iter().any(|ramp| usize::try_from(ramp.step).is_ok_and(|step| step == place + 1));
            let Work::Voiced { target_s: Some(target_s), ladder: None, .. } = step.work else { continue };
            let exercise = &step.exercise.id;
            if grows || routine::is_soft(exercise) || all.iter().any(|known| known.exercise == *exercise) {
                continue;
            }
            let held = practised.trials.iter().rev().filter(|trial| trial.exercise == *exercise && recent(trial.day));
            let held_s = held.filter_map(|trial| trial.value(Measure::HoldS)).filter(|value| value.discard.is_none());
            let latest: Vec<f64> = held_s.map(|value| value.value).take(LOOKED_AT).collect();
            let reached = u32::try_from(latest.iter().filter(|held_s| **held_s >= target_s).count()).unwrap_or(u32::MAX);
            if latest.len() == LOOKED_AT && (reached >= UP_FROM || reached <= DOWN_TO) {
                let of = u32::try_from(latest.len()).unwrap_or(u32::MAX);
                all.push(ProposedDose { exercise: exercise.clone(), target_s, reached, of });
            }
        }
    }
    all
}

#[cfg(test)]
#[path = "tests/proposed.rs"]
mod tests;
