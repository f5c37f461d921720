//! What waiting costs, and whether the gate before the recogniser lets every start through.
//!
//! `cargo bench --bench attend -- idle`, `gate` or `live`; all when none is named. `idle` and `gate` use `../shared/data/noise` where it is there.

#[allow(dead_code, reason = "`measure` uses more of it")]
#[path = "measure/process.rs"]
mod process;
#[allow(dead_code, reason = "the tests use more of it")]
#[path = "../tests/support/sound_server.rs"]
mod sound_server;

use audio::decode::decode;
use audio::resample::resample_all;
use figures::{figure, share};
use live::attend::gate::SpeechGate;
use rehearse::Speaker;
use sound_server::SoundServer;
use std::error::Error;
use std::path::{Path, PathBuf};
use std::process::{Command, ExitCode};

type Done = Result<(), Box<dyn Error>>;

const RATE_HZ: u32 = 48_000;
/// Level of the quiet room, dB re full scale.
const ROOM_DB: f64 = -62.0;
/// The start of the program (model, first grammar) is left out by taking the difference of a short and a long run, s.
const SHORT_S: usize = 10;
const LONG_S: usize = 70;

fn main() -> ExitCode {
    let arguments: Vec<String> = std::env::args().skip(1).filter(|a| a != "--bench").collect();
    let words: Vec<&str> = arguments.iter().map(String::as_str).collect();
    for name in if words.is_empty() { vec!["gate", "idle", "live"] } else { words } {
        println!("\n## attend {name}");
        let done: Done = match name {
            "idle" => idle(),
            "gate" => gate(),
            "live" => live(),
            _ => Err(format!("\"{name}\" cannot be measured; name gate, idle or live").into()),
        };
        if let Err(why) = done {
            eprintln!("{name}: {why}");
            return ExitCode::FAILURE;
        }
    }
    ExitCode::SUCCESS
}

fn noise(frames: usize, level_db: f64) -> Vec<f32> {
    // Uniform noise lies 4.8 dB under its peak. Numerical Recipes' "quick and dirty" generator; constants from memory.
    let peak = 10f64.powf((level_db + 4.77) / 20.0);
    let mut seed = 1u32;
    let mut next = || {
        seed = seed.wrapping_mul(1_664_525).wrapping_add(1_013_904_223);
        f64::from(seed >> 8) / 8_388_608.0 - 1.0
    };
    (0..frames).map(|_| (next() * peak) as f32).collect()
}

fn rms_db(samples: &[f32]) -> f64 {
    10.0 * (samples.iter().map(|s| f64::from(*s).powi(2)).sum::<f64>() / samples.len().max(1) as f64 + 1e-20).log10()
}

/// A file of the shared noises, at this level, over and over; silence is kept. None where it is not there.
fn recorded(name: &str, level_db: f64) -> Result<Option<Vec<f32>>, Box<dyn Error>> {
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join("../shared/data/noise").join(name);
    if !path.exists() {
        println!("skipped: {name} is not there");
        return Ok(None);
    }
    let sound = decode(&path)?;
    let mut samples = resample_all(&sound.samples, sound.rate_hz, RATE_HZ)?;
    let gain = 10f64.powf((level_db - rms_db(&samples)) / 20.0) as f32;
    samples.iter_mut().for_each(|s| *s *= gain);
    Ok(Some(samples))
}

/// The room, and in it this sound, repeated.
fn in_room(seconds: usize, sound: &[f32]) -> Vec<f32> {
    let mut room = noise(seconds * RATE_HZ as usize, ROOM_DB);
    if !sound.is_empty() {
        room.iter_mut().zip(sound.iter().cycle()).for_each(|(to, from)| *to += from);
    }
    room
}

/// A tick of 30 ms each second (a struck plate), 30 dB over the room.
fn clock() -> Vec<f32> {
    let rate = f64::from(RATE_HZ);
    (0..RATE_HZ)
        .map(|n| {
            let t = f64::from(n) / rate;
            (0.2 * (-t * 150.0).exp() * (std::f64::consts::TAU * 1_900.0 * t).sin()) as f32
        })
        .collect()
}

/// Somebody who reads without an end (two synthetic voices in turn), at this level.
fn talk(level_db: f64) -> Result<Vec<f32>, Box<dyn Error>> {
    let texts = [
        "In the morning the boats came back with the tide, and the harbour was full of voices.",
        "She put the kettle on and looked for the blue cup that her sister had left behind.",
        "They had not expected so much snow, and the road over the hill was closed for a week.",
        "He told them about the garden, the old pear tree, and the wall that wanted mending.",
    ];
    let mut voices = [Speaker::new("slt", 1.0, RATE_HZ)?, Speaker::new("awb", 1.0, RATE_HZ)?];
    let mut all = Vec::new();
    for (n, text) in texts.iter().enumerate() {
        let voice = voices.get_mut(n % 2).ok_or("two voices")?;
        all.extend_from_slice(&voice.say(text)?);
        all.extend(std::iter::repeat_n(0.0, (RATE_HZ / 4) as usize));
    }
    let gain = 10f64.powf((level_db - rms_db(&all)) / 20.0) as f32;
    all.iter_mut().for_each(|s| *s *= gain);
    Ok(all)
}

/// Every sound that a household may make, by name.
fn scenes() -> Result<Vec<(&'static str, Vec<f32>)>, Box<dyn Error>> {
    let mut scenes = vec![("quiet_room", Vec::new()), ("ticking_clock", clock()), ("two_people_talk", talk(-32.0)?)];
    for (name, file) in [
        ("television_one_talker", "babble/babble_1talker_tv_like.flac"),
        ("babble_of_eight", "babble/babble_8talkers.flac"),
        ("dishes", "long/wav16k_doing_the_dishes.flac"),
        ("running_tap", "long/wav16k_running_tap.flac"),
    ] {
        if let Some(sound) = recorded(file, -38.0)? {
            scenes.push((name, sound));
        }
    }
    Ok(scenes)
}

fn write(path: &Path, samples: &[f32]) -> Done {
    let spec = hound::WavSpec { channels: 1, sample_rate: RATE_HZ, bits_per_sample: 16, sample_format: hound::SampleFormat::Int };
    let mut writer = hound::WavWriter::create(path, spec)?;
    for x in samples {
        writer.write_sample((x * 32_767.0).round().clamp(-32_768.0, 32_767.0) as i16)?;
    }
    Ok(writer.finalize()?)
}

/// A household whose practice is never due.
fn household(folder: &Path) -> Result<PathBuf, Box<dyn Error>> {
    std::fs::write(folder.join("evening.toml"), "title = \"Evening routine\"\n[[step]]\nexercise = \"rest\"\nlength_s = 5\n")?;
    let path = folder.join("household.toml");
    let person = |name: &str| format!("[[person]]\nname = \"{name}\"\n[[person.routine]]\nfile = \"evening.toml\"\n");
    std::fs::write(&path, person("grandpa") + &person("grandma"))?;
    Ok(path)
}

/// CPU-seconds of program and recogniser for a second of sound.
fn idle() -> Done {
    let folder = tempfile::tempdir()?;
    let household = household(folder.path())?;
    for (name, sound) in scenes()? {
        let mut cpu = [0.0; 2];
        for (seconds, cpu) in [SHORT_S, LONG_S].into_iter().zip(&mut cpu) {
            let wav = folder.path().join("house.wav");
            write(&wav, &in_room(seconds, &sound))?;
            let mut command = process::program(false);
            command.arg("attend").arg(&household).arg("--mic").arg(&wav).args(["--fast", "--voice", "espeak-ng"]);
            *cpu = process::run(command.arg("--data").arg(folder.path().join("data")))?.cpu_s;
        }
        figure(&format!("waiting.{name}"), 100.0 * (cpu[1] - cpu[0]) / (LONG_S - SHORT_S) as f64);
    }
    Ok(())
}

/// Whether the gate opens in time for all that is said without being asked (where an answer is waited for everything is heard), and for how much else.
fn gate() -> Done {
    let phrases = [
        "start my practice",
        "start the evening routine",
        "start for grandpa",
        "start for grandma please",
        "not now",
        "what is left today",
        "how did it go",
    ];
    for level_db in [-30.0, -40.0, -48.0] {
        let (mut in_time, mut all) = (0, 0);
        for voice in ["slt", "rms", "awb", "kal16"] {
            let mut speaker = Speaker::new(voice, 0.9, RATE_HZ)?;
            for phrase in phrases {
                let said = speaker.say(phrase)?;
                let gain = 10f64.powf((level_db + 20.0) / 20.0) as f32;
                let mut sound = noise(4 * RATE_HZ as usize + said.len(), ROOM_DB);
                let onset = 3 * RATE_HZ as usize;
                sound.iter_mut().skip(onset).zip(said.iter()).for_each(|(to, from)| *to += from * gain);
                let mut gate = SpeechGate::default();
                // What is kept from before the opening is 0.7 s, less the quiet that a listener wants before a word.
                let opened = sound.chunks(RATE_HZ as usize / 100).position(|block| gate.push(block));
                all += 1;
                let good = opened.is_some_and(|block| (300..=360).contains(&block));
                in_time += usize::from(good);
                if !good {
                    println!("{voice}, {level_db} dBFS, \"{phrase}\": opened at {opened:?} of blocks from 300 on");
                }
            }
        }
        share(&format!("gate.{:.0}db", -level_db), in_time, all);
    }
    for (name, sound) in scenes()? {
        let mut gate = SpeechGate::default();
        let room = in_room(120, &sound);
        let blocks = room.chunks(RATE_HZ as usize / 100);
        let all = blocks.len();
        let open = blocks.filter(|block| gate.push(block)).count();
        println!("{name}: gate open {:.1} % of the time", 100.0 * open as f64 / all as f64);
    }
    Ok(())
}

/// The same live, with a microphone that hears a quiet room, on a private sound server.
fn live() -> Done {
    let Some(server) = SoundServer::start(None) else { return Ok(()) };
    let folder = tempfile::tempdir()?;
    let household = household(folder.path())?;
    let room = server.path("room.wav");
    write(&room, &in_room(120, &[]))?;
    let mut cpu = [0.0; 2];
    for (seconds, cpu) in [SHORT_S, LONG_S].into_iter().zip(&mut cpu) {
        let mut playing = server.play(&room);
        let mut command = Command::new("timeout");
        command.args(["-s", "INT", &seconds.to_string(), env!("CARGO_BIN_EXE_tidecount")]);
        command
            .arg("attend")
            .arg(&household)
            .args(["--voice", "espeak-ng"])
            .arg("--data")
            .arg(folder.path().join("data"))
            .envs(server.env());
        // It ends with 124, as asked to.
        let mut ended = Command::new("sh");
        ended.args(["-c", "\"$@\"; test $? = 124", "sh"]).arg(command.get_program()).args(command.get_args()).envs(server.env());
        let done = process::run(&mut ended);
        sound_server::stop(&mut playing);
        *cpu = done?.cpu_s;
    }
    figure("waiting.live", 100.0 * (cpu[1] - cpu[0]) / (LONG_S - SHORT_S) as f64);
    Ok(())
}
