//! A chart for the pages of this computer: each day's trials from lowest to highest with their median, the baseline, the trend, and
//! every break.
//!
//! Drawn in lines and shapes that differ in form, never in colour alone; presentation attributes and classes only, for the pages
//! let no style into an element.

use jiff::civil::Date;
use maud::{Markup, html};

use super::marks::{Marks, Stretch};
use super::scale::{LINES, tick_label};
use crate::time_axis::{Across, Axis};
use progress::{Series, Window};

const WIDTH: i32 = 900;
const HEIGHT: f64 = 320.0;
const LEFT: i32 = 70;
const RIGHT: i32 = 20;
/// Half of the widest label below the axis.
const LABEL_HALF: i32 = 45;
const TOP: f64 = 20.0;
const BOTTOM: f64 = 50.0;

/// What is written into a chart.
pub struct PageWords<'a> {
    /// What a screen reader says in its place.
    pub described: &'a str,
    pub unit: &'a str,
    /// A day's label, or a month's.
    pub tick: &'a dyn Fn(Date, bool) -> String,
}

pub(crate) fn page_axis(window: Window) -> Axis {
    Axis { window, across: Across { left: LEFT, right: WIDTH - RIGHT, day_label: 80.0, month_label: 100.0 } }
}

/// The chart as SVG, of a series with one unit (`by_scale`). None where the series has nothing to draw in the window.
#[must_use]
pub fn page_chart(window: Window, series: &Series, words: &PageWords<'_>) -> Option<String> {
    let axis = page_axis(window);
    let marks = Marks::of(axis, series, LINES)?;
    let field = Field { axis, marks: &marks };
    Some(field.draw(words).into_string())
}

/// The field within the labels.
struct Field<'a> {
    axis: Axis,
    marks: &'a Marks<'a>,
}

impl Field<'_> {
    fn x(&self, at: f64) -> i32 {
        self.axis.x(at)
    }

    fn y(&self, value: f64) -> String {
        format!("{:.1}", self.height(value))
    }

    fn height(&self, value: f64) -> f64 {
        HEIGHT - BOTTOM - self.marks.scale.share(value) * (HEIGHT - TOP - BOTTOM)
    }

    fn draw(&self, words: &PageWords<'_>) -> Markup {
        let (left, right, bottom) = (self.axis.across.left, self.axis.across.right, HEIGHT - BOTTOM);
        let (scale, ticks) = (&self.marks.scale, self.axis.ticks());
        html! {
            svg class="chart" viewBox=(format!("0 0 {WIDTH} {HEIGHT}")) role="img" aria-label=(words.described) {
                @for &value in &scale.ticks {
                    line class="grid" x1=(left) x2=(right) y1=(self.y(value)) y2=(self.y(value)) {}
                    text class="tick" x=(left - 8) y=(format!("{:.1}", self.height(value) + 5.0)) text-anchor="end" { (tick_label(value)) }
                }
                text class="unit" x="4" y=(TOP - 4.0) { (words.unit) }
                @for &day in &ticks.days {
                    @let x = self.x(self.axis.at(day));
                    line class="tickmark" x1=(x) x2=(x) y1=(bottom) y2=(bottom + 6.0) {}
                    text class="tick" x=(x) y=(bottom + 24.0) text-anchor=(if x > WIDTH - LABEL_HALF { "end" } else { "middle" }) { ((words.tick)(day, ticks.months)) }
                }
                line class="axis" x1=(left) x2=(right) y1=(bottom) y2=(bottom) {}
                @for stretch in &self.marks.stretches { (self.stretch(stretch)) }
            }
        }
    }

    fn stretch(&self, stretch: &Stretch<'_>) -> Markup {
        let path: Vec<String> = stretch.days.iter().map(|day| format!("{},{}", self.x(day.at), self.y(day.median))).collect();
        html! {
            @if let Some(reference) = &stretch.reference {
                @let (from, to) = (self.x(reference.from), self.x(reference.to));
                @let (low, high) = reference.trials;
                @let height = (self.height(low) - self.height(high)).max(1.0);
                rect class="baseline" x=(from) width=(to - from) y=(self.y(high)) height=(format!("{height:.1}")) {}
                line class="baseline" x1=(from) x2=(to) y1=(self.y(reference.median)) y2=(self.y(reference.median)) {}
            }
            @if let Some(parting) = &stretch.parting {
                @let x = self.x((parting.from + parting.to) / 2.0);
                line class="break" x1=(x) x2=(x) y1=(TOP) y2=(HEIGHT - BOTTOM) {}
            }
            @if let Some([from, to]) = stretch.trend {
                line class="trend" x1=(self.x(from.0)) y1=(self.y(from.1)) x2=(self.x(to.0)) y2=(self.y(to.1)) {}
            }
            polyline class="medians" points=(path.join(" ")) {}
            @for day in &stretch.days {
                @let (low, high) = day.range();
                line class="range" x1=(self.x(day.at)) x2=(self.x(day.at)) y1=(self.y(high)) y2=(self.y(low)) {}
                circle class="median" cx=(self.x(day.at)) cy=(self.y(day.median)) r="5" {}
            }
        }
    }
}

#[cfg(test)]
#[path = "tests/page.rs"]
mod tests;
