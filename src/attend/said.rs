//! What can be said to the attendant.

/// What can be said to the attendant. Persons are numbered as in the household.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Said {
    /// "start my practice"
    StartMine,
    /// "start the evening routine": a routine's call name.
    StartCalled(String),
    /// "start for grandpa"
    StartFor(usize),
    /// "start for grandma and grandpa": these, in the household's order.
    StartForSeveral(Vec<usize>),
    /// "start for" and a name that nobody here has.
    StartForUnknown,
    /// A person's name alone, the answer to "for whom?".
    Name(usize),
    /// A call name alone, the answer to "which one?".
    Called(String),
    NotNow,
    WhatIsLeft,
    HowDidItGo,
    /// A notice was understood.
    Thanks,
    Yes,
    No,
    /// A question is not to be answered after all: "never mind", "finish for today".
    NeverMind,
    /// Be quiet, and drop what is asked or about to start; heard while it speaks, and while it waits for an answer.
    Stop,
}

impl Said {
    /// It is offered to whoever looks for what can be said. The others are only listened for, because they are said all the same.
    #[must_use]
    pub fn is_offered(&self) -> bool {
        !matches!(self, Self::StartForSeveral(_) | Self::StartForUnknown)
    }
}
