//! Getting up: from lying to sitting or standing, part by part, each spoken and each with the time that the catalogue gives it.
//!
//! It stands between two steps. Where the client is placed is known from the steps that were led; what is not known is not assumed.

use super::listening;
use super::next::{NextAction, Speaking};
use super::outlet::line;
use super::practice::Practice;
use super::resting::Resting;
use super::state::Move;
use model::{Command, VoiceTask};
use routine::{Posture, Rise, Step, rise};

/// Nobody lies where they lay for longer than this, s; no source.
const STILL_THERE_S: f64 = 900.0;

/// The part of getting up that this step needs first; none where it can begin.
fn first(practice: &Practice, step: &Step) -> Option<(Rise, f64)> {
    rise(practice.posture, step.posture).into_iter().find(|(part, _)| !(practice.on_side && *part == Rise::Side))
}

/// Says the first part of getting up; none where the step can begin.
pub(super) fn before(practice: &mut Practice, step: &Step) -> Option<Speaking> {
    let (part, length_s) = first(practice, step)?;
    practice.listen(listening::READY, VoiceTask::Idle);
    let last = practice.say(said(part), &[]);
    practice.rising = Some((part, length_s));
    let speaking = practice.after(last, 0.0, NextAction::Rise);
    // Whoever breaks it off is told this part again: its time is never cut short.
    practice.resume_target = NextAction::BeginStep;
    Some(speaking)
}

fn said(part: Rise) -> &'static str {
    match part {
        Rise::Side => "rise-side",
        Rise::Sit => "rise-sit",
        Rise::Stand => "rise-stand",
    }
}

/// The part has been said: its time runs.
pub(super) fn wait(practice: &mut Practice) -> Move {
    let Some((part, length_s)) = practice.rising else { return Move::Go(NextAction::BeginStep) };
    practice.resume_target = NextAction::BeginStep;
    // A class is its clinician's to lead.
    let least_s = if practice.context.class { 0.0 } else { length_s };
    let rests = Resting::rising(practice, least_s, length_s);
    practice.show_prompt(line(said(part)), &[Command::Stop]);
    rests.into()
}

impl Practice {
    /// The time of a part is over: the client has got so far.
    pub fn has_risen(&mut self) {
        let Some((part, _)) = self.rising.take() else { return };
        match part {
            Rise::Side => self.on_side = true,
            Rise::Sit => self.is_placed(Some(Posture::Sitting)),
            Rise::Stand => self.is_placed(Some(Posture::Standing)),
        }
    }

    /// A step in this posture begins; none leaves the client as they are.
    pub fn is_placed(&mut self, posture: Option<Posture>) {
        if posture.is_some() {
            self.posture = posture;
            self.on_side = false;
        }
    }

    /// An interrupted practice goes on at `here`: whoever broke off lately may still be placed as the step before asked.
    pub fn placed_before(&mut self) {
        if self.context.resume_ago_s.is_some_and(|ago_s| ago_s < STILL_THERE_S) {
            let before = self.routine.steps.iter().take(self.step_index()).rev();
            self.posture = before.filter(|step| step.posture.is_some()).map(|step| step.posture).next().flatten();
        }
    }
}
