//! Set-up: what is done and what is still to do, in order.

use maud::{Markup, html};

use super::texts::Texts;

/// How one part of the set-up stands.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Standing {
    Done,
    Missing,
    /// Good to have, and nothing is missing without it.
    Optional,
    /// Done once, and to be looked at again.
    Again,
}

impl Standing {
    fn key(self) -> &'static str {
        match self {
            Self::Done => "page-standing-done",
            Self::Missing => "page-standing-missing",
            Self::Optional => "page-standing-optional",
            Self::Again => "page-standing-again",
        }
    }

    fn class(self) -> &'static str {
        match self {
            Self::Done => "done",
            Self::Missing => "missing",
            Self::Optional => "optional",
            Self::Again => "again",
        }
    }
}

/// One part of the set-up.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct StartItem {
    pub path: String,
    pub label: String,
    /// What is known of it, a sentence.
    pub told: String,
    pub standing: Standing,
}

/// The page.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct StartView {
    pub items: Vec<StartItem>,
    /// What can be done when all is ready, sentences.
    pub then: Vec<String>,
}

/// The page.
#[must_use]
pub fn start(texts: Texts<'_>, view: &StartView) -> Markup {
    html! {
        h1 { (texts.s("page-nav-setup")) }
        p class="lead" { (texts.s("page-start-lead")) }
        ol class="setup" {
            @for item in &view.items {
                li class=(item.standing.class()) {
                    p class="standing" { (texts.s(item.standing.key())) }
                    h2 { a href=(item.path) { (item.label) } }
                    p { (item.told) }
                }
            }
        }
        @for sentence in &view.then { p class="hint" { (sentence) } }
    }
}
