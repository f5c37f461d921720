//! Synthetic voices that say every command and other things, each time a little otherwise.

use super::evaluate::Speaker;
use super::sound;
use session::Command;
use speak::Words;
use std::path::Path;
use std::process::Command as Program;

/// Name, program, voice.
const VOICES: [(&str, &str, &str); 10] = [
    ("flite slt", "flite", "slt"),
    ("espeak whisper", "espeak-ng", "en-us+whisper"),
    ("flite awb", "flite", "awb"),
    ("espeak croak", "espeak-ng", "en-us+croak"),
    ("flite kal", "flite", "kal"),
    ("espeak klatt", "espeak-ng", "en-us+klatt3"),
    ("espeak scottish f2", "espeak-ng", "en-gb-scotland+f2"),
    ("espeak lancaster m5", "espeak-ng", "en-gb-x-gbclan+m5"),
    ("espeak caribbean f4", "espeak-ng", "en-029+f4"),
    ("espeak german accent", "espeak-ng", "de+m3"),
];
/// What is said besides commands; words of one's own choice.
const OTHER: [&str; 36] = [
    "hello",
    "good morning",
    "thank you",
    "what is that",
    "the kettle",
    "come in",
    "my slippers",
    "water",
    "yesterday",
    "nobody",
    "now then",
    "nonsense",
    "step",
    "shop",
    "store",
    "drop it",
    "yet",
    "guess",
    "less",
    "known",
    "heavy",
    "reading",
    "gone",
    "done it",
    "window",
    "garden",
    "it is raining again today",
    "where did i put my glasses",
    "she will be here soon",
    "the soup is too hot",
    "flower",
    "hold on",
    "rusty",
    "lesson",
    "paws",
    "slow train",
];
/// Sayings of each command.
const SAYINGS: usize = 6;

struct Chance(u64);

impl Chance {
    /// Evenly between two numbers (xorshift64; Marsaglia, J. Stat. Softw. 8(14), 2003).
    fn between(&mut self, low: f64, high: f64) -> f64 {
        self.0 ^= self.0 << 13;
        self.0 ^= self.0 >> 7;
        self.0 ^= self.0 << 17;
        low + (high - low) * ((self.0 >> 11) as f64 / (1u64 << 53) as f64)
    }
}

pub fn speakers() -> Vec<Speaker> {
    let words = Words::english().expect("the catalogue");
    let rooms = rooms();
    let mut speakers: Vec<Speaker> = Vec::new();
    for (number, (name, program, voice)) in VOICES.into_iter().enumerate() {
        if speak(program, voice, "hello", 1).is_none() {
            println!("skipped: no program {program} with voice {voice}");
            continue;
        }
        let mut chance = Chance(0xC0FF_EE00 + number as u64);
        let mut say = |text: &str| {
            let seed = chance.0;
            Some(worn(&mut chance, &rooms, speak(program, voice, text, seed)?))
        };
        let commands = Command::ALL.into_iter().map(|command| {
            let wording = words.wordings(command).first().cloned().unwrap_or_default();
            (command, (0..SAYINGS).filter_map(|_| say(&wording)).collect::<Vec<_>>())
        });
        let commands = commands.collect();
        let others = OTHER.iter().filter_map(|text| say(text)).collect();
        speakers.push(Speaker {
            name: name.into(),
            words: commands,
            fillers: Vec::new(),
            others,
            strangers: Vec::new(),
            guests: Vec::new(),
        });
    }
    // Each is the next one's stranger and guest.
    for i in 0..speakers.len() {
        let other = &speakers[(i + 1) % speakers.len()];
        let strangers = other.others.clone();
        let guests = other.words.iter().filter_map(|(command, clips)| Some((*command, clips.last()?.clone()))).collect();
        (speakers[i].strangers, speakers[i].guests) = (strangers, guests);
    }
    speakers
}

fn speak(program: &str, voice: &str, text: &str, seed: u64) -> Option<Vec<f32>> {
    let mut chance = Chance(seed | 1);
    chance.between(0.0, 1.0);
    let file = tempfile::Builder::new().suffix(".wav").tempfile().ok()?;
    let slow = chance.between(0.85, 1.35);
    let mut command = Program::new(program);
    if program == "flite" {
        let pitch = chance.between(85.0, 190.0) * 0.15 + 0.85 * if voice == "slt" { 180.0 } else { 110.0 };
        command.args([
            "-voice",
            voice,
            "--setf",
            &format!("duration_stretch={slow:.3}"),
            "--setf",
            &format!("int_f0_target_mean={pitch:.0}"),
        ]);
        command.args(["-t", text, "-o"]).arg(file.path());
    } else {
        let (speed, pitch) = ((150.0 / slow) as u32, chance.between(35.0, 60.0) as u32);
        command.args(["-v", voice, "-s", &speed.to_string(), "-p", &pitch.to_string(), "-w"]).arg(file.path()).arg(text);
    }
    command.output().ok()?.status.success().then_some(())?;
    sound::read(file.path()).ok()
}

/// Another loudness, a little noise, and every third time a room.
fn worn(chance: &mut Chance, rooms: &[Vec<f32>], mut sound: Vec<f32>) -> Vec<f32> {
    if chance.between(0.0, 3.0) < 1.0 && !rooms.is_empty() {
        let room = &rooms[chance.between(0.0, rooms.len() as f64) as usize % rooms.len()];
        sound = convolved(&sound, room);
    }
    let power = sound.iter().map(|x| f64::from(x * x)).sum::<f64>() / sound.len().max(1) as f64;
    let gain = 10f64.powf(chance.between(-36.0, -24.0) / 20.0) / power.sqrt().max(1e-6);
    let noise = 10f64.powf(-chance.between(52.0, 62.0) / 20.0) * 3f64.sqrt();
    sound.iter().map(|&x| (f64::from(x) * gain + chance.between(-noise, noise)) as f32).collect()
}

/// The first 0.25 s of each room response, so that the sum stays affordable.
fn rooms() -> Vec<Vec<f32>> {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("../shared/data/rooms");
    let mut files: Vec<_> = std::fs::read_dir(folder).map(|d| d.filter_map(|e| Some(e.ok()?.path())).collect()).unwrap_or_default();
    files.sort();
    let rooms = files.iter().step_by(files.len().div_ceil(4).max(1)).filter_map(|f| sound::read(f).ok());
    rooms
        .map(|mut room| {
            room.truncate(4_000);
            room
        })
        .collect()
}

fn convolved(sound: &[f32], room: &[f32]) -> Vec<f32> {
    let mut wet = vec![0.0; sound.len() + room.len()];
    for (j, &r) in room.iter().enumerate().filter(|(_, r)| r.abs() > 1e-4) {
        for (to, &x) in wet[j..].iter_mut().zip(sound) {
            *to += r * x;
        }
    }
    wet
}
