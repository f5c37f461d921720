//! `tidecount hand …`: a programme goes to the client's home as one signed file, results come back.

pub mod args;
pub mod command;
pub mod make;
pub mod results;
pub mod take;
