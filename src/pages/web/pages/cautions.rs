//! Exercises that need a clinician's agreement: who must not do them, what to look out for, and who has agreed.

use maud::{Markup, html};

use super::form::{Action, FaultTold, Field, action, error_summary, field, notice};
use super::picture::picture;
use super::routine_form::care;
use super::texts::Texts;
use crate::web::address::encoded;

/// How an agreement came about.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum AgreedBy {
    /// On this page: a sentence that says who and when.
    Page(String),
    /// Aloud in a practice, or in a clinician's package: a sentence.
    Elsewhere(String),
}

/// One exercise that needs agreement.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct GuardedExercise {
    pub id: String,
    pub name: String,
    pub purpose: String,
    /// The routines that hold it.
    pub routines: String,
    pub not_for: Vec<String>,
    pub cautions: Vec<String>,
    /// None: nobody has agreed.
    pub agreed: Option<AgreedBy>,
    /// The box to be ticked.
    pub agree: Field,
}

/// The page of one client; without a client it asks for one.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct CautionsView {
    pub client: Option<String>,
    /// Clients to choose from: name, and whether something is open.
    pub clients: Vec<(String, String)>,
    pub notice: Option<String>,
    pub faults: Vec<(Option<String>, FaultTold)>,
    pub exercises: Vec<GuardedExercise>,
    /// Who gives the agreement.
    pub by: Option<Field>,
    pub to: String,
}

/// The page.
#[must_use]
pub fn cautions(texts: Texts<'_>, view: &CautionsView) -> Markup {
    html! {
        h1 { (texts.s("page-nav-cautions")) }
        (error_summary(texts, &view.faults))
        (notice(view.notice.as_deref()))
        p class="lead" { (texts.s("page-cautions-lead")) }
        @if view.clients.is_empty() { p { (texts.s("page-cautions-nobody")) } }
        @if !view.clients.is_empty() {
            h2 { (texts.s("page-whose")) }
            ul class="choose" {
                @for (name, told) in &view.clients {
                    li {
                        a href={ "/cautions?client=" (encoded(name)) } aria-current=[(view.client.as_deref() == Some(name)).then_some("true")] { (name) }
                        " " span class="hint" { (told) }
                    }
                }
            }
        }
        @if let Some(client) = &view.client { (of_client(texts, view, client)) }
    }
}

fn of_client(texts: Texts<'_>, view: &CautionsView, client: &str) -> Markup {
    let open = view.exercises.iter().any(|exercise| exercise.agreed.is_none());
    html! {
        @if view.exercises.is_empty() { p { (texts.text("page-cautions-none", "name", client)) } }
        form method="post" action=(view.to) novalidate {
            input type="hidden" name="client" value=(client);
            @for exercise in &view.exercises {
                section class="step" aria-labelledby={ "about-" (exercise.id) } {
                    h2 id={ "about-" (exercise.id) } { (exercise.name) }
                    (picture(texts, &exercise.id))
                    p { (exercise.purpose) }
                    p class="hint" { (exercise.routines) }
                    (care(texts, &exercise.not_for, &exercise.cautions))
                    @match &exercise.agreed {
                        None => { (field(&exercise.agree)) }
                        Some(AgreedBy::Page(told) | AgreedBy::Elsewhere(told)) => {
                            p class="agreed" { strong { (told) } }
                            (action(&Action::new(format!("withdraw.{}", exercise.id), texts.s("page-cautions-withdraw")).of(exercise.name.clone()), &view.to, "plain"))
                        }
                    }
                }
            }
            @if open {
                @if let Some(by) = &view.by { (field(by)) }
                (action(&Action::new("agree", texts.s("page-cautions-keep")), &view.to, ""))
            }
        }
    }
}
