//! Pages for people: what a routine asks for (the handout), what came of it for the clinician and for the client (the report), and
//! the charts of both and of the progress page. It gathers and draws, and it is pure: it reads no record, clock or file, words
//! nothing itself (the caller has the catalogue of words), and sets no PDF (`print` does). Start at `sheet/mod.rs` for a report, at
//! `handout.rs` for a handout, at `chart/mod.rs` for a chart.

mod calendar;
mod chart;
mod circles;
mod drawing;
mod error;
mod handout;
mod html;
mod number;
pub mod sheet;
mod text;
mod time_axis;

pub use chart::{PageWords, by_scale, is_relative, page_chart};
pub use error::ReportError;
pub use handout::{Figure, Handout, Item, Say, handout};
pub use html::{letter_html, to_html};
pub use text::to_text;
