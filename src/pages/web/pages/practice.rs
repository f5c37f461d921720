//! One practice whole: what happened, in words.

use maud::{Markup, html};

use super::results::{PracticeRow, practices};
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

/// One practice.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct PracticeView {
    pub id: i64,
    pub title: String,
    /// "Tuesday 24 November 2026, 19:00".
    pub when: String,
    pub about: Vec<String>,
    /// By part: heading and facts.
    pub parts: Vec<(String, Vec<FactRow>)>,
    pub sounds: Vec<String>,
    /// The newest practices, for beside it.
    pub others: Vec<PracticeRow>,
}

/// The page.
#[must_use]
pub fn practice(texts: Texts<'_>, view: &PracticeView) -> Markup {
    html! {
        p class="up" { a class="big" href="/history" { (texts.s("page-practice-back")) } }
        div class="beside at-detail" {
            div class="list" { (practices(&view.others, Some(view.id))) }
            div class="detail" { (told(texts, view, true)) }
        }
    }
}

/// What happened. `whole`: it is what the page is about, and not beside a list.
pub(super) fn told(texts: Texts<'_>, view: &PracticeView, whole: bool) -> Markup {
    html! {
        @if whole { h1 { (view.title) } } @else { h2 { (view.title) } }
        @for line in &view.about { p { (line) } }
        @if !view.sounds.is_empty() {
            (heading(&texts.s("page-practice-sounds"), whole))
            ul { @for sound in &view.sounds { li { (sound) } } }
        }
        @for (title, facts) in &view.parts {
            (heading(title, whole))
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

fn heading(text: &str, whole: bool) -> Markup {
    html! { @if whole { h2 { (text) } } @else { h3 { (text) } } }
}
