//! `tidecount clinic …`: results of many clients, and who needs attention.

pub mod args;
pub mod command;
pub mod import;
pub mod show;
