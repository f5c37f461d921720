//! Why a file is refused, each reason with its remedy.

use super::keys::Fingerprint;
use super::kind::{Kind, MAX_SEALED_BYTES};

/// Why a file from the other side, or what was to go into one, is refused. The text says what is wrong and what to do.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
#[non_exhaustive]
pub enum HandoverError {
    #[error("the file is empty: copy it again from where it came")]
    Empty,
    #[error("this is no {0} of tidecount, or its beginning is damaged: name the {ending} file, or copy it again from where it came", ending = .0.ending())]
    NotSealed(Kind),
    #[error("this is a {found}, not a {wanted}: use `tidecount hand {verb}` for it", verb = .found.verb())]
    OtherKind { found: Kind, wanted: Kind },
    #[error("the file was made by a newer tidecount (form {found}; this one knows up to {known}): use the newer version here too")]
    Newer { found: u32, known: u32 },
    #[error("the file is larger than {} MB and was not read: check that it is the right one; hand back fewer practices at once with --since DATE", MAX_SEALED_BYTES / 1_000_000)]
    TooLarge,
    /// The signature does not fit.
    #[error(
        "the file is damaged or was changed: its seal does not fit what is in it. Copy it again from where it came, or ask for it to be sent again"
    )]
    Damaged,
    /// Whole and signed, but not what such a file holds.
    #[error("the file is whole, but its content cannot be used: {0}. Ask whoever made it to make it again")]
    Content(String),
    #[error("the name {shown:?} cannot be used: {why}. {remedy}")]
    Name { shown: String, why: &'static str, remedy: &'static str },
    #[error(
        "the package is foreign: it was sealed with the key {found}, but this client's packages come with the key {known}. \
         Nothing was taken. Ask the clinician to read out `tidecount hand key`; if it is {found} now, take the package with --change-clinician --accept {dashed}",
        dashed = .found.dashed()
    )]
    ForeignPackage { known: Fingerprint, found: Fingerprint },
    #[error("the key was not confirmed, so nothing was taken: compare {found} with what the clinician reads out from `tidecount hand key`, then type yes, or give --accept {dashed}", dashed = .found.dashed())]
    NotAccepted { found: Fingerprint },
    #[error(
        "the fingerprint given with --accept is not that of the package, which is {found}: nothing was taken. Ask the clinician to read it out again"
    )]
    AcceptedOther { found: Fingerprint },
    #[error(
        "the package was made {found}, before the one that is in force (made {known}): nothing was taken. Ask for the newest, or take this one all the same with --older"
    )]
    Older { found: String, known: String },
    #[error(
        "the results are foreign: they were not sealed with the reply key of a package made here. Read them on the computer that made the client's package; results from elsewhere cannot be taken in"
    )]
    ForeignResults,
}
