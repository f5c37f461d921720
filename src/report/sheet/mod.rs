//! What stands on the pages of a report: every word and figure, and the drawings; how it is set is not known here. Pure.
//!
//! `terms` puts dates, figures and names into words; `front` is the clinician's first page with its `panels` (drawings with
//! their key figures) and `events` (left out, stops, notes, changes of the programme); `tables` and `conditions` the second;
//! `client` the client's own; `chart_text` what is pasted into a chart. `goals` and `dose` (minutes, repetitions, help) stand on several.

mod abbreviations;
mod about;
mod baselines;
mod breaks;
mod chart_text;
mod client;
mod conditions;
mod dose;
mod events;
mod front;
mod goals;
mod letter;
mod moments;
mod panels;
mod ratings;
mod table;
mod tables;
mod terms;

use serde::Serialize;

use super::error::ReportError;
use super::handout::{Say, page_of};
use progress::Picture;
use terms::Terms;

pub use abbreviations::unit_lines;
pub use about::About;
pub use chart_text::ChartText;
pub use client::ClientPage;
pub use front::{Column, Front};
pub use goals::{Goals, goal_lines};
pub use letter::{Letter, Part, Section, carer, letter};
pub use panels::{KeyFigure, Panel};
pub use table::Table;
pub use tables::Tables;

/// The whole report.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Sheet {
    /// "en".
    pub language: String,
    /// "ltr" or "rtl".
    pub direction: String,
    /// What the document is called, in a reader's title bar.
    pub document: String,
    /// "Page {page} of {pages}", for who sets the pages to fill in.
    pub page_of: String,
    pub front: Front,
    pub tables: Tables,
    pub client: ClientPage,
    /// To paste into a chart.
    pub chart: ChartText,
}

/// Gathers everything that stands in the report.
///
/// # Errors
/// A drawing cannot be made.
pub fn sheet(picture: &Picture, about: &About<'_>, say: Say<'_>) -> Result<Sheet, ReportError> {
    let terms = Terms::new(say);
    let span = terms.span(picture.window.from, picture.window.to);
    Ok(Sheet {
        language: terms.plain("language-tag"),
        direction: terms.plain("language-direction"),
        document: terms.text("report-document-shown", &[("client", terms.name(&picture.client)), ("span", span.into())]),
        page_of: page_of(say),
        front: front::front(picture, about, &terms)?,
        tables: tables::tables(picture, &terms),
        client: client::page(picture, &terms)?,
        chart: chart_text::chart_text(picture, about, say),
    })
}
