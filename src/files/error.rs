//! Why a command stopped, in kinds that say what the reader can do about it.

use std::fmt::Display;
use std::io::IsTerminal;
use std::path::{Path, PathBuf};

use crate::pdf::PdfError;
use crate::routine_files::write_faults;
use audio::AudioError;
use clinic::ClinicError;
use command_ear::CommandEarError;
use handover::HandoverError;
use record::RecordError;
use rehearse::RehearseError;
use routine::Faults;
use speak::{SpeakError, WordsError};

/// Why a command stopped. Every text says what is wrong and what to do; the kinds below part them by what the reader can do.
/// Errors of the rooms below pass through as they are: each of them says it itself.
#[derive(Debug, thiserror::Error)]
pub enum Failure {
    /// The routine has faults. Mend each at its line.
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
    #[error(transparent)]
    Clinic(#[from] ClinicError),
    #[error(transparent)]
    Handover(#[from] HandoverError),
    #[error(transparent)]
    Pdf(#[from] PdfError),

    /// The options or arguments do not fit each other, or not what is here. Give others.
    #[error("{0}")]
    Options(String),
    /// A file or folder cannot be read, understood or written. Mend it, or name another.
    #[error("{}: {why}", path.display())]
    File { path: PathBuf, why: String },
    /// What stands in several files, or in the record, cannot be used; the text names each place. Mend them there.
    #[error("{0}")]
    Contents(String),
    /// Something has to be there first: a record, a package, a model. Make it, install it, or say where it is.
    #[error("{0}")]
    Missing(String),
    /// It did not work this time: a microphone unplugged, no room for threads. Put that right and try again as before.
    #[error("{0}")]
    Again(String),
    /// The person said no or broke off. Nothing was changed, and nothing needs mending.
    #[error("{0}")]
    Declined(String),
    /// The result could not be delivered. Make room, or send it elsewhere.
    #[error("{0}")]
    Output(String),
    /// A fault in the program. Report it; other options do not help.
    #[error("{0}")]
    Fault(String),
}

impl Failure {
    /// A file or folder, and why it cannot be used.
    pub fn file(path: impl AsRef<Path>, why: impl Display) -> Self {
        Self::File { path: path.as_ref().to_owned(), why: why.to_string() }
    }

    /// Writes it to standard error: faults of a routine each with its line, anything else in one sentence.
    pub fn report(&self) {
        let mut to = std::io::stderr();
        let written = match self {
            Self::Routine(faults) => write_faults(faults, to.is_terminal(), &mut to),
            other => std::io::Write::write_fmt(&mut to, format_args!("tidecount: {}\n", model::visible(&other.to_string()))),
        };
        // Where even that cannot be written, the exit code alone remains.
        drop(written);
    }
}

/// Tells whoever is at the terminal. Where that is closed, or nobody reads any more, it is left unsaid: a practice does not break on it.
pub fn tell(text: &str) {
    let _ = std::io::Write::write_fmt(&mut std::io::stderr(), format_args!("{text}\n"));
}

/// How writing a result to standard output went. A reader that went away (`| head`) is no failure.
///
/// # Errors
/// The result could not be written.
pub fn delivered(written: std::io::Result<()>) -> Result<(), Failure> {
    match written {
        Err(why) if why.kind() != std::io::ErrorKind::BrokenPipe => Err(Failure::Output(format!("the output cannot be written: {why}"))),
        _ => Ok(()),
    }
}
