//! Asking and telling on the terminal, for every command that does.

use std::process::ExitCode;

use files::error::{Failure, delivered};

pub mod ask;
pub mod desk;
pub mod ending;

/// Looks up a message of the catalogue of words by its key.
pub type Lookup<'a> = &'a dyn Fn(&str) -> Option<String>;

/// The exit code of a command that wrote its result, where `true` means that all is well.
///
/// # Errors
/// The output cannot be written.
pub fn told(outcome: std::io::Result<bool>) -> Result<ExitCode, Failure> {
    // Whoever stopped reading (`| head`) is told nothing more, and all is well.
    let all_well = *outcome.as_ref().unwrap_or(&true);
    delivered(outcome.map(drop))?;
    Ok(if all_well { ExitCode::SUCCESS } else { ExitCode::FAILURE })
}
