//! What was said to the attendant, and what it does about it.

use super::attendant::{Ask, Attendant, State};
use super::invite::{self, Postponed};
use super::said::Said;
use session::Arg;

/// From this confidence on what was heard is acted on; below, it is asked about (model card: advised threshold 0.8).
const SURE: f64 = 0.8;
/// What is heard with less is mostly something else (model card).
const HEARD_AT_ALL: f64 = 0.5;

impl Attendant {
    pub(super) fn heard(&mut self, said: Said, confidence: f64) {
        if confidence < HEARD_AT_ALL || self.state == State::Practising {
            return;
        }
        if said == Said::Stop {
            // Also a start that is only being announced.
            if matches!(self.state, State::Asking(_) | State::Starting { .. }) {
                self.drop_it()
            } else {
                self.hush()
            }
            return;
        }
        if matches!(self.state, State::Starting { .. }) || !self.listening.contains(&said) {
            return;
        }
        if confidence < SURE {
            // These start nothing: they are answered with a question.
            if matches!(said, Said::StartForSeveral(_) | Said::StartForUnknown) {
                self.obey(said);
                return;
            }
            // An unsure "thank you" leaves the notice as it is, an unsure "yes" the question: both can be said again.
            if !matches!(said, Said::Thanks | Said::Yes | Said::No | Said::NotNow | Said::NeverMind) {
                self.confirm(said);
            }
            return;
        }
        self.obey(said);
    }

    fn obey(&mut self, said: Said) {
        let asked = match &self.state {
            State::Asking(asking) => Some(asking.ask.clone()),
            _ => None,
        };
        match (said, asked) {
            (Said::Yes, Some(Ask::Confirm(said))) => {
                self.state = State::Waiting;
                self.obey(said);
            }
            (Said::No | Said::NotNow | Said::NeverMind, Some(_)) => self.drop_it(),
            (Said::Yes, _) => {
                if let Some((person, routine, _)) = self.invitations.open(self.now_s) {
                    self.start((person, routine));
                }
            }
            (Said::Name(person) | Said::StartFor(person), Some(Ask::ForWhom(pairs))) => {
                let of: Vec<_> = pairs.into_iter().filter(|pair| pair.0 == person).collect();
                if of.is_empty() { self.start_for(person) } else { self.choose(&of) }
            }
            (Said::Called(called) | Said::StartCalled(called), Some(Ask::Which(person, routines))) => {
                let fits = |routine: &usize| self.is_called((person, *routine), &called);
                match routines.iter().find(|routine| fits(routine)) {
                    Some(routine) => self.start((person, *routine)),
                    None => self.start_called(&called),
                }
            }
            (Said::StartMine, _) => self.start_mine(),
            (Said::StartFor(person), _) => self.start_for(person),
            (Said::StartForSeveral(persons), _) => self.ask_who_goes_first(&persons),
            (Said::StartForUnknown, _) => self.tell_whom_it_knows(),
            (Said::StartCalled(called), _) => self.start_called(&called),
            (Said::NotNow | Said::No, None) => self.not_now(),
            (Said::WhatIsLeft, _) => self.tell_left(),
            (Said::HowDidItGo, _) => self.tell_how(),
            (Said::Thanks, _) => self.answer_notices(),
            (Said::Name(_) | Said::Called(_) | Said::NeverMind | Said::Stop, _) => {}
        }
    }

    /// What was asked, or was about to start, is let go. Whoever said so hears that it was understood.
    fn drop_it(&mut self) {
        self.hush();
        self.state = State::Waiting;
        self.say("attend-dropped", Vec::new());
    }

    fn not_now(&mut self) {
        self.hush();
        match self.invitations.postpone(self.now_s) {
            Postponed::HalfAnHour => drop(self.say("attend-postponed", Vec::new())),
            Postponed::ForToday => drop(self.say("attend-left-alone", Vec::new())),
            Postponed::Nothing => {}
        }
    }

    fn is_called(&self, pair: (usize, usize), called: &str) -> bool {
        self.household.routine(pair).is_some_and(|routine| routine.called.iter().any(|name| name == called))
    }

    fn due(&self) -> Vec<(usize, usize)> {
        self.now.map(|now| invite::due_now(&self.household, &self.today, now)).unwrap_or_default()
    }

    /// "Start my practice": whoever's is due; where that does not tell, it is asked.
    fn start_mine(&mut self) {
        let all: Vec<_> = self.household.pairs().collect();
        let due = self.due();
        let for_one = due.first().filter(|first| due.iter().all(|pair| pair.0 == first.0)).map(|first| first.0);
        match for_one {
            Some(person) => self.start_for(person),
            None => self.choose(if due.is_empty() { &all } else { &due }),
        }
    }

    fn start_for(&mut self, person: usize) {
        let of: Vec<_> = self.household.pairs().filter(|pair| pair.0 == person).collect();
        self.choose(&of);
    }

    fn start_called(&mut self, called: &str) {
        let of: Vec<_> = self.household.pairs().filter(|pair| self.is_called(*pair, called)).collect();
        self.choose(&of);
    }

    /// Starts the one that is meant; of several persons' it asks whose, of one person's several the one that is due, or the
    /// only one not done yet today.
    fn choose(&mut self, pairs: &[(usize, usize)]) {
        let Some(first) = pairs.first().copied() else { return };
        if pairs.iter().any(|pair| pair.0 != first.0) {
            self.ask_for_whom(pairs);
            return;
        }
        let due: Vec<_> = self.due().into_iter().filter(|pair| pairs.contains(pair)).collect();
        let done = |pair: &&(usize, usize)| {
            self.today.practices.iter().any(|practised| (practised.person, practised.routine) == **pair && practised.counts())
        };
        let open: Vec<_> = pairs.iter().filter(|pair| !done(pair)).copied().collect();
        match (pairs, due.as_slice(), open.as_slice()) {
            ([one], _, _) | (_, [one, ..], _) | (_, _, [one]) => self.start(*one),
            _ => self.ask_which(first.0, pairs.iter().map(|pair| pair.1).collect()),
        }
    }

    fn start(&mut self, pair: (usize, usize)) {
        self.hush();
        let line = if self.several() {
            self.say("attend-starting-for", vec![("name", Arg::Text(self.household.name(pair.0)))])
        } else {
            self.say("attend-starting", Vec::new())
        };
        self.state = State::Starting { line, pair };
    }
}
