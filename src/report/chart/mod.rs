//! One measure over time as a drawing. `scale` says from where to where and which lines are labelled, `marks` what is drawn and
//! where; `print` draws them in greys for paper, `page` with classes for the pages of this computer.

mod marks;
mod page;
mod print;
mod scale;

#[cfg(test)]
pub(crate) use page::page_axis;
pub use page::{PageWords, page_chart};
pub(crate) use print::{ChartWords, printed_chart};
pub use scale::{by_scale, is_relative};
