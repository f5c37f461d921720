//! The one who waits: invites, starts, answers, and tells a carer when something needs a person.

use super::clock::{self, Moment};
use super::event::{Effect, Event, Hearing, Keeping, Said, View};
use super::household::Household;
use super::invite::{self, Invitations};
use super::notice::{self, About, Notice};
use super::told::{Practised, Today};
use session::{Arg, Line, LineId};
use std::collections::BTreeSet;

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
pub(super) enum Ask {
    Confirm(Said),
    ForWhom(Vec<(usize, usize)>),
    Which(usize, Vec<usize>),
}

#[derive(Debug, Clone, PartialEq)]
pub(super) struct Asking {
    pub(super) ask: Ask,
    pub(super) line: Line,
    pub(super) since_s: f64,
    pub(super) again: bool,
}

#[derive(Debug, Clone, PartialEq)]
pub(super) enum State {
    Waiting,
    Asking(Asking),
    /// Starts when this line has been said.
    Starting {
        line: LineId,
        pair: (usize, usize),
    },
    Practising,
}

/// Waits for a practice. See the module's first lines for what it knows and what not.
pub struct Attendant {
    pub(super) household: Household,
    pub(super) today: Today,
    pub(super) invitations: Invitations,
    pub(super) notices: Vec<Notice>,
    /// The first notice that nobody has answered, and whom it is about: it stays on the screen, for whoever comes by after it was
    /// last said aloud, until that person practises again.
    pub(super) standing: Option<(usize, Line)>,
    pub(super) state: State,
    pub(super) hearing: Hearing,
    pub(super) now_s: f64,
    pub(super) now: Option<Moment>,
    pub(super) last_talk_s: f64,
    /// Since when something waits to be said by itself, s.
    pub(super) wanting_s: Option<f64>,
    pub(super) next_line: u64,
    pub(super) under_way: BTreeSet<LineId>,
    pub(super) listening: Vec<Said>,
    pub(super) shown: Option<View>,
    pub(super) effects: Vec<Effect>,
}

impl Attendant {
    #[must_use]
    pub fn new(household: Household) -> Self {
        Self {
            household,
            today: Today::default(),
            invitations: Invitations::default(),
            notices: Vec::new(),
            standing: None,
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

    pub(super) fn may_say_yes(&self) -> bool {
        self.invitations.open(self.now_s).is_some()
            && self.invitations.since_last_s(self.now_s).is_some_and(|since_s| since_s <= YES_WITHIN_S)
    }

    fn reach(&mut self, at_s: f64) {
        self.now_s = self.now_s.max(at_s);
    }

    // Speaking.

    pub(super) fn say(&mut self, key: &str, args: Vec<(&'static str, Arg)>) -> LineId {
        self.say_line(Line { key: key.to_owned(), args })
    }

    pub(super) fn say_line(&mut self, line: Line) -> LineId {
        let id = LineId(self.next_line);
        self.next_line += 1;
        self.under_way.insert(id);
        self.effects.push(Effect::Say { id, line });
        id
    }

    pub(super) fn hush(&mut self) {
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

    pub(super) fn several(&self) -> bool {
        self.household.persons.len() > 1
    }

    // Notices.

    fn give_notice(&mut self, index: usize) {
        let now_s = self.now_s;
        let Some(notice) = self.notices.get_mut(index) else { return };
        let more = notice.note_said(now_s);
        let (line, about, said) = (notice.line.clone(), notice.about, notice.said);
        self.effects.push(Effect::Keep { person: person_of(about), line: line.clone(), keeping: Keeping::Said(said) });
        self.say_line(line.clone());
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
