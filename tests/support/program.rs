//! Runs the finished program as a person would, and makes recordings of a client for it.
#![allow(dead_code, reason = "each test takes what it needs")]

use rehearse::{Speaker, Vowel, VowelSpec};
use serde_json::Value;
use std::ffi::OsStr;
use std::path::{Path, PathBuf};
use std::process::{Child, Command, Output, Stdio};

/// Voice, speed and level (dB re full scale) of the client in the recordings.
pub const VOICE: (&str, f64, f64) = ("rms", 0.9, -26.0);
/// What `Speaker::say` gives, dB re full scale.
const SPEECH_LEVEL_DB: f64 = -20.0;

/// The program with a data folder of its own, so that no test touches a person's record.
pub fn tidecount<S: AsRef<OsStr>>(args: impl IntoIterator<Item = S>) -> Command {
    let mut command = Command::new(env!("CARGO_BIN_EXE_tidecount"));
    command.args(args).env_remove("TIDECOUNT_DATA").stdin(Stdio::null()).current_dir(env!("CARGO_MANIFEST_DIR"));
    command
}

pub fn output(command: &mut Command) -> Output {
    command.output().expect("the program starts")
}

pub fn out(output: &Output) -> String {
    String::from_utf8_lossy(&output.stdout).into_owned()
}

pub fn err(output: &Output) -> String {
    String::from_utf8_lossy(&output.stderr).into_owned()
}

/// A folder for one test, with the files that it needs.
pub struct Place {
    dir: tempfile::TempDir,
}

impl Place {
    pub fn new() -> Self {
        Self { dir: tempfile::tempdir().expect("a folder") }
    }

    pub fn path(&self, name: &str) -> PathBuf {
        self.dir.path().join(name)
    }

    pub fn write(&self, name: &str, text: &str) -> PathBuf {
        let path = self.path(name);
        std::fs::write(&path, text).expect("writes");
        path
    }

    /// `practise ROUTINE --mic WAV --fast --data DATA`, ready for more.
    pub fn replay(&self, routine: &Path, wav: &Path, data: &str) -> Command {
        let mut command = tidecount(["practise"]);
        command.arg(routine).arg("--mic").arg(wav).arg("--fast").arg("--data").arg(self.path(data));
        command
    }

    /// Closed loop: what this client does in this routine, with exact times.
    pub fn rehearse(&self, routine: &Path, client: &str) -> Vec<Value> {
        let client = self.write("client.toml", client);
        let folder = self.path("rehearsed");
        let mut command = tidecount(["demo", "--routine"]);
        command.arg(routine).arg("--client").arg(client).arg("--out").arg(&folder);
        let done = output(&mut command);
        assert!(done.status.success(), "{}{}", out(&done), err(&done));
        journal(&folder.join("client.jsonl"))
    }
}

/// The lines of a JSON Lines file.
pub fn journal(path: &Path) -> Vec<Value> {
    let text = std::fs::read_to_string(path).unwrap_or_else(|why| panic!("{}: {why}", path.display()));
    text.lines().map(|line| serde_json::from_str(line).unwrap_or_else(|why| panic!("{line}: {why}"))).collect()
}

/// The entries of one kind.
pub fn of_kind<'a>(entries: &'a [Value], kind: &str) -> Vec<&'a Value> {
    entries.iter().filter(|entry| entry["kind"] == kind).collect()
}

pub fn number(entry: &Value, field: &str) -> f64 {
    entry[field].as_f64().unwrap_or_else(|| panic!("{field} in {entry}"))
}

/// A recording in the making: a faint even noise, into which a client is put.
pub struct Tape {
    rate_hz: u32,
    samples: Vec<f32>,
    speaker: Speaker,
}

impl Tape {
    pub fn new(rate_hz: u32, length_s: f64) -> Self {
        let mut state = 1u32;
        let mut noise = || {
            // Numerical Recipes' "quick and dirty" generator; constants from memory.
            state = state.wrapping_mul(1_664_525).wrapping_add(1_013_904_223);
            (f64::from(state >> 8) / f64::from(1 << 24) - 0.5) as f32 * 0.001
        };
        let samples = (0..(length_s * f64::from(rate_hz)) as usize).map(|_| noise()).collect();
        let speaker = Speaker::new(VOICE.0, VOICE.1, rate_hz).expect("flite with its voice rms");
        Self { rate_hz, samples, speaker }
    }

    /// What the client did in a rehearsal, at the same times.
    pub fn of(truth: &[Value], rate_hz: u32) -> Self {
        let end_s = truth.iter().map(|did| number(did, "offset_s")).fold(0.0, f64::max);
        let mut tape = Self::new(rate_hz, end_s + 2.0);
        for did in truth {
            let onset_s = number(did, "onset_s");
            match did["kind"].as_str() {
                Some("said" | "called") => tape.say(onset_s, did["words"].as_str().expect("words")),
                Some("held") => tape.hold(onset_s, number(did, "f0_hz"), number(did, "offset_s") - onset_s),
                _ => {}
            }
        }
        tape
    }

    fn put(&mut self, at_s: f64, sound: &[f32], gain: f32) {
        let from = (at_s * f64::from(self.rate_hz)).round().max(0.0) as usize;
        self.samples.iter_mut().skip(from).zip(sound).for_each(|(to, x)| *to += x * gain);
    }

    pub fn say(&mut self, at_s: f64, words: &str) {
        let sound = self.speaker.say(words).expect("flite speaks");
        let gain = 10f64.powf((VOICE.2 - SPEECH_LEVEL_DB) / 20.0) as f32;
        self.put(at_s, &sound, gain);
    }

    /// The same words every so often, for whoever cannot know when they are asked for.
    pub fn say_every(&mut self, from_s: f64, to_s: f64, every_s: f64, words: &str) {
        let mut at_s = from_s;
        while at_s < to_s {
            self.say(at_s, words);
            at_s += every_s;
        }
    }

    /// A vowel whose first glottal closure lies at `onset_s`.
    pub fn hold(&mut self, onset_s: f64, f0_hz: f64, length_s: f64) {
        let spec = VowelSpec { level_db: VOICE.2, attack_s: 0.05, release_s: 0.1, ..VowelSpec::steady(Vowel::A, f0_hz, length_s) };
        let made = spec.render(self.rate_hz).expect("a vowel");
        self.put(onset_s - made.onset_s, &made.samples, 1.0);
    }

    /// As through a microphone that lets nothing through while nobody speaks: stretches of 30 ms without a voice are exactly silent.
    pub fn gate(&mut self) {
        let block = self.rate_hz as usize * 3 / 100;
        for samples in self.samples.chunks_mut(block) {
            if samples.iter().all(|x| x.abs() < 0.002) {
                samples.fill(0.0);
            }
        }
    }

    /// The microphone is switched off meanwhile: exactly silent.
    pub fn mute(&mut self, from_s: f64, to_s: f64) {
        let at = |s: f64| ((s * f64::from(self.rate_hz)) as usize).min(self.samples.len());
        let (from, to) = (at(from_s), at(to_s));
        self.samples[from..to].fill(0.0);
    }

    pub fn write(&self, path: &Path, channels: u16) -> PathBuf {
        let spec = hound::WavSpec { channels, sample_rate: self.rate_hz, bits_per_sample: 16, sample_format: hound::SampleFormat::Int };
        let mut writer = hound::WavWriter::create(path, spec).expect("a WAV file");
        for x in &self.samples {
            for _ in 0..channels {
                writer.write_sample((x * 32_767.0).round().clamp(-32_768.0, 32_767.0) as i16).expect("writes");
            }
        }
        writer.finalize().expect("writes");
        path.to_owned()
    }
}

/// A 16-bit WAV file's first channel, -1 to 1.
pub fn read_wav(path: &Path) -> (u32, Vec<f32>) {
    let mut reader = hound::WavReader::open(path).unwrap_or_else(|why| panic!("{}: {why}", path.display()));
    let spec = reader.spec();
    let samples = reader.samples::<i16>().step_by(spec.channels.into()).map(|x| f32::from(x.expect("a sample")) / 32_768.0).collect();
    (spec.sample_rate, samples)
}

/// Waits until a file has so many whole lines, or the process has ended.
pub fn wait_for_lines(path: &Path, lines: usize, child: &mut Child) {
    loop {
        let found = std::fs::read_to_string(path).map_or(0, |text| text.matches('\n').count());
        if found >= lines || child.try_wait().expect("the child").is_some() {
            return;
        }
        std::thread::sleep(std::time::Duration::from_millis(1));
    }
}
