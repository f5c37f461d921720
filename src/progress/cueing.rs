//! What help was given and asked for, as far as the journal knows it. A carer beside the client is not in the journal.

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

    /// That of several practices.
    #[must_use]
    pub fn together<'a>(all: impl Iterator<Item = &'a Self>) -> Self {
        all.fold(Self::default(), |sum, one| Self {
            session: 0,
            answered_alone: sum.answered_alone + one.answered_alone,
            answered_with_hint: sum.answered_with_hint + one.answered_with_hint,
            not_answered: sum.not_answered + one.not_answered,
            asked_again: sum.asked_again + one.asked_again,
            no_answer: sum.no_answer + one.no_answer,
        })
    }
}
