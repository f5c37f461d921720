//! The caseload of a clinic: who needs attention, and why; and one client's sheet.

use maud::{Markup, html};

use super::form::{Action, FaultTold, Field, action, error_summary, field, notice};
use super::texts::Texts;

/// Why somebody needs attention.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct ReasonTold {
    /// Its kind, a word or two.
    pub kind: String,
    /// What it rests on.
    pub told: String,
}

/// One client in the list.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct CaseRow {
    /// Where the sheet is.
    pub path: String,
    pub name: String,
    /// The desk that makes the client's packages.
    pub desk: String,
    /// The gravest first; empty where there is nothing to tell.
    pub reasons: Vec<ReasonTold>,
    /// As of when, on how much, who looked.
    pub known: String,
}

/// The list.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct CaseloadView {
    /// How many there are, how many need attention, on which day.
    pub lead: String,
    /// Which database this is.
    pub place: String,
    /// Other choices: address, label, chosen.
    pub choices: Vec<(String, String, bool)>,
    pub rows: Vec<CaseRow>,
    /// "1 to 20 of 63".
    pub range: String,
    pub before: Option<String>,
    pub behind: Option<String>,
}

/// A table with its heading; the first cell of a row names it.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct SheetTable {
    pub title: String,
    /// What must be known to read it; may be empty.
    pub hint: String,
    pub columns: Vec<String>,
    pub rows: Vec<Vec<String>>,
}

/// One client.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct SheetView {
    pub row: CaseRow,
    /// Who needs attention, for beside it.
    pub others: Vec<CaseRow>,
    /// The client's number in the database.
    pub number: i64,
    /// What the sheet rests on, sent back with the look.
    pub shown: String,
    pub notice: Option<String>,
    pub faults: Vec<(Option<String>, FaultTold)>,
    /// Where the form goes.
    pub to: String,
    pub note: Field,
    pub tables: Vec<SheetTable>,
}

/// The list of clients.
#[must_use]
pub fn caseload(texts: Texts<'_>, view: &CaseloadView) -> Markup {
    html! {
        h1 { (texts.s("page-nav-caseload")) }
        p class="lead" { (view.lead) }
        nav class="whose" aria-label=(texts.s("page-caseload-choices")) {
            ul class="choose" {
                @for (path, label, chosen) in &view.choices { li { a href=(path) aria-current=[chosen.then_some("true")] { (label) } } }
            }
        }
        @if view.rows.is_empty() { p { (texts.s("page-caseload-nobody")) } } @else {
            p { (view.range) }
            ul class="cases" {
                @for row in &view.rows {
                    li {
                        h2 { a href=(row.path) { (row.name) } " " span class="of" { (texts.text("page-caseload-desk", "desk", &row.desk)) } }
                        (reasons(texts, &row.reasons))
                        p class="hint" { (row.known) }
                    }
                }
            }
            nav class="row" aria-label=(texts.s("page-caseload-pages")) {
                @if let Some(path) = &view.before { a class="button plain" href=(path) rel="prev" { (texts.s("page-caseload-before")) } }
                @if let Some(path) = &view.behind { a class="button plain" href=(path) rel="next" { (texts.s("page-caseload-behind")) } }
            }
        }
        p class="hint" { (texts.s("page-caseload-foot")) }
        p class="hint" { (view.place) }
    }
}

fn reasons(texts: Texts<'_>, reasons: &[ReasonTold]) -> Markup {
    html! {
        @if reasons.is_empty() { p { (texts.s("page-caseload-nothing")) } } @else {
            ul class="reasons" { @for reason in reasons { li { strong { (reason.kind) ": " } (reason.told) } } }
        }
    }
}

/// One client's sheet.
#[must_use]
pub fn sheet(texts: Texts<'_>, view: &SheetView) -> Markup {
    html! {
        p class="up" { a class="big" href="/caseload" { (texts.s("page-caseload-back")) } }
        div class="beside at-detail" {
            div class="list" {
                ul class="practices" {
                    @for row in &view.others {
                        li {
                            a class="big" href=(row.path) aria-current=[(row.path == view.row.path).then_some("true")] { (row.name) }
                            @if !row.reasons.is_empty() { p class="hint" { (kinds(&row.reasons)) } }
                        }
                    }
                }
            }
            div class="detail" { (one_client(texts, view)) }
        }
    }
}

/// "Safety, Adherence".
fn kinds(reasons: &[ReasonTold]) -> String {
    reasons.iter().map(|reason| reason.kind.as_str()).collect::<Vec<_>>().join(", ")
}

fn one_client(texts: Texts<'_>, view: &SheetView) -> Markup {
    html! {
        h1 { (view.row.name) " " span class="of" { (texts.text("page-caseload-desk", "desk", &view.row.desk)) } }
        (error_summary(texts, &view.faults))
        (notice(view.notice.as_deref()))
        p class="lead" { (view.row.known) }
        h2 { (texts.s("page-caseload-why")) }
        (reasons(texts, &view.row.reasons))
        form method="post" action=(view.to) novalidate class="card" {
            input type="hidden" name="number" value=(view.number);
            input type="hidden" name="shown" value=(view.shown);
            (field(&view.note))
            (action(&Action::new("seen", texts.s("page-caseload-seen")), &view.to, ""))
        }
        @for table in &view.tables { (shown(table)) }
        p class="hint" { (texts.s("page-caseload-foot-sheet")) }
    }
}

fn shown(table: &SheetTable) -> Markup {
    html! {
        @if !table.rows.is_empty() {
            h2 { (table.title) }
            @if !table.hint.is_empty() { p class="hint" { (table.hint) } }
            div class="table" tabindex="0" role="region" aria-label=(table.title) {
                table {
                    caption class="unseen" { (table.title) }
                    thead { tr { @for column in &table.columns { th scope="col" { (column) } } } }
                    tbody {
                        @for row in &table.rows {
                            tr { @for (n, cell) in row.iter().enumerate() { @if n == 0 { th scope="row" { (cell) } } @else { td { (cell) } } } }
                        }
                    }
                }
            }
        }
    }
}
