//! What a yes, a no, or no answer at all to a question leads to.

use super::halted::Halted;
use super::next::{Ask, Halt, NextAction};
use super::practice::Practice;
use super::state::Move;
use super::{opening, roll_call};
use model::{AgreementAnswer, Fact};

/// `yes` is none where all asking was in vain: silence then counts as the careful answer, or it waits on for "ready".
pub(super) fn answered(practice: &mut Practice, ask: Ask, yes: Option<bool>) -> Move {
    let said_yes = yes == Some(true);
    match ask {
        Ask::Resume => opening::resume(practice, said_yes),
        Ask::Agreement(step) => {
            let answer = match yes {
                Some(true) => AgreementAnswer::Yes,
                Some(false) => AgreementAnswer::No,
                None => AgreementAnswer::NoAnswer,
            };
            opening::agreement(practice, step, answer)
        }
        Ask::Attendance(index) => roll_call::marked(practice, index, yes),
        Ask::Sound => opening::sound_answered(practice, yes).into(),
        // Whoever may be in an emergency and cannot answer is.
        Ask::Confirm(command) if said_yes || (yes.is_none() && command.is_emergency()) => Move::Go(NextAction::Obey(command)),
        Ask::Confirm(_) => Move::Go(practice.resume_target),
        // Silence takes the rest: whoever is tired need not say so.
        Ask::OfferRest => rest_offered(practice, yes != Some(false)),
        _ => {
            if yes.is_none() {
                practice.say("wait-for-ready", &[]);
            }
            Move::Stay
        }
    }
}

fn rest_offered(practice: &mut Practice, taken: bool) -> Move {
    practice.record(Fact::RestOffered { taken });
    if !taken {
        return Move::Go(NextAction::AfterRepetition);
    }
    let halted = Halted::new(practice, Halt::Resting);
    practice.resume_target = NextAction::AfterRepetition;
    halted.into()
}
