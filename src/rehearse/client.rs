//! The simulated client: hears lines, reacts after a while, and keeps the truth about what it did.

use super::act::{Act, Rule};
use super::body::{breath, cough};
use super::error::RehearseError;
use super::noise::Gauss;
use super::script::Script;
use super::signal::gain;
use super::speech::{SPEECH_LEVEL_DB, Speaker};
use super::syllables::SyllableSpec;
use super::truth::{Did, Heard, LogEntry};
use super::vowel::{Break, VowelSpec};
use session::{Arg, Line};
use std::collections::VecDeque;
use std::sync::Arc;

/// Pause between two acts of one rule, shortest and longest, s.
const BETWEEN_ACTS_S: (f64, f64) = (0.15, 0.4);
/// How much softer mumbling is, dB.
const MUMBLE_DB: f64 = -25.0;
/// Blocks softer than this are pauses of what the tool says, dB re full scale.
const SILENT_DB: f64 = -45.0;
/// How much louder calling is, dB.
const CALL_DB: f64 = 6.0;
/// However tired, a trial is no shorter, s.
const SHORTEST_TRIAL_S: f64 = 0.3;

struct Planned {
    act: Act,
    again: bool,
    line: Line,
    /// Not before this frame.
    from: u64,
}

struct Running {
    samples: Arc<[f32]>,
    gain: f32,
    /// Frames in all; beyond the samples it is silent.
    frames: u64,
    done: u64,
}

/// A client that knows nothing but its script and what it hears. The same seed and lines give the same voice.
pub struct Client {
    script: Script,
    rate_hz: u32,
    speaker: Speaker,
    chance: Gauss,
    /// For each rule: how many lines it would have fitted.
    counts: Vec<u32>,
    plan: VecDeque<Planned>,
    running: Option<Running>,
    log: Vec<LogEntry>,
    acts: u64,
    /// Trials since the session began, less what rests made up for.
    trials: u32,
    /// Key of the exercise's cue that came last.
    cue: String,
    ear: Ear,
}

/// How loud the line under way is: energy of its sounding frames.
#[derive(Default)]
struct Ear {
    energy: f64,
    frames: u64,
}

impl Ear {
    fn listen(&mut self, played: &[f32]) {
        let energy: f64 = played.iter().map(|v| f64::from(*v) * f64::from(*v)).sum();
        if energy > gain(SILENT_DB).powi(2) * played.len() as f64 {
            self.energy += energy;
            self.frames += played.len() as u64;
        }
    }

    fn level_db(&self) -> f64 {
        10.0 * (self.energy / self.frames.max(1) as f64).max(1e-20).log10()
    }
}

impl Client {
    /// Renders all fixed words ahead of time.
    ///
    /// # Errors
    /// `flite` or its voice is missing.
    pub fn new(script: Script, rate_hz: u32) -> Result<Self, RehearseError> {
        let mut speaker = Speaker::new(&script.voice.name, script.voice.speed, rate_hz)?;
        for act in script.rules.iter().flat_map(|r| &r.get_ref().does) {
            if let Act::Say(words) | Act::Mumble(words) | Act::Call(words) = act {
                speaker.say(words)?;
            }
        }
        for words in script.answers.values() {
            speaker.say(words)?;
        }
        Ok(Self {
            counts: vec![0; script.rules.len()],
            chance: Gauss::new(script.seed),
            plan: VecDeque::new(),
            running: None,
            log: Vec::new(),
            acts: 0,
            trials: 0,
            cue: String::new(),
            ear: Ear::default(),
            script,
            rate_hz,
            speaker,
        })
    }

    /// Tells the client that a line began or ended at `at_s` on the sample clock. A line that was hushed has no end.
    pub fn hears(&mut self, at_s: f64, heard: Heard<'_>) {
        let (line, text, began) = match heard {
            Heard::Began { line, text } => (line, text, true),
            Heard::Ended { line, text } => (line, text, false),
        };
        let text = text.to_lowercase();
        // A line that begins is judged by the one before, whose level is known.
        let unheard = self.script.hearing.is_some_and(|hearing| self.ear.frames > 0 && self.ear.level_db() < hearing.needs_level_db);
        if began {
            self.ear = Ear::default();
            if line.key.starts_with("ex-") && line.key.ends_with("-cue") {
                self.cue.clone_from(&line.key);
            }
            if let Some(tires) = self.script.tires.as_ref().filter(|tires| tires.rest_on.fits(&line.key)) {
                self.trials = self.trials.saturating_sub(tires.rest_trials);
            }
        }
        let mut chosen = None;
        for (n, (rule, count)) in self.script.rules.iter().zip(&mut self.counts).enumerate() {
            let rule = rule.get_ref();
            if began && rule.since.as_ref().is_some_and(|s| s.fits(&line.key)) {
                *count = 0;
            }
            let said = rule.hears.as_ref().is_none_or(|part| text.contains(&part.to_lowercase()));
            let here = rule.cue.as_ref().is_none_or(|cue| cue.fits(&self.cue));
            if !here || rule.over != began || rule.unheard != unheard || !said || !rule.on.fits(&line.key) {
                continue;
            }
            *count += 1;
            let counts =
                rule.nth.as_ref().is_none_or(|nth| nth.contains(count)) && rule.every.is_none_or(|every| *count % every.max(1) == 0);
            if chosen.is_none() && counts && rule.chance.is_none_or(|chance| self.chance.between(0.0, 1.0) < chance) {
                chosen = Some(n);
            }
        }
        let Some(rule) = chosen.and_then(|n| self.script.rules.get(n)) else { return };
        let rule: &Rule = rule.get_ref();
        if rule.does == [Act::AsMeant] {
            return;
        }
        let [low, high] = rule.reaction_s.unwrap_or(self.script.reaction_s);
        let reaction_s = self.chance.between(low, high);
        let mut from = self.frame(at_s + reaction_s);
        if let Some(running) = &self.running {
            // One mouth: what is under way is finished first.
            from = from.max(self.frame(at_s) + (running.frames - running.done));
        }
        let repeat = self.script.voice.repeat;
        let times = |act: &Act| if act.is_spoken() { repeat } else { 1 };
        let acts = rule.does.iter().flat_map(|act| (0..times(act)).map(move |time| (act, time > 0)));
        self.plan = acts.map(|(act, again)| Planned { act: act.clone(), again, line: line.clone(), from }).collect();
    }

    /// What the loudspeaker gives just now, for a client who needs it loud.
    pub fn listens(&mut self, played: &[f32]) {
        if self.script.hearing.is_some() {
            self.ear.listen(played);
        }
    }

    /// The next 10 ms (or any length) of the client's voice, `at_s` at its first frame. Blocks follow each other without gaps.
    ///
    /// # Errors
    /// A phrase cannot be spoken, or a rule names an argument that the line does not have.
    pub fn next_block(&mut self, at_s: f64, out: &mut [f32]) -> Result<(), RehearseError> {
        out.fill(0.0);
        let first = self.frame(at_s);
        let mut i = 0;
        while i < out.len() {
            let now = first + i as u64;
            if let Some(running) = &mut self.running {
                let part = out.get_mut(i..).unwrap_or_default();
                let n = part.len().min(usize::try_from(running.frames - running.done).unwrap_or(usize::MAX));
                let from = usize::try_from(running.done).unwrap_or(usize::MAX);
                let voice = running.samples.get(from..).unwrap_or_default();
                part.iter_mut().zip(voice).for_each(|(o, v)| *o = v * running.gain);
                running.done += n as u64;
                i += n;
                if running.done >= running.frames {
                    self.running = None;
                    let (low, high) = match self.plan.front() {
                        Some(next) if next.again => (self.script.voice.repeat_gap_s[0], self.script.voice.repeat_gap_s[1]),
                        _ => BETWEEN_ACTS_S,
                    };
                    let pause = self.chance.between(low, high);
                    let then = first + i as u64 + self.frame(pause);
                    self.plan.iter_mut().for_each(|p| p.from = p.from.max(then));
                }
            } else {
                match self.plan.front() {
                    Some(next) if next.from <= now => {
                        if let Some(next) = self.plan.pop_front() {
                            self.begin(&next, now)?;
                        }
                    }
                    Some(next) if next.from < first + out.len() as u64 => i += usize::try_from(next.from - now).unwrap_or(1),
                    _ => return Ok(()),
                }
            }
        }
        Ok(())
    }

    /// What the client has done so far, in order; what is under way stands there with its coming end.
    #[must_use]
    pub fn log(&self) -> &[LogEntry] {
        &self.log
    }

    fn frame(&self, at_s: f64) -> u64 {
        (at_s * f64::from(self.rate_hz)).round().max(0.0) as u64
    }

    fn begin(&mut self, next: &Planned, now: u64) -> Result<(), RehearseError> {
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
}

impl Client {
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
