//! The simulated client: hears lines, reacts after a while, and keeps the truth about what it did.

mod ear;
mod perform;

use super::act::{Act, Rule};
use super::error::RehearseError;
use super::noise::Gauss;
use super::script::Script;
use super::speech::Speaker;
use super::truth::{Heard, LogEntry};
use ear::Ear;
use session::Line;
use std::collections::VecDeque;
use std::sync::Arc;

/// Pause between two acts of one rule, shortest and longest, s.
const BETWEEN_ACTS_S: (f64, f64) = (0.15, 0.4);

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
    /// Keys that were pressed and not taken yet.
    pressed: VecDeque<String>,
}

impl Client {
    /// Renders all fixed words ahead of time.
    ///
    /// # Errors
    /// `flite` or `espeak-ng`, or the voice, is missing.
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
            pressed: VecDeque::new(),
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
        let unheard = self.script.hearing.zip(self.ear.level_db()).is_some_and(|(hearing, level_db)| level_db < hearing.needs_level_db);
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

    /// The command whose key was pressed, one at a time.
    pub fn take_pressed(&mut self) -> Option<String> {
        self.pressed.pop_front()
    }

    /// What the client has done so far, in order; what is under way stands there with its coming end.
    #[must_use]
    pub fn log(&self) -> &[LogEntry] {
        &self.log
    }

    fn frame(&self, at_s: f64) -> u64 {
        (at_s * f64::from(self.rate_hz)).round().max(0.0) as u64
    }
}
