//! Leading a class: the tool counts, paces and keeps time while the clinician demonstrates.
//!
//! Nobody is measured, asked again or hurried. What has a clock runs by the clock; what has none waits for the clinician's
//! voice or key. Each exercise begins when the clinician says so.

use super::next::{Ask, NextAction};
use super::posture::PostureRun;
use super::practice::Practice;
use super::repeated::RepeatedRun;
use super::state::{Move, State};
use routine::{Phase, Work};

/// A hold without a goal is counted so long, s; no source.
const HOLD_S: f64 = 10.0;
/// Seconds are counted aloud at these.
const COUNT_EVERY_S: u32 = 5;
const COUNT_LAST_S: u32 = 3;

/// What a class does in place of what is measured of one client; none: the same as a client.
pub(super) fn perform(practice: &mut Practice, work: &Work) -> Option<State> {
    match work {
        Work::Voiced { target_s, .. } => Some(counted(practice, target_s.unwrap_or(HOLD_S))),
        Work::Rapid { length_s, .. } => Some(counted(practice, *length_s)),
        Work::Talk { passage: None, length_s, .. } => Some(counted(practice, *length_s)),
        // Only the clinician knows when the class has finished reading together.
        Work::ReadAloud { .. } | Work::Talk { .. } => Some(State::Repeated(RepeatedRun::open(practice))),
        _ => None,
    }
}

fn counted(practice: &mut Practice, length_s: f64) -> State {
    let phases = vec![Phase { name: String::new(), length_s }];
    State::Posture(PostureRun::start(practice, phases, COUNT_EVERY_S, COUNT_LAST_S))
}

/// The forward key: whatever is being said or done is over.
pub(super) fn move_on(practice: &mut Practice, state: &State) -> Move {
    match state {
        State::Speaking(speaking) => {
            practice.hush();
            Move::Go(past_the_question(speaking.then))
        }
        State::Posture(_) | State::Paced(_) | State::Naming(_) => {
            state.cut_repetition(practice);
            practice.hush();
            practice.repetition_complete();
            Move::Go(NextAction::AfterRepetition)
        }
        State::Question(run) => {
            practice.hush();
            run.close(practice, None).into()
        }
        State::Repeated(run) => run.done(practice).into(),
        _ => Move::Stay,
    }
}

/// Whoever goes on while it talks need not be asked at its end whether to go on.
fn past_the_question(then: NextAction) -> NextAction {
    match then {
        NextAction::AskStart | NextAction::Ask(Ask::Start) => NextAction::BeginStep,
        NextAction::BeginSet | NextAction::Ask(Ask::Position) => NextAction::BeginRepetition,
        other => other,
    }
}

/// "Once more": what was done last is done again, however often the clinician wishes.
pub(super) fn once_more(practice: &mut Practice, state: &State) -> Move {
    let running = matches!(state, State::Posture(_) | State::Paced(_) | State::Naming(_) | State::Question(_) | State::Repeated(_));
    state.cut_repetition(practice);
    practice.hush();
    // Right behind an exercise, and while the next one is being named, "once more" means the one that was done.
    if !running && practice.repetitions_done() == 0 && practice.here.step > 1 {
        practice.here.step -= 1;
        practice.steps_done.remove(&practice.step_index());
        practice.in_step = true;
    }
    if !running {
        if let Some(done) = practice.counts.get_mut(&practice.step_index()) {
            *done = done.saturating_sub(1);
        }
        practice.stand_after(practice.repetitions_done());
    }
    Move::Go(NextAction::BeginRepetition)
}
