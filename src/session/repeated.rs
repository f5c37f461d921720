//! Self-paced repetitions, each ended by "done" or by the next cue, with sips between where they are allowed.

use super::engine::{Ask, Engine, State, Then};
use super::patience::Patience;
use super::{Command, Fact, Line, listening};
use model::VoiceTask;
use routine::Work;

/// One repetition under way.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct RepeatedRun {
    pub patience: Patience,
    began_s: f64,
}

impl Engine {
    pub(super) fn cue_repeated(&mut self) {
        self.listen(listening::REPEATED, VoiceTask::Idle);
        let last = self.say_cue();
        self.show_prompt(Line { key: self.exercise_key("cue"), args: Vec::new() }, &[Command::Done, Command::Skip, Command::Stop]);
        self.after(last, 0.0, Then::Perform);
    }

    pub(super) fn open_repeated(&mut self) {
        self.listen(listening::REPEATED, VoiceTask::Idle);
        self.state = State::Repeated(RepeatedRun { patience: Patience::opened(self.now_s), began_s: self.now_s });
    }

    pub(super) fn tick_repeated(&mut self, run: RepeatedRun) {
        let next_cue_after_s = match self.step().map(|step| &step.work) {
            Some(Work::Repeated { next_cue_after_s, .. }) => *next_cue_after_s,
            _ => None,
        };
        if let Some(after_s) = next_cue_after_s {
            if self.now_s >= run.began_s + after_s {
                self.repeated_done("next cue");
            }
            return;
        }
        if self.is_speaking() {
            return;
        }
        let again = if self.was_unclear() { "done-not-understood" } else { "done-again" };
        self.wait_kindly(again, "done-once-more", "wait-for-done");
    }

    pub(super) fn repeated_done(&mut self, ended_by: &str) {
        if ended_by == "done" {
            self.responded();
        }
        let State::Repeated(run) = &self.state else { return };
        let duration_s = self.now_s - run.began_s;
        self.record(Fact::RepetitionDone { exercise: self.exercise_id(), duration_s, ended_by: ended_by.to_owned() });
        self.repetition_complete();
        let Some(step) = self.step() else { return };
        let sip = match step.work {
            Work::Repeated { sip_every: Some(every), .. } if every > 0 => {
                self.here.repetition.is_multiple_of(every) && self.here.repetition < step.repetitions
            }
            _ => false,
        };
        if sip {
            self.ask(Ask::Sip);
            // Whoever interrupts the sip need not take it.
            self.go_on = Then::AfterRepetition;
        } else {
            self.proceed(Then::AfterRepetition);
        }
    }
}
