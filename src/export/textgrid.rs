//! What was done during a sound, as a Praat TextGrid (long text format, UTF-8; Praat manual, "TextGrid file formats").
//!
//! Praat wants the intervals of a tier to follow each other without gap or overlap from the beginning to the end of the sound, and
//! points in rising order.

use std::fmt::Write;

use progress::{Conditions, Discard, Measure};
use session::{Entry, Fact, Position};

/// A sound and where it lies on the sample clock of its part.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Sound {
    /// Its length, s.
    pub length_s: f64,
    /// The time on the sample clock at which its first sample was taken, s.
    pub begins_at_s: f64,
}

/// A stretch with a label.
#[derive(Debug, Clone, PartialEq)]
struct Interval {
    from_s: f64,
    to_s: f64,
    label: String,
}

/// An instant with a label.
#[derive(Debug, Clone, PartialEq)]
struct Point {
    at_s: f64,
    label: String,
}

/// A text grid, and what could not be put into it.
#[derive(Debug, Clone, PartialEq)]
pub struct TextGrid {
    pub text: String,
    /// Trials and commands of the part that lie outside the sound.
    pub outside: usize,
}

/// Tells holds and postures, commands, and other events of one part on the clock of its sound. `entries` are those of the part.
///
/// Tiers: `exercise` (from the beginning of each step to its end), `holds` (onset to offset of each hold that counts), `discarded`
/// (those that do not, and why), `other` (postures, paced rounds, self-paced repetitions, categories), `commands`, `events` (points:
/// phrases, syllables and questions when they were kept; safety stops; troubles).
#[must_use]
pub fn text_grid(entries: &[Entry], sound: Sound) -> TextGrid {
    let mut tiers = Tiers { sound, ..Tiers::default() };
    for (index, entry) in entries.iter().enumerate() {
        tiers.take(entry, entries.get(index + 1..).unwrap_or_default());
    }
    tiers.close_step(sound.begins_at_s + sound.length_s);
    tiers.written()
}

#[derive(Debug, Default)]
struct Tiers {
    sound: Sound,
    exercise: Vec<Interval>,
    holds: Vec<Interval>,
    discarded: Vec<Interval>,
    other: Vec<Interval>,
    commands: Vec<Point>,
    events: Vec<Point>,
    /// The step under way: when it began, and its label.
    step: Option<(f64, String)>,
    outside: usize,
}

impl Default for Sound {
    fn default() -> Self {
        Self { length_s: 0.0, begins_at_s: 0.0 }
    }
}

impl Tiers {
    fn take(&mut self, entry: &Entry, later: &[Entry]) {
        let (at_s, place) = (entry.at_s, place(entry.position));
        match &entry.fact {
            Fact::StepBegun { exercise, .. } => {
                self.close_step(at_s);
                self.step =
                    Some((at_s, format!("{exercise}{}", entry.position.map_or_else(String::new, |at| format!(" (step {})", at.step)))));
            }
            Fact::StepDone { .. } | Fact::StepStopped { .. } | Fact::SessionEnded { .. } => self.close_step(at_s),
            Fact::HoldMeasured { exercise, onset_s, offset_s, duration_s, masked_s, complete, .. } => {
                let label = format!("{exercise}{place} {duration_s} s");
                match discarded(exercise, *complete, *masked_s, *duration_s, later) {
                    None => self.interval(|tiers| &mut tiers.holds, *onset_s, *offset_s, label),
                    Some(why) => self.interval(|tiers| &mut tiers.discarded, *onset_s, *offset_s, format!("{label}: {why}")),
                }
            }
            Fact::PostureHeld { exercise, duration_s, complete, .. } | Fact::RoundPaced { exercise, duration_s, complete, .. } => {
                self.timed(exercise, &place, at_s, *duration_s, *complete);
            }
            Fact::RepetitionDone { exercise, duration_s, .. } => self.timed(exercise, &place, at_s, *duration_s, true),
            Fact::CategoryNamed { exercise, duration_s, complete, .. } => self.timed(exercise, &place, at_s, *duration_s, *complete),
            Fact::CommandHeard { command, text, .. } => {
                let said = if text.is_empty() || text == command.name() { String::new() } else { format!(" \"{text}\"") };
                self.point(|tiers| &mut tiers.commands, at_s, format!("{}{said}", command.name()));
            }
            Fact::PhraseRead { phrase, duration_s, .. } => self.event(at_s, format!("phrase read: {phrase} ({duration_s} s)")),
            Fact::Talked { duration_s, pauses, .. } => self.event(at_s, format!("talked {duration_s} s, {pauses} pauses")),
            Fact::SyllablesCounted { syllables, duration_s, .. } => self.event(at_s, format!("{syllables} syllables ({duration_s} s)")),
            Fact::QuestionAnswered { clue, answer, .. } => {
                self.event(at_s, format!("question: {clue}: {}", answer.as_deref().unwrap_or("no answer")))
            }
            Fact::SafetyStop { reason, .. } => self.event(at_s, format!("safety stop: {reason}")),
            Fact::Troubled { trouble } => self.event(at_s, trouble.name().replace('-', " ")),
            Fact::SoundLost { lost_s } => self.event(at_s, format!("{lost_s} s of sound lost")),
            Fact::RoomLoud { loud, .. } => self.event(at_s, if *loud { "room too loud" } else { "room quiet again" }.to_owned()),
            Fact::NoAnswer { .. } => self.event(at_s, "no answer".to_owned()),
            _ => {}
        }
    }

    fn timed(&mut self, exercise: &str, place: &str, at_s: f64, duration_s: f64, complete: bool) {
        let label = format!("{exercise}{place} {duration_s} s");
        if complete {
            self.interval(|tiers| &mut tiers.other, at_s - duration_s, at_s, label);
        } else {
            self.interval(|tiers| &mut tiers.discarded, at_s - duration_s, at_s, format!("{label}: {}", Discard::CutOff.words()));
        }
    }

    fn event(&mut self, at_s: f64, label: String) {
        self.point(|tiers| &mut tiers.events, at_s, label);
    }

    fn close_step(&mut self, at_s: f64) {
        if let Some((began_s, label)) = self.step.take() {
            let before = self.outside;
            self.interval(|tiers| &mut tiers.exercise, began_s, at_s, label);
            // Steps are no trials.
            self.outside = before;
        }
    }

    /// Cuts the stretch to the sound.
    fn interval(&mut self, tier: impl Fn(&mut Self) -> &mut Vec<Interval>, from_s: f64, to_s: f64, label: String) {
        let (from_s, to_s) = ((from_s - self.sound.begins_at_s).max(0.0), (to_s - self.sound.begins_at_s).min(self.sound.length_s));
        if from_s < to_s {
            tier(self).push(Interval { from_s, to_s, label });
        } else {
            self.outside += 1;
        }
    }

    fn point(&mut self, tier: impl Fn(&mut Self) -> &mut Vec<Point>, at_s: f64, label: String) {
        let at_s = at_s - self.sound.begins_at_s;
        if (0.0..=self.sound.length_s).contains(&at_s) {
            tier(self).push(Point { at_s, label });
        } else {
            self.outside += 1;
        }
    }

    fn written(self) -> TextGrid {
        let end = seconds(self.sound.length_s);
        let mut text = format!(
            "File type = \"ooTextFile\"\nObject class = \"TextGrid\"\n\nxmin = 0 \nxmax = {end} \ntiers? <exists> \nsize = 6 \nitem []: \n"
        );
        let mut number = 0;
        for (name, tier) in [("exercise", self.exercise), ("holds", self.holds), ("discarded", self.discarded), ("other", self.other)] {
            number += 1;
            write_intervals(&mut text, number, name, gapless(tier, self.sound.length_s), &end);
        }
        for (name, tier) in [("commands", self.commands), ("events", self.events)] {
            number += 1;
            write_points(&mut text, number, name, rising(tier), &end);
        }
        TextGrid { text, outside: self.outside }
    }
}

/// Why a hold does not count; none where it does. What is kept of the room stands behind the hold that it is about.
fn discarded(exercise: &str, complete: bool, masked_s: f64, duration_s: f64, later: &[Entry]) -> Option<&'static str> {
    let next = later.iter().find(|entry| matches!(entry.fact, Fact::HoldMeasured { .. } | Fact::HoldInNoise { .. }));
    let in_noise = matches!(next.map(|entry| &entry.fact), Some(Fact::HoldInNoise { exercise: of, .. }) if of == exercise);
    let conditions = Conditions { in_noise, masked_s, ..Conditions::default() };
    Discard::of(Measure::HoldS, &conditions, complete, duration_s).map(Discard::words)
}

/// " 1.2.3": step, set and repetition.
fn place(position: Option<Position>) -> String {
    position.map_or_else(String::new, |at| format!(" {}.{}.{}", at.step, at.set, at.repetition))
}

/// In rising order, with empty intervals between, and cut where they overlap.
fn gapless(mut tier: Vec<Interval>, length_s: f64) -> Vec<Interval> {
    tier.sort_by(|one, other| one.from_s.total_cmp(&other.from_s));
    let mut whole: Vec<Interval> = Vec::new();
    let mut reached_s = 0.0;
    for mut interval in tier {
        interval.from_s = milli(interval.from_s.max(reached_s));
        interval.to_s = milli(interval.to_s).min(length_s);
        if interval.from_s >= interval.to_s {
            continue;
        }
        if interval.from_s > reached_s {
            whole.push(Interval { from_s: reached_s, to_s: interval.from_s, label: String::new() });
        }
        reached_s = interval.to_s;
        whole.push(interval);
    }
    if reached_s < length_s || whole.is_empty() {
        whole.push(Interval { from_s: reached_s, to_s: length_s, label: String::new() });
    }
    whole
}

/// In rising order; those of one instant become one.
fn rising(mut tier: Vec<Point>) -> Vec<Point> {
    tier.sort_by(|one, other| one.at_s.total_cmp(&other.at_s));
    let mut points: Vec<Point> = Vec::new();
    for mut point in tier {
        point.at_s = milli(point.at_s);
        match points.last_mut().filter(|last| last.at_s >= point.at_s) {
            Some(last) => last.label = format!("{}; {}", last.label, point.label),
            None => points.push(point),
        }
    }
    points
}

fn write_intervals(text: &mut String, number: usize, name: &str, tier: Vec<Interval>, end: &str) {
    head(text, number, "IntervalTier", name, end);
    let _ = writeln!(text, "        intervals: size = {} ", tier.len());
    for (index, interval) in tier.iter().enumerate() {
        let _ = write!(
            text,
            "        intervals [{}]:\n            xmin = {} \n            xmax = {} \n            text = \"{}\" \n",
            index + 1,
            seconds(interval.from_s),
            seconds(interval.to_s),
            quoted(&interval.label)
        );
    }
}

fn write_points(text: &mut String, number: usize, name: &str, tier: Vec<Point>, end: &str) {
    head(text, number, "TextTier", name, end);
    let _ = writeln!(text, "        points: size = {} ", tier.len());
    for (index, point) in tier.iter().enumerate() {
        let _ = write!(
            text,
            "        points [{}]:\n            number = {} \n            mark = \"{}\" \n",
            index + 1,
            seconds(point.at_s),
            quoted(&point.label)
        );
    }
}

fn head(text: &mut String, number: usize, class: &str, name: &str, end: &str) {
    let _ = write!(
        text,
        "    item [{number}]:\n        class = \"{class}\" \n        name = \"{name}\" \n        xmin = 0 \n        xmax = {end} \n"
    );
}

/// The journal's times are whole milliseconds.
fn milli(value_s: f64) -> f64 {
    (value_s * 1000.0).round() / 1000.0
}

fn seconds(value_s: f64) -> String {
    format!("{}", value_s + 0.0)
}

/// A quote is doubled; a label stands on one line.
fn quoted(label: &str) -> String {
    label.chars().map(|c| if c.is_control() { ' ' } else { c }).collect::<String>().replace('"', "\"\"")
}

/// The entries of each part of a journal: a part begins where the practice was gone on with, or where the clock runs back.
#[must_use]
pub fn parts_of(entries: Vec<Entry>) -> Vec<Vec<Entry>> {
    let mut parts: Vec<Vec<Entry>> = Vec::new();
    for entry in entries {
        let part = parts.last().map(Vec::as_slice).unwrap_or_default();
        let back = part.last().is_some_and(|last| entry.at_s + BACK_S < last.at_s);
        // Only a practice with a step begun is gone on with; what was said before going on belongs to the new part.
        let resumed = matches!(entry.fact, Fact::SessionResumed { .. }) && part.iter().any(|earlier| earlier.position.is_some());
        match parts.last_mut().filter(|_| !back && !resumed) {
            Some(part) => part.push(entry),
            None => parts.push(vec![entry]),
        }
    }
    parts
}

/// An entry that was due at a beat may be kept a little after a later one, s.
const BACK_S: f64 = 1.0;

#[cfg(test)]
#[path = "tests/textgrid.rs"]
mod tests;
