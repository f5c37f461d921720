//! The one door: an event comes in, effects go out.

use super::attendant::{Attendant, State};
use super::event::{Effect, Event};
use super::told::Today;
use session::LineId;

impl Attendant {
    /// Takes an event and gives what is to be done, in order.
    pub fn on(&mut self, event: Event) -> Vec<Effect> {
        match event {
            Event::Tick { at_s, now } => {
                self.reach(at_s);
                if self.now.is_some_and(|before| before.day != now.day) {
                    self.today = Today { day: now.day, practices: Vec::new() };
                    self.invitations.clear();
                }
                self.now = Some(now);
                self.tick();
            }
            Event::Talk { at_s } => {
                self.reach(at_s);
                self.last_talk_s = at_s;
            }
            Event::Heard { at_s, said, confidence } => {
                self.reach(at_s);
                self.last_talk_s = at_s;
                self.heard(said, confidence);
            }
            Event::LineEnded { at_s, line } => {
                self.reach(at_s);
                self.line_ended(line);
            }
            Event::Record { at_s, today } => {
                self.reach(at_s);
                self.today = today;
            }
            Event::PracticeEnded { at_s, outcome } => {
                self.reach(at_s);
                self.practice_ended(outcome);
            }
            Event::PracticeFailed { at_s } => {
                self.reach(at_s);
                self.state = State::Waiting;
                self.say("attend-not-begun", Vec::new());
            }
            Event::Hearing { at_s, hearing } => {
                self.reach(at_s);
                self.hearing_is(hearing);
            }
        }
        self.settle();
        std::mem::take(&mut self.effects)
    }

    fn reach(&mut self, at_s: f64) {
        self.now_s = self.now_s.max(at_s);
    }

    fn line_ended(&mut self, line: LineId) {
        self.under_way.remove(&line);
        match &mut self.state {
            State::Starting { line: last, pair } if *last == line => {
                let (person, routine) = *pair;
                self.state = State::Practising;
                self.effects.push(Effect::Start { person, routine });
            }
            State::Asking(asking) => asking.since_s = self.now_s,
            _ => {}
        }
    }
}
