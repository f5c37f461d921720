//! What leaves the record in open standards: CSV with its data dictionary, JSON Lines, HL7 FHIR R4, iCalendar, Praat TextGrid.
//!
//! Pure: from what is kept to text. `app/export_*` reads the record and writes the files.

mod calendar;
mod columns;
mod dictionary;
pub mod fhir;
mod ids;
mod lines;
mod outline;
mod practice;
mod rows;
mod steps;
mod table;
mod textgrid;
mod trial;

#[cfg(test)]
#[path = "tests/samples.rs"]
mod samples;
#[cfg(test)]
#[path = "tests/tables.rs"]
mod table_tests;

pub use calendar::{Planned, Settings as CalendarSettings, calendar};
pub use columns::TABLES;
pub use dictionary::{DICTIONARY, as_csvw, as_table};
pub use ids::uuid;
pub use lines::{lines_schema, write_practice};
pub use outline::Outline;
pub use practice::{INTERRUPTED, Moment, Practice, iso};
pub use rows::{event_row, practice_row, step_row, trial_row};
pub use steps::{StepOutcome, StepStatus};
pub use table::{BETWEEN, Column, Holds, Row, Table, Writer, harmless};
pub use textgrid::{Sound, TextGrid, parts_of, text_grid};
pub use trial::{Level, Mic, Trial, TrialKind, calibration_name, discard_name};
