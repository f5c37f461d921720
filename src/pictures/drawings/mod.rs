//! The drawings, in the groups of the catalogue. A new exercise gets its picture here and its words in `pictures.ftl`.

mod breathing_and_speech;
mod face_and_tongue;
mod head_and_neck;
mod postures;
mod swallow;
mod voice;

use maud::Markup;

/// A name and how it is drawn.
pub type Drawing = (&'static str, fn() -> Markup);

/// All groups.
pub const ALL: [&[Drawing]; 6] =
    [voice::ALL, swallow::ALL, head_and_neck::ALL, face_and_tongue::ALL, breathing_and_speech::ALL, postures::ALL];
