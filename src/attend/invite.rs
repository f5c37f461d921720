//! When to invite: at the agreed time, once more after ten minutes, then it is let be.

use super::clock::Moment;
use super::household::Household;
use super::told::Today;
use std::collections::BTreeMap;

/// A planned time of one routine today: person, routine, minutes after midnight.
pub(super) type Slot = (usize, usize, u16);

/// How long after the agreed time the first invitation still makes sense, minutes.
const LATE_MIN: u16 = 60;
/// From so long before the agreed time on a start means this routine, minutes …
const DUE_BEFORE_MIN: u16 = 15;
/// … and to so long after it.
const DUE_AFTER_MIN: u16 = 120;
/// Between the two invitations, s.
const AGAIN_S: f64 = 600.0;
/// "Not now": asked again after, s.
const POSTPONED_S: f64 = 1_800.0;
/// After so many "not now" it is left for the day.
const POSTPONED_AT_MOST: u32 = 3;
/// How often it invites, a "not now" counted as a new beginning.
const INVITATIONS: u32 = 2;
/// An invitation can be answered for so long, s.
const OPEN_S: f64 = 600.0;

#[derive(Debug, Clone, Copy, PartialEq)]
struct Invited {
    times: u32,
    postponed: u32,
    /// Not again before, s.
    not_before_s: f64,
    last_s: f64,
}

/// The invitations of today.
#[derive(Debug, Clone, Default)]
pub(super) struct Invitations {
    by_slot: BTreeMap<Slot, Invited>,
    last: Option<Slot>,
}

/// What came of "not now".
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Postponed {
    HalfAnHour,
    ForToday,
    /// Nothing had been asked.
    Nothing,
}

impl Invitations {
    /// Another day.
    pub fn clear(&mut self) {
        *self = Self::default();
    }

    /// The invitation that is due now, and whether it is not the first.
    pub fn due(&self, household: &Household, today: &Today, now: Moment, now_s: f64) -> Option<(Slot, bool)> {
        slots(household, now).into_iter().find_map(|slot| {
            if is_done(household, today, slot, now) {
                return None;
            }
            match self.by_slot.get(&slot) {
                None => (now.minute >= slot.2 && now.minute <= slot.2.saturating_add(LATE_MIN)).then_some((slot, false)),
                Some(invited) => (invited.times < INVITATIONS && now_s >= invited.not_before_s).then_some((slot, true)),
            }
        })
    }

    /// It is being said now.
    pub fn note_said(&mut self, slot: Slot, now_s: f64) {
        let invited = self.by_slot.entry(slot).or_insert(Invited { times: 0, postponed: 0, not_before_s: 0.0, last_s: now_s });
        invited.times += 1;
        (invited.not_before_s, invited.last_s) = (now_s + AGAIN_S, now_s);
        self.last = Some(slot);
    }

    /// The invitation that "not now" would answer.
    pub fn open(&self, now_s: f64) -> Option<Slot> {
        self.last.filter(|slot| self.by_slot.get(slot).is_some_and(|invited| now_s - invited.last_s <= OPEN_S))
    }

    /// How long ago the last invitation was said, s.
    pub fn since_last_s(&self, now_s: f64) -> Option<f64> {
        self.last.and_then(|slot| self.by_slot.get(&slot)).map(|invited| now_s - invited.last_s)
    }

    pub fn postpone(&mut self, now_s: f64) -> Postponed {
        let Some(invited) = self.open(now_s).and_then(|slot| self.by_slot.get_mut(&slot)) else { return Postponed::Nothing };
        self.last = None;
        invited.postponed += 1;
        if invited.postponed >= POSTPONED_AT_MOST {
            invited.times = INVITATIONS;
            return Postponed::ForToday;
        }
        (invited.times, invited.not_before_s) = (0, now_s + POSTPONED_S);
        Postponed::HalfAnHour
    }

    /// Its practice was begun: nothing more is asked, whatever came of it.
    pub fn settle(&mut self, person: usize, routine: usize) {
        for (_, invited) in self.by_slot.iter_mut().filter(|((p, r, _), _)| (*p, *r) == (person, routine)) {
            invited.times = INVITATIONS;
        }
        if self.last.is_some_and(|(p, r, _)| (p, r) == (person, routine)) {
            self.last = None;
        }
    }
}

/// Today's planned times, earliest first.
pub(super) fn slots(household: &Household, now: Moment) -> Vec<Slot> {
    let mut slots: Vec<Slot> = household
        .pairs()
        .flat_map(|(p, r)| {
            household.routine((p, r)).into_iter().flat_map(move |routine| routine.plan.iter().map(move |planned| (p, r, planned)))
        })
        .filter(|(_, _, planned)| planned.days.contains(&now.weekday))
        .map(|(p, r, planned)| (p, r, planned.at_min))
        .collect();
    slots.sort_by_key(|slot| (slot.2, slot.0, slot.1));
    slots.dedup();
    slots
}

/// Done already: a practice of this routine that counts stands nearer to this time than to any other planned one.
pub(super) fn is_done(household: &Household, today: &Today, slot: Slot, now: Moment) -> bool {
    let others: Vec<u16> = slots(household, now).into_iter().filter(|(p, r, _)| (*p, *r) == (slot.0, slot.1)).map(|slot| slot.2).collect();
    today.practices.iter().filter(|practised| (practised.person, practised.routine) == (slot.0, slot.1) && practised.counts()).any(
        |practised| {
            let distance = |at: u16| at.abs_diff(practised.begun_min);
            others.iter().all(|&other| distance(slot.2) <= distance(other))
        },
    )
}

/// The routines that are meant to be done about now.
pub(super) fn due_now(household: &Household, today: &Today, now: Moment) -> Vec<(usize, usize)> {
    let mut due: Vec<(usize, usize)> = slots(household, now)
        .into_iter()
        .filter(|slot| now.minute.saturating_add(DUE_BEFORE_MIN) >= slot.2 && now.minute <= slot.2.saturating_add(DUE_AFTER_MIN))
        .filter(|slot| !is_done(household, today, *slot, now))
        .map(|(p, r, _)| (p, r))
        .collect();
    due.dedup();
    due
}
