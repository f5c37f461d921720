//! Sounds of a body that are no voice: coughs and breaths.

use super::noise::Gauss;
use super::signal::gain;
use super::vowel::resonate;

/// A cough: a burst, a noisy middle and a short voiced end (three-phase shape as commonly described; times common
/// practice, no source). About 0.35 s. `level_db`: RMS of its loudest 50 ms, dB re full scale.
#[must_use]
pub fn cough(rate_hz: u32, level_db: f64, seed: u64) -> Vec<f32> {
    let rate = f64::from(rate_hz);
    let mut gauss = Gauss::new(seed);
    let mut phase = 0.0;
    let mut sound: Vec<f64> = (0..(0.35 * rate) as usize)
        .map(|i| {
            let t = i as f64 / rate;
            let burst = (-t / 0.02).exp() * (1.0 - (-t / 0.001).exp());
            let middle = 0.35 * (-((t - 0.09) / 0.06).powi(2)).exp();
            let voiced = 0.5 * (-((t - 0.24) / 0.04).powi(2)).exp();
            // The voiced end slides down and is rough.
            phase = (phase + (230.0 - 350.0 * (t - 0.2)) / rate * (1.0 + 0.2 * gauss.draw())).fract();
            let saw = 1.0 - 2.0 * phase;
            (burst + middle) * gauss.draw() + voiced * (saw + 0.4 * gauss.draw())
        })
        .collect();
    for (f, b) in [(650.0f64, 250.0), (1_500.0, 350.0), (2_700.0, 500.0)] {
        let plain = sound.clone();
        resonate(&mut sound, f.min(0.45 * rate), b, rate);
        sound.iter_mut().zip(&plain).for_each(|(v, p)| *v += 0.5 * p);
    }
    scaled(&sound, rate, level_db)
}

/// A breath through the mouth of the given length, swelling and dying away. `level_db`: RMS of its loudest 50 ms.
#[must_use]
pub fn breath(rate_hz: u32, length_s: f64, level_db: f64, seed: u64) -> Vec<f32> {
    let rate = f64::from(rate_hz);
    let length = length_s.clamp(0.1, 15.0);
    let mut gauss = Gauss::new(seed);
    let mut sound: Vec<f64> = (0..(length * rate) as usize)
        .map(|i| gauss.draw() * (std::f64::consts::PI * i as f64 / (length * rate)).sin().max(0.0).powf(0.7))
        .collect();
    for (f, b) in [(900.0, 500.0), (2_200.0, 900.0)] {
        let plain = sound.clone();
        resonate(&mut sound, f, b, rate);
        sound.iter_mut().zip(&plain).for_each(|(v, p)| *v += 0.3 * p);
    }
    scaled(&sound, rate, level_db)
}

/// Two knocks of a knuckle on a table, a third of a second apart: each a hard onset that wood answers, gone after a twentieth of a
/// second (common practice, no source). `level_db`: RMS of the loudest 50 ms.
#[must_use]
pub fn knocks(rate_hz: u32, level_db: f64, seed: u64) -> Vec<f32> {
    const APART_S: f64 = 0.33;
    let rate = f64::from(rate_hz);
    let mut gauss = Gauss::new(seed);
    let mut sound: Vec<f64> = (0..((APART_S + 0.12) * rate) as usize)
        .map(|i| {
            let t = (i as f64 / rate) % APART_S;
            (-t / 0.009).exp() * gauss.draw()
        })
        .collect();
    for (f, b) in [(190.0, 90.0), (640.0, 260.0)] {
        let plain = sound.clone();
        resonate(&mut sound, f, b, rate);
        sound.iter_mut().zip(&plain).for_each(|(v, p)| *v += 0.5 * p);
    }
    scaled(&sound, rate, level_db)
}

/// Scales so that the loudest 50 ms have this RMS level.
pub(super) fn scaled(x: &[f64], rate_hz: f64, level_db: f64) -> Vec<f32> {
    let window = ((0.05 * rate_hz) as usize).max(1);
    let loudest = x.chunks(window).map(|c| c.iter().map(|v| v * v).sum::<f64>() / c.len() as f64).fold(0.0, f64::max);
    let scale = if loudest > 0.0 { gain(level_db) / loudest.sqrt() } else { 0.0 };
    x.iter().map(|v| (v * scale).clamp(-1.0, 1.0) as f32).collect()
}
