//! `tidecount attend`: waits for the household's start words, invites, and hands over to a practice.

pub mod command;
pub(in crate::app) mod devices;
pub(in crate::app) mod ear;
pub mod gate;
pub(crate) mod grammar;
pub(in crate::app) mod packages;
pub(in crate::app) mod pipeline;
pub(in crate::app) mod record;
