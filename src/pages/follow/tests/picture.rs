use super::*;
use routine::{Hearing, check_text};
use speak::Words;
use std::collections::BTreeSet;

fn steps() -> Vec<Step> {
    let text = r#"
title = "Evening"
[[step]]
exercise = "head-lift-sustained"
cautions_acknowledged = true
[[step]]
exercise = "neck-turns"
posture = "standing"
cautions_acknowledged = true
[[step]]
exercise = "nasal-breathing"
"#;
    check_text("routine", text, Hearing::default()).expect("a routine").routine.steps
}

#[test]
fn each_moment_has_the_picture_of_what_is_done_then() {
    let steps = steps();
    let name = |prompt: &str, step: Option<usize>| picture_of(prompt, step.map(|n| &steps[n])).map(|picture| picture.name);
    for (prompt, step, picture) in [
        ("ex-head-lift-sustained-short", Some(0), Some("head-lift-sustained")),
        ("ex-head-lift-sustained-phase-lift", Some(0), Some("head-lift-sustained")),
        ("cue-words-shown", Some(0), Some("head-lift-sustained")),
        ("resting-shown", Some(0), Some("lying")),
        ("rise-side", None, Some("rise-side")),
        ("rise-stand", Some(0), Some("rise-stand")),
        ("ex-neck-turns-short", Some(1), Some("standing")),
        ("ex-neck-turns-phase-right", Some(1), Some("neck-turns-right")),
        ("paced-out", Some(2), Some("nasal-breathing-out")),
        ("stopped-shown", Some(0), None),
        ("unwell-shown", Some(0), None),
        ("offer-rest-shown", Some(2), None),
        ("read-phrase-shown", Some(2), None),
        ("resting-shown", None, None),
    ] {
        assert_eq!(name(prompt, step), picture, "{prompt}");
    }
}

#[test]
fn every_picture_is_told_in_a_sentence_and_no_words_are_without_one() {
    let words = Words::english().expect("the catalogue");
    let drawn: BTreeSet<String> = pictures::all().map(|picture| picture.described()).collect();
    let told: BTreeSet<String> = words.keys().filter(|key| key.starts_with("picture-")).map(str::to_owned).collect();
    assert_eq!(drawn, told);
    for key in told {
        let text = words.text(&session::Line { key: key.clone(), args: Vec::new() }).expect("words");
        assert!(text.starts_with("A person") && text.ends_with('.') && text.len() < 130, "{key}: {text}");
    }
}
