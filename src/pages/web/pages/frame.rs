//! The frame of a set-up page: the list of pages beside it, and the page that says what went wrong.

use maud::{Markup, html};

use super::texts::Texts;
use crate::web::layout::{NavItem, PageFrame, page};

/// The set-up pages in the order in which a household is set up: path and key of the name.
pub const NAV: [(&str, &str); 9] = [
    ("/setup", "page-nav-start"),
    ("/microphone", "page-nav-microphone"),
    ("/calibration", "page-nav-calibration"),
    ("/routines", "page-nav-routines"),
    ("/cautions", "page-nav-cautions"),
    ("/own-voice", "page-nav-enrolment"),
    ("/history", "page-nav-history"),
    ("/progress", "page-nav-progress"),
    ("/sound", "page-nav-sound"),
];

/// The page of a clinic, where there is one.
pub const CASELOAD_NAV: (&str, &str) = ("/caseload", "page-nav-caseload");

/// A whole set-up page among those of `nav`. `here` is the path of the entry in the list of pages that it belongs to.
#[must_use]
pub fn framed(texts: Texts<'_>, nav: &[NavItem], here: &str, title: &str, main: &Markup) -> Markup {
    let frame = PageFrame {
        title,
        language: &texts.s("language-tag"),
        direction: &texts.s("language-direction"),
        skip: &texts.s("page-skip"),
        nav_label: &texts.s("page-nav-label"),
        nav,
        here,
        scripts: &["pages.js"],
        kind: "setup",
    };
    page(&frame, main)
}

/// A page that says what went wrong and what to do.
#[must_use]
pub fn trouble(texts: Texts<'_>, what: &str) -> Markup {
    html! {
        h1 { (texts.s("page-trouble-title")) }
        p class="lead" { (what) }
        p { a href="/setup" { (texts.s("page-back-to-start")) } }
    }
}
