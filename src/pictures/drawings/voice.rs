//! Voice: a head that sounds, and the way of the sound. Higher on the picture is higher in pitch.

use maud::{Markup, html};

use super::Drawing;
use crate::heads::{AJAR, CLOSED, OPEN, profile};
use crate::pen::{Point, accent, arrow, dot, head, line, straight, trace};

pub const ALL: &[Drawing] = &[
    ("long-ah", long_ah),
    ("comfortable-ah", comfortable_ah),
    ("high-ee", high_ee),
    ("glide-up", glide_up),
    ("glide-down", glide_down),
    ("functional-phrases", functional_phrases),
    ("counting-on-a-breath", counting_on_a_breath),
    ("days-on-a-breath", days_on_a_breath),
    ("loudness-steps", loudness_steps),
    ("pitch-steps", pitch_steps),
    ("sentence-melody", sentence_melody),
    ("sentence-stress", sentence_stress),
    ("paced-phrases", paced_phrases),
    ("reading-passage", reading_passage),
    ("talk-on-a-prompt", talk_on_a_prompt),
    ("easy-hum", easy_hum),
    ("straw-voicing", straw_voicing),
];

const HEAD: Point = (-8.0, 20.0);
const SCALE: f64 = 0.78;

fn long_ah() -> Markup {
    html! { (profile(HEAD, SCALE, OPEN)) (straight((58.0, 66.0), (97.0, 66.0))) }
}

/// Shorter than the long one.
fn comfortable_ah() -> Markup {
    html! { (profile(HEAD, SCALE, AJAR)) (straight((58.0, 66.0), (78.0, 66.0))) }
}

fn high_ee() -> Markup {
    html! {
        (profile(HEAD, SCALE, AJAR))
        (trace("M60 65 H97"))
        (accent(&line("M56 58 C62 50 56 20 66 20 H96")))
        (head((80.0, 20.0), (97.0, 20.0)))
    }
}

fn glide_up() -> Markup {
    html! { (profile(HEAD, SCALE, OPEN)) (arrow([(57.0, 68.0), (74.0, 68.0), (84.0, 52.0), (93.0, 14.0)])) }
}

fn glide_down() -> Markup {
    html! { (profile(HEAD, SCALE, OPEN)) (arrow([(57.0, 50.0), (74.0, 46.0), (86.0, 60.0), (93.0, 95.0)])) }
}

fn functional_phrases() -> Markup {
    html! { (profile((-6.0, 33.0), 0.68, AJAR)) (bubble()) (accent(&line("M56 17 H86 M56 28 H76"))) }
}

/// One, two, three along one line.
fn counting_on_a_breath() -> Markup {
    html! {
        (profile(HEAD, SCALE, AJAR))
        (straight((58.0, 70.0), (97.0, 70.0)))
        (accent(&line("M64 62 V50 M73 62 V50 M77 62 V50 M86 62 V50 M90 62 V50 M94 62 V50")))
    }
}

/// Leaves of a calendar along one line.
fn days_on_a_breath() -> Markup {
    html! {
        (profile(HEAD, SCALE, AJAR))
        (straight((58.0, 70.0), (97.0, 70.0)))
        (accent(&line("M61 50 H70 V62 H61 Z M74 50 H83 V62 H74 Z M87 50 H96 V62 H87 Z")))
    }
}

/// Soft, medium, strong, medium: the heavier the mark, the louder.
fn loudness_steps() -> Markup {
    html! {
        (profile(HEAD, SCALE, OPEN))
        (accent(&line("M62 72 V63 M73 72 V51 M84 72 V33 M95 72 V51")))
    }
}

/// A staircase of notes.
fn pitch_steps() -> Markup {
    html! { (profile(HEAD, SCALE, OPEN)) (accent(&line("M55 82 H64 M65 62 H74 M75 42 H84"))) (straight((92.0, 84.0), (92.0, 50.0))) }
}

/// One that rises, one that falls.
fn sentence_melody() -> Markup {
    html! {
        (profile((-6.0, 33.0), 0.68, AJAR))
        (bubble())
        (arrow([(51.0, 18.0), (62.0, 18.0), (70.0, 18.0), (80.0, 13.0)]))
        (arrow([(51.0, 26.0), (62.0, 26.0), (70.0, 26.0), (80.0, 31.0)]))
    }
}

/// One word stands out.
fn sentence_stress() -> Markup {
    html! {
        (profile((-6.0, 33.0), 0.68, AJAR))
        (bubble())
        (line("M51 22 H59 M82 22 H90"))
        (accent(&html! { path d="M65 22 H76" stroke-width="10" {} }))
    }
}

/// Words on a row of beats.
fn paced_phrases() -> Markup {
    html! {
        (profile((-6.0, 33.0), 0.68, AJAR))
        (bubble())
        (line("M50 17 H57 M62 17 H69 M74 17 H81 M86 17 H91"))
        (accent(&html! { (dot((53.5, 29.0))) (dot((65.5, 29.0))) (dot((77.5, 29.0))) (dot((88.5, 29.0))) }))
    }
}

/// A sheet with lines, held before the face.
fn reading_passage() -> Markup {
    html! {
        (profile(HEAD, SCALE, AJAR))
        (line("M68 42 L92 37 L97 85 L73 90 Z"))
        (accent(&line("M74 52 L88 49 M75 62 L89 59 M76 72 L90 69 M77 81 L86 79")))
    }
}

/// More than one thing is said.
fn talk_on_a_prompt() -> Markup {
    html! { (profile((-6.0, 33.0), 0.68, AJAR)) (bubble()) (accent(&line("M52 13 H89 M52 22 H89 M52 31 H72"))) }
}

/// Lips closed, and a buzz that stays level.
fn easy_hum() -> Markup {
    html! {
        (profile(HEAD, SCALE, CLOSED))
        (accent(&line("M57 63 C59 57 63 57 65 63 C67 69 71 69 73 63 C75 57 79 57 81 63 C83 69 87 69 89 63 C90 60 92 58 95 59")))
    }
}

/// The lips close around a straw, and all the sound goes through it.
fn straw_voicing() -> Markup {
    html! {
        (profile(HEAD, SCALE, CLOSED))
        (line("M51 60 L78 66 M50 67 L77 73"))
        (straight((84.0, 71.0), (98.0, 74.0)))
    }
}

/// What is said stands in it.
pub fn bubble() -> Markup {
    line("M50 5 H91 Q97 5 97 11 V34 Q97 40 91 40 H66 L52 53 L54 40 H50 Q44 40 44 34 V11 Q44 5 50 5 Z")
}
