//! What is said once the summary has begun: nothing leads back into the practice.

use super::halting;
use super::looking_back::{LookingBack, last_words};
use super::next::{NextAction, Speaking};
use super::practice::Practice;
use super::safety_stop::{CameFrom, record_safety_stop, symptom_of};
use super::state::{Move, State};
use super::{listening, wishes};
use model::{Command, Symptom};

/// Silence after "stop", s, whatever comes.
const STOP_SILENCE_S: f64 = 1.0;
/// A breath between two things said, s.
const BREATH_S: f64 = 0.4;

/// The next question; behind the last one it ends.
pub(super) fn ask(practice: &mut Practice) -> Move {
    match LookingBack::ask(practice) {
        Some(run) => run.into(),
        None => last_words(practice, "questions-over").into(),
    }
}

/// In whatever state.
pub(super) fn obey(practice: &mut Practice, state: &mut State, command: Command) -> Move {
    if let Some(symptom) = symptom_of(command) {
        return not_well(practice, state, symptom);
    }
    match command {
        Command::Help => return help(practice),
        Command::Stop | Command::Pause | Command::Rest => return LookingBack::leave(practice, STOP_SILENCE_S).into(),
        Command::Finish => {
            if let State::LookingBack(run) = state {
                run.keep_what_was_told(practice);
            }
            return LookingBack::leave(practice, 0.0).into();
        }
        Command::Louder => wishes::louder(practice, state),
        Command::Softer => wishes::softer(practice, state),
        Command::Slower => wishes::slower(practice, state),
        Command::Faster => wishes::faster(practice, state),
        _ => {
            if let State::LookingBack(run) = state {
                return run.obey(practice, command).into();
            }
        }
    }
    Move::Stay
}

/// As in a practice, but nothing comes behind it: chest pain and no breath take over, after the others it listens for a while.
fn not_well(practice: &mut Practice, state: &State, symptom: Symptom) -> Move {
    match halting::not_well(practice, state, symptom) {
        Move::Become(State::Speaking(speaking)) => Speaking { then: NextAction::UnwellAtEnd, ..speaking }.into(),
        emergency => {
            practice.looking_back = None;
            emergency
        }
    }
}

fn help(practice: &mut Practice) -> Move {
    practice.hush();
    let from = CameFrom::now(practice);
    record_safety_stop(practice, &Symptom::Help, &from);
    practice.listen_for_worded(listening::EMERGENCY, Vec::new());
    let last = practice.say("help", &[]);
    practice.after(last, BREATH_S, NextAction::UnwellAtEnd).into()
}
