//! The only room that knows all others: builds the parts and joins them.

pub mod devices_command;
pub mod error;
pub mod history_command;
pub mod summary;
