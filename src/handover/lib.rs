//! What goes from the clinician to the home computer and back: one file each way, signed and checked.
//!
//! Pure: texts and bytes in, texts and bytes out. Files, questions and the record are the affair of `app::hand`.
//! The seal proves who made a file and that it is whole. It keeps nothing secret.

mod error;
mod keys;
mod names;
mod package;
mod results;
mod seal;
mod settings;

pub use error::HandoverError;
pub use keys::{Fingerprint, PublicKey, SecretKey, hex};
pub use names::{client_name, file_name};
pub use package::{AgreedExercise, MAX_TEXT_FILES, Package, TextFile};
pub use results::{HandedPart, HandedSession, Results};
pub use seal::{Kind, MAX_SEALED_BYTES, Opened, open, seal};
pub use settings::{Household, Settings};
