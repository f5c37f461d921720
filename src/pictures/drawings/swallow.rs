//! Swallowing: head and throat from the side, and what goes on in them.

use maud::{Markup, html};

use super::Drawing;
use crate::heads::{AJAR, CLOSED, profile_of, side, side_with_tongue};
use crate::pen::{arrow, body_of_accent, held, line, put, straight, trace};

pub const ALL: &[Drawing] =
    &[("tongue-hold-swallow", tongue_hold), ("mid-swallow-hold", mid_swallow_hold), ("effortful-swallow", effortful)];

/// The tip of the tongue between the front teeth.
fn tongue_hold() -> Markup {
    let head = html! {
        (side_with_tongue(AJAR * 0.7))
        (body_of_accent("M50 78 C56 66 70 67 88 71 C93 72.5 92 77 87 77 C78 76.5 68 78 62 84 Z"))
    };
    html! { (profile_of((-2.0, 0.0), 1.0, &head)) (straight((38.0, 66.0), (38.0, 97.0))) }
}

/// A head with a long neck, so that there is room for what the throat does.
fn throat() -> Markup {
    html! {
        (put((6.0, -2.0), 0.0, 0.64, &side(CLOSED)))
        (line("M24.6 53 C25 68 20 78 5 86 M43.1 54.3 C40 64 40 78 42 88 C43 93 50 95 56 98"))
    }
}

/// The voice box at the top of its way, where it stays.
fn mid_swallow_hold() -> Markup {
    html! {
        (throat())
        (trace("M31 82 H41 L45 90 L40 97 H31 Z"))
        (body_of_accent("M31 58 H41 L46 66 L41 74 H31 Z"))
        (held([(70.0, 96.0), (70.0, 90.0), (70.0, 84.0), (70.0, 74.0)]))
    }
}

/// Down, with all of tongue and throat around it.
fn effortful() -> Markup {
    html! {
        (throat())
        (arrow([(54.0, 43.5), (28.0, 41.0), (33.0, 56.0), (33.0, 95.0)]))
        (straight((68.0, 74.0), (48.0, 74.0)))
        (straight((3.0, 63.0), (18.0, 63.0)))
    }
}
