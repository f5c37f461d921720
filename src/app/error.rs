//! What a command ends with when it cannot do its work: words for a person, and an exit code.

use crate::audio::AudioError;
use crate::hear::commands::CommandEarError;
use crate::record::RecordError;
use crate::rehearse::RehearseError;
use crate::routine::Faults;
use crate::speak::{SpeakError, WordsError};

/// Why a command stopped. Every kind's text says what is wrong and what to do.
#[derive(Debug, thiserror::Error, miette::Diagnostic)]
pub enum AppError {
    #[error(transparent)]
    #[diagnostic(transparent)]
    Routine(#[from] Faults),
    #[error(transparent)]
    Audio(#[from] AudioError),
    #[error(transparent)]
    Commands(#[from] CommandEarError),
    #[error(transparent)]
    Record(#[from] RecordError),
    #[error(transparent)]
    Rehearse(#[from] RehearseError),
    #[error(transparent)]
    Speak(#[from] SpeakError),
    #[error(transparent)]
    Words(#[from] WordsError),
    #[error("{0}")]
    Usage(String),
}
