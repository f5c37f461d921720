//! Doses in words for the questions of `tidecount routine new`.

use routine::UsualDose;

/// "repetitions 3, hold_s 10".
pub fn numbers_in_words(numbers: &[(&'static str, f64)]) -> String {
    let said = numbers.iter().map(|(field, value)| match *field {
        "repetitions" => format!("{value} ×"),
        "sets" => format!("{value} sets"),
        "hold_s" => format!("held {value} s"),
        "target_s" => format!("goal {value} s"),
        "rest_s" => format!("rest {value} s"),
        "next_cue_after_s" => format!("one each {value} s"),
        "in" => format!("in {value}"),
        "out" => format!("out {value}"),
        field => format!("{field} {value}"),
    });
    said.collect::<Vec<_>>().join(", ")
}

/// "3 × 60 s", as far as it is known.
pub fn times_and_hold(repetitions: Option<f64>, hold_s: Option<f64>) -> String {
    match (repetitions, hold_s.filter(|&hold_s| hold_s > 0.0)) {
        (Some(repetitions), Some(hold_s)) => format!("{repetitions} × {hold_s} s"),
        (Some(repetitions), None) => format!("{repetitions} times"),
        (None, Some(hold_s)) => format!("{hold_s} s"),
        (None, None) => "it".to_owned(),
    }
}

/// The question about a dose beyond the usual one, with the source.
pub fn meant_question(dose: &UsualDose, repetitions: Option<f64>, hold_s: Option<f64>) -> String {
    let told = if dose.source == "common practice" { "Usual" } else { "Published" };
    let hold_of = |dose: &UsualDose| dose.hold_s.map(|hold| hold.high());
    let hold_s = hold_s.filter(|_| dose.hold_s.is_some() || dose.repetitions.is_none());
    let usual = if dose.repetitions.is_some() || dose.hold_s.is_some() {
        times_and_hold(dose.repetitions.map(|n| n.high()), hold_of(dose))
    } else {
        dose.text.clone()
    };
    format!("{told}: {usual} ({}; {}). Is {} meant?", dose.source, dose.status, times_and_hold(repetitions, hold_s))
}
