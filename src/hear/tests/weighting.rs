//! Against IEC 61672-1:2013, table 3 (exact frequencies 1000 * 10^(n/10), values to 0.1 dB).

use crate::hear::weighting::{Weighting, WeightingFilter};

/// n, A, C.
const TABLE: [(i32, f64, f64); 34] = [
    (-20, -70.4, -14.3), (-19, -63.4, -11.2), (-18, -56.7, -8.5), (-17, -50.5, -6.2), (-16, -44.7, -4.4),
    (-15, -39.4, -3.0), (-14, -34.6, -2.0), (-13, -30.2, -1.3), (-12, -26.2, -0.8), (-11, -22.5, -0.5),
    (-10, -19.1, -0.3), (-9, -16.1, -0.2), (-8, -13.4, -0.1), (-7, -10.9, 0.0), (-6, -8.6, 0.0), (-5, -6.6, 0.0),
    (-4, -4.8, 0.0), (-3, -3.2, 0.0), (-2, -1.9, 0.0), (-1, -0.8, 0.0), (0, 0.0, 0.0), (1, 0.6, 0.0), (2, 1.0, -0.1),
    (3, 1.2, -0.2), (4, 1.3, -0.3), (5, 1.2, -0.5), (6, 1.0, -0.8), (7, 0.5, -1.3), (8, -0.1, -2.0), (9, -1.1, -3.0),
    (10, -2.5, -4.4), (11, -4.3, -6.2), (12, -6.6, -8.5), (13, -9.3, -11.2),
];

fn exact_hz(n: i32) -> f64 {
    1000.0 * 10f64.powf(f64::from(n) / 10.0)
}

#[test]
fn formulas_give_the_table() {
    for (n, a, c) in TABLE {
        for (weighting, table) in [(Weighting::A, a), (Weighting::C, c)] {
            let got = weighting.response_db(exact_hz(n));
            assert!((got - table).abs() <= 0.0501, "{weighting:?} at {:.0} Hz: {got:.3}, table {table}", exact_hz(n));
        }
    }
}

#[test]
fn filters_follow_the_table_at_every_rate() {
    for rate_hz in [8000.0, 11_025.0, 16_000.0, 22_050.0, 32_000.0, 44_100.0, 48_000.0] {
        for (weighting, column) in [(Weighting::A, 0), (Weighting::C, 1), (Weighting::Z, 2)] {
            let filter = WeightingFilter::new(weighting, rate_hz);
            for (n, a, c) in TABLE {
                let f_hz = exact_hz(n);
                if f_hz > 0.45 * rate_hz || f_hz < 15.0 {
                    continue;
                }
                let table = [a, c, 0.0][column];
                let got = filter.gain_db(f_hz, rate_hz);
                // Far inside the limits of class 1 (0.7 dB at 1 kHz, wider elsewhere).
                assert!((got - table).abs() < 0.3, "{weighting:?} {rate_hz} {f_hz:.0} Hz: {got:.2}, table {table}");
            }
        }
    }
}

#[test]
fn samples_through_the_filter_get_the_designed_gain() {
    let (rate_hz, f_hz) = (16_000.0, exact_hz(-10));
    let mut filter = WeightingFilter::new(Weighting::A, rate_hz);
    let (mut sum, mut count) = (0.0, 0.0);
    for k in 0..32_000 {
        let y = filter.step((2.0 * std::f64::consts::PI * f_hz * f64::from(k) / rate_hz).sin() as f32);
        if k >= 16_000 {
            sum += y * y;
            count += 1.0;
        }
    }
    let level_db = 10.0 * f64::log10(2.0 * sum / count);
    assert!((level_db + 19.1).abs() < 0.1, "{level_db}");
}
