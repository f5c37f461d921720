use super::*;
use serde::Deserialize;

#[derive(Deserialize)]
struct Cases {
    cases: Vec<Likeness>,
}

#[derive(Deserialize)]
struct Likeness {
    n: usize,
    residuals: Vec<f64>,
    factor: f64,
}

fn near(one: f64, other: f64) -> bool {
    (one - other).abs() <= 1e-9 * (1.0 + other.abs())
}

/// Hamed & Rao 1998 as pymannkendall works it out, seven lags; below 1 it is not believed here.
#[test]
fn likeness_of_neighbours_is_that_of_pymannkendall() {
    let cases: Cases = serde_json::from_str(include_str!("../../../tests/checks/progress/likeness.json")).expect("stored values");
    assert!(cases.cases.iter().any(|case| case.factor > 1.5) && cases.cases.iter().any(|case| case.factor < 1.0));
    for case in cases.cases {
        let factor = variance_factor(&case.residuals, 7);
        assert!(near(factor, case.factor.max(1.0)), "n = {}: {factor}, pymannkendall {}", case.n, case.factor);
    }
}

/// Table of Student's t at 0.975: 2.228 with 10 degrees of freedom, 12.706 with 1 (any handbook).
#[test]
fn few_independent_days_ask_for_more() {
    assert!((quantile_95(48, 4.0) - 2.228).abs() < 0.001);
    assert!((quantile_95(6, 5.0) - 12.706).abs() < 0.001);
    assert!(near(quantile_95(56, 1.0), Z_95));
}

/// A memory that fades by seven tenths a day: (1 + r)/(1 − r) of it where nothing hides it, as much where a third of the scatter is
/// noise.
#[test]
fn noise_does_not_hide_good_and_bad_weeks() {
    let wave: Vec<f64> = (0..400).map(|n| (f64::from(n) / 9.0).sin()).collect();
    let quiet = memory_factor(&wave, 0.0);
    let spread = statistics::sd(&wave).expect("a spread").powi(2);
    assert!(quiet > 15.0 && memory_factor(&wave, spread / 3.0) >= quiet, "{quiet}");
    let jagged: Vec<f64> = (0..400).map(|n| if n % 2 == 0 { 1.0 } else { -1.0 }).collect();
    assert!(near(memory_factor(&jagged, 0.0), 1.0));
    assert!(near(memory_factor(&[1.0; 20], 1.0), 1.0), "nothing scatters");
}
