//! Waiting for the household's start words, inviting, and handing over to a practice.

pub mod devices;
pub mod ear;
pub mod gate;
pub mod grammar;
pub mod pipeline;
pub mod record;
