//! The dose as it was given: minutes and repetitions, by day and by the catalogue's groups of exercises.

use super::practised::{Practice, Practised};
use super::window::Window;
use jiff::civil::Date;
use routine::{catalogue, find};
use serde::Serialize;
use std::collections::{BTreeMap, BTreeSet};

/// One day.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct DayGiven {
    pub day: Date,
    /// The whole practices, with what lies between the exercises.
    pub minutes: f64,
    pub repetitions: u32,
}

/// One group of exercises over the window.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct GroupGiven {
    /// As the catalogue names it; none for exercises that it no longer has.
    pub group: Option<&'static str>,
    /// From the beginning to the end of its exercises.
    pub minutes: f64,
    pub repetitions: u32,
    /// Days on which one of its exercises was begun.
    pub days: u32,
}

/// Minutes and repetitions of a window. A practice whose date cannot be believed is in neither.
#[derive(Debug, Clone, PartialEq, Default, Serialize)]
pub struct Given {
    /// Days with a practice, oldest first.
    pub days: Vec<DayGiven>,
    /// Groups that were practised, in the order of the catalogue.
    pub groups: Vec<GroupGiven>,
}

/// Gathers them.
pub(super) fn given(practised: &Practised, window: Window) -> Given {
    let shown: Vec<&Practice> = practised.practices.iter().filter(|practice| !practice.misdated && window.has(practice.day)).collect();
    let times: BTreeMap<(i64, u32), f64> = practised.step_times.iter().fold(BTreeMap::new(), |mut all, time| {
        *all.entry((time.session, time.step)).or_insert(0.0) += time.time_s;
        all
    });
    let mut days: BTreeMap<Date, (f64, u32)> = BTreeMap::new();
    let mut groups: BTreeMap<usize, (f64, u32, BTreeSet<Date>)> = BTreeMap::new();
    for practice in shown {
        let day = days.entry(practice.day).or_default();
        day.0 += practice.minutes;
        for step in &practice.steps {
            day.1 = day.1.saturating_add(step.done);
            let group = groups.entry(place_of(&step.exercise)).or_default();
            group.0 += times.get(&(practice.session, step.step)).copied().unwrap_or(0.0) / 60.0;
            group.1 = group.1.saturating_add(step.done);
            group.2.insert(practice.day);
        }
    }
    let names = group_names();
    Given {
        days: days.into_iter().map(|(day, (minutes, repetitions))| DayGiven { day, minutes, repetitions }).collect(),
        groups: groups
            .into_iter()
            .map(|(place, (minutes, repetitions, days))| GroupGiven {
                group: names.get(place).copied(),
                minutes,
                repetitions,
                days: u32::try_from(days.len()).unwrap_or(u32::MAX),
            })
            .collect(),
    }
}

/// The catalogue's groups, in its order.
fn group_names() -> Vec<&'static str> {
    let mut names: Vec<&'static str> = catalogue().iter().map(|entry| entry.group).collect();
    names.dedup();
    names
}

/// The place of an exercise's group; behind all others where the catalogue does not have it.
fn place_of(exercise: &str) -> usize {
    let names = group_names();
    find(exercise).and_then(|entry| names.iter().position(|name| *name == entry.group)).unwrap_or(names.len())
}

#[cfg(test)]
#[path = "tests/given.rs"]
mod tests;
