//! What came of a practice, and how it is told to somebody who was not there.

use super::household::Household;
use model::{EndReason, StepReason, Symptom};
use session::{Arg, Entry, Fact, Line, Position};
use std::collections::BTreeSet;

/// How a practice ended.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum End {
    /// Led to its end.
    Completed,
    /// Ended by voice.
    Finished,
    NoAnswer,
    NoAgreement,
    /// Interrupted from outside, or broken off.
    BrokenOff,
    /// Chest pain, or no breath.
    Unwell,
}

/// The client said that something is wrong.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Unwell {
    pub reason: Symptom,
    /// What the exercise is called; none between exercises.
    pub exercise: Option<String>,
}

impl Unwell {
    /// What it is called in the keys of messages.
    pub(super) fn kind(&self) -> &'static str {
        match self.reason {
            Symptom::Pain => "pain",
            Symptom::Dizzy => "dizzy",
            Symptom::ChestPain => "chest-pain",
            Symptom::Breathless => "cant-breathe",
            Symptom::Choking => "choking",
            Symptom::Sick => "sick",
            Symptom::Help | Symptom::Other(_) => "help",
        }
    }
}

/// One practice, as far as a carer wants to know.
#[derive(Debug, Clone, PartialEq)]
pub struct Practised {
    pub person: usize,
    pub routine: usize,
    /// Local time of day at which it began, minutes after midnight.
    pub begun_min: u16,
    pub done: u32,
    pub prescribed: u32,
    /// What the exercises are called that were left out or skipped.
    pub left_out: Vec<String>,
    pub unwell: Vec<Unwell>,
    /// Repetitions for which nobody answered.
    pub missed: u32,
    pub end: End,
}

/// The practices begun on one day, in order.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Today {
    pub day: i64,
    pub practices: Vec<Practised>,
}

impl Practised {
    /// Reads a session's entries; `name_of` gives what an exercise is called.
    #[must_use]
    pub fn of(person: usize, routine: usize, begun_min: u16, entries: &[Entry], name_of: &dyn Fn(&str) -> String) -> Self {
        let mut practised = Self {
            person,
            routine,
            begun_min,
            done: 0,
            prescribed: 0,
            left_out: Vec::new(),
            unwell: Vec::new(),
            missed: 0,
            end: End::BrokenOff,
        };
        let step_of = |entry: &Entry| entry.position.map(|Position { step, .. }| step);
        let done: BTreeSet<u32> = entries.iter().filter(|entry| matches!(entry.fact, Fact::StepDone { .. })).filter_map(step_of).collect();
        practised.done = u32::try_from(done.len()).unwrap_or(u32::MAX);
        let mut leave_out = |exercise: &str| {
            let name = name_of(exercise);
            if !practised.left_out.contains(&name) {
                practised.left_out.push(name);
            }
        };
        for entry in entries {
            match &entry.fact {
                Fact::SessionBegun { steps, .. } => practised.prescribed = *steps,
                Fact::StepLeftOut { exercise, .. } => leave_out(exercise),
                Fact::StepStopped { exercise, reason, .. }
                    if *reason == StepReason::Skipped && step_of(entry).is_none_or(|step| !done.contains(&step)) =>
                {
                    leave_out(exercise);
                }
                Fact::SafetyStop { exercise, reason, .. } => {
                    practised.unwell.push(Unwell { reason: reason.clone(), exercise: exercise.as_deref().map(name_of) });
                }
                Fact::NoAnswer { .. } => practised.missed += 1,
                Fact::SessionEnded { reason, steps_done, steps_prescribed, .. } => {
                    (practised.done, practised.prescribed) = (*steps_done, *steps_prescribed);
                    practised.end = match reason {
                        EndReason::Completed => End::Completed,
                        // As much as one day, or one practice, may hold is as good as finished.
                        EndReason::Finished | EndReason::TimeLimit | EndReason::DayLimit => End::Finished,
                        EndReason::NoAnswer => End::NoAnswer,
                        EndReason::NoAgreement => End::NoAgreement,
                        EndReason::Unwell => End::Unwell,
                        _ => End::BrokenOff,
                    };
                }
                _ => {}
            }
        }
        practised
    }

    /// It counts as done today: the client worked, or chose to end it.
    #[must_use]
    pub fn counts(&self) -> bool {
        self.done > 0 || matches!(self.end, End::Completed | End::Finished)
    }

    /// The practice in words: "He did four of five; the head lift was left out. It ended early: something hurt."
    #[must_use]
    pub(super) fn told(&self, household: &Household) -> Vec<Line> {
        let mut args = household.who(self.person);
        args.extend([("done", Arg::Number(self.done.into())), ("all", Arg::Number(self.prescribed.into()))]);
        let key = match (self.done, self.left_out.as_slice()) {
            (0, _) => "attend-told-none",
            (done, _) if done == self.prescribed => "attend-told-all",
            (_, []) => "attend-told-part",
            (_, [one]) => {
                args.push(("first", Arg::Text(one.clone())));
                "attend-told-left-one"
            }
            (_, [first, second]) => {
                args.extend([("first", Arg::Text(first.clone())), ("second", Arg::Text(second.clone()))]);
                "attend-told-left-two"
            }
            (_, more) => {
                args.push(("left", Arg::Number(more.len() as f64)));
                "attend-told-left-more"
            }
        };
        let mut lines = vec![Line { key: key.into(), args }];
        lines.extend(self.ending());
        lines
    }

    /// Why it ended early, or what was not well on the way; none where all went as planned.
    fn ending(&self) -> Option<Line> {
        let what = self.unwell.last().map(Unwell::kind);
        let key = match (self.end, what) {
            (End::Completed, None) => return None,
            (End::Completed, Some(what)) => format!("attend-told-{what}"),
            (End::Finished | End::Unwell, Some(what)) => format!("attend-early-{what}"),
            (End::Finished, None) => "attend-early-finished".into(),
            (End::Unwell, None) => "attend-early-unwell".into(),
            (End::NoAnswer, _) => "attend-early-no-answer".into(),
            (End::NoAgreement, _) => "attend-early-no-agreement".into(),
            (End::BrokenOff, _) => "attend-early-broken-off".into(),
        };
        Some(Line { key, args: Vec::new() })
    }
}
