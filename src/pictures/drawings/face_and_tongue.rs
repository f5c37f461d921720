//! Face, tongue and jaw, large.

use maud::{Markup, html};

use super::Drawing;
use crate::heads::{self, AJAR, CLOSED, profile_of, side_with_tongue};
use crate::pen::{accent, along, arrow, body_of_accent, held, line, put, shade, straight, to_and_fro};

pub const ALL: &[Drawing] = &[
    ("lip-press-smile", lip_press),
    ("lip-press-smile-smile", smile),
    ("cheek-puff", cheek_puff),
    ("tongue-press", tongue_press),
    ("tongue-against-spoon", tongue_against_spoon),
    ("lips-around-spoon", lips_around_spoon),
    ("tongue-side-to-side", side_to_side),
    ("tongue-reach", reach_out),
    ("tongue-reach-up", reach_up),
    ("jaw-opening", jaw_opening),
];

/// A head from the front with room at its right for an arrow.
fn beside(mouth: &Markup) -> Markup {
    put((-7.0, 0.0), 0.0, 1.0, &html! { (heads::front()) (mouth) })
}

fn lip_press() -> Markup {
    let mouth = html! {
        (accent(&html! { path d="M37 75 H63" stroke-width="7" {} }))
        (line("M29 70 C26 74 27 78 30 81 M71 70 C74 74 73 78 70 81"))
    };
    html! { (beside(&mouth)) (straight((92.0, 46.0), (92.0, 67.0))) (straight((92.0, 98.0), (92.0, 81.0))) }
}

fn smile() -> Markup {
    html! {
        (heads::front())
        (accent(&html! { path d="M31 68 C36 86 64 86 69 68" stroke-width="6" {} }))
        (line("M25 67 C24 63 27 61 30 62 M75 67 C76 63 73 61 70 62"))
    }
}

fn cheek_puff() -> Markup {
    html! {
        (heads::hair())
        (line("M50 4 C28 4 17 20 18 42 C4 50 2 80 22 87 C30 94 40 97 50 97 C60 97 70 94 78 87 C98 80 96 50 82 42 C83 20 72 4 50 4 Z"))
        (heads::eyes_and_nose())
        (line("M45 77 H55"))
        (straight((36.0, 70.0), (14.0, 70.0))) (straight((64.0, 70.0), (86.0, 70.0)))
    }
}

/// From the side: the spoon's back before the mouth, and the tongue pushes out against it.
fn tongue_against_spoon() -> Markup {
    html! {
        (profile_of((-10.5, 8.0), 0.86, &html! { (side_with_tongue(AJAR)) (body_of_accent("M58 76 C66 68 82 68 98 71 C104 74 102 80 95 79 C82 78 70 84 58 76 Z")) }))
        (line("M74 47 C81 48 81 69 74 70 C69 69 69 48 74 47 Z M77 67 L96 86"))
        (straight((66.0, 36.0), (84.0, 36.0)))
    }
}

/// From the side: closed lips hold a handle level.
fn lips_around_spoon() -> Markup {
    html! {
        (profile_of((-10.5, 8.0), 0.86, &side_with_tongue(CLOSED)))
        (accent(&line("M52 70 H82")))
        (line("M82 70 C84 62 97 62 97 70 C97 78 84 78 82 70 Z"))
    }
}

/// The mouth as if one could look in: the tongue against the roof.
fn tongue_press() -> Markup {
    let head = html! {
        (side_with_tongue(CLOSED))
        (line("M75 66 C68 59 54 58 47 66"))
        (body_of_accent("M46 86 C42 70 52 64 64 65 C71 66 75 69 75 71 C72 77 60 78 58 86 Z"))
    };
    html! { (profile_of((-5.0, 0.0), 1.0, &head)) (held([(90.0, 94.0), (90.0, 88.0), (90.0, 82.0), (90.0, 72.0)])) }
}

fn side_to_side() -> Markup {
    let head = html! {
        (heads::front())
        (line("M31 72 C36 62 64 62 69 72 C64 85 36 85 31 72 Z"))
        (body_of_accent("M48 78 C54 69 64 66 74 69 C80 73 77 80 70 80 C62 80 55 84 48 78 Z"))
    };
    html! { (put((8.5, -1.0), 0.0, 0.83, &head)) (to_and_fro(along((30.0, 91.0), (70.0, 91.0)))) }
}

/// A head from the side that puts out its tongue.
fn tongue_out(tongue: &str) -> Markup {
    profile_of((-9.0, 2.0), 1.0, &html! { (side_with_tongue(AJAR)) (body_of_accent(tongue)) })
}

fn reach_out() -> Markup {
    html! {
        (tongue_out("M58 76 C66 68 82 68 98 71 C104 74 102 80 95 79 C82 78 70 84 58 76 Z"))
        (straight((79.0, 58.5), (98.0, 59.5)))
    }
}

fn reach_up() -> Markup {
    html! {
        (tongue_out("M58 76 C70 69 84 75 92 63 C95 57 102 60 100 66 C96 83 74 86 58 76 Z"))
        (arrow([(86.0, 58.0), (91.0, 50.0), (91.0, 38.0), (86.0, 26.0)]))
    }
}

fn jaw_opening() -> Markup {
    let mouth = html! {
        (shade("M36 68 C38 61 62 61 64 68 C67 82 61 89 50 89 C39 89 33 82 36 68 Z"))
        (line("M36 68 C38 61 62 61 64 68 C67 82 61 89 50 89 C39 89 33 82 36 68 Z"))
    };
    html! { (beside(&mouth)) (held([(92.0, 52.0), (92.0, 60.0), (92.0, 70.0), (92.0, 82.0)])) }
}
