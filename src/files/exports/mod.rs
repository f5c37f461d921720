//! Exports: what is chosen of the record, and where it is written.

pub mod calendar;
pub mod command;
pub mod out;
pub mod read;
pub mod textgrid;
