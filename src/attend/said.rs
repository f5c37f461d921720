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
    /// Be quiet; heard while it speaks.
    Stop,
}
