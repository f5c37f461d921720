//! What the ears report, brought to the state that it concerns.

use super::asking::Asking;
use super::commands::SURE;
use super::next::{Ask, NextAction};
use super::practice::Practice;
use super::state::{Move, State};
use super::{roll_call, voiced};
use model::{Fact, Hold, LineId, Trouble, Utterance};

/// A task takes effect within a block or two, s.
const TASK_TAKES_S: f64 = 0.05;

pub(super) fn voice_began(practice: &mut Practice, state: &mut State, onset_s: f64) {
    if let State::Voiced(run) = state {
        run.voice_began(practice, onset_s);
    }
}

pub(super) fn voice_ended(practice: &mut Practice, state: &State, hold: &Hold) -> Move {
    if let State::Voiced(run) = state {
        return run.ended(practice, hold).into();
    }
    voiced::ended_late(practice, hold);
    Move::Stay
}

/// A reminder gives way at once to whoever begins what it reminds of; all else is said to its end.
pub(super) fn spoken_over(practice: &mut Practice, state: &mut State) {
    if practice.context.class || !practice.is_reminding() {
        return;
    }
    practice.hush();
    let now_s = practice.now_s;
    if let Some(patience) = state.patience() {
        patience.speaks(now_s);
    }
}

/// Whoever draws breath is about to begin: a reminder that is due waits a moment.
pub(super) fn stirred(practice: &Practice, state: &mut State) {
    if practice.context.class || practice.is_speaking() {
        return;
    }
    if let Some(patience) = state.patience() {
        patience.stirs(practice.now_s);
    }
}

pub(super) fn speech_began(practice: &mut Practice, state: &mut State, onset_s: f64) {
    match state {
        State::Reading(run) => run.speech_began(practice, onset_s),
        State::Talking(run) => run.speech_began(practice, onset_s),
        State::Rapid(run) => run.speech_began(practice),
        State::Question(run) => run.speech_began(practice.now_s),
        State::LookingBack(run) if run.takes_a_tale(practice) => run.speech_began(practice, onset_s),
        _ => somebody_speaks(practice, state, onset_s),
    }
}

pub(super) fn spoken(practice: &mut Practice, state: &mut State, utterance: &Utterance) -> Move {
    // What was said before its turn came is no answer; it only ends now, because another task begins.
    if utterance.offset_s <= practice.turn_began_s + TASK_TAKES_S {
        somebody_spoke(practice, state, utterance);
        return Move::Stay;
    }
    match state {
        State::Reading(run) => run.spoken(practice, utterance).into(),
        State::Talking(run) => run.spoken(practice, utterance).into(),
        State::Rapid(run) => run.spoken(practice, utterance).into(),
        State::Question(run) => {
            run.spoken(practice.now_s);
            Move::Stay
        }
        State::LookingBack(run) if run.takes_a_tale(practice) => {
            run.spoken(practice, utterance);
            Move::Stay
        }
        _ => {
            somebody_spoke(practice, state, utterance);
            Move::Stay
        }
    }
}

/// Somebody begins to speak while a word is waited for.
fn somebody_speaks(practice: &mut Practice, state: &mut State, onset_s: f64) {
    practice.talk.since_s = Some(onset_s);
    match state {
        State::Asking(asking) => asking.patience.speaks(practice.now_s),
        State::Repeated(run) => run.patience.speaks(practice.now_s),
        State::LookingBack(run) => run.patience.speaks(practice.now_s),
        _ => {}
    }
}

/// What somebody said is over, and held no word that is listened for.
fn somebody_spoke(practice: &mut Practice, state: &mut State, utterance: &Utterance) {
    practice.talk.since_s = None;
    let ours = practice.is_speaking() || utterance.onset_s < practice.last_spoke_s;
    if ours || practice.command_at_s >= utterance.onset_s {
        return;
    }
    let now_s = practice.now_s;
    practice.talk.heard(now_s);
    if let Some(patience) = state.patience() {
        patience.not_understood(now_s);
    }
    if practice.talk.is_troubling() {
        practice.troubled(Trouble::RoomTalks);
    }
}

/// One of the accepted answers was heard.
pub(super) fn answer(practice: &mut Practice, state: &mut State, text: &str, confidence: f64) -> Move {
    match state {
        // In a class only what is surely said counts.
        State::Asking(Asking { ask: Ask::Attendance(_), .. }) if confidence >= SURE => roll_call::answered(practice, text),
        State::Question(run) => run.answer(practice, text).into(),
        State::Naming(run) => {
            run.named(text);
            Move::Stay
        }
        State::LookingBack(run) => {
            // A key or a button is as sure as can be, and nothing that is heard is.
            run.answer(practice, text, confidence >= 1.0);
            Move::Stay
        }
        _ => Move::Stay,
    }
}

/// Kept each time, and told the first time: once is help, twice is nagging.
pub(super) fn room_loud(practice: &mut Practice, loud: bool, room_db: f64) {
    practice.record(Fact::RoomLoud { loud, room_db });
    if loud && practice.troubles.is_new(Trouble::RoomTooLoud) {
        practice.troubles.tell_later(Trouble::RoomTooLoud);
    }
}

/// The microphone gives sound after it gave none: whoever was waited for has all their time from here.
pub(super) fn sound_is_back(practice: &mut Practice, state: &mut State) {
    practice.sound_is_back();
    let now_s = practice.now_s;
    if let Some(patience) = state.patience() {
        patience.heard(now_s);
    }
}

/// The loudspeaker plays after it was gone: whoever is waited for is asked once more, since nobody heard it. Who holds a voice, counts or
/// talks is not talked over, a class has its clinician, and an emergency says all of it again by itself.
pub(super) fn voice_is_back(practice: &mut Practice, state: &State) -> Move {
    if practice.context.class {
        return Move::Stay;
    }
    match state {
        State::Asking(asking) => {
            practice.say_aside("trouble-loudspeaker-back");
            Move::Go(NextAction::Ask(asking.ask))
        }
        State::Voiced(run) if run.is_under_way() => Move::Stay,
        State::Voiced(_) | State::Repeated(_) | State::Halted(_) => {
            practice.say_aside("trouble-loudspeaker-back");
            if let Some(line) = practice.last_said.clone() {
                practice.say_line(line, None);
            }
            Move::Stay
        }
        _ => Move::Stay,
    }
}

/// A line of ours is over: the client's time counts from here.
pub(super) fn line_ended(practice: &mut Practice, state: &mut State, line: LineId) {
    practice.out.speaking.remove(&line);
    let now_s = practice.now_s;
    practice.last_spoke_s = now_s;
    match state {
        State::Speaking(speaking) if speaking.last == line => speaking.ended_s = Some(now_s),
        State::Question(run) => run.spoke(now_s),
        State::Emergency(emergency) => emergency.spoke(now_s),
        _ => {
            if !practice.is_speaking()
                && let Some(patience) = state.patience()
            {
                patience.spoke(now_s);
            }
        }
    }
}
