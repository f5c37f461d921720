//! Results of many clients in one clinic database: who needs attention, and why. It never knows a client by name alone, but by the reply
//! keys of the packages that were made for them; no view goes through trials; nothing here diagnoses. Start at `receive.rs`, which takes
//! a file in, and `attention.rs`, which orders the caseload.
//!
//! - `arriving`: a practice of a results file read into `facts`, pure
//! - `keep`, `measured`: into its rows; `typed`, `rows`: rows by name
//! - `found`: all of one client out of its rows; `sums`, `change`, `adherence`: what is worked out of it, pure
//! - `refresh`: the client's `digest`, worked out anew in the transaction that brings results
//! - `attention`: the caseload from these sums alone, pure; `view`: what is shown; `words`: the English of all this
//! - `engine`: what a database must do, with two of them: `sqlite` for one desk, `server` (PostgreSQL, feature `postgres`) where desks share

mod address;
mod adherence;
mod arriving;
mod attention;
mod change;
mod digest;
mod engine;
mod error;
mod facts;
mod found;
mod keep;
mod keys;
mod look;
mod measured;
mod receive;
mod refresh;
mod rows;
mod schema;
#[cfg(feature = "postgres")]
mod server;
#[cfg(feature = "postgres")]
mod server_address;
mod sqlite;
mod store;
mod sums;
mod typed;
mod value;
mod view;
mod words;

#[cfg(test)]
#[path = "tests/stored.rs"]
mod stored;

pub use address::{Address, FILE_NAME as CLINIC_FILE, VARIABLE as CLINIC_VARIABLE};
pub use adherence::{Band, Share};
pub use arriving::{SessionError, arriving};
pub use attention::{Attention, Reason, ReasonKind, Standing, attention, caseload};
pub use change::{Change, Verdict};
pub use digest::{Digest, Microphone, REVIEW_WEEKS, Said};
pub use engine::Engine;
pub use error::ClinicError;
pub use facts::{ArrivingSession, Event, EventKind, Trial};
pub use keys::{Adopted, DeskPackage};
pub use receive::{Arrived, Arriving};
pub use store::Clinic;
pub use value::{Row, Value};
pub use view::{ClientSheet, DayRow, LookRow, MeasureRow, PackageRow, SeenEvent, SessionRow};
pub use words::{reason_text, safety_text};
