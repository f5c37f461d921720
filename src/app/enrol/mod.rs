//! `tidecount enrol`: the client's own way of saying the commands.

pub mod command;
pub(in crate::app) mod dialogue;
pub mod event;
pub(in crate::app) mod pipeline;
pub(in crate::app) mod store;
pub(in crate::app) mod words;
