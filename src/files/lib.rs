//! What reads and writes files for more than one command or page: routines, households, packages, calibrations, exports, reports.
//! It plays and hears nothing. Start at `load.rs`.

pub mod calibrations;
pub mod checker;
pub mod classes;
pub mod clinic_address;
pub mod clinic_words;
mod default_texts;
pub mod dose_words;
pub mod error;
pub mod exports;
pub mod households;
pub mod load;
pub mod number_words;
pub mod packages;
pub mod pdf;
pub mod ramps;
pub mod reports;
pub mod routine_files;
pub mod spoken;
