//! Promise: a microphone is calibrated with one command, from a recording as well; what cannot calibrate is refused with a
//! remedy, and a practice of recordings of the same recorder gives dB SPL at 30 cm.

use std::f64::consts::PI;
use std::path::Path;
use std::process::{Command, Output, Stdio};

const RATE_HZ: u32 = 16_000;

fn tidecount(args: &[&str]) -> Output {
    Command::new(env!("CARGO_BIN_EXE_tidecount")).args(args).stdin(Stdio::null()).output().unwrap()
}

fn text(bytes: &[u8]) -> String {
    String::from_utf8_lossy(bytes).into_owned()
}

/// Four seconds of a quiet room, then five of a 1 kHz tone of this level (a sine of amplitude 1 is -3 dB), limited to ±1.
fn recording(path: &Path, level_db: f64) {
    let spec = hound::WavSpec { channels: 1, sample_rate: RATE_HZ, bits_per_sample: 16, sample_format: hound::SampleFormat::Int };
    let mut writer = hound::WavWriter::create(path, spec).unwrap();
    let amplitude = 10f64.powf((level_db + 3.0103) / 20.0);
    for k in 0..10 * RATE_HZ {
        let t = f64::from(k) / f64::from(RATE_HZ);
        let tone = if (4.0..9.0).contains(&t) { amplitude * (2.0 * PI * 1000.0 * t).sin() } else { 0.0 };
        let room = 0.0003 * (2.0 * PI * 333.0 * t).sin();
        writer.write_sample(((tone + room).clamp(-1.0, 1.0) * 32_767.0).round() as i16).unwrap();
    }
    writer.finalize().unwrap();
}

#[test]
fn a_recording_of_a_known_tone_calibrates_its_recorder() {
    let folder = tempfile::tempdir().unwrap();
    let (wav, data) = (folder.path().join("tone.wav"), folder.path().join("data"));
    recording(&wav, -26.0);
    let (wav, data) = (wav.to_str().unwrap(), data.to_str().unwrap());
    let done = tidecount(&[
        "calibrate",
        "--mic",
        wav,
        "--source",
        "94",
        "--distance-cm",
        "60",
        "--recorded-with",
        "desk recorder",
        "--data",
        data,
    ]);
    assert!(done.status.success(), "{done:?}");
    let kept = std::fs::read_to_string(Path::new(data).join("calibrations.toml")).unwrap();
    let number = |key: &str| -> f64 {
        let line = kept.lines().find(|l| l.starts_with(&format!("{key} = "))).unwrap_or_else(|| panic!("{key} in {kept}"));
        line.split(" = ").nth(1).unwrap().parse().unwrap()
    };
    // 94 dB for -26 dB re full scale: K = 120.
    assert!((number("offset_db") - 120.0).abs() < 0.1 && (number("distance_cm") - 60.0).abs() < 1e-9, "{kept}");
    let shown = text(&tidecount(&["calibrate", "--show", "--data", data]).stdout);
    // At 30 cm a voice is 20 lg 2 = 6.02 dB louder than at 60.
    assert!(shown.contains("desk recorder") && shown.contains("126.0 dB SPL at 30 cm"), "{shown}");
    let unknown = tidecount(&["calibrate", "--forget", "other", "--data", data]);
    assert!(!unknown.status.success() && text(&unknown.stderr).contains("desk recorder"), "{unknown:?}");
    assert!(tidecount(&["calibrate", "--forget", "desk recorder", "--data", data]).status.success());
    assert!(text(&tidecount(&["calibrate", "--show", "--data", data]).stdout).contains("No microphone is calibrated"));
}

#[test]
fn a_phone_is_marked_rough_and_what_cannot_calibrate_is_refused() {
    let folder = tempfile::tempdir().unwrap();
    let data = folder.path().join("data");
    let data = data.to_str().unwrap();
    for (level_db, why) in [(3.0, "clipped"), (-75.0, "quiet")] {
        let wav = folder.path().join("bad.wav");
        recording(&wav, level_db);
        let refused = tidecount(&["calibrate", "--mic", wav.to_str().unwrap(), "--meter", "78.4", "--data", data]);
        let said = text(&refused.stderr);
        assert!(!refused.status.success() && said.contains("nothing was calibrated"), "{why}: {said}");
    }
    assert!(!Path::new(data).join("calibrations.toml").exists());
    let wav = folder.path().join("good.wav");
    recording(&wav, -30.0);
    let wav = wav.to_str().unwrap();
    let rough = tidecount(&["calibrate", "--mic", wav, "--phone", "75", "--data", data]);
    assert!(rough.status.success() && text(&rough.stdout).contains("ROUGH"), "{rough:?}");
    for bad in [["--meter", "784"], ["--meter", "x"], ["--distance-cm", "0"]] {
        let refused = tidecount(&[&["calibrate", "--mic", wav, "--phone", "75", "--data", data][..], &bad[..]].concat());
        assert!(!refused.status.success(), "{bad:?}");
    }
    let number_missing = tidecount(&["calibrate", "--mic", wav, "--meter", "--data", data]);
    assert!(text(&number_missing.stderr).contains("--meter 78.4"), "{number_missing:?}");
}
