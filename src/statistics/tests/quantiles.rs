use super::*;

#[test]
fn medians_are_the_same_however_they_are_found() {
    for values in [vec![3.0], vec![3.0, -1.0], vec![5.0, 1.0, 4.0], vec![2.0, 9.0, -0.0, 7.5, 7.5, 1.0]] {
        let mut mixed = values.clone();
        let median = median(&values);
        assert_eq!(median_in_place(&mut mixed), median);
        assert_eq!(quantile(&mut mixed, 0.5), median);
    }
    assert_eq!((upper_median(&mut [2.0, 9.0, 7.0, 1.0]), upper_median(&mut [])), (Some(7.0), None));
    assert_eq!(median(&[2.0, 9.0, 7.0, 1.0]), Some(4.5));
    assert_eq!(
        (median(&[]), median_in_place(&mut []), quantile(&mut [], 0.5), nearest_place(&[], 0.5), nearest_rank(&[], 0.5)),
        (None, None, None, None, None)
    );
}

/// R 4: `quantile(c(1, 2, 4, 8), c(.1, .9), type = 7)` and `type = 1`, worked out by hand.
#[test]
fn the_three_quantiles_differ_as_the_table_says() {
    let mut values = [8.0, 1.0, 4.0, 2.0];
    assert!((quantile(&mut values, 0.1).expect("a value") - 1.3).abs() < 1e-12);
    assert!((quantile(&mut values, 0.9).expect("a value") - 6.8).abs() < 1e-12);
    assert_eq!((nearest_place(&values, 0.1), nearest_place(&values, 0.9), nearest_place(&values, 0.5)), (Some(1.0), Some(8.0), Some(4.0)));
    assert_eq!((nearest_rank(&values, 0.25), nearest_rank(&values, 0.26), nearest_rank(&values, 1.0)), (Some(1.0), Some(2.0), Some(8.0)));
}

#[test]
fn scatter_needs_two_values() {
    assert_eq!((sd(&[4.0]), sd(&[1.0, 3.0])), (None, Some(2.0_f64.sqrt())));
    assert!(mean(&[]).is_nan());
}
