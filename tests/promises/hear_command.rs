//! Promise: `tidecount hear` says what it heard, of any recordings, in lines that a program can read.

use serde_json::Value;
use std::f64::consts::PI;
use std::ffi::OsStr;
use std::path::{Path, PathBuf};
use std::process::{Command, Output, Stdio};

const HOLD_FIELDS: [&str; 19] = [
    "kind",
    "file",
    "onset_s",
    "offset_s",
    "duration_s",
    "f0_median_hz",
    "f0_span_st",
    "f0_sd_st",
    "level_mean_db",
    "level_fall_db",
    "level_slope_db_per_s",
    "level_weighting",
    "level_calibrated",
    "breaks",
    "clipped_s",
    "level_time_weighting",
    "level_distance_cm",
    "level_calibration",
    "auto_gain",
];
const COMMAND_FIELDS: [&str; 6] = ["kind", "file", "text", "start_s", "end_s", "confidence"];

fn hear(args: &[&OsStr]) -> Output {
    Command::new(env!("CARGO_BIN_EXE_tidecount")).arg("hear").args(args).stdin(Stdio::null()).output().unwrap()
}

fn text(bytes: &[u8]) -> String {
    String::from_utf8(bytes.to_vec()).unwrap()
}

/// The lines of `hear --json`, each parsed.
fn json(output: &Output) -> Vec<Value> {
    text(&output.stdout).lines().map(|line| serde_json::from_str(line).unwrap_or_else(|e| panic!("{e}: {line}"))).collect()
}

/// Harmonics of 150 Hz falling by 6 dB an octave, root mean square near -17 dB; silence outside `spans`.
fn buzz(rate_hz: u32, spans: &[(f64, f64)], total_s: f64) -> Vec<f32> {
    (0..(total_s * f64::from(rate_hz)) as u32)
        .map(|k| {
            let t = f64::from(k) / f64::from(rate_hz);
            let on = spans.iter().any(|(from, to)| (*from..*to).contains(&t));
            if on { (1..=12).map(|h| 0.16 / f64::from(h) * (2.0 * PI * 150.0 * f64::from(h) * t).sin()).sum::<f64>() as f32 } else { 0.0 }
        })
        .collect()
}

fn write(path: &Path, rate_hz: u32, samples: &[f32]) {
    let spec = hound::WavSpec { channels: 1, sample_rate: rate_hz, bits_per_sample: 32, sample_format: hound::SampleFormat::Float };
    let mut writer = hound::WavWriter::create(path, spec).unwrap();
    samples.iter().for_each(|x| writer.write_sample(*x).unwrap());
    writer.finalize().unwrap();
}

fn keys(line: &Value) -> Vec<&str> {
    line.as_object().unwrap().keys().map(String::as_str).collect()
}

#[test]
fn each_hold_is_a_line_in_order_and_the_frames_lie_on_a_grid_of_10_ms() {
    let folder = tempfile::tempdir().unwrap();
    // 1.2 s, and 2.6 s with breaks of 0.1 and 0.2 s that are bridged.
    let spans = [(0.7, 1.9), (3.0, 4.0), (4.1, 4.8), (5.0, 5.6)];
    let (wav, csv) = (folder.path().join("a \"b\" ü.wav"), folder.path().join("frames.csv"));
    write(&wav, 22_050, &buzz(22_050, &spans, 6.5));
    let output = hear(&[wav.as_ref(), "--json".as_ref(), "--frames".as_ref(), csv.as_ref()]);
    assert!(output.status.success() && output.stderr.is_empty(), "{output:?}");
    let lines = json(&output);
    assert_eq!(lines.len(), 2, "{lines:?}");
    for (line, (onset_s, offset_s, breaks)) in lines.iter().zip([(0.7, 1.9, 0), (3.0, 5.6, 2)]) {
        assert_eq!(keys(line), HOLD_FIELDS);
        assert_eq!((&line["kind"], &line["file"]), (&"voiced".into(), &wav.display().to_string().into()));
        let number = |key: &str| line[key].as_f64().unwrap();
        assert!((number("onset_s") - onset_s).abs() < 0.03 && (number("offset_s") - offset_s).abs() < 0.03, "{line}");
        assert!((number("duration_s") - (number("offset_s") - number("onset_s"))).abs() < 1e-3);
        assert!((number("f0_median_hz") - 150.0).abs() < 0.5 && number("breaks") == f64::from(breaks), "{line}");
    }
    let table = std::fs::read_to_string(csv).unwrap();
    assert_eq!(table.lines().next(), Some("t_s,f0_hz,level_db,voiced"));
    let rows: Vec<Vec<f64>> = table.lines().skip(1).map(|row| row.split(',').map(|x| x.parse().unwrap()).collect()).collect();
    assert_eq!(rows.len(), 650);
    for (k, row) in rows.iter().enumerate() {
        assert!((row[0] - k as f64 / 100.0).abs() < 1e-9 && row.iter().all(|x| x.is_finite()), "{row:?}");
        assert!((row[3] == 0.0 && row[1] == 0.0) || (row[3] == 1.0 && (60.0..=800.0).contains(&row[1])), "{row:?}");
    }
    assert!(rows[100][3] == 1.0 && rows[30][3] == 0.0 && rows[250][3] == 0.0);
}

#[test]
fn odd_recordings_give_valid_lines_and_a_bad_one_stops_no_other() {
    let folder = tempfile::tempdir().unwrap();
    let mut files: Vec<PathBuf> = Vec::new();
    let mut add = |name: &str, rate_hz: u32, samples: &[f32]| {
        let path = folder.path().join(name);
        write(&path, rate_hz, samples);
        files.push(path);
    };
    let good = buzz(16_000, &[(0.5, 2.0)], 2.5);
    add("none.wav", 16_000, &[]);
    add("one.wav", 8_000, &[0.5]);
    add("silence.wav", 48_000, &vec![0.0; 48_000]);
    add("nan.wav", 16_000, &vec![f32::NAN; 20_000]);
    let poisoned: Vec<f32> =
        good.iter().enumerate().map(|(k, x)| if k % 4_001 == 7 { [f32::NAN, f32::INFINITY, -1e30][k % 3] } else { *x }).collect();
    add("infinite.wav", 16_000, &poisoned);
    add("steady.wav", 16_000, &vec![0.9; 20_000]);
    let clipped: Vec<f32> = good.iter().map(|x| (x * 20.0).clamp(-1.0, 1.0)).collect();
    add("clipped.wav", 16_000, &clipped);
    let bad = folder.path().join("bad.wav");
    std::fs::write(&bad, "no sound\n".repeat(500)).unwrap();
    add("last.wav", 16_000, &good);
    files.insert(2, bad);
    files.insert(3, folder.path().join("missing.wav"));
    let mut args: Vec<&OsStr> = files.iter().map(|f| f.as_os_str()).collect();
    args.push("--json".as_ref());
    let output = hear(&args);
    assert_eq!(output.status.code(), Some(1));
    let err = text(&output.stderr);
    assert_eq!(err.lines().count(), 2, "{err}");
    assert!(err.contains("bad.wav: is not a sound file that can be read. Convert it"), "{err}");
    assert!(err.contains("missing.wav: cannot be opened") && err.contains("Check the name"), "{err}");
    let lines = json(&output);
    let of = |name: &str| lines.iter().filter(|l| l["file"].as_str().unwrap().ends_with(name)).collect::<Vec<_>>();
    for name in ["none.wav", "one.wav", "silence.wav", "nan.wav", "steady.wav"] {
        assert!(of(name).is_empty(), "{name}: {lines:?}");
    }
    // How far the microphone stood is nobody's to know here.
    let told = |k: &&&str| **k != "level_distance_cm";
    assert!(lines.iter().all(|l| HOLD_FIELDS.iter().filter(told).all(|k| !l[*k].is_null())), "{lines:?}");
    assert!(of("clipped.wav").len() == 1 && of("clipped.wav")[0]["clipped_s"].as_f64().unwrap() > 1.0);
    assert!(of("last.wav").len() == 1 && of("last.wav")[0]["clipped_s"].as_f64() == Some(0.0));

    let table = hear(&[files[0].as_ref(), files.last().unwrap().as_ref()]);
    let table = text(&table.stdout);
    let rows: Vec<&str> = table.lines().collect();
    assert!(rows[0].ends_with("none.wav") && rows[1] == "  no held vowel" && rows[2].is_empty(), "{table}");
    assert!(rows[3].ends_with("last.wav") && rows[4].contains("length s") && rows[5].contains(" 1.50 "), "{table}");
    assert_eq!(rows.len(), 6);
}

#[test]
fn commands_and_holds_stand_in_order_of_time() {
    let folder = tempfile::tempdir().unwrap();
    let say = |phrase: &str| {
        let wav = folder.path().join("said.wav");
        let done = Command::new("flite").args(["-voice", "slt", "-t", phrase, "-o"]).arg(&wav).status();
        done.is_ok_and(|status| status.success()).then(|| audio::decode::decode(&wav).unwrap())
    };
    let (Some(stop), Some(yes)) = (say("stop"), say("yes")) else {
        skipping::skip(skipping::Missing::Installed, "flite is not installed (Debian: flite)");
        return;
    };
    let rate_hz = stop.rate_hz;
    let mut quiet = 1u32;
    let mut samples = Vec::new();
    let mut silence = |seconds: f64, samples: &mut Vec<f32>| {
        for _ in 0..(seconds * f64::from(rate_hz)) as u32 {
            quiet = quiet.wrapping_mul(1_664_525).wrapping_add(1_013_904_223);
            samples.push(((quiet >> 16) as f32 / 32_768.0 - 1.0) * 3e-4);
        }
    };
    silence(1.0, &mut samples);
    let stop_s = samples.len() as f64 / f64::from(rate_hz);
    samples.extend(&stop.samples);
    silence(1.0, &mut samples);
    samples.extend(buzz(rate_hz, &[(0.0, 2.0)], 2.0));
    silence(1.5, &mut samples);
    samples.extend(&yes.samples);
    silence(1.0, &mut samples);
    let (wav, other) = (folder.path().join("a.wav"), folder.path().join("b.wav"));
    write(&wav, rate_hz, &samples);
    // The same at another rate: each sample three times is 48 kHz with images far above the words.
    let tripled: Vec<f32> = samples.iter().flat_map(|x| [*x; 3]).collect();
    write(&other, rate_hz * 3, &tripled);
    let output = hear(&[wav.as_ref(), other.as_ref(), "--json".as_ref(), "--commands".as_ref(), " stop, Yes ,,go on".as_ref()]);
    assert!(output.status.success(), "{output:?}");
    let lines = json(&output);
    assert_eq!(lines.len(), 6, "{lines:?}");
    for (file, lines) in [(&wav, &lines[..3]), (&other, &lines[3..])] {
        let found: Vec<&str> = lines.iter().map(|l| l["text"].as_str().unwrap_or("hold")).collect();
        assert_eq!(found, ["stop", "hold", "Yes"], "{lines:?}");
        assert!(lines.iter().all(|l| l["file"] == file.display().to_string()));
        for command in [&lines[0], &lines[2]] {
            assert_eq!(keys(command), COMMAND_FIELDS);
            assert!((0.5..=1.0).contains(&command["confidence"].as_f64().unwrap()));
            assert!(command["start_s"].as_f64() < command["end_s"].as_f64());
        }
        assert!((stop_s..stop_s + 0.5).contains(&lines[0]["start_s"].as_f64().unwrap()), "{lines:?}");
    }
    // Why: every command is among what was considered, with what each ear found.
    let output = hear(&[wav.as_ref(), "--json".as_ref(), "--commands".as_ref(), "stop,yes,go on".as_ref(), "--why".as_ref()]);
    let lines = json(&output);
    let of = |kind: &str| -> Vec<&serde_json::Value> { lines.iter().filter(|line| line["kind"] == kind).collect() };
    for command in of("command") {
        let taken = |line: &&serde_json::Value| {
            line["text"] == command["text"] && line["verdict"] == "taken" && line["sureness"].as_f64() >= Some(0.5)
        };
        assert!(of("considered").iter().any(taken), "{command}: {lines:?}");
    }
    let shown = hear(&[wav.as_ref(), "--commands".as_ref(), "stop,yes,go on".as_ref(), "--why".as_ref()]);
    let shown = String::from_utf8(shown.stdout).unwrap();
    assert!(shown.contains("counts") && shown.contains("second ear") && shown.contains("dB over the room"), "{shown}");

    for (phrases, complaint) in [("ready,xylofrabulous", "\"xylofrabulous\""), (" , ", "no phrase"), ("stop 3", "\"3\"")] {
        let output = hear(&[wav.as_ref(), "--commands".as_ref(), phrases.as_ref()]);
        assert!(output.status.code() == Some(1) && output.stdout.is_empty(), "{output:?}");
        assert!(text(&output.stderr).contains(complaint), "{output:?}");
    }
    let output = hear(&[wav.as_ref(), "--commands".as_ref(), "stop".as_ref(), "--model".as_ref(), folder.path().as_ref()]);
    assert!(output.status.code() == Some(1) && text(&output.stderr).contains("model"), "{output:?}");
}

#[test]
fn labelled_recordings_are_counted() {
    let folder = tempfile::tempdir().unwrap();
    let file = |name: &str| folder.path().join(name);
    let list = |lines: &str| std::fs::write(file("list.tsv"), lines).unwrap();
    let evaluate = |more: &[&str]| {
        let list = file("list.tsv");
        let mut args: Vec<&OsStr> = vec!["--labels".as_ref(), list.as_ref(), "--commands".as_ref(), "stop,yes,no".as_ref()];
        args.extend(more.iter().map(AsRef::<OsStr>::as_ref));
        hear(&args)
    };
    list("path\tlabel\na.wav\n");
    let bad = evaluate(&[]);
    assert!(bad.status.code() == Some(1) && text(&bad.stderr).contains("list.tsv: line 2 has 1 columns"), "{bad:?}");

    write(&file("buzz.wav"), 16_000, &buzz(16_000, &[(0.5, 2.5)], 3.0));
    for (name, phrase) in [("stop.wav", "stop"), ("yes.wav", "yes")] {
        let said = Command::new("flite").args(["-voice", "slt", "-t", phrase, "-o"]).arg(file(name)).status();
        if !said.is_ok_and(|status| status.success()) {
            skipping::skip(skipping::Missing::Installed, "flite is not installed (Debian: flite)");
            return;
        }
    }
    list("path\tlabel\tgroup\nstop.wav\tstop\tvoice\nyes.wav\tyes\tvoice\nbuzz.wav\t\tsounds\nmissing.wav\tno\tvoice\n");
    let output = evaluate(&["--json", "--details"]);
    assert_eq!(output.status.code(), Some(1));
    assert!(text(&output.stderr).contains("missing.wav"), "{output:?}");
    let lines = json(&output);
    let details: Vec<&Value> = lines.iter().filter(|l| l["kind"] == "recording").collect();
    assert_eq!(details.iter().map(|d| &d["outcome"]).collect::<Vec<_>>(), ["hit", "hit", "quiet"]);
    let end_s = details[0]["word_end_s"].as_f64().unwrap();
    let heard = &details[0]["heard"][0];
    assert!(heard["text"] == "stop" && heard["decided_s"].as_f64().unwrap() > end_s - 0.1 && end_s > 1.1, "{lines:?}");
    let row = |group: &str| lines.iter().find(|l| l["kind"] == "evaluation" && l["group"] == group && l.get("phrase").is_none()).unwrap();
    let (voice, sounds) = (row("voice"), row("sounds"));
    assert_eq!((voice["said"].as_u64(), voice["hits"].as_u64(), voice["hit_rate"]["percent"].as_f64()), (Some(2), Some(2), Some(100.0)));
    assert!((voice["hit_rate"]["low_percent"].as_f64().unwrap() - 34.24).abs() < 0.01, "Wilson, two of two: {voice}");
    assert_eq!((sounds["other"].as_u64(), sounds["false_actions"].as_u64()), (Some(1), Some(0)));
    assert!((sounds["other_hours"].as_f64().unwrap() - 3.0 / 3600.0).abs() < 1e-4);

    // So much noise that nothing can be heard: the condition reaches the ear.
    let drowned = evaluate(&["--snr", "-20", "--noise", file("buzz.wav").to_str().unwrap()]);
    assert!(text(&drowned.stdout).starts_with("-20 dB SNR of buzz.wav; listening for stop, yes, no"), "{drowned:?}");
    let alone = evaluate(&["--snr", "10"]);
    assert!(!alone.status.success() && text(&alone.stderr).contains("--noise"), "{alone:?}");
}
