use super::*;
use crate::{Anova, baseline, two_way};
use jiff::civil::date;
use proptest::prelude::*;
use serde::Deserialize;

#[derive(Deserialize)]
struct Cases<T> {
    cases: Vec<T>,
}

#[derive(Deserialize)]
struct Table {
    name: String,
    rows: Vec<Vec<f64>>,
    ms_subjects: f64,
    ms_trials: f64,
    ms_error: f64,
    icc_2_1: f64,
    icc_3_1: f64,
}

#[derive(Deserialize)]
struct Days {
    days: Vec<Vec<f64>>,
    sem: f64,
    df: u32,
    share: Option<f64>,
    mdc90: f64,
    mdc95: f64,
}

fn near(one: f64, other: f64) -> bool {
    (one - other).abs() <= 1e-8 * (1.0 + other.abs())
}

fn tables() -> Vec<Table> {
    let cases: Cases<Table> = serde_json::from_str(include_str!("../../../tests/checks/progress/tables.json")).expect("stored values");
    cases.cases
}

/// Analyses of variance of statsmodels.
#[test]
fn analyses_of_variance_are_those_of_statsmodels() {
    for case in tables() {
        let found = two_way(&case.rows).expect("an analysis");
        let same =
            near(found.ms_subjects, case.ms_subjects) && near(found.ms_trials, case.ms_trials) && near(found.ms_error, case.ms_error);
        assert!(same, "{}: {found:?}", case.name);
        assert!(
            near(found.icc_2_1().expect("a ratio"), case.icc_2_1) && near(found.icc_3_1().expect("a ratio"), case.icc_3_1),
            "{}",
            case.name
        );
    }
}

fn example(name: &str) -> Anova {
    let table = tables().into_iter().find(|table| table.name == name).expect("the example");
    two_way(&table.rows).expect("an analysis")
}

/// Weir 2005, J Strength Cond Res 19:231, data set A: mean squares 30.2 and 57.1, ICC(2,1) and ICC(3,1) 0.95, SEM 7.6, minimal
/// difference 20.9 (data and mean squares as quoted in public re-workings of the paper; SEM and difference follow from them).
#[test]
fn the_example_of_weir_comes_out() {
    let found = example("Weir 2005, data set A");
    assert!((found.ms_trials - 30.25).abs() < 0.1 && (found.ms_error - 57.1).abs() < 0.05, "{found:?}");
    assert_eq!(format!("{:.2} {:.2}", found.icc_2_1().expect("a ratio"), found.icc_3_1().expect("a ratio")), "0.95 0.95");
    let sem = found.ms_error.sqrt();
    assert_eq!(format!("{sem:.1} {:.1}", minimal_change(sem, Z_95)), "7.6 20.9");
}

/// Shrout & Fleiss 1979, Psychol Bull 86:420, table 4: ICC(2,1) 0.29, ICC(3,1) 0.71; ICC(1,1) 0.17.
#[test]
fn the_example_of_shrout_and_fleiss_comes_out() {
    let found = example("Shrout & Fleiss 1979");
    assert_eq!(format!("{:.2} {:.2}", found.icc_2_1().expect("a ratio"), found.icc_3_1().expect("a ratio")), "0.29 0.71");
    let rows = tables().into_iter().find(|table| table.name == "Shrout & Fleiss 1979").expect("the example").rows;
    let groups: Vec<&[f64]> = rows.iter().map(Vec::as_slice).collect();
    assert_eq!(format!("{:.2}", between_share(&groups).expect("a share")), "0.17");
}

/// Pooled variances of statsmodels over days with different numbers of trials.
#[test]
fn scatter_within_days_is_that_of_statsmodels() {
    let cases: Cases<Days> = serde_json::from_str(include_str!("../../../tests/checks/progress/groups.json")).expect("stored values");
    for case in cases.cases {
        let groups: Vec<&[f64]> = case.days.iter().map(Vec::as_slice).collect();
        let found = within(&groups).expect("a scatter");
        assert!(near(found.sem, case.sem) && found.df == case.df, "{found:?}, statsmodels {} on {}", case.sem, case.df);
        assert!(near(minimal_change(found.sem, Z_90), case.mdc90) && near(minimal_change(found.sem, Z_95), case.mdc95));
        match (between_share(&groups), case.share) {
            (Some(found), Some(share)) => assert!(near(found, share), "{found}, statsmodels {share}"),
            (found, share) => assert_eq!(found, share),
        }
    }
}

fn days(values: &[&[f64]]) -> Vec<DayValue> {
    let first = date(2026, 3, 2);
    let day = |index: usize| first.checked_add(jiff::Span::new().days(i64::try_from(index).unwrap_or(0))).expect("a day");
    values
        .iter()
        .enumerate()
        .map(|(index, trials)| DayValue { day: day(index), trials: trials.to_vec(), median: median(trials).expect("trials") })
        .collect()
}

fn worked(values: &[&[f64]]) -> Option<Change> {
    let days = days(values);
    change(&days, crate::sd_about_line(&days), baseline(&days).as_ref())
}

#[test]
fn the_larger_scatter_counts() {
    // Within a day nearly alike, from day to day not at all: three good trials on one good day are no change.
    let found =
        worked(&[&[10.0, 10.1], &[12.0, 12.1], &[9.0, 9.1], &[13.0, 13.1], &[11.0, 11.1], &[13.5, 13.6], &[12.9, 13.0], &[13.2, 13.3]])
            .expect("a change");
    assert_eq!(found.basis, ScatterBasis::BetweenDays);
    assert!(found.mdc95 > 10.0 * found.mdc95_trials.expect("repeated trials"), "{found:?}");
    assert_eq!(found.exceeds_95, Some(false), "{found:?}");
    assert!(found.from_baseline.is_some_and(|change| change > 1.0));
    // The other way round.
    let found = worked(&[&[10.0, 14.0], &[10.1, 14.1], &[9.9, 13.9], &[10.0, 14.0], &[10.0, 14.0]]).expect("a change");
    assert_eq!(found.basis, ScatterBasis::WithinDay);
    assert!(near(found.mdc95, 1.96 * 2.0_f64.sqrt() * 8.0_f64.sqrt()), "{found:?}");
    assert_eq!(found.from_baseline, None, "there are no days but the baseline's");
}

#[test]
fn where_nothing_is_known_nothing_is_said() {
    assert_eq!(worked(&[]), None);
    assert_eq!(worked(&[&[1.0, 2.0], &[1.0, 3.0]]), None, "two days");
    assert_eq!(worked(&[&[1.0], &[2.0], &[3.0]]), None, "no repeated trials and few days");
    assert_eq!(
        worked(&[&[5.0, 5.0], &[5.0, 5.0], &[5.0, 5.0], &[5.0, 5.0], &[5.0, 5.0], &[6.0, 6.0]]).map(|found| found.sem > 0.0),
        Some(true)
    );
    assert_eq!(worked(&[&[5.0, 5.0], &[5.0, 5.0], &[5.0, 5.0]]), None, "trials that do not scatter at all say nothing about scatter");
    assert_eq!(two_way(&[]), None);
    assert_eq!(two_way(&[vec![1.0, 2.0], vec![1.0]]), None, "a gap");
    assert_eq!(between_share(&[]), None);
}

#[test]
fn one_good_day_is_no_latest() {
    let mut values: Vec<&[f64]> = vec![&[10.0, 10.4]; 5];
    values.push(&[19.0, 19.4]);
    values.push(&[19.0, 19.4]);
    assert_eq!(worked(&values).expect("a change").from_baseline, None, "two days behind the baseline");
    values.push(&[19.0, 19.4]);
    let found = worked(&values).expect("a change");
    assert_eq!((found.latest_days, found.from_baseline.map(|change| change.round())), (3, Some(9.0)));
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(64))]

    #[test]
    fn a_constant_changes_no_scatter(values in proptest::collection::vec(proptest::collection::vec(0.0..40.0_f64, 1..5), 5..20), up in -100.0..100.0_f64) {
        let shifted: Vec<Vec<f64>> = values.iter().map(|day| day.iter().map(|value| value + up).collect()).collect();
        let (one, other) = (worked(&values.iter().map(Vec::as_slice).collect::<Vec<_>>()), worked(&shifted.iter().map(Vec::as_slice).collect::<Vec<_>>()));
        prop_assert_eq!(one.is_some(), other.is_some());
        if let Some((one, other)) = one.zip(other) {
            prop_assert!((one.mdc95 - other.mdc95).abs() < 1e-6 && one.mdc95 >= one.mdc90 && one.mdc90 >= one.sem);
            prop_assert!(one.mdc95_trials.is_none_or(|trials| trials <= one.mdc95 + 1e-9), "never smaller than the trials' own");
            prop_assert!([one.sem, one.mdc90, one.mdc95].iter().all(|value| value.is_finite()));
        }
    }
}
