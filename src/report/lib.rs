//! Pages for people: what a routine asks for, as text and as PDF; what came of it, for the clinician and for the client.
//!
//! `handout` gathers what stands on the handout (pure), `text` sets it for a terminal. `sheet` gathers what stands in a report,
//! `chart` and `calendar` draw (SVG), `html` makes a page of it. `figures` holds the
//! line drawings. The words come from the caller, who has the catalogue of words.

mod calendar;
mod chart;
mod circles;
mod drawing;
mod error;
mod figures;
mod handout;
mod html;
mod scale;
pub mod sheet;
mod text;

pub use error::ReportError;
pub use figures::{Figure, figure_of};
pub use handout::{Handout, Item, Say, handout};
pub use html::to_html;
pub use text::to_text;
