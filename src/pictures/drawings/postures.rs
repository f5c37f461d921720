//! The postures, and the parts of getting up.

use maud::{Markup, html};

use super::Drawing;
use crate::bodies::{head, head_on_its_side, lying, seated, standing};
use crate::pen::{arrow, limb, put, straight, thing, trunk};

pub const ALL: &[Drawing] = &[
    ("sitting", || html! { (seated()) (straight((11.0, 60.0), (11.0, 14.0))) }),
    ("standing", || html! { (standing()) (straight((9.0, 60.0), (9.0, 14.0))) }),
    ("lying", || put((0.0, -24.0), 0.0, 1.0, &html! { (lying()) (head((17.0, 70.0), -90.0)) })),
    ("rise-side", roll_to_the_side),
    ("rise-sit", push_up_to_sit),
    ("rise-stand", stand_up),
];

/// From above, aslant: face, arm and bent knee to the onlooker.
fn roll_to_the_side() -> Markup {
    html! {
        (thing("M12 44 H86 L96 94 H4 Z"))
        (head_on_its_side((25.0, 63.0)))
        (trunk("M46 61 L64 62"))
        (limb("M64 61 L91 62"))
        (limb("M64 64 L69 81 L84 79"))
        (limb("M45 64 L52 79 L38 84"))
        (arrow([(38.0, 36.0), (46.0, 10.0), (74.0, 8.0), (78.0, 42.0)]))
    }
}

/// The hand pushes on the bed, the legs hang over its edge.
fn push_up_to_sit() -> Markup {
    html! {
        (thing("M3 72 H58 M8 72 V95 M52 72 V95"))
        (head((34.0, 22.0), 8.0))
        (trunk("M38 41 L48 58"))
        (limb("M50 63 L74 64 V91 H83"))
        (limb("M37 43 L24 54 L24 67"))
        (arrow([(6.0, 58.0), (2.0, 38.0), (8.0, 20.0), (20.0, 10.0)]))
    }
}

/// A hand on something firm, the seat just left.
fn stand_up() -> Markup {
    html! {
        (thing("M14 40 V95 M14 70 H40 V95 M80 42 V95 M74 42 H92"))
        (head((52.0, 20.0), 10.0))
        (trunk("M49 39 L40 56"))
        (limb("M40 60 L56 70 L50 92 H59"))
        (limb("M52 40 L62 50 L78 41"))
        (straight((28.0, 46.0), (28.0, 10.0)))
    }
}
