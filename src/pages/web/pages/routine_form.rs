//! A routine as a form over its file, and as the file's own text.

use maud::{Markup, html};

use super::form::{Action, FaultTold, Field, Group, action, buttons, error_summary, field, group, notice, told};
use super::texts::Texts;

/// A published dose that a step can take.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct DoseOffer {
    /// The dose as its source has it, with the source.
    pub told: String,
    /// What is taken of it; or why it cannot be taken.
    pub taken_as: String,
    /// None: it cannot be taken.
    pub take: Option<Action>,
}

/// One step of the form.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct StepForm {
    /// Counted from 0, as in the names of its fields.
    pub index: usize,
    /// "2. Long ah".
    pub heading: String,
    pub purpose: String,
    /// Not for these people, and what to look out for; whole sentences.
    pub not_for: Vec<String>,
    pub cautions: Vec<String>,
    pub fields: Vec<Field>,
    /// Phases, questions, stages: each with its own fields.
    pub groups: Vec<(String, Vec<Group>)>,
    /// Why each limit is what it is.
    pub whys: Vec<String>,
    pub doses: Vec<DoseOffer>,
    /// Where sources disagree.
    pub disagreements: Vec<String>,
    /// What else can be done with it: add a phase, a question, a stage.
    pub more: Vec<Action>,
    /// Earlier, later, take out.
    pub moves: Vec<Action>,
    /// What is wrong with the step as a whole.
    pub faults: Vec<FaultTold>,
}

/// The whole form.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct RoutineForm {
    pub file: String,
    /// What the routine is called.
    pub title: String,
    /// Where the form is sent, with its number that is good once.
    pub to: String,
    /// Hash of the file that the form began from; empty for a new one.
    pub base: String,
    /// The file's text as it would be written now.
    pub draft: String,
    pub is_new: bool,
    pub notice: Option<String>,
    /// All faults, each with the id of its field where there is one.
    pub faults: Vec<(Option<String>, FaultTold)>,
    pub top: Vec<Field>,
    pub plan: Vec<Group>,
    pub patience: Vec<Field>,
    pub steps: Vec<StepForm>,
    /// The exercise that would be added.
    pub add: Option<Field>,
}

/// The form.
#[must_use]
pub fn routine_form(texts: Texts<'_>, form: &RoutineForm) -> Markup {
    let to = form.to.as_str();
    html! {
        p class="up" { a class="big" href="/routines" { (texts.s("page-routine-back")) } }
        h1 { (texts.text(if form.is_new { "page-routine-new-title" } else { "page-routine-edit-title" }, "title", &form.title)) }
        (error_summary(texts, &form.faults))
        (notice(form.notice.as_deref()))
        p class="lead" { (texts.s("page-routine-edit-lead")) }
        form method="post" action=(to) novalidate {
            input type="hidden" name="file" value=(form.file);
            input type="hidden" name="base" value=(form.base);
            input type="hidden" name="draft" value=(form.draft);
            (save_row(texts, to))
            section aria-labelledby="general" {
                h2 id="general" { (texts.s("page-routine-general")) }
                div class="fields" { @for one in &form.top { (field(one)) } }
            }
            section aria-labelledby="plan" {
                h2 id="plan" tabindex="-1" { (texts.s("page-routine-plan")) }
                p class="hint" { (texts.s("page-routine-plan-hint")) }
                @for row in &form.plan { (group(row, to)) }
                (action(&Action::new("add-plan", texts.s("page-routine-plan-add")).then_at("plan"), to, "plain"))
            }
            details {
                summary { (texts.s("page-routine-patience")) }
                div class="fields" { @for one in &form.patience { (field(one)) } }
            }
            h2 id="steps" tabindex="-1" { (texts.s("page-routine-steps")) }
            @if form.steps.is_empty() { p { (texts.s("page-routine-no-steps")) } }
            @for step in &form.steps { (step_form(texts, step, to)) }
            @if let Some(add) = &form.add {
                section class="add" aria-labelledby="adding" {
                    h2 id="adding" { (texts.s("page-routine-adding")) }
                    (field(add))
                    (action(&Action::new("add-step", texts.s("page-routine-add-step")).then_at(format!("step-{}", form.steps.len())), to, "plain"))
                }
            }
            (save_row(texts, to))
            button type="submit" name="do" value="text" class="plain" { (texts.s("page-routine-as-text")) }
        }
    }
}

fn save_row(texts: Texts<'_>, to: &str) -> Markup {
    html! {
        div class="row save" {
            (action(&Action::new("save", texts.s("page-routine-save")), to, ""))
            (action(&Action::new("check", texts.s("page-routine-check")), to, "plain"))
        }
    }
}

fn step_form(texts: Texts<'_>, step: &StepForm, to: &str) -> Markup {
    let id = format!("step-{}", step.index);
    html! {
        section class=(if step.faults.is_empty() { "step" } else { "step wrong" }) aria-labelledby=(id) {
            // Tells that the step was on the form, so that a box without its tick is one.
            input type="hidden" name={ (id) "-here" } value="1";
            h3 id=(id) tabindex="-1" { (step.heading) }
            @if !step.purpose.is_empty() { p { (step.purpose) } }
            @if !step.faults.is_empty() {
                div class="fault" id={ (id) "-fault" } tabindex="-1" { (told(&step.faults)) }
            }
            (care(texts, &step.not_for, &step.cautions))
            div class="fields" { @for one in &step.fields { (field(one)) } }
            @for (heading, groups) in &step.groups {
                @if !groups.is_empty() {
                    h4 { (heading) }
                    @for one in groups { (group(one, to)) }
                }
            }
            (buttons(&step.more, to, "plain"))
            @if !step.doses.is_empty() {
                details {
                    summary { (texts.s("page-routine-doses")) }
                    ul class="doses" {
                        @for dose in &step.doses {
                            li {
                                p { (dose.told) }
                                @if !dose.taken_as.is_empty() { p class="hint" { (dose.taken_as) } }
                                @if let Some(take) = &dose.take { (action(take, to, "plain")) }
                            }
                        }
                    }
                    @if !step.disagreements.is_empty() {
                        h4 { (texts.s("page-routine-disagree")) }
                        @for one in &step.disagreements { p { (one) } }
                    }
                }
            }
            @if !step.whys.is_empty() {
                details {
                    summary { (texts.s("page-routine-whys")) }
                    ul { @for why in &step.whys { li { (why) } } }
                }
            }
            (buttons(&step.moves, to, "plain"))
        }
    }
}

/// Who must not do an exercise, and what to look out for.
pub(super) fn care(texts: Texts<'_>, not_for: &[String], cautions: &[String]) -> Markup {
    html! {
        @if !not_for.is_empty() {
            div class="care" {
                p { strong { (texts.s("page-not-for")) } }
                ul { @for one in not_for { li { (one) } } }
            }
        }
        @if !cautions.is_empty() {
            div class="care" {
                p { strong { (texts.s("page-cautions")) } }
                ul { @for one in cautions { li { (one) } } }
            }
        }
    }
}

/// The file's own text, to be changed by hand.
#[must_use]
pub fn routine_text(texts: Texts<'_>, form: &RoutineForm, text: &Field) -> Markup {
    html! {
        p class="up" { a class="big" href="/routines" { (texts.s("page-routine-back")) } }
        h1 { (texts.text("page-routine-text-title", "title", &form.title)) }
        (error_summary(texts, &form.faults))
        (notice(form.notice.as_deref()))
        p class="lead" { (texts.s("page-routine-text-lead")) }
        form method="post" action=(form.to) novalidate class="text" {
            input type="hidden" name="file" value=(form.file);
            input type="hidden" name="base" value=(form.base);
            (field(text))
            div class="row save" {
                (action(&Action::new("save-text", texts.s("page-routine-save")), &form.to, ""))
                (action(&Action::new("check-text", texts.s("page-routine-check")), &form.to, "plain"))
                (action(&Action::new("form", texts.s("page-routine-as-form")), &form.to, "plain"))
            }
        }
    }
}
