//! Waiting for the household's start words, inviting, and handing over to a practice.

pub mod devices;
mod ear;
pub mod gate;
mod grammar;
mod lent;
mod party;
pub mod record;
pub mod waiting;

/// A household file is read with the words and wordings that only this level knows.
#[cfg(test)]
#[path = "tests/household.rs"]
mod household_tests;
