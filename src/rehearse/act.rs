//! What a simulated client does on which line: rules and acts, with the limits of their numbers.

use super::vowel::Vowel;
use serde::Deserialize;

/// What to do on which line.
#[derive(Debug, Clone, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Rule {
    /// Message keys; one `*` stands for anything: `ex-*-cue`.
    pub on: OneOrMany,
    /// Only lines whose spoken text holds this, whatever the case.
    #[serde(default)]
    pub hears: Option<String>,
    /// Only in an exercise whose cue had one of these keys: a reminder is the same for many.
    #[serde(default)]
    pub cue: Option<OneOrMany>,
    /// Only the n-th such lines, from 1; none: every one.
    #[serde(default)]
    pub nth: Option<Vec<u32>>,
    /// Only each so-manieth such line: 2 is the second, the fourth…
    #[serde(default)]
    pub every: Option<u32>,
    /// Fits only so often, 0 to 1; else the next rule that fits decides.
    #[serde(default)]
    pub chance: Option<f64>,
    /// For lines that were too soft to be understood (see [`super::habit::Hearing`]); other rules never fit those.
    #[serde(default)]
    pub unheard: bool,
    /// The count starts anew whenever a line with one of these keys begins.
    #[serde(default)]
    pub since: Option<OneOrMany>,
    /// Act from the beginning of the line, over it, instead of from its end.
    #[serde(default)]
    pub over: bool,
    /// In place of the script's.
    #[serde(default)]
    pub reaction_s: Option<[f64; 2]>,
    pub does: Vec<Act>,
}

/// One key or several.
#[derive(Debug, Clone, Deserialize)]
#[serde(untagged)]
pub enum OneOrMany {
    One(String),
    Many(Vec<String>),
}

impl OneOrMany {
    pub(crate) fn fits(&self, key: &str) -> bool {
        let one = |pattern: &str| match pattern.split_once('*') {
            Some((start, end)) => key.len() >= start.len() + end.len() && key.starts_with(start) && key.ends_with(end),
            None => pattern == key,
        };
        match self {
            Self::One(p) => one(p),
            Self::Many(all) => all.iter().any(|p| one(p)),
        }
    }
}

/// Something the client does. Several in a row follow each other with short pauses.
#[derive(Debug, Clone, PartialEq, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Act {
    /// Says nothing, does nothing.
    Nothing,
    /// What was meant to be done before stands: no answer of its own. Stands alone.
    AsMeant,
    /// Says these words.
    Say(String),
    /// Says these words 25 dB softer, for nobody to hear.
    Mumble(String),
    /// Says these words 6 dB louder, to be heard over something.
    Call(String),
    /// Reads aloud the argument of this name of the line just heard.
    Read(String),
    /// Answers the clue in the argument of this name, from the script's `answers`; silent where it knows none.
    Answer(String),
    /// Sustains a vowel.
    Hold(Hold),
    /// Slides from one pitch to another.
    Glide(Glide),
    /// Repeats syllables.
    Syllables(Syllables),
    /// Presses the key of the command of this name, "go-on".
    Press(String),
    /// Coughs.
    Cough,
    /// Knocks twice on the table.
    Knock,
    /// Breathes audibly, s.
    Breath(f64),
    /// Swallows: silence of this length, s.
    Swallow(f64),
    /// Waits, s.
    Wait(f64),
}

/// A sustained vowel. See [`super::VowelSpec`] for the quantities.
#[derive(Debug, Clone, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Hold {
    #[serde(default = "a")]
    pub vowel: Vowel,
    pub f0_hz: f64,
    pub length_s: f64,
    /// Of the steady voice; the speaking level where none is given.
    #[serde(default)]
    pub level_db: Option<f64>,
    #[serde(default)]
    pub fade_db_per_s: f64,
    #[serde(default = "usual_tremor")]
    pub tremor_st: f64,
    #[serde(default = "usual_jitter")]
    pub jitter_pct: f64,
    #[serde(default = "usual_shimmer")]
    pub shimmer_pct: f64,
    #[serde(default = "usual_hnr")]
    pub hnr_db: f64,
    #[serde(default = "usual_attack")]
    pub attack_s: f64,
    /// A voice break: `[s after onset, length s]`.
    #[serde(rename = "break", default)]
    pub voice_break: Option<[f64; 2]>,
}

/// A slide of the pitch, even in semitones.
#[derive(Debug, Clone, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Glide {
    #[serde(default = "a")]
    pub vowel: Vowel,
    pub from_hz: f64,
    pub to_hz: f64,
    pub length_s: f64,
    #[serde(default)]
    pub level_db: Option<f64>,
}

/// A train of syllables. See [`super::SyllableSpec`].
#[derive(Debug, Clone, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Syllables {
    #[serde(default = "ptk")]
    pub consonants: String,
    /// Syllables per second.
    pub rate_hz: f64,
    pub length_s: f64,
    pub f0_hz: f64,
    #[serde(default)]
    pub irregularity_pct: f64,
}

fn a() -> Vowel {
    Vowel::A
}
fn ptk() -> String {
    "ptk".into()
}
// A mild unsteadiness, so that nothing is perfect by default (common practice, no source).
fn usual_tremor() -> f64 {
    0.2
}
fn usual_jitter() -> f64 {
    0.6
}
fn usual_shimmer() -> f64 {
    4.0
}
fn usual_hnr() -> f64 {
    18.0
}
fn usual_attack() -> f64 {
    0.1
}

impl Rule {
    pub(super) fn faults(&self) -> Vec<String> {
        let mut faults = Vec::new();
        if self.reaction_s.is_some_and(bad_span) {
            faults.push("reaction_s must be [shortest, longest], 0 to 120 s".into());
        }
        if self.nth.as_ref().is_some_and(|n| n.is_empty() || n.contains(&0)) {
            faults.push("nth counts from 1, [1] is the first such line; leave it out for every line".into());
        }
        if self.every == Some(0) {
            faults.push("every counts from 1, 2 is each second such line; leave it out for every line".into());
        }
        if self.chance.is_some_and(|chance| !(0.0..=1.0).contains(&chance)) {
            faults.push("chance must be from 0 (never) to 1 (always)".into());
        }
        if self.does.is_empty() {
            faults.push("does is empty; write [\"nothing\"] where the client shall not answer".into());
        }
        if self.does.len() > 1 && self.does.contains(&Act::AsMeant) {
            faults.push("as-meant stands alone: does = [\"as-meant\"]".into());
        }
        faults.extend(self.does.iter().filter_map(Act::fault));
        faults
    }
}

impl Act {
    /// True for what is said.
    pub(super) fn is_spoken(&self) -> bool {
        matches!(self, Self::Say(_) | Self::Mumble(_) | Self::Call(_) | Self::Read(_) | Self::Answer(_))
    }

    /// What is wrong with the numbers of this act.
    fn fault(&self) -> Option<String> {
        let pitch = |f: f64| (60.0..=800.0).contains(&f);
        let length = |s: f64| (0.05..=120.0).contains(&s);
        let level = |l: Option<f64>| l.is_none_or(|l| (-80.0..=-6.0).contains(&l));
        let fault = match self {
            Self::Say(words) | Self::Mumble(words) | Self::Call(words) if words.trim().is_empty() => "say, mumble and call need words",
            Self::Press(name) if !session::Command::ALL.iter().any(|command| command.name() == name) => {
                "press needs the name of a command, such as \"go-on\""
            }
            Self::Hold(h) if !pitch(h.f0_hz) || !length(h.length_s) || !level(h.level_db) => {
                "hold: f0_hz must be from 60 to 800, length_s from 0.05 to 120, level_db from -80 to -6"
            }
            Self::Hold(h) if h.voice_break.is_some_and(|[at, long]| at <= 0.0 || long <= 0.0 || at + long >= h.length_s) => {
                "hold: break must be [s after onset, length s] and lie inside the hold"
            }
            Self::Glide(g) if !pitch(g.from_hz) || !pitch(g.to_hz) || !length(g.length_s) || !level(g.level_db) => {
                "glide: from_hz and to_hz must be from 60 to 800, length_s from 0.05 to 120, level_db from -80 to -6"
            }
            Self::Syllables(s) if !pitch(s.f0_hz) || !(0.5..=10.0).contains(&s.rate_hz) || !(0.2..=30.0).contains(&s.length_s) => {
                "syllables: rate_hz must be from 0.5 to 10, length_s from 0.2 to 30, f0_hz from 60 to 800"
            }
            Self::Breath(s) | Self::Swallow(s) | Self::Wait(s) if !length(*s) => "breath, swallow and wait last from 0.05 to 120 s",
            _ => return None,
        };
        Some(fault.into())
    }
}

/// True where it is no `[shortest, longest]` from 0 to 120 s.
pub(super) fn bad_span([low, high]: [f64; 2]) -> bool {
    !(0.0..=120.0).contains(&low) || !(low..=120.0).contains(&high)
}
