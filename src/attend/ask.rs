//! Questions of the attendant, and its answers to those of the house.

use super::attendant::{Ask, Asking, Attendant, State};
use super::clock;
use super::household::Household;
use super::invite;
use super::said::Said;
use super::told::Practised;
use session::{Arg, Line};

impl Attendant {
    pub(super) fn ask(&mut self, ask: Ask, key: &str, args: Vec<(&'static str, Arg)>) {
        self.hush();
        let line = Line { key: key.to_owned(), args };
        self.say_line(line.clone());
        self.state = State::Asking(Asking { ask, line, since_s: self.now_s, again: false });
    }

    pub(super) fn ask_for_whom(&mut self, pairs: &[(usize, usize)]) {
        let mut persons: Vec<usize> = pairs.iter().map(|pair| pair.0).collect();
        persons.dedup();
        let (key, args) = match persons.as_slice() {
            [one, other] => ("attend-for-whom-two", names(self.household.name(*one), self.household.name(*other))),
            _ => ("attend-for-whom-more", Vec::new()),
        };
        self.ask(Ask::ForWhom(pairs.to_vec()), key, args);
    }

    /// Several were named in one breath: one is led at a time.
    pub(super) fn ask_who_goes_first(&mut self, persons: &[usize]) {
        let pairs: Vec<_> = self.household.pairs().filter(|pair| persons.contains(&pair.0)).collect();
        let (key, args) = match persons {
            [one, other] => ("attend-who-first-two", names(self.household.name(*one), self.household.name(*other))),
            _ => ("attend-who-first-more", Vec::new()),
        };
        self.ask(Ask::ForWhom(pairs), key, args);
    }

    /// A name was said that nobody here has. The recogniser cannot tell which.
    pub(super) fn tell_whom_it_knows(&mut self) {
        let mut known: Vec<String> = (0..self.household.persons.len()).map(|person| self.household.name(person)).collect();
        let last = known.pop().unwrap_or_default();
        if known.is_empty() {
            self.hush();
            self.state = State::Waiting;
            self.say("attend-unknown-name-one", vec![("name", Arg::Text(last))]);
            return;
        }
        let args = vec![("names", Arg::Text(known.join(", "))), ("last", Arg::Text(last))];
        let pairs = self.household.pairs().collect();
        self.ask(Ask::ForWhom(pairs), "attend-unknown-name", args);
    }

    pub(super) fn ask_which(&mut self, person: usize, routines: Vec<usize>) {
        let (key, args) = match routines.as_slice() {
            [one, other] => ("attend-which-two", names(self.household.the((person, *one)), self.household.the((person, *other)))),
            _ => ("attend-which-more", Vec::new()),
        };
        self.ask(Ask::Which(person, routines), key, args);
    }

    pub(super) fn confirm(&mut self, said: Said) {
        if let State::Asking(Asking { ask: Ask::Confirm(_), .. }) = self.state {
            return;
        }
        let args = said_again(&said, &self.household);
        self.ask(Ask::Confirm(said), "attend-confirm", args);
    }

    // Answering.

    pub(super) fn tell_left(&mut self) {
        let Some(now) = self.now else { return };
        self.hush();
        let several = self.several();
        let left: Vec<_> = invite::slots(&self.household, now)
            .into_iter()
            .filter(|slot| !invite::is_done(&self.household, &self.today, *slot, now))
            .collect();
        let undated: Vec<_> = self
            .household
            .pairs()
            .filter(|pair| self.household.routine(*pair).is_some_and(|routine| routine.plan.is_empty()))
            .filter(|pair| {
                !self.today.practices.iter().any(|practised| (practised.person, practised.routine) == *pair && practised.counts())
            })
            .collect();
        if left.is_empty() && undated.is_empty() {
            self.say("attend-left-none", Vec::new());
        }
        let dated = left.into_iter().map(|(p, r, at)| ((p, r), Some(at)));
        for ((person, routine), at) in dated.chain(undated.into_iter().map(|pair| (pair, None))).collect::<Vec<_>>() {
            let mut args = vec![("the", Arg::Text(self.household.the((person, routine))))];
            let mut key = if at.is_some() { "attend-left-today" } else { "attend-left-undated" }.to_owned();
            args.extend(at.into_iter().flat_map(clock::spoken));
            if several {
                key.push_str("-for");
                args.push(("name", Arg::Text(self.household.name(person))));
            }
            self.say(&key, args);
        }
    }

    /// The last practice of each routine that was begun today.
    pub(super) fn tell_how(&mut self) {
        self.hush();
        let practices = self.today.practices.clone();
        let last = |practised: &Practised| {
            practices.iter().rev().find(|other| (other.person, other.routine) == (practised.person, practised.routine)) == Some(practised)
        };
        let lines: Vec<Line> =
            practices.iter().filter(|practised| last(practised)).flat_map(|practised| practised.told(&self.household)).collect();
        if lines.is_empty() {
            self.say("attend-told-nobody", Vec::new());
        }
        for line in lines {
            self.say_line(line);
        }
    }
}

fn names(first: String, second: String) -> Vec<(&'static str, Arg)> {
    vec![("first", Arg::Text(first)), ("second", Arg::Text(second))]
}

/// What was heard, as it is asked about: `said`, a message, and what that needs.
fn said_again(said: &Said, household: &Household) -> Vec<(&'static str, Arg)> {
    let (key, extra) = match said {
        Said::StartFor(person) | Said::Name(person) => ("attend-again-for", Some(("name", household.name(*person)))),
        Said::StartCalled(called) | Said::Called(called) => ("attend-again-called", Some(("the", household.articles.with(called)))),
        Said::NotNow => ("attend-again-not-now", None),
        Said::WhatIsLeft => ("attend-again-left", None),
        Said::HowDidItGo => ("attend-again-how", None),
        _ => ("attend-again-mine", None),
    };
    let message = [("said", Arg::Message(key.into()))];
    message.into_iter().chain(extra.map(|(name, text)| (name, Arg::Text(text)))).collect()
}
