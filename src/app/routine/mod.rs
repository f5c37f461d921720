//! `tidecount routine …`, `exercises`, `pack`: routines are checked, shown, made from templates; how doses grow.

pub mod ask;
pub mod command;
pub mod new;
pub(in crate::app) mod new_dose;
pub(in crate::app) mod new_plan;
pub(in crate::app) mod new_words;
pub mod pack;
pub mod ramps;
pub mod show;
pub mod templates;
