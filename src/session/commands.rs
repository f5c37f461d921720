//! What the client says: how sure a word must be to count, and what each one does.

use super::asking::Asking;
use super::next::{Ask, Halt, NextAction};
use super::practice::Practice;
use super::safety_stop::symptom_of;
use super::state::{Move, State};
use super::{afterwards, class, halting, listening, moving, roll_call, wishes};
use model::{Command, Fact, VoiceTask};

/// Below this confidence nothing is done; from here on a harmless command is taken (model card: what is heard under
/// 0.5 is mostly something else).
const HEARD_AT_ALL: f64 = 0.5;
/// From here on a costly command is taken without asking (model card: advised threshold 0.8).
pub(super) const SURE: f64 = 0.8;
/// In a room full of talk only a key is surer than this.
const CERTAIN: f64 = 1.0;
/// From "going on" to what it goes on with, s.
const GOING_ON_PAUSE_S: f64 = 0.2;

/// What is made of a command that was heard.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Verdict {
    Ignore,
    /// It would cost the client something, and it is not sure that it was said.
    AskFirst,
    Obey,
}

pub(super) fn weigh(practice: &mut Practice, state: &State, command: Command, confidence: f64) -> Verdict {
    if confidence < HEARD_AT_ALL {
        return Verdict::Ignore;
    }
    // Nothing leads out of an emergency by way of a question.
    if matches!(state, State::Emergency(_)) {
        practice.command_at_s = practice.now_s;
        return Verdict::Obey;
    }
    let wished = matches!(command, Command::Yes | Command::No | Command::NotSure | Command::Hint);
    if let State::LookingBack(run) = state
        && !command.is_emergency()
    {
        // Our own question holds these words; nothing else costs anything any more.
        let is_ours = wished && confidence < CERTAIN && practice.is_speaking() && run.is_asking();
        if is_ours {
            return Verdict::Ignore;
        }
        practice.command_at_s = practice.now_s;
        return Verdict::Obey;
    }
    let moves = matches!(command, Command::Skip | Command::GoBack);
    let calls = matches!(state, State::Asking(Asking { ask: Ask::Attendance(_), .. }));
    if moves && !practice.started && !calls {
        return Verdict::Ignore;
    }
    // Many voices: only what is surely meant moves a class.
    if practice.context.class && confidence < SURE && !matches!(command, Command::Stop | Command::Pause) {
        return Verdict::Ignore;
    }
    // Nobody agrees to what they have not heard to its end; a key is pressed by somebody who reads it.
    if matches!(command, Command::Yes | Command::No | Command::NotSure)
        && confidence < CERTAIN
        && practice.is_speaking()
        && asks_for_consent(state)
    {
        return Verdict::Ignore;
    }
    practice.command_at_s = practice.now_s;
    // "Finish" can be taken back for a while anyhow.
    let doubtful = confidence < SURE || (moves && confidence < CERTAIN && practice.talk.makes_doubtful(practice.now_s));
    if !(command.is_costly() && doubtful) {
        return Verdict::Obey;
    }
    let asks_already = matches!(state, State::Asking(Asking { ask: Ask::Confirm(_), .. }));
    if asks_already { Verdict::Ignore } else { Verdict::AskFirst }
}

fn asks_for_consent(state: &State) -> bool {
    matches!(state, State::Asking(Asking { ask: Ask::Agreement(_) | Ask::Sound, .. }))
}

/// "Did you say skip?"
pub(super) fn ask_first(practice: &mut Practice, state: &State, command: Command) -> Move {
    state.cut_repetition(practice);
    practice.hush();
    Asking::new(practice, Ask::Confirm(command)).into()
}

pub(super) fn obey(practice: &mut Practice, state: &mut State, command: Command) -> Move {
    if let State::Emergency(emergency) = state {
        return emergency.obey(practice, command).into();
    }
    // The practice is over: nothing leads back into it. A doubtful call for help is still asked about.
    let confirms = matches!(state, State::Asking(_)) && matches!(command, Command::Yes | Command::No | Command::Again);
    if practice.looking_back.is_some() && !confirms {
        return afterwards::obey(practice, state, command);
    }
    if let State::Asking(Asking { ask: Ask::Attendance(index), .. }) = state
        && let Some(leads_to) = roll_call::obey(practice, *index, command)
    {
        return leads_to;
    }
    match command {
        Command::Stop => return halting::halt(practice, state, Halt::Stopped).into(),
        Command::Pause => return halting::halt(practice, state, Halt::Paused).into(),
        Command::Rest => return halting::halt(practice, state, Halt::Resting).into(),
        Command::Dry => return halting::halt(practice, state, Halt::Dry).into(),
        Command::Help => return halting::help(practice, state).into(),
        Command::Dizzy | Command::Hurts | Command::Choking | Command::FeelSick | Command::ChestPain | Command::CantBreathe => {
            return symptom_of(command).map_or(Move::Stay, |symptom| halting::not_well(practice, state, symptom));
        }
        Command::Skip => return moving::skip(practice, state),
        Command::GoBack => return moving::go_back(practice, state),
        Command::Again => return moving::again(practice, state),
        Command::Finish => return moving::finish(practice, state, true),
        Command::AllRight => wishes::all_right(practice, state),
        Command::NotSure => return not_sure(practice, state),
        Command::Yes | Command::No => return yes_or_no(practice, state, command == Command::Yes),
        Command::Ready | Command::Done | Command::GoOn => return go_ahead(practice, state, command),
        Command::Why => return wishes::tell_why(practice, state),
        Command::Louder => wishes::louder(practice, state),
        Command::Softer => wishes::softer(practice, state),
        Command::Slower => wishes::slower(practice, state),
        Command::Faster => wishes::faster(practice, state),
        Command::HowLong => wishes::how_long(practice, state),
        Command::HowDid => practice.tell_how_it_went(),
        Command::Hint => match state {
            State::Question(run) => run.hint_asked(practice),
            // "I don't know."
            _ => return not_sure(practice, state),
        },
    }
    Move::Stay
}

fn yes_or_no(practice: &mut Practice, state: &State, yes: bool) -> Move {
    let State::Asking(asking) = state else { return Move::Stay };
    asking.responded(practice);
    leave_off(practice);
    Move::Go(NextAction::Answered(asking.ask, Some(yes)))
}

/// An answer where a clinician's agreement is asked for; elsewhere it answers nothing.
fn not_sure(practice: &mut Practice, state: &State) -> Move {
    let State::Asking(asking @ Asking { ask: Ask::Agreement(step), .. }) = state else { return Move::Stay };
    asking.responded(practice);
    leave_off(practice);
    Move::Go(NextAction::AnsweredNotSure(*step))
}

/// Whoever answers before the question is over need not hear the rest of it.
fn leave_off(practice: &mut Practice) {
    if practice.is_speaking() {
        practice.hush();
    }
}

/// "ready", "done", "go on": the same wish, to go ahead from where it stands.
fn go_ahead(practice: &mut Practice, state: &State, command: Command) -> Move {
    match state {
        State::Asking(asking) => answer_ready(practice, asking, command),
        State::Resting(resting) => resting.ready(practice).into(),
        State::Halted(_) => {
            practice.listen(listening::READY, VoiceTask::Idle);
            let last = practice.say("going-on", &[]);
            let then = practice.resume_target;
            practice.after(last, GOING_ON_PAUSE_S, then).into()
        }
        _ if practice.context.class => class::move_on(practice, state),
        State::Repeated(run) if command == Command::Done => run.done(practice).into(),
        State::Talking(run) if command == Command::Done => run.done(practice).into(),
        State::Question(run) if !practice.context.understood.answers() => run.done(practice).into(),
        State::Talking(run) if run.patience.is_waiting() => Move::Go(NextAction::BeginRepetition),
        State::Voiced(run) if run.patience.is_waiting() => Move::Go(NextAction::BeginRepetition),
        State::Reading(run) if run.patience.is_waiting() => Move::Go(NextAction::BeginRepetition),
        State::Rapid(run) if run.patience.is_waiting() => Move::Go(NextAction::BeginRepetition),
        State::Repeated(run) if run.patience.is_waiting() => {
            run.cut(practice);
            Move::Go(NextAction::BeginRepetition)
        }
        _ => Move::Stay,
    }
}

/// "Ready" to a question.
fn answer_ready(practice: &mut Practice, asking: &Asking, command: Command) -> Move {
    match asking.ask {
        // Only "yes" and "no" answer these.
        Ask::Confirm(_) | Ask::Agreement(_) | Ask::Sound | Ask::Resume => return Move::Stay,
        Ask::FinishUnlessTakenBack if command == Command::GoOn => {
            leave_off(practice);
            return Move::Go(practice.resume_target);
        }
        Ask::FinishUnlessTakenBack => return Move::Stay,
        _ => asking.responded(practice),
    }
    leave_off(practice);
    match asking.ask {
        Ask::Start => Move::Go(NextAction::BeginStep),
        Ask::Position => Move::Go(NextAction::BeginRepetition),
        Ask::RestOver => {
            practice.repetition_complete();
            Move::Go(NextAction::EndStep)
        }
        Ask::Sip => Move::Go(NextAction::AfterRepetition),
        ask => Move::Go(NextAction::Answered(ask, Some(false))),
    }
}

/// A command was heard: it stands in the journal before it is obeyed.
pub(super) fn record_heard(practice: &mut Practice, command: Command, text: String, confidence: f64) {
    practice.record(Fact::CommandHeard { command, text, confidence });
}
