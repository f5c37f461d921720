//! What stands on the pages of a report: every word and figure, and the drawings; how it is set is not known here. Pure.
//!
//! `terms` puts dates, figures and names into words; `front` is the clinician's first page with its `panels` (drawings with
//! their key figures) and `events` (left out, stops, notes, changes of the programme); `tables` and `conditions` the second;
//! `client` the client's own.

mod about;
mod breaks;
mod client;
mod conditions;
mod events;
mod front;
mod panels;
mod tables;
mod terms;

use serde::Serialize;

use super::error::ReportError;
use super::handout::{Say, page_of};
use progress::Picture;
use terms::Terms;

pub use about::About;
pub use client::ClientPage;
pub use front::{Column, Front};
pub use panels::{KeyFigure, Panel};
pub use tables::{Table, Tables};

/// The whole report.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Sheet {
    /// "en".
    pub language: String,
    /// What the document is called, in a reader's title bar.
    pub document: String,
    /// "Page {page} of {pages}", for who sets the pages to fill in.
    pub page_of: String,
    pub front: Front,
    pub tables: Tables,
    pub client: ClientPage,
}

/// Gathers everything that stands in the report.
///
/// # Errors
/// A drawing cannot be made.
pub fn sheet(picture: &Picture, about: &About<'_>, say: Say<'_>) -> Result<Sheet, ReportError> {
    let terms = Terms { say };
    let span = terms.span(picture.window.from, picture.window.to);
    Ok(Sheet {
        language: about.language.to_owned(),
        document: terms.text("report-document-shown", &[("client", terms.name(&picture.client)), ("span", span.into())]),
        page_of: page_of(say),
        front: front::front(picture, about, &terms)?,
        tables: tables::tables(picture, &terms),
        client: client::page(picture, &terms)?,
    })
}
