//! A simulated gain control on vowels in noise, and the same without it (`benches/level` has recordings).

use crate::VoiceEar;
use crate::tests::synth::{Noise, Vowel};

const RATE_HZ: u32 = 16_000;

/// Vowels of 2 s with pauses of 2 s, in white noise 30 dB under them.
fn session() -> Vec<f32> {
    (0..6).flat_map(|_| Vowel { onset_s: 1.0, offset_s: 3.0, total_s: 4.0, room_db: -56.0, ..Vowel::default() }.sound(RATE_HZ)).collect()
}

/// A gain that falls within 20 ms under loud sound and comes back by `back_db_per_s`, up to 15 dB.
fn controlled(samples: &[f32], back_db_per_s: f64) -> Vec<f32> {
    let (mut power, mut gain_db) = (0.0, 15.0f64);
    samples
        .iter()
        .map(|x| {
            power += 0.003 * (f64::from(*x).powi(2) - power);
            let wanted_db = (-26.0 - 10.0 * power.max(1e-9).log10()).clamp(0.0, 15.0);
            let step_db = wanted_db - gain_db;
            gain_db += if step_db < 0.0 { 0.003 * step_db } else { step_db.min(back_db_per_s / f64::from(RATE_HZ)) };
            x * 10f64.powf(gain_db / 20.0) as f32
        })
        .collect()
}

fn found(samples: &[f32]) -> bool {
    let mut ear = VoiceEar::new(RATE_HZ);
    ear.push(samples, false, &mut |_| {});
    ear.auto_gain_found()
}

#[test]
fn a_gain_that_comes_back_in_pauses_is_found() {
    for back_db_per_s in [4.0, 8.0, 16.0] {
        assert!(found(&controlled(&session(), back_db_per_s)), "{back_db_per_s} dB/s");
    }
}

#[test]
fn a_steady_gain_is_not() {
    assert!(!found(&session()));
    // A room that grows louder over the session, by a step once and by a slow rise.
    let mut noise = Noise(5);
    let louder: Vec<f32> = session().iter().enumerate().map(|(k, x)| x + (0.004 * (k as f64 / 384_000.0) * noise.next()) as f32).collect();
    assert!(!found(&louder));
    let step: Vec<f32> =
        session().iter().enumerate().map(|(k, x)| x + if k > 200_000 { (0.01 * noise.next()) as f32 } else { 0.0 }).collect();
    assert!(!found(&step));
    // Voices that fade, in silence and in noise.
    let fading: Vec<f32> = session()
        .iter()
        .enumerate()
        .map(|(k, x)| {
            let in_vowel = (k % 64_000) as f32 / 16_000.0;
            x * if (1.0..3.0).contains(&in_vowel) { 1.5 - 0.4 * in_vowel } else { 1.0 }
        })
        .collect();
    assert!(!found(&fading));
}
