//! `tidecount clinic …`: results of many clients, and who needs attention.

pub mod command;
pub(in crate::app) mod import;
pub(in crate::app) mod show;
