use super::super::prescribed::routines;
use super::*;
use crate::conditions::Conditions;
use crate::samples::{after, day, practice, practised, trial};

const TEXT: &str = "title = \"Evening\"\n[[step]]\nexercise = \"long-ah\"\ntarget_s = 12\n";

/// Ten holds a day before the end; `reached` of them reach 12 s.
fn of(reached: usize, trials: usize, text: &str) -> Vec<ProposedDose> {
    let first = day("2026-11-02");
    let held_s = |n: usize| if n < reached { 12.5 } else { 9.0 };
    let holds = (0..trials)
        .map(|n| trial(first, 1, i64::try_from(n).unwrap_or(0), "long-ah", &[(Measure::HoldS, held_s(n))], Conditions::default()));
    let done = practised(vec![practice(1, first, "Evening", text, &[(1, "long-ah", 3, 3)])], holds.collect());
    let window = Window { from: first, to: after(first, 1) };
    proposed(&done, &routines(&done), window)
}

#[test]
fn only_what_nearly_always_or_hardly_ever_succeeds_proposes_a_step() {
    let one = |reached| ProposedDose { exercise: "long-ah".into(), target_s: 12.0, reached, of: 10 };
    assert_eq!(of(9, 10, TEXT), [one(9)]);
    assert!(of(9, 10, TEXT)[0].is_up());
    assert_eq!(of(2, 10, TEXT), [one(2)]);
    assert!(!of(2, 10, TEXT)[0].is_up());
    assert!(of(5, 10, TEXT).is_empty());
    assert!(of(9, 9, TEXT).is_empty(), "too few trials");
    assert!(of(10, 10, "title = \"Evening\"\n[[step]]\nexercise = \"long-ah\"\n").is_empty(), "no goal");
}
