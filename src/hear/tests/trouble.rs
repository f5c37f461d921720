//! Trembling voices, humming rooms and echoing ones.

use super::rates::only_hold;
use super::synth::{AH, Noise, Vowel};
use crate::voice_file::FILE_SETTINGS;
use crate::{VoiceEar, VoiceEvent, VoiceOutput, VoiceTask, analyse_voice};
use std::f64::consts::TAU;

const RATE: u32 = 16_000;

#[test]
fn a_trembling_voice_is_a_hold() {
    // 5 Hz, F0 up and down by 10 %, level by 6 dB.
    for f0_hz in [(|t: f64| 110.0 * (1.0 + 0.1 * (TAU * 5.0 * t).sin())) as fn(f64) -> f64, |t| 230.0 * (1.0 + 0.1 * (TAU * 5.0 * t).sin())]
    {
        let vowel = Vowel { f0_hz, offset_s: 3.7, total_s: 4.5, ..Vowel::default() };
        let mut sound = vowel.sound(RATE);
        for (k, x) in sound.iter_mut().enumerate() {
            let t = k as f64 / f64::from(RATE) - 0.7;
            *x *= 10f64.powf(0.3 * (TAU * 5.0 * t).cos()) as f32;
        }
        let (_, holds) = analyse_voice(&sound, RATE);
        assert_eq!(holds.len(), 1, "{holds:?}");
        assert!((holds[0].onset_s - 0.7).abs() < 0.03 && (holds[0].offset_s - 3.7).abs() < 0.03, "{:?}", holds[0]);
        assert!(holds[0].f0_span_st > 2.5, "{:?}", holds[0]);
    }
}

/// Adds a hum of `f_hz` and two overtones, `level_db` re full scale.
fn hum(sound: &mut [f32], f_hz: f64, level_db: f64) {
    for (k, x) in sound.iter_mut().enumerate() {
        let t = k as f64 / f64::from(RATE);
        let wave: f64 = (1..=3).map(|h| (TAU * f_hz * f64::from(h) * t).sin() / f64::from(h)).sum();
        *x += (wave * 10f64.powf(level_db / 20.0)) as f32;
    }
}

#[test]
fn a_hum_from_the_beginning_is_the_room() {
    for (f_hz, level_db) in [(50.0, -30.0), (100.0, -50.0), (100.0, -30.0), (120.0, -40.0)] {
        let mut noise = Noise(3);
        let mut sound: Vec<f32> = (0..4 * RATE).map(|_| (3e-4 * noise.next()) as f32).collect();
        hum(&mut sound, f_hz, level_db);
        let (_, holds) = analyse_voice(&sound, RATE);
        assert!(holds.is_empty(), "{f_hz} Hz at {level_db} dB: {holds:?}");
    }
    // And the voice over it is heard as one without.
    let mut sound = Vowel { formants: AH, onset_s: 1.7, offset_s: 4.2, total_s: 5.0, f0_hz: |_| 165.0, ..Vowel::default() }.sound(RATE);
    hum(&mut sound, 100.0, -45.0);
    let (_, holds) = analyse_voice(&sound, RATE);
    assert_eq!(holds.len(), 1, "{holds:?}");
    assert!((holds[0].onset_s - 1.7).abs() < 0.05 && (holds[0].offset_s - 4.2).abs() < 0.05, "{:?}", holds[0]);
    assert!((holds[0].f0_median_hz - 165.0).abs() < 1.0, "{:?}", holds[0]);
}

#[test]
fn a_deep_vowel_from_the_first_sample_is_no_hum() {
    let vowel = Vowel { onset_s: 0.0, offset_s: 2.5, total_s: 3.0, f0_hz: |_| 100.0, jitter: 0.0, ..Vowel::default() };
    let hold = only_hold(&vowel, RATE, "100 Hz from the first sample");
    assert!(hold.onset_s < 0.03 && (hold.offset_s - 2.5).abs() < 0.03, "{hold:?}");
}

#[test]
fn the_rooms_echo_is_not_the_voice() {
    // Reverberation after ISO 3382: noise that falls by 60 dB in 0.8 s, 3 dB weaker in all than the direct sound.
    let mut noise = Noise(11);
    let mut response: Vec<f64> =
        (0..RATE * 8 / 10).map(|k| noise.next() * 10f64.powf(-3.0 * f64::from(k) / (0.8 * f64::from(RATE)))).collect();
    let strength = response.iter().map(|x| x * x).sum::<f64>().sqrt();
    response.iter_mut().for_each(|x| *x *= 0.707 / strength);
    response[0] += 1.0;
    let dry = Vowel { offset_s: 2.7, total_s: 4.0, f0_hz: |_| 150.0, room_db: -120.0, ..Vowel::default() }.sound(RATE);
    let mut wet = vec![0f64; dry.len()];
    for (k, x) in dry.iter().enumerate().filter(|(_, x)| x.abs() > 1e-5) {
        wet[k..].iter_mut().zip(&response).for_each(|(w, r)| *w += f64::from(*x) * r);
    }
    let sound: Vec<f32> = wet.iter().map(|x| (x + 2e-4 * noise.next()) as f32).collect();
    let (_, holds) = analyse_voice(&sound, RATE);
    assert_eq!(holds.len(), 1, "{holds:?}");
    // Without knowledge of echoes the hold ends where the echo is 30 dB down: 0.4 s late.
    assert!((holds[0].onset_s - 0.7).abs() < 0.03 && (holds[0].offset_s - 2.7).abs() < 0.1, "{:?}", holds[0]);
}

#[test]
fn a_voice_that_fades_is_no_echo() {
    // 20 dB a second: far faster than any hold fades, far slower than a room.
    let mut sound = Vowel { offset_s: 3.2, total_s: 4.0, ..Vowel::default() }.sound(RATE);
    for (k, x) in sound.iter_mut().enumerate() {
        *x *= 10f32.powf(-(k as f32 / RATE as f32 - 2.2).max(0.0));
    }
    let (_, holds) = analyse_voice(&sound, RATE);
    assert_eq!(holds.len(), 1, "{holds:?}");
    assert!((holds[0].offset_s - 3.2).abs() < 0.05, "{:?}", holds[0]);
}

/// Talk: another voice whose vowel and pitch change every 0.17 s.
fn talk(total_s: f64, level_db: f64) -> Vec<f32> {
    let pitches: [fn(f64) -> f64; 4] = [|_| 118.0, |t| 132.0 - 60.0 * t, |_| 104.0, |t| 110.0 + 90.0 * t];
    let mut sound = Vec::new();
    for k in 0..(total_s / 0.17) as usize {
        let formants = [AH, super::synth::EE, super::synth::OO][k % 3];
        let syllable = Vowel { formants, onset_s: 0.0, offset_s: 0.15, total_s: 0.17, f0_hz: pitches[k % 4], level_db, ..Vowel::default() };
        sound.extend(syllable.sound(RATE));
    }
    sound
}

#[test]
fn a_hold_ends_with_its_voice_though_talk_goes_on() {
    // 10 dB under the vowel. Aim of the project: within 120 ms.
    let mut sound = Vowel { f0_hz: |_| 190.0, onset_s: 1.7, offset_s: 4.2, total_s: 7.0, ..Vowel::default() }.sound(RATE);
    sound.iter_mut().zip(talk(7.0, -36.0)).for_each(|(x, y)| *x += y);
    let (_, holds) = analyse_voice(&sound, RATE);
    assert_eq!(holds.len(), 1, "{holds:?}");
    assert!((holds[0].onset_s - 1.7).abs() < 0.12 && (holds[0].offset_s - 4.2).abs() < 0.12, "{:?}", holds[0]);
    let (_, holds) = analyse_voice(&talk(7.0, -26.0), RATE);
    assert!(holds.is_empty(), "{holds:?}");
}

fn told_of_room(ear: &mut VoiceEar, sound: &[f32]) -> Vec<(f64, bool)> {
    let mut told = Vec::new();
    ear.push(sound, false, &mut |output| {
        if let VoiceOutput::Event(VoiceEvent::RoomLoud { at_s, loud, .. }) = output {
            told.push((at_s, loud));
        }
    });
    told
}

#[test]
fn a_loud_room_is_told_within_moments_and_marks_the_hold() {
    let mut ear = VoiceEar::new(RATE);
    ear.set_task(VoiceTask::Hold(FILE_SETTINGS));
    let room = |s: f64, level_db: f64, seed: u64| -> Vec<f32> {
        let mut noise = Noise(seed);
        let height = 3f64.sqrt() * 10f64.powf(level_db / 20.0);
        (0..(s * f64::from(RATE)) as usize).map(|_| (height * noise.next()) as f32).collect()
    };
    assert!(told_of_room(&mut ear, &room(4.0, -60.0, 1)).is_empty());
    // The aim is 2 s to adapt; then a second to be sure.
    let told = told_of_room(&mut ear, &room(5.0, -30.0, 2));
    assert!(matches!(told[..], [(at_s, true)] if at_s < 4.0 + 3.2), "{told:?}");
    let told = told_of_room(&mut ear, &room(5.0, -60.0, 3));
    assert!(matches!(told[..], [(at_s, false)] if at_s < 9.0 + 3.2), "{told:?}");
    // A vowel 5 dB over the room is measured and says so.
    let (_, holds) =
        analyse_voice(&Vowel { room_db: -32.0, onset_s: 2.0, offset_s: 5.0, total_s: 6.0, ..Vowel::default() }.sound(RATE), RATE);
    assert_eq!(holds.len(), 1, "{holds:?}");
    assert!(holds[0].over_room_db < crate::LOUD_ROOM_DB, "{:?}", holds[0]);
}
