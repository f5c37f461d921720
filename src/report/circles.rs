//! The client's last weeks: a circle a day, full where there was practice.

use plotters::prelude::*;
use plotters::style::text_anchor::{HPos, Pos, VPos};

use super::drawing::{BLACK_INK, LIGHT, WIDTH, svg};
use super::error::ReportError;
use typeface::FAMILY;

/// Height of a week, tenths of a millimetre.
const ROW: i32 = 102;
/// Room for the name of a week.
const LEFT: i32 = 300;
/// From circle to circle.
const STEP: i32 = 145;
const RADIUS: i32 = 40;
/// 18 points in tenths of a millimetre, as plotters counts letters.
const LETTERS: f64 = 63.5 * 1.24;

/// The weeks, each its name and its days from Monday: practised, not practised, or no day to tell of.
pub(super) fn circles(weekdays: &[String], weeks: &[(String, Vec<Option<bool>>)]) -> Result<String, ReportError> {
    let rows = i32::try_from(weeks.len()).unwrap_or(0);
    let letters = |h: HPos| TextStyle::from((FAMILY, LETTERS).into_font()).color(&BLACK_INK).pos(Pos::new(h, VPos::Center));
    let x = |n: i32| LEFT + STEP / 2 + n * STEP;
    svg((rows + 1) * ROW, |canvas| {
        debug_assert!(x(6) + RADIUS < WIDTH);
        for (n, day) in (0..).zip(weekdays) {
            canvas.draw(&Text::new(day.clone(), (x(n), ROW / 2), letters(HPos::Center)))?;
        }
        for (row, (name, days)) in (1..).zip(weeks) {
            let y = row * ROW + ROW / 2;
            canvas.draw(&Text::new(name.clone(), (0, y), letters(HPos::Left)))?;
            for (n, day) in (0..).zip(days) {
                match day {
                    Some(true) => canvas.draw(&Circle::new((x(n), y), RADIUS, BLACK_INK.filled()))?,
                    Some(false) => canvas.draw(&Circle::new((x(n), y), RADIUS - 4, BLACK_INK.stroke_width(8)))?,
                    None => canvas.draw(&Circle::new((x(n), y), 6, LIGHT.filled()))?,
                }
            }
        }
        Ok(())
    })
}
