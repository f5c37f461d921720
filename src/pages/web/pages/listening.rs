//! What is shown while the microphone is listened to: what to do now, how long still, and a bar of the level. A script moves it;
//! without one the page tells how it stands each time that it is looked at.

use maud::{Markup, html};

use super::form::{Action, action};
use super::texts::Texts;

/// The bar reaches from here to full scale, dB.
const FROM_DB: f64 = -80.0;

/// How listening stands.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Listening {
    /// What is being done.
    pub title: String,
    /// What the person is to do now.
    pub told: String,
    /// A large word or figure: seconds left, the word to say.
    pub figure: String,
    /// Level now and of the room, dB(A) re full scale.
    pub level_db: Option<f64>,
    pub room_db: Option<f64>,
    /// What can be said now.
    pub can_say: Vec<String>,
    /// Where the page is that shows it, and where its button is sent.
    pub here: String,
    pub to: String,
}

fn share(db: Option<f64>) -> f64 {
    db.filter(|db| db.is_finite()).map_or(0.0, |db| ((db - FROM_DB) / -FROM_DB * 100.0).clamp(0.0, 100.0))
}

/// The page.
#[must_use]
pub fn listening(texts: Texts<'_>, view: &Listening) -> Markup {
    let (level, room) = (share(view.level_db), share(view.room_db));
    html! {
        h1 { (view.title) }
        div class="listening" data-listening=(view.here) {
            p class="told" id="now-told" role="status" aria-live="polite" { (view.told) }
            p class="figure" id="now-figure" aria-hidden="true" { (view.figure) }
            svg class="level" viewBox="0 0 100 12" preserveAspectRatio="none" role="img" aria-label=(texts.s("page-level-label")) {
                rect class="trough" x="0" y="0" width="100" height="12" {}
                rect class="bar" id="now-level" x="0" y="0" width=(format!("{level:.1}")) height="12" {}
                rect class="mark" id="now-room" x=(format!("{room:.1}")) y="0" width="0.6" height="12" {}
            }
            p class="hint" { (texts.s("page-level-hint")) }
            p id="now-say" class="say" { @if !view.can_say.is_empty() { (texts.text("page-can-say", "words", &view.can_say.join(" · "))) } }
        }
        div class="row" {
            a class="button plain" href=(view.here) id="look" { (texts.s("page-look-again")) }
            form method="post" action=(view.to) { (action(&Action::new("stop", texts.s("page-break-off")), &view.to, "plain")) }
        }
    }
}
