//! What the drawings of a report have in common: SVG in tenths of a millimetre, in greys, told apart by shape and dash.

use jiff::civil::Date;
use plotters::prelude::*;
use plotters::style::text_anchor::{HPos, Pos, VPos};

use super::error::ReportError;
use progress::Window;
use typeface::FAMILY;

/// Width of every drawing, tenths of a millimetre.
pub(super) const WIDTH: i32 = 1320;
/// Room for labels left of the time axis; all drawings have the same, so that a day stands at one place on the page.
pub(super) const LEFT: i32 = 92;
/// Room at the right, for a second scale.
pub(super) const RIGHT: i32 = 84;

pub(super) const BLACK_INK: RGBColor = RGBColor(0, 0, 0);
pub(super) const DARK: RGBColor = RGBColor(64, 64, 64);
pub(super) const MIDDLE: RGBColor = RGBColor(118, 118, 118);
pub(super) const LIGHT: RGBColor = RGBColor(205, 205, 205);
pub(super) const FAINT: RGBColor = RGBColor(232, 232, 232);

/// Height of letters, tenths of a millimetre: 7.5 points.
const LETTERS: f64 = 26.0;
/// plotters writes its size of letters divided by this.
const PLOTTERS_LETTERS: f64 = 1.24;

/// How labels are written.
pub(super) fn letters(color: RGBColor) -> TextStyle<'static> {
    (FAMILY, LETTERS * PLOTTERS_LETTERS).into_font().color(&color)
}

/// Letters that hang on a point.
pub(super) fn letters_at(color: RGBColor, h: HPos, v: VPos) -> TextStyle<'static> {
    letters(color).pos(Pos::new(h, v))
}

/// The time axis of all drawings.
#[derive(Debug, Clone, Copy)]
pub(super) struct Axis {
    pub window: Window,
}

impl Axis {
    /// Days shown; whole weeks, so that the last one is not cut.
    pub fn days(&self) -> f64 {
        let days = days_between(self.window.from, self.window.to) + 1;
        (days.max(1) as f64 / 7.0).ceil() * 7.0
    }

    pub fn weeks(&self) -> usize {
        (self.days() / 7.0) as usize
    }

    /// Where a day begins, in days from the left.
    pub fn at(&self, day: Date) -> f64 {
        days_between(self.window.from, day) as f64
    }

    /// Where a place in days stands, tenths of a millimetre from the left.
    pub fn x(&self, at: f64) -> i32 {
        LEFT + (at / self.days() * f64::from(WIDTH - LEFT - RIGHT)).round() as i32
    }

    /// Days that are labelled, with their place: Mondays, or the beginnings of months where there are many.
    pub fn ticks(&self) -> Ticks {
        let weeks = self.weeks();
        let widest = |each_mm10: f64, least: f64| (least / each_mm10).ceil().max(1.0) as usize;
        let week_width = f64::from(WIDTH - LEFT - RIGHT) / weeks as f64;
        let day = |n: usize| self.window.from.checked_add(jiff::Span::new().days(n as i64)).ok();
        if weeks <= 30 {
            let step = widest(week_width, 150.0);
            let days = (0..weeks).step_by(step).filter_map(|week| day(week * 7)).collect();
            return Ticks { days, months: false };
        }
        let step = [1, 2, 3, 4, 6, 12].into_iter().find(|&months| week_width * 4.345 * months as f64 >= 190.0).unwrap_or(12);
        let firsts = (0..self.days() as usize)
            .filter_map(day)
            .filter(|day| day.day() == 1 && (usize::from(day.month().unsigned_abs()) - 1).is_multiple_of(step));
        Ticks { days: firsts.collect(), months: true }
    }
}

/// What is labelled below the drawings.
#[derive(Debug, Clone)]
pub(super) struct Ticks {
    pub days: Vec<Date>,
    /// They are beginnings of months.
    pub months: bool,
}

/// From one day to another; negative backwards.
pub(super) fn days_between(from: Date, to: Date) -> i64 {
    i64::from(from.duration_until(to).as_hours() as i32 / 24)
}

/// A drawing begun on an empty field; `draw` fills it.
pub(super) fn svg(height: i32, draw: impl FnOnce(&Canvas<'_>) -> Result<(), DrawFault>) -> Result<String, ReportError> {
    let mut text = String::new();
    let size = (WIDTH.unsigned_abs(), height.unsigned_abs());
    {
        let canvas = SVGBackend::with_string(&mut text, size).into_drawing_area();
        draw(&canvas).and_then(|()| canvas.present()).map_err(|why| ReportError(why.to_string()))?;
    }
    Ok(text)
}

pub(super) type Canvas<'a> = DrawingArea<SVGBackend<'a>, plotters::coord::Shift>;
pub(super) type DrawFault = DrawingAreaErrorKind<std::io::Error>;

/// A line in dashes, from point to point along one axis; places in tenths of a millimetre.
pub(super) fn dashed(
    canvas: &Canvas<'_>,
    from: (i32, i32),
    to: (i32, i32),
    dash: i32,
    gap: i32,
    style: ShapeStyle,
) -> Result<(), DrawFault> {
    let length = (to.0 - from.0).abs().max((to.1 - from.1).abs());
    let (step_x, step_y) = ((to.0 - from.0).signum(), (to.1 - from.1).signum());
    let mut at = 0;
    while at < length {
        let end = (at + dash).min(length);
        let point = |along: i32| (from.0 + step_x * along, from.1 + step_y * along);
        canvas.draw(&PathElement::new(vec![point(at), point(end)], style))?;
        at += dash + gap;
    }
    Ok(())
}

#[cfg(test)]
mod tests {
    use super::*;
    use jiff::civil::date;

    #[test]
    fn the_axis_shows_whole_weeks_and_labels_that_do_not_touch() {
        for weeks in [1, 2, 12, 30, 31, 52, 104] {
            let to = date(2026, 11, 25);
            let axis = Axis { window: Window::weeks(to, weeks) };
            assert_eq!(axis.weeks(), weeks as usize);
            assert!(axis.x(0.0) == LEFT && axis.x(axis.days()) == WIDTH - RIGHT);
            let ticks = axis.ticks();
            assert!(!ticks.days.is_empty() && ticks.months == (weeks > 30), "{weeks}");
            let places: Vec<i32> = ticks.days.iter().map(|day| axis.x(axis.at(*day))).collect();
            assert!(places.windows(2).all(|two| two[1] - two[0] >= 148), "{weeks}: {places:?}");
        }
    }
}
