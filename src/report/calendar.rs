//! The adherence calendar: a box a day, filled by the share that was done.

use jiff::civil::Date;
use plotters::prelude::*;
use plotters::style::text_anchor::{HPos, VPos};

use super::drawing::{BLACK_INK, Canvas, DARK, DrawFault, LEFT, LIGHT, MIDDLE, letters, letters_at, svg};
use super::error::ReportError;
use super::time_axis::Axis;
use progress::{Adherence, DayAdherence, PlanBasis};

/// Height of a day, tenths of a millimetre.
const ROW: i32 = 33;
const ROWS: i32 = 7;
/// Most width of a box.
const WIDEST: i32 = 130;
/// From so many weeks on there is no room for a number below each.
const NUMBERED_WEEKS: usize = 16;

/// What is written into the calendar.
pub(super) struct CalendarWords<'a> {
    /// Monday to Sunday, short.
    pub weekdays: Vec<String>,
    /// At the row of stop events.
    pub stops: String,
    /// At the row of percentages.
    pub percent: String,
    pub tick: &'a dyn Fn(Date, bool) -> String,
}

/// The calendar, with a mark on each day of a stop event.
pub(super) fn calendar(axis: Axis, adherence: &Adherence, stops: &[Date], words: &CalendarWords<'_>) -> Result<String, ReportError> {
    let numbered = axis.weeks() <= NUMBERED_WEEKS;
    let rows = ROWS + i32::from(!stops.is_empty()) + i32::from(numbered);
    svg(rows * ROW + 44, |canvas| {
        for (row, name) in (0..).zip(&words.weekdays) {
            label(canvas, row, name)?;
        }
        for day in &adherence.days {
            draw_day(canvas, axis, day)?;
        }
        let mut row = ROWS;
        if !stops.is_empty() {
            label(canvas, row, &words.stops)?;
            for day in stops {
                let weekday = f64::from(day.weekday().to_monday_zero_offset());
                let (left, right) = column(axis, axis.at(*day) - weekday);
                cross(canvas, left + (f64::from(right - left) * (weekday + 0.5) / 7.0).round() as i32, row * ROW + ROW / 2)?;
            }
            row += 1;
        }
        if numbered {
            label(canvas, row, &words.percent)?;
            for week in &adherence.weeks {
                let Some(share) = week.share() else { continue };
                let (left, right) = column(axis, axis.at(week.monday));
                let at = ((left + right) / 2, row * ROW + ROW / 2);
                canvas.draw(&Text::new(format!("{:.0}", share * 100.0), at, letters_at(DARK, HPos::Center, VPos::Center)))?;
            }
        }
        dates(canvas, axis, rows * ROW + 6, words.tick)
    })
}

/// From where to where the boxes of a week go; no wider than is good to look at where there are few weeks.
fn column(axis: Axis, monday: f64) -> (i32, i32) {
    let (left, right) = (axis.x(monday) + 2, axis.x(monday + 7.0) - 2);
    (left, right.min(left + WIDEST))
}

/// The labels of the time axis, from `y` down.
pub(super) fn dates(canvas: &Canvas<'_>, axis: Axis, y: i32, tick: &dyn Fn(Date, bool) -> String) -> Result<(), DrawFault> {
    let ticks = axis.ticks();
    for day in &ticks.days {
        let x = axis.x(axis.at(*day));
        canvas.draw(&PathElement::new(vec![(x, y), (x, y + 8)], DARK.stroke_width(2)))?;
        canvas.draw(&Text::new(tick(*day, ticks.months), (x + 4, y + 8), letters(DARK)))?;
    }
    Ok(())
}

fn label(canvas: &Canvas<'_>, row: i32, text: &str) -> Result<(), DrawFault> {
    canvas.draw(&Text::new(text.to_owned(), (LEFT - 10, row * ROW + ROW / 2), letters_at(DARK, HPos::Right, VPos::Center)))
}

fn draw_day(canvas: &Canvas<'_>, axis: Axis, day: &DayAdherence) -> Result<(), DrawFault> {
    let row = i32::from(day.day.weekday().to_monday_zero_offset());
    let at = axis.at(day.day);
    // A week is one column; its days stand below each other.
    let monday = at - f64::from(row);
    let (left, right) = column(axis, monday);
    let (top, bottom) = (row * ROW + 3, (row + 1) * ROW - 3);
    let frame = |color: RGBColor, width: u32| Rectangle::new([(left, top), (right, bottom)], color.stroke_width(width));
    match day.share() {
        Some(share) => {
            let filled = (f64::from(bottom - top) * share.clamp(0.0, 1.0)).round() as i32;
            if filled > 0 {
                canvas.draw(&Rectangle::new([(left, bottom - filled), (right, bottom)], DARK.filled()))?;
            }
            canvas.draw(&frame(if day.open { MIDDLE } else { BLACK_INK }, 2))
        }
        None if day.basis == PlanBasis::Planned && day.planned > 0 => canvas.draw(&frame(BLACK_INK, 2)),
        // Practised though nothing was planned: whole, it was all that was asked for.
        None if day.practices > 0 => canvas.draw(&Rectangle::new([(left, top), (right, bottom)], DARK.filled())),
        None => canvas.draw(&PathElement::new(
            vec![((left + right) / 2 - 4, (top + bottom) / 2), ((left + right) / 2 + 4, (top + bottom) / 2)],
            LIGHT.stroke_width(4),
        )),
    }
}

/// A stop event.
fn cross(canvas: &Canvas<'_>, x: i32, y: i32) -> Result<(), DrawFault> {
    for (from, to) in [((x - 9, y - 9), (x + 9, y + 9)), ((x - 9, y + 9), (x + 9, y - 9))] {
        canvas.draw(&PathElement::new(vec![from, to], BLACK_INK.stroke_width(4)))?;
    }
    Ok(())
}
