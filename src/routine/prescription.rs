//! A routine and what its file says besides.

use super::plan::PlannedTime;
use super::prescribed::Routine;
use super::ramp::Ramp;

/// A routine and what its file says besides.
#[derive(Debug, Clone, PartialEq)]
pub struct Prescription {
    /// The client's short name, for the journal.
    pub client: Option<String>,
    /// One of [`crate::LANGUAGES`].
    pub language: String,
    /// Ramped steps are at their first stage.
    pub routine: Routine,
    /// The doses that grow over the weeks, in the order of their steps.
    pub ramps: Vec<Ramp>,
    /// When it is meant to be done; empty: whenever the client likes.
    pub plan: Vec<PlannedTime>,
    /// A spoken agreement to an exercise holds for so many months.
    pub agreement_months: u32,
}

impl Prescription {
    /// Puts each ramped step at the stage that `stage_of` names; a number that is none of its stages is taken as the nearest.
    pub fn take_stages(&mut self, mut stage_of: impl FnMut(&Ramp) -> u32) {
        for ramp in &self.ramps {
            let number = usize::try_from(stage_of(ramp)).unwrap_or(usize::MAX).clamp(1, ramp.stages.len().max(1));
            let place = usize::try_from(ramp.step).ok().and_then(|step| step.checked_sub(1));
            let step = place.and_then(|place| self.routine.steps.get_mut(place));
            if let (Some(step), Some(stage)) = (step, ramp.stages.get(number - 1)) {
                *step = stage.clone();
            }
        }
    }
}
