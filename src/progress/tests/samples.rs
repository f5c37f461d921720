//! Practices and trials for the tests of this room.

use super::{Conditions, Discard, Measure, Microphone, Practice, Practised, StepResult, Trial, Value};
use jiff::{Span, ZonedDateTime, civil::Date};

pub fn day(text: &str) -> Date {
    text.parse().expect("a date in a test")
}

pub fn after(first: Date, days: i64) -> Date {
    first.checked_add(Span::new().days(days)).expect("a date in a test")
}

pub fn at(day: Date) -> ZonedDateTime {
    format!("{day}T18:30:00[Europe/Berlin]").parse().expect("a time in a test")
}

pub fn microphone(name: &str) -> Microphone {
    Microphone { system: "PulseAudio".into(), name: name.into(), rate_hz: 48_000, gain: "60 %".into() }
}

/// A whole trial with these values, judged.
pub fn trial(day: Date, session: i64, seq: i64, exercise: &str, values: &[(Measure, f64)], conditions: Conditions) -> Trial {
    let duration_s = values.first().map_or(1.0, |(_, value)| *value);
    let value = |(measure, value): &(Measure, f64)| Value {
        measure: *measure,
        value: *value,
        discard: Discard::of(*measure, &conditions, true, duration_s),
    };
    let values = values.iter().map(value).collect();
    let exercise = exercise.to_owned();
    Trial { when: at(day), day, session, seq, exercise, position: None, values, conditions, complete: true, duration_s, misdated: false }
}

/// A practice with steps (number, exercise, done, prescribed).
pub fn practice(session: i64, day: Date, title: &str, text: &str, steps: &[(u32, &str, u32, u32)]) -> Practice {
    let step = |&(step, exercise, done, prescribed): &(u32, &str, u32, u32)| StepResult {
        step,
        exercise: exercise.to_owned(),
        ramp_stage: None,
        done,
        prescribed: Some(prescribed),
        stopped: (done < prescribed).then_some(model::StepReason::FinishedEarly),
    };
    Practice {
        session,
        began: at(day),
        day,
        routine_title: title.to_owned(),
        routine_text: text.to_owned(),
        package: None,
        software: "tidecount 0.1.0".to_owned(),
        end_reason: Some("completed".to_owned()),
        steps_done: 0,
        steps_prescribed: 0,
        minutes: 10.0,
        parts: 1,
        steps: steps.iter().map(step).collect(),
        misdated: false,
    }
}

pub fn practised(practices: Vec<Practice>, trials: Vec<Trial>) -> Practised {
    Practised { client: "client".to_owned(), practices, trials, ..Practised::default() }
}
