//! Naming: as many of a category as come to mind in a minute, each counted once.

use super::listening;
use super::next::{NextAction, Turn};
use super::outlet::count;
use super::practice::Practice;
use model::{Arg, Command, EndedBy, Fact, Line, VoiceTask};
use routine::{NamingItem, Work};

/// One category under way.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct NamingRun {
    began_s: f64,
    until_s: f64,
    /// What was named, each once, in the order in which it was heard.
    named: Vec<String>,
}

fn item_of(practice: &Practice) -> Option<(NamingItem, f64)> {
    match &practice.step()?.work {
        Work::Naming { items, length_s } if !items.is_empty() => {
            items.get(practice.turn() % items.len()).cloned().map(|item| (item, *length_s))
        }
        _ => None,
    }
}

pub(super) fn cue(practice: &mut Practice) -> Turn {
    let Some((item, _)) = item_of(practice) else { return Turn::Go(NextAction::EndStep) };
    let members = if practice.context.understood.answers() { item.members } else { Vec::new() };
    practice.listen_with(listening::NAMING, members, VoiceTask::Idle);
    let args = vec![("clue", Arg::Text(item.clue))];
    let last = practice.say("question-clue", &args);
    practice.show_prompt(Line { key: "question-clue-shown".into(), args }, &[Command::Skip, Command::Stop]);
    practice.after(last, 0.0, NextAction::Perform).into()
}

impl NamingRun {
    pub fn open(practice: &Practice) -> Option<Self> {
        let (_, length_s) = item_of(practice)?;
        Some(Self { began_s: practice.now_s, until_s: practice.now_s + length_s, named: Vec::new() })
    }

    pub fn tick(&self, practice: &mut Practice) -> Turn {
        if practice.now_s >= self.until_s && !practice.is_speaking() {
            return self.close(practice);
        }
        if practice.context.understood.answers() {
            practice.show_figure(&self.named.len().to_string());
        }
        Turn::Stay
    }

    /// Another one; the second time it counts no more, and nothing is said about it.
    pub fn named(&mut self, text: &str) {
        let first = text.split('|').next().unwrap_or(text).trim().to_owned();
        if !self.named.contains(&first) {
            self.named.push(first);
        }
    }

    fn close(&self, practice: &mut Practice) -> Turn {
        let Some((item, _)) = item_of(practice) else { return Turn::Stay };
        practice.record(match practice.context.understood.answers() {
            true => self.category_named(practice, item.category.clone(), true),
            // What could not be heard is not counted as nothing.
            false => Fact::RepetitionDone {
                exercise: practice.exercise_id(),
                duration_s: practice.now_s - self.began_s,
                ended_by: EndedBy::NextCue,
                asked: Some(item.category.clone()),
            },
        });
        practice.repetition_complete();
        let mut last = if self.named.is_empty() {
            // Nobody is told "none": the ears may have missed it all.
            practice.say("naming-over", &[])
        } else {
            practice.say("naming-count", &[("number", count(self.named.len())), ("category", Arg::Text(item.category))])
        };
        if let Some(fact) = item.fact {
            last = practice.say("question-fact", &[("fact", Arg::Text(fact))]);
        }
        practice.after(last, 0.6, NextAction::AfterRepetition).into()
    }

    /// A command cut it off: what was named is kept.
    pub fn cut(&self, practice: &mut Practice) {
        let Some((item, _)) = item_of(practice) else { return };
        if !self.named.is_empty() {
            practice.record(self.category_named(practice, item.category, false));
        }
    }

    fn category_named(&self, practice: &Practice, category: String, complete: bool) -> Fact {
        let duration_s = practice.now_s - self.began_s;
        Fact::CategoryNamed { exercise: practice.exercise_id(), category, named: self.named.clone(), duration_s, complete }
    }
}
