//! Microphone and loudspeaker: choose, try, and a plain verdict.

use maud::{Markup, html};

use super::form::{Action, FaultTold, Field, action, error_summary, field, notice};
use super::texts::Texts;

/// One device to choose.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct DeviceChoice {
    pub name: String,
    pub label: String,
}

/// What the check found, the most important first.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Verdict {
    /// All is well.
    pub works: bool,
    pub headline: String,
    /// What is wrong, each with what to do.
    pub findings: Vec<String>,
    /// Figures for whoever wants them: name and value.
    pub figures: Vec<(String, String)>,
}

/// The page.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct MicrophoneView {
    pub notice: Option<String>,
    pub faults: Vec<(Option<String>, FaultTold)>,
    pub fields: Vec<Field>,
    pub to: String,
    /// A tone and a sentence were played: was it heard?
    pub asks_heard: bool,
    /// What was answered.
    pub heard: Option<String>,
    pub verdict: Option<Verdict>,
}

/// The page.
#[must_use]
pub fn microphone(texts: Texts<'_>, view: &MicrophoneView) -> Markup {
    let button = |value: &str, key: &str, class: &str| action(&Action::new(value, texts.s(key)), &view.to, class);
    html! {
        h1 { (texts.s("page-nav-microphone")) }
        (error_summary(texts, &view.faults))
        (notice(view.notice.as_deref()))
        @if let Some(verdict) = &view.verdict { (verdict_box(texts, verdict)) }
        p class="lead" { (texts.s("page-microphone-lead")) }
        form method="post" action=(view.to) novalidate {
            @for one in &view.fields { (field(one)) }
            section class="try" aria-labelledby="try-speaker" {
                h2 id="try-speaker" { (texts.s("page-speaker-title")) }
                p { (texts.s("page-speaker-lead")) }
                (button("play", "page-speaker-play", "plain"))
                @if view.asks_heard {
                    div class="question" role="group" aria-labelledby="heard" {
                        p id="heard" tabindex="-1" autofocus { strong { (texts.s("page-speaker-heard")) } }
                        div class="row" { (button("heard", "page-yes", "")) (button("unheard", "page-no", "plain")) }
                    }
                }
                @if let Some(heard) = &view.heard { p class="notice" role="status" { (heard) } }
            }
            section class="try" aria-labelledby="try-mic" {
                h2 id="try-mic" { (texts.s("page-listen-title")) }
                p { (texts.s("page-listen-lead")) }
                (button("listen", "page-listen-start", ""))
            }
        }
        p class="hint" { (texts.s("page-microphone-kept")) }
    }
}

fn verdict_box(texts: Texts<'_>, verdict: &Verdict) -> Markup {
    html! {
        section class=(if verdict.works { "verdict works" } else { "verdict trouble" }) role="status" tabindex="-1" autofocus id="verdict" {
            h2 { (verdict.headline) }
            @if !verdict.findings.is_empty() { ul { @for finding in &verdict.findings { li { (finding) } } } }
            details {
                summary { (texts.s("page-figures")) }
                dl { @for (name, value) in &verdict.figures { dt { (name) } dd { (value) } } }
            }
        }
    }
}
