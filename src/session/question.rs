//! Word questions: a clue, generous time to think, a hint where an answer was near or half the time is over, the answer
//! told. Nobody is told "wrong".

use super::engine::{Engine, State, Then};
use super::{Arg, Command, Fact, Line, Response, listening};
use model::VoiceTask;
use routine::{QuestionItem, Work};

/// The hint comes after this share of the thinking time.
const HINT_AT: f64 = 0.5;
/// Thinking time that remains at least behind anything that is said, s (trade notes: a turn of a word game is over after
/// 4 s at the least).
const MOMENT_S: f64 = 4.0;
/// Talk in the room prolongs the time to think up to this many times; a television must not prolong it for ever.
const LONGEST: f64 = 2.0;
/// The quiet after which something said is over, s.
const END_PAUSE_S: f64 = 1.2;
/// The recogniser has this long to find an answer in what was said, s; it needs less than half of it.
const ANSWER_LATE_S: f64 = 1.0;

/// One question under way.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct QuestionRun {
    began_s: f64,
    /// Thinking time runs to here, s.
    think_until_s: f64,
    /// And never further than to here, s.
    longest_until_s: f64,
    hint_at_s: f64,
    hinted: bool,
    /// Something was said and is over; where no answer is found in it, it may have been near. From here on the hint helps, s.
    puzzled_at_s: Option<f64>,
}

impl QuestionRun {
    /// Our own line has ended: at least a moment remains after it.
    pub fn spoke(&mut self, now_s: f64) {
        self.think_until_s = self.think_until_s.max(now_s + MOMENT_S);
        self.longest_until_s = self.longest_until_s.max(self.think_until_s);
    }

    /// Somebody speaks: that takes nothing from the time to think.
    pub fn speaks(&mut self, now_s: f64) {
        self.puzzled_at_s = None;
        self.think_until_s = self.think_until_s.max(now_s + MOMENT_S).min(self.longest_until_s);
    }

    /// Thought about it for so long, s.
    pub fn thought_s(&self, now_s: f64) -> f64 {
        now_s - self.began_s
    }
}

impl Engine {
    fn item(&self) -> Option<QuestionItem> {
        match &self.step()?.work {
            Work::Question { items, .. } if !items.is_empty() => items.get(self.turn() % items.len()).cloned(),
            _ => None,
        }
    }

    pub(super) fn cue_question(&mut self, items: &[QuestionItem]) {
        let Some(item) = self.item().filter(|_| !items.is_empty()) else {
            self.end_step();
            return;
        };
        self.listen_for_answers(&item, VoiceTask::Idle);
        if let Some(kind) = item.kind.filter(|&kind| self.kind_asked != Some(kind)) {
            self.kind_asked = Some(kind);
            self.say(&format!("question-kind-{}", kind.name()), &[]);
        }
        let args = vec![("clue", Arg::Text(item.clue))];
        let last = self.say("question-clue", &args);
        self.show_prompt(Line { key: "question-clue-shown".into(), args }, &[Command::Hint, Command::Skip, Command::Stop]);
        self.after(last, 0.0, Then::Perform);
    }

    fn listen_for_answers(&mut self, item: &QuestionItem, voice: VoiceTask) {
        let answers = item.answers.iter().chain(&item.near).cloned().collect();
        self.listen_with(listening::QUESTION, answers, voice);
    }

    pub(super) fn open_question(&mut self) {
        let Some(Work::Question { think_s, .. }) = self.step().map(|step| step.work.clone()) else { return };
        // Whoever usually needs longer gets longer.
        let think_s = self.start.habits.wait_s(Response::Question, think_s);
        let now_s = self.now_s;
        if let Some(item) = self.item() {
            self.listen_for_answers(&item, VoiceTask::Speech { end_pause_s: END_PAUSE_S });
        }
        self.turn_began_s = now_s;
        self.state = State::Question(QuestionRun {
            began_s: now_s,
            think_until_s: now_s + think_s,
            longest_until_s: now_s + think_s * LONGEST,
            hint_at_s: now_s + think_s * HINT_AT,
            hinted: false,
            puzzled_at_s: None,
        });
    }

    pub(super) fn tick_question(&mut self, run: QuestionRun) {
        if self.is_speaking() {
            return;
        }
        if self.now_s >= run.think_until_s {
            self.close_question(&run, None);
        } else if !run.hinted && (self.now_s >= run.hint_at_s || run.puzzled_at_s.is_some_and(|at_s| self.now_s >= at_s)) {
            self.give_hint("question-hint");
        }
    }

    /// The hint, once; where the item has none, the clue is said again.
    pub(super) fn give_hint(&mut self, key: &str) {
        let hinted = match &mut self.state {
            State::Question(run) => std::mem::replace(&mut run.hinted, true),
            _ => return,
        };
        if let Some(hint) = self.item().and_then(|item| item.hint).filter(|_| !hinted) {
            self.say(key, &[("hint", Arg::Text(hint))]);
        } else if let Some(item) = self.item().filter(|_| key != "question-hint") {
            self.say("question-clue", &[("clue", Arg::Text(item.clue))]);
        }
    }

    /// Something was said that may hold an answer; if none is found in it, the hint comes early.
    pub(super) fn said_something(&mut self) {
        let at_s = self.now_s + ANSWER_LATE_S;
        if let State::Question(run) = &mut self.state {
            run.puzzled_at_s = Some(at_s);
        }
    }

    pub(super) fn answer(&mut self, text: &str) {
        match self.state.clone() {
            State::Question(run) => {
                let Some(item) = self.item() else { return };
                if item.answers.iter().any(|answer| answer == text) {
                    self.responded();
                    self.close_question(&run, Some(text));
                } else {
                    self.give_hint("question-near");
                }
            }
            State::Naming(_) => self.named(text),
            _ => {}
        }
    }

    pub(super) fn close_question(&mut self, run: &QuestionRun, answer: Option<&str>) {
        let Some(item) = self.item() else { return };
        let fact = Fact::QuestionAnswered {
            exercise: self.exercise_id(),
            clue: item.clue.clone(),
            answer: answer.map(str::to_owned),
            correct: answer.is_some(),
            hint_given: run.hinted && item.hint.is_some(),
            duration_s: run.thought_s(self.now_s),
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
