//! Pages for people: what a routine asks for, as text and as PDF.
//!
//! `handout` gathers what stands on the page (pure), `text` and `pdf` set it, `tags` tells a screen reader what
//! is what, `figures` holds the line drawings. The words
//! come from the caller, who has the catalogue of words.

mod figures;
mod fonts;
mod handout;
mod layout;
mod pdf;
mod tags;
mod text;

pub use figures::{Figure, figure_of};
pub use handout::{Handout, Item, Say, handout};
pub use pdf::{ReportError, to_pdf};
pub use text::to_text;
