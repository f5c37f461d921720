//! Results of many clients in one clinic database: who needs attention, and why.
//!
//! Sealed files of results come in ([`facts`] reads them, purely), are kept by one set of statements over two engines
//! ([`Engine`]: SQLite for one desk, PostgreSQL where desks share), and are summed up for each client in the transaction that
//! brings them ([`digest`], [`adherence`], [`change`], pure). The caseload is made from these sums alone ([`attention`], pure):
//! no view goes through trials.
//!
//! A client is known by the reply keys of the packages that were made for them, never by name. Nothing here diagnoses.

mod address;
mod adherence;
mod attention;
mod change;
mod digest;
mod engine;
mod error;
mod facts;
mod keep;
mod keys;
mod look;
mod receive;
mod schema;
mod server;
mod sqlite;
mod store;
mod value;
mod view;
mod words;

pub use address::{Address, FILE_NAME as CLINIC_FILE, VARIABLE as CLINIC_VARIABLE};
pub use adherence::{Band, Share};
pub use attention::{Attention, Reason, ReasonKind, Standing, attention, caseload};
pub use change::{Change, Verdict};
pub use digest::{Digest, Microphone, REVIEW_WEEKS};
pub use engine::Engine;
pub use error::ClinicError;
pub use facts::{ArrivingSession, Event, EventKind, SessionError, Trial, arriving};
pub use keys::{Adopted, DeskPackage};
pub use receive::{Arrived, Arriving};
pub use store::Clinic;
pub use value::{Row, Value};
pub use view::{ClientSheet, DayRow, MeasureRow, SeenEvent, SessionRow};
pub use words::{reason_text, safety_text};
