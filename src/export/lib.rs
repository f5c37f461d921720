//! What leaves the record in open standards: CSV with its data dictionary, JSON Lines, HL7 FHIR R4, iCalendar, Praat TextGrid. Pure: from
//! what is kept to text. It opens no file, reads no clock and asks nothing of anybody; the commands read the record and write the files.
//! Start at [`Practice`], which every format is made from, then `columns.rs` for the tables and `fhir/mod.rs` for FHIR. What is measured
//! is declared in `model`'s `measure.rs` and only placed here.

mod attendance;
mod calendar;
mod columns;
mod dictionary;
pub mod fhir;
mod goal;
mod ids;
mod lines;
mod moment;
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
#[path = "tests/stored.rs"]
mod stored;
#[cfg(test)]
#[path = "tests/tables.rs"]
mod table_tests;

pub use attendance::{ATTENDANCE, ClassHead, attendance_row};
pub use calendar::{Planned, Settings as CalendarSettings, calendar};
pub use columns::TABLES;
pub use dictionary::{DICTIONARY, as_csvw, as_table};
pub use goal::{GOALS, GoalOn, goal_row, write_goal};
pub use ids::uuid;
pub use lines::{lines_schema, write_practice};
pub use model::TrialKind;
pub use moment::{INTERRUPTED, Moment, iso};
pub use outline::Outline;
pub use practice::Practice;
pub use rows::{event_row, practice_row, step_row, trial_row};
pub use steps::{StepOutcome, StepStatus};
pub use table::{BETWEEN, Column, Holds, Row, Table, Writer, harmless};
pub use textgrid::{Sound, TextGrid, parts_of, text_grid};
pub use trial::{Level, Mic, Trial};
