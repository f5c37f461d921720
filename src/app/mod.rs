//! The only room that knows all others: builds the parts and joins them.

pub mod demo;
pub mod devices_command;
pub mod error;
pub mod follow;
mod grammar;
pub mod hear_command;
pub mod hear_evaluate;
pub mod hear_files;
pub mod hear_lines;
mod hear_live;
mod hear_phrases;
pub mod history_command;
mod journal_keeper;
pub mod load;
mod meter;
pub mod observe;
mod pipeline;
pub mod practise;
mod reference;
pub mod routine_command;
mod summary;
mod talk;
pub mod texts;
