//! Entries of a journal for tests.

use model::{Command, Entry, Fact, Position, RatedOver, Rating};
use proptest::prelude::*;

pub fn at(step: u32, set: u32, repetition: u32) -> Option<Position> {
    Some(Position { step, set, repetition })
}

pub fn entry(at_s: f64, position: Option<Position>, fact: Fact) -> Entry {
    Entry { at_s, fact, position }
}

pub fn begun() -> Entry {
    entry(0.0, None, Fact::SessionBegun { routine: "Evening routine".into(), steps: 2, software: "tidecount 0.1.0".into() })
}

pub fn hold(at_s: f64, position: Option<Position>, exercise: &str, duration_s: f64, complete: bool) -> Entry {
    let fact = Fact::HoldMeasured {
        exercise: exercise.into(),
        onset_s: at_s - duration_s,
        offset_s: at_s,
        duration_s,
        f0_median_hz: 182.3456,
        f0_span_st: 0.5512,
        level_mean_db: -24.126,
        level_fall_db: 3.4561,
        level_weighting: "A".into(),
        level_calibrated: false,
        f0_sd_st: None,
        level_slope_db_per_s: None,
        level_terms: None,
        quality: None,
        climb: None,
        breaks: 1,
        masked_s: 0.0,
        complete,
    };
    entry(at_s, position, fact)
}

/// Any number a fault could bring in, the non-finite ones among them.
fn measured() -> impl Strategy<Value = f64> {
    prop_oneof![8 => -200.0..2000.0_f64, 1 => Just(f64::NAN), 1 => Just(f64::INFINITY), 1 => Just(f64::NEG_INFINITY), 1 => Just(-0.0), 1 => Just(1e-12)]
}

fn seconds() -> impl Strategy<Value = f64> {
    0.0..100_000.0_f64
}

fn fact() -> impl Strategy<Value = Fact> {
    let text = || ".{0,20}";
    prop_oneof![
        (text(), seconds(), measured(), measured(), measured(), measured(), any::<bool>()).prop_map(
            |(exercise, duration_s, f0_median_hz, f0_span_st, level_mean_db, level_fall_db, complete)| Fact::HoldMeasured {
                exercise,
                onset_s: 1.0,
                offset_s: 1.0 + duration_s,
                duration_s,
                f0_median_hz,
                f0_span_st,
                level_mean_db,
                level_fall_db,
                level_weighting: "A".into(),
                level_calibrated: complete,
                f0_sd_st: None,
                level_slope_db_per_s: None,
                level_terms: None,
                quality: None,
                climb: None,
                breaks: 2,
                masked_s: 0.0,
                complete,
            }
        ),
        (text(), seconds(), measured(), measured(), any::<u32>()).prop_map(
            |(exercise, duration_s, rate_hz, irregularity_pct, syllables)| {
                Fact::SyllablesCounted { exercise, syllables, duration_s, rate_hz, irregularity_pct }
            }
        ),
        (text(), text(), seconds(), measured(), measured()).prop_map(|(exercise, phrase, duration_s, level_mean_db, f0_median_hz)| {
            Fact::PhraseRead {
                exercise,
                phrase,
                duration_s,
                level_mean_db,
                f0_median_hz,
                level_weighting: "A".into(),
                level_calibrated: false,
                level_terms: None,
                prosody: None,
            }
        }),
        (text(), proptest::option::of(text()), any::<bool>(), seconds()).prop_map(|(clue, answer, correct, duration_s)| {
            Fact::QuestionAnswered { exercise: "word-questions".into(), clue, answer, correct, hint_given: false, duration_s }
        }),
        (text(), 0.0..=1.0_f64).prop_map(|(text, confidence)| Fact::CommandHeard { command: Command::GoOn, text, confidence }),
        (proptest::option::of(text()), proptest::option::of(text()), text())
            .prop_map(|(exercise, exercise_before, reason)| Fact::SafetyStop { exercise, exercise_before, reason: reason.into() }),
        (text(), any::<u32>(), any::<u32>()).prop_map(|(exercise, repetitions_done, repetitions_prescribed)| Fact::StepDone {
            exercise,
            repetitions_done,
            repetitions_prescribed
        }),
        seconds().prop_map(|duration_s| Fact::Rested { duration_s }),
        proptest::option::of(0..=10_u8).prop_map(|value| Fact::Rated { what: Rating::Effort, over: RatedOver::Practice, value }),
        (text(), text()).prop_map(|(sign, answer)| Fact::SwallowSign { sign: sign.into(), answer: answer.into() }),
        (proptest::option::of(seconds()), proptest::option::of(seconds()), proptest::option::of(text()))
            .prop_map(|(from_s, until_s, text)| Fact::MomentTold { from_s, until_s, text }),
        (any::<u32>(), proptest::option::of(text())).prop_map(|(days, reason)| Fact::DaysMissed { days, reason: reason.map(Into::into) }),
        text().prop_map(|from| Fact::SessionResumed { from }),
        (proptest::option::of(any::<bool>()), any::<u32>()).prop_map(|(given, days)| Fact::SoundConsent { given, days }),
        proptest::collection::vec(text(), 0..3).prop_map(|exercises| Fact::Agreement {
            given: true,
            exercises,
            answer: Some("yes".to_owned().into()),
            dose_band: Some(2),
            posture: None,
        }),
    ]
}

pub fn any_entry() -> impl Strategy<Value = Entry> {
    let position = proptest::option::of((1_u32.., 1_u32.., 1_u32..).prop_map(|(step, set, repetition)| Position { step, set, repetition }));
    (seconds(), fact(), position).prop_map(|(at_s, fact, position)| Entry { at_s, fact, position })
}
