//! The only room that knows all others: builds the parts and joins them.

pub mod routine_command;
