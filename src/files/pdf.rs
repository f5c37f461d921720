//! Pages as PDF files. Typesetting is large, so a program may be built without it (feature `pdf`); then whoever asks is told.

use report::Handout;
use report::sheet::{Letter, Sheet};

/// Why there is no PDF.
#[derive(Debug, thiserror::Error)]
pub enum PdfError {
    #[cfg(feature = "pdf")]
    #[error(transparent)]
    Print(#[from] print::PrintError),
    #[cfg(not(feature = "pdf"))]
    #[error(
        "this copy of tidecount was built without PDF: `cargo build --release` builds one with it. Any browser prints the web page of a report (--format html), and a handout can be read as text"
    )]
    LeftOut,
}

/// Whether PDF files can be made here.
pub const MADE: bool = cfg!(feature = "pdf");

/// The report as a PDF file.
///
/// # Errors
/// PDF was left out of this build, or the page cannot be set.
pub fn report(sheet: &Sheet) -> Result<Vec<u8>, PdfError> {
    #[cfg(feature = "pdf")]
    return Ok(print::report_pdf(sheet)?);
    #[cfg(not(feature = "pdf"))]
    {
        let _ = sheet;
        Err(PdfError::LeftOut)
    }
}

/// The handout as a PDF file.
///
/// # Errors
/// PDF was left out of this build, or the page cannot be set.
pub fn handout(page: &Handout) -> Result<Vec<u8>, PdfError> {
    #[cfg(feature = "pdf")]
    return Ok(print::handout_pdf(page)?);
    #[cfg(not(feature = "pdf"))]
    {
        let _ = page;
        Err(PdfError::LeftOut)
    }
}

/// A letter, or a carer's page, as a PDF file.
///
/// # Errors
/// PDF was left out of this build, or the page cannot be set.
pub fn letter(page: &Letter) -> Result<Vec<u8>, PdfError> {
    #[cfg(feature = "pdf")]
    return Ok(print::letter_pdf(page)?);
    #[cfg(not(feature = "pdf"))]
    {
        let _ = page;
        Err(PdfError::LeftOut)
    }
}
