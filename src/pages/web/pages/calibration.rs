//! What levels mean: a sound of known level, and what was kept of it.

use maud::{Markup, html};

use super::form::{Action, FaultTold, Field, action, error_summary, field, notice};
use super::texts::Texts;

/// One calibration that is kept.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct KeptCalibration {
    pub device: String,
    /// Sentences on how it was made.
    pub told: Vec<String>,
    /// Why it holds no longer.
    pub void: Option<String>,
    pub to: String,
}

/// How far it is.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum CalibrationStage {
    /// The form before listening.
    Ask,
    /// It has listened; the number that was read is missing.
    Number { heard: String },
    /// Kept: its line and its warnings.
    Kept { line: String, warnings: Vec<String> },
}

/// The page.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct CalibrationView {
    pub stage: CalibrationStage,
    pub notice: Option<String>,
    pub faults: Vec<(Option<String>, FaultTold)>,
    pub fields: Vec<Field>,
    pub steps: Vec<String>,
    pub kept: Vec<KeptCalibration>,
    pub to: String,
}

/// The page.
#[must_use]
pub fn calibration(texts: Texts<'_>, view: &CalibrationView) -> Markup {
    html! {
        h1 { (texts.s("page-nav-calibration")) }
        (error_summary(texts, &view.faults))
        (notice(view.notice.as_deref()))
        p class="lead" { (texts.s("page-calibration-lead")) }
        @match &view.stage {
            CalibrationStage::Kept { line, warnings } => {
                section class="verdict works" role="status" tabindex="-1" autofocus {
                    h2 { (texts.s("page-calibration-done")) }
                    p { (line) }
                    @if !warnings.is_empty() { ul { @for warning in warnings { li { (warning) } } } }
                }
            }
            CalibrationStage::Number { heard } => { p class="notice" role="status" { (heard) } }
            CalibrationStage::Ask => {}
        }
        (kept(texts, &view.kept))
        h2 { (texts.s("page-calibration-new")) }
        form method="post" action=(view.to) novalidate {
            @if !view.steps.is_empty() { ol { @for step in &view.steps { li { (step) } } } }
            @for one in &view.fields { (field(one)) }
            @match view.stage {
                CalibrationStage::Number { .. } => {
                    div class="row" {
                        (action(&Action::new("keep", texts.s("page-calibration-keep")), &view.to, ""))
                        (action(&Action::new("drop", texts.s("page-calibration-drop")), &view.to, "plain"))
                    }
                }
                _ => { (action(&Action::new("listen", texts.s("page-calibration-listen")), &view.to, "")) }
            }
        }
    }
}

fn kept(texts: Texts<'_>, all: &[KeptCalibration]) -> Markup {
    html! {
        h2 { (texts.s("page-calibration-kept")) }
        @if all.is_empty() { p { (texts.s("page-calibration-none")) } }
        @for one in all {
            section class=(if one.void.is_some() { "card wrong" } else { "card" }) {
                h3 { (one.device) }
                @for sentence in &one.told { p { (sentence) } }
                @if let Some(why) = &one.void { p { strong { (texts.text("page-calibration-void", "why", why)) } } }
                form method="post" action=(one.to) {
                    input type="hidden" name="device" value=(one.device);
                    (action(&Action::new("forget", texts.s("page-calibration-forget")).of(one.device.clone()), &one.to, "plain"))
                }
            }
        }
    }
}
