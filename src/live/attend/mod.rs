//! Waiting for the household's start words, inviting, and handing over to a practice.

pub mod devices;
pub mod ear;
pub mod gate;
pub mod grammar;
pub mod pipeline;
pub mod record;

/// A household file is read with the words and wordings that only this level knows.
#[cfg(test)]
#[path = "tests/household.rs"]
mod household_tests;
