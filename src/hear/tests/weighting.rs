//! Against IEC 61672-1:2013: table 3 (frequency weightings), table 4 (tonebursts), 5.8 (decay of the time weightings). The
//! values stand with their sources in `tests/checks/iec61672/`.

use crate::level::power_db;
use crate::time_weighting::{SoundLevelMeter, TimeWeighted, TimeWeighting};
use crate::weighting::{Weighting, WeightingFilter};
use std::f64::consts::PI;

const RATES_HZ: [f64; 8] = [8000.0, 11_025.0, 16_000.0, 22_050.0, 32_000.0, 44_100.0, 48_000.0, 96_000.0];
const TABLE_3: &str = include_str!("../../../tests/checks/iec61672/table3.tsv");
const TABLE_4: &str = include_str!("../../../tests/checks/iec61672/table4.tsv");

struct Row {
    f_hz: f64,
    wanted_db: [f64; 3],
    upper_db: f64,
    lower_db: f64,
}

fn rows() -> Vec<Row> {
    let lines = TABLE_3.lines().filter(|l| !l.starts_with(['#', 'n']));
    let rows = lines.map(|line| {
        let cells: Vec<f64> = line.split('\t').map(|c| c.parse().unwrap()).collect();
        let f_hz = 1000.0 * 10f64.powf(cells[0] / 10.0);
        Row { f_hz, wanted_db: [cells[2], cells[3], cells[4]], upper_db: cells[5], lower_db: cells[6] }
    });
    rows.collect()
}

const WEIGHTINGS: [Weighting; 3] = [Weighting::A, Weighting::C, Weighting::Z];

#[test]
fn formulas_give_the_table() {
    assert_eq!(rows().len(), 34);
    for row in rows() {
        for (weighting, table) in WEIGHTINGS.into_iter().zip(row.wanted_db) {
            let got = weighting.response_db(row.f_hz);
            assert!((got - table).abs() <= 0.0501, "{weighting:?} at {:.0} Hz: {got:.3}, table {table}", row.f_hz);
        }
    }
}

#[test]
fn filters_keep_class_1_at_every_frequency_that_the_rate_carries() {
    for rate_hz in RATES_HZ {
        for (column, weighting) in WEIGHTINGS.into_iter().enumerate() {
            let filter = WeightingFilter::new(weighting, rate_hz);
            for row in rows().iter().filter(|row| row.f_hz < 0.5 * rate_hz) {
                let off = filter.gain_db(row.f_hz, rate_hz) - row.wanted_db[column];
                assert!(off <= row.upper_db && off >= row.lower_db, "{weighting:?} {rate_hz} {:.0} Hz: off by {off:.2}", row.f_hz);
                // Own aim, far inside the limits, where the filter is not at the edge of the band.
                if (19.0..=0.45 * rate_hz).contains(&row.f_hz) {
                    assert!(off.abs() < 0.3, "{weighting:?} {rate_hz} {:.0} Hz: off by {off:.2}", row.f_hz);
                }
            }
        }
    }
}

/// Level of a steady tone of amplitude 1 through the meter's filter, dB, less that of the tone itself.
fn through(weighting: Weighting, f_hz: f64, rate_hz: f64) -> f64 {
    let mut filter = WeightingFilter::new(weighting, rate_hz);
    let (mut sum, mut count) = (0.0, 0.0);
    for k in 0..(2.5 * rate_hz) as usize {
        let y = filter.step((2.0 * PI * f_hz * k as f64 / rate_hz).sin() as f32);
        if k as f64 >= 0.5 * rate_hz {
            sum += y * y;
            count += 1.0;
        }
    }
    power_db(2.0 * sum / count)
}

#[test]
fn tones_through_the_filter_get_the_designed_gain() {
    for rate_hz in [8000.0, 16_000.0, 44_100.0] {
        for row in rows().iter().step_by(3).filter(|row| row.f_hz < 0.45 * rate_hz) {
            for (weighting, table) in WEIGHTINGS.into_iter().zip(row.wanted_db) {
                let got = through(weighting, row.f_hz, rate_hz);
                assert!(got - table <= row.upper_db && got - table >= row.lower_db, "{weighting:?} {rate_hz} {}: {got}", row.f_hz);
            }
        }
    }
}

#[test]
fn tonebursts_read_what_table_4_says() {
    let rate_hz = 48_000.0;
    for line in TABLE_4.lines().filter(|l| !l.starts_with(['#', 'b'])) {
        let cells: Vec<Option<f64>> = line.split('\t').map(|c| c.parse().ok()).collect();
        let (burst_s, upper_db, lower_db) = (cells[0].unwrap(), cells[3].unwrap(), cells[4].unwrap());
        let mut meter = SoundLevelMeter::new(Weighting::A, rate_hz);
        for k in 0..(2.0 * rate_hz) as usize {
            let sounds = (k as f64) < burst_s * rate_hz;
            let sample = if sounds { 0.5 * (2.0 * PI * 4000.0 * k as f64 / rate_hz).sin() } else { 0.0 };
            meter.push(sample as f32);
        }
        let steady_db = power_db(0.125) + Weighting::A.response_db(4000.0);
        let reading = meter.reading().unwrap();
        for (got_db, wanted_db) in [(reading.fast_max_db, cells[1]), (reading.slow_max_db, cells[2])] {
            let Some(wanted_db) = wanted_db else { continue };
            let off = got_db - steady_db - wanted_db;
            assert!(off <= upper_db && off >= lower_db, "{burst_s} s: off by {off:.2}");
            // Own aim: the response is the formula's, to the rounding of the table.
            assert!(off.abs() < 0.2, "{burst_s} s: off by {off:.2}");
        }
    }
}

#[test]
fn levels_fall_as_fast_as_the_time_constant_says() {
    // 10 lg e / tau dB a second; the standard asks for at least 25 (Fast) and 3.4 to 5.3 (Slow) dB a second.
    for (weighting, wanted, limits) in [(TimeWeighting::Fast, 34.7, 25.0..100.0), (TimeWeighting::Slow, 4.3, 3.4..5.3)] {
        for rate_hz in RATES_HZ {
            let mut mean = TimeWeighted::new(weighting, rate_hz);
            let second = rate_hz as usize;
            (0..10 * second).for_each(|_| mean.push(0.5));
            let steady_db = mean.level_db();
            assert!((steady_db - power_db(0.5)).abs() < 0.01, "{steady_db}");
            (0..second).for_each(|_| mean.push(0.0));
            let fall = steady_db - mean.level_db();
            assert!((fall - wanted).abs() < 0.1 && limits.contains(&fall), "{weighting:?} {rate_hz}: {fall}");
        }
    }
}
