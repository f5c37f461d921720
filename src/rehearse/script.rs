//! What a simulated client does on each line it hears: data, read from TOML.
//!
//! ```toml
//! seed = 7
//! reaction_s = [1.0, 4.0]
//! voice = { name = "slt", speed = 0.9, level_db = -30.0 }
//!
//! [[rule]]
//! on = ["ask-ready", "ask-ready-*"]
//! nth = [1]
//! does = ["nothing"]
//!
//! [[rule]]
//! on = "ask-ready*"
//! does = [{ say = "i'm ready" }]
//! ```
//!
//! The first rule that fits decides. A rule that fits replaces what the client meant to do but had not begun.
//!
//! `like = "plain.toml"` takes everything that the file does not say itself from another one beside it; its rules come
//! behind the file's own. Habits that are no rules (pauses, a weak ear, getting tired, a household) are in [`super::habit`].

use super::act::{Rule, bad_span};
use super::error::RehearseError;
use super::habit::{Hearing, ScriptRoom, Tires};
use serde::Deserialize;
use std::collections::BTreeMap;
use std::path::Path;
use toml::Spanned;

/// So many files may lean on each other.
const DEEPEST: u32 = 4;

/// A whole client.
#[derive(Debug, Clone)]
pub struct Script {
    /// Of everything that is left to chance.
    pub seed: u64,
    /// Shortest and longest time from the end of a line to the answer, s.
    pub reaction_s: [f64; 2],
    pub voice: ScriptVoice,
    /// What this client answers to which clue.
    pub answers: BTreeMap<String, String>,
    /// Where the practice takes place, and who else is there.
    pub room: ScriptRoom,
    /// None: hears everything.
    pub hearing: Option<Hearing>,
    /// None: never.
    pub tires: Option<Tires>,
    pub rules: Vec<Spanned<Rule>>,
}

/// A client as it stands in one file.
#[derive(Debug, Clone, Deserialize)]
#[serde(deny_unknown_fields)]
struct ScriptFile {
    like: Option<String>,
    seed: Option<u64>,
    reaction_s: Option<[f64; 2]>,
    voice: Option<ScriptVoice>,
    #[serde(default)]
    answers: BTreeMap<String, String>,
    room: Option<ScriptRoom>,
    hearing: Option<Hearing>,
    tires: Option<Tires>,
    #[serde(rename = "rule", default)]
    rules: Vec<Spanned<Rule>>,
}

/// How the client speaks.
#[derive(Debug, Clone, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct ScriptVoice {
    /// A voice of `flite -lv`.
    pub name: String,
    /// 1 is the voice's own speed, 0.5 to 2.
    pub speed: f64,
    /// RMS at the microphone without pauses, dB re full scale.
    pub level_db: f64,
    /// Formants of vowels are multiplied by this: 1 for a man, about 1.15 for a woman.
    #[serde(default = "one")]
    pub tract_scale: f64,
    /// Pauses inside what is said.
    #[serde(default)]
    pub pauses: Option<Pauses>,
    /// How often everything is said, 1 to 3.
    #[serde(default = "once")]
    pub repeat: u32,
    /// Shortest and longest pause before it is said again, s.
    #[serde(default = "usual_repeat_gap")]
    pub repeat_gap_s: [f64; 2],
}

/// Pauses between words.
#[derive(Debug, Clone, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Pauses {
    /// How likely one is between two words, 0 to 1.
    pub chance: f64,
    /// Shortest and longest, s.
    pub length_s: [f64; 2],
}

fn once() -> u32 {
    1
}
fn usual_repeat_gap() -> [f64; 2] {
    [0.4, 1.0]
}
fn one() -> f64 {
    1.0
}

impl Script {
    /// Reads a script that leans on no other file.
    ///
    /// # Errors
    /// What is wrong, with `name`, line and remedy; all faults of one kind at once.
    pub fn parse(name: &str, text: &str) -> Result<Self, RehearseError> {
        let file = ScriptFile::parse(name, text)?;
        if file.like.is_some() {
            return Err(RehearseError(format!(
                "{name}: \"like\" names a file beside this one, and this is not a file; write all of it here"
            )));
        }
        file.whole(name)
    }

    /// Reads a file, and those that it is like.
    ///
    /// # Errors
    /// As [`Script::parse`]; a file cannot be read, or they lean on each other in a ring.
    pub fn open(path: &Path) -> Result<Self, RehearseError> {
        ScriptFile::open(path, DEEPEST)?.whole(&path.display().to_string())
    }
}

impl ScriptFile {
    fn open(path: &Path, deeper: u32) -> Result<Self, RehearseError> {
        let name = path.display().to_string();
        let text = std::fs::read_to_string(path).map_err(|why| RehearseError(format!("{name}: cannot be read: {why}; check its name")))?;
        let own = Self::parse(&name, &text)?;
        let Some(like) = own.like.clone() else { return Ok(own) };
        if deeper == 0 {
            return Err(RehearseError(format!("{name}: more than {DEEPEST} files are like each other; do they form a ring?")));
        }
        let base = Self::open(&path.with_file_name(like), deeper - 1)?;
        Ok(own.over(base))
    }

    /// What this file says, and behind it what `base` says.
    fn over(mut self, base: Self) -> Self {
        let mut answers = base.answers;
        answers.append(&mut self.answers);
        self.rules.extend(base.rules);
        Self {
            like: None,
            seed: self.seed.or(base.seed),
            reaction_s: self.reaction_s.or(base.reaction_s),
            voice: self.voice.or(base.voice),
            answers,
            room: self.room.or(base.room),
            hearing: self.hearing.or(base.hearing),
            tires: self.tires.or(base.tires),
            rules: self.rules,
        }
    }

    fn whole(self, name: &str) -> Result<Script, RehearseError> {
        let missing = |what: &str| RehearseError(format!("{name}: {what} is missing"));
        if self.rules.is_empty() {
            return Err(missing("a [[rule]]"));
        }
        Ok(Script {
            seed: self.seed.unwrap_or_default(),
            reaction_s: self.reaction_s.ok_or_else(|| missing("reaction_s = [shortest, longest]"))?,
            voice: self.voice.ok_or_else(|| missing("[voice]"))?,
            answers: self.answers,
            room: self.room.unwrap_or_default(),
            hearing: self.hearing,
            tires: self.tires,
            rules: self.rules,
        })
    }

    fn parse(name: &str, text: &str) -> Result<Self, RehearseError> {
        let line_of = |at: usize| text.get(..at).map_or(1, |before| before.matches('\n').count() + 1);
        let script: Self = toml::from_str(text).map_err(|e| {
            let line = e.span().map_or(1, |s| line_of(s.start));
            RehearseError(format!("{name}:{line}: {}", e.message()))
        })?;
        let mut faults = Vec::new();
        if script.reaction_s.is_some_and(bad_span) {
            faults.push(format!("{name}: reaction_s must be [shortest, longest], 0 to 120 s"));
        }
        let habits = [
            script.voice.as_ref().and_then(ScriptVoice::fault),
            script.room.as_ref().and_then(ScriptRoom::fault),
            script.hearing.as_ref().and_then(Hearing::fault),
            script.tires.as_ref().and_then(Tires::fault),
        ];
        faults.extend(habits.into_iter().flatten().map(|fault| format!("{name}: {fault}")));
        for rule in &script.rules {
            let line = line_of(rule.span().start);
            let rule = rule.get_ref();
            faults.extend(rule.faults().into_iter().map(|fault| format!("{name}:{line}: {fault}")));
        }
        if faults.is_empty() { Ok(script) } else { Err(RehearseError(faults.join("\n"))) }
    }
}

impl ScriptVoice {
    fn fault(&self) -> Option<String> {
        if !(-80.0..=-6.0).contains(&self.level_db) || !(0.5..=2.0).contains(&self.speed) || !(0.7..=1.6).contains(&self.tract_scale) {
            return Some("voice: level_db must be from -80 to -6, speed from 0.5 to 2, tract_scale from 0.7 to 1.6".into());
        }
        if !(1..=3).contains(&self.repeat) || bad_span(self.repeat_gap_s) {
            return Some("voice: repeat must be 1, 2 or 3, repeat_gap_s [shortest, longest]".into());
        }
        let bad = self.pauses.as_ref().is_some_and(|p| !(0.0..=1.0).contains(&p.chance) || bad_span(p.length_s));
        bad.then(|| "voice: pauses: chance must be from 0 to 1, length_s [shortest, longest]".into())
    }
}
