//! Promise: `tidecount hear` gives sensible lines for any recording thrown at it.

use audio::decode::decode;
use std::f64::consts::PI;
use std::path::{Path, PathBuf};
use tidecount::hear::args::HearArgs;
use tidecount::hear::recordings::run;

/// A buzz of 12 harmonics at 140 Hz from 0.5 s to 2 s, of 2.5 s.
fn buzz(rate_hz: u32) -> Vec<f64> {
    (0..rate_hz * 5 / 2)
        .map(|k| {
            let t = f64::from(k) / f64::from(rate_hz);
            if !(0.5..2.0).contains(&t) {
                return 0.0;
            }
            (1..=12).map(|h| 0.1 / f64::from(h) * (2.0 * PI * 140.0 * f64::from(h) * t).sin()).sum()
        })
        .collect()
}

fn write_pcm(path: &Path, rate_hz: u32, bits: u16, channels: u16) {
    let spec = hound::WavSpec { channels, sample_rate: rate_hz, bits_per_sample: bits, sample_format: hound::SampleFormat::Int };
    let mut writer = hound::WavWriter::create(path, spec).unwrap();
    for x in buzz(rate_hz) {
        for _ in 0..channels {
            writer.write_sample((x * f64::from(1u32 << (bits - 1)).min(2147483520.0)) as i32).unwrap();
        }
    }
    writer.finalize().unwrap();
}

/// ITU-T G.711 mu-law of a sample of 14 bits, from memory of the standard; checked here by decoding it again.
fn mu_law(x: f64) -> u8 {
    let magnitude = ((x.abs() * 8159.0) as i32).min(8158) + 33;
    let segment = (0..8).rev().find(|s| magnitude >= 32 << s).unwrap_or(0);
    let code = (segment << 4) | ((magnitude >> (segment + 1)) & 15);
    !(code as u8 | if x < 0.0 { 128 } else { 0 })
}

fn lines(files: &[PathBuf], frames: Option<PathBuf>) -> Vec<serde_json::Value> {
    let mut out = Vec::new();
    let mut err = Vec::new();
    assert!(run(&HearArgs { files: files.to_vec(), json: true, frames, ..HearArgs::default() }, &mut out, &mut err).unwrap());
    assert!(err.is_empty());
    String::from_utf8(out).unwrap().lines().map(|l| serde_json::from_str(l).unwrap()).collect()
}

fn check(found: &[serde_json::Value], what: &str) {
    assert_eq!(found.len(), 1, "{what}: {found:?}");
    let number = |key: &str| found[0][key].as_f64().unwrap_or_else(|| panic!("{what}: no {key}"));
    assert_eq!(found[0]["kind"], "voiced");
    assert_eq!(found[0]["level_weighting"], "A");
    assert_eq!(found[0]["level_calibrated"], false);
    assert!((number("onset_s") - 0.5).abs() < 0.02, "{what}: {found:?}");
    assert!((number("offset_s") - 2.0).abs() < 0.02, "{what}: {found:?}");
    assert!((number("duration_s") - 1.5).abs() < 0.02, "{what}");
    assert!((number("f0_median_hz") - 140.0).abs() < 0.5, "{what}");
    assert!(number("f0_span_st") < 0.2 && number("level_fall_db").abs() < 0.5, "{what}");
}

#[test]
fn every_usual_kind_of_file_is_read() {
    let folder = tempfile::tempdir().unwrap();
    for (rate_hz, bits, channels) in [(8000, 16, 1), (11_025, 24, 2), (16_000, 8, 1), (44_100, 32, 2), (48_000, 16, 1), (96_000, 24, 1)] {
        let path = folder.path().join(format!("{rate_hz}_{bits}_{channels}.wav"));
        write_pcm(&path, rate_hz, bits, channels);
        let csv = folder.path().join("frames.csv");
        check(&lines(std::slice::from_ref(&path), Some(csv.clone())), &path.display().to_string());
        let table = std::fs::read_to_string(csv).unwrap();
        let rows: Vec<&str> = table.lines().collect();
        assert_eq!(rows[0], "t_s,f0_hz,level_db,voiced");
        assert_eq!(rows.len(), 251);
        let fields: Vec<f64> = rows[101].split(',').map(|f| f.parse().unwrap()).collect();
        assert!((fields[0] - 1.0).abs() < 1e-9 && (fields[1] - 140.0).abs() < 0.5 && fields[3] == 1.0);
        assert!(rows[11].ends_with(",0") && rows[11].split(',').nth(1) == Some("0.00"));
    }
    let spec = hound::WavSpec { channels: 1, sample_rate: 22_050, bits_per_sample: 32, sample_format: hound::SampleFormat::Float };
    let float = folder.path().join("float.wav");
    let mut writer = hound::WavWriter::create(&float, spec).unwrap();
    buzz(22_050).iter().for_each(|x| writer.write_sample(*x as f32).unwrap());
    writer.finalize().unwrap();
    check(&lines(&[float], None), "float");

    // G.711 in a WAV: format code 7, the short form of its header.
    let data: Vec<u8> = buzz(8000).into_iter().map(mu_law).collect();
    let mut bytes = b"RIFF\0\0\0\0WAVEfmt \x10\0\0\0\x07\0\x01\0".to_vec();
    bytes.extend(8000u32.to_le_bytes());
    bytes.extend(8000u32.to_le_bytes());
    bytes.extend([1, 0, 8, 0]);
    bytes.extend(b"data");
    bytes.extend(0u32.to_le_bytes());
    bytes.extend(&data);
    // The lengths are left at 0, as a program does that writes to a pipe.
    let law = folder.path().join("law.wav");
    std::fs::write(&law, &bytes).unwrap();
    check(&lines(&[law], None), "mu-law from a pipe");
}

#[test]
fn odd_recordings_give_no_lines_and_a_valid_table() {
    let folder = tempfile::tempdir().unwrap();
    let spec = hound::WavSpec { channels: 1, sample_rate: 16_000, bits_per_sample: 16, sample_format: hound::SampleFormat::Int };
    let mut state = 1u32;
    let mut noise = move || {
        state = state.wrapping_mul(1_664_525).wrapping_add(1_013_904_223);
        (state >> 16) as i16
    };
    let cases: [(&str, Vec<i16>); 4] =
        [("none", vec![]), ("one", vec![12_000]), ("silence", vec![0; 32_000]), ("noise", (0..64_000).map(|_| noise()).collect())];
    for (name, samples) in cases {
        let (path, csv) = (folder.path().join(name).with_extension("wav"), folder.path().join("frames.csv"));
        let mut writer = hound::WavWriter::create(&path, spec).unwrap();
        samples.iter().for_each(|x| writer.write_sample(*x).unwrap());
        writer.finalize().unwrap();
        assert!(lines(&[path], Some(csv.clone())).is_empty(), "{name}");
        let table = std::fs::read_to_string(csv).unwrap();
        assert_eq!(table.lines().count(), 1 + samples.len().div_ceil(160), "{name}");
        for row in table.lines().skip(1) {
            assert!(row.split(',').all(|f| f.parse::<f64>().is_ok_and(f64::is_finite)), "{name}: {row}");
        }
    }
}

#[test]
fn what_is_no_sound_is_refused_with_a_remedy() {
    let folder = tempfile::tempdir().unwrap();
    let (text, empty, missing) = (folder.path().join("text.wav"), folder.path().join("empty.flac"), folder.path().join("missing.wav"));
    std::fs::write(&text, "This is no sound.\n".repeat(100)).unwrap();
    std::fs::write(&empty, "").unwrap();
    for (path, remedy) in
        [(&text, "Convert it"), (&empty, "again"), (&missing, "Check the name"), (&folder.path().to_owned(), "Name the sound files")]
    {
        let error = decode(path).unwrap_err().to_string();
        assert!(error.contains(&path.display().to_string()) && error.contains(remedy), "{error}");
    }
    let args = HearArgs { files: vec![text.clone(), empty], frames: Some(folder.path().join("f.csv")), ..HearArgs::default() };
    let error = run(&args, &mut Vec::new(), &mut Vec::new()).unwrap_err().to_string();
    assert!(error.contains("one recording at a time"), "{error}");
    let slow = folder.path().join("slow.wav");
    write_pcm(&slow, 1000, 16, 1);
    let mut error = Vec::new();
    assert!(!run(&HearArgs { files: vec![slow], ..HearArgs::default() }, &mut Vec::new(), &mut error).unwrap());
    let error = String::from_utf8(error).unwrap();
    assert!(error.contains("slow.wav") && error.contains("8000"), "{error}");
}
