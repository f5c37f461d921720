//! `tidecount routine …`, `exercises`, `pack`: routines are checked, shown, made from templates; how doses grow.

pub mod ask;
pub mod command;
pub mod new;
pub mod new_dose;
pub mod new_plan;
pub mod pack;
pub mod show;
pub mod templates;
