//! One measure over time: every trial, weekly medians with their intervals, the baseline, the smallest change that counts, and
//! where the series is broken.

use jiff::civil::Date;
use plotters::prelude::*;
use plotters::style::text_anchor::{HPos, VPos};

use super::calendar::dates;
use super::drawing::{Axis, BLACK_INK, Canvas, DARK, DrawFault, FAINT, LEFT, LIGHT, MIDDLE, RIGHT, WIDTH, dashed, letters_at, svg};
use super::error::ReportError;
use super::scale::Scale;
use progress::{BreakReason, Segment, Series, WeekMedian};

/// Room above for the numbers of breaks and below for dates, tenths of a millimetre.
const TOP: i32 = 34;
const BOTTOM: i32 = 44;
/// A gap narrower than this has no room for its letters.
const GAP_WORDS: i32 = 190;

/// What is written into a chart.
pub(super) struct ChartWords<'a> {
    pub tick: &'a dyn Fn(Date, bool) -> String,
    pub number: &'a dyn Fn(f64) -> String,
    /// "21 days without".
    pub gap: &'a dyn Fn(u32) -> String,
    /// The number by which the page tells of a break.
    pub break_number: &'a dyn Fn(&progress::Break) -> Option<usize>,
}

/// The chart, `height` tenths of a millimetre high. None where the series has nothing to draw in the window.
pub(super) fn chart(axis: Axis, series: &Series, height: i32, words: &ChartWords<'_>) -> Result<Option<String>, ReportError> {
    let Some(scale) = Scale::of(axis.window, series) else { return Ok(None) };
    let frame = Frame { axis, low: scale.low, high: scale.high, top: TOP, bottom: height - BOTTOM };
    let drawn = svg(height, |canvas| {
        frame.grid(canvas, &scale, words)?;
        for (segment, &shift) in series.segments.iter().zip(&scale.shifts) {
            frame.reference(canvas, segment, shift)?;
        }
        for segment in &series.segments {
            frame.parting(canvas, segment, words)?;
        }
        for (segment, &shift) in series.segments.iter().zip(&scale.shifts) {
            frame.values(canvas, segment, shift)?;
        }
        dates(canvas, axis, height - BOTTOM + 2, words.tick)
    });
    drawn.map(Some)
}

/// The field within the labels.
struct Frame {
    axis: Axis,
    low: f64,
    high: f64,
    top: i32,
    bottom: i32,
}

impl Frame {
    fn y(&self, value: f64) -> i32 {
        let share = ((value - self.low) / (self.high - self.low)).clamp(0.0, 1.0);
        self.bottom - (share * f64::from(self.bottom - self.top)).round() as i32
    }

    /// The middle of a day.
    fn x(&self, day: Date) -> i32 {
        self.axis.x(self.axis.at(day) + 0.5)
    }

    /// From where to where a segment is drawn; none where nothing of it lies in the window.
    fn span(&self, segment: &Segment) -> Option<(i32, i32)> {
        let mut days = segment.days.iter().filter(|day| self.axis.window.has(day.day));
        let first = days.next()?.day;
        let last = days.next_back().map_or(first, |day| day.day);
        Some((self.axis.x(self.axis.at(first)), self.axis.x(self.axis.at(last) + 1.0)))
    }

    fn grid(&self, canvas: &Canvas<'_>, scale: &Scale, words: &ChartWords<'_>) -> Result<(), DrawFault> {
        for &tick in &scale.ticks {
            let y = self.y(tick);
            canvas.draw(&PathElement::new(vec![(LEFT, y), (WIDTH - RIGHT, y)], FAINT.stroke_width(2)))?;
            canvas.draw(&Text::new((words.number)(tick), (LEFT - 10, y), letters_at(DARK, HPos::Right, VPos::Center)))?;
            if let Some(shift) = scale.second {
                canvas.draw(&Text::new(
                    (words.number)(tick - shift),
                    (WIDTH - RIGHT + 10, y),
                    letters_at(DARK, HPos::Left, VPos::Center),
                ))?;
            }
        }
        canvas.draw(&PathElement::new(vec![(LEFT, self.top), (LEFT, self.bottom), (WIDTH - RIGHT, self.bottom)], DARK.stroke_width(2)))?;
        if scale.second.is_some() {
            canvas.draw(&PathElement::new(vec![(WIDTH - RIGHT, self.top), (WIDTH - RIGHT, self.bottom)], DARK.stroke_width(2)))?;
        }
        Ok(())
    }

    /// Baseline and smallest change.
    fn reference(&self, canvas: &Canvas<'_>, segment: &Segment, shift: f64) -> Result<(), DrawFault> {
        let (Some(baseline), Some((left, right))) = (&segment.baseline, self.span(segment)) else { return Ok(()) };
        if let Some(interval) = baseline.interval {
            let band = [(left, self.y(interval.high + shift)), (right, self.y(interval.low + shift))];
            canvas.draw(&Rectangle::new(band, LIGHT.filled()))?;
        }
        let y = self.y(baseline.median + shift);
        canvas.draw(&PathElement::new(vec![(left, y), (right, y)], MIDDLE.stroke_width(3)))?;
        let Some(change) = &segment.change else { return Ok(()) };
        for limit in [baseline.median - change.mdc95, baseline.median + change.mdc95].map(|limit| limit + shift) {
            if (self.low..=self.high).contains(&limit) {
                dashed(canvas, (left, self.y(limit)), (right, self.y(limit)), 14, 10, DARK.stroke_width(3))?;
            }
        }
        Ok(())
    }

    /// What parts a segment from the one before it.
    fn parting(&self, canvas: &Canvas<'_>, segment: &Segment, words: &ChartWords<'_>) -> Result<(), DrawFault> {
        let Some(broken) = &segment.broken_by else { return Ok(()) };
        if !self.axis.window.has(broken.after) {
            return Ok(());
        }
        let left = self.axis.x((self.axis.at(broken.before) + 1.0).max(0.0));
        let right = self.axis.x(self.axis.at(broken.after)).max(left);
        let middle = (left + right) / 2;
        let gap = broken.reasons.iter().find_map(|reason| if let BreakReason::Gap { days } = reason { Some(*days) } else { None });
        if let Some(days) = gap {
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
        if gap.is_none() || broken.reasons.len() > 1 {
            for x in [middle - 4, middle + 4] {
                canvas.draw(&PathElement::new(vec![(x, self.top), (x, self.bottom)], BLACK_INK.stroke_width(3)))?;
            }
        }
        let Some(number) = (words.break_number)(broken) else { return Ok(()) };
        canvas.draw(&Text::new(number.to_string(), (middle, self.top / 2), letters_at(BLACK_INK, HPos::Center, VPos::Center)))
    }

    /// Trials and weekly medians.
    fn values(&self, canvas: &Canvas<'_>, segment: &Segment, shift: f64) -> Result<(), DrawFault> {
        let pen = Pen::of(self.axis.weeks());
        for day in segment.days.iter().filter(|day| self.axis.window.has(day.day)) {
            for value in &day.trials {
                canvas.draw(&Circle::new((self.x(day.day), self.y(value + shift)), pen.dot, MIDDLE.stroke_width(pen.dot_line)))?;
            }
        }
        let medians: Vec<(i32, &WeekMedian)> = segment.weeks.iter().filter_map(|week| Some((self.week_x(segment, week)?, week))).collect();
        let line: Vec<(i32, i32)> = medians.iter().map(|(x, week)| (*x, self.y(week.median + shift))).collect();
        if line.len() > 1 {
            canvas.draw(&PathElement::new(line, BLACK_INK.stroke_width(3)))?;
        }
        for (x, week) in medians {
            if let Some(interval) = week.interval {
                let (top, bottom) = (self.y(interval.high + shift), self.y(interval.low + shift));
                canvas.draw(&PathElement::new(vec![(x, top), (x, bottom)], BLACK_INK.stroke_width(pen.line)))?;
                for y in [top, bottom].into_iter().filter(|_| pen.cap > 0) {
                    canvas.draw(&PathElement::new(vec![(x - pen.cap, y), (x + pen.cap, y)], BLACK_INK.stroke_width(pen.line)))?;
                }
            }
            let (y, half) = (self.y(week.median + shift), pen.median);
            canvas.draw(&Polygon::new(vec![(x, y - half), (x + half, y), (x, y + half), (x - half, y)], BLACK_INK.filled()))?;
        }
        Ok(())
    }

    /// A week stands in the middle of its days in the window.
    fn week_x(&self, segment: &Segment, week: &WeekMedian) -> Option<i32> {
        let from = self.axis.at(week.monday);
        let days = segment.days.iter().filter(|day| self.axis.window.has(day.day)).map(|day| self.axis.at(day.day));
        let days: Vec<f64> = days.filter(|at| (from..from + 7.0).contains(at)).collect();
        let (first, last) = (days.first()?, days.last()?);
        Some(self.axis.x((first + last) / 2.0 + 0.5))
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
