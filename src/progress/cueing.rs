//! What help was given and asked for, as far as the journal knows it. A carer beside the client is not in the journal.

use super::practised::Practised;
use super::window::Window;
use jiff::civil::Date;
use serde::Serialize;

/// Help in one practice, or in several together.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize)]
pub struct Cueing {
    /// The practice; 0 where several stand together.
    #[serde(skip)]
    pub session: i64,
    /// Word questions that were answered right, without a hint and after one.
    pub answered_alone: u32,
    pub answered_with_hint: u32,
    /// Word questions that were not answered right, with or without a hint.
    pub not_answered: u32,
    /// How often the client asked to hear something again.
    pub asked_again: u32,
    /// Repetitions that nobody made, though they were asked for more than once.
    pub no_answer: u32,
}

impl Cueing {
    /// That of a practice, before anything is known.
    #[must_use]
    pub fn of_session(session: i64) -> Self {
        Self { session, ..Self::default() }
    }

    /// All word questions.
    #[must_use]
    pub fn questions(&self) -> u32 {
        self.answered_alone + self.answered_with_hint + self.not_answered
    }

    /// That of the practices in a window whose dates can be believed, together.
    pub(super) fn within(practised: &Practised, window: Window) -> Self {
        let day = |session: i64| -> Option<Date> {
            practised.practices.iter().find(|practice| practice.session == session && !practice.misdated).map(|practice| practice.day)
        };
        let shown = practised.cueing.iter().filter(|cueing| day(cueing.session).is_some_and(|day| window.has(day)));
        shown.fold(Self::default(), |all, one| Self {
            session: 0,
            answered_alone: all.answered_alone + one.answered_alone,
            answered_with_hint: all.answered_with_hint + one.answered_with_hint,
            not_answered: all.not_answered + one.not_answered,
            asked_again: all.asked_again + one.asked_again,
            no_answer: all.no_answer + one.no_answer,
        })
    }
}
