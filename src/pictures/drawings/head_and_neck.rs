//! Head and neck. Left and right are as in a mirror: whoever turns to the left sees the picture turn to the left.

use maud::{Markup, html};

use super::Drawing;
use crate::bodies;
use crate::heads::{self, CLOSED, bust, side};
use crate::pen::{Point, accent, along, arrow, body_of_accent, dot, head, held, limb, line, mirrored, put, shade, to_and_fro, trace};

pub const ALL: &[Drawing] = &[
    ("head-lift-sustained", || head_lift(&held(LIFT))),
    ("head-lift-repeated", || head_lift(&to_and_fro(LIFT))),
    ("chin-tuck-ball", || chin_tuck(&held(along((86.0, 42.0), (86.0, 74.0))))),
    ("chin-tuck-ball-repeated", || chin_tuck(&to_and_fro(along((86.0, 42.0), (86.0, 80.0))))),
    ("neck-turns", neck_turns),
    ("neck-turns-left", || turned_left(&arrow(LEFT))),
    ("neck-turns-middle", middle),
    ("neck-turns-right", || mirrored(&turned_left(&arrow(LEFT)))),
    ("neck-tilts", neck_tilts),
    ("neck-tilts-left", || tilted_left(&arrow(DOWN_LEFT))),
    ("neck-tilts-middle", middle),
    ("neck-tilts-right", || mirrored(&tilted_left(&arrow(DOWN_LEFT)))),
    ("shoulder-rolls", shoulder_rolls),
];

const LIFT: [Point; 4] = [(11.0, 59.0), (6.0, 49.0), (8.0, 36.0), (16.0, 27.0)];

/// Only the head is up, and the eyes look at the toes.
fn head_lift(movement: &Markup) -> Markup {
    html! {
        (bodies::lying())
        (limb("M36 68 L31 58"))
        (bodies::head((26.0, 46.0), -38.0))
        (trace("M8 72 A9 9 0 1 0 26 72 A9 9 0 1 0 8 72 M43 44 L86 57"))
        (movement)
    }
}

/// A ball between chin and chest.
fn chin_tuck(movement: &Markup) -> Markup {
    html! {
        (put((27.6, 3.2), 18.0, 0.62, &side(CLOSED)))
        (line("M28 59.5 C28 70 23 77 14 81 C7 84 5 90 4 98 M44.8 65.5 C40 74 40 80 43 87 C45 91 46 94 47 98"))
        (body_of_accent("M48 85 A9.5 9.5 0 1 1 67 85 A9.5 9.5 0 1 1 48 85"))
        (movement)
    }
}

const HEAD: Point = (22.5, 13.0);
const SCALE: f64 = 0.55;

fn middle() -> Markup {
    html! { (bust(&put(HEAD, 0.0, SCALE, &heads::front_at_rest()))) }
}

const LEFT: [Point; 4] = [(60.0, 7.0), (42.0, 2.0), (22.0, 8.0), (14.0, 26.0)];

fn turned_left(movement: &Markup) -> Markup {
    let head = html! {
        (shade("M15 40 C12 16 28 3 50 3 C72 3 90 18 86 44 C85 52 82 58 80 62 L76 44 C70 36 66 26 62 17 C50 24 32 24 24 18 C20 26 19 34 18 44 Z"))
        (line("M50 4 C28 4 17 22 18 46 C19 74 30 96 46 96 C64 96 81 74 82 46 C83 22 72 4 50 4 Z"))
        (line("M74 44 C66 41 66 60 74 60"))
        (dot((27.0, 44.0))) (dot((52.0, 44.0)))
        (line("M37 44 L29 59 H38 M33 75 H50"))
    };
    html! { (bust(&put(HEAD, 0.0, SCALE, &head))) (movement) }
}

fn neck_turns() -> Markup {
    turned_left(&to_and_fro([(86.0, 26.0), (72.0, 0.0), (28.0, 0.0), (14.0, 26.0)]))
}

const DOWN_LEFT: [Point; 4] = [(54.0, 6.0), (36.0, 4.0), (18.0, 12.0), (9.0, 30.0)];

/// About the neck, an ear towards the shoulder.
fn tilted_left(movement: &Markup) -> Markup {
    let tilted = html! { g transform="rotate(-24 50 70)" { (put(HEAD, 0.0, SCALE, &heads::front_at_rest())) } };
    html! {
        (line("M8 97 C10 82 24 78 41 75 V70 M92 97 C90 82 76 78 59 75 C57 70 57 66 59 61"))
        (tilted)
        (movement)
    }
}

fn neck_tilts() -> Markup {
    tilted_left(&to_and_fro([(92.0, 30.0), (74.0, 0.0), (26.0, 0.0), (8.0, 30.0)]))
}

/// From the side: up, back and down.
fn shoulder_rolls() -> Markup {
    html! {
        (put((27.0, -1.0), 0.0, 0.42, &side(CLOSED)))
        (line("M39 35 C39 42 30 44 24 54 C20 64 21 84 22 98 M51.4 36 C52 44 64 46 70 56 C75 66 73 84 71 98"))
        (limb("M47 64 V97"))
        (accent(&line("M60 74 A17 17 0 1 0 34 75")))
        (head((30.5, 67.0), (34.0, 75.0)))
    }
}
