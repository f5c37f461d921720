//! Two knocks are told from one, from four, from talk, vowels and claps in a row.

use super::synth::{AH, Noise, Vowel};
use crate::{VoiceEar, VoiceEvent, VoiceOutput};

const RATE: u32 = 16_000;

/// Quiet with knocks at these seconds: a burst that rings for a moment and is gone after 50 ms, as a knuckle on wood.
fn knocks(at_s: &[f64], total_s: f64, amplitude: f64) -> Vec<f32> {
    let mut sound = vec![0f32; (total_s * f64::from(RATE)) as usize];
    let mut noise = Noise(7);
    sound.iter_mut().for_each(|x| *x = (3e-4 * noise.next()) as f32);
    for at_s in at_s {
        let from = (at_s * f64::from(RATE)) as usize;
        for n in 0..(0.06 * f64::from(RATE)) as usize {
            let t_s = n as f64 / f64::from(RATE);
            let ring = (std::f64::consts::TAU * 320.0 * t_s).sin() + noise.next();
            sound[from + n] += (amplitude * (-t_s / 0.010).exp() * ring) as f32;
        }
    }
    sound
}

fn told(sound: &[f32]) -> Vec<f64> {
    let mut ear = VoiceEar::new(RATE);
    let mut all = Vec::new();
    let mut keep = |output| {
        if let VoiceOutput::Event(VoiceEvent::Knocked { at_s }) = output {
            all.push(at_s);
        }
    };
    ear.push(sound, false, &mut keep);
    ear.finish(&mut keep);
    all
}

#[test]
fn two_or_three_knocks_are_told_once_soon_after_the_last() {
    for apart_s in [0.2, 0.35, 0.6] {
        for amplitude in [0.05, 0.5] {
            let told = told(&knocks(&[2.0, 2.0 + apart_s], 5.0, amplitude));
            assert_eq!(told.len(), 1, "{apart_s} s, {amplitude}: {told:?}");
            assert!(told[0] > 2.0 + apart_s && told[0] < 3.1 + apart_s, "{told:?}");
        }
    }
    assert_eq!(told(&knocks(&[2.0, 2.3, 2.6], 5.0, 0.2)).len(), 1);
    assert_eq!(told(&knocks(&[2.0, 2.3, 5.0, 5.3], 8.0, 0.2)).len(), 2, "each pair is one");
}

#[test]
fn one_knock_and_a_row_of_them_are_none() {
    assert!(told(&knocks(&[2.0], 5.0, 0.3)).is_empty());
    assert!(told(&knocks(&[2.0, 3.5], 6.0, 0.3)).is_empty(), "too far apart");
    let row: Vec<f64> = (0..8).map(|k| 2.0 + 0.25 * f64::from(k)).collect();
    assert!(told(&knocks(&row, 7.0, 0.3)).is_empty(), "somebody hammers");
}

/// What is said or held begins with knocks of its own: the bursts of its stops.
#[test]
fn a_voice_is_no_knock() {
    let mut sound = knocks(&[2.0, 2.3], 6.0, 0.3);
    let vowel = Vowel { formants: AH, onset_s: 0.0, offset_s: 1.5, total_s: 1.5, ..Vowel::default() };
    let at = (2.4 * f64::from(RATE)) as usize;
    sound[at..].iter_mut().zip(vowel.sound(RATE)).for_each(|(x, v)| *x += v);
    assert!(told(&sound).is_empty(), "two bursts, and a voice behind them");
    let vowels =
        [0.15, 0.15].map(|length_s| Vowel { formants: AH, onset_s: 0.0, offset_s: length_s, total_s: length_s, ..Vowel::default() });
    let mut short = knocks(&[], 5.0, 0.0);
    for (k, vowel) in vowels.iter().enumerate() {
        let at = ((2.0 + 0.3 * k as f64) * f64::from(RATE)) as usize;
        short[at..].iter_mut().zip(vowel.sound(RATE)).for_each(|(x, v)| *x += v);
    }
    assert!(told(&short).is_empty(), "ah, ah");
}

/// Recorded rooms, animals, machines, and people who read: none of them knocks twice.
#[test]
fn recordings_of_other_things_hold_next_to_no_pair_of_knocks() {
    let folder = std::path::Path::new(env!("CARGO_MANIFEST_DIR")).join("../../../shared/data");
    if !folder.join("known-duration.tsv").exists() {
        skipping::skip(skipping::Missing::Data, "no shared data");
        return;
    }
    let mut taken = Vec::new();
    let mut seconds = 0.0;
    for part in ["noise/esc10", "an4-test", "speech-commands", "coswara"] {
        let mut files: Vec<_> = walk(&folder.join(part));
        files.sort();
        // Every third of the single words: they are many.
        let step = if part == "speech-commands" { 3 } else { 1 };
        for file in files.iter().step_by(step) {
            let Ok(sound) = audio::decode::decode(file) else { continue };
            seconds += sound.samples.len() as f64 / f64::from(sound.rate_hz);
            let mut ear = VoiceEar::new(sound.rate_hz);
            let mut found = false;
            let mut look = |output| found |= matches!(output, VoiceOutput::Event(VoiceEvent::Knocked { .. }));
            ear.push(&sound.samples, false, &mut look);
            ear.finish(&mut look);
            if found {
                taken.push(file.file_name().unwrap_or_default().to_owned());
            }
        }
    }
    println!("{} of {:.0} min taken for knocks: {taken:?}", taken.len(), seconds / 60.0);
    assert!(seconds > 600.0, "too little was read: {seconds}");
    assert!(taken.len() <= 4, "{taken:?}");
}

fn walk(folder: &std::path::Path) -> Vec<std::path::PathBuf> {
    let Ok(entries) = std::fs::read_dir(folder) else { return Vec::new() };
    let paths = entries.flatten().map(|entry| entry.path());
    paths.flat_map(|path| if path.is_dir() { walk(&path) } else { vec![path] }).collect()
}
