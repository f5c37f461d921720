use super::*;
use crate::set_up::desk::{Desk, Now, Task};
use crate::set_up::mic_judge::{Finding, Judged};
use rand::{Rng, SeedableRng};
use rehearse::{Vowel, VowelSpec};

fn hear(samples: &[f32], rate_hz: u32) -> Judged {
    let dir = tempfile::tempdir().expect("a folder");
    let path = dir.path().join("mic.wav");
    let spec = hound::WavSpec { channels: 1, sample_rate: rate_hz, bits_per_sample: 32, sample_format: hound::SampleFormat::Float };
    let mut file = hound::WavWriter::create(&path, spec).expect("creates");
    samples.iter().for_each(|sample| file.write_sample(*sample).expect("writes"));
    file.finalize().expect("closes");
    let devices = Devices { mic: path.display().to_string(), speaker: "none".into(), voice: None, data: dir.path().to_path_buf() };
    let desk = Desk::default();
    assert!(desk.begin(Task::Listen, Now::default(), move |job| listen(&devices, &Told::default(), job)));
    while desk.job().is_some() {
        std::thread::yield_now();
    }
    match desk.outcome("/microphone") {
        Some(Outcome::Judged(judged)) => judged,
        other => panic!("{other:?}"),
    }
}

const RATE_HZ: u32 = 16_000;

/// Five seconds of a room at this level and five of vowels at that, dB re full scale.
fn sound(room_db: f64, voice_db: f64) -> Vec<f32> {
    let mut chance = rand::rngs::StdRng::seed_from_u64(7);
    let amplitude = 10f64.powf(room_db / 20.0) * 3f64.sqrt();
    let mut samples: Vec<f32> = (0..RATE_HZ * 10).map(|_| (amplitude * chance.random_range(-1.0..1.0)) as f32).collect();
    // None: nobody speaks.
    for word in 0..if voice_db > -90.0 { 5 } else { 0 } {
        let spec = VowelSpec { level_db: voice_db, ..VowelSpec::steady(Vowel::A, 120.0, 0.7) };
        let vowel = spec.render(RATE_HZ).expect("renders");
        let at = (RATE_HZ as usize) * (5 + word);
        samples.iter_mut().skip(at).zip(&vowel.samples).for_each(|(to, sample)| *to += sample);
    }
    samples
}

#[test]
fn a_good_microphone_works() {
    let judged = hear(&sound(-65.0, -28.0), RATE_HZ);
    assert!(judged.findings.is_empty(), "{judged:?}");
    let levels = judged.levels;
    assert!(levels.voiced_s > 2.0 && levels.voice_db.is_some_and(|db| (-40.0..-24.0).contains(&db)), "{levels:?}");
    assert!(levels.room_db.is_some_and(|db| (-75.0..-60.0).contains(&db)), "{levels:?}");
}

#[test]
fn each_trouble_is_found_in_the_sound_itself() {
    assert_eq!(hear(&vec![0.0; 10 * RATE_HZ as usize], RATE_HZ).findings, [Finding::Dead]);
    assert_eq!(hear(&sound(-65.0, -120.0), RATE_HZ).findings, [Finding::NoSpeech]);
    assert!(hear(&sound(-30.0, -10.0), RATE_HZ).findings.contains(&Finding::RoomLoud));
    let clipped: Vec<f32> = sound(-65.0, -6.0).iter().map(|sample| (sample * 4.0).clamp(-1.0, 1.0)).collect();
    assert!(hear(&clipped, RATE_HZ).findings.contains(&Finding::Clips));
    let soft = hear(&sound(-56.0, -52.0), RATE_HZ);
    assert!(soft.findings.contains(&Finding::TooSoft) || soft.findings.contains(&Finding::NoSpeech), "{soft:?}");
}

#[test]
fn a_device_that_is_not_there_is_told_in_words() {
    let devices =
        Devices { mic: "no-such-microphone".into(), speaker: "none".into(), voice: None, data: std::path::PathBuf::from("/nowhere") };
    let desk = Desk::default();
    assert!(desk.begin(Task::Listen, Now::default(), move |job| listen(&devices, &Told::default(), job)));
    while desk.job().is_some() {
        std::thread::yield_now();
    }
    assert!(matches!(desk.outcome("/microphone"), Some(Outcome::Failed(why)) if !why.is_empty()));
}
