//! Telling a carer: notices as they come up, are said, answered and over.

use super::attendant::{Attendant, State};
use super::event::{Effect, Hearing, Keeping};
use super::notice::{self, About, Notice};
use super::told::Practised;
use session::{Arg, Line};

impl Attendant {
    pub(super) fn give_notice(&mut self, index: usize) {
        let now_s = self.now_s;
        let Some(notice) = self.notices.get_mut(index) else { return };
        let more = notice.note_said(now_s);
        let (line, about, said) = (notice.line.clone(), notice.about, notice.said);
        self.effects.push(Effect::Keep { person: person_of(about), line: line.clone(), keeping: Keeping::Said(said) });
        self.say_line(line.clone());
        let whom = self.household.home.tell_faults_to.clone().filter(|_| about == About::Ear);
        if let Some(whom) = whom {
            self.say("attend-tell-faults", vec![("whom", Arg::Text(whom))]);
        }
        if let About::Person(person) = about {
            self.standing.get_or_insert((person, line));
            // How to end it is told once.
            if said == 1 {
                self.say("attend-notice-thanks", Vec::new());
            }
            if !more {
                self.notices.retain(|notice| notice.due_s.is_finite() || notice.about == About::Ear);
            }
        }
    }

    /// In quiet hours a faulty microphone can wait; a person who needs somebody cannot.
    pub(super) fn is_held_back(&self, about: About) -> bool {
        about == About::Ear && self.now.is_some_and(|now| self.household.home.is_quiet_at(now.minute))
    }

    pub(super) fn answer_notices(&mut self) {
        let answered = self.notices.extract_if(.., |notice| notice.about != About::Ear && notice.said > 0).collect::<Vec<_>>();
        if answered.is_empty() {
            return;
        }
        self.standing = None;
        for notice in answered {
            self.effects.push(Effect::Keep { person: person_of(notice.about), line: notice.line, keeping: Keeping::Answered });
        }
        self.hush();
        self.say("attend-notice-answered", Vec::new());
    }

    pub(super) fn hearing_is(&mut self, hearing: Hearing) {
        if std::mem::replace(&mut self.hearing, hearing) == hearing {
            return;
        }
        let told = self.notices.extract_if(.., |notice| notice.about == About::Ear).collect::<Vec<_>>();
        for notice in told.iter().filter(|notice| notice.said > 0) {
            self.effects.push(Effect::Keep { person: None, line: notice.line.clone(), keeping: Keeping::Over });
        }
        match notice::of_ear(hearing) {
            Some(key) => {
                // What was asked can no longer be answered.
                if matches!(self.state, State::Asking(_)) {
                    self.state = State::Waiting;
                }
                self.notices.insert(0, Notice::new(About::Ear, Line { key: key.into(), args: Vec::new() }, self.now_s));
            }
            None if told.iter().any(|notice| notice.said > 0) => {
                self.say("attend-hears-again", Vec::new());
            }
            None => {}
        }
    }

    pub(super) fn practice_ended(&mut self, outcome: Practised) {
        self.state = State::Waiting;
        self.standing.take_if(|(person, _)| *person == outcome.person);
        self.last_talk_s = f64::NEG_INFINITY;
        self.invitations.settle(outcome.person, outcome.routine);
        let notices = notice::of_practice(&outcome, &self.household, self.now_s);
        self.notices.extend(notices);
        if self.household.persons.get(outcome.person).is_some_and(|person| person.summary_after) {
            for line in outcome.told(&self.household) {
                self.say_line(line);
            }
        }
        self.today.practices.push(outcome);
    }
}

fn person_of(about: About) -> Option<usize> {
    match about {
        About::Person(person) => Some(person),
        About::Ear => None,
    }
}
