//! Heads: from the front and from the side, of an older person who may be anybody.

use maud::{Markup, html};

use super::pen::{Point, dot, line, place, put, shade};

/// The joint of the jaw of a head from the side.
const JAW: (f64, f64) = (45.0, 62.0);

/// How a jaw hangs, seen from the side, degrees.
pub const CLOSED: f64 = 0.0;
pub const AJAR: f64 = 9.0;
pub const OPEN: f64 = 17.0;

/// A head from the front that fills the field; the mouth is drawn by whoever draws the picture.
pub fn front() -> Markup {
    html! {
        (hair())
        (line("M50 4 C28 4 17 22 18 46 C19 74 34 96 50 96 C66 96 81 74 82 46 C83 22 72 4 50 4 Z"))
        (line("M17 42 C9 40 10 58 19 60 M83 42 C91 40 90 58 81 60"))
        (eyes_and_nose())
    }
}

/// The same with its mouth at rest.
pub fn front_at_rest() -> Markup {
    html! { (front()) (line("M40 75 H60")) }
}

/// Short and grey.
pub fn hair() -> Markup {
    shade("M15 40 C12 16 28 3 50 3 C72 3 88 16 85 40 L81 44 C80 30 74 22 66 19 C54 23 40 22 34 19 C26 22 20 30 19 44 Z")
}

/// Eyes and nose of a head from the front.
pub fn eyes_and_nose() -> Markup {
    html! { (dot((36.0, 43.0))) (dot((64.0, 43.0))) (line("M50 44 L46 58 H52")) }
}

/// Neck and shoulders from the front, and the head as it is given.
pub fn bust(head: &Markup) -> Markup {
    html! {
        (line("M8 97 C10 82 24 78 41 75 V63 M92 97 C90 82 76 78 59 75 V63"))
        (head)
    }
}

/// A head from the side, looking to the right, with nothing below the jaw and nape. `jaw` is how far it hangs.
pub fn side(jaw: f64) -> Markup {
    lips(jaw, 67.0)
}

/// The same with room for a tongue: its lips are short.
pub fn side_with_tongue(jaw: f64) -> Markup {
    lips(jaw, 77.0)
}

/// `corner` is how far back the lips meet.
fn lips(jaw: f64, corner: f64) -> Markup {
    // The chin moves with the jaw, the throat stays.
    let at = |x: f64, y: f64| {
        let (sin, cos) = jaw.to_radians().sin_cos();
        let (from_x, from_y) = (x - JAW.0, y - JAW.1);
        place((JAW.0 + from_x * cos - from_y * sin, JAW.1 + from_x * sin + from_y * cos))
    };
    let chin = format!(
        "M{} C{} {} {} C{} {} {} C{} {} {} C{} {} {} L58 88",
        at(corner, 70.0),
        at(corner + 4.0, 70.0),
        at(82.0, 70.0),
        at(82.0, 73.0),
        at(81.5, 76.0),
        at(78.0, 76.0),
        at(78.5, 79.0),
        at(80.0, 82.0),
        at(81.0, 85.0),
        at(79.5, 88.0),
        at(77.0, 93.0),
        at(71.0, 94.0),
        at(66.0, 92.5),
    );
    html! {
        (shade("M29 86 C15 76 9 60 12 42 C16 20 34 6 54 8 C63 9 69 13 72 19 C63 22 58 28 57 40 L52 44 C48 34 34 38 36 50 C37 58 41 63 39 70 C37 76 33 80 29 86 Z"))
        (line(&format!(
            "M29 86 C15 76 9 60 12 42 C16 20 34 6 54 8 C68 9.5 76 20 76 33 C76 37 75 39 77 43 L86 56 C87.5 59 85.5 60.5 80 60.5 C80 63 83.5 65 82 68 C81 69.5 {} 69.5 {corner} 69.5", corner + 4.0
        )))
        (line("M41 49 C37 43 48 40 48 50 C48 55 43 55 44 60"))
        (dot((67.0, 45.0)))
        (line(&chin))
    }
}

/// Head, neck and chest from the side, its field put at `corner` and as much smaller as `scale` says.
pub fn profile((x, y): Point, scale: f64, jaw: f64) -> Markup {
    profile_of((x, y), scale, &side(jaw))
}

/// The same with the head as it is given.
pub fn profile_of((x, y): Point, scale: f64, head: &Markup) -> Markup {
    html! {
        (put((x + 6.0 * scale, y - 2.0 * scale), 0.0, 0.8 * scale, head))
        (put((x, y), 0.0, scale, &line("M29.2 66.8 C29 77 26 82 20 86 C14 89 12 93 12 98 M52.4 68.4 C50 76 50 80 51 86 C52 92 60 93 66 98")))
    }
}
