//! When something needs a person: said at once, and again until somebody answers or it has been said often enough.

use super::event::Hearing;
use super::household::Household;
use super::told::{End, Practised};
use model::Symptom;
use session::{Arg, Line};

/// What a notice is about.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum About {
    Person(usize),
    Ear,
}

/// One notice under way.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Notice {
    pub about: About,
    pub line: Line,
    /// How often it was said.
    pub said: u32,
    /// Said again from then on, s.
    pub due_s: f64,
    /// Seconds after the first time at which it is said again.
    again_after_s: &'static [f64],
    first_s: f64,
}

/// A person: twice more, a minute apart.
const PERSON_AGAIN_S: &[f64] = &[60.0, 120.0];
/// The microphone: after one, five and fifteen minutes.
const EAR_AGAIN_S: &[f64] = &[60.0, 300.0, 900.0];
/// More notices than this at once only bury each other.
const MOST_OF_ONE_PRACTICE: usize = 3;
/// So many repetitions without an answer are worth a word although the practice went on.
const MISSED_OFTEN: u32 = 3;

impl Notice {
    pub fn new(about: About, line: Line, now_s: f64) -> Self {
        let again_after_s = if about == About::Ear { EAR_AGAIN_S } else { PERSON_AGAIN_S };
        Self { about, line, said: 0, due_s: now_s, again_after_s, first_s: now_s }
    }

    /// It is being said now. False: for the last time.
    pub fn note_said(&mut self, now_s: f64) -> bool {
        if self.said == 0 {
            self.first_s = now_s;
        }
        let next = self.again_after_s.get(self.said as usize);
        self.said += 1;
        self.due_s = next.map_or(f64::INFINITY, |after_s| self.first_s + after_s);
        next.is_some()
    }
}

/// What a practice leaves to be told aloud.
pub(super) fn of_practice(practised: &Practised, household: &Household, now_s: f64) -> Vec<Notice> {
    let name = household.name(practised.person);
    let mut lines: Vec<Line> = Vec::new();
    // The gravest first, and then the newest: what was said last matters most.
    let mut unwell: Vec<_> = practised.unwell.iter().rev().collect();
    unwell.sort_by_key(|unwell| !matches!(unwell.reason, Symptom::ChestPain | Symptom::Breathless | Symptom::Choking));
    for unwell in unwell {
        let kind = unwell.kind();
        // "Help" is also asked for to hear an instruction again: where the practice went well to its end, that was all.
        if kind == "help" && practised.end == End::Completed {
            continue;
        }
        if lines.iter().any(|line| line.key.starts_with(&format!("attend-notice-{kind}"))) {
            continue;
        }
        let mut args = vec![("name", Arg::Text(name.clone()))];
        let key = match &unwell.exercise {
            Some(exercise) if kind != "help" => {
                args.push(("exercise", Arg::Text(exercise.clone())));
                format!("attend-notice-{kind}-during")
            }
            _ => format!("attend-notice-{kind}"),
        };
        lines.push(Line { key, args });
    }
    let silent = match practised.end {
        End::NoAnswer => Some("attend-notice-no-answer"),
        _ if practised.missed >= MISSED_OFTEN => Some("attend-notice-missed"),
        _ => None,
    };
    lines.extend(silent.map(|key| Line { key: key.into(), args: vec![("name", Arg::Text(name))] }));
    lines.truncate(MOST_OF_ONE_PRACTICE);
    lines.into_iter().map(|line| Notice::new(About::Person(practised.person), line, now_s)).collect()
}

/// What is said where it cannot hear.
pub(super) fn of_ear(hearing: Hearing) -> Option<&'static str> {
    match hearing {
        Hearing::Well => None,
        Hearing::Gone => Some("attend-deaf-gone"),
        Hearing::Silent => Some("attend-deaf-silent"),
        Hearing::NoWords => Some("attend-deaf-words"),
    }
}
