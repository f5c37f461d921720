//! When a routine is meant to be done.

use std::collections::BTreeSet;

use serde::{Deserialize, Serialize};

use super::fault::{FaultKind, Finder, suggestion};
use super::file::{At, PlanFile, RoutineFile};
use super::shape::printable;

/// A day of the week.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "lowercase")]
pub enum Weekday {
    Monday,
    Tuesday,
    Wednesday,
    Thursday,
    Friday,
    Saturday,
    Sunday,
}

impl From<jiff::civil::Weekday> for Weekday {
    fn from(day: jiff::civil::Weekday) -> Self {
        use jiff::civil::Weekday as Day;
        match day {
            Day::Monday => Self::Monday,
            Day::Tuesday => Self::Tuesday,
            Day::Wednesday => Self::Wednesday,
            Day::Thursday => Self::Thursday,
            Day::Friday => Self::Friday,
            Day::Saturday => Self::Saturday,
            Day::Sunday => Self::Sunday,
        }
    }
}

impl Weekday {
    /// Every day, Monday first.
    pub const ALL: [Self; 7] = [Self::Monday, Self::Tuesday, Self::Wednesday, Self::Thursday, Self::Friday, Self::Saturday, Self::Sunday];

    /// As it is written in a routine file, "tuesday".
    #[must_use]
    pub fn name(self) -> &'static str {
        self.key().trim_start_matches("weekday-")
    }

    /// The day of that name, in lower case.
    #[must_use]
    pub fn of_name(name: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|day| day.name() == name)
    }

    /// The message that names the day, `weekday-tuesday`.
    #[must_use]
    pub fn key(self) -> &'static str {
        match self {
            Self::Monday => "weekday-monday",
            Self::Tuesday => "weekday-tuesday",
            Self::Wednesday => "weekday-wednesday",
            Self::Thursday => "weekday-thursday",
            Self::Friday => "weekday-friday",
            Self::Saturday => "weekday-saturday",
            Self::Sunday => "weekday-sunday",
        }
    }
}

/// A time of day on some days of the week, as agreed with the client.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct PlannedTime {
    /// At least one day.
    pub days: BTreeSet<Weekday>,
    /// Local time of day, minutes after midnight, 0 to 1439.
    pub at_min: u16,
}

impl PlannedTime {
    /// The time as it is written in a routine file, "08:05".
    #[must_use]
    pub fn at_text(&self) -> String {
        format!("{:02}:{:02}", self.at_min / 60, self.at_min % 60)
    }
}

/// Minutes after midnight of a time such as "18:30" or "8:05"; none where it is no time of a day of 24 hours.
#[must_use]
pub fn minutes_of(text: &str) -> Option<u16> {
    let (hours, minutes) = text.split_once(':')?;
    let digits = |part: &str, lengths: std::ops::RangeInclusive<usize>| {
        (lengths.contains(&part.len()) && part.bytes().all(|byte| byte.is_ascii_digit())).then(|| part.parse::<u16>().ok()).flatten()
    };
    let (hours, minutes) = (digits(hours, 1..=2)?, digits(minutes, 2..=2)?);
    (hours < 24 && minutes < 60).then_some(hours * 60 + minutes)
}

/// The plan of a file, in its order; every fault is noted, among them a time that is said twice.
pub(super) fn read(file: &RoutineFile, faults: &mut Finder<'_>) -> Vec<PlannedTime> {
    let Some(typed) = &file.plan else { return Vec::new() };
    if typed.value.is_empty() {
        faults.add(
            FaultKind::Missing,
            typed.span.clone(),
            "`plan` is empty",
            "Add a time, as in `plan = [{ at = \"18:30\" }]`, or leave the key out.",
        );
    }
    let mut known: BTreeSet<(u16, Weekday)> = BTreeSet::new();
    let mut plan = Vec::new();
    for entry in &typed.value {
        let days = days(&entry.value, faults);
        let Some(at_min) = entry.value.at.as_ref().and_then(|at| time(at, faults)) else { continue };
        let entry_time = PlannedTime { days, at_min };
        if let Some(day) = entry_time.days.iter().find(|&&day| !known.insert((at_min, day))) {
            faults.add(
                FaultKind::Twice,
                entry.span.clone(),
                format!("{} at {} stands in the plan twice", day.name(), entry_time.at_text()),
                "Keep one of them, or change the time of the other.",
            );
        }
        known.extend(entry_time.days.iter().map(|&day| (at_min, day)));
        plan.push(entry_time);
    }
    plan
}

fn time(at: &At<String>, faults: &mut Finder<'_>) -> Option<u16> {
    let minutes = minutes_of(&at.value);
    if minutes.is_none() {
        faults.add(
            FaultKind::OutOfRange,
            at.span.clone(),
            format!("`at` is \"{}\", which is no time of day", printable(&at.value)),
            "Write hours from 00 to 23 and minutes, as in `at = \"18:30\"`.",
        );
    }
    minutes
}

fn days(entry: &PlanFile, faults: &mut Finder<'_>) -> BTreeSet<Weekday> {
    let Some(typed) = &entry.days else { return BTreeSet::from(Weekday::ALL) };
    if typed.value.is_empty() {
        faults.add(FaultKind::Missing, typed.span.clone(), "`days` is empty", "Name a day, or leave the key out for every day.");
    }
    let mut days = BTreeSet::new();
    for name in &typed.value {
        match Weekday::of_name(&name.value) {
            Some(day) if !days.insert(day) => {
                faults.add(FaultKind::Twice, name.span.clone(), format!("`days` holds {} twice", day.name()), "Keep one of them.");
            }
            Some(_) => {}
            None => faults.add(
                FaultKind::UnknownName,
                name.span.clone(),
                format!("\"{}\" is no day of the week", printable(&name.value)),
                suggestion(&name.value, Weekday::ALL.iter().map(|day| day.name())),
            ),
        }
    }
    days
}

#[cfg(test)]
mod tests {
    use super::minutes_of;

    #[test]
    fn times_of_day_are_those_of_a_clock_of_24_hours() {
        assert_eq!(minutes_of("00:00"), Some(0));
        assert_eq!(minutes_of("18:30"), Some(18 * 60 + 30));
        assert_eq!(minutes_of("8:05"), Some(8 * 60 + 5));
        assert_eq!(minutes_of("23:59"), Some(1439));
        for bad in ["24:00", "12:60", "1830", "18:3", "018:30", "+8:30", "-1:00", "6:30 pm", "", ":", "18:30:00", "١٨:٣٠"] {
            assert_eq!(minutes_of(bad), None, "{bad}");
        }
    }
}
