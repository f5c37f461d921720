//! Clipping of synthetic vowels at known levels; recorded vowels as they are and clipped (`benches/level` has the whole set).

use super::*;
use crate::tests::synth::{AH, EE, OO, Vowel};

/// Share of 10 ms stretches in which clipping was found.
fn share(samples: &[f32], rate_hz: u32) -> f64 {
    let mut finder = ClipFinder::new(f64::from(rate_hz));
    let marks: Vec<bool> = samples.iter().map(|x| finder.push(*x)).collect();
    let block = (rate_hz / 100) as usize;
    marks.chunks(block).filter(|c| c.contains(&true)).count() as f64 / (marks.len() / block) as f64
}

fn loud(formants: [(f64, f64); 3], f0_hz: fn(f64) -> f64, rate_hz: u32) -> Vec<f32> {
    let mut sound = Vowel { formants, f0_hz, onset_s: 0.1, offset_s: 2.9, total_s: 3.0, ..Vowel::default() }.sound(rate_hz);
    let peak = sound.iter().fold(0f32, |p, x| p.max(x.abs()));
    sound.iter_mut().for_each(|x| *x /= peak);
    sound
}

#[test]
fn vowels_up_to_full_scale_are_not_clipped_and_cut_ones_are() {
    for rate_hz in [8000, 16_000, 44_100, 48_000, 96_000] {
        for (formants, name) in [(AH, "ah"), (EE, "ee"), (OO, "oo")] {
            for f0_hz in [(|_| 95.0) as fn(f64) -> f64, |_| 180.0, |_| 300.0] {
                let sound = loud(formants, f0_hz, rate_hz);
                let clean: Vec<f32> = sound.iter().map(|x| (x * 32_767.0).round() / 32_768.0).collect();
                assert_eq!(share(&clean, rate_hz), 0.0, "{name} {} Hz at {rate_hz}", f0_hz(0.0));
                for (ceiling, gain) in [(1.0f32, 2.0f32), (0.6, 1.2), (0.2, 0.4)] {
                    let cut: Vec<f32> = clean.iter().map(|x| (x * gain).clamp(-ceiling, ceiling)).collect();
                    let found = share(&cut, rate_hz);
                    assert!(found > 0.5, "{name} {} Hz at {rate_hz}, cut at {ceiling}: {found:.2}", f0_hz(0.0));
                }
            }
        }
    }
}

#[test]
fn tones_noise_and_silence_are_not_clipped() {
    let tone = |f_hz: f64| -> Vec<f32> {
        (0..48_000).map(|k| (2.0 * std::f64::consts::PI * f_hz * f64::from(k) / 48_000.0).sin() as f32).collect()
    };
    for f_hz in [60.0, 100.0, 440.0, 1000.0, 4000.0] {
        assert_eq!(share(&tone(f_hz), 48_000), 0.0, "{f_hz} Hz");
    }
    let mut noise = crate::tests::synth::Noise(7);
    let noise: Vec<f32> = (0..48_000).map(|_| (0.9 * noise.next()) as f32).collect();
    assert_eq!(share(&noise, 48_000), 0.0);
    assert_eq!(share(&vec![0.0; 48_000], 48_000), 0.0);
}
