//! What can go wrong with the clinic database, each with its remedy.

use handover::HandoverError;

/// Why the clinic database cannot be used, or a file is not taken in. `place` is a file, or an address without its password.
#[derive(Debug, thiserror::Error)]
#[non_exhaustive]
pub enum ClinicError {
    /// What stands behind `--clinic` cannot be understood. The text holds no part of it, as a password may be among them.
    #[error(
        "the address of the clinic database cannot be used: {cause}. Name a file, or an address like postgres://USER@HOST/DATABASE, with --clinic or TIDECOUNT_CLINIC"
    )]
    Address { cause: String },
    /// The address is of a server, and this build was made without.
    #[error(
        "the address of the clinic database is a PostgreSQL server's, and this build has no PostgreSQL. Name a file with --clinic or TIDECOUNT_CLINIC, or use a build with the feature postgres"
    )]
    NoPostgres,
    /// A database of something else. It was left as it is.
    #[error(
        "{place} is not a clinic database of tidecount ({cause}). It has been left as it is: name another with --clinic or TIDECOUNT_CLINIC"
    )]
    Foreign { place: String, cause: String },
    /// Damaged. It was left as it is.
    #[error(
        "{place} is damaged ({cause}). It has been left as it is: put back a copy from `tidecount clinic backup`, or set it aside and import the results files anew"
    )]
    Damaged { place: String, cause: String },
    /// A newer version wrote it. It was left as it is.
    #[error(
        "{place} was written by a newer tidecount (form {found}; this one knows up to {known}). It has been left as it is: use the newer version at this desk, too"
    )]
    Newer { place: String, found: i64, known: i64 },
    /// It is encrypted, and the key cannot be had. It was left as it is.
    #[error("{place}: {cause}. It has been left as it is")]
    Passphrase { place: String, cause: String },
    /// There is none yet, and only looking was asked for.
    #[error(
        "there is no clinic database at {place} yet: `tidecount clinic import FILE` makes one, or name another with --clinic or TIDECOUNT_CLINIC"
    )]
    Absent { place: String },
    /// Another program holds it.
    #[error("{place} is in use by another program and was not let go in time; what was under way has been undone. Try again")]
    Busy { place: String },
    /// No room, or not writable.
    #[error(
        "{place} cannot be written: {cause}. What was under way has been undone, nothing is lost: make room or make it writable, then import the same files again"
    )]
    Unwritable { place: String, cause: String },
    /// A copy was not written.
    #[error("no copy was written to {path}: {cause}. Name another file, or make room")]
    NoCopy { path: String, cause: String },
    /// The server cannot be reached, or the connection broke.
    #[error(
        "{place} cannot be reached: {cause}. What was under way has been undone, nothing is lost: see that the server runs and the address is right, then try again"
    )]
    Lost { place: String, cause: String },
    /// Two desks got in each other's way; tried again before this is shown.
    #[error("{place}: another desk changed the same client at the same time ({cause}). Try again")]
    Conflict { place: String, cause: String },
    /// The database refused for another reason.
    #[error("{place} could not be read or written: {cause}")]
    Refused { place: String, cause: String },
    /// What stands in the database cannot be understood.
    #[error("{place} holds something that cannot be read: {cause}. Put back a copy, or import the results files into a new database")]
    Unreadable { place: String, cause: String },
    /// A results file does not fit what came before, or names somebody else.
    #[error("{0}. Nothing of the file was added")]
    NotTaken(String),
    /// No such client, or several of that name.
    #[error("{0}")]
    Client(String),
    /// The seal, the key or the form of a file.
    #[error(transparent)]
    Handover(#[from] HandoverError),
}

impl ClinicError {
    /// An address that cannot be understood.
    pub(super) fn address(cause: &str) -> Self {
        Self::Address { cause: cause.to_owned() }
    }
}
