//! The one who waits: invites, starts, answers, and tells a carer when something needs a person.

use super::clock::{self, Moment};
use super::event::{Effect, Event, Hearing, Keeping, Said, View};
use super::household::{Household, with_article};
use super::invite::{self, Invitations, Postponed};
use super::notice::{self, About, Notice};
use super::told::{Practised, Today};
use crate::session::{Arg, Line, LineId};
use std::collections::BTreeSet;

/// From this confidence on what was heard is acted on; below, it is asked about (model card: advised threshold 0.8).
const SURE: f64 = 0.8;
/// What is heard with less is mostly something else (model card).
const HEARD_AT_ALL: f64 = 0.5;
/// Silence after which a question is asked once more, and then dropped, s.
const PATIENCE_S: f64 = 12.0;
/// A "yes" so soon after an invitation begins the practice, s.
const YES_WITHIN_S: f64 = 20.0;
/// Nobody may have spoken for so long before it begins by itself, s, the longer it has waited the shorter: a television makes no
/// long pauses, and a client beside one would else never be invited.
const QUIET_S: [(f64, f64); 3] = [(0.0, 3.0), (120.0, 1.0), (300.0, 0.4)];
/// A notice waits no longer than this for a pause, s.
const NOTICE_WAITS_S: f64 = 10.0;

#[derive(Debug, Clone, PartialEq)]
enum Ask {
    Confirm(Said),
    ForWhom(Vec<(usize, usize)>),
    Which(usize, Vec<usize>),
}

#[derive(Debug, Clone, PartialEq)]
struct Asking {
    ask: Ask,
    line: Line,
    since_s: f64,
    again: bool,
}

#[derive(Debug, Clone, PartialEq)]
enum State {
    Waiting,
    Asking(Asking),
    /// Starts when this line has been said.
    Starting { line: LineId, pair: (usize, usize) },
    Practising,
}

/// Waits for a practice. See the module's first lines for what it knows and what not.
pub struct Attendant {
    household: Household,
    today: Today,
    invitations: Invitations,
    notices: Vec<Notice>,
    state: State,
    hearing: Hearing,
    now_s: f64,
    now: Option<Moment>,
    last_talk_s: f64,
    /// Since when something waits to be said by itself, s.
    wanting_s: Option<f64>,
    next_line: u64,
    under_way: BTreeSet<LineId>,
    listening: Vec<Said>,
    shown: Option<View>,
    effects: Vec<Effect>,
}

impl Attendant {
    #[must_use]
    pub fn new(household: Household) -> Self {
        Self {
            household,
            today: Today::default(),
            invitations: Invitations::default(),
            notices: Vec::new(),
            state: State::Waiting,
            hearing: Hearing::Well,
            now_s: 0.0,
            now: None,
            last_talk_s: f64::NEG_INFINITY,
            wanting_s: None,
            next_line: 0,
            under_way: BTreeSet::new(),
            listening: Vec::new(),
            shown: None,
            effects: Vec::new(),
        }
    }

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

    /// Notices are waiting to be said, or something is being said or asked.
    #[must_use]
    pub fn is_busy(&self) -> bool {
        !self.under_way.is_empty() || self.state != State::Waiting || self.notices.iter().any(|notice| notice.said == 0)
    }

    /// A short answer may come at any moment: this is no time to save work on hearing.
    #[must_use]
    pub fn expects_answer(&self) -> bool {
        matches!(self.state, State::Asking(_))
            || self.may_say_yes()
            || self.notices.iter().any(|notice| notice.about != About::Ear && notice.said > 0)
    }

    fn may_say_yes(&self) -> bool {
        self.invitations.open(self.now_s).is_some() && self.invitations.since_last_s(self.now_s).is_some_and(|since_s| since_s <= YES_WITHIN_S)
    }

    fn reach(&mut self, at_s: f64) {
        self.now_s = self.now_s.max(at_s);
    }

    // Speaking.

    fn say(&mut self, key: &str, args: Vec<(&'static str, Arg)>) -> LineId {
        self.say_line(Line { key: key.to_owned(), args })
    }

    fn say_line(&mut self, line: Line) -> LineId {
        let id = LineId(self.next_line);
        self.next_line += 1;
        self.under_way.insert(id);
        self.effects.push(Effect::Say { id, line });
        id
    }

    fn hush(&mut self) {
        if !self.under_way.is_empty() {
            self.effects.push(Effect::Hush);
        }
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

    // Time.

    fn tick(&mut self) {
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
        let notice = self.notices.iter().position(|notice| notice.due_s <= now_s);
        let invitation = self.now.and_then(|now| self.invitations.due(&self.household, &self.today, now, now_s).map(|due| (now, due)));
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

    fn invite(&mut self, now: Moment, slot: invite::Slot, again: bool) {
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

    fn several(&self) -> bool {
        self.household.persons.len() > 1
    }

    // Notices.

    fn give_notice(&mut self, index: usize) {
        let now_s = self.now_s;
        let Some(notice) = self.notices.get_mut(index) else { return };
        let more = notice.note_said(now_s);
        let (line, about, said) = (notice.line.clone(), notice.about, notice.said);
        self.effects.push(Effect::Keep { person: person_of(about), line: line.clone(), keeping: Keeping::Said(said) });
        self.say_line(line);
        if about != About::Ear {
            // How to end it is told once.
            if said == 1 {
                self.say("attend-notice-thanks", Vec::new());
            }
            if !more {
                self.notices.retain(|notice| notice.due_s.is_finite() || notice.about == About::Ear);
            }
        }
    }

    fn answer_notices(&mut self) {
        let answered = self.notices.extract_if(.., |notice| notice.about != About::Ear && notice.said > 0).collect::<Vec<_>>();
        if answered.is_empty() {
            return;
        }
        for notice in answered {
            self.effects.push(Effect::Keep { person: person_of(notice.about), line: notice.line, keeping: Keeping::Answered });
        }
        self.hush();
        self.say("attend-notice-answered", Vec::new());
    }

    fn hearing_is(&mut self, hearing: Hearing) {
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

    fn practice_ended(&mut self, outcome: Practised) {
        self.state = State::Waiting;
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

    // What was said.

    fn heard(&mut self, said: Said, confidence: f64) {
        if confidence < HEARD_AT_ALL || self.state == State::Practising {
            return;
        }
        if said == Said::Stop {
            self.hush();
            // Also a start that is only being announced.
            self.state = State::Waiting;
            return;
        }
        if matches!(self.state, State::Starting { .. }) || !self.listening.contains(&said) {
            return;
        }
        if confidence < SURE {
            // An unsure "thank you" leaves the notice as it is, an unsure "yes" the question: both can be said again.
            if !matches!(said, Said::Thanks | Said::Yes | Said::No) {
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
            (Said::No, Some(_)) => {
                self.hush();
                self.state = State::Waiting;
            }
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
            (Said::StartCalled(called), _) => self.start_called(&called),
            (Said::NotNow | Said::No, asked) => self.not_now(asked.is_some()),
            (Said::WhatIsLeft, _) => self.tell_left(),
            (Said::HowDidItGo, _) => self.tell_how(),
            (Said::Thanks, _) => self.answer_notices(),
            (Said::Name(_) | Said::Called(_) | Said::Stop, _) => {}
        }
    }

    fn not_now(&mut self, asked: bool) {
        self.hush();
        if asked {
            self.state = State::Waiting;
            return;
        }
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
        let done = |pair: &&(usize, usize)| self.today.practices.iter().any(|practised| (practised.person, practised.routine) == **pair && practised.counts());
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

    // Asking.

    fn ask(&mut self, ask: Ask, key: &str, args: Vec<(&'static str, Arg)>) {
        self.hush();
        let line = Line { key: key.to_owned(), args };
        self.say_line(line.clone());
        self.state = State::Asking(Asking { ask, line, since_s: self.now_s, again: false });
    }

    fn ask_for_whom(&mut self, pairs: &[(usize, usize)]) {
        let mut persons: Vec<usize> = pairs.iter().map(|pair| pair.0).collect();
        persons.dedup();
        let (key, args) = match persons.as_slice() {
            [one, other] => ("attend-for-whom-two", names(self.household.name(*one), self.household.name(*other))),
            _ => ("attend-for-whom-more", Vec::new()),
        };
        self.ask(Ask::ForWhom(pairs.to_vec()), key, args);
    }

    fn ask_which(&mut self, person: usize, routines: Vec<usize>) {
        let (key, args) = match routines.as_slice() {
            [one, other] => ("attend-which-two", names(self.household.the((person, *one)), self.household.the((person, *other)))),
            _ => ("attend-which-more", Vec::new()),
        };
        self.ask(Ask::Which(person, routines), key, args);
    }

    fn confirm(&mut self, said: Said) {
        if let State::Asking(Asking { ask: Ask::Confirm(_), .. }) = self.state {
            return;
        }
        let args = said_again(&said, &self.household);
        self.ask(Ask::Confirm(said), "attend-confirm", args);
    }

    // Answering.

    fn tell_left(&mut self) {
        let Some(now) = self.now else { return };
        self.hush();
        let several = self.several();
        let left: Vec<_> =
            invite::slots(&self.household, now).into_iter().filter(|slot| !invite::is_done(&self.household, &self.today, *slot, now)).collect();
        let undated: Vec<_> = self
            .household
            .pairs()
            .filter(|pair| self.household.routine(*pair).is_some_and(|routine| routine.plan.is_empty()))
            .filter(|pair| !self.today.practices.iter().any(|practised| (practised.person, practised.routine) == *pair && practised.counts()))
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
    fn tell_how(&mut self) {
        self.hush();
        let practices = self.today.practices.clone();
        let last = |practised: &Practised| {
            practices.iter().rev().find(|other| (other.person, other.routine) == (practised.person, practised.routine)) == Some(practised)
        };
        let lines: Vec<Line> = practices.iter().filter(|practised| last(practised)).flat_map(|practised| practised.told(&self.household)).collect();
        if lines.is_empty() {
            self.say("attend-told-nobody", Vec::new());
        }
        for line in lines {
            self.say_line(line);
        }
    }

    // What may be said now.

    fn settle(&mut self) {
        if matches!(self.state, State::Practising) {
            self.listening.clear();
            self.shown = None;
            return;
        }
        let listening = self.may_be_said();
        if listening != self.listening {
            self.listening.clone_from(&listening);
            self.effects.push(Effect::Listen(listening));
        }
        let view = self.view();
        if self.shown.as_ref() != Some(&view) {
            self.shown = Some(view.clone());
            self.effects.push(Effect::Show(view));
        }
    }

    fn may_be_said(&self) -> Vec<Said> {
        let mut may = vec![Said::StartMine, Said::WhatIsLeft, Said::HowDidItGo];
        if self.several() {
            may.extend((0..self.household.persons.len()).map(Said::StartFor));
        } else {
            // "Start for grandpa" is natural for a carer, also where nobody else lives here.
            may.push(Said::StartFor(0));
        }
        may.extend(self.household.call_names().into_iter().map(Said::StartCalled));
        if self.notices.iter().any(|notice| notice.about != About::Ear && notice.said > 0) {
            may.push(Said::Thanks);
        }
        match &self.state {
            State::Asking(Asking { ask, .. }) => {
                may.push(Said::No);
                match ask {
                    Ask::Confirm(_) => may.push(Said::Yes),
                    Ask::ForWhom(pairs) => {
                        let mut persons: Vec<usize> = pairs.iter().map(|pair| pair.0).collect();
                        persons.dedup();
                        may.extend(persons.into_iter().map(Said::Name));
                    }
                    Ask::Which(person, routines) => {
                        let routines = routines.iter().filter_map(|routine| self.household.routine((*person, *routine)));
                        may.extend(routines.flat_map(|routine| &routine.called).cloned().map(Said::Called));
                    }
                }
            }
            _ if self.invitations.open(self.now_s).is_some() => {
                may.push(Said::NotNow);
                if self.may_say_yes() {
                    may.extend([Said::Yes, Said::No]);
                }
            }
            _ => {}
        }
        may
    }

    fn view(&self) -> View {
        if let Some(key) = notice::of_ear(self.hearing) {
            let heading = Some(Line { key: "attend-deaf-shown".into(), args: Vec::new() });
            return View { heading, prompt: Line { key: key.into(), args: Vec::new() }, can_say: Vec::new() };
        }
        let prompt = match &self.state {
            State::Asking(asking) => asking.line.clone(),
            _ => Line { key: "attend-waiting-shown".into(), args: Vec::new() },
        };
        View { heading: self.now.and_then(|now| self.next_planned(now)), prompt, can_say: self.listening.clone() }
    }

    fn next_planned(&self, now: Moment) -> Option<Line> {
        let slot = invite::slots(&self.household, now)
            .into_iter()
            .find(|slot| slot.2.saturating_add(60) >= now.minute && !invite::is_done(&self.household, &self.today, *slot, now))?;
        let called = self.household.routine((slot.0, slot.1)).map(|routine| routine.title.clone()).unwrap_or_default();
        let clock = format!("{:02}:{:02}", slot.2 / 60, slot.2 % 60);
        let mut args = vec![("called", Arg::Text(called)), ("clock", Arg::Text(clock))];
        let key = if self.several() { "attend-next-shown-for" } else { "attend-next-shown" };
        if self.several() {
            args.push(("name", Arg::Text(self.household.name(slot.0))));
        }
        Some(Line { key: key.into(), args })
    }
}

fn person_of(about: About) -> Option<usize> {
    match about {
        About::Person(person) => Some(person),
        About::Ear => None,
    }
}

fn names(first: String, second: String) -> Vec<(&'static str, Arg)> {
    vec![("first", Arg::Text(first)), ("second", Arg::Text(second))]
}

/// What was heard, as it is asked about: `said`, a message, and what that needs.
fn said_again(said: &Said, household: &Household) -> Vec<(&'static str, Arg)> {
    let (key, extra) = match said {
        Said::StartFor(person) | Said::Name(person) => ("attend-again-for", Some(("name", household.name(*person)))),
        Said::StartCalled(called) | Said::Called(called) => ("attend-again-called", Some(("the", with_article(called)))),
        Said::NotNow => ("attend-again-not-now", None),
        Said::WhatIsLeft => ("attend-again-left", None),
        Said::HowDidItGo => ("attend-again-how", None),
        _ => ("attend-again-mine", None),
    };
    let message = [("said", Arg::Message(key.into()))];
    message.into_iter().chain(extra.map(|(name, text)| (name, Arg::Text(text)))).collect()
}
