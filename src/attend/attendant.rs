//! The one who waits: what it knows, where it stands, and how it speaks.

use super::clock::Moment;
use super::event::{Effect, Hearing, View};
use super::household::Household;
use super::invite::Invitations;
use super::notice::{About, Notice};
use super::said::Said;
use super::told::Today;
use session::{Arg, Line, LineId};
use std::collections::BTreeSet;

/// A "yes" so soon after an invitation begins the practice, s.
const YES_WITHIN_S: f64 = 20.0;

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

/// Waits for a practice: invites, starts, answers, and tells a carer when something needs a person.
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

    /// Notices are waiting to be said, or something is being said or asked.
    #[must_use]
    pub fn is_busy(&self) -> bool {
        let waits = |notice: &Notice| notice.said == 0 && !self.is_held_back(notice.about);
        !self.under_way.is_empty() || self.state != State::Waiting || self.notices.iter().any(waits)
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

    pub(super) fn several(&self) -> bool {
        self.household.persons.len() > 1
    }
}
