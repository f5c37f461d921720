//! Results at a glance: how each client stands, and the latest practices.

use maud::{Markup, html};

use super::texts::Texts;
use crate::web::address::encoded;

/// One client at a glance.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct ClientResults {
    pub client: String,
    /// What was done in the last weeks, sentences.
    pub told: Vec<String>,
}

/// One practice in a line or two.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct PracticeRow {
    pub id: i64,
    /// "Tuesday 24 November 2026, 19:00".
    pub when: String,
    /// Who, and which routine.
    pub who: String,
    /// How much, how long, how it ended.
    pub about: String,
    /// Longest holds; may be empty.
    pub best: String,
}

/// The page.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct ResultsView {
    /// How many of the clinic's clients need attention, where there is a clinic.
    pub caseload: Option<String>,
    /// "In the last four weeks".
    pub clients: Vec<ClientResults>,
    pub latest: Vec<PracticeRow>,
}

/// The page.
#[must_use]
pub fn results(texts: Texts<'_>, view: &ResultsView) -> Markup {
    html! {
        h1 { (texts.s("page-nav-results")) }
        @if let Some(told) = &view.caseload { p class="line" { a class="big" href="/caseload" { (texts.s("page-nav-caseload")) } " " (told) } }
        @if view.clients.is_empty() { p class="lead" { (texts.s("page-history-none")) } } @else {
            p class="lead" { (texts.s("page-results-lead")) }
            div class="two" {
                div {
                    ul class="cards" {
                        @for one in &view.clients {
                            li {
                                h2 { a href={ "/progress?client=" (encoded(&one.client)) } { (one.client) } }
                                @for sentence in &one.told { p { (sentence) } }
                                p { a class="big" href={ "/history?client=" (encoded(&one.client)) } { (texts.text("page-results-all-of", "name", &one.client)) } }
                            }
                        }
                    }
                }
                section aria-labelledby="latest" {
                    h2 id="latest" { (texts.s("page-results-latest")) }
                    (practices(&view.latest, None))
                }
            }
        }
    }
}

/// Practices, each a link; the one that is looked at is marked.
pub(super) fn practices(rows: &[PracticeRow], looked_at: Option<i64>) -> Markup {
    html! {
        ul class="practices" {
            @for row in rows {
                li {
                    a class="big" href={ "/history/practice?id=" (row.id) } aria-current=[(looked_at == Some(row.id)).then_some("true")] { (row.when) }
                    p { (row.who) }
                    p class="hint" { (row.about) }
                    @if !row.best.is_empty() { p class="hint" { (row.best) } }
                }
            }
        }
    }
}
