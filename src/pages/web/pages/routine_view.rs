//! One routine to be read: what it asks for, who practises it, and what can be done with it.

use maud::{Markup, html};

use super::form::{FaultTold, Field, error_summary, field, notice};
use super::picture::picture;
use super::routine_form::care;
use super::routines::{RoutineRow, cards};
use super::texts::Texts;
use super::today::start_form;
use crate::web::address::encoded;

/// One step in words.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct StepView {
    /// Whose picture it is: the id of the exercise.
    pub exercise: String,
    pub name: String,
    pub dose: String,
    pub how: String,
    pub not_for: Vec<String>,
    pub cautions: Vec<String>,
    pub phrases: Vec<String>,
}

/// Somebody who may practise it.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Chooser {
    pub name: String,
    pub practises: bool,
    /// Where the form is sent.
    pub to: String,
}

/// The page.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct RoutineView {
    pub file: String,
    pub title: String,
    pub notice: Option<String>,
    /// Whom it is for, when, how long: a line each.
    pub about: Vec<String>,
    pub steps: Vec<StepView>,
    /// Where it cannot be practised as it is.
    pub faults: Vec<(Option<String>, FaultTold)>,
    pub choosers: Vec<Chooser>,
    /// Whom the file names.
    pub client: Option<String>,
    /// Where a start is sent; none where nothing can be started here.
    pub start: Option<String>,
    /// All routines, for beside it.
    pub others: Vec<RoutineRow>,
    /// A new person who practises it, and where that form is sent; none where the household's file cannot be changed here.
    pub new_person: Option<(Field, String)>,
    /// Why nobody can be chosen here.
    pub choose_note: Option<String>,
    /// The file's text.
    pub text: String,
    /// The handout can be had as a PDF file.
    pub offers_pdf: bool,
    /// The file can be looked at and not changed: too large, or not text.
    pub fixed: Option<String>,
}

/// The page.
#[must_use]
pub fn routine_view(texts: Texts<'_>, view: &RoutineView) -> Markup {
    let edit = format!("/routines/edit?file={}", encoded(&view.file));
    let print = format!("/routines/handout.pdf?file={}", encoded(&view.file));
    html! {
        p class="up" { a class="big" href="/routines" { (texts.s("page-routine-back")) } }
        div class="beside at-detail" {
            div class="list" { (cards(texts, &view.others, Some(&view.file))) }
            div class="detail" {
                h1 { (view.title) }
                (notice(view.notice.as_deref()))
                (error_summary(texts, &view.faults))
                @for line in &view.about { p class="lead" { (line) } }
                @if view.faults.is_empty() { (starts(texts, view)) }
                @if let Some(why) = &view.fixed { p { (why) } } @else {
                    div class="row" {
                        a class="button plain" href=(edit) { (texts.s("page-routine-edit")) }
                        @if view.offers_pdf && view.faults.is_empty() { a class="button plain" href=(print) { (texts.s("page-routine-print")) } }
                    }
                }
                @if !view.steps.is_empty() {
                    h2 { (texts.s("page-routine-steps")) }
                    ol class="steps" { @for step in &view.steps { (one_step(texts, step)) } }
                }
                @if view.faults.is_empty() { (choosers(texts, view)) }
                details {
                    summary { (texts.s("page-routine-raw")) }
                    p class="hint" { (view.file) }
                    pre tabindex="0" { code { (view.text) } }
                }
            }
        }
    }
}

fn one_step(texts: Texts<'_>, step: &StepView) -> Markup {
    html! {
        li {
            h3 { (step.name) }
            (picture(texts, &step.exercise))
            p { strong { (step.dose) } }
            @if !step.how.is_empty() { p { (step.how) } }
            @if !step.phrases.is_empty() { ul { @for phrase in &step.phrases { li { (phrase) } } } }
            (care(texts, &step.not_for, &step.cautions))
        }
    }
}

/// A button for everybody who practises it; where nobody was chosen, for the one whom the file names.
fn starts(texts: Texts<'_>, view: &RoutineView) -> Markup {
    let chosen: Vec<&str> = view.choosers.iter().filter(|one| one.practises).map(|one| one.name.as_str()).collect();
    let who = if chosen.is_empty() { vec![view.client.as_deref().unwrap_or("client")] } else { chosen };
    html! {
        @if let Some(to) = &view.start {
            div class="row" { @for name in who { (start_form(to, name, &view.file, &texts.text("page-start-for", "name", name), "")) } }
        }
    }
}

fn choosers(texts: Texts<'_>, view: &RoutineView) -> Markup {
    html! {
        h2 id="who" tabindex="-1" { (texts.s("page-routine-who")) }
        @if let Some(note) = &view.choose_note { p { (note) } }
        @for one in &view.choosers {
            form method="post" action=(one.to) class="line" {
                input type="hidden" name="file" value=(view.file);
                input type="hidden" name="person" value=(one.name);
                p { (texts.text(if one.practises { "page-routine-who-does" } else { "page-routine-who-not" }, "name", &one.name)) }
                @if one.practises {
                    button type="submit" name="do" value="unchoose" class="plain" { (texts.text("page-routine-unchoose", "name", &one.name)) }
                } @else {
                    button type="submit" name="do" value="choose" { (texts.text("page-routine-choose", "name", &one.name)) }
                }
            }
        }
        @if let Some((name, to)) = &view.new_person {
            form method="post" action=(to) novalidate {
                input type="hidden" name="file" value=(view.file);
                (field(name))
                button type="submit" name="do" value="choose" class="plain" { (texts.s("page-routine-choose-new")) }
            }
        }
    }
}
