//! The same voice at every rate gives the same facts.

use super::synth::{AH, EE, OO, Vowel};
use crate::{Held, analyse_voice};

const RATES_HZ: [u32; 8] = [8000, 11_025, 16_000, 22_050, 32_000, 44_100, 48_000, 96_000];

pub fn only_hold(vowel: &Vowel, rate_hz: u32, what: &str) -> Held {
    let (_, holds) = analyse_voice(&vowel.sound(rate_hz), rate_hz);
    assert_eq!(holds.len(), 1, "{what} at {rate_hz} Hz: {holds:?}");
    holds.into_iter().next().unwrap()
}

fn cents(a: f64, b: f64) -> f64 {
    1200.0 * (a / b).log2()
}

#[test]
fn a_vowel_is_timed_and_pitched_alike_at_every_rate() {
    let vowel = Vowel::default();
    for rate_hz in RATES_HZ {
        let hold = only_hold(&vowel, rate_hz, "ah");
        assert!((hold.onset_s - vowel.onset_s).abs() < 0.015, "{rate_hz}: {hold:?}");
        assert!((hold.offset_s - vowel.offset_s).abs() < 0.015, "{rate_hz}: {hold:?}");
        assert!(cents(hold.f0_median_hz, 120.0).abs() < 10.0, "{rate_hz}: {hold:?}");
        assert!(hold.level_mean_db > -36.0 && hold.level_mean_db < -24.0, "{rate_hz}: {hold:?}");
    }
}

#[test]
fn frames_come_a_hundred_a_second_without_drift() {
    for rate_hz in RATES_HZ {
        let (frames, _) = analyse_voice(&vec![0.0; rate_hz as usize * 7], rate_hz);
        assert_eq!(frames.len(), 700, "{rate_hz}");
        for (k, frame) in frames.iter().enumerate() {
            assert!((frame.t_s - k as f64 / 100.0).abs() < 1e-9);
            assert!(!frame.voiced && frame.level_db.is_finite());
        }
    }
}

#[test]
fn pitches_from_60_to_800_hz_are_found() {
    let pitches: [(fn(f64) -> f64, f64); 7] = [
        (|_| 62.0, 62.0),
        (|_| 85.0, 85.0),
        (|_| 150.0, 150.0),
        (|_| 220.0, 220.0),
        (|_| 440.0, 440.0),
        (|_| 660.0, 660.0),
        (|_| 780.0, 780.0),
    ];
    for (formants, name) in [(AH, "ah"), (EE, "ee"), (OO, "oo")] {
        for (f0_hz, wanted) in pitches {
            for rate_hz in [8000, 16_000, 44_100] {
                let vowel = Vowel { formants, f0_hz, ..Vowel::default() };
                let hold = only_hold(&vowel, rate_hz, &format!("{name} at {wanted} Hz"));
                let off = cents(hold.f0_median_hz, wanted);
                assert!(off.abs() < 15.0, "{name} {wanted} Hz at {rate_hz}: {off:.1} cents");
                assert!(hold.f0_span_st < 1.0, "{name} {wanted} Hz at {rate_hz}: {hold:?}");
            }
        }
    }
}
