//! Sets what [`report`] has gathered as tagged PDF pages, with typst. It words nothing and draws nothing, and only what prints is
//! linked with it. Start at `typeset.rs`.

mod printable;
mod typeset;

use report::Handout;
use report::sheet::{Letter, Sheet};
pub use typeset::PrintError;
use typeset::Template;

/// The report as a PDF file, A4: the clinician's page, tables and conditions, the client's page.
///
/// # Errors
/// Nothing of the data can be at fault; see [`PrintError`].
pub fn report_pdf(sheet: &Sheet) -> Result<Vec<u8>, PrintError> {
    typeset::to_pdf(Template::Report, sheet)
}

/// The handout as a PDF file, A4.
///
/// # Errors
/// A built-in font or drawing is damaged.
pub fn handout_pdf(handout: &Handout) -> Result<Vec<u8>, PrintError> {
    typeset::to_pdf(Template::Handout, handout)
}

/// A letter, or a carer's page, as a PDF file, A4.
///
/// # Errors
/// A built-in font is damaged.
pub fn letter_pdf(letter: &Letter) -> Result<Vec<u8>, PrintError> {
    typeset::to_pdf(Template::Letter, letter)
}
