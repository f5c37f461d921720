//! What can be said in which state: about ten commands, and never two that sound alike together.
//!
//! "stop" and "pause" have a path of their own that is open in every state, so they stand in no list here.
//! "go on" keeps apart from "done" and "no": the recogniser takes one for the other (see the model's card).

use model::Command::{self, *};
use model::{MissedReason, Rating, VoiceTask};

/// The quiet after which something said is over, s. Not that of reading or a question: what was begun before the client's turn
/// is then no part of the answer, for another task begins a new stretch.
const END_PAUSE_S: f64 = 1.0;
/// While it waits for a word, the voice ear reports when somebody speaks.
pub(crate) const FOR_SPEECH: VoiceTask = VoiceTask::Speech { end_pause_s: END_PAUSE_S };

/// While it waits for "ready": before a step, in position, in a rest.
pub const READY: &[Command] = &[Ready, Again, Skip, GoBack, HowLong, HowDid, Why, Rest, Dry, Slower, Louder, Softer];
/// While it waits for a voice, before the onset.
pub const BEFORE_ONSET: &[Command] = &[Ready, Again, Skip, GoBack, HowLong, HowDid, Why, Rest, Dry, Louder, Softer];
/// During a hold the voice ear has the floor.
pub const HOLDING: &[Command] = &[];
/// While a posture is counted.
pub const POSTURE: &[Command] = &[Again, Skip, GoBack, HowLong, Help, Rest, Slower, Faster, Louder, Softer, Dizzy, Hurts];
/// While breaths are counted.
pub const PACED: &[Command] = &[Slower, Faster, Again, Skip, GoBack, HowLong, Help, Rest, Louder, Softer, Dizzy, Hurts];
/// Between self-paced repetitions.
pub const REPEATED: &[Command] = &[Done, Ready, Again, Skip, HowLong, Why, Rest, Dry, Louder, Softer];
/// While the client reads or repeats syllables.
pub const READING: &[Command] = &[Again, Skip, GoBack, HowLong, Rest, Dry, Louder, Softer];
/// While the client talks freely or reads a passage: hardly anything, for all may be said then.
pub const TALKING: &[Command] = &[Done, Skip];
/// While the client thinks about a question; the accepted answers come on top.
pub const QUESTION: &[Command] = &[Hint, Again, Skip, Help, Rest, Hurts, Dizzy];
/// The same where no answer can be heard: the client says, or presses, when it has been said.
pub const QUESTION_UNHEARD: &[Command] = &[Done, Hint, Again, Skip, Help, Rest, Hurts, Dizzy];
/// While a category is named: its many members come on top.
pub const NAMING: &[Command] = &[Skip, Help, Hurts, Dizzy];
/// After "stop", "pause", "rest" or "help".
pub const HALTED: &[Command] = &[GoOn, Ready, AllRight, Again, Skip, GoBack, Finish, HowLong, HowDid, Why, Dry, Louder, Softer];
/// For a yes or a no.
pub const YES_NO: &[Command] = &[Yes, No, Again, Help, Louder, Softer, Dizzy, Hurts];
/// For a yes, a no or a "not sure" to whether a clinician has agreed; "I don't know" is one.
pub const CONSENT: &[Command] = &[Yes, No, NotSure, Hint, Again, Help, Louder, Softer, Dizzy, Hurts];
/// When a rest is offered.
pub const OFFER: &[Command] = &[Yes, No, Rest, Finish, Again, Help, Louder, Dizzy, Hurts];
/// While a rating, or why days were missed, is asked for at the end; the answers come on top ([`numbers`], [`missed_reasons`]).
pub const LOOKING_BACK: &[Command] = &[GoBack, Again, Skip, Finish, Louder, Softer];
/// While a moment of the week is told: hardly anything, for all may be said then.
pub const MOMENT: &[Command] = &[Yes, No, Again, Skip, Finish];
/// While it asks for a warning sign at the end.
pub const SIGN: &[Command] = &[Yes, No, NotSure, Hint, Again, Skip, Finish, Louder, Softer];
/// Right after such an answer; "no" and "go back" mean the same here, so that they may be taken for each other.
pub const CORRECTION: &[Command] = &[No, GoBack, Again, Skip, Finish];
/// Right after the answer to a warning sign.
pub const SIGN_CORRECTION: &[Command] = &[GoBack, Again, Skip, Finish];
/// After "finish", while it can still be taken back.
pub const FINISHING: &[Command] = &[GoOn, Finish];

/// After chest pain, or where breath is short: until it has passed, or help is there.
pub const EMERGENCY: &[Command] = &[AllRight, Help, Again, Finish];

/// What a person who is unwell says: heard in every state in which words are heard at all, and over our own voice, on top of the
/// lists above.
pub const SAFETY: &[Command] = &[Help, Dizzy, Hurts, ChestPain, CantBreathe, Choking, FeelSick];

/// All lists by the name of their state, for the checks of the wordings.
pub const ALL: &[(&str, &[Command])] = &[
    ("ready", READY),
    ("before onset", BEFORE_ONSET),
    ("holding", HOLDING),
    ("posture", POSTURE),
    ("paced", PACED),
    ("repeated", REPEATED),
    ("reading", READING),
    ("question", QUESTION),
    ("naming", NAMING),
    ("offer", OFFER),
    ("halted", HALTED),
    ("yes or no", YES_NO),
    ("consent", CONSENT),
    ("finishing", FINISHING),
    ("talking", TALKING),
    ("emergency", EMERGENCY),
    ("looking back", LOOKING_BACK),
    ("moment of the week", MOMENT),
    ("warning sign", SIGN),
    ("correction", CORRECTION),
    ("correction of a sign", SIGN_CORRECTION),
    ("class waiting", CLASS_WAITING),
    ("class running", CLASS_RUNNING),
    ("class roll call", CLASS_ROLL_CALL),
];

/// In a class, while it waits for the clinician.
pub const CLASS_WAITING: &[Command] = &[Ready, GoOn, Again, Skip, GoBack, Finish, Slower, Faster, Louder, Softer, Rest, Hurts, Dizzy];
/// In a class, while something is counted or said.
pub const CLASS_RUNNING: &[Command] = &[Again, Skip, GoBack, HowLong, Slower, Faster, Louder, Softer, Rest, Hurts, Dizzy];

/// In a class, while it is asked who is there. "Yes", "no" and "not sure" are said otherwise then: "present", "not here", "next person".
pub const CLASS_ROLL_CALL: &[Command] = &[Yes, No, NotSure, Ready, Again, Finish, Louder, Softer, Hurts, Dizzy];

/// What a class listens for where a client would be heard with `commands`.
pub fn of_class(commands: &[Command]) -> &'static [Command] {
    if commands.contains(&NotSure) {
        CLASS_ROLL_CALL
    } else if commands.iter().any(|command| matches!(command, Ready | Done | GoOn)) {
        CLASS_WAITING
    } else if commands.is_empty() {
        &[]
    } else {
        CLASS_RUNNING
    }
}

/// What a class is shown that it can say where a client is shown `can_say`: only what is heard there, and "ready" for everything that
/// goes on.
pub fn shown_to_class(can_say: &[Command]) -> Vec<Command> {
    let heard = of_class(can_say);
    let mut shown = Vec::new();
    for command in can_say.iter().map(|&command| if command == Done { Ready } else { command }) {
        if (ALWAYS.contains(&command) || heard.contains(&command)) && !shown.contains(&command) {
            shown.push(command);
        }
    }
    shown
}

/// These commands and those of a person who is unwell. Where nothing is listened for, nothing is: a voice has the floor, or it is over.
pub fn with_safety(commands: &[Command]) -> Vec<Command> {
    let mut all = commands.to_vec();
    if !all.is_empty() {
        all.extend(SAFETY.iter().filter(|command| !commands.contains(command)));
    }
    all
}

/// The messages that hold the wordings of 0 to 10, in order.
#[must_use]
pub fn numbers() -> Vec<String> {
    (0..=Rating::MOST).map(number_key).collect()
}

/// The message that holds the wordings of one of them.
#[must_use]
pub fn number_key(value: u8) -> String {
    format!("answer-{value}")
}

/// The messages that hold the wordings of why days were missed.
#[must_use]
pub fn missed_reasons() -> Vec<String> {
    MissedReason::ALL.map(|reason| reason.wordings_key()).to_vec()
}

/// Heard in every state, also over our own voice.
pub const ALWAYS: &[Command] = &[Stop, Pause];

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_class_is_shown_what_it_is_heard_with() {
        assert_eq!(shown_to_class(&[Done, Ready, Stop, Help, Yes, Skip]), [Ready, Stop, Skip]);
        assert_eq!(shown_to_class(&[Stop, HowLong, Done]), [Stop, Ready]);
        assert_eq!(shown_to_class(&[Stop, HowLong, Help]), [Stop, HowLong]);
        assert_eq!(shown_to_class(&[Yes, No, NotSure, Ready]), [Yes, No, NotSure, Ready]);
        assert_eq!(shown_to_class(&[]), []);
    }

    #[test]
    fn about_ten_at_a_time_and_near_pairs_apart() {
        for (state, list) in ALL {
            assert!(list.len() <= 14, "{state} listens for {} commands", list.len());
            let both = |a, b| list.contains(&a) && list.contains(&b);
            assert!(!both(GoOn, Done), "go on beside done in {state}");
            assert!(!both(GoOn, No), "go on beside no in {state}");
            assert!(!both(GoBack, No) || *state == "correction", "go back beside no in {state}");
        }
    }
}
