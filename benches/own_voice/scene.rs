//! Scenes: the tool's talk, its echo through a room, and people's words over or after it.

use super::echo_scene::{RATE, convolve, noise, rms_db, room_from, speech, synthetic_room};
use audio::decode::decode;
use audio::resample::resample_all;
use live::over_own_voice::OwnLine;
use session::LineId;
use speak::words::spoken_length;
use speak::{Mixer, Pcm};
use std::collections::BTreeMap;
use std::path::{Path, PathBuf};

/// How the loudspeaker is heard.
pub struct EchoPath {
    pub name: &'static str,
    pub group: &'static str,
    pub delay_s: f64,
    /// What the sound system says of it.
    pub hint_s: f64,
    pub level_db: f64,
    /// Gain into a tanh; 0 for a clean loudspeaker.
    pub drive: f32,
    pub drift_ppm: f64,
    /// By how much the delay changes, and back, every 15 s, as where a sound system runs out of sound, s.
    pub leap_s: f64,
    /// A file in the rooms' folder; "" for a cable.
    pub room: &'static str,
}

/// How often a leap comes, s.
const LEAP_EVERY_S: f64 = 15.0;

const PLAIN: EchoPath = EchoPath {
    name: "100 ms, -10 dB, living room",
    group: "common clock",
    delay_s: 0.1,
    hint_s: 0.08,
    level_db: -10.0,
    drive: 0.0,
    drift_ppm: 0.0,
    leap_s: 0.0,
    room: "livingroom_1m_0.wav",
};

pub const PATHS: &[EchoPath] = &[
    PLAIN,
    EchoPath { name: "20 ms, -18 dB, clinic room", delay_s: 0.02, hint_s: 0.0, level_db: -18.0, room: "clinic_room_1m_0.wav", ..PLAIN },
    EchoPath { name: "400 ms, -6 dB, seminar room", delay_s: 0.4, hint_s: 0.1, level_db: -6.0, room: "measured_seminar_room.wav", ..PLAIN },
    EchoPath { name: "100 ppm apart", group: "drift or distortion", drift_ppm: 100.0, ..PLAIN },
    EchoPath {
        name: "-500 ppm apart, clinic room",
        group: "drift or distortion",
        drift_ppm: -500.0,
        room: "clinic_room_1m_0.wav",
        ..PLAIN
    },
    EchoPath { name: "distorting loudspeaker", group: "drift or distortion", drive: 4.0, ..PLAIN },
];

/// A sound server that leads the loudspeaker's sound back, as in the live tests; as it is, and running out of sound now and then.
pub const LOOPS: &[EchoPath] = &[
    EchoPath { name: "a sound server's loop", group: "loop", delay_s: 0.1, level_db: -20.0, room: "", ..PLAIN },
    EchoPath { name: "a loop that leaps by 20 ms", group: "loop", delay_s: 0.16, level_db: -20.0, leap_s: 0.02, room: "", ..PLAIN },
];

/// Sound at the beginning in which the canceller learns the room, s: two sentences.
const LEARN_S: f64 = 8.0;
const ACTIVE_DBFS: f64 = -18.0;
const GAP_S: f64 = 4.0;

fn data() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("../shared/data")
}

/// Recordings of a word by people, the even-numbered (or odd-numbered) of the set, parted by fold of their speakers: the recogniser was
/// trained on all of them, and its five fold networks on four fifths each.
pub fn people(word: &str, odd: bool) -> Vec<(usize, Vec<Vec<f32>>)> {
    let plan = Path::new(env!("CARGO_MANIFEST_DIR")).join("models/training/folds/speakers.json");
    let plan: BTreeMap<String, usize> =
        serde_json::from_str(&std::fs::read_to_string(plan).expect("the plan of folds")).expect("speaker: fold");
    let index = std::fs::read_to_string(data().join("index.tsv")).unwrap_or_default();
    let of: BTreeMap<&str, usize> = index
        .lines()
        .filter_map(|line| {
            let columns: Vec<&str> = line.split('\t').collect();
            Some((*columns.first()?, *plan.get(*columns.get(3)?)?))
        })
        .collect();
    let mut folds: BTreeMap<usize, Vec<Vec<f32>>> = BTreeMap::new();
    for path in recordings(word).into_iter().skip(usize::from(odd)).step_by(2) {
        let name = path.strip_prefix(data()).ok().map(|p| p.to_string_lossy().into_owned()).unwrap_or_default();
        if let (Some(fold), Some(clip)) = (of.get(name.as_str()), sound(&path)) {
            folds.entry(*fold).or_default().push(clip);
        }
    }
    folds.into_iter().collect()
}

fn recordings(word: &str) -> Vec<PathBuf> {
    let folder = data().join("speech-commands");
    let mut files: Vec<PathBuf> = walk(&folder)
        .into_iter()
        .filter(|p| p.to_string_lossy().contains(&format!("{word}_")) || p.parent().is_some_and(|d| d.ends_with(word)))
        .collect();
    files.sort();
    files
}

fn walk(folder: &Path) -> Vec<PathBuf> {
    let Ok(entries) = std::fs::read_dir(folder) else { return Vec::new() };
    entries.flatten().flat_map(|e| if e.path().is_dir() { walk(&e.path()) } else { vec![e.path()] }).collect()
}

pub fn sound(path: &Path) -> Option<Vec<f32>> {
    let sound = decode(path).ok()?;
    resample_all(&sound.samples, sound.rate_hz, RATE as u32).ok()
}

/// Level of the parts that sound, dB re full scale (within 20 dB of the loudest 20 ms).
fn active_db(samples: &[f32]) -> f64 {
    let levels: Vec<f64> = samples.chunks(RATE / 50).map(rms_db).collect();
    let top = levels.iter().copied().fold(f64::NEG_INFINITY, f64::max);
    let loud: Vec<f64> = levels.into_iter().filter(|l| *l > top - 20.0).map(|l| 10f64.powf(l / 10.0)).collect();
    10.0 * (loud.iter().sum::<f64>() / loud.len().max(1) as f64).log10()
}

fn scale(samples: &mut [f32], by_db: f64) {
    let gain = 10f64.powf(by_db / 20.0) as f32;
    samples.iter_mut().for_each(|s| *s *= gain);
}

/// The tool's sentences, as text and as sound; those that name what the fast path listens for are left out, for it is closed then.
pub struct Talk {
    sentences: Vec<(String, Vec<f32>)>,
}

/// Where what a practice says stands.
const SAID_IN: [&str; 3] = ["session.ftl", "exercises.ftl", "by-key.ftl"];
/// What stands in a sentence in place of its numbers, and of its names.
const NUMBERS: &str =
    "all asked by days done left minutes more n number practices present reached repetition repetitions rounds seconds set sets steps";
const NAMES: &str = "answer category clue command fact hint name names passage phrase prompt setting title weekday words";

impl Talk {
    /// What exercises and cautions say.
    pub fn new() -> Option<Self> {
        Self::of(|key, _| ["ex-", "caution-"].iter().any(|beginning| key.starts_with(beginning)), false)
    }

    /// All that a practice says, in all its wordings, the words that it listens for among it.
    pub fn everything() -> Option<Self> {
        Self::of(|_, file| SAID_IN.iter().any(|said| file.ends_with(said)), true)
    }

    /// The lines that ask for "ready".
    pub fn asking() -> Option<Self> {
        Self::of(|key, _| ["ask-ready", "ask-position", "ask-rest-over"].iter().any(|beginning| key.starts_with(beginning)), false)
    }

    /// The same, beginning with another sentence.
    pub fn from(&self, first: usize) -> Self {
        let mut sentences = self.sentences.clone();
        let first = first % sentences.len().max(1);
        sentences.rotate_left(first);
        Self { sentences }
    }

    /// How many sentences it has.
    pub fn len(&self) -> usize {
        self.sentences.len()
    }

    /// The messages that are wanted by their key and file, in their first wording or in all.
    fn of(wanted: impl Fn(&str, &str) -> bool, all_wordings: bool) -> Option<Self> {
        let words = speak::words::Words::english().ok()?;
        let mut texts: Vec<String> = Vec::new();
        let file = |key: &str| words.place(key).map_or("", |place| &place.file);
        let keys = words.keys().filter(|key| !key.ends_with("-shown") && wanted(key, file(key)));
        for key in keys {
            let line = session::Line { key: key.to_owned(), args: filled_in(&words) };
            if all_wordings {
                texts.extend((0..words.variants(key)).filter_map(|n| words.text_variant(&line, n as u64).ok()));
            } else {
                texts.extend(words.text(&line).ok());
            }
        }
        // Names and cues are too short to teach anything.
        texts.retain(|text| text.split(' ').count() > 4);
        texts.sort();
        texts.dedup();
        texts.retain(|text| speak::words::live_words(text, &["stop", "pause"]).is_none());
        let mut sentences = Vec::new();
        for (n, text) in texts.iter().enumerate() {
            let mut sentence = speech(if n % 2 == 0 { "en-gb" } else { "en-us" }, text)?;
            let by_db = ACTIVE_DBFS - active_db(&sentence);
            scale(&mut sentence, by_db);
            sentences.push((text.clone(), sentence));
        }
        Some(Self { sentences })
    }
}

/// Something for every argument of a sentence.
fn filled_in(words: &speak::Words) -> Vec<(&'static str, session::Arg)> {
    let numbers = NUMBERS.split(' ').map(|name| (name, session::Arg::Number(5.0)));
    let names = NAMES.split(' ').map(|name| (name, session::Arg::Text(words.exercise("nasal-breathing"))));
    numbers.chain(names).collect()
}

/// A scene as the program gets it, with the truth.
pub struct Mix {
    pub played: Vec<f32>,
    pub mic: Vec<f32>,
    pub hint_s: f64,
    /// First and last instant of each word, s.
    pub words: Vec<(f64, f64)>,
    near: Vec<f32>,
    path: &'static EchoPath,
    /// Gain of the echo.
    echo_gain: f32,
    /// When our own sentences sound at the microphone, s, and which.
    talk: Vec<(f64, f64, String)>,
}

/// What comes back of it, at a level of its own.
fn echo(played: &[f32], path: &EchoPath) -> Vec<f32> {
    let loud: Vec<f32> =
        if path.drive > 0.0 { played.iter().map(|s| (s * path.drive).tanh() / path.drive).collect() } else { played.to_vec() };
    let room = || room_from(&data().join("rooms").join(path.room)).unwrap_or_else(|| synthetic_room(0.3));
    let wet = if path.room.is_empty() { loud } else { convolve(&loud, &room()) };
    let leap = path.leap_s * RATE as f64;
    let every = (LEAP_EVERY_S * RATE as f64) as usize;
    let delay = path.delay_s * RATE as f64;
    (0..played.len())
        .map(|n| {
            let leapt = if n / every % 2 == 0 { 0.0 } else { leap };
            let at = n as f64 * (1.0 + path.drift_ppm * 1e-6) - delay - leapt;
            let (i, part) = (at.max(0.0) as usize, at.fract() as f32);
            match (wet.get(i), wet.get(i + 1)) {
                (Some(a), Some(b)) if at >= 0.0 => a + (b - a) * part,
                _ => 0.0,
            }
        })
        .collect()
}

/// Where the loud part of a one-second recording lies, frames.
fn loud_part(clip: &[f32]) -> (usize, usize) {
    let levels: Vec<f64> = clip.chunks(RATE / 100).map(rms_db).collect();
    let top = levels.iter().copied().fold(f64::NEG_INFINITY, f64::max);
    let first = levels.iter().position(|l| *l > top - 25.0).unwrap_or(0);
    let last = levels.iter().rposition(|l| *l > top - 25.0).unwrap_or(0);
    (first * RATE / 100, (last + 1) * RATE / 100)
}

impl Mix {
    /// Words over continuous talk, `over_db` louder than the echo, one every four seconds.
    pub fn over(talk: &Talk, path: &'static EchoPath, clips: &[Vec<f32>], over_db: f64) -> Self {
        let seconds = LEARN_S + GAP_S * clips.len() as f64 + 1.0;
        let mut mix = Self::alone(talk, path, seconds);
        let echo_db = ACTIVE_DBFS + path.level_db;
        for (n, clip) in clips.iter().enumerate() {
            mix.add(clip, ((LEARN_S + GAP_S * n as f64) * RATE as f64) as usize, echo_db + over_db);
        }
        mix
    }

    /// One word after each sentence, `gap_s` after it has died away at the microphone.
    pub fn after(talk: &Talk, path: &'static EchoPath, clips: &[Vec<f32>], gap_s: f64) -> Self {
        let mut mix = Self::talked(talk, path, clips.len() + 2, 2.5, f64::INFINITY);
        let ends: Vec<f64> = mix.talk.iter().map(|t| t.1).collect();
        for (clip, end_s) in clips.iter().zip(ends.iter().skip(2)) {
            let (first, _) = loud_part(clip);
            let at = ((end_s + gap_s) * RATE as f64) as usize;
            mix.add(clip, at.saturating_sub(first), ACTIVE_DBFS - 8.0);
        }
        mix
    }

    /// What a live practice kept (`TIDECOUNT_KEEP_LIVE`, tests/live_practice.rs): what the loudspeaker played and what the microphone heard.
    pub fn recorded(folder: &Path) -> Self {
        let of = |file: &str| sound(&folder.join(file)).unwrap_or_else(|| panic!("{}: no sound in it", folder.join(file).display()));
        let (mut played, mut mic) = (of("speaker.wav"), of("second-listener.wav"));
        let length = played.len().min(mic.len());
        played.truncate(length);
        mic.truncate(length);
        Self { near: Vec::new(), played, mic, path: &PLAIN, echo_gain: 1.0, hint_s: 0.0, words: Vec::new(), talk: Vec::new() }
    }

    /// Only the tool talks, with short pauses.
    pub fn alone(talk: &Talk, path: &'static EchoPath, seconds: f64) -> Self {
        Self::talked(talk, path, usize::MAX, 0.4, seconds)
    }

    fn talked(talk: &Talk, path: &'static EchoPath, sentences: usize, pause_s: f64, seconds: f64) -> Self {
        let mut played = vec![0.0; RATE];
        let mut spans = Vec::new();
        for (text, sentence) in talk.sentences.iter().cycle().take(sentences) {
            let from_s = played.len() as f64 / RATE as f64;
            played.extend_from_slice(sentence);
            spans.push((from_s + path.delay_s, played.len() as f64 / RATE as f64 + path.delay_s, text.clone()));
            played.resize(played.len() + (pause_s * RATE as f64) as usize, 0.0);
            if played.len() as f64 > seconds * RATE as f64 {
                break;
            }
        }
        if seconds.is_finite() {
            played.truncate((seconds * RATE as f64) as usize);
        }
        let mut mic = echo(&played, path);
        let echo_gain = 10f64.powf((ACTIVE_DBFS + path.level_db - active_db(&mic)) / 20.0) as f32;
        mic.iter_mut().for_each(|s| *s *= echo_gain);
        let mut bed = noise(mic.len(), 11);
        let by_db = -62.0 - rms_db(&bed);
        scale(&mut bed, by_db);
        mic.iter_mut().zip(&bed).for_each(|(m, b)| *m += b);
        Self { near: bed, played, mic, path, echo_gain, hint_s: path.hint_s, words: Vec::new(), talk: spans }
    }

    /// The same where our voice gets softer while somebody speaks over it: `softer` says so for each block of 10 ms.
    pub fn giving_way(&self, softer: &[bool]) -> Self {
        const BLOCK: usize = RATE / 100;
        let mut mixer = Mixer::new(RATE as u32);
        let line = Pcm { rate_hz: RATE as u32, samples: self.played.clone().into() };
        mixer.queue(LineId(1), line).expect("its rate");
        let (mut played, mut events) = (vec![0.0; self.played.len()], Vec::new());
        for (n, block) in played.chunks_mut(BLOCK).enumerate() {
            mixer.duck(softer.get(n).copied().unwrap_or(false));
            mixer.next_block(block, &mut events);
        }
        let mut mic = echo(&played, self.path);
        mic.iter_mut().zip(&self.near).for_each(|(m, near)| *m = *m * self.echo_gain + near);
        Self { played, mic, near: self.near.clone(), words: self.words.clone(), talk: self.talk.clone(), ..*self }
    }

    fn add(&mut self, clip: &[f32], at: usize, level_db: f64) {
        let (first, last) = loud_part(clip);
        let mut word = clip.to_vec();
        let by_db = level_db - active_db(&word);
        scale(&mut word, by_db);
        for (n, s) in word.iter().enumerate() {
            if let (Some(mic), Some(near)) = (self.mic.get_mut(at + n), self.near.get_mut(at + n)) {
                *mic += s;
                *near += s;
            }
        }
        let seconds = |frames: usize| frames as f64 / RATE as f64;
        self.words.push((seconds(at + first), seconds(at + last)));
    }

    /// The same words in the same room noise, with nothing played.
    pub fn without_talk(&self) -> Self {
        Self {
            played: vec![0.0; self.played.len()],
            mic: self.near.clone(),
            hint_s: 0.0,
            words: self.words.clone(),
            near: Vec::new(),
            talk: Vec::new(),
            ..*self
        }
    }

    /// Whether the main path is open: from 0.1 s after our sentence on, as in a practice whose canceller works.
    pub fn is_open(&self, at_s: f64) -> bool {
        !self.talk.iter().any(|(from_s, to_s, _)| (*from_s - 0.1..*to_s + 0.1).contains(&at_s))
    }

    /// What we said between two instants.
    pub fn said_between(&self, from_s: f64, to_s: f64) -> Vec<OwnLine<'_>> {
        // As in a practice, where how long a line lasts is told by how fast the others were said.
        let (all_s, all) =
            self.talk.iter().fold((0.0, 0.0), |(s, l), (began_s, ended_s, text)| (s + ended_s - began_s, l + spoken_length(text)));
        let lines = self.talk.iter().filter(|(began_s, ended_s, _)| *began_s < to_s && ended_s + 0.3 > from_s);
        lines.map(|(began_s, _, text)| OwnLine { text, from_s: *began_s, lasts_s: Some(spoken_length(text) * all_s / all) }).collect()
    }

    pub fn seconds(&self) -> f64 {
        self.mic.len() as f64 / RATE as f64
    }
}
