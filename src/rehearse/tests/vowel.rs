use super::*;
use crate::{Break, RenderedVowel, Vowel, VowelSpec};

fn clean(vowel: Vowel, f0_hz: f64, duration_s: f64) -> VowelSpec {
    VowelSpec { jitter_pct: 0.0, shimmer_pct: 0.0, hnr_db: None, ..VowelSpec::steady(vowel, f0_hz, duration_s) }
}

fn render(spec: &VowelSpec, rate_hz: u32) -> RenderedVowel {
    spec.render(rate_hz).unwrap()
}

#[test]
fn f0_is_what_was_asked_at_every_rate() {
    for rate in [8_000, 11_025, 16_000, 22_050, 44_100, 48_000] {
        for (vowel, f0) in [(Vowel::A, 82.0), (Vowel::I, 233.0), (Vowel::U, 147.3), (Vowel::A, 440.0)] {
            let made = render(&clean(vowel, f0, 0.6), rate);
            let got = autocorrelation_f0(part(&made.samples, rate, 0.25, 0.35), rate);
            assert!((got / f0 - 1.0).abs() < 0.005, "{vowel:?} {f0} Hz at {rate}: {got}");
            assert!((made.f0_median_hz() / f0 - 1.0).abs() < 1e-9);
        }
    }
}

#[test]
fn a_glide_passes_the_geometric_mean_half_way() {
    let spec = VowelSpec { f0_hz: vec![(0.0, 110.0), (4.0, 330.0)], ..clean(Vowel::A, 110.0, 4.0) };
    let made = render(&spec, 16_000);
    for (t, want) in [(1.0, 110.0 * 3f64.powf(0.25)), (2.0, (110.0f64 * 330.0).sqrt()), (3.0, 110.0 * 3f64.powf(0.75))] {
        let got = autocorrelation_f0(part(&made.samples, 16_000, made.onset_s + t - 0.02, made.onset_s + t + 0.02), 16_000);
        assert!((got / want - 1.0).abs() < 0.005, "{t} s: {got} for {want}");
    }
}

#[test]
fn sound_begins_and_ends_at_the_truth() {
    for rate in [8_000, 16_000, 48_000] {
        for (attack_s, release_s, f0) in [(0.02, 0.02, 110.0), (0.1, 0.15, 180.0), (0.3, 0.3, 95.0)] {
            let spec = VowelSpec { attack_s, release_s, ..VowelSpec::steady(Vowel::A, f0, 1.5) };
            let made = render(&spec, rate);
            // The softest first cycle is 20 dB down; the last one rings on for its period.
            let (first, _) = sounding(&made.samples, rate, spec.level_db - 24.0);
            let (_, last) = sounding(&made.samples, rate, spec.level_db - 30.0);
            assert!((first - made.onset_s).abs() < 0.005, "{rate} {attack_s}: onset {first} for {}", made.onset_s);
            assert!((last - made.offset_s).abs() < 0.005, "{rate} {release_s}: offset {last} for {}", made.offset_s);
            assert!((made.offset_s - made.onset_s - 1.5).abs() < 0.5 / f0 + 1e-9, "duration");
        }
    }
}

/// Mean absolute difference of neighbours over the mean, percent: Praat's definition of local jitter and shimmer.
fn local_pct(x: &[f64]) -> f64 {
    let differences: f64 = x.windows(2).map(|w| (w[1] - w[0]).abs()).sum::<f64>() / (x.len() - 1) as f64;
    100.0 * differences * x.len() as f64 / x.iter().sum::<f64>()
}

#[test]
fn jitter_and_shimmer_are_as_asked() {
    for (jitter_pct, shimmer_pct) in [(0.3, 2.0), (1.0, 5.0), (2.5, 10.0)] {
        let spec = VowelSpec { jitter_pct, shimmer_pct, ..VowelSpec::steady(Vowel::A, 200.0, 15.0) };
        let made = render(&spec, 8_000);
        let periods: Vec<f64> = made.cycles.windows(2).map(|w| w[1].closure_s - w[0].closure_s).collect();
        let amplitudes: Vec<f64> = made.cycles.iter().map(|c| c.amplitude).collect();
        // 3000 cycles: the estimate's own SD is about 1.5 %.
        assert!((local_pct(&periods) / jitter_pct - 1.0).abs() < 0.06, "jitter {}", local_pct(&periods));
        assert!((local_pct(&amplitudes) / shimmer_pct - 1.0).abs() < 0.06, "shimmer {}", local_pct(&amplitudes));
    }
}

#[test]
fn level_and_fade_are_as_asked() {
    let spec = VowelSpec { level_db: -30.0, decay_db_per_s: -1.5, ..VowelSpec::steady(Vowel::O, 130.0, 8.0) };
    let made = render(&spec, 16_000);
    for t in [1.0, 3.0, 6.5] {
        let got = level_db(part(&made.samples, 16_000, made.onset_s + t - 0.25, made.onset_s + t + 0.25));
        assert!((got - (-30.0 - 1.5 * t)).abs() < 0.4, "{t} s: {got}");
    }
}

#[test]
fn tremor_moves_pitch_and_level_at_its_rate() {
    let spec = VowelSpec { tremor_hz: 5.0, tremor_st: 0.5, tremor_db: 1.0, ..clean(Vowel::A, 150.0, 2.0) };
    let made = render(&spec, 16_000);
    // A quarter of a tremor period after the onset it is highest, half a period later lowest.
    let f = |t: f64| autocorrelation_f0(part(&made.samples, 16_000, made.onset_s + t - 0.015, made.onset_s + t + 0.015), 16_000);
    let span_st = 12.0 * (f(1.05) / f(1.15)).log2();
    assert!((span_st - 1.0).abs() < 0.15, "{span_st} semitones");
}

#[test]
fn breath_lies_as_far_below_the_voice_as_asked() {
    for hnr_db in [6.0, 14.0, 25.0] {
        let spec = clean(Vowel::A, 120.0, 3.0);
        let dry = render(&spec, 16_000);
        let breathy = render(&VowelSpec { hnr_db: Some(hnr_db), ..spec }, 16_000);
        let pick = |m: &RenderedVowel| part(&m.samples, 16_000, 0.3, 2.7).iter().map(|v| f64::from(*v)).collect::<Vec<_>>();
        let (x, y) = (pick(&dry), pick(&breathy));
        let dot = |a: &[f64], b: &[f64]| a.iter().zip(b).map(|(p, q)| p * q).sum::<f64>();
        let k = dot(&x, &y) / dot(&x, &x);
        let noise: f64 = x.iter().zip(&y).map(|(p, q)| (q - k * p).powi(2)).sum();
        let got = 10.0 * (k * k * dot(&x, &x) / noise).log10();
        assert!((got - hnr_db).abs() < 0.5, "{got} for {hnr_db}");
    }
}

#[test]
fn a_break_leaves_only_breath() {
    let spec = VowelSpec { breaks: vec![Break { at_s: 1.0, length_s: 0.2 }], ..VowelSpec::steady(Vowel::A, 120.0, 2.0) };
    let made = render(&spec, 16_000);
    let broken = level_db(part(&made.samples, 16_000, made.onset_s + 1.04, made.onset_s + 1.18));
    assert!(broken < spec.level_db - 15.0 && broken > spec.level_db - 35.0, "{broken}");
    let after = level_db(part(&made.samples, 16_000, made.onset_s + 1.25, made.onset_s + 1.5));
    assert!((after - spec.level_db).abs() < 1.0, "{after}");
}

#[test]
fn nothing_folds_back_below_the_harmonics() {
    // 687.5 Hz at 8 kHz: harmonics above 4 kHz would fold to other places than multiples of 687.5.
    let made = render(&clean(Vowel::A, 687.5, 2.0), 8_000);
    let n = 8_192;
    let fft = transform::forward(n);
    let mut x: Vec<f64> = part(&made.samples, 8_000, 0.5, 1.6)
        .iter()
        .take(n)
        .enumerate()
        .map(|(i, v)| f64::from(*v) * (std::f64::consts::PI * i as f64 / n as f64).sin().powi(4))
        .collect();
    x.resize(n, 0.0);
    let mut spectrum = fft.make_output_vec();
    fft.process(&mut x, &mut spectrum).unwrap();
    let (mut harmonic, mut other) = (0.0, 0.0);
    for (i, c) in spectrum.iter().enumerate() {
        let f = i as f64 * 8_000.0 / n as f64;
        let away = (f / 687.5 - (f / 687.5).round()).abs() * 687.5;
        if away < 8.0 && f > 300.0 { harmonic += c.norm_sqr() } else { other += c.norm_sqr() }
    }
    let ratio = 10.0 * (other / harmonic).log10();
    assert!(ratio < -50.0, "{ratio} dB");
}

#[test]
fn the_same_seed_gives_the_same_voice_and_another_seed_another() {
    let spec = VowelSpec::steady(Vowel::E, 170.0, 0.5);
    assert_eq!(render(&spec, 16_000), render(&spec, 16_000));
    assert_ne!(render(&spec, 16_000).samples, render(&VowelSpec { seed: 2, ..spec }, 16_000).samples);
}

#[test]
fn impossible_vowels_are_refused_by_name() {
    let good = VowelSpec::steady(Vowel::A, 120.0, 1.0);
    let said = |spec: VowelSpec, rate| spec.render(rate).unwrap_err().0;
    assert!(said(VowelSpec { f0_hz: vec![(0.0, 20.0)], ..good.clone() }, 16_000).contains("60 to 800"));
    assert!(said(VowelSpec { duration_s: f64::NAN, ..good.clone() }, 16_000).contains("duration_s"));
    assert!(said(good, 96_000).contains("96000"));
}
