//! What a command ends with when it cannot do its work: words for a person, and an exit code.

use std::io::IsTerminal;

use crate::routine_files::write_faults;
use audio::AudioError;
use command_ear::CommandEarError;
use record::RecordError;
use rehearse::RehearseError;
use routine::Faults;
use speak::{SpeakError, WordsError};

/// Why a command stopped. Every kind's text says what is wrong and what to do.
#[derive(Debug, thiserror::Error)]
pub enum AppError {
    #[error(transparent)]
    Routine(#[from] Faults),
    #[error(transparent)]
    Audio(#[from] AudioError),
    #[error(transparent)]
    Commands(#[from] CommandEarError),
    #[error(transparent)]
    Record(#[from] RecordError),
    #[error(transparent)]
    Line(#[from] model::LineError),
    #[error(transparent)]
    Rehearse(#[from] RehearseError),
    #[error(transparent)]
    Speak(#[from] SpeakError),
    #[error(transparent)]
    Words(#[from] WordsError),
    #[error("{0}")]
    Usage(String),
}

impl From<clinic::ClinicError> for AppError {
    fn from(error: clinic::ClinicError) -> Self {
        Self::Usage(error.to_string())
    }
}

impl AppError {
    /// Writes it to standard error: faults of a routine each with its line, anything else in one sentence.
    pub fn report(&self) {
        let mut to = std::io::stderr();
        let written = match self {
            Self::Routine(faults) => write_faults(faults, to.is_terminal(), &mut to),
            other => std::io::Write::write_fmt(&mut to, format_args!("tidecount: {other}\n")),
        };
        // Where even that cannot be written, the exit code alone remains.
        drop(written);
    }
}
