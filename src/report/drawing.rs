//! What the drawings of a report have in common: SVG in tenths of a millimetre, in greys, told apart by shape and dash.

use plotters::prelude::*;
use plotters::style::text_anchor::{HPos, Pos, VPos};

use super::error::ReportError;
use super::time_axis::{Across, Axis};
use progress::Window;
use typeface::FAMILY;

/// Width of every drawing, tenths of a millimetre.
pub(super) const WIDTH: i32 = 1320;
/// Room for labels left of the time axis; all drawings have the same, so that a day stands at one place on the page.
pub(super) const LEFT: i32 = 92;
/// Room at the right, for the last date.
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

/// The time axis of every printed drawing, tenths of a millimetre.
pub(super) fn printed_axis(window: Window) -> Axis {
    Axis { window, across: Across { left: LEFT, right: WIDTH - RIGHT, day_label: 150.0, month_label: 190.0 } }
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
