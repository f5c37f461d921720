//! `tidecount export …`: what is in the record, in open standards.

pub mod args;
pub mod command;
