use super::*;

/// By the library kaldi-native-fbank 1.22.4, dB; made by `benches/enrol/reference/mel.py`.
#[allow(clippy::unreadable_literal, reason = "as they were printed")]
const REFERENCE: [[f32; BANDS]; 3] = [
    [
        -24.739, -15.552, -6.636, 0.684, 6.791, 11.660, 15.343, 17.909, 16.526, 13.343, 6.150, -7.581, -18.169, -22.713, -25.722, -27.939,
        -29.641, -30.996, -32.044, -32.876, -33.500, -33.937, -34.156,
    ],
    [
        -32.816, -31.001, -28.791, -26.884, -23.152, -15.458, 1.630, 12.234, 14.634, 19.529, 21.754, 20.770, 15.238, 2.786, -13.340,
        -18.960, -22.071, -24.122, -25.558, -26.621, -27.378, -27.896, -28.166,
    ],
    [
        -35.775, -34.170, -32.419, -31.281, -29.111, -26.357, 1.381, 9.834, -6.122, -2.620, 11.315, 20.113, 24.632, 24.751, 19.216, 5.251,
        -12.399, -17.499, -20.167, -21.855, -22.975, -23.707, -24.113,
    ],
];

#[test]
fn energies_are_those_of_kaldi() {
    let samples: Vec<i16> = (0..720)
        .map(|n| {
            let t = f64::from(n) / 16_000.0;
            let tau = std::f64::consts::TAU;
            (8_000.0 * (tau * (200.0 * t + 30_000.0 * t * t)).sin() + 2_000.0 * (tau * 1_000.0 * t).sin()).round() as i16
        })
        .collect();
    let found = MelBank::new().energies(&samples);
    assert_eq!(found.len(), REFERENCE.len());
    for (found, reference) in found.iter().zip(&REFERENCE) {
        for (a, b) in found.iter().zip(reference) {
            assert!((a - b).abs() < 0.02, "{found:?} {reference:?}");
        }
    }
}

#[test]
fn silence_has_energies_and_short_sound_has_none() {
    let mut bank = MelBank::new();
    assert!(bank.energies(&[0; 400]).iter().flatten().all(|x| x.is_finite()));
    assert_eq!(bank.energies(&[0; 399]).len(), 0);
}
