//! A client at the virtual microphone: reads what the program says, waits until its loudspeaker is quiet, and answers.

use super::sound_server::{SoundServer, stop};
use rehearse::{Speaker, Vowel, VowelSpec};
use std::collections::BTreeMap;
use std::io::{BufRead, BufReader, Read};
use std::path::{Path, PathBuf};
use std::process::{Child, ChildStdout};
use std::sync::mpsc::{Receiver, RecvTimeoutError, channel};
use std::sync::{Arc, Mutex};
use std::time::{Duration, Instant};

const RATE_HZ: u32 = 48_000;
/// The loudspeaker has been quiet for so long: a sentence is over, not just a clause.
const QUIET: Duration = Duration::from_millis(900);
/// Below this peak the loudspeaker is quiet, s16.
const QUIET_PEAK: i16 = 100;

/// What the client does.
#[derive(Debug, Clone, PartialEq)]
pub enum Act {
    Say(&'static str),
    /// Sustains a vowel for so many seconds.
    Hold(f64),
}

/// Answers a line that contains `to`.
#[derive(Debug, Clone)]
pub struct Rule {
    pub to: &'static str,
    pub act: Act,
    /// Into the sentence, this long after its begin, instead of after its end.
    pub over_after: Option<Duration>,
    /// Only so many times; none for always.
    pub times: Option<u32>,
}

impl Rule {
    pub fn after(to: &'static str, act: Act) -> Self {
        Self { to, act, over_after: None, times: None }
    }

    pub fn once(self) -> Self {
        Self { times: Some(1), ..self }
    }

    pub fn over(self, after: Duration) -> Self {
        Self { over_after: Some(after), ..self }
    }
}

/// What happened, in order.
#[derive(Debug, Clone, PartialEq)]
pub enum Happened {
    /// The program began a line, at this second of its clock.
    Tool {
        at_s: f64,
        text: String,
    },
    /// The program showed that it heard this.
    Heard {
        at_s: f64,
        text: String,
    },
    Note(String),
    /// The client did this, from first to last sample whole; a vowel's exact length, s.
    Client {
        act: Act,
        length_s: f64,
    },
}

/// The client with everything rendered ahead.
pub struct LiveClient<'a> {
    server: &'a SoundServer,
    wavs: BTreeMap<String, (PathBuf, f64)>,
    rules: Vec<Rule>,
    last_loud: Arc<Mutex<Instant>>,
    listener: Child,
}

impl<'a> LiveClient<'a> {
    /// `None`, with a line on standard output, where flite is not installed.
    pub fn new(server: &'a SoundServer, rules: Vec<Rule>) -> Option<Self> {
        let mut speaker = match Speaker::new("slt", 0.9, RATE_HZ) {
            Ok(speaker) => speaker,
            Err(why) => {
                skipping::skip(skipping::Missing::Installed, &format!("{why}"));
                return None;
            }
        };
        let mut wavs = BTreeMap::new();
        for (n, rule) in rules.iter().enumerate() {
            let path = server.path(&format!("client-{n}.wav"));
            let (samples, length_s) = match &rule.act {
                Act::Say(words) => {
                    let samples = speaker.say(words).unwrap();
                    let length_s = samples.len() as f64 / f64::from(RATE_HZ);
                    (samples.iter().copied().collect(), length_s)
                }
                Act::Hold(length_s) => {
                    let spec = VowelSpec { level_db: -20.0, ..VowelSpec::steady(Vowel::A, 190.0, *length_s) };
                    let made = spec.render(RATE_HZ).unwrap();
                    let length_s = made.offset_s - made.onset_s;
                    (made.samples, length_s)
                }
            };
            write(&path, samples);
            wavs.insert(format!("{:?}", rule.act), (path, length_s));
        }
        let last_loud = Arc::new(Mutex::new(Instant::now()));
        let mut listener = server.listen_to_speaker();
        let sound = listener.stdout.take().unwrap();
        let heard = last_loud.clone();
        std::thread::spawn(move || hear(sound, &heard));
        Some(Self { server, wavs, rules, last_loud, listener })
    }

    /// What is played for an act of the rules.
    pub fn wav(&self, act: &Act) -> &Path {
        &self.wavs[&format!("{act:?}")].0
    }

    /// Goes through the practice until the program closes its output or `at_most` is over.
    pub fn follow(mut self, output: ChildStdout, at_most: Duration) -> Vec<Happened> {
        let lines = lines(output);
        let until = Instant::now() + at_most;
        let mut happened = Vec::new();
        while let Some(left) = until.checked_duration_since(Instant::now()) {
            let line = match lines.recv_timeout(left.min(Duration::from_millis(500))) {
                Ok(line) => line,
                Err(RecvTimeoutError::Timeout) => continue,
                Err(RecvTimeoutError::Disconnected) => break,
            };
            println!("{line}");
            let Some(event) = parse(&line) else { continue };
            happened.push(event.clone());
            if let Happened::Tool { text, .. } = event {
                self.answer(&text, &mut happened);
            }
        }
        stop(&mut self.listener);
        happened
    }

    fn answer(&mut self, text: &str, happened: &mut Vec<Happened>) {
        let Some(rule) = self.rules.iter_mut().find(|rule| text.contains(rule.to) && rule.times != Some(0)) else { return };
        rule.times = rule.times.map(|times| times - 1);
        match rule.over_after {
            Some(after) => std::thread::sleep(after),
            None => wait_for_quiet(&self.last_loud),
        }
        let (wav, length_s) = &self.wavs[&format!("{:?}", rule.act)];
        println!("         >  {:?}", rule.act);
        happened.push(Happened::Client { act: rule.act.clone(), length_s: *length_s });
        let mut player = self.server.play(wav);
        assert!(player.wait().unwrap().success(), "the client's sound could not be played");
    }
}

/// Waits until nothing has come from the loudspeaker for a while, as a polite client does; no longer than 30 s.
fn wait_for_quiet(last_loud: &Mutex<Instant>) {
    let begin = Instant::now();
    // The line's first sample is still on its way when the line is shown.
    std::thread::sleep(QUIET);
    while begin.elapsed() < Duration::from_secs(30) && last_loud.lock().unwrap().elapsed() < QUIET {
        std::thread::sleep(Duration::from_millis(20));
    }
}

fn hear(mut sound: impl Read, last_loud: &Mutex<Instant>) {
    let mut piece = [0_u8; 1_920];
    while let Ok(n) = sound.read(&mut piece) {
        if n == 0 {
            return;
        }
        if piece[..n].chunks_exact(2).any(|b| i16::from_le_bytes([b[0], b[1]]).saturating_abs() > QUIET_PEAK) {
            *last_loud.lock().unwrap() = Instant::now();
        }
    }
}

fn lines(output: ChildStdout) -> Receiver<String> {
    let (send, receive) = channel();
    std::thread::spawn(move || {
        for line in BufReader::new(output).lines().map_while(Result::ok) {
            if send.send(line).is_err() {
                return;
            }
        }
    });
    receive
}

/// A line of dialogue as the program prints it where nobody looks: seconds, who, text.
fn parse(line: &str) -> Option<Happened> {
    let (at_s, rest) = line.trim_start().split_once("  ")?;
    let at_s = at_s.parse().ok()?;
    let (who, text) = rest.trim_start().split_once("  ")?;
    let text = text.trim().to_owned();
    match who {
        "T" => Some(Happened::Tool { at_s, text }),
        "C" => Some(Happened::Heard { at_s, text }),
        "-" => Some(Happened::Note(text)),
        _ => None,
    }
}

fn write(path: &Path, samples: Vec<f32>) {
    let spec = hound::WavSpec { channels: 1, sample_rate: RATE_HZ, bits_per_sample: 16, sample_format: hound::SampleFormat::Int };
    let mut writer = hound::WavWriter::create(path, spec).unwrap();
    samples.iter().for_each(|s| writer.write_sample((s * 32_767.0) as i16).unwrap());
    writer.finalize().unwrap();
}
