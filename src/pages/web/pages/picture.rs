//! A picture of what an exercise asks for, told in words to whoever cannot see it.

use maud::{Markup, html};

use super::texts::Texts;

/// The picture of this name; nothing where there is none.
pub(super) fn picture(texts: Texts<'_>, name: &str) -> Markup {
    html! {
        @if let Some(picture) = pictures::find(name) {
            div class="picture" role="img" aria-label=(texts.s(&picture.described())) {
                svg viewBox=(pictures::VIEW_BOX) aria-hidden="true" focusable="false" { (picture.lines()) }
            }
        }
    }
}
