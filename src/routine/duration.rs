//! How long a step and a routine are planned to take.

use super::posture::rise_s;
use super::prescribed::{Routine, Step, Work};

/// A hold without a goal; about the half of what healthy people of 60 to 89 years reach (Maslan et al. 2011). A guess for planning only.
pub(super) const HOLD_WITHOUT_GOAL_S: f64 = 10.0;
/// A self-paced repetition that waits for "done". A guess for planning only.
const SELF_PACED_S: f64 = 8.0;
/// A phrase told and repeated. A guess for planning only.
const PHRASE_S: f64 = 7.0;
/// Asking a question and telling its answer; of the time to think about the half is used. A guess for planning only.
const QUESTION_TOLD_S: f64 = 8.0;
/// A rest until "ready". A guess for planning only.
const REST_UNTIL_READY_S: f64 = 30.0;
/// Name and instruction of a step. A guess for planning only.
const INSTRUCTION_S: f64 = 15.0;
/// Getting into position and saying "ready". A guess for planning only.
const GET_READY_S: f64 = 10.0;
/// Reading aloud, about 150 words of six letters a minute; common practice, no source. For planning only.
const LETTERS_PER_S: f64 = 15.0;
/// The cue before a repetition that the client starts. A guess for planning only.
const CUE_S: f64 = 3.0;

impl Step {
    /// Work and rests, s, without anything that is said before and between. No rest after the last repetition and the
    /// last set. Where the client sets the pace it is a guess.
    #[must_use]
    pub fn planned_duration_s(&self) -> f64 {
        let (sets, repetitions) = (f64::from(self.sets), f64::from(self.repetitions));
        let one_s = match &self.work {
            Work::Voiced { target_s, .. } => target_s.unwrap_or(HOLD_WITHOUT_GOAL_S),
            Work::Timed { phases, .. } => phases.iter().map(|phase| phase.length_s).sum(),
            Work::Paced { phases, beat_s } => phases.iter().map(|phase| f64::from(phase.counts)).sum::<f64>() * beat_s,
            Work::Repeated { next_cue_after_s, .. } => next_cue_after_s.unwrap_or(SELF_PACED_S),
            Work::ReadAloud { .. } => PHRASE_S,
            Work::Rapid { length_s, .. } | Work::Talk { passage: None, length_s, .. } => *length_s,
            Work::Talk { passage: Some(passage), .. } => passage.chars().count() as f64 / LETTERS_PER_S,
            Work::Question { think_s, .. } => QUESTION_TOLD_S + think_s / 2.0,
            Work::Naming { length_s, .. } => QUESTION_TOLD_S + length_s,
            Work::Rest { length_s } => length_s.unwrap_or(REST_UNTIL_READY_S),
        };
        let set_s = repetitions * one_s + (repetitions - 1.0).max(0.0) * self.rest_s;
        sets * set_s + (sets - 1.0).max(0.0) * self.set_rest_s
    }

    /// What is said and done around the work, s; a guess.
    fn around_s(&self) -> f64 {
        let cues = match self.work {
            Work::Voiced { .. } | Work::Timed { .. } | Work::Rapid { .. } => f64::from(self.sets) * f64::from(self.repetitions) * CUE_S,
            Work::Rest { .. } => return 0.0,
            _ => 0.0,
        };
        let ready = if self.exercise.waits_for_ready { f64::from(self.sets) * GET_READY_S } else { 0.0 };
        INSTRUCTION_S + ready + cues
    }
}

impl Routine {
    /// The whole, s, with a guess for what is said and done around each step; for the greeting's "about twelve minutes".
    #[must_use]
    pub fn planned_duration_s(&self) -> f64 {
        planned_s(&self.steps)
    }
}

/// What steps in this order are planned to take, s.
pub(super) fn planned_s(steps: &[Step]) -> f64 {
    let mut posture = None;
    let one_s = |step: &Step| {
        let rise_s = rise_s(posture, step.posture);
        posture = step.posture.or(posture);
        rise_s + step.planned_duration_s() + step.around_s()
    };
    steps.iter().map(one_s).sum()
}
