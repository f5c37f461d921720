//! A rest of a given length.

use super::limits::Gate;
use super::listening;
use super::next::{NextAction, Turn};
use super::outlet::line;
use super::practice::Practice;
use model::{Arg, Command, Fact, VoiceTask};

/// A rest under way; behind it the session goes where "go on" leads.
#[derive(Debug, Clone)]
pub(super) struct Resting {
    began_s: f64,
    until_s: f64,
    /// Before this nobody can end it: the body needs it so long.
    least_until_s: f64,
    rises: bool,
}

impl Resting {
    /// At least as long as what comes next needs, where it goes on with a repetition of the present step.
    pub fn new(practice: &mut Practice, length_s: f64) -> Self {
        let before_repetition = matches!(practice.resume_target, NextAction::BeginRepetition | NextAction::BeginSet);
        let least_s = match practice.gate() {
            Gate::Rest(rest_s) if before_repetition => rest_s,
            _ => 0.0,
        };
        Self::at_least(practice, least_s, length_s)
    }

    /// `least_s` of it cannot be cut short.
    pub fn at_least(practice: &mut Practice, least_s: f64, length_s: f64) -> Self {
        practice.listen(listening::READY, VoiceTask::Idle);
        practice.show_prompt(line("resting-shown"), &[Command::Ready, Command::Stop]);
        let now_s = practice.now_s;
        Self { began_s: now_s, until_s: now_s + length_s.max(least_s), least_until_s: now_s + least_s, rises: false }
    }

    /// A part of getting up: behind it the client has got so far.
    pub fn rising(practice: &mut Practice, least_s: f64, length_s: f64) -> Self {
        Self { rises: true, ..Self::at_least(practice, least_s, length_s) }
    }

    pub fn tick(&self, practice: &mut Practice) -> Turn {
        let now_s = practice.now_s;
        practice.show_figure(&format!("{:.0}", (self.until_s - now_s).max(0.0).ceil()));
        if now_s >= self.until_s { self.end(practice) } else { Turn::Stay }
    }

    /// "Ready": it ends, unless the body needs it longer.
    pub fn ready(&self, practice: &mut Practice) -> Turn {
        if practice.now_s < self.least_until_s {
            if !practice.is_speaking() {
                let key = if self.rises { "rise-longer" } else { "rest-longer" };
                practice.say(key, &[("seconds", Arg::Number((self.least_until_s - practice.now_s).ceil()))]);
            }
            return Turn::Stay;
        }
        self.end(practice)
    }

    /// The rest is over.
    fn end(&self, practice: &mut Practice) -> Turn {
        practice.record(Fact::Rested { duration_s: practice.now_s - self.began_s });
        if self.rises {
            practice.has_risen();
        }
        Turn::Go(practice.resume_target)
    }
}
