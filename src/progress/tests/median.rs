use super::*;
use proptest::prelude::*;
use serde::Deserialize;
use statistics::median;

#[derive(Deserialize)]
struct Cases {
    cases: Vec<Case>,
}

#[derive(Deserialize)]
struct Case {
    name: String,
    values: Vec<f64>,
    median: f64,
    low: Option<f64>,
    high: Option<f64>,
    covers: Option<f64>,
}

/// NumPy's median and the binomial quantiles of SciPy.
#[test]
fn medians_and_their_intervals_are_those_of_scipy() {
    let cases: Cases = serde_json::from_str(include_str!("../../../tests/checks/progress/medians.json")).expect("stored values");
    assert!(cases.cases.len() > 30);
    for case in cases.cases {
        let middle = median(&case.values).expect("a median");
        assert!((middle - case.median).abs() < 1e-12, "{}: {middle}", case.name);
        let found = median_interval(&case.values, 0.95);
        assert_eq!(found.map(|found| found.low), case.low, "{}", case.name);
        assert_eq!(found.map(|found| found.high), case.high, "{}", case.name);
        let off = found.zip(case.covers).map_or(0.0, |(found, covers)| (found.covers - covers).abs());
        assert!(off < 1e-9, "{}: covers {off} off", case.name);
    }
}

#[test]
fn too_few_values_are_said_to_be_too_few() {
    assert_eq!(median(&[]), None);
    assert_eq!(median_interval(&[], 0.95), None);
    assert_eq!(median_interval(&[1.0, 2.0], 0.95), None);
    let five = median_interval(&[5.0, 1.0, 4.0, 2.0, 3.0], 0.95).expect("an interval");
    assert_eq!((five.low, five.high, five.covers, five.reaches()), (1.0, 5.0, 0.9375, false), "1 - 2/2^5");
    let six = median_interval(&[5.0, 1.0, 4.0, 2.0, 3.0, 6.0], 0.95).expect("an interval");
    assert_eq!((six.covers, six.reaches()), (0.96875, true));
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(128))]

    #[test]
    fn a_constant_shifts_it_and_order_does_not_matter(mut values in proptest::collection::vec(-1000.0..1000.0_f64, 1..50), up in -500.0..500.0_f64) {
        let (middle, interval) = (median(&values).expect("a median"), median_interval(&values, 0.95));
        let shifted: Vec<f64> = values.iter().map(|value| value + up).collect();
        prop_assert!((median(&shifted).expect("a median") - middle - up).abs() < 1e-9);
        values.reverse();
        prop_assert_eq!(median(&values), Some(middle));
        prop_assert_eq!(median_interval(&values, 0.95), interval);
        if let Some(interval) = interval {
            prop_assert!(interval.low <= middle && middle <= interval.high && (0.0..=1.0).contains(&interval.covers));
            prop_assert_eq!(interval.reaches(), values.len() >= 6);
        }
    }
}
