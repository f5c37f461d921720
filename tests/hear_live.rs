//! Promise: `tidecount hear` without recordings shows the microphone as it is, and ends cleanly on Ctrl-C.

mod support;

use std::f64::consts::PI;
use std::io::{BufRead, BufReader};
use std::path::Path;
use std::process::{Child, Command, Stdio};
use std::sync::mpsc::{Receiver, channel};
use std::time::Duration;
use support::sound_server::{SoundServer, stop};

const RATE: u32 = 48_000;

/// Room noise, with a buzz of 150 Hz from 1 s to 3 s, of 4.5 s.
fn write_hold(path: &Path) {
    let spec = hound::WavSpec { channels: 1, sample_rate: RATE, bits_per_sample: 16, sample_format: hound::SampleFormat::Int };
    let mut writer = hound::WavWriter::create(path, spec).unwrap();
    let mut state = 1u32;
    for k in 0..RATE * 9 / 2 {
        let t = f64::from(k) / f64::from(RATE);
        state = state.wrapping_mul(1_664_525).wrapping_add(1_013_904_223);
        let mut x = (f64::from(state >> 16) / 32_768.0 - 1.0) * 5e-4;
        if (1.0..3.0).contains(&t) {
            x += (1..=12).map(|h| 0.12 / f64::from(h) * (2.0 * PI * 150.0 * f64::from(h) * t).sin()).sum::<f64>();
        }
        writer.write_sample((x * 32_767.0) as i16).unwrap();
    }
    writer.finalize().unwrap();
}

fn start(args: &[&str], env: Vec<(String, String)>) -> (Child, Receiver<String>) {
    let mut child = Command::new(env!("CARGO_BIN_EXE_tidecount"))
        .arg("hear")
        .args(args)
        .envs(env)
        .stdin(Stdio::null())
        .stdout(Stdio::piped())
        .stderr(Stdio::piped())
        .spawn()
        .unwrap();
    let out = child.stdout.take().unwrap();
    let (tell, told) = channel();
    std::thread::spawn(move || {
        for line in BufReader::new(out).lines().map_while(Result::ok) {
            if tell.send(line).is_err() {
                return;
            }
        }
    });
    (child, told)
}

/// The first line that `wanted` takes; the program has half a minute for it.
fn wait_for(told: &Receiver<String>, wanted: impl Fn(&str) -> bool) -> String {
    let mut all = Vec::new();
    while let Ok(line) = told.recv_timeout(Duration::from_secs(30)) {
        if wanted(&line) {
            return line;
        }
        all.push(line);
    }
    panic!("never said: {all:#?}");
}

#[test]
fn a_recording_as_microphone_runs_in_its_own_time_and_ends_by_itself() {
    let folder = tempfile::tempdir().unwrap();
    let wav = folder.path().join("hold.wav");
    write_hold(&wav);
    let (child, told) = start(&["--mic", wav.to_str().unwrap()], Vec::new());
    let first = wait_for(&told, |_| true);
    assert!(first.contains("nothing is kept") && first.contains("Ctrl-C"), "{first}");
    wait_for(&told, |line| line.contains("voiced 150 Hz") && line.contains("hold"));
    let hold = wait_for(&told, |line| line.starts_with("hold"));
    assert!(hold.contains("2.00 s from 1.00 to 3.00 s, 150 Hz") || hold.contains("2.01 s from 1.00"), "{hold}");
    let quiet = wait_for(&told, |line| line.contains("no voice"));
    assert!(quiet.contains("dB(A)  room ") && !quiet.contains('\u{1b}'), "{quiet}");
    let ended = child.wait_with_output().unwrap();
    assert!(ended.status.success() && ended.stderr.is_empty(), "{ended:?}");
}

#[cfg(unix)]
#[test]
fn the_live_microphone_gives_a_json_line_for_a_hold_and_ctrl_c_ends_it() {
    let Some(server) = SoundServer::start(None) else { return };
    let wav = server.path("hold.wav");
    write_hold(&wav);
    let (child, told) = start(&["--json"], server.env());
    // The room is quiet for a while before somebody speaks.
    std::thread::sleep(Duration::from_secs(1));
    let mut player = server.play(&wav);
    let line = wait_for(&told, |_| true);
    let hold: serde_json::Value = serde_json::from_str(&line).unwrap();
    assert_eq!((&hold["kind"], &hold["file"]), (&"voiced".into(), &"default".into()));
    assert!((hold["duration_s"].as_f64().unwrap() - 2.0).abs() < 0.1, "{line}");
    assert!((hold["f0_median_hz"].as_f64().unwrap() - 150.0).abs() < 1.0, "{line}");
    let interrupted = Command::new("kill").args(["-INT", &child.id().to_string()]).status();
    assert!(interrupted.is_ok_and(|status| status.success()));
    let ended = child.wait_with_output().unwrap();
    assert!(ended.status.success(), "{ended:?}");
    assert!(told.iter().all(|line| serde_json::from_str::<serde_json::Value>(&line).is_ok()));
    stop(&mut player);
}
