use super::*;
use crate::chart::by_scale;
use jiff::civil::date;
use model::LevelCalibration;
use progress::{Baseline, Break, BreakReason, Conditions, DayValue, Measure, Segment};

fn words<'a>() -> PageWords<'a> {
    PageWords { described: "In words.", unit: "dB", tick: &|day, months| day.strftime(if months { "%b %Y" } else { "%-d %b" }).to_string() }
}

fn segment(calibration: LevelCalibration, days: &[(i8, &[f64])]) -> Segment {
    let day =
        |(day, trials): &(i8, &[f64])| DayValue { day: date(2026, 11, *day), trials: trials.to_vec(), median: trials[trials.len() / 2] };
    Segment {
        broken_by: None,
        days: days.iter().map(day).collect(),
        baseline: None,
        weeks: Vec::new(),
        slope: None,
        change: None,
        conditions: Conditions { calibration, ..Conditions::default() },
    }
}

fn drawn(measure: Measure, segments: Vec<Segment>) -> Option<String> {
    let series = Series { exercise: "long-ah".into(), measure, segments, discarded: Vec::new(), counted: 1 };
    page_chart(Window { from: date(2026, 11, 2), to: date(2026, 11, 29) }, &series, &words())
}

#[test]
fn every_day_of_the_window_is_drawn_within_the_frame_and_nothing_carries_a_style() {
    let days: Vec<(i8, &[f64])> = (1..=28).map(|day| (day, [8.0, 11.0, 40.0].as_slice())).collect();
    let svg = drawn(Measure::HoldS, vec![segment(LevelCalibration::None, &days)]).expect("a drawing");
    assert_eq!(svg.matches("<circle").count(), 27, "the first lies before the window");
    assert!(!svg.contains("style="));
    for attribute in ["cx", "x", "x1", "x2"] {
        let name = format!(" {attribute}=\"");
        let values = svg.split(&name).skip(1).filter_map(|rest| rest.split('"').next()?.parse::<i32>().ok());
        assert!(values.into_iter().all(|x| (0..=WIDTH).contains(&x)), "{attribute}");
    }
}

#[test]
fn nothing_and_one_value_are_no_trouble() {
    assert_eq!(drawn(Measure::HoldS, Vec::new()), None);
    assert_eq!(drawn(Measure::HoldS, vec![segment(LevelCalibration::None, &[(1, &[5.0])])]), None, "before the window");
    let svg = drawn(Measure::HoldS, vec![segment(LevelCalibration::None, &[(9, &[5.0])])]).expect("a drawing");
    assert!(svg.contains("<circle") && !svg.contains("NaN") && !svg.contains("inf"), "{svg}");
}

/// As on paper: a length begins at nothing, and small scatter does not look large.
#[test]
fn its_scale_is_the_one_of_the_report() {
    let svg = drawn(Measure::HoldS, vec![segment(LevelCalibration::None, &[(9, &[11.0, 12.0])])]).expect("a drawing");
    assert!(svg.contains(">0</text>") && svg.contains(">15</text>"), "{svg}");
    // Relative and calibrated levels have a field each, and neither bears the numbers of the other.
    let mut calibrated = segment(LevelCalibration::Meter, &[(16, &[70.0, 72.0])]);
    let reasons = vec![BreakReason::Calibration { from: "none".into(), to: "meter".into() }];
    calibrated.broken_by = Some(Break { before: date(2026, 11, 9), after: date(2026, 11, 16), reasons });
    let segments = vec![segment(LevelCalibration::None, &[(9, &[-30.0, -28.0])]), calibrated];
    let mixed = Series { exercise: "long-ah".into(), measure: Measure::LevelDb, segments, discarded: Vec::new(), counted: 1 };
    let fields: Vec<String> = by_scale(&mixed).into_iter().filter_map(|part| drawn(Measure::LevelDb, part.segments)).collect();
    let [relative, calibrated] = fields.as_slice() else { panic!("two fields: {fields:?}") };
    assert!(relative.contains(">\u{2212}30</text>") && !relative.contains(">70</text>"), "{relative}");
    assert!(calibrated.contains(">70</text>") && !calibrated.contains(">\u{2212}30</text>"), "{calibrated}");
    assert_eq!((relative.matches("class=\"break\"").count(), calibrated.matches("class=\"break\"").count()), (0, 1));
    // Hold times do not depend on the calibration and stay together.
    assert_eq!(by_scale(&Series { measure: Measure::HoldS, ..mixed }).len(), 1);
}

#[test]
fn a_baseline_reaches_over_its_stretch() {
    let mut one = segment(LevelCalibration::None, &[(9, &[10.0]), (20, &[14.0])]);
    let (from, to) = (date(2026, 11, 9), date(2026, 11, 20));
    one.baseline =
        Some(Baseline { from, to, days: 3, trials: 3, median: 11.0, interval: None, low: 10.0, high: 12.0, day_sd: 1.0, within_sd: None });
    let svg = drawn(Measure::HoldS, vec![one]).expect("a drawing");
    // Seven days of 28 from the left, and twelve days wide.
    assert!(svg.contains("<rect class=\"baseline\" x=\"273\" width=\"347\""), "{svg}");
}
