//! `tidecount hand …`: a programme goes to the client's home as one signed file, results come back.

pub(in crate::app) mod check;
pub mod command;
pub(in crate::app) mod files;
pub(in crate::app) mod make;
pub(in crate::app) mod results;
pub mod settings;
pub(in crate::app) mod take;
