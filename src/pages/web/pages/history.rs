//! The list of practices, a page at a time.

use maud::{Markup, html};

use super::practice::{PracticeView, told};
use super::results::{PracticeRow, practices};
use super::texts::Texts;
use crate::web::address::encoded;

/// The page.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct HistoryView {
    /// Clients to choose from; empty where there is only one.
    pub clients: Vec<String>,
    pub client: Option<String>,
    pub rows: Vec<PracticeRow>,
    /// The newest of them whole, for beside the list.
    pub newest: Option<PracticeView>,
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
            div class="beside at-list" {
                div class="list" {
                    p { (view.range) }
                    (practices(&view.rows, None))
                    nav class="row" aria-label=(texts.s("page-history-pages")) {
                        @if let Some(newer) = &view.newer { a class="button plain" href=(newer) rel="prev" { (texts.s("page-history-newer")) } }
                        @if let Some(older) = &view.older { a class="button plain" href=(older) rel="next" { (texts.s("page-history-older")) } }
                    }
                }
                @if let Some(newest) = &view.newest { div class="detail" { (told(texts, newest, false)) } }
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
