//! Two knocks stand for "done" where it is safer not to speak: after a swallow the voice may be wet, or the throat not yet clear.

use super::next::Turn;
use super::practice::Practice;
use super::state::State;
use model::{Command, Fact};
use routine::{Step, Work, find};

/// Knocks count within this of the cue only as its echo, s: somebody puts something down.
const AFTER_CUE_S: f64 = 0.5;

/// In this step knocking will do: it is a swallow, and nobody times it.
pub(super) fn will_do(step: &Step) -> bool {
    matches!(step.work, Work::Repeated { next_cue_after_s: None, .. }) && find(&step.exercise.id).is_some_and(|entry| entry.for_swallowing)
}

/// Somebody knocked twice.
pub(super) fn knocked(practice: &mut Practice, state: &State) -> Turn {
    let State::Repeated(run) = state else { return Turn::Stay };
    let waits = practice.step().is_some_and(will_do) && !practice.context.class && !practice.is_speaking();
    if !waits || practice.now_s < run.began_s() + AFTER_CUE_S {
        return Turn::Stay;
    }
    practice.record(Fact::CommandHeard { command: Command::Done, text: "two knocks".into(), confidence: 1.0 });
    run.done(practice)
}
