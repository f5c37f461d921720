//! Ends: of a step that is left unfinished, and of the session.

use super::next::{NextAction, Speaking};
use super::outlet::count;
use super::practice::Practice;
use super::questions::Questions;
use super::state::{Move, State};
use model::{Arg, Effect, Fact, Line, StepReason, VoiceTask};
use routine::{Posture, Step};

/// A breath between two things said, s.
const BREATH_S: f64 = 0.4;

/// Where a step is under way, writes that it was left unfinished.
pub(super) fn cut_short(practice: &mut Practice, state: &State, reason: StepReason) {
    state.cut_repetition(practice);
    leave_unfinished(practice, reason);
}

/// The same, between two repetitions.
pub(super) fn leave_unfinished(practice: &mut Practice, reason: StepReason) {
    if !practice.in_step {
        return;
    }
    let exercise = practice.exercise_id();
    let (repetitions_done, repetitions_prescribed) = (practice.repetitions_done(), practice.prescribed());
    if repetitions_done < repetitions_prescribed {
        practice.record(Fact::StepStopped { exercise, reason, repetitions_done, repetitions_prescribed });
    } else if practice.steps_done.insert(practice.step_index()) {
        // The last repetition was made; only its end had not been told.
        practice.record(Fact::StepDone { exercise, repetitions_done, repetitions_prescribed });
    }
    practice.in_step = false;
}

/// Nobody has answered for so long that it ends.
pub(super) fn give_up(practice: &mut Practice, state: &mut State) -> Move {
    let asked = state.patience().map_or(0, |patience| patience.asked());
    practice.record(Fact::NoAnswer { asked });
    cut_short(practice, state, StepReason::NoAnswer);
    let last = practice.say("gave-up", &[]);
    practice.after(last, 0.0, NextAction::End("no-answer")).into()
}

/// Says what was done; then it ends.
pub(super) fn summarise(practice: &mut Practice, reason: &'static str) -> Speaking {
    practice.in_step = false;
    let (done, all) = (practice.steps_done.len(), practice.routine.steps.len());
    practice.listen(&[], VoiceTask::Idle);
    // Nothing leads them up any more, so it is said before the end.
    if practice.posture == Some(Posture::Lying) {
        practice.say("rise-at-end", &[]);
    }
    if practice.context.class {
        let last = practice.say("class-over", &[]);
        return practice.after(last, BREATH_S, NextAction::End(reason));
    }
    let args = [("done", count(done)), ("all", count(all)), ("left", count(all - done.min(all)))];
    let undone: Vec<String> = undone(practice).iter().map(|step| format!("ex-{}-name", step.exercise.id)).collect();
    let questions = questions(practice, reason);
    let last = match undone.as_slice() {
        [] => practice.say("summary-all", &args),
        [one] if done > 0 => practice.say("summary-all-but", &[args[0].clone(), args[1].clone(), ("name", Arg::Message(one.clone()))]),
        _ => practice.say("summary-part", &args),
    };
    practice.show_prompt(Line { key: "summary-shown".into(), args: args.to_vec() }, &[]);
    let then = if questions.is_some() { NextAction::LookBack } else { NextAction::End(reason) };
    practice.looking_back = questions;
    practice.after(last, BREATH_S, then)
}

/// What is asked now that the practice is over: nothing where nothing was done, nor somebody who ended it because they were not well.
fn questions(practice: &Practice, reason: &'static str) -> Option<Questions> {
    let broke_off = practice.unwell && reason != "completed";
    let did_something = practice.counts.values().any(|&done| done > 0);
    if broke_off || !did_something { None } else { Questions::of(&practice.routine, &practice.context, reason) }
}

/// The steps that were not done to their end.
fn undone(practice: &Practice) -> Vec<&Step> {
    practice.routine.steps.iter().enumerate().filter(|(index, _)| !practice.steps_done.contains(index)).map(|(_, step)| step).collect()
}

/// The session is over; nothing happens behind this.
pub(super) fn end(practice: &mut Practice, reason: &str) -> Move {
    practice.in_step = false;
    practice.record(Fact::SessionEnded {
        reason: reason.into(),
        steps_done: u32::try_from(practice.steps_done.len()).unwrap_or(u32::MAX),
        steps_prescribed: u32::try_from(practice.routine.steps.len()).unwrap_or(u32::MAX),
        duration_s: practice.now_s - practice.began_s,
    });
    practice.effect(Effect::Finish);
    Move::Become(State::Ended)
}
