//! The only room that knows all others: builds the parts and joins them.

pub mod attend;
pub mod calibrate;
pub mod clinic;
pub mod command_path;
pub mod demo;
pub mod devices_command;
pub mod enrol;
pub mod error;
pub mod export;
pub mod follow;
mod grammar;
pub mod hand;
pub mod hear;
pub mod history_command;
mod journal_keeper;
pub mod lead_command;
pub mod levels;
pub mod load;
mod meter;
mod mic_gain;
mod number_words;
pub mod observe;
mod own_voice_log;
pub mod pages;
mod pipeline;
pub mod practise;
mod quality_desk;
pub mod record;
pub mod rehearsal;
pub mod report_command;
mod residual_gate;
pub mod routine;
mod summary;
mod talk;
pub mod texts;
pub mod web;

#[cfg(test)]
pub(crate) use attend::grammar::wordings as attend_grammar_for_tests;
