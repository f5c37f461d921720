//! The list of practices, a page at a time.

use maud::{Markup, html};

use super::texts::Texts;
use crate::web::address::encoded;

/// One practice at a glance.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct HistoryRow {
    pub id: i64,
    /// "Tuesday 24 November 2026, 19:00".
    pub when: String,
    pub client: String,
    pub routine: String,
    /// "5 of 6 exercises".
    pub done: String,
    pub minutes: String,
    pub best: String,
    pub ended: String,
}

/// The page.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct HistoryView {
    /// Clients to choose from; empty where there is only one.
    pub clients: Vec<String>,
    pub client: Option<String>,
    pub rows: Vec<HistoryRow>,
    /// "Practices 1 to 20 of 63".
    pub range: String,
    /// Addresses of the pages before and behind this one.
    pub newer: Option<String>,
    pub older: Option<String>,
    pub exports: Vec<(String, String)>,
}

/// The page.
#[must_use]
pub fn history(texts: Texts<'_>, view: &HistoryView) -> Markup {
    html! {
        h1 { (texts.s("page-nav-history")) }
        (whose(texts, "/history", &view.clients, view.client.as_deref(), true))
        @if view.rows.is_empty() {
            p class="lead" { (texts.s("page-history-none")) }
        } @else {
            p { (view.range) }
            div class="table" tabindex="0" role="region" aria-label=(texts.s("page-history-table")) {
                table {
                    caption class="unseen" { (texts.s("page-history-table")) }
                    thead { tr {
                        @for key in ["page-history-when", "page-history-who", "page-history-routine", "page-history-done", "page-history-length", "page-history-best", "page-history-ended"] {
                            th scope="col" { (texts.s(key)) }
                        }
                    } }
                    tbody {
                        @for row in &view.rows {
                            tr {
                                th scope="row" { a class="big" href={ "/history/practice?id=" (row.id) } { (row.when) } }
                                td { (row.client) } td { (row.routine) } td { (row.done) } td { (row.minutes) } td { (row.best) } td { (row.ended) }
                            }
                        }
                    }
                }
            }
            nav class="row" aria-label=(texts.s("page-history-pages")) {
                @if let Some(newer) = &view.newer { a class="button plain" href=(newer) rel="prev" { (texts.s("page-history-newer")) } }
                @if let Some(older) = &view.older { a class="button plain" href=(older) rel="next" { (texts.s("page-history-older")) } }
            }
            @if !view.exports.is_empty() {
                h2 { (texts.s("page-history-exports")) }
                ul { @for (path, label) in &view.exports { li { a class="big" href=(path) { (label) } } } }
            }
        }
    }
}

/// Links to the same page of each client.
pub(super) fn whose(texts: Texts<'_>, path: &str, clients: &[String], chosen: Option<&str>, with_all: bool) -> Markup {
    html! {
        @if !clients.is_empty() {
            nav aria-label=(texts.s("page-whose")) class="whose" {
                ul class="choose" {
                    @if with_all { li { a href=(path) aria-current=[chosen.is_none().then_some("true")] { (texts.s("page-everybody")) } } }
                    @for client in clients {
                        li {
                            a href={ (path) "?client=" (encoded(client)) } aria-current=[(chosen == Some(client)).then_some("true")] { (client) }
                        }
                    }
                }
            }
        }
    }
}
