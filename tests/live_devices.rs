//! Promise: live devices lose no sample of the microphone and play what they are given, whole.
//!
//! A private sound server stands in for the sound card. The devices are opened in a child process (this test binary
//! again), so that the server's address is set in its environment and nowhere else.

mod support;

use std::process::{Command, Stdio};
use support::sound_server::{SoundServer, stop};

const RATE: usize = 48_000;
/// Tells the child where to leave what it heard.
const OUT: &str = "TIDECOUNT_TEST_OUT";
const TONE_HZ: f64 = 440.0;
const TONE_S: f64 = 2.0;

/// Noise that resembles itself nowhere, so that one lost sample is seen.
fn noise(frames: usize) -> Vec<i16> {
    let mut state = 1_u32;
    (0..frames)
        .map(|_| {
            // Numerical Recipes' "quick and dirty" generator; constants from memory.
            state = state.wrapping_mul(1_664_525).wrapping_add(1_013_904_223);
            ((state >> 16) as i16) / 4
        })
        .collect()
}

fn write_wav(path: &std::path::Path, samples: &[i16]) {
    let spec = hound::WavSpec { channels: 1, sample_rate: RATE as u32, bits_per_sample: 16, sample_format: hound::SampleFormat::Int };
    let mut writer = hound::WavWriter::create(path, spec).unwrap();
    samples.iter().for_each(|s| writer.write_sample(*s).unwrap());
    writer.finalize().unwrap();
}

#[test]
fn the_microphone_loses_nothing_and_the_loudspeaker_plays_all() {
    let Some(server) = SoundServer::start(None) else { return };
    let said = noise(5 * RATE);
    write_wav(&server.path("said.wav"), &said);
    let mut recorder = server.record_speaker(&server.path("played.wav"));
    let child = Command::new(std::env::current_exe().unwrap())
        .args(["--exact", "child", "--ignored", "--nocapture"])
        .envs(server.env())
        .env(OUT, server.path("heard"))
        .stdout(Stdio::piped())
        .stderr(Stdio::piped())
        .spawn()
        .unwrap();
    // The child has the microphone open once its file is there.
    let opened = server.path("heard.open");
    while !opened.exists() {
        std::thread::sleep(std::time::Duration::from_millis(20));
    }
    let mut player = server.play(&server.path("said.wav"));
    let output = child.wait_with_output().unwrap();
    assert!(output.status.success(), "{}", String::from_utf8_lossy(&output.stderr));
    player.wait().unwrap();
    stop(&mut recorder);

    let bytes = std::fs::read(server.path("heard")).unwrap();
    let heard: Vec<f32> = bytes.chunks_exact(4).map(|b| f32::from_le_bytes(b.try_into().unwrap())).collect();
    let begin = heard.iter().position(|s| *s != 0.0).expect("something was heard");
    let first = said.iter().position(|s| *s != 0).unwrap();
    let same = heard[begin..].iter().zip(&said[first..]).take_while(|(h, s)| **h == f32::from(**s) / 32_768.0).count();
    assert!(same >= said.len() - first, "alike for {same} of {} samples", said.len() - first);

    let played: Vec<f64> =
        hound::WavReader::open(server.path("played.wav")).unwrap().into_samples::<i16>().map(|s| f64::from(s.unwrap()) / 32_768.0).collect();
    let from = played.iter().position(|s| s.abs() > 0.01).expect("the tone was played");
    let to = played.iter().rposition(|s| s.abs() > 0.01).unwrap();
    let length_s = (to - from) as f64 / RATE as f64;
    assert!((length_s - TONE_S).abs() < 0.005, "a tone of {TONE_S} s lasted {length_s} s");
    // Every period is there: rising zero crossings, one per period, evenly.
    let tone = &played[from..=to];
    let crossings: Vec<usize> = (1..tone.len()).filter(|n| tone[n - 1] < 0.0 && tone[*n] >= 0.0).collect();
    let period = RATE as f64 / TONE_HZ;
    for pair in crossings.windows(2) {
        assert!(((pair[1] - pair[0]) as f64 - period).abs() < 2.0, "a period of {} frames at {}", pair[1] - pair[0], pair[0]);
    }
    assert!((crossings.len() as f64 - TONE_HZ * TONE_S).abs() <= 2.0, "{} periods", crossings.len());
}

/// Seven seconds with live devices: hears the microphone, plays a tone in between.
#[test]
#[ignore = "run by the test above, which gives it a sound server"]
fn child() {
    let Some(out) = std::env::var_os(OUT) else { return };
    let mut io = tidecount::audio::open("mic", "default", false).unwrap();
    assert_eq!((io.mic_rate_hz(), io.speaker_rate_hz(), io.is_offline()), (48_000, 48_000, false));
    let block = RATE / 100;
    let mut mic = vec![0.0; block];
    let mut speaker = vec![0.0; block];
    let mut heard = Vec::new();
    let mut lost = 0;
    let (tone_from, tone_to) = (2 * RATE, 2 * RATE + (TONE_S * RATE as f64) as usize);
    for n in 0..700 {
        lost += io.read(&mut mic).unwrap().lost_frames;
        mic.iter().for_each(|s| heard.extend_from_slice(&s.to_le_bytes()));
        for (k, s) in speaker.iter_mut().enumerate() {
            let at = n * block + k;
            let phase = std::f64::consts::TAU * TONE_HZ * (at as f64 / RATE as f64);
            *s = if (tone_from..tone_to).contains(&at) { 0.25 * phase.sin() as f32 } else { 0.0 };
        }
        io.write(&speaker).unwrap();
        if n == 10 {
            std::fs::write(std::path::Path::new(&out).with_extension("open"), "").unwrap();
        }
    }
    let delay_s = io.playback_delay_s();
    io.finish().unwrap();
    println!("delay {delay_s:.3} s, {:?}", io.health());
    assert!((0.02..0.3).contains(&delay_s), "a delay of {delay_s} s");
    assert_eq!(lost, 0);
    std::fs::write(out, heard).unwrap();
}
