//! A client's own way of saying the commands: begin, what is kept, forget.

use maud::{Markup, html};

use super::form::{Action, FaultTold, Field, Kind, action, error_summary, field, notice};
use super::texts::Texts;

/// One word that is kept.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct KeptWord {
    pub wording: String,
    pub told: String,
}

/// The page.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct EnrolmentView {
    pub notice: Option<String>,
    pub faults: Vec<(Option<String>, FaultTold)>,
    /// Whose voice, and which devices.
    pub fields: Vec<Field>,
    pub to: String,
    /// By client: name, words, and where forgetting is sent.
    pub kept: Vec<(String, Vec<KeptWord>, String)>,
    /// How the last one went, by word.
    pub learnt: Vec<KeptWord>,
}

/// The page.
#[must_use]
pub fn enrolment(texts: Texts<'_>, view: &EnrolmentView) -> Markup {
    html! {
        h1 { (texts.s("page-nav-enrolment")) }
        (error_summary(texts, &view.faults))
        (notice(view.notice.as_deref()))
        p class="lead" { (texts.s("page-enrolment-lead")) }
        p { (texts.s("page-enrolment-consent")) }
        @if !view.learnt.is_empty() {
            section class="verdict works" {
                h2 { (texts.s("page-enrolment-learnt")) }
                (words(&view.learnt))
            }
        }
        form method="post" action=(view.to) novalidate {
            @for one in &view.fields { (field(one)) }
            (action(&Action::new("begin", texts.s("page-enrolment-begin")), &view.to, ""))
        }
        h2 { (texts.s("page-enrolment-kept")) }
        @if view.kept.is_empty() { p { (texts.s("page-enrolment-none")) } }
        @for (client, kept, to) in &view.kept {
            section class="card" {
                h3 { (client) }
                (words(kept))
                form method="post" action=(to) {
                    input type="hidden" name="client" value=(client);
                    (field(&Field::new("sure", texts.text("page-enrolment-sure", "name", client), Kind::Check, "")))
                    (action(&Action::new("forget", texts.s("page-enrolment-forget")).of(client.clone()), to, "plain"))
                }
            }
        }
    }
}

fn words(all: &[KeptWord]) -> Markup {
    html! { ul class="words" { @for word in all { li { strong { (word.wording) } " – " (word.told) } } } }
}
