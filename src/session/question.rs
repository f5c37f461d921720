//! Word questions: a clue, time to think, a hint half-way, the answer told. Nobody is told "wrong".

use super::engine::{Engine, State, Then};
use super::{Arg, Command, Fact, Line, listening};
use crate::hear::VoiceTask;
use crate::routine::{QuestionItem, Work};

/// The hint comes after this share of the thinking time.
const HINT_AT: f64 = 0.5;

/// One question under way.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct QuestionRun {
    began_s: f64,
    /// Thinking time runs only while we are quiet, s of our own talk since the begin.
    think_until_s: f64,
    hint_at_s: f64,
    hinted: bool,
}

impl QuestionRun {
    /// Our own line, or the client's speech, takes nothing from the time to think: at least a moment remains after it.
    pub fn spoke(&mut self, now_s: f64) {
        const MOMENT_S: f64 = 4.0;
        self.think_until_s = self.think_until_s.max(now_s + MOMENT_S);
    }
}

impl Engine {
    fn item(&self) -> Option<QuestionItem> {
        match &self.step()?.work {
            Work::Question { items, .. } if !items.is_empty() => {
                items.get((self.here.repetition.max(1) - 1) as usize % items.len()).cloned()
            }
            _ => None,
        }
    }

    pub(super) fn cue_question(&mut self, items: &[QuestionItem]) {
        let Some(item) = self.item().filter(|_| !items.is_empty()) else {
            self.end_step();
            return;
        };
        self.listen_with(listening::QUESTION, item.answers, VoiceTask::Idle);
        let args = vec![("clue", Arg::Text(item.clue))];
        let last = self.say("question-clue", &args);
        self.show_prompt(Line { key: "question-clue-shown".into(), args }, &[Command::Skip, Command::Stop]);
        self.after(last, 0.0, Then::Perform);
    }

    pub(super) fn open_question(&mut self) {
        let Some(Work::Question { think_s, .. }) = self.step().map(|step| step.work.clone()) else { return };
        let now_s = self.now_s;
        self.state = State::Question(QuestionRun {
            began_s: now_s,
            think_until_s: now_s + think_s,
            hint_at_s: now_s + think_s * HINT_AT,
            hinted: false,
        });
    }

    pub(super) fn tick_question(&mut self, run: QuestionRun) {
        if self.is_speaking() {
            return;
        }
        if self.now_s >= run.think_until_s {
            self.close_question(&run, None);
        } else if !run.hinted && self.now_s >= run.hint_at_s {
            if let State::Question(run) = &mut self.state {
                run.hinted = true;
            }
            if let Some(hint) = self.item().and_then(|item| item.hint) {
                self.say("question-hint", &[("hint", Arg::Text(hint))]);
            }
        }
    }

    pub(super) fn answer(&mut self, text: &str) {
        if let State::Question(run) = self.state.clone() {
            self.close_question(&run, Some(text));
        }
    }

    fn close_question(&mut self, run: &QuestionRun, answer: Option<&str>) {
        let Some(item) = self.item() else { return };
        let fact = Fact::QuestionAnswered {
            exercise: self.exercise_id(),
            clue: item.clue.clone(),
            answer: answer.map(str::to_owned),
            correct: answer.is_some(),
            hint_given: run.hinted && item.hint.is_some(),
            duration_s: self.now_s - run.began_s,
        };
        self.record(fact);
        self.repetition_complete();
        let told = Arg::Text(item.answers.first().cloned().unwrap_or_default());
        let mut last = self.say(if answer.is_some() { "question-found" } else { "question-told" }, &[("answer", told)]);
        if let Some(fact) = item.fact {
            last = self.say("question-fact", &[("fact", Arg::Text(fact))]);
        }
        self.after(last, 0.6, Then::AfterRepetition);
    }
}
