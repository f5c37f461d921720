//! What a client is asked at the end of a practice, as the routine says.

use model::Rating;

use super::catalogue::find;
use super::fault::{FaultKind, Finder, suggestion};
use super::file::RoutineFile;
use super::prescribed::{LookingBack, Routine};
use super::shape::printable;

/// What can be rated after a practice; the voice in daily life is rated once a week.
pub const AFTER_A_PRACTICE: [Rating; 3] = [Rating::Effort, Rating::Tiredness, Rating::Pain];

/// What the file asks for; every fault is noted, among them a rating that is named twice.
pub(super) fn read(file: &RoutineFile, faults: &mut Finder<'_>) -> LookingBack {
    let mut ratings: Vec<Rating> = Vec::new();
    if let Some(empty) = file.ratings.as_ref().filter(|typed| typed.value.is_empty()) {
        let remedy = "Name one, as in `ratings = [\"effort\"]`, or leave the key out.";
        faults.add(FaultKind::Missing, empty.span.clone(), "`ratings` is empty", remedy);
    }
    for name in file.ratings.iter().flat_map(|typed| &typed.value) {
        let known = AFTER_A_PRACTICE.into_iter().find(|rating| rating.name() == name.value);
        match known {
            Some(rating) if ratings.contains(&rating) => {
                let what = format!("`ratings` names {} twice", rating.name());
                faults.add(FaultKind::Twice, name.span.clone(), what, "Keep one of them.");
            }
            Some(rating) => ratings.push(rating),
            None if name.value == Rating::Voice.name() => {
                let what = "`ratings` names the voice, which is rated once a week";
                faults.add(FaultKind::UnknownName, name.span.clone(), what, "Write `weekly_questions = true` for it.");
            }
            None => {
                let what = format!("\"{}\" is nothing that a client can rate", printable(&name.value));
                let remedy = suggestion(&name.value, AFTER_A_PRACTICE.iter().map(|rating| rating.name()));
                faults.add(FaultKind::UnknownName, name.span.clone(), what, remedy);
            }
        }
    }
    LookingBack { ratings, weekly: file.weekly_questions.as_ref().is_some_and(|at| at.value) }
}

/// An exercise that is meant to help swallowing is among the steps.
#[must_use]
pub fn has_swallow_work(routine: &Routine) -> bool {
    routine.steps.iter().any(|step| find(&step.exercise.id).is_some_and(|entry| entry.for_swallowing))
}

#[cfg(test)]
#[path = "tests/looking_back.rs"]
mod tests;
