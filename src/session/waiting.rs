//! Waiting for the client, with the patience that this person needs.

use super::next::{NextAction, Turn};
use super::patience::{Patience, Silence};
use super::practice::Practice;
use model::{Fact, Response};

/// What is said into a silence: asked again, once more, and at last what it waits for.
#[derive(Debug, Clone, Copy)]
pub(super) struct Reminders {
    pub again: &'static str,
    pub once_more: &'static str,
    pub waits: &'static str,
}

impl Practice {
    /// What the silence means now, where the client is expected to do `response`.
    pub fn silence(&self, patience: &mut Patience, response: Option<Response>) -> Silence {
        // A class is its clinician's to lead.
        if self.context.class {
            return Silence::Wait;
        }
        let mut limits = self.routine.no_answer;
        // Whoever cannot be heard is not asked again; why it waits is told once. The questions at the end go by all the same.
        if self.troubles.has_no_sound() && self.looking_back.is_none() {
            return if patience.is_over(self.now_s, limits) { Silence::GiveUp } else { Silence::Wait };
        }
        if let Some(response) = response {
            limits.ask_again_after_s = self.context.habits.wait_s(response, limits.ask_again_after_s);
            // Nobody who still answers is given up.
            limits.give_up_after_s = limits.give_up_after_s.max(limits.ask_again_after_s * f64::from(limits.asks.saturating_add(2)));
        }
        patience.look(self.now_s, limits)
    }

    /// Takes the silence of a client whose turn it is: asks again, once more, then says what it waits for.
    pub fn wait_kindly(&mut self, patience: &mut Patience, response: Response, reminders: Reminders) -> Turn {
        if self.is_speaking() {
            return Turn::Stay;
        }
        let reminder = match self.silence(patience, Some(response)) {
            Silence::Wait => return Turn::Stay,
            Silence::AskAgain(1) => reminders.again,
            Silence::AskAgain(_) => reminders.once_more,
            Silence::WaitForReady | Silence::StillHere => reminders.waits,
            Silence::GiveUp => return Turn::Go(NextAction::GiveUp),
        };
        self.remind(reminder);
        Turn::Stay
    }

    /// Says what gives way as soon as the client begins.
    pub fn remind(&mut self, key: &str) {
        let line = self.say(key, &[]);
        self.out.reminder = Some(line);
    }

    /// A reminder is being said.
    pub fn is_reminding(&self) -> bool {
        self.out.reminder.is_some_and(|line| self.out.speaking.contains(&line))
    }

    /// The client has just done what was waited for, `after_s` behind our line: learns how long that took.
    pub fn responded(&mut self, to: Response, after_s: Option<f64>) {
        if self.context.class || self.is_speaking() {
            return;
        }
        if let Some(after_s) = after_s {
            self.context.habits.add(to, after_s);
            self.record(Fact::ResponseTimed { to, after_s });
        }
    }
}
