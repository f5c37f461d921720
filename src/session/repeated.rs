//! Self-paced repetitions, each ended by "done" or by the next cue, with sips between where they are allowed.

use super::listening;
use super::next::{NextAction, Speaking, Turn};
use super::outlet::line;
use super::patience::Patience;
use super::practice::Practice;
use super::waiting::Reminders;
use model::{Command, EndedBy, Fact, Response, VoiceTask};
use routine::Work;

/// One repetition under way.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct RepeatedRun {
    pub patience: Patience,
    began_s: f64,
}

pub(super) fn cue(practice: &mut Practice) -> Speaking {
    practice.listen(listening::REPEATED, VoiceTask::Idle);
    let last = practice.say_cue();
    practice.show_prompt(line(practice.exercise_key("cue")), &[Command::Done, Command::Skip, Command::Stop]);
    practice.after(last, 0.0, NextAction::Perform)
}

impl RepeatedRun {
    pub fn open(practice: &mut Practice) -> Self {
        practice.listen(listening::REPEATED, VoiceTask::Idle);
        // In a class, reading aloud is ended by "done", too.
        if matches!(practice.step().map(|step| &step.work), Some(Work::Repeated { .. })) {
            practice.begins_repeated();
        }
        Self { patience: Patience::opened(practice.now_s), began_s: practice.now_s }
    }

    pub fn tick(&mut self, practice: &mut Practice) -> Turn {
        let next_cue_after_s = match practice.step().map(|step| &step.work) {
            Some(Work::Repeated { next_cue_after_s, .. }) => *next_cue_after_s,
            _ => None,
        };
        match next_cue_after_s {
            Some(after_s) if practice.now_s >= self.began_s + after_s => self.end(practice, EndedBy::NextCue),
            Some(_) => Turn::Stay,
            None => {
                let again = if self.patience.unclear() > 0 { "done-not-understood" } else { "done-again" };
                let reminders = Reminders { again, once_more: "done-once-more", waits: "wait-for-done" };
                practice.wait_kindly(&mut self.patience, Response::Done, reminders)
            }
        }
    }

    /// When its cue was over, s.
    pub fn began_s(&self) -> f64 {
        self.began_s
    }

    /// The client has said "done", or knocked.
    pub fn done(&self, practice: &mut Practice) -> Turn {
        practice.responded(Response::Done, self.patience.response_s(practice.now_s));
        self.end(practice, EndedBy::Done)
    }

    /// A command cut it off now: whether it was made is not known, so it counts as one.
    pub fn cut(&self, practice: &mut Practice) {
        practice.effort_ended(0.0, practice.now_s);
    }

    fn end(&self, practice: &mut Practice, ended_by: EndedBy) -> Turn {
        let duration_s = practice.now_s - self.began_s;
        practice.record(Fact::RepetitionDone { exercise: practice.exercise_id(), duration_s, ended_by, asked: None });
        practice.effort_ended(0.0, practice.now_s);
        practice.repetition_complete();
        let Some(step) = practice.step() else { return Turn::Stay };
        let repetition = practice.here.repetition;
        let sip = match step.work {
            Work::Repeated { sip_every: Some(every), .. } if every > 0 => repetition.is_multiple_of(every) && repetition < step.repetitions,
            _ => false,
        };
        Turn::Go(if sip { NextAction::OfferSip } else { NextAction::AfterRepetition })
    }
}
