//! The set-up pages: what is known about each goes in, a page comes out. No page here reads a file, a clock or the record.

mod calibration;
mod caseload;
mod cautions;
mod enrolment;
mod form;
mod frame;
mod history;
mod listening;
mod microphone;
mod picture;
mod practice;
mod progress;
mod routine_form;
mod routine_view;
mod routines;
mod sound;
mod start;
mod texts;

pub use calibration::{CalibrationStage, CalibrationView, KeptCalibration, calibration};
pub use caseload::{CaseRow, CaseloadView, ReasonTold, SheetTable, SheetView, caseload, sheet};
pub use cautions::{AgreedBy, CautionsView, GuardedExercise, cautions};
pub use enrolment::{EnrolmentView, KeptWord, enrolment};
pub use form::{Action, Choice, Field, Group, Kind};
pub use frame::{CASELOAD_NAV, NAV, framed, trouble};
pub use history::{HistoryRow, HistoryView, history};
pub use listening::{Listening, listening};
pub use microphone::{DeviceChoice, MicrophoneView, Verdict, microphone};
pub use practice::{FactRow, PracticeView, practice};
pub use progress::{CalendarDay, DayMark, ProgressView, Series, progress};
pub use routine_form::{DoseOffer, RoutineForm, StepForm, routine_form, routine_text};
pub use routine_view::{Chooser, RoutineView, StepView, routine_view};
pub use routines::{RoutineRow, RoutinesView, routines};
pub use sound::{SoundView, StoredSound, sound};
pub use start::{Standing, StartItem, StartView, start};
pub use texts::Texts;
