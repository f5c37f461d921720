//! What the client does, turned into sound, and the truth about it.

use super::{Client, Planned, Running};
use crate::act::Act;
use crate::body::{breath, cough, knocks};
use crate::error::RehearseError;
use crate::signal::gain;
use crate::speech::SPEECH_LEVEL_DB;
use crate::syllables::SyllableSpec;
use crate::truth::{Did, LogEntry};
use crate::vowel::{Break, VowelSpec};
use session::{Arg, Line};
use std::sync::Arc;

/// How much softer mumbling is, dB.
const MUMBLE_DB: f64 = -25.0;
/// How much louder calling is, dB.
const CALL_DB: f64 = 6.0;
/// However tired, a trial is no shorter, s.
const SHORTEST_TRIAL_S: f64 = 0.3;

impl Client {
    /// Begins an act at this frame.
    pub(super) fn begin(&mut self, next: &Planned, now: u64) -> Result<(), RehearseError> {
        self.acts += 1;
        let seed = self.script.seed.wrapping_mul(1_000_003).wrapping_add(self.acts);
        let mut level_db = self.script.voice.level_db;
        let (mut weaker, mut weaker_db) = (1.0, 0.0);
        if matches!(next.act, Act::Hold(_) | Act::Glide(_) | Act::Syllables(_)) {
            if let Some(tires) = &self.script.tires {
                (weaker, weaker_db) = (tires.length(self.trials), tires.level_db(self.trials));
                level_db += weaker_db;
            }
            self.trials += 1;
        }
        let rate = f64::from(self.rate_hz);
        let start_s = now as f64 / rate;
        let quiet = |length_s: f64| -> (Arc<[f32]>, f64) { (Arc::from([]), length_s) };
        let mut entry = LogEntry {
            kind: Did::Nothing,
            onset_s: start_s,
            offset_s: start_s,
            f0_hz: None,
            syllables: None,
            words: None,
            on: next.line.key.clone(),
            again: next.again,
        };
        let mut loudness_db = 0.0;
        let (samples, silent_s) = match &next.act {
            Act::Nothing | Act::AsMeant => quiet(0.0),
            Act::Press(command) => {
                entry.kind = Did::Pressed;
                entry.words = Some(command.clone());
                self.pressed.push_back(command.clone());
                quiet(0.0)
            }
            Act::Wait(length_s) => {
                entry.kind = Did::Waited;
                quiet(*length_s)
            }
            Act::Swallow(length_s) => {
                entry.kind = Did::Swallowed;
                quiet(*length_s)
            }
            Act::Say(words) | Act::Mumble(words) | Act::Call(words) => {
                let (kind, change_db) = match next.act {
                    Act::Mumble(_) => (Did::Mumbled, MUMBLE_DB),
                    Act::Call(_) => (Did::Called, CALL_DB),
                    _ => (Did::Said, 0.0),
                };
                entry.kind = kind;
                loudness_db = level_db - SPEECH_LEVEL_DB + change_db;
                entry.words = Some(words.clone());
                (self.speak(words)?, 0.0)
            }
            Act::Read(argument) => {
                let words = spoken(argument, &next.line)?;
                entry.kind = Did::Said;
                loudness_db = level_db - SPEECH_LEVEL_DB;
                let samples = self.speak(&words)?;
                entry.words = Some(words);
                (samples, 0.0)
            }
            Act::Answer(argument) => match self.script.answers.get(&spoken(argument, &next.line)?).cloned() {
                None => quiet(0.0),
                Some(words) => {
                    entry.kind = Did::Said;
                    loudness_db = level_db - SPEECH_LEVEL_DB;
                    let samples = self.speak(&words)?;
                    entry.words = Some(words);
                    (samples, 0.0)
                }
            },
            Act::Hold(h) => {
                entry.kind = Did::Held;
                let length_s = (h.length_s * weaker).max(SHORTEST_TRIAL_S);
                let spec = VowelSpec {
                    tract_scale: self.script.voice.tract_scale,
                    level_db: h.level_db.map_or(level_db, |own_db| own_db + weaker_db),
                    decay_db_per_s: h.fade_db_per_s,
                    attack_s: h.attack_s,
                    release_s: 0.15,
                    jitter_pct: h.jitter_pct,
                    shimmer_pct: h.shimmer_pct,
                    tremor_st: h.tremor_st,
                    hnr_db: Some(h.hnr_db),
                    breaks: h
                        .voice_break
                        .iter()
                        .filter(|[at_s, break_s]| at_s + break_s < length_s)
                        .map(|[at_s, break_s]| Break { at_s: *at_s, length_s: *break_s })
                        .collect(),
                    seed,
                    ..VowelSpec::steady(h.vowel, h.f0_hz, length_s)
                };
                (voiced(&spec, self.rate_hz, start_s, &mut entry)?, 0.0)
            }
            Act::Glide(g) => {
                entry.kind = Did::Glided;
                let length_s = (g.length_s * weaker).max(SHORTEST_TRIAL_S);
                let spec = VowelSpec {
                    tract_scale: self.script.voice.tract_scale,
                    f0_hz: vec![(0.0, g.from_hz), (length_s, g.to_hz)],
                    level_db: g.level_db.map_or(level_db, |own_db| own_db + weaker_db),
                    seed,
                    ..VowelSpec::steady(g.vowel, g.from_hz, length_s)
                };
                (voiced(&spec, self.rate_hz, start_s, &mut entry)?, 0.0)
            }
            Act::Syllables(s) => {
                entry.kind = Did::Syllables;
                let count = (s.rate_hz * s.length_s * weaker).round().max(1.0) as u32;
                let train = SyllableSpec {
                    consonants: s.consonants.clone(),
                    rate_hz: s.rate_hz,
                    count,
                    irregularity_pct: s.irregularity_pct,
                    f0_hz: s.f0_hz,
                    level_db,
                    seed,
                }
                .render(self.rate_hz)?;
                entry.syllables = Some(count);
                entry.f0_hz = Some(s.f0_hz);
                entry.onset_s = start_s + train.onset_s;
                entry.offset_s = start_s + train.offset_s;
                (train.samples.into(), 0.0)
            }
            Act::Cough => {
                entry.kind = Did::Coughed;
                (cough(self.rate_hz, level_db + 8.0, seed).into(), 0.0)
            }
            Act::Knock => {
                entry.kind = Did::Knocked;
                (knocks(self.rate_hz, level_db, seed).into(), 0.0)
            }
            Act::Breath(length_s) => {
                entry.kind = Did::Breathed;
                (breath(self.rate_hz, *length_s, level_db - 18.0, seed).into(), 0.0)
            }
        };
        let frames = (samples.len() as u64).max(self.frame(silent_s));
        if entry.offset_s <= start_s {
            entry.offset_s = start_s + frames as f64 / rate;
        }
        self.log.push(entry);
        if frames > 0 {
            self.running = Some(Running { samples, gain: gain(loudness_db) as f32, frames, done: 0 });
        }
        Ok(())
    }

    /// The words with this client's pauses between them.
    fn speak(&mut self, words: &str) -> Result<Arc<[f32]>, RehearseError> {
        let Some(pauses) = self.script.voice.pauses.clone() else { return self.speaker.say(words) };
        let mut sound: Vec<f32> = Vec::new();
        let mut phrase = String::new();
        let mut all = words.split_whitespace().peekable();
        while let Some(word) = all.next() {
            if !phrase.is_empty() {
                phrase.push(' ');
            }
            phrase.push_str(word);
            if all.peek().is_none() || self.chance.between(0.0, 1.0) < pauses.chance {
                sound.extend_from_slice(&self.speaker.say(&std::mem::take(&mut phrase))?);
                if all.peek().is_some() {
                    let pause_s = self.chance.between(pauses.length_s[0], pauses.length_s[1]);
                    sound.resize(sound.len() + usize::try_from(self.frame(pause_s)).unwrap_or(0), 0.0);
                }
            }
        }
        Ok(sound.into())
    }
}

fn voiced(spec: &VowelSpec, rate_hz: u32, start_s: f64, entry: &mut LogEntry) -> Result<Arc<[f32]>, RehearseError> {
    let made = spec.render(rate_hz)?;
    entry.onset_s = start_s + made.onset_s;
    entry.offset_s = start_s + made.offset_s;
    entry.f0_hz = Some(made.f0_median_hz());
    Ok(made.samples.into())
}

fn spoken(argument: &str, line: &Line) -> Result<String, RehearseError> {
    match line.args.iter().find(|(name, _)| *name == argument) {
        Some((_, Arg::Text(text) | Arg::Message(text))) => Ok(text.clone()),
        Some((_, Arg::Number(n))) => Ok(n.to_string()),
        None => {
            let known: Vec<&str> = line.args.iter().map(|a| a.0).collect();
            Err(RehearseError(format!(
                "client's script: a rule takes the argument \"{argument}\" of the line \"{}\", which has: {}",
                line.key,
                known.join(", ")
            )))
        }
    }
}
