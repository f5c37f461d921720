//! Whether sound is kept: off unless the client turned it on, here and aloud.

use maud::{Markup, html};

use super::form::{Action, FaultTold, Field, Kind, action, error_summary, field, notice};
use super::texts::Texts;

/// One sound that is kept.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct StoredSound {
    pub told: String,
}

/// One client.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct SoundView {
    pub client: Option<String>,
    pub clients: Vec<String>,
    pub notice: Option<String>,
    pub faults: Vec<(Option<String>, FaultTold)>,
    /// How it stands, sentences.
    pub standing: Vec<String>,
    /// It is turned on here.
    pub on: bool,
    pub days: Field,
    pub stored: Vec<StoredSound>,
    pub to: String,
}

/// The page.
#[must_use]
pub fn sound(texts: Texts<'_>, view: &SoundView) -> Markup {
    html! {
        h1 { (texts.s("page-nav-sound")) }
        (error_summary(texts, &view.faults))
        (notice(view.notice.as_deref()))
        p class="lead" { (texts.s("page-sound-lead")) }
        (super::history::whose(texts, "/sound", &view.clients, view.client.as_deref(), false))
        @if let Some(client) = &view.client {
            h2 { (client) }
            @for sentence in &view.standing { p { strong { (sentence) } } }
            form method="post" action=(view.to) novalidate {
                input type="hidden" name="client" value=(client);
                (field(&view.days))
                @if view.on {
                    div class="row" {
                        (action(&Action::new("on", texts.s("page-sound-change")), &view.to, "plain"))
                        (action(&Action::new("off", texts.s("page-sound-off")), &view.to, ""))
                    }
                } @else {
                    (action(&Action::new("on", texts.s("page-sound-on")), &view.to, ""))
                }
            }
            h2 { (texts.s("page-sound-stored")) }
            @if view.stored.is_empty() { p { (texts.s("page-sound-none")) } } @else {
                ul { @for one in &view.stored { li { (one.told) } } }
                form method="post" action=(view.to) novalidate {
                    input type="hidden" name="client" value=(client);
                    (field(&Field::new("sure", texts.s("page-sound-sure"), Kind::Check, "")))
                    (action(&Action::new("delete", texts.s("page-sound-delete")), &view.to, "plain"))
                }
            }
        } @else {
            p { (texts.s("page-sound-nobody")) }
        }
    }
}
