//! Stopping at once, asking for help, and not feeling well.

use super::halted::Halted;
use super::next::{Halt, NextAction};
use super::practice::Practice;
use super::state::{Move, State};
use super::{closing, listening};
use model::{Arg, Fact, Symptom, VoiceTask};

/// Silence at once; a second later it says how to go on.
pub(super) fn halt(practice: &mut Practice, state: &State, halt: Halt) -> Halted {
    state.cut_repetition(practice);
    practice.hush();
    let between_repetitions =
        matches!(practice.resume_target, NextAction::BeginStep | NextAction::BeginSet | NextAction::AfterRepetition | NextAction::Ask(_));
    if practice.in_step && !between_repetitions {
        practice.resume_target = NextAction::BeginRepetition;
    }
    Halted::new(practice, halt)
}

pub(super) fn help(practice: &mut Practice, state: &State) -> Halted {
    record_safety_stop(practice, &Symptom::Help);
    halt(practice, state, Halt::Helped)
}

/// The exercise is left for today; says what to do.
pub(super) fn unwell(practice: &mut Practice, state: &State, symptom: &Symptom, advice: &str) -> Move {
    if practice.context.class {
        record_safety_stop(practice, symptom);
        let halted = halt(practice, state, Halt::Stopped);
        practice.say("class-unwell", &[]);
        return halted.into();
    }
    practice.hush();
    record_safety_stop(practice, symptom);
    let mut resume_target = practice.resume_target;
    if practice.in_step {
        let name = practice.exercise_key("name");
        closing::cut_short(practice, state, symptom.clone().into());
        practice.say("unwell-leave", &[("name", Arg::Message(name))]);
        practice.stand_before_next_step();
        resume_target = NextAction::BeginStep;
    }
    let last = practice.say(advice, &[]);
    practice.listen(listening::HALTED, VoiceTask::Idle);
    let speaking = practice.after(last, 0.4, NextAction::Halted(Halt::Unwell));
    practice.resume_target = resume_target;
    speaking.into()
}

fn record_safety_stop(practice: &mut Practice, symptom: &Symptom) {
    let exercise = practice.in_step.then(|| practice.exercise_id());
    practice.record(Fact::SafetyStop { exercise, reason: symptom.clone() });
}
