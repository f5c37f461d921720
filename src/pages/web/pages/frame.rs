//! The frame of a set-up page: the three places, the pages of the place that it belongs to, and the page that says what went wrong.

use maud::{Markup, html};

use super::texts::Texts;
use crate::web::layout::{NavItem, PageFrame, page};

/// Where everything stands that these pages are for.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum PlaceName {
    /// What is done today: who practises, what is planned, what stands in the way.
    Today,
    /// What was done, and what came of it.
    Results,
    /// What is set up, in the order in which it is.
    SetUp,
}

impl PlaceName {
    pub const ALL: [Self; 3] = [Self::Today, Self::Results, Self::SetUp];

    /// Where it is, and the key of its name.
    #[must_use]
    pub fn entry(self) -> (&'static str, &'static str) {
        match self {
            Self::Today => ("/today", "page-nav-today"),
            Self::Results => ("/results", "page-nav-results"),
            Self::SetUp => ("/setup", "page-nav-setup"),
        }
    }

    /// Its pages, its first one first: path and key of the name.
    #[must_use]
    pub fn pages(self) -> &'static [(&'static str, &'static str)] {
        match self {
            Self::Today => &[("/today", "page-nav-today")],
            Self::Results => {
                &[("/results", "page-nav-glance"), ("/progress", "page-nav-progress"), ("/history", "page-nav-history"), CASELOAD]
            }
            Self::SetUp => &[
                ("/setup", "page-nav-in-order"),
                ("/microphone", "page-nav-microphone"),
                ("/calibration", "page-nav-calibration"),
                ("/routines", "page-nav-routines"),
                ("/cautions", "page-nav-cautions"),
                ("/own-voice", "page-nav-enrolment"),
                ("/sound", "page-nav-sound"),
            ],
        }
    }

    /// The place that a page belongs to.
    #[must_use]
    pub fn of(here: &str) -> Self {
        Self::ALL.into_iter().find(|place| place.pages().iter().any(|(path, _)| *path == here)).unwrap_or(Self::Today)
    }
}

/// The page of a clinic, where there is one.
pub const CASELOAD: (&str, &str) = ("/caseload", "page-nav-caseload");

/// A whole set-up page. `here` is the path of the entry that it belongs to; `clinic`: there is a clinic database.
#[must_use]
pub fn framed(texts: Texts<'_>, clinic: bool, here: &str, title: &str, main: &Markup) -> Markup {
    let place = PlaceName::of(here);
    let frame = PageFrame {
        title,
        language: &texts.s("language-tag"),
        direction: &texts.s("language-direction"),
        skip: &texts.s("page-skip"),
        nav_label: &texts.s("page-nav-label"),
        nav: &places(texts),
        here: place.entry().0,
        beside: beside(texts, place, clinic, here),
        scripts: &["pages.js"],
        kind: "setup",
    };
    page(&frame, main)
}

/// The three places.
#[must_use]
pub fn places(texts: Texts<'_>) -> Vec<NavItem> {
    PlaceName::ALL.map(PlaceName::entry).into_iter().map(|(path, key)| NavItem { path, label: texts.s(key) }).collect()
}

/// The pages of the place, for a wide window; in a narrow one, where they would push the content away, one way back.
fn beside(texts: Texts<'_>, place: PlaceName, clinic: bool, here: &str) -> Option<Markup> {
    let pages: Vec<_> = place.pages().iter().filter(|page| **page != CASELOAD || clinic).collect();
    let (own, key) = place.entry();
    (pages.len() > 1).then(|| {
        html! {
            nav class="within" aria-label=(texts.s(key)) {
                ul {
                    @for (path, label) in pages {
                        li { a href=(path) aria-current=[(*path == here).then_some("page")] { (texts.s(label)) } }
                    }
                }
            }
            @if here != own { p class="back" { a href=(own) { (texts.s(key)) } } }
        }
    })
}

/// A page that says what went wrong and what to do.
#[must_use]
pub fn trouble(texts: Texts<'_>, what: &str) -> Markup {
    html! {
        h1 { (texts.s("page-trouble-title")) }
        p class="lead" { (what) }
        p { a class="big" href="/today" { (texts.s("page-back-to-today")) } }
    }
}

/// The page while a practice is under way.
#[must_use]
pub fn practising(texts: Texts<'_>) -> Markup {
    html! {
        h1 { (texts.s("page-practising-title")) }
        p class="lead" { (texts.s("page-practising")) }
        div class="row" { a class="button" href="/" { (texts.s("page-practising-look")) } }
    }
}
