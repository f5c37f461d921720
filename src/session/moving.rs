//! Moving about: skip, go back, again, finish.

use super::asking::Asking;
use super::next::{Ask, NextAction};
use super::practice::Practice;
use super::state::{Move, State};
use super::{class, closing, listening, steps};
use model::{Arg, StepReason, VoiceTask};
use routine::LookingBack;

/// Behind a short answer, s.
const MOMENT_S: f64 = 0.2;

pub(super) fn skip(practice: &mut Practice, state: &State) -> Move {
    if !practice.started || practice.step().is_none() {
        return Move::Stay;
    }
    practice.hush();
    let name = practice.exercise_key("name");
    closing::cut_short(practice, state, StepReason::Skipped);
    practice.listen(listening::READY, VoiceTask::Idle);
    let last = practice.say("skipped", &[("name", Arg::Message(name))]);
    steps::next_step(practice, last).into()
}

/// To the exercise before, or to the start of this one. A dose that was done is not done twice.
pub(super) fn go_back(practice: &mut Practice, state: &State) -> Move {
    if !practice.started {
        return Move::Stay;
    }
    practice.hush();
    let nothing_done = practice.repetitions_done() == 0 || !practice.in_step;
    closing::cut_short(practice, state, StepReason::WentBack);
    let mut done_before = None;
    if nothing_done && practice.here.step > 1 {
        let before = (1..practice.here.step).rev().find(|step| !practice.left_out.contains(&((step - 1) as usize)));
        match before {
            Some(step) if practice.steps_done.contains(&((step - 1) as usize)) => done_before = Some(step),
            Some(step) => practice.here.step = step,
            None => {}
        }
    }
    practice.listen(listening::READY, VoiceTask::Idle);
    let last = if let Some(step) = done_before {
        let id = practice.routine.steps.get((step - 1) as usize).map(|step| step.exercise.id.clone()).unwrap_or_default();
        practice.say("went-back-done", &[("name", Arg::Message(format!("ex-{id}-name")))])
    } else {
        let name = practice.exercise_key("name");
        practice.say("went-back", &[("name", Arg::Message(name))])
    };
    practice.after(last, MOMENT_S, NextAction::BeginStep).into()
}

/// The repetition under way once more; where none is, what was said last.
pub(super) fn again(practice: &mut Practice, state: &State) -> Move {
    if practice.context.class && practice.started && !matches!(state, State::Asking(_) | State::Halted(_)) {
        return class::once_more(practice, state);
    }
    match state {
        State::Asking(asking) => Move::Go(NextAction::Ask(asking.ask)),
        // What was done counts: once more is the next one, now, as soon as the body has had its rest. A dose is not exceeded.
        State::Resting(resting) => {
            practice.hush();
            resting.ready(practice).into()
        }
        State::Halted(_) => {
            practice.listen(listening::READY, VoiceTask::Idle);
            Move::Go(practice.resume_target)
        }
        State::Speaking(speaking) => {
            let Some(line) = practice.last_said.clone() else { return Move::Stay };
            practice.hush();
            let last = practice.say_line(line, None);
            practice.after(last, MOMENT_S, speaking.then).into()
        }
        State::Unbegun | State::Ended => Move::Stay,
        _ => {
            state.cut_repetition(practice);
            practice.hush();
            Move::Go(NextAction::BeginRepetition)
        }
    }
}

/// Asks to be sure; said twice, or not taken back, it ends, and the step under way is kept as ended early. Whoever `said` it twice wants
/// no questions either.
pub(super) fn finish(practice: &mut Practice, state: &State, said: bool) -> Move {
    if matches!(state, State::Asking(Asking { ask: Ask::FinishUnlessTakenBack, .. })) {
        if said {
            practice.routine.looking_back = LookingBack::default();
        }
        closing::cut_short(practice, state, StepReason::FinishedEarly);
        return closing::summarise(practice, "finished").into();
    }
    practice.hush();
    state.cut_repetition(practice);
    Asking::new(practice, Ask::FinishUnlessTakenBack).into()
}
