//! A rest of a given length.

use super::listening;
use super::next::Turn;
use super::outlet::line;
use super::practice::Practice;
use model::{Command, Fact, VoiceTask};

/// A rest under way; behind it the session goes where "go on" leads.
#[derive(Debug, Clone)]
pub(super) struct Resting {
    began_s: f64,
    until_s: f64,
}

impl Resting {
    pub fn new(practice: &mut Practice, length_s: f64) -> Self {
        practice.listen(listening::READY, VoiceTask::Idle);
        practice.show_prompt(line("resting-shown"), &[Command::Ready, Command::Stop]);
        Self { began_s: practice.now_s, until_s: practice.now_s + length_s }
    }

    pub fn tick(&self, practice: &mut Practice) -> Turn {
        let now_s = practice.now_s;
        practice.show_figure(&format!("{:.0}", (self.until_s - now_s).max(0.0).ceil()));
        if now_s >= self.until_s { self.end(practice) } else { Turn::Stay }
    }

    /// The rest is over, by itself or by "ready".
    pub fn end(&self, practice: &mut Practice) -> Turn {
        practice.record(Fact::Rested { duration_s: practice.now_s - self.began_s });
        Turn::Go(practice.resume_target)
    }
}
