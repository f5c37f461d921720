//! `tidecount assess`: a baseline or a re-test, kept apart from practice.

pub mod args;
pub mod command;
mod sheet;
