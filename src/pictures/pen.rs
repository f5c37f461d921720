//! The pen: what every picture is drawn with, so that all are of one hand. On a field of 100 by 100.

use maud::{Markup, html};

/// Width of a line. Thick, because pictures are looked at from two metres.
pub const LINE: f64 = 4.0;
/// Width of an arm or a leg, and of a trunk.
pub const LIMB: f64 = 8.0;
pub const TRUNK: f64 = 13.0;

/// A place on the field.
pub type Point = (f64, f64);

/// A line of the body.
pub fn line(d: &str) -> Markup {
    html! { path d=(d) {} }
}

/// An arm or a leg.
pub fn limb(d: &str) -> Markup {
    html! { path d=(d) stroke-width=(LIMB) {} }
}

/// The trunk, seen from the side.
pub fn trunk(d: &str) -> Markup {
    html! { path d=(d) stroke-width=(TRUNK) {} }
}

/// A part that is darker than its ground: hair.
pub fn shade(d: &str) -> Markup {
    html! { path d=(d) stroke="none" fill="currentColor" fill-opacity="0.3" {} }
}

/// What the body lies, sits or holds on to.
pub fn thing(d: &str) -> Markup {
    html! { path d=(d) stroke-opacity="0.6" {} }
}

/// Where a part of the body was before, or where something would be.
pub fn trace(d: &str) -> Markup {
    html! { path d=(d) stroke-opacity="0.6" stroke-dasharray="0.1 7.5" {} }
}

/// A dot, as of an eye.
pub fn dot((x, y): Point) -> Markup {
    html! { path d=(format!("M{x} {y}h0.01")) stroke-width="7.5" {} }
}

/// What the picture is about: the pages give it a colour of its own.
pub fn accent(inner: &Markup) -> Markup {
    html! { g class="accent" stroke="currentColor" { (inner) } }
}

/// A filled part that the picture is about: a tongue, a ball.
pub fn body_of_accent(d: &str) -> Markup {
    accent(&html! { path d=(d) fill="currentColor" fill-opacity="0.35" {} })
}

/// A movement: a curve from the first point to the last, bent by the two between, with its head.
pub fn arrow(points: [Point; 4]) -> Markup {
    let [from, one, two, to] = points;
    let d = format!("M{} C{} {} {}", place(from), place(one), place(two), place(to));
    html! { (accent(&html! { path d=(d) {} })) (head(two, to)) }
}

/// A movement along a straight line.
pub fn straight(from: Point, to: Point) -> Markup {
    arrow(along(from, to))
}

/// A movement whose end is held: a bar stands before the arrow.
pub fn held(points: [Point; 4]) -> Markup {
    const GAP: f64 = 6.0;
    const HALF: f64 = 7.0;
    let [_, _, from, to] = points;
    let ahead = (to.1 - from.1).atan2(to.0 - from.0);
    let middle = (to.0 + GAP * ahead.cos(), to.1 + GAP * ahead.sin());
    let end = |half: f64| place((middle.0 - half * ahead.sin(), middle.1 + half * ahead.cos()));
    html! { (arrow(points)) (accent(&line(&format!("M{} L{}", end(HALF), end(-HALF))))) }
}

/// A movement there and back, again and again.
pub fn to_and_fro(points: [Point; 4]) -> Markup {
    let [from, one, ..] = points;
    html! { (arrow(points)) (head(one, from)) }
}

/// The four points of a straight movement.
pub fn along(from: Point, to: Point) -> [Point; 4] {
    [from, between(from, to, 1.0 / 3.0), between(from, to, 2.0 / 3.0), to]
}

/// The same, seen in a mirror.
pub fn mirrored(inner: &Markup) -> Markup {
    html! { g transform="translate(100 0) scale(-1 1)" { (inner) } }
}

/// The head of an arrow that comes from `from`.
pub fn head(from: Point, to: Point) -> Markup {
    const LENGTH: f64 = 10.0;
    const OPEN: f64 = 0.62;
    let back = (from.1 - to.1).atan2(from.0 - to.0);
    let wing = |turn: f64| (to.0 + LENGTH * (back + turn).cos(), to.1 + LENGTH * (back + turn).sin());
    let d = format!("M{} L{} L{}", place(wing(OPEN)), place(to), place(wing(-OPEN)));
    accent(&html! { path d=(d) {} })
}

/// The same part elsewhere, turned about its own corner and smaller, with lines as thick as everywhere.
pub fn put((x, y): Point, turned: f64, scale: f64, inner: &Markup) -> Markup {
    let transform = format!("translate({x} {y}) rotate({turned}) scale({scale})");
    html! { g transform=(transform) stroke-width=(tenths(LINE / scale)) { (inner) } }
}

/// A place as paths have it.
pub fn place((x, y): Point) -> String {
    format!("{} {}", tenths(x), tenths(y))
}

/// More digits would only make the pages longer.
fn tenths(value: f64) -> f64 {
    (value * 10.0).round() / 10.0
}

fn between(from: Point, to: Point, part: f64) -> Point {
    (from.0 + (to.0 - from.0) * part, from.1 + (to.1 - from.1) * part)
}
