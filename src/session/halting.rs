//! Stopping at once, asking for help, and not feeling well: each symptom with its own ending.

use super::emergency::{self, Emergency};
use super::halted::Halted;
use super::next::{Halt, NextAction};
use super::outlet::line;
use super::practice::Practice;
use super::safety_stop::{CameFrom, record_safety_stop};
use super::state::{Move, State};
use super::{closing, listening};
use model::{Arg, Fact, Line, Symptom, VoiceTask};
use routine::left_out_by;

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
    let from = CameFrom::now(practice);
    record_safety_stop(practice, &Symptom::Help, &from);
    let halted = halt(practice, state, Halt::Helped);
    if !practice.context.class {
        practice.say("help", &[]);
    }
    halted
}

/// Chest pain and no breath end the practice; anything else leaves out what is like the exercise.
pub(super) fn not_well(practice: &mut Practice, state: &State, symptom: Symptom) -> Move {
    match symptom {
        Symptom::ChestPain | Symptom::Breathless => emergency(practice, state, symptom),
        _ => unwell(practice, state, &symptom),
    }
}

/// The exercise is left for today, and all that is like it; says what to do.
fn unwell(practice: &mut Practice, state: &State, symptom: &Symptom) -> Move {
    if practice.context.class {
        return unwell_in_class(practice, state, symptom);
    }
    practice.hush();
    let from = CameFrom::now(practice);
    record_safety_stop(practice, symptom, &from);
    let exercise = from.either();
    let name = practice.exercise_key("name");
    let in_step = practice.in_step;
    let mut resume_target = practice.resume_target;
    if in_step {
        closing::cut_short(practice, state, symptom.clone().into());
        practice.stand_before_next_step();
        resume_target = NextAction::BeginStep;
    }
    // What to do comes first, in one sentence: it may be urgent, and so may an answer.
    let mut last = practice.say(advice(symptom), &[]);
    let mut rest = Vec::new();
    if *symptom == Symptom::Choking {
        last = emergency::say_number(practice);
    } else {
        rest.push(line(format!("{}-more", advice(symptom))));
    }
    let others = leave_out_for_today(practice, symptom, exercise);
    if in_step {
        let key = if others { "unwell-leave-all" } else { "unwell-leave" };
        rest.push(Line { key: key.into(), args: vec![("name", Arg::Message(name))] });
    } else if others {
        rest.push(line("unwell-leave-others"));
    }
    if practice.looking_back.is_some() {
        // Nothing is waited for behind the practice.
        last = rest.drain(..).fold(last, |_, line| practice.say_line(line, None));
    }
    practice.listen(listening::HALTED, VoiceTask::Idle);
    let speaking = practice.after(last, 0.4, NextAction::Halted(Halt::Unwell));
    practice.resume_target = resume_target;
    practice.rest_to_tell = rest;
    speaking.into()
}

/// The practice is over; says whom to call.
fn emergency(practice: &mut Practice, state: &State, symptom: Symptom) -> Move {
    if practice.context.class {
        return unwell_in_class(practice, state, &symptom);
    }
    practice.hush();
    let from = CameFrom::now(practice);
    record_safety_stop(practice, &symptom, &from);
    closing::cut_short(practice, state, symptom.clone().into());
    Emergency::new(practice, symptom, from).into()
}

/// The clinician is in the room: it is quiet, and leaves it to them.
fn unwell_in_class(practice: &mut Practice, state: &State, symptom: &Symptom) -> Move {
    let from = CameFrom::now(practice);
    record_safety_stop(practice, symptom, &from);
    let halted = halt(practice, state, Halt::Stopped);
    practice.say("class-unwell", &[]);
    halted.into()
}

fn advice(symptom: &Symptom) -> &'static str {
    match symptom {
        Symptom::Choking => "unwell-choking",
        Symptom::Sick => "unwell-sick",
        Symptom::Pain => "unwell-pain",
        _ => "unwell-dizzy",
    }
}

/// Leaves out what asks the same of the body; true where something else than the exercise under way was still to come.
fn leave_out_for_today(practice: &mut Practice, symptom: &Symptom, exercise: Option<&str>) -> bool {
    let alike = left_out_by(symptom, exercise);
    let mut others = false;
    for index in 0..practice.routine.steps.len() {
        let Some(id) = practice.routine.steps.get(index).map(|step| step.exercise.id.clone()) else { continue };
        let open = !practice.steps_done.contains(&index) && index + 1 >= practice.here.step as usize;
        if alike.contains(id.as_str()) && practice.left_out.insert(index) && open {
            others |= exercise != Some(id.as_str());
            practice.record(Fact::StepLeftOut { exercise: id, reason: symptom.clone().into() });
        }
    }
    others
}

/// What was not well earlier today is left out of this practice, too. True where something was.
pub(super) fn leave_out_what_upset_before(practice: &mut Practice) -> bool {
    let earlier = practice.context.today.unwell.clone();
    let before = practice.left_out.len();
    for (symptom, exercise) in earlier {
        leave_out_for_today(practice, &symptom, exercise.as_deref());
    }
    practice.left_out.len() > before
}
