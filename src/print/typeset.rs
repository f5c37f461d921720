//! Sets pages with typst: our templates, our typeface, the data handed over as values.
//!
//! Names, notes and titles never become part of a template's text, so nothing in them can be markup. PDF/UA-1 (ISO 14289-1) is
//! demanded: a page that is not tagged whole, or a drawing without its description, is an error here and not at the reader's.

use serde::Serialize;
use typst::foundations::Smart;
use typst_as_lib::TypstEngine;
use typst_pdf::{PdfOptions, PdfStandard, PdfStandards};

use crate::printable::printable;

/// Why a page cannot be set. Everything but the data is built in, so it is not the user's fault.
#[derive(Debug, thiserror::Error)]
#[error("the page cannot be set: {0}")]
pub struct PrintError(String);

/// The pages that there are.
#[derive(Debug, Clone, Copy)]
pub(super) enum Template {
    Handout,
    Letter,
    Report,
}

const COMMON: &str = include_str!("templates/common.typ");
const HANDOUT: &str = include_str!("templates/handout.typ");
const LETTER: &str = include_str!("templates/letter.typ");
const REPORT: &str = include_str!("templates/report.typ");

/// A PDF of `data`, which the template reads as `data.json`. The same data give the same bytes: nothing of the day or the
/// computer goes into them.
///
/// # Errors
/// The template refuses the data.
pub(super) fn to_pdf(template: Template, data: &impl Serialize) -> Result<Vec<u8>, PrintError> {
    let mut data = serde_json::to_value(data).map_err(|why| PrintError(why.to_string()))?;
    printable(&mut data);
    let data = data.to_string();
    let main = match template {
        Template::Handout => HANDOUT,
        Template::Letter => LETTER,
        Template::Report => REPORT,
    };
    let engine = TypstEngine::builder()
        .main_file(main)
        .with_static_source_file_resolver([("common.typ", COMMON)])
        .with_static_file_resolver([("data.json", data.as_bytes())])
        .fonts([typeface::REGULAR, typeface::BOLD])
        .build();
    let document = engine.compile().output.map_err(|why| PrintError(why.to_string()))?;
    let standards = PdfStandards::new(&[PdfStandard::Ua_1]).map_err(|why| PrintError(why.message().to_string()))?;
    // No identity of its own: typst makes it of title and content.
    let options = PdfOptions { creator: Smart::Custom(Some("tidecount".to_owned())), standards, ..PdfOptions::default() };
    typst_pdf::pdf(&document, &options)
        .map_err(|faults| PrintError(faults.iter().map(|fault| fault.message.to_string()).collect::<Vec<_>>().join("; ")))
}
