//! Exports: what is in the record, in open standards. Start at `read.rs`, which chooses the practices.

pub mod calendar;
pub mod journals;
pub mod out;
pub mod read;
pub mod tables;
pub mod textgrid;
