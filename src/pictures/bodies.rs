//! Whole bodies from the side, small: limbs are strokes, and a head is a ring with a nose.

use maud::{Markup, html};

use super::pen::{Point, limb, line, put, shade, thing, trunk};

/// A small head that looks to the right, turned about its middle.
pub fn head(middle: Point, turned: f64) -> Markup {
    let drawn = html! {
        (shade("M-7 6 A9.2 9.2 0 0 1 6 -7 C1 -6 -2 -3 -2.5 1 Z"))
        (line("M-9 0 A9 9 0 1 1 9 0 A9 9 0 1 1 -9 0"))
        (line("M9 0 L11.5 3 L8.5 3.5"))
    };
    put(middle, turned, 1.0, &drawn)
}

/// The same seen from the front, lying on its side, its top at the left.
pub fn head_on_its_side(middle: Point) -> Markup {
    let drawn = html! {
        (shade("M-3 -12 A12.2 12.2 0 0 0 -3 12 C-8 6 -8 -6 -3 -12 Z"))
        (line("M-12 0 A12 12 0 1 1 12 0 A12 12 0 1 1 -12 0"))
        (line("M-1 -4.8 h0.01 M-1 4.8 h0.01 M6 -2.6 V2.6"))
    };
    put(middle, 0.0, 1.0, &drawn)
}

/// Upright on a firm chair, both feet down.
pub fn seated() -> Markup {
    html! {
        (thing("M27 34 V94 M27 70 H66 V94"))
        (head((47.0, 17.0), 0.0))
        (trunk("M44 37 L43 59"))
        (limb("M44 63 L70 64 V91 H79"))
        (limb("M46 38 L53 51 L66 54"))
    }
}

/// Standing behind a firm chair, a hand on its back.
pub fn standing() -> Markup {
    html! {
        (thing("M60 43 V95 M60 70 H88 V95"))
        (head((31.0, 14.0), 0.0))
        (trunk("M29 34 V55"))
        (limb("M28 60 V92 H37"))
        (limb("M31 35 L42 47 L59 43"))
    }
}

/// Flat on the back; the head is put where the picture needs it.
pub fn lying() -> Markup {
    html! {
        (thing("M3 84 H97"))
        (trunk("M37 73 H58"))
        (limb("M60 75 H92 V64"))
    }
}
