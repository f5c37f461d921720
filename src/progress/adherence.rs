//! Done over prescribed, per day and week.

use super::practised::{Practice, Practised};
use super::prescribed::{RoutineLife, repetitions, routines};
use super::weeks::monday_of;
use super::window::Window;
use jiff::civil::Date;
use routine::Timing;
use serde::Serialize;
use std::collections::BTreeMap;

/// What was prescribed is known from…
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum PlanBasis {
    /// …a plan with days: a planned day without practice counts as nothing done.
    Planned,
    /// …the practices alone: no days were agreed, so what was not begun cannot be told.
    PractisedOnly,
    /// …nothing: nothing was planned and nothing done.
    Nothing,
}

/// One routine on one day.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct RoutineDay {
    pub routine_title: String,
    /// Times that it was planned for this day; 0 on a rest day.
    pub planned: u32,
    /// Practices of it that were begun.
    pub practices: u32,
    /// Repetitions; `done` is never more than `prescribed`.
    pub prescribed: u32,
    pub done: u32,
    /// Repetitions beyond what was prescribed, or on a day for which nothing was planned.
    pub extra: u32,
    /// Of what was prescribed, that of the times whose practice was begun.
    pub begun: u32,
}

/// One civil day.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct DayAdherence {
    pub day: Date,
    pub basis: PlanBasis,
    pub prescribed: u32,
    pub done: u32,
    pub extra: u32,
    pub practices: u32,
    pub planned: u32,
    pub routines: Vec<RoutineDay>,
    /// Of what was prescribed, that of the times whose practice was begun.
    pub begun: u32,
    /// The day is not over: today, with something still to do. Of it only the practices that were begun count, for nothing else of it was
    /// missed yet.
    pub open: bool,
}

impl DayAdherence {
    /// Done over prescribed, 0 to 1; none where nothing was prescribed.
    #[must_use]
    pub fn share(&self) -> Option<f64> {
        (self.prescribed > 0).then(|| f64::from(self.done) / f64::from(self.prescribed))
    }

    /// It stands in the sums: it is over, or something of it was begun.
    #[must_use]
    pub fn counts(&self) -> bool {
        !self.open || self.practices > 0
    }

    /// Repetitions prescribed, as they stand in the sums.
    #[must_use]
    pub fn counted_prescribed(&self) -> u32 {
        if self.open { self.begun } else { self.prescribed }
    }

    /// Repetitions done, as they stand in the sums: never more than were prescribed.
    #[must_use]
    pub fn counted_done(&self) -> u32 {
        self.done.min(self.counted_prescribed())
    }
}

/// One week, from Monday.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct WeekAdherence {
    pub monday: Date,
    pub prescribed: u32,
    pub done: u32,
    pub extra: u32,
    /// Days with something planned, and those of them with any practice.
    pub days_planned: u32,
    pub days_practised: u32,
    /// Days within the window that have passed.
    pub days: u32,
}

impl WeekAdherence {
    /// Done over prescribed, 0 to 1; none where nothing was prescribed.
    #[must_use]
    pub fn share(&self) -> Option<f64> {
        (self.prescribed > 0).then(|| f64::from(self.done) / f64::from(self.prescribed))
    }
}

/// Done over prescribed.
#[derive(Debug, Clone, PartialEq, Eq, Default, Serialize)]
pub struct Adherence {
    /// Every day of the window from the first practice on.
    pub days: Vec<DayAdherence>,
    pub weeks: Vec<WeekAdherence>,
    /// Over the whole window.
    pub prescribed: u32,
    pub done: u32,
    pub extra: u32,
}

impl Adherence {
    /// Done over prescribed over the window, 0 to 1; none where nothing was prescribed.
    #[must_use]
    pub fn share(&self) -> Option<f64> {
        (self.prescribed > 0).then(|| f64::from(self.done) / f64::from(self.prescribed))
    }
}

/// What was done of what was prescribed in the window, from the day of the first practice on. Practices count for the day on
/// which they began.
#[must_use]
pub fn adherence(practised: &Practised, window: Window) -> Adherence {
    of_routines(&routines(practised), practised.today, window)
}

pub(super) fn of_routines(lives: &[RoutineLife<'_>], today: Option<Date>, window: Window) -> Adherence {
    let Some(first) = lives.iter().filter_map(RoutineLife::first).min() else { return Adherence::default() };
    let mut days = Vec::new();
    let mut day = first.max(window.from);
    while day <= window.to {
        days.push(one_day(day, lives, today));
        match day.tomorrow() {
            Ok(tomorrow) => day = tomorrow,
            Err(_) => break,
        }
    }
    let weeks: Vec<WeekAdherence> = days.chunk_by(|one, other| monday_of(one.day) == monday_of(other.day)).filter_map(one_week).collect();
    let sum = |of: fn(&WeekAdherence) -> u32| weeks.iter().map(of).fold(0_u32, u32::saturating_add);
    let (prescribed, done, extra) = (sum(|week| week.prescribed), sum(|week| week.done), sum(|week| week.extra));
    Adherence { days, weeks, prescribed, done, extra }
}

fn one_week(days: &[DayAdherence]) -> Option<WeekAdherence> {
    let counted: Vec<&DayAdherence> = days.iter().filter(|day| day.counts()).collect();
    let sum = |of: fn(&DayAdherence) -> u32| counted.iter().map(|day| of(day)).fold(0_u32, u32::saturating_add);
    let count = |of: fn(&DayAdherence) -> bool| u32::try_from(counted.iter().filter(|day| of(day)).count()).unwrap_or(u32::MAX);
    Some(WeekAdherence {
        monday: monday_of(days.first()?.day),
        prescribed: sum(DayAdherence::counted_prescribed),
        done: sum(DayAdherence::counted_done),
        extra: sum(|day| day.extra),
        days_planned: count(|day| day.planned > 0),
        days_practised: count(|day| day.planned > 0 && day.practices > 0),
        days: u32::try_from(counted.len()).unwrap_or(u32::MAX),
    })
}

fn one_day(day: Date, lives: &[RoutineLife<'_>], today: Option<Date>) -> DayAdherence {
    let known: Vec<(RoutineDay, PlanBasis)> = lives.iter().filter_map(|life| routine_day(life, day)).collect();
    let sum = |of: fn(&RoutineDay) -> u32| known.iter().map(|(routine, _)| of(routine)).fold(0_u32, u32::saturating_add);
    let (prescribed, done, planned) = (sum(|routine| routine.prescribed), sum(|routine| routine.done), sum(|routine| routine.planned));
    let has = |wanted| known.iter().any(|(_, basis)| *basis == wanted);
    let basis = [PlanBasis::Planned, PlanBasis::PractisedOnly].into_iter().find(|basis| has(*basis)).unwrap_or(PlanBasis::Nothing);
    let (extra, practices, begun) = (sum(|routine| routine.extra), sum(|routine| routine.practices), sum(|routine| routine.begun));
    let routines = known.into_iter().map(|(routine, _)| routine).filter(|routine| routine.planned > 0 || routine.practices > 0).collect();
    let open = today == Some(day) && done < prescribed;
    DayAdherence { day, basis, prescribed, done, extra, practices, planned, routines, begun, open }
}

/// None where the routine was not in force and was not practised.
fn routine_day(life: &RoutineLife<'_>, day: Date) -> Option<(RoutineDay, PlanBasis)> {
    let (place, version) = life.on(day)?;
    let practices: Vec<&Practice> = life.practices_on(day).collect();
    let planned = version.planned(day);
    let mut done_of: BTreeMap<&str, u32> = BTreeMap::new();
    for result in practices.iter().flat_map(|practice| &practice.steps) {
        let done = done_of.entry(&result.exercise).or_insert(0);
        *done = done.saturating_add(result.done);
    }
    let mut prescribed_of: BTreeMap<&str, u32> = BTreeMap::new();
    // Where no days were agreed, each practice that was begun asks for itself.
    let times = if version.has_plan() { planned } else { u32::try_from(practices.len()).unwrap_or(u32::MAX) };
    for (number, step) in version.practised_steps() {
        let at_stage = if version.grows(number) { version.step(number, life.stage_on(day, place, number)).unwrap_or(step) } else { step };
        let prescribed = prescribed_of.entry(&step.exercise.id).or_insert(0);
        *prescribed = prescribed.saturating_add(repetitions(at_stage).saturating_mul(times));
    }
    if version.prescription.is_none() {
        // A text that cannot be read any more: what the practices themselves say.
        for result in practices.iter().flat_map(|practice| &practice.steps) {
            let prescribed = prescribed_of.entry(&result.exercise).or_insert(0);
            *prescribed = prescribed.saturating_add(result.prescribed.unwrap_or(result.done));
        }
    } else {
        done_of.retain(|exercise, _| routine::find(exercise).is_none_or(|entry| entry.timing != Timing::Rest));
    }
    let prescribed = prescribed_of.values().copied().fold(0_u32, u32::saturating_add);
    let all = done_of.values().copied().fold(0_u32, u32::saturating_add);
    let within = |(exercise, done): (&&str, &u32)| (*done).min(prescribed_of.get(exercise).copied().unwrap_or(0));
    let done = done_of.iter().map(within).fold(0_u32, u32::saturating_add);
    let begun_times = u32::try_from(practices.len()).unwrap_or(u32::MAX).min(times);
    let begun =
        if times == 0 { 0 } else { u32::try_from(u64::from(prescribed) * u64::from(begun_times) / u64::from(times)).unwrap_or(prescribed) };
    let basis = match (version.has_plan(), practices.is_empty()) {
        (true, _) if planned > 0 => PlanBasis::Planned,
        (false, false) => PlanBasis::PractisedOnly,
        _ => PlanBasis::Nothing,
    };
    let practices = u32::try_from(practices.len()).unwrap_or(u32::MAX);
    Some((RoutineDay { routine_title: life.title.to_owned(), planned, practices, prescribed, done, extra: all - done, begun }, basis))
}

#[cfg(test)]
#[path = "tests/adherence.rs"]
mod tests;
