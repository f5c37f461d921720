use super::*;
use crate::Z_95;
use proptest::prelude::*;
use serde::Deserialize;

#[derive(Deserialize)]
struct Cases<T> {
    cases: Vec<T>,
}

#[derive(Deserialize)]
struct Case {
    name: String,
    x: Vec<f64>,
    y: Vec<f64>,
    z: f64,
    slope: f64,
    intercept: f64,
    low: f64,
    high: f64,
}

fn near(one: f64, other: f64) -> bool {
    (one - other).abs() <= 1e-9 * (1.0 + other.abs())
}

/// `scipy.stats.theilslopes`: ties in x and y, few values, outliers; among them the examples of Sen 1968 and Hollander & Wolfe.
#[test]
fn slopes_are_those_of_scipy() {
    let cases: Cases<Case> = serde_json::from_str(include_str!("../../../tests/checks/progress/slopes.json")).expect("stored values");
    assert!(cases.cases.len() > 70);
    for case in cases.cases {
        let line = theil_sen(&case.x, &case.y, case.z, 1.0).unwrap_or_else(|| panic!("{}: no line", case.name));
        let same =
            near(line.slope, case.slope) && near(line.intercept, case.intercept) && near(line.low, case.low) && near(line.high, case.high);
        assert!(same, "{}: {line:?}, SciPy {} {} to {} at {}", case.name, case.slope, case.low, case.high, case.intercept);
    }
}

/// Sen 1968, JASA 63:1379, his example as it stands in SciPy's own tests and in the R package deming: slope 4, 93 % interval
/// 26/7 to 35/8.
#[test]
fn the_example_of_sen_comes_out() {
    let line =
        theil_sen(&[1.0, 2.0, 3.0, 4.0, 10.0, 12.0, 18.0], &[9.0, 15.0, 19.0, 20.0, 45.0, 55.0, 78.0], 1.811_910_673, 1.0).expect("a line");
    assert!(near(line.slope, 4.0) && near(line.low, 26.0 / 7.0) && near(line.high, 35.0 / 8.0), "{line:?}");
}

#[test]
fn nothing_comes_of_nothing() {
    assert_eq!(theil_sen(&[], &[], Z_95, 1.0), None);
    assert_eq!(theil_sen(&[1.0], &[2.0], Z_95, 1.0), None);
    assert_eq!(theil_sen(&[1.0, 1.0], &[2.0, 3.0], Z_95, 1.0), None, "all x alike");
    assert_eq!(theil_sen(&[1.0, 2.0], &[2.0], Z_95, 1.0), None);
    assert_eq!(theil_sen(&[1.0, 2.0], &[f64::NAN, 3.0], Z_95, 1.0), None);
    assert_eq!(slope(&[]), None);
    assert_eq!(sd_about_line(&[]), None);
}

fn days(step: i64, values: &[f64]) -> Vec<DayValue> {
    let first = jiff::civil::date(2026, 1, 5);
    let day = |index: usize| first.checked_add(jiff::Span::new().days(step * i64::try_from(index).unwrap_or(0))).expect("a day");
    values.iter().enumerate().map(|(index, value)| DayValue { day: day(index), trials: vec![*value], median: *value }).collect()
}

#[test]
fn a_slope_needs_five_days_and_a_fortnight() {
    assert_eq!(slope(&days(5, &[1.0, 2.0, 3.0, 4.0])), None);
    assert_eq!(slope(&days(3, &[1.0, 2.0, 3.0, 4.0, 5.0])), None, "twelve days");
    let found = slope(&days(7, &[1.0, 2.0, 3.0, 4.0, 5.0])).expect("a slope");
    assert!(near(found.per_week, 1.0) && near(found.at_start, 1.0), "{found:?}");
    assert_eq!((found.days, found.span_days), (5, 28));
    assert!(!found.includes_none());
    assert_eq!(sd_about_line(&days(7, &[1.0, 2.0, 3.0, 4.0, 5.0])).map(|sd| sd < 1e-12), Some(true), "a steady change is no scatter");
}

#[test]
fn wandering_widens_the_interval() {
    // A slow wave: days resemble their neighbours, and the plain interval would call it a trend.
    let wave: Vec<f64> = (0..60).map(|day| 12.0 + 2.0 * (f64::from(day) / 40.0 * std::f64::consts::TAU).sin()).collect();
    let found = slope(&days(1, &wave)).expect("a slope");
    assert!(found.variance_factor > 3.0, "{found:?}");
    let x: Vec<f64> = (0..60).map(|day| f64::from(day) / 7.0).collect();
    let plain = theil_sen(&x, &wave, Z_95, 1.0).expect("a line");
    assert!(found.interval.low < plain.low && found.interval.high > plain.high);
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(64))]

    #[test]
    fn a_line_added_adds_its_slope(y in proptest::collection::vec(-50.0..50.0_f64, 5..40), more in -3.0..3.0_f64, up in -100.0..100.0_f64) {
        let x: Vec<f64> = (0..y.len()).map(|index| index as f64).collect();
        let raised: Vec<f64> = x.iter().zip(&y).map(|(x, y)| y + up + more * x).collect();
        let (one, other) = (theil_sen(&x, &y, Z_95, 1.0).expect("a line"), theil_sen(&x, &raised, Z_95, 1.0).expect("a line"));
        for (one, other) in [(one.slope, other.slope), (one.low, other.low), (one.high, other.high)] {
            prop_assert!((other - one - more).abs() < 1e-9);
        }
        prop_assert!(one.low <= one.slope && one.slope <= one.high);
    }

    #[test]
    fn finite_values_give_finite_figures(y in proptest::collection::vec(-1e6..1e6_f64, 5..60), step in 1..9_i64) {
        let days = days(step, &y);
        if let Some(found) = slope(&days) {
            let all = [found.per_week, found.at_start, found.interval.low, found.interval.high, found.variance_factor];
            prop_assert!(all.iter().all(|value| value.is_finite()), "{found:?}");
            prop_assert!(found.variance_factor >= 1.0);
        }
        prop_assert!(sd_about_line(&days).is_none_or(f64::is_finite));
    }
}
