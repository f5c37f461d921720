//! What goes from the clinician to the home computer and back: one file each way, signed and checked. Pure: texts and bytes in, texts and
//! bytes out. It opens no file, asks no question and draws no random number; the commands do. The seal proves who made a file and that it
//! is whole. It keeps nothing secret. Start at `seal.rs`, then `package.rs` (to the home) and `results.rs` (back).

mod error;
mod goal;
mod keys;
mod kind;
mod names;
mod package;
mod results;
mod seal;
mod settings;

pub use error::HandoverError;
pub use goal::{HandedAim, HandedGoal, HandedMark};
pub use keys::{Fingerprint, PublicKey, SecretKey, hex};
pub use kind::{Kind, MAX_SEALED_BYTES};
pub use names::{client_name, file_name};
pub use package::{AgreedExercise, MAX_TEXT_FILES, Package, TextFile};
pub use results::{HandedPart, HandedSession, Results};
pub use seal::{Opened, open, seal};
pub use settings::{Household, Settings};
