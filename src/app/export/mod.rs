//! `tidecount export …`: the record in open standards.

pub(in crate::app) mod calendar;
pub mod command;
pub(in crate::app) mod out;
pub(in crate::app) mod read;
pub(in crate::app) mod textgrid;
