//! Breathing and speech.

use maud::{Markup, html};

use super::Drawing;
use super::voice::bubble;
use crate::bodies;
use crate::heads::{AJAR, CLOSED, profile};
use crate::pen::{Point, accent, arrow, dot, limb, line, straight, thing, to_and_fro, trunk};

pub const ALL: &[Drawing] = &[
    ("nasal-breathing", nasal_breathing),
    ("nasal-breathing-in", breath_in),
    ("nasal-breathing-out", breath_out),
    ("breath-out-resistance", breath_out_resistance),
    ("voluntary-cough", voluntary_cough),
    ("syllable-repetition", syllables),
    ("pa-repetition", pa),
    ("ta-repetition", ta),
    ("ka-repetition", ka),
    ("word-questions", word_questions),
    ("category-naming", naming),
    ("rest", rest),
];

const IN: [Point; 4] = [(96.0, 86.0), (94.0, 70.0), (86.0, 59.0), (73.0, 54.0)];
const OUT: [Point; 4] = [(72.0, 54.0), (84.0, 59.0), (92.0, 70.0), (94.0, 90.0)];

fn breather() -> Markup {
    profile((-6.0, 4.0), 0.95, CLOSED)
}

fn nasal_breathing() -> Markup {
    html! { (breather()) (to_and_fro(OUT)) }
}

fn breath_in() -> Markup {
    html! { (breather()) (arrow(IN)) }
}

fn breath_out() -> Markup {
    html! { (breather()) (arrow(OUT)) }
}

/// A small trainer at the lips, and the air that goes through it.
fn breath_out_resistance() -> Markup {
    html! {
        (profile((-8.0, 20.0), 0.78, CLOSED))
        (line("M53 61 H63 V56 H84 V72 H63 V67 H53 M69 56 V72"))
        (straight((86.0, 64.0), (97.0, 64.0)))
    }
}

/// One short, hard burst.
fn voluntary_cough() -> Markup {
    html! {
        (profile((-8.0, 20.0), 0.78, AJAR))
        (accent(&line("M60 60 L72 50 M62 66 H79 M60 72 L72 82")))
    }
}

fn syllables() -> Markup {
    html! { (profile((-8.0, 20.0), 0.78, AJAR)) (train()) }
}

/// One syllable after another.
fn train() -> Markup {
    html! {
        (accent(&html! { @for x in [60.0, 70.0, 80.0] { (dot((x, 64.0))) } }))
        (straight((86.0, 64.0), (98.0, 64.0)))
    }
}

/// The lips close.
fn pa() -> Markup {
    html! { (profile((-8.0, 20.0), 0.78, CLOSED)) (train()) }
}

/// A mark where the tip of the tongue touches.
fn ta() -> Markup {
    html! { (profile((-8.0, 20.0), 0.78, AJAR)) (train()) (accent(&line("M44 66 L47 60"))) }
}

/// A mark where the back of the tongue touches.
fn ka() -> Markup {
    html! { (profile((-8.0, 20.0), 0.78, AJAR)) (train()) (accent(&line("M33 66 L33 60"))) }
}

fn speaker() -> Markup {
    html! { (profile((-6.0, 33.0), 0.68, AJAR)) (bubble()) }
}

fn word_questions() -> Markup {
    html! { (speaker()) (accent(&html! { (line("M63 16 C64 10 78 10 78 17 C78 22 71 21 71 26")) (dot((71.0, 33.0))) })) }
}

/// Apple, banana, pear.
fn naming() -> Markup {
    html! {
        (speaker())
        (accent(&line("M51 24 C51 18 63 18 63 24 C63 33 51 33 51 24 Z M57 18 L59 13 M68 16 C66 26 72 32 80 31 M88 13 C85 20 83 22 83 26 C83 32 93 32 93 26 C93 22 91 20 88 13")))
    }
}

fn rest() -> Markup {
    html! {
        (thing("M16 30 L28 72 V94 M28 72 H66 V94 M30 56 H60"))
        (bodies::head((33.0, 22.0), -20.0))
        (trunk("M35 42 L43 60"))
        (limb("M45 64 L70 64 L76 91 H85"))
        (limb("M38 43 L50 53 L62 53"))
    }
}
