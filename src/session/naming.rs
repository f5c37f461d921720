//! Naming: as many of a category as come to mind in a minute, each counted once.

use super::engine::{Engine, State, Then};
use super::{Arg, Command, Fact, Line, listening};
use model::VoiceTask;
use routine::{NamingItem, Work};

/// One category under way.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct NamingRun {
    began_s: f64,
    until_s: f64,
    /// What was named, each once, in the order in which it was heard.
    named: Vec<String>,
}

impl Engine {
    fn naming_item(&self) -> Option<(NamingItem, f64)> {
        match &self.step()?.work {
            Work::Naming { items, length_s } if !items.is_empty() => {
                items.get(self.turn() % items.len()).cloned().map(|item| (item, *length_s))
            }
            _ => None,
        }
    }

    pub(super) fn cue_naming(&mut self) {
        let Some((item, _)) = self.naming_item() else {
            self.end_step();
            return;
        };
        self.listen_with(listening::NAMING, item.members, VoiceTask::Idle);
        let args = vec![("clue", Arg::Text(item.clue))];
        let last = self.say("question-clue", &args);
        self.show_prompt(Line { key: "question-clue-shown".into(), args }, &[Command::Skip, Command::Stop]);
        self.after(last, 0.0, Then::Perform);
    }

    pub(super) fn open_naming(&mut self) {
        let Some((_, length_s)) = self.naming_item() else { return };
        self.state = State::Naming(NamingRun { began_s: self.now_s, until_s: self.now_s + length_s, named: Vec::new() });
    }

    pub(super) fn tick_naming(&mut self, run: NamingRun) {
        if self.now_s >= run.until_s && !self.is_speaking() {
            self.close_naming(&run);
        } else {
            self.show_figure(&run.named.len().to_string());
        }
    }

    /// Another one; the second time it counts no more, and nothing is said about it.
    pub(super) fn named(&mut self, text: &str) {
        let State::Naming(run) = &mut self.state else { return };
        let first = text.split('|').next().unwrap_or(text).trim().to_owned();
        if !run.named.contains(&first) {
            run.named.push(first);
        }
    }

    fn close_naming(&mut self, run: &NamingRun) {
        let Some((item, _)) = self.naming_item() else { return };
        let fact = Fact::CategoryNamed {
            exercise: self.exercise_id(),
            category: item.category.clone(),
            named: run.named.clone(),
            duration_s: self.now_s - run.began_s,
            complete: true,
        };
        self.record(fact);
        self.repetition_complete();
        let number = f64::from(u32::try_from(run.named.len()).unwrap_or(u32::MAX));
        let mut last = if run.named.is_empty() {
            // Who named nothing that was heard is not told "none": the ears may have missed it all.
            self.say("naming-over", &[])
        } else {
            self.say("naming-count", &[("number", Arg::Number(number)), ("category", Arg::Text(item.category))])
        };
        if let Some(fact) = item.fact {
            last = self.say("question-fact", &[("fact", Arg::Text(fact))]);
        }
        self.after(last, 0.6, Then::AfterRepetition);
    }

    /// A command cut it off: what was named is kept.
    pub(super) fn record_cut_naming(&mut self, run: &NamingRun) {
        let Some((item, _)) = self.naming_item() else { return };
        if !run.named.is_empty() {
            let duration_s = self.now_s - run.began_s;
            let fact = Fact::CategoryNamed {
                exercise: self.exercise_id(),
                category: item.category,
                named: run.named.clone(),
                duration_s,
                complete: false,
            };
            self.record(fact);
        }
    }
}
