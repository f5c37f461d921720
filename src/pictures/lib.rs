//! Our own line drawings of what the body does: every exercise of the catalogue, the postures, and the parts of getting up.
//!
//! One style: a calm older person, thick lines that can be seen from two metres, no text, an arrow for the movement. Lines take the
//! colour of the text around them (`currentColor`), and what the picture is about has the class `accent`, which a page may colour.
//! What is seen is told in words by the message `picture-NAME-shown`; a drawing without them is for those who see alone.
//!
//! Start at `drawings/`; `pen.rs` is what all of them are drawn with.

mod bodies;
mod drawings;
mod heads;
mod pen;

use maud::{Markup, html};

/// One drawing.
#[derive(Debug, Clone, Copy)]
pub struct Picture {
    /// "neck-turns"; a phase of an exercise has its name behind it, "neck-turns-left".
    pub name: &'static str,
    draw: fn() -> Markup,
}

/// The field of all drawings.
pub const VIEW_BOX: &str = "0 0 100 100";

/// All drawings.
pub fn all() -> impl Iterator<Item = Picture> {
    drawings::ALL.iter().flat_map(|group| group.iter()).map(|(name, draw)| Picture { name, draw: *draw })
}

/// The drawing of this name.
#[must_use]
pub fn find(name: &str) -> Option<Picture> {
    all().find(|picture| picture.name == name)
}

/// The drawing of a phase of an exercise, or of the exercise where the phase has none of its own.
#[must_use]
pub fn of_phase(exercise: &str, phase: &str) -> Option<Picture> {
    find(&format!("{exercise}-{phase}")).or_else(|| find(exercise))
}

impl Picture {
    /// The key of the message that says what is seen.
    #[must_use]
    pub fn described(&self) -> String {
        format!("picture-{}-shown", self.name)
    }

    /// The drawing without its frame, to stand in an `svg` or a `symbol` of [`VIEW_BOX`].
    #[must_use]
    pub fn lines(&self) -> Markup {
        html! {
            g fill="none" stroke="currentColor" stroke-width=(pen::LINE) stroke-linecap="round" stroke-linejoin="round" { ((self.draw)()) }
        }
    }

    /// The drawing as a text of its own.
    #[must_use]
    pub fn svg(&self) -> String {
        let drawn = html! { svg xmlns="http://www.w3.org/2000/svg" viewBox=(VIEW_BOX) width="100" height="100" { (self.lines()) } };
        drawn.into_string()
    }
}

#[cfg(test)]
mod tests;
