//! The live page itself. What changes on it is put there by `assets/live.js`.

use maud::{Markup, html};

use super::super::layout::{NavItem, PageFrame, page};

/// All words of the page that do not come with the state.
#[derive(Debug, Clone, Default)]
pub struct LiveWords {
    /// BCP 47.
    pub language: String,
    /// "ltr" or "rtl".
    pub direction: String,
    pub title: String,
    /// The words on the buttons of *stop* and *pause*.
    pub stop: String,
    pub pause: String,
    pub always: String,
    pub exercise: String,
    pub captions: String,
    pub log: String,
    pub you_can_say: String,
    pub more: String,
    pub less: String,
    pub everything: String,
    pub settings: String,
    pub keys: String,
    pub keys_help: String,
    pub aloud: String,
    pub messages: String,
    pub done: String,
    pub connecting: String,
    pub ended: String,
    pub anew: String,
    pub refused: String,
    pub no_script: String,
    pub other_pages: String,
    /// The other pages, shown when no practice is under way.
    pub nav: Vec<NavItem>,
}

/// Drawings of our own, in a field of 24 by 24.
fn icon(name: &str, path: &str) -> Markup {
    html! {
        svg class={ "icon " (name) } viewBox="0 0 24 24" aria-hidden="true" focusable="false" { path d=(path) {} }
    }
}

/// Every picture, to be taken from by its name.
fn all_pictures() -> Markup {
    html! {
        svg hidden aria-hidden="true" {
            @for picture in pictures::all() { symbol id={ "picture-" (picture.name) } viewBox=(pictures::VIEW_BOX) { (picture.lines()) } }
        }
    }
}

pub(super) fn live_page(words: &LiveWords) -> Markup {
    let frame = PageFrame {
        title: &words.title,
        language: &words.language,
        direction: &words.direction,
        skip: "",
        nav_label: "",
        nav: &[],
        here: "/",
        beside: None,
        scripts: &["live-link.js", "live-draw.js", "live.js"],
        kind: "live",
    };
    page(
        &frame,
        &html! {
            noscript { p class="notice" { (words.no_script) } }
            div class="top" data-region="top" {
                div id="always" class="always" role="group" aria-label=(words.always) data-region="always" {
                    button id="stop" class="quiet" type="button" data-command="stop" aria-keyshortcuts="Escape" {
                        (icon("octagon", "M8 2h8l6 6v8l-6 6H8l-6-6V8z")) span { (words.stop) }
                    }
                    button id="pause" class="quiet" type="button" data-command="pause" {
                        (icon("two-bars", "M6 3h4v18H6zM14 3h4v18h-4z")) span { (words.pause) }
                    }
                }
                div class="title" data-region="heading" {
                    h1 id="heading" data-title=(words.title) { (words.title) }
                    p id="part" {}
                }
                p id="doing" data-region="doing" hidden {}
            }
            section class="stage" aria-label=(words.exercise) data-region="stage" {
                div class="told" {
                    p id="sentence" data-region="sentence" hidden {}
                    p id="prompt" data-region="prompt" {}
                    p id="aside" data-region="aside" {}
                }
                div class="work" {
                    div id="picture" class="picture" role="img" aria-label=" " hidden {
                        svg data-region="picture" viewBox=(pictures::VIEW_BOX) aria-hidden="true" focusable="false" { use id="drawn" {} }
                    }
                    div class="measured" {
                        div class="count" data-region="figure" {
                            p id="figure" {}
                            p id="of" {}
                            div id="beat" aria-hidden="true" { span {} span {} }
                            div id="line" aria-hidden="true" { div id="line-done" {} }
                        }
                        div id="gauge" class="gauge" data-region="bar" hidden {
                            div id="track" role="meter" aria-label=" " aria-valuemin="0" aria-valuemax="100" aria-valuenow="0" {
                                div id="fill" class="moves" {}
                                div id="bead" class="moves" {}
                                div id="reached" class="mark" {}
                                div id="base" class="mark" {}
                                div id="goal" class="mark" {}
                            }
                            div class="beside" {
                                p id="gauge-label" {}
                                p id="gauge-words" {}
                                p id="goal-legend" class="legend" { span class="sign goal" aria-hidden="true" {} span id="goal-label" {} }
                                p id="base-legend" class="legend" { span class="sign base" aria-hidden="true" {} span id="base-label" {} }
                            }
                        }
                    }
                }
                div id="summary" data-region="summary" hidden {
                    h2 class="unseen" { (words.done) }
                    ul id="done" {}
                }
            }
            section class="captions" aria-label=(words.captions) data-region="captions" {
                p id="mood" data-region="mood" {
                    (icon("speaking", "M3 9v6h4l6 5V4L7 9zM16 8a6 6 0 0 1 0 8M18.5 5a10 10 0 0 1 0 14"))
                    (icon("listening", "M7 9a5 5 0 1 1 9.6 2c-.8 2-2.600 2.500-2.600 5a3 3 0 0 1-5.500 1.600M10 9.500a2.200 2.200 0 0 1 4.300-.4"))
                    (icon("holding", "M2 12c2-6 4-6 6 0s4 6 6 0 4-6 8 0"))
                    (icon("still", "M7 5h3v14H7zM14 5h3v14h-3z"))
                    span {}
                }
                div id="rows" {
                    p id="row-1" {}
                    p id="row-2" {}
                }
            }
            section class="say" aria-label=(words.you_can_say) data-region="say" {
                div id="now" tabindex="-1" {
                    h2 { (words.you_can_say) }
                }
                button id="more" class="quiet" type="button" aria-expanded="false" aria-controls="everything" data-more=(words.more) data-less=(words.less) { (words.more) }
            }
            section id="everything" aria-label=(words.settings) hidden {
                div id="all" tabindex="-1" { h2 { (words.everything) } }
                h2 { (words.settings) }
                label class="choice" { input id="keys" type="checkbox" aria-describedby="keys-help"; span { (words.keys) } }
                p id="keys-help" { (words.keys_help) }
                label class="choice" { input id="aloud" type="checkbox" checked; span { (words.aloud) } }
                div id="messages" hidden {
                    h2 { (words.messages) }
                    ul id="notes" {}
                }
            }
            @if !words.nav.is_empty() {
                nav id="others" class="others" aria-label=(words.other_pages) hidden {
                    ul { @for item in &words.nav { li { a href=(item.path) { (item.label) } } } }
                }
            }
            (all_pictures())
            div id="log" class="unseen" role="log" aria-live="polite" aria-label=(words.log) {}
            p id="link" role="status" data-connecting=(words.connecting) data-ended=(words.ended) data-anew=(words.anew) data-refused=(words.refused) {}
        },
    )
}
