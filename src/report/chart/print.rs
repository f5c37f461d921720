//! A chart in greys for paper: every trial, weekly medians with their intervals, the baseline, the smallest change that counts, and
//! where the series is broken.

use jiff::civil::Date;
use plotters::prelude::*;
use plotters::style::text_anchor::{HPos, VPos};

use super::marks::{Marks, Parting, Reference, Stretch};
use super::scale::{LINES, by_scale, tick_label};
use crate::calendar::dates;
use crate::drawing::{BLACK_INK, Canvas, DARK, DrawFault, FAINT, LEFT, LIGHT, MIDDLE, RIGHT, WIDTH, dashed, letters_at, svg};
use crate::error::ReportError;
use crate::time_axis::Axis;
use progress::Series;

/// Room above for the numbers of breaks and below for dates, tenths of a millimetre.
const TOP: i32 = 34;
const BOTTOM: i32 = 44;
/// Between two fields: the unit of the lower one stands there.
const APART: i32 = 34;
/// Labelled lines of a field that shares the height with another, about so many.
const LINES_OF_TWO: f64 = 2.0;
/// A gap narrower than this has no room for its letters.
const GAP_WORDS: i32 = 190;

/// What is written into a chart.
pub(crate) struct ChartWords<'a> {
    pub tick: &'a dyn Fn(Date, bool) -> String,
    /// "21 days without".
    pub gap: &'a dyn Fn(u32) -> String,
    /// The number by which the page tells of a break.
    pub break_number: &'a dyn Fn(&progress::Break) -> Option<usize>,
    /// The unit of a part, where a series has two.
    pub unit: &'a dyn Fn(&Series) -> String,
}

/// The chart, `height` tenths of a millimetre high. None where the series has nothing to draw in the window.
pub(crate) fn printed_chart(axis: Axis, series: &Series, height: i32, words: &ChartWords<'_>) -> Result<Option<String>, ReportError> {
    let parts = by_scale(series);
    let lines = if parts.len() > 1 { LINES_OF_TWO } else { LINES };
    let all: Vec<(&Series, Marks<'_>)> = parts.iter().filter_map(|part| Some((part, Marks::of(axis, part, lines)?))).collect();
    if all.is_empty() {
        return Ok(None);
    }
    // Two kinds of decibel have a field each, one above the other over the same days.
    let each = (height - TOP - BOTTOM - APART * (all.len() as i32 - 1)) / all.len() as i32;
    let drawn = svg(height, |canvas| {
        for (number, (part, marks)) in (0_i32..).zip(&all) {
            let top = TOP + number * (each + APART);
            let frame = Frame { axis, marks, top, bottom: top + each };
            frame.draw(canvas, words)?;
            if all.len() > 1 {
                let style = letters_at(BLACK_INK, HPos::Left, VPos::Bottom);
                canvas.draw(&Text::new((words.unit)(part), (LEFT, top - 2), style))?;
            }
        }
        dates(canvas, axis, height - BOTTOM + 2, words.tick)
    });
    drawn.map(Some)
}

/// The field within the labels.
struct Frame<'a> {
    axis: Axis,
    marks: &'a Marks<'a>,
    top: i32,
    bottom: i32,
}

impl Frame<'_> {
    fn draw(&self, canvas: &Canvas<'_>, words: &ChartWords<'_>) -> Result<(), DrawFault> {
        self.grid(canvas)?;
        for reference in self.marks.stretches.iter().filter_map(|stretch| stretch.reference.as_ref()) {
            self.reference(canvas, reference)?;
        }
        for parting in self.marks.stretches.iter().filter_map(|stretch| stretch.parting.as_ref()) {
            self.parting(canvas, parting, words)?;
        }
        self.marks.stretches.iter().try_for_each(|stretch| self.values(canvas, stretch))
    }

    fn y(&self, value: f64) -> i32 {
        self.bottom - (self.marks.scale.share(value) * f64::from(self.bottom - self.top)).round() as i32
    }

    fn grid(&self, canvas: &Canvas<'_>) -> Result<(), DrawFault> {
        let scale = &self.marks.scale;
        for &tick in &scale.ticks {
            let y = self.y(tick);
            canvas.draw(&PathElement::new(vec![(LEFT, y), (WIDTH - RIGHT, y)], FAINT.stroke_width(2)))?;
            canvas.draw(&Text::new(tick_label(tick), (LEFT - 10, y), letters_at(DARK, HPos::Right, VPos::Center)))?;
        }
        canvas.draw(&PathElement::new(vec![(LEFT, self.top), (LEFT, self.bottom), (WIDTH - RIGHT, self.bottom)], DARK.stroke_width(2)))?;
        Ok(())
    }

    fn reference(&self, canvas: &Canvas<'_>, reference: &Reference) -> Result<(), DrawFault> {
        let (left, right) = (self.axis.x(reference.from), self.axis.x(reference.to));
        if let Some((low, high)) = reference.interval {
            canvas.draw(&Rectangle::new([(left, self.y(high)), (right, self.y(low))], LIGHT.filled()))?;
        }
        let y = self.y(reference.median);
        canvas.draw(&PathElement::new(vec![(left, y), (right, y)], MIDDLE.stroke_width(3)))?;
        for &limit in &reference.limits {
            dashed(canvas, (left, self.y(limit)), (right, self.y(limit)), 14, 10, DARK.stroke_width(3))?;
        }
        Ok(())
    }

    fn parting(&self, canvas: &Canvas<'_>, parting: &Parting<'_>, words: &ChartWords<'_>) -> Result<(), DrawFault> {
        let (left, right) = (self.axis.x(parting.from), self.axis.x(parting.to));
        let middle = (left + right) / 2;
        if let Some(days) = parting.gap_days {
            canvas.draw(&Rectangle::new([(left, self.top), (right, self.bottom)], FAINT.filled()))?;
            for x in [left, right] {
                dashed(canvas, (x, self.top), (x, self.bottom), 8, 8, DARK.stroke_width(3))?;
            }
            if right - left >= GAP_WORDS {
                canvas.draw(&Text::new(
                    (words.gap)(days),
                    (middle, (self.top + self.bottom) / 2),
                    letters_at(BLACK_INK, HPos::Center, VPos::Center),
                ))?;
            }
        }
        if parting.other {
            for x in [middle - 4, middle + 4] {
                canvas.draw(&PathElement::new(vec![(x, self.top), (x, self.bottom)], BLACK_INK.stroke_width(3)))?;
            }
        }
        let Some(number) = (words.break_number)(parting.broken) else { return Ok(()) };
        canvas.draw(&Text::new(number.to_string(), (middle, self.top - TOP / 2), letters_at(BLACK_INK, HPos::Center, VPos::Center)))
    }

    /// Trials and weekly medians.
    fn values(&self, canvas: &Canvas<'_>, stretch: &Stretch<'_>) -> Result<(), DrawFault> {
        let pen = Pen::of(self.axis.weeks());
        for day in &stretch.days {
            for value in &day.trials {
                canvas.draw(&Circle::new((self.axis.x(day.at), self.y(*value)), pen.dot, MIDDLE.stroke_width(pen.dot_line)))?;
            }
        }
        let line: Vec<(i32, i32)> = stretch.weeks.iter().map(|week| (self.axis.x(week.at), self.y(week.median))).collect();
        if line.len() > 1 {
            canvas.draw(&PathElement::new(line, BLACK_INK.stroke_width(3)))?;
        }
        for week in &stretch.weeks {
            let (x, y, half) = (self.axis.x(week.at), self.y(week.median), pen.median);
            if let Some((low, high)) = week.interval {
                let (top, bottom) = (self.y(high), self.y(low));
                canvas.draw(&PathElement::new(vec![(x, top), (x, bottom)], BLACK_INK.stroke_width(pen.line)))?;
                for y in [top, bottom].into_iter().filter(|_| pen.cap > 0) {
                    canvas.draw(&PathElement::new(vec![(x - pen.cap, y), (x + pen.cap, y)], BLACK_INK.stroke_width(pen.line)))?;
                }
            }
            canvas.draw(&Polygon::new(vec![(x, y - half), (x + half, y), (x, y + half), (x - half, y)], BLACK_INK.filled()))?;
        }
        Ok(())
    }
}

/// How large the signs are, tenths of a millimetre: smaller where many weeks stand close.
struct Pen {
    dot: i32,
    dot_line: u32,
    /// Half a median's sign.
    median: i32,
    /// Half the bar at the end of an interval; none where there is no room for it.
    cap: i32,
    line: u32,
}

impl Pen {
    fn of(weeks: usize) -> Self {
        match weeks {
            0..=26 => Self { dot: 5, dot_line: 2, median: 10, cap: 5, line: 4 },
            27..=53 => Self { dot: 4, dot_line: 1, median: 7, cap: 0, line: 3 },
            _ => Self { dot: 3, dot_line: 1, median: 5, cap: 0, line: 1 },
        }
    }
}
