//! Today: what can be practised, by whom, what is planned, and what stands in the way.

use maud::{Markup, html};

use super::form::notice;
use super::texts::Texts;
use crate::web::address::encoded;

/// A routine that somebody can practise today.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Startable {
    /// Its title; where the file has faults, its name.
    pub title: String,
    pub client: String,
    /// As it stands in the household file.
    pub file: String,
    /// It is a file of the folder of routines and can be looked at.
    pub linked: bool,
    /// "4 exercises, about 12 minutes"; or how many faults it has.
    pub about: String,
    /// When it is planned, a sentence.
    pub when: String,
    /// What was done of it today, sentences.
    pub done: Vec<String>,
    /// Planned for today, and not done yet.
    pub due: bool,
    /// It has faults and cannot be practised.
    pub faulty: bool,
}

/// Something that keeps a practice from going well.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Hindrance {
    /// Where it is mended.
    pub path: String,
    pub label: String,
    pub told: String,
}

/// The page.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct TodayView {
    /// "Monday 30 November 2026".
    pub day: String,
    pub notice: Option<String>,
    /// What persons of the household practise, the planned ones first.
    pub own: Vec<Startable>,
    /// Routines that nobody was chosen for.
    pub others: Vec<Startable>,
    pub hindrances: Vec<Hindrance>,
    /// How many of the clinic's clients need attention, where there is a clinic.
    pub caseload: Option<String>,
    /// Where a start is sent; none where nothing can be started here.
    pub to: Option<String>,
    /// How a practice begins besides.
    pub how: String,
}

/// The page.
#[must_use]
pub fn today(texts: Texts<'_>, view: &TodayView) -> Markup {
    html! {
        h1 { (texts.s("page-nav-today")) }
        p class="lead" { (view.day) }
        (notice(view.notice.as_deref()))
        @if let Some(told) = &view.caseload { p class="line" { a class="big" href="/caseload" { (texts.s("page-nav-caseload")) } " " (told) } }
        div class="two" {
            div {
                @if view.own.is_empty() && view.others.is_empty() {
                    p { (texts.s("page-today-no-routine")) }
                    div class="row" { a class="button" href="/routines" { (texts.s("page-today-write")) } }
                }
                @if !view.own.is_empty() { ul class="cards today" { @for one in &view.own { (startable(texts, view, one, "h2")) } } }
                @if !view.others.is_empty() {
                    h2 { (texts.s("page-today-others")) }
                    ul class="cards today" { @for one in &view.others { (startable(texts, view, one, "h3")) } }
                }
                p class="hint" { (view.how) }
            }
            section aria-labelledby="hindrances" {
                h2 id="hindrances" { (texts.s("page-today-hindrances")) }
                @if view.hindrances.is_empty() { p { (texts.s("page-today-no-hindrance")) } } @else {
                    ul class="hindrances" {
                        @for one in &view.hindrances { li { a class="big" href=(one.path) { (one.label) } p { (one.told) } } }
                    }
                }
            }
        }
    }
}

fn startable(texts: Texts<'_>, view: &TodayView, one: &Startable, heading: &str) -> Markup {
    let title = html! {
        @if one.linked { a href={ "/routines/view?file=" (encoded(&one.file)) } { (one.title) } } @else { (one.title) }
    };
    html! {
        li class=(if one.faulty { "wrong" } else if one.due { "due" } else { "" }) {
            @if heading == "h2" { h2 { (title) } } @else { h3 { (title) } }
            @if !one.client.is_empty() { p { strong { (texts.text("page-today-for", "name", &one.client)) } } }
            @if !one.when.is_empty() { p class="when" { (one.when) } }
            @for done in &one.done { p class="agreed" { (done) } }
            p class="hint" { (one.about) }
            @if let Some(to) = &view.to {
                @if !one.faulty { (start_button(texts, to, one)) }
            }
        }
    }
}

/// The button that begins a practice.
fn start_button(texts: Texts<'_>, to: &str, one: &Startable) -> Markup {
    start_form(to, &one.client, &one.file, &texts.s("page-start"), &format!("{}, {}", one.title, one.client))
}

/// A form with one button that begins a practice; `of` is said by a screen reader behind the label.
pub(super) fn start_form(to: &str, client: &str, file: &str, label: &str, of: &str) -> Markup {
    html! {
        form method="post" action=(to) {
            input type="hidden" name="client" value=(client);
            input type="hidden" name="file" value=(file);
            button type="submit" name="do" value="start" { (label) @if !of.is_empty() { span class="unseen" { " " (of) } } }
        }
    }
}
