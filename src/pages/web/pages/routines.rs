//! The list of routine files.

use maud::{Markup, html};

use super::form::{FaultTold, Field, error_summary, field, notice};
use super::texts::Texts;
use crate::web::address::encoded;

/// One file.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct RoutineRow {
    pub file: String,
    /// Its title; where the file has faults, its name.
    pub title: String,
    /// It cannot be practised as it is.
    pub faulty: bool,
    /// "7 exercises, about 12 minutes"; or how many faults it has.
    pub about: String,
    /// Who practises it.
    pub who: Vec<String>,
}

/// The page.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct RoutinesView {
    pub folder: String,
    pub rows: Vec<RoutineRow>,
    pub notice: Option<String>,
    pub faults: Vec<(Option<String>, FaultTold)>,
    /// The form for a new one.
    pub new: Vec<Field>,
    pub to: String,
}

/// The page.
#[must_use]
pub fn routines(texts: Texts<'_>, view: &RoutinesView) -> Markup {
    html! {
        h1 { (texts.s("page-nav-routines")) }
        (error_summary(texts, &view.faults))
        (notice(view.notice.as_deref()))
        p class="lead" { (texts.s("page-routines-lead")) }
        @if view.rows.is_empty() { p { (texts.s("page-routines-none")) } }
        (cards(texts, &view.rows, None))
        section aria-labelledby="new" {
            h2 id="new" { (texts.s("page-routines-new")) }
            form method="post" action=(view.to) novalidate {
                @for one in &view.new { (field(one)) }
                button type="submit" name="do" value="new" { (texts.s("page-routines-begin")) }
            }
        }
        p class="hint" { (texts.text("page-routines-folder", "folder", &view.folder)) }
    }
}

/// Routines, each a link; the one that is looked at is marked.
pub(super) fn cards(texts: Texts<'_>, rows: &[RoutineRow], looked_at: Option<&str>) -> Markup {
    let namesakes = |row: &RoutineRow| rows.iter().filter(|other| other.title == row.title).count() > 1;
    html! {
        ul class="cards" {
            @for row in rows {
                li class=[row.faulty.then_some("wrong")] {
                    h2 {
                        a href={ "/routines/view?file=" (encoded(&row.file)) } aria-current=[(looked_at == Some(&row.file)).then_some("true")] { (row.title) }
                    }
                    p { (row.about) }
                    // The file's name only where the title does not say which one it is.
                    @if namesakes(row) { p class="hint" { (row.file) } }
                    @if !row.who.is_empty() { p { (texts.text("page-routines-who", "names", &row.who.join(", "))) } }
                }
            }
        }
    }
}
