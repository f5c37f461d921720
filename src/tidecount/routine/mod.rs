//! `tidecount routine …`: routines are checked, shown, and written by answering questions.

pub mod args;
pub mod check;
pub mod command;
pub mod new;
pub mod new_dose;
pub mod new_plan;
pub mod show;
pub mod templates;
