//! What it does as time passes: waits for an answer, invites, gives notice.

use super::attendant::{Asking, Attendant, State};
use super::clock::{self, Moment};
use super::event::Hearing;
use super::invite::Slot;
use session::Arg;

/// Silence after which a question is asked once more, and then dropped, s.
const PATIENCE_S: f64 = 12.0;
/// Nobody may have spoken for so long before it begins by itself, s, the longer it has waited the shorter: a television makes no
/// long pauses, and a client beside one would else never be invited.
const QUIET_S: [(f64, f64); 3] = [(0.0, 3.0), (120.0, 1.0), (300.0, 0.4)];
/// A notice waits no longer than this for a pause, s.
const NOTICE_WAITS_S: f64 = 10.0;

impl Attendant {
    pub(super) fn tick(&mut self) {
        if !self.under_way.is_empty() {
            return;
        }
        match self.state.clone() {
            State::Asking(asking) => self.wait_for_answer(asking),
            State::Waiting => self.speak_by_itself(),
            State::Starting { .. } | State::Practising => {}
        }
    }

    fn wait_for_answer(&mut self, asking: Asking) {
        // Somebody is speaking: perhaps it is the answer.
        if self.now_s - asking.since_s.max(self.last_talk_s) < PATIENCE_S {
            return;
        }
        if asking.again {
            self.state = State::Waiting;
            return;
        }
        self.say_line(asking.line.clone());
        self.state = State::Asking(Asking { again: true, ..asking });
    }

    fn speak_by_itself(&mut self) {
        let now_s = self.now_s;
        let notice = self.notices.iter().position(|notice| notice.due_s <= now_s && !self.is_held_back(notice.about));
        let now = self.now.filter(|now| !self.household.home.is_quiet_at(now.minute));
        let invitation = now.and_then(|now| self.invitations.due(&self.household, &self.today, now, now_s).map(|due| (now, due)));
        if notice.is_none() && invitation.is_none() {
            self.wanting_s = None;
            return;
        }
        let waited_s = now_s - *self.wanting_s.get_or_insert(now_s);
        let quiet_s = QUIET_S.iter().filter(|(from_s, _)| waited_s >= *from_s).map(|(_, quiet_s)| *quiet_s).fold(f64::INFINITY, f64::min);
        let quiet = now_s - self.last_talk_s >= quiet_s;
        if let Some(index) = notice {
            if quiet || waited_s >= NOTICE_WAITS_S || self.hearing != Hearing::Well {
                self.wanting_s = None;
                self.give_notice(index);
            }
        } else if let Some((now, (slot, again))) = invitation
            && quiet
            && self.hearing == Hearing::Well
        {
            self.wanting_s = None;
            self.invite(now, slot, again);
        }
    }

    fn invite(&mut self, now: Moment, slot: Slot, again: bool) {
        self.invitations.note_said(slot, self.now_s);
        let pair = (slot.0, slot.1);
        let mut args = vec![("the", Arg::Text(self.household.the(pair)))];
        let mut key = if again { "attend-invite-again" } else { "attend-invite" }.to_owned();
        if !again {
            args.extend(clock::spoken(now.minute));
        }
        if self.several() {
            key.push_str("-for");
            args.push(("name", Arg::Text(self.household.name(slot.0))));
        }
        self.say(&key, args);
    }
}
