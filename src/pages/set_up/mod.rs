//! The set-up pages with all that is behind them: files, the record, microphone and loudspeaker.
//!
//! What a page shows is worked out here and drawn in `crate::web::pages`. Every answer is made on a thread of its own; sound has
//! one more ([`desk`]).

mod calibration;
mod caseload;
mod cautions;
mod clients;
pub mod desk;
mod draft;
mod draft_word;
mod enrolment;
mod fact_words;
mod fault_places;
mod field_labels;
pub mod fields;
pub mod files;
mod history;
mod household;
pub mod mic_judge;
mod mic_levels;
mod mic_listen;
mod microphone;
mod now;
mod places;
mod progress;
mod reports;
mod results;
mod routes;
mod routine_fields;
mod routines;
pub mod site;
mod sound;
pub mod sound_devices;
mod start;
pub mod starting;
mod step_actions;
mod step_draft;
mod step_fields;
mod step_form;
mod step_groups;
mod today;
mod toml_rows;

pub use routes::{alone, routes};
