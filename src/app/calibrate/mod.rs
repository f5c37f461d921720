//! `tidecount calibrate`: levels in dB SPL from a meter or a known source, and where they are kept.

pub mod command;
pub(in crate::app) mod procedure;
pub mod store;
