//! What each move means: the one table from a name to what is done.

use super::asking::Asking;
use super::halted::Halted;
use super::looking_back::LookingBack;
use super::next::{Ask, NextAction};
use super::practice::Practice;
use super::state::{Move, State};
use super::{afterwards, answers, closing, commands, moving, opening, rising, roll_call, steps};
use model::AgreementAnswer;

/// Makes a move from `state`.
pub(super) fn take(practice: &mut Practice, state: &mut State, next: NextAction) -> Move {
    match next {
        NextAction::AskResume => Asking::new(practice, Ask::Resume).into(),
        NextAction::Cautions => opening::cautions(practice),
        NextAction::CautionOfNext => opening::caution_of_next(practice),
        NextAction::CautionHeard(step) => opening::caution_heard(practice, step),
        NextAction::AskAgreement(step) => Asking::new(practice, Ask::Agreement(step)).into(),
        NextAction::AskStart => {
            let asks_for_sound = practice.context.sound_days.is_some() && !practice.context.class;
            Asking::new(practice, if asks_for_sound { Ask::Sound } else { Ask::Start }).into()
        }
        NextAction::RollCall => roll_call::go_on(practice),
        NextAction::BeginStep => steps::begin_step(practice).into(),
        NextAction::Rise => rising::wait(practice),
        NextAction::BeginSet => steps::begin_set(practice),
        NextAction::BeginRepetition => steps::begin_repetition(practice, state),
        NextAction::Perform => steps::perform(practice),
        NextAction::AfterRepetition => steps::after_repetition(practice),
        NextAction::OfferSip => steps::offer_sip(practice),
        NextAction::EndStep => steps::end_step(practice),
        NextAction::Ask(ask) => Asking::new(practice, ask).into(),
        NextAction::AnsweredNotSure(step) => opening::agreement(practice, step, AgreementAnswer::NotSure),
        NextAction::Answered(ask, yes) => answers::answered(practice, ask, yes),
        NextAction::Obey(command) => commands::obey(practice, state, command),
        NextAction::Halted(halt) => Halted::new(practice, halt).into(),
        NextAction::Finish => moving::finish(practice, state, false),
        NextAction::GiveUp => closing::give_up(practice, state),
        NextAction::LookBack => afterwards::ask(practice),
        NextAction::UnwellAtEnd => LookingBack::listening_on(practice).into(),
        NextAction::End(reason) => closing::end(practice, reason),
    }
}
