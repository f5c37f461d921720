//! What was prescribed when: the routines of a record, from the texts as they were practised.

use super::practised::{Practice, Practised};
use jiff::civil::Date;
use routine::{Prescription, Step, Timing, Work, doses_of};
use std::collections::BTreeMap;

/// Two plans within so many minutes on a shared weekday are the same time of day; own choice, no source.
const SAME_TIME_MIN: u16 = 120;

/// One text of a routine, from the first day on which it was practised.
pub(super) struct Version<'a> {
    pub from: Date,
    pub practice: &'a Practice,
    /// None where the steps cannot be made out any more.
    pub prescription: Option<Prescription>,
}

/// A routine with its texts.
pub(super) struct RoutineLife<'a> {
    pub title: &'a str,
    /// Oldest first; never empty.
    pub versions: Vec<Version<'a>>,
    /// Every practice of it, oldest first.
    pub practices: Vec<&'a Practice>,
    /// Of each practice the place of its text among the versions.
    version_of: Vec<usize>,
    /// Where the practices of a day begin.
    by_day: BTreeMap<Date, usize>,
    /// The first day on which another stood in its place, and that one's title.
    pub replaced: Option<(Date, &'a str)>,
}

/// Every routine that was practised on days that can be believed, by its first practice. Texts are read once.
pub(super) fn routines(practised: &Practised) -> Vec<RoutineLife<'_>> {
    let mut read: BTreeMap<&str, Option<Prescription>> = BTreeMap::new();
    let mut lives: Vec<RoutineLife<'_>> = Vec::new();
    for practice in practised.practices.iter().filter(|practice| !practice.misdated) {
        let text = practice.routine_text.as_str();
        let place = match lives.iter().position(|life| life.title == practice.routine_title) {
            Some(place) => place,
            None => {
                lives.push(RoutineLife::new(&practice.routine_title));
                lives.len() - 1
            }
        };
        let Some(life) = lives.get_mut(place) else { continue };
        if life.versions.last().is_none_or(|last| last.practice.routine_text != text) {
            let prescription =
                read.entry(text).or_insert_with(|| doses_of(text).filter(|prescription| !prescription.routine.steps.is_empty())).clone();
            life.versions.push(Version { from: practice.day, practice, prescription });
        }
        life.by_day.entry(practice.day).or_insert(life.practices.len());
        life.version_of.push(life.versions.len() - 1);
        life.practices.push(practice);
    }
    let replaced: Vec<Option<(Date, &str)>> = lives.iter().map(|life| replaced_by(life, &lives)).collect();
    for (life, replaced) in lives.iter_mut().zip(replaced) {
        life.replaced = replaced;
    }
    lives
}

impl<'a> RoutineLife<'a> {
    fn new(title: &'a str) -> Self {
        Self { title, versions: Vec::new(), practices: Vec::new(), version_of: Vec::new(), by_day: BTreeMap::new(), replaced: None }
    }

    /// The practices that began on a day.
    pub fn practices_on(&self, day: Date) -> impl Iterator<Item = &'a Practice> {
        let from = self.by_day.get(&day).copied().unwrap_or(self.practices.len());
        self.practices.iter().skip(from).take_while(move |practice| practice.day == day).copied()
    }

    /// Every practice with its text.
    pub fn with_versions(&self) -> impl Iterator<Item = (&'a Practice, usize, Option<&Version<'a>>)> {
        self.practices.iter().zip(&self.version_of).map(|(practice, place)| (*practice, *place, self.versions.get(*place)))
    }

    pub fn first(&self) -> Option<Date> {
        self.practices.first().map(|practice| practice.day)
    }

    fn last(&self) -> Option<Date> {
        self.practices.last().map(|practice| practice.day)
    }

    /// The text in force on a day, and its place: the one practised last up to then. None before the first practice and once it
    /// is replaced.
    pub fn on(&self, day: Date) -> Option<(usize, &Version<'a>)> {
        if self.replaced.is_some_and(|(from, _)| day >= from) {
            return None;
        }
        self.versions.iter().enumerate().rev().find(|(_, version)| version.from <= day)
    }

    /// The stage of a growing step that was begun last up to a day, with the text of that place; 1 where none was.
    pub fn stage_on(&self, day: Date, place: usize, step: u32) -> u32 {
        let up_to = self.practices.partition_point(|practice| practice.day <= day);
        let same_text = self.practices.iter().zip(&self.version_of).take(up_to).rev().filter(|(_, version)| **version == place);
        same_text
            .flat_map(|(practice, _)| &practice.steps)
            .filter(|result| result.step == step)
            .find_map(|result| result.ramp_stage)
            .unwrap_or(1)
    }
}

impl Version<'_> {
    /// The step of that number, from 1, at a stage.
    pub fn step(&self, number: u32, stage: u32) -> Option<&Step> {
        let prescription = self.prescription.as_ref()?;
        let ramp = prescription.ramps.iter().find(|ramp| ramp.step == number);
        let index = |from_one: u32| usize::try_from(from_one).ok().and_then(|number| number.checked_sub(1));
        match ramp {
            Some(ramp) => ramp.stages.get(index(stage)?.min(ramp.stages.len().checked_sub(1)?)),
            None => prescription.routine.steps.get(index(number)?),
        }
    }

    /// The dose of the step of that number grows.
    pub fn grows(&self, number: u32) -> bool {
        self.prescription.as_ref().is_some_and(|prescription| prescription.ramps.iter().any(|ramp| ramp.step == number))
    }

    /// Numbers, from 1, of the steps that are practised: rests are none.
    pub fn practised_steps(&self) -> impl Iterator<Item = (u32, &Step)> {
        let steps = self.prescription.iter().flat_map(|prescription| &prescription.routine.steps);
        (1..).zip(steps).filter(|(_, step)| step.exercise.timing != Timing::Rest)
    }

    /// How often it is planned for a day.
    pub fn planned(&self, day: Date) -> u32 {
        let plan = self.prescription.iter().flat_map(|prescription| &prescription.plan);
        let count = plan.filter(|time| time.days.iter().any(|planned| planned.name() == name(day))).count();
        u32::try_from(count).unwrap_or(u32::MAX)
    }

    /// Days are agreed.
    pub fn has_plan(&self) -> bool {
        self.prescription.as_ref().is_some_and(|prescription| !prescription.plan.is_empty())
    }
}

/// The day's name as a routine file writes it.
fn name(day: Date) -> &'static str {
    use jiff::civil::Weekday as Day;
    match day.weekday() {
        Day::Monday => "monday",
        Day::Tuesday => "tuesday",
        Day::Wednesday => "wednesday",
        Day::Thursday => "thursday",
        Day::Friday => "friday",
        Day::Saturday => "saturday",
        Day::Sunday => "sunday",
    }
}

/// Repetitions of a step, all sets.
pub(super) fn repetitions(step: &Step) -> u32 {
    step.sets.saturating_mul(step.repetitions)
}

/// Another routine took this one's place: it was first practised after this one was practised last, holds at least half of its
/// exercises and is planned for the same time of day (or one of the two for none). Our own rule: a record does not tell that a
/// routine was withdrawn.
fn replaced_by<'a>(life: &RoutineLife<'a>, lives: &[RoutineLife<'a>]) -> Option<(Date, &'a str)> {
    let (last, old) = (life.last()?, life.versions.last()?.prescription.as_ref()?);
    let exercises: Vec<&str> = old.routine.steps.iter().map(|step| step.exercise.id.as_str()).collect();
    let takes_over = |other: &&RoutineLife<'a>| {
        let Some((first, new)) = other.first().zip(other.versions.first().and_then(|version| version.prescription.as_ref())) else {
            return false;
        };
        let kept = exercises.iter().filter(|id| new.routine.steps.iter().any(|step| step.exercise.id == **id)).count();
        first > last && 2 * kept >= exercises.len() && same_time(old, new)
    };
    lives.iter().filter(takes_over).filter_map(|other| Some((other.first()?, other.title))).min()
}

fn same_time(one: &Prescription, other: &Prescription) -> bool {
    let near =
        |a: &routine::PlannedTime, b: &routine::PlannedTime| a.at_min.abs_diff(b.at_min) <= SAME_TIME_MIN && !a.days.is_disjoint(&b.days);
    one.plan.is_empty() || other.plan.is_empty() || one.plan.iter().any(|a| other.plan.iter().any(|b| near(a, b)))
}

/// A step's dose in a few words, "2 × 3, 12 s".
pub(super) fn dose_words(step: &Step) -> String {
    let times = if step.sets > 1 { format!("{} × {}", step.sets, step.repetitions) } else { format!("{} ×", step.repetitions) };
    let rest = match &step.work {
        Work::Voiced { target_s: Some(target_s), .. } => format!(", {target_s} s"),
        Work::Timed { phases, .. } => phases.iter().map(|phase| format!(", {} {} s", phase.name, phase.length_s)).collect(),
        Work::Paced { phases, .. } => phases.iter().map(|phase| format!(", {} {}", phase.name, phase.counts)).collect(),
        Work::Talk { passage: None, length_s, .. } | Work::Rapid { length_s, .. } | Work::Naming { length_s, .. } => {
            format!(", {length_s} s")
        }
        Work::Rest { length_s } => return length_s.map_or_else(|| "until ready".to_owned(), |length_s| format!("{length_s} s")),
        _ => String::new(),
    };
    times + &rest
}
