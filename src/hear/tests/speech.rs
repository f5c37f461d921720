//! Stretches of speech and syllables of known number and rate.

use super::synth::{AH, Noise, Vowel};
use crate::{Utterance, VoiceEar, VoiceEvent, VoiceOutput, VoiceTask};

const RATE: u32 = 16_000;

/// `count` syllables at `rate_hz`, from 1 s on, each a stop with a burst and a vowel; then 1.5 s of quiet.
fn syllables(count: usize, rate_hz: f64) -> Vec<f32> {
    let period_s = 1.0 / rate_hz;
    let total_s = 2.5 + count as f64 * period_s;
    let mut sound = vec![0f32; (total_s * f64::from(RATE)) as usize];
    let mut noise = Noise(3);
    sound.iter_mut().for_each(|x| *x = (3e-4 * noise.next()) as f32);
    for k in 0..count {
        let from = ((1.0 + k as f64 * period_s) * f64::from(RATE)) as usize;
        for n in 0..(0.012 * f64::from(RATE)) as usize {
            sound[from + n] += (0.1 * noise.next()) as f32;
        }
        let length_s = period_s * 0.6;
        let vowel = Vowel { formants: AH, onset_s: 0.0, offset_s: length_s, total_s: length_s, ..Vowel::default() };
        let at = from + (0.02 * f64::from(RATE)) as usize;
        sound[at..].iter_mut().zip(vowel.sound(RATE)).for_each(|(x, v)| *x += v);
    }
    sound
}

fn spoken(sound: &[f32], end_pause_s: f64) -> Vec<Utterance> {
    let mut ear = VoiceEar::new(RATE);
    ear.set_task(VoiceTask::Speech { end_pause_s });
    let mut all = Vec::new();
    let mut keep = |o| {
        if let VoiceOutput::Event(VoiceEvent::Spoken(utterance)) = o {
            all.push(utterance);
        }
    };
    ear.push(sound, false, &mut keep);
    ear.finish(&mut keep);
    all
}

#[test]
fn syllables_are_counted_from_2_to_8_a_second() {
    for rate_hz in [2.0, 3.0, 4.0, 5.0, 6.0, 7.0, 8.0] {
        let count = 20;
        let found = spoken(&syllables(count, rate_hz), 0.8);
        assert_eq!(found.len(), 1, "{rate_hz}: {found:?}");
        let u = &found[0];
        assert!(u.syllables.abs_diff(count as u32) <= 1, "{rate_hz}: {u:?}");
        assert!((u.syllable_rate_hz - rate_hz).abs() < 0.05 * rate_hz, "{rate_hz}: {u:?}");
        assert!(u.syllable_irregularity_pct < 12.0, "{rate_hz}: {u:?}");
        assert!((u.onset_s - 1.0).abs() < 0.05, "{rate_hz}: {u:?}");
        assert!((u.f0_median_hz - 120.0).abs() < 2.0, "{rate_hz}: {u:?}");
    }
}

#[test]
fn pauses_part_stretches_and_knocks_are_none() {
    let mut sound = syllables(6, 4.0);
    sound.extend(syllables(6, 4.0));
    assert_eq!(spoken(&sound, 0.8).len(), 2);
    assert_eq!(spoken(&sound, 3.5).len(), 1);
    let mut knock = vec![1e-4f32; 48_000];
    knock[20_000..20_200].iter_mut().enumerate().for_each(|(k, x)| *x = if k % 7 < 3 { 0.5 } else { -0.5 });
    assert!(spoken(&knock, 0.5).is_empty());
}

/// Said once for each stretch, as soon as it is sure, and dated back to the onset; a knock begins nothing.
#[test]
fn the_beginning_of_speech_is_told_before_its_end() {
    let mut sound = syllables(6, 4.0);
    sound.extend(syllables(6, 4.0));
    let mut ear = VoiceEar::new(RATE);
    ear.set_task(VoiceTask::Speech { end_pause_s: 0.8 });
    let mut told = Vec::new();
    let mut heard_s = 0.0;
    for block in sound.chunks(RATE as usize / 100) {
        heard_s += 0.01;
        ear.push(block, false, &mut |output| match output {
            VoiceOutput::Event(VoiceEvent::SpeechBegan { onset_s }) => told.push(("began", onset_s, heard_s)),
            VoiceOutput::Event(VoiceEvent::Spoken(utterance)) => told.push(("over", utterance.onset_s, heard_s)),
            _ => {}
        });
    }
    let kinds: Vec<&str> = told.iter().map(|told| told.0).collect();
    assert_eq!(kinds, ["began", "over", "began", "over"], "{told:?}");
    assert!((told[0].1 - 1.0).abs() < 0.05 && told[0].2 < 1.4, "{told:?}");
    assert!((told[0].1 - told[1].1).abs() < 1e-9);
}

/// A voice whose pitch goes from one value to another in its last quarter tells that movement.
#[test]
fn the_end_of_the_melody_is_told_in_semitones() {
    for (end_hz, wanted_st) in [(160.0, 5.0), (120.0, 0.0), (90.0, -5.0)] {
        let glide = |t_s: f64| if t_s < 1.2 { 120.0 } else { 120.0 * (end_hz / 120.0_f64).powf((t_s - 1.2) / 0.3) };
        let mut phase = 0.0;
        let mut noise = Noise(5);
        let mut sound = vec![0f32; RATE as usize];
        sound.iter_mut().for_each(|x| *x = (3e-4 * noise.next()) as f32);
        for n in 0..(1.5 * f64::from(RATE)) as usize {
            let t_s = n as f64 / f64::from(RATE);
            phase += std::f64::consts::TAU * glide(t_s) / f64::from(RATE);
            let harmonics: f64 = (1..=12).map(|k| (f64::from(k) * phase).sin() / f64::from(k)).sum();
            sound.push((0.1 * harmonics) as f32);
        }
        sound.extend(vec![1e-4; 2 * RATE as usize]);
        let found = spoken(&sound, 0.8);
        assert_eq!(found.len(), 1, "{end_hz}: {found:?}");
        // The end of a straight movement in semitones over the last fifth lies nearly half way back.
        let expected_st = wanted_st / 2.0;
        assert!((found[0].f0_final_st - expected_st).abs() < 0.8, "{end_hz}: {:?}", found[0]);
        // From the 5th to the 95th percentile: a quarter of the movement lies above it.
        assert!((found[0].f0_span_st - 0.75 * wanted_st.abs()).abs() < 1.0, "{end_hz}: {:?}", found[0]);
    }
}
