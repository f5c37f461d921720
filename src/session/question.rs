//! Word questions: a clue, generous time to think, a hint where an answer was near or half the time is over, the answer
//! told. Nobody is told "wrong".

use super::listening;
use super::next::{NextAction, Turn};
use super::practice::Practice;
use model::{Arg, Command, EndedBy, Fact, Line, Response, VoiceTask};
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

fn item_of(practice: &Practice) -> Option<QuestionItem> {
    match &practice.step()?.work {
        Work::Question { items, .. } if !items.is_empty() => items.get(practice.turn() % items.len()).cloned(),
        _ => None,
    }
}

fn listen_for_answers(practice: &mut Practice, item: &QuestionItem, voice: VoiceTask) {
    if practice.context.understood.answers() {
        let answers = item.answers.iter().chain(&item.near).cloned().collect();
        practice.listen_with(listening::QUESTION, answers, voice);
    } else {
        practice.listen_with(listening::QUESTION_UNHEARD, Vec::new(), voice);
    }
}

pub(super) fn cue(practice: &mut Practice) -> Turn {
    let Some(item) = item_of(practice) else { return Turn::Go(NextAction::EndStep) };
    listen_for_answers(practice, &item, VoiceTask::Idle);
    if let Some(kind) = item.kind.filter(|&kind| practice.kind_asked != Some(kind)) {
        practice.kind_asked = Some(kind);
        practice.say(&format!("question-kind-{}", kind.name()), &[]);
    }
    let args = vec![("clue", Arg::Text(item.clue))];
    let last = practice.say("question-clue", &args);
    let can_say: &[Command] = match practice.context.understood.answers() {
        true => &[Command::Hint, Command::Skip, Command::Stop],
        false => &[Command::Done, Command::Hint, Command::Skip, Command::Stop],
    };
    practice.show_prompt(Line { key: "question-clue-shown".into(), args }, can_say);
    practice.after(last, 0.0, NextAction::Perform).into()
}

impl QuestionRun {
    pub fn open(practice: &mut Practice, think_s: f64) -> Self {
        // Whoever usually needs longer gets longer.
        let think_s = practice.context.habits.wait_s(Response::Question, think_s);
        let now_s = practice.now_s;
        if let Some(item) = item_of(practice) {
            listen_for_answers(practice, &item, VoiceTask::Speech { end_pause_s: END_PAUSE_S });
        }
        practice.turn_began_s = now_s;
        Self {
            began_s: now_s,
            think_until_s: now_s + think_s,
            longest_until_s: now_s + think_s * LONGEST,
            hint_at_s: now_s + think_s * HINT_AT,
            hinted: false,
            puzzled_at_s: None,
        }
    }

    /// Our own line has ended: at least a moment remains after it.
    pub fn spoke(&mut self, now_s: f64) {
        self.think_until_s = self.think_until_s.max(now_s + MOMENT_S);
        self.longest_until_s = self.longest_until_s.max(self.think_until_s);
    }

    /// Somebody speaks: that takes nothing from the time to think.
    pub fn speech_began(&mut self, now_s: f64) {
        self.puzzled_at_s = None;
        self.think_until_s = self.think_until_s.max(now_s + MOMENT_S).min(self.longest_until_s);
    }

    /// Something was said that may hold an answer; if none is found in it, the hint comes early.
    pub fn spoken(&mut self, now_s: f64) {
        self.puzzled_at_s = Some(now_s + ANSWER_LATE_S);
    }

    /// Thought about it for so long, s.
    fn thought_s(&self, now_s: f64) -> f64 {
        now_s - self.began_s
    }

    pub fn tick(&mut self, practice: &mut Practice) -> Turn {
        if practice.is_speaking() {
            return Turn::Stay;
        }
        let now_s = practice.now_s;
        if now_s >= self.think_until_s {
            return self.close(practice, None);
        }
        if !self.hinted && (now_s >= self.hint_at_s || self.puzzled_at_s.is_some_and(|at_s| now_s >= at_s)) {
            self.give_hint(practice, "question-hint");
        }
        Turn::Stay
    }

    /// The client asked for the hint.
    pub fn hint_asked(&mut self, practice: &mut Practice) {
        self.give_hint(practice, "question-hint-asked");
    }

    /// The hint, once; where the item has none, or it was given, the clue is said again to whoever asked or came near.
    fn give_hint(&mut self, practice: &mut Practice, key: &str) {
        let hinted_before = self.hinted;
        self.hinted = true;
        let Some(item) = item_of(practice) else { return };
        if let Some(hint) = item.hint.filter(|_| !hinted_before) {
            practice.say(key, &[("hint", Arg::Text(hint))]);
        } else if key != "question-hint" {
            practice.say("question-clue", &[("clue", Arg::Text(item.clue))]);
        }
    }

    /// An answer that is listened for was heard: the right one, or one that comes near.
    pub fn answer(&mut self, practice: &mut Practice, text: &str) -> Turn {
        let Some(item) = item_of(practice) else { return Turn::Stay };
        if item.answers.iter().any(|answer| answer == text) {
            practice.responded(Response::Question, Some(self.thought_s(practice.now_s)));
            return self.close(practice, Some(text));
        }
        self.give_hint(practice, "question-near");
        Turn::Stay
    }

    /// The client has said the word and wants to know ours; only where no answer can be heard.
    pub fn done(&self, practice: &mut Practice) -> Turn {
        practice.responded(Response::Question, Some(self.thought_s(practice.now_s)));
        self.end(practice, None, EndedBy::Done)
    }

    /// The answer is told, found or not.
    pub fn close(&self, practice: &mut Practice, answer: Option<&str>) -> Turn {
        self.end(practice, answer, EndedBy::NextCue)
    }

    fn end(&self, practice: &mut Practice, answer: Option<&str>, ended_by: EndedBy) -> Turn {
        let Some(item) = item_of(practice) else { return Turn::Stay };
        let (exercise, duration_s) = (practice.exercise_id(), self.thought_s(practice.now_s));
        practice.record(match practice.context.understood.answers() {
            true => Fact::QuestionAnswered {
                exercise,
                clue: item.clue.clone(),
                answer: answer.map(str::to_owned),
                correct: answer.is_some(),
                hint_given: self.hinted && item.hint.is_some(),
                duration_s,
            },
            // An answer that could not be heard is neither found nor missed.
            false => Fact::RepetitionDone { exercise, duration_s, ended_by, asked: Some(item.clue.clone()) },
        });
        practice.repetition_complete();
        let told = Arg::Text(item.answers.first().cloned().unwrap_or_default());
        let mut last = practice.say(if answer.is_some() { "question-found" } else { "question-told" }, &[("answer", told)]);
        if let Some(fact) = item.fact {
            last = practice.say("question-fact", &[("fact", Arg::Text(fact))]);
        }
        practice.after(last, 0.6, NextAction::AfterRepetition).into()
    }
}
