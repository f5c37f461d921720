//! Promise: live devices lose no sample of the microphone and play what they are given, whole.
//!
//! A private sound server stands in for the sound card. The devices are opened in a child process (this test binary
//! again), so that the server's address is set in its environment and nowhere else.

#[path = "endurance/devices.rs"]
mod devices;
#[path = "endurance/soak.rs"]
mod soak;
mod support;

use std::path::{Path, PathBuf};
use std::process::{Child, Command, Output, Stdio};
use std::sync::{Mutex, MutexGuard, PoisonError};
use std::time::{Duration, Instant};
use support::sound_server::{SoundServer, stop};

const RATE: usize = 48_000;
/// Tells the child where to leave what it heard.
const OUT: &str = "TIDECOUNT_TEST_OUT";
const TONE_HZ: f64 = 440.0;
const TONE_S: f64 = 2.0;

/// Two sound servers at once leave each other too little time on a small machine; what is tested is our side of one.
fn one_at_a_time() -> MutexGuard<'static, ()> {
    static TURN: Mutex<()> = Mutex::new(());
    TURN.lock().unwrap_or_else(PoisonError::into_inner)
}

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

fn write_wav(path: &Path, samples: &[i16]) {
    let spec = hound::WavSpec { channels: 1, sample_rate: RATE as u32, bits_per_sample: 16, sample_format: hound::SampleFormat::Int };
    let mut writer = hound::WavWriter::create(path, spec).unwrap();
    samples.iter().for_each(|s| writer.write_sample(*s).unwrap());
    writer.finalize().unwrap();
}

/// One of the ignored tests below as a process of its own; it leaves what it found at `out`.
fn child(name: &str, env: Vec<(String, String)>, out: &Path) -> Child {
    Command::new(std::env::current_exe().unwrap())
        .args(["--exact", name, "--ignored", "--nocapture"])
        .envs(env)
        .env(OUT, out)
        .stdout(Stdio::piped())
        .stderr(Stdio::piped())
        .spawn()
        .unwrap()
}

fn succeeded(child: Child) -> Output {
    let output = child.wait_with_output().unwrap();
    let (out, err) = (String::from_utf8_lossy(&output.stdout), String::from_utf8_lossy(&output.stderr));
    assert!(output.status.success(), "{out}{err}");
    output
}

/// Waits for a child to say by a file that it has come so far.
fn wait_for(path: &Path) {
    for _ in 0..1_500 {
        if path.exists() {
            return;
        }
        std::thread::sleep(Duration::from_millis(20));
    }
    panic!("the child did not get as far as {}", path.display());
}

fn say(out: &Path, word: &str) {
    std::fs::write(out.with_extension(word), "").unwrap();
}

#[test]
fn the_microphone_loses_nothing_and_the_loudspeaker_plays_all() {
    let _turn = one_at_a_time();
    let Some(server) = SoundServer::start(None) else { return };
    round_trip(&server, server.env());
}

#[test]
fn so_it_does_through_alsa() {
    let _turn = one_at_a_time();
    let Some(server) = SoundServer::start(None) else { return };
    let Some(env) = server.alsa_env() else { return };
    round_trip(&server, env);
}

/// What went in at the virtual microphone is judged by a second listener: the server itself puts silence in where the player is late,
/// and both hear that. What came out of the virtual loudspeaker may lack what the program says it came too late with, and no more.
fn round_trip(server: &SoundServer, env: Vec<(String, String)>) {
    let said = noise(5 * RATE);
    write_wav(&server.path("said.wav"), &said);
    let mut speaker_recorder = server.record_speaker(&server.path("played.wav"));
    let mut mic_recorder = server.record_mic(&server.path("reference.wav"));
    let out = server.path("heard");
    let child = child("child_round_trip", env, &out);
    wait_for(&out.with_extension("open"));
    let mut player = server.play(&server.path("said.wav"));
    let output = succeeded(child);
    player.wait().unwrap();
    stop(&mut speaker_recorder);
    stop(&mut mic_recorder);
    println!("{}", String::from_utf8_lossy(&output.stdout));

    let bytes = std::fs::read(&out).unwrap();
    let heard: Vec<f32> = bytes.chunks_exact(4).map(|b| f32::from_le_bytes(b.try_into().unwrap())).collect();
    let told: Vec<u64> = std::fs::read_to_string(out.with_extension("told")).unwrap().split(' ').map(|n| n.parse().unwrap()).collect();
    let [lost, starved, dropped, inserted] = told[..] else { panic!("{told:?}") };
    let reference = read_wav(&server.path("reference.wav"));
    assert!(reference.iter().any(|s| *s != 0.0), "nothing was said");
    let missing = missing_of(&heard, &reference);
    assert!(missing <= lost, "{missing} samples of the microphone are missing, {lost} were told as lost");

    let played = read_wav(&server.path("played.wav"));
    let loud = |s: &f32| s.abs() > 0.01;
    let (from, to) = (played.iter().position(loud).expect("nothing was played"), played.iter().rposition(loud).unwrap());
    // Rising zero crossings, one per period, evenly; each hole that was told may spoil two periods and what it is long.
    let tone = &played[from..=to];
    let crossings: Vec<usize> = (1..tone.len()).filter(|n| tone[n - 1] < 0.0 && tone[*n] >= 0.0).collect();
    let period = RATE as f64 / TONE_HZ;
    let whole = crossings.windows(2).filter(|pair| ((pair[1] - pair[0]) as f64 - period).abs() < 2.0).count() as f64;
    let late = starved as f64 / period + 2.0 * (starved.min(1) + dropped + inserted) as f64 * (RATE as f64 / 100.0) / period;
    assert!(whole >= TONE_HZ * TONE_S - 2.0 - late, "{whole} of {} periods were whole; told as late: {late}", TONE_HZ * TONE_S);
}

fn read_wav(path: &Path) -> Vec<f32> {
    hound::WavReader::open(path).unwrap().into_samples::<i16>().map(|s| f32::from(s.unwrap()) / 32_768.0).collect()
}

/// Samples of `reference` that `heard` lacks, from the first sound that both have to the last that `heard` may have. Nothing may come
/// out of order or altered: then the rest counts as missing.
fn missing_of(heard: &[f32], reference: &[f32]) -> u64 {
    let begin = |of: &[f32]| of.iter().position(|s| *s != 0.0).expect("sound");
    let (mut at, mut place) = (begin(heard), begin(reference));
    let end = reference.iter().rposition(|s| *s != 0.0).unwrap();
    let mut missing = 0;
    while place <= end && at < heard.len() {
        if heard[at] == reference[place] {
            at += 1;
            place += 1;
            continue;
        }
        // Lost frames are delivered as nothing; the next fifty must be found further on.
        let next = &heard[at..heard.len().min(at + 50)];
        match (place..=end).find(|n| reference[*n..].starts_with(next)) {
            Some(n) if next.len() == 50 => {
                missing += (n - place) as u64;
                place = n;
            }
            _ => return missing + (end - place + 1) as u64,
        }
    }
    missing
}

/// Seven seconds with live devices: hears the microphone, plays a tone in between.
#[test]
#[ignore = "run by a test above, which gives it a sound server"]
fn child_round_trip() {
    let Some(out) = std::env::var_os(OUT).map(PathBuf::from) else { return };
    let mut io = audio::open("default", "default", false).unwrap();
    assert_eq!((io.mic_rate_hz(), io.speaker_rate_hz(), io.is_offline()), (48_000, 48_000, false));
    let devices = audio::devices::list().unwrap();
    assert!(devices.microphones[0].is_default && devices.loudspeakers[0].is_default, "{devices:?}");
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
            say(&out, "open");
        }
    }
    let delay_s = io.playback_delay_s();
    io.finish().unwrap();
    println!("delay {delay_s:.3} s, {:?}", io.health());
    let health = io.health();
    let told = [lost, health.starved_frames, health.blocks_dropped, health.blocks_inserted].map(|n| n.to_string());
    std::fs::write(out.with_extension("told"), told.join(" ")).unwrap();
    std::fs::write(out, heard).unwrap();
    assert!((0.02..0.3).contains(&delay_s), "a delay of {delay_s} s");
    println!("{lost} frames reported as lost");
}

#[test]
fn devices_that_go_away_and_come_back_cost_time_but_not_the_clock() {
    let _turn = one_at_a_time();
    let Some(mut server) = SoundServer::start(None) else { return };
    let out = server.path("outage");
    let child = child("child_outage", server.env(), &out);
    wait_for(&out.with_extension("open"));
    server.stop();
    std::thread::sleep(Duration::from_millis(800));
    server.start_again();
    succeeded(child);
}

/// Reads and writes until the devices have been away once and back for a second.
#[test]
#[ignore = "run by a test above, which gives it a sound server"]
fn child_outage() {
    let Some(out) = std::env::var_os(OUT).map(PathBuf::from) else { return };
    let mut io = audio::open("default", "default", false).unwrap();
    let mut mic = vec![0.0; RATE / 100];
    let (mut frames, mut lost) = (0_u64, 0_u64);
    let mut began = None;
    let mut back_at = None;
    let mut blocks = 0;
    while back_at.is_none_or(|at| frames < at + RATE as u64) {
        lost += io.read(&mut mic).unwrap().lost_frames;
        began.get_or_insert_with(Instant::now);
        frames += mic.len() as u64;
        io.write(&mic).unwrap();
        blocks += 1;
        if blocks == 150 {
            say(&out, "open");
        }
        if back_at.is_none() && lost > 0 {
            back_at = Some(frames);
        }
    }
    let clock_s = (frames + lost) as f64 / RATE as f64;
    let passed_s = began.unwrap().elapsed().as_secs_f64();
    println!("{clock_s:.3} s on the sample clock, {passed_s:.3} s passed, {:?}", io.health());
    assert!(io.health().rebuilds >= 1);
    // The microphone's buffer and the ring make some tenths of a second of difference; the outage is longer.
    assert!((clock_s - passed_s).abs() < 0.4, "the sample clock says {clock_s} s, {passed_s} s have passed");
    assert!(lost as f64 / RATE as f64 >= 0.5, "{lost} frames of an outage of 0.8 s");
    io.finish().unwrap();
}

#[test]
fn devices_are_listed_and_tried() {
    let _turn = one_at_a_time();
    let Some(server) = SoundServer::start(None) else { return };
    let said = noise(3 * RATE);
    write_wav(&server.path("said.wav"), &said);
    let mut player = server.play(&server.path("said.wav"));
    succeeded(child("child_devices", server.env(), &server.path("devices")));
    stop(&mut player);
}

#[test]
#[ignore = "run by a test above, which gives it a sound server"]
fn child_devices() {
    if std::env::var_os(OUT).is_none() {
        return;
    }
    let devices = audio::devices::list().unwrap();
    let names = |list: &[audio::devices::Listed]| list.iter().map(|l| l.name.clone()).collect::<Vec<_>>();
    assert_eq!(devices.system, "PulseAudio");
    assert_eq!(names(&devices.loudspeakers), ["speaker", "room"]);
    assert_eq!(names(&devices.microphones), ["mic", "speaker.monitor", "room.monitor"], "monitors come last");
    assert!(devices.microphones[0].is_default && devices.loudspeakers[0].is_default);
    let heard = audio::devices::try_microphone("mic").unwrap();
    // The noise is even between -8,192 and 8,191: a peak of -12.0 dBFS and a mean 4.8 dB below it.
    assert!((heard.peak_dbfs.unwrap() + 12.0).abs() < 0.2, "{heard:?}");
    assert!((heard.rms_dbfs.unwrap() + 16.8).abs() < 1.5, "{heard:?}");
    let silent = audio::devices::try_microphone("speaker.monitor").unwrap();
    assert!(silent.problems.iter().any(|p| p.contains("muted")), "{silent:?}");
    let played = audio::devices::try_loudspeaker("speaker").unwrap();
    assert!(played.problems.is_empty(), "{played:?}");
    let unknown = audio::open("cellar", "none", false).err().unwrap().to_string();
    assert!(unknown.contains("\"mic\"") && unknown.contains("--mic"), "{unknown}");
}

#[test]
fn without_any_device_it_says_so_kindly() {
    // No server, and an ALSA that knows nothing.
    let folder = tempfile::tempdir().unwrap();
    let at = |name: &str| folder.path().join(name).display().to_string();
    std::fs::write(at("alsa.conf"), "").unwrap();
    let env = [("PULSE_SERVER", format!("unix:{}", at("none"))), ("XDG_RUNTIME_DIR", at("run")), ("ALSA_CONFIG_PATH", at("alsa.conf"))];
    let child = child("child_without_devices", env.map(|(k, v)| (k.to_owned(), v)).to_vec(), &folder.path().join("out"));
    let output = succeeded(child);
    let chatter = String::from_utf8_lossy(&output.stderr);
    assert!(!chatter.contains("ALSA lib"), "{chatter}");
}

/// This machine's own ALSA, whatever it holds: its ways to servers that do not run must not complain on the terminal.
#[test]
fn listing_devices_brings_no_chatter_of_libraries() {
    let folder = tempfile::tempdir().unwrap();
    let nowhere = format!("unix:{}", folder.path().join("none").display());
    let output = Command::new(env!("CARGO_BIN_EXE_tidecount")).arg("devices").env("PULSE_SERVER", nowhere).output().unwrap();
    assert_eq!(String::from_utf8_lossy(&output.stderr), "");
    assert!(!output.stdout.is_empty());
}

#[test]
#[ignore = "run by a test above, which takes all devices away"]
fn child_without_devices() {
    if std::env::var_os(OUT).is_none() {
        return;
    }
    let devices = audio::devices::list().unwrap();
    assert!(devices.microphones.is_empty() && devices.loudspeakers.is_empty(), "{devices:?}");
    for (mic, option) in [("default", "--mic"), ("cellar", "--mic")] {
        let error = audio::open(mic, "none", false).err().unwrap();
        assert!(matches!(error, audio::AudioError::NoDevice(_)), "{error:?}");
        println!("{error}");
        assert!(error.to_string().contains(option));
    }
}
