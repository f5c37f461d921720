//! One practice whole: what happened, in words.

use maud::{Markup, html};

use super::texts::Texts;

/// One fact in words.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct FactRow {
    /// Time since the begin of its part, "4:05".
    pub at: String,
    /// "Long ah, 2 of 3".
    pub place: String,
    pub told: String,
    /// Conditions of a figure, why a trial does not count: smaller, below.
    pub more: Vec<String>,
    /// A stop, a trouble: shown with a mark and a word, not by colour alone.
    pub mark: Option<String>,
    /// Where it can be heard: an address of our own.
    pub sound: Option<String>,
}

/// The page.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct PracticeView {
    pub title: String,
    pub about: Vec<String>,
    /// By part: heading and facts.
    pub parts: Vec<(String, Vec<FactRow>)>,
    pub sounds: Vec<String>,
}

/// The page.
#[must_use]
pub fn practice(texts: Texts<'_>, view: &PracticeView) -> Markup {
    html! {
        p { a href="/history" { (texts.s("page-practice-back")) } }
        h1 { (view.title) }
        @for line in &view.about { p class="lead" { (line) } }
        @if !view.sounds.is_empty() {
            h2 { (texts.s("page-practice-sounds")) }
            ul { @for sound in &view.sounds { li { (sound) } } }
        }
        @for (heading, facts) in &view.parts {
            h2 { (heading) }
            ol class="facts" {
                @for fact in facts {
                    li class=[fact.mark.is_some().then_some("marked")] {
                        span class="at" { (fact.at) }
                        div {
                            @if let Some(mark) = &fact.mark { p class="mark" { (mark) } }
                            p { @if !fact.place.is_empty() { strong { (fact.place) ": " } } (fact.told) }
                            @if let Some(sound) = &fact.sound { audio controls preload="none" src=(sound) aria-label=(fact.told) {} }
                            @for more in &fact.more { p class="hint" { (more) } }
                        }
                    }
                }
            }
        }
    }
}
