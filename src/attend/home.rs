//! What is arranged for the place itself: its devices, another phrase that starts a practice, quiet hours, whom to tell of faults.

use super::sayable::check_said;
use routine::fault::{FaultKind, Finder};
use routine::file::At;
use routine::text::{self, SaidBy};
use routine::{Hearing, minutes_of};
use schemars::JsonSchema;
use serde::Deserialize;

/// What is arranged; nothing by default.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Home {
    /// As `--mic` names it.
    pub microphone: Option<String>,
    /// As `--speaker` names it.
    pub loudspeaker: Option<String>,
    /// Means the same as "start my practice"; in the recogniser's form.
    pub start_phrase: Option<String>,
    pub quiet: Option<QuietHours>,
    /// As it is said after "Please tell": "your daughter".
    pub tell_faults_to: Option<String>,
}

/// From one time of day to another, over midnight where the second is the earlier one. Minutes after midnight.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct QuietHours {
    pub from_min: u16,
    pub to_min: u16,
}

impl QuietHours {
    /// This minute of the day lies within.
    #[must_use]
    pub fn holds(self, minute: u16) -> bool {
        let Self { from_min, to_min } = self;
        if from_min <= to_min { (from_min..to_min).contains(&minute) } else { minute >= from_min || minute < to_min }
    }
}

impl Home {
    /// Nothing is said by itself at this minute of the day, but what concerns a person.
    #[must_use]
    pub fn is_quiet_at(&self, minute: u16) -> bool {
        self.quiet.is_some_and(|quiet| quiet.holds(minute))
    }
}

/// What is arranged for this place.
#[derive(Debug, Clone, Default, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub(super) struct HomeFile {
    /// The microphone that `tidecount attend` listens to, as `tidecount devices` names it.
    microphone: Option<At<String>>,
    /// The loudspeaker that `tidecount attend` speaks through, as `tidecount devices` names it.
    loudspeaker: Option<At<String>>,
    /// What may be said besides "start my practice": two words or more.
    start_phrase: Option<At<String>>,
    /// From this time of day on it says nothing by itself, such as "21:30". What concerns a person's safety is still said.
    quiet_from: Option<At<String>>,
    /// Until this time of day, such as "07:00".
    quiet_to: Option<At<String>>,
    /// Who is to be told when something does not work, as it is said: "your daughter".
    tell_faults_to: Option<At<String>>,
}

/// What can be heard, and how a text is said to the recogniser.
pub(super) type Sayable<'a> = (Hearing<'a>, &'a dyn Fn(&str) -> String);

/// What the file arranges; every fault is noted.
pub(super) fn build(file: &HomeFile, sayable: Sayable<'_>, faults: &mut Finder<'_>) -> Home {
    let named = |typed: &Option<At<String>>| typed.as_ref().map(|at| at.value.trim().to_owned()).filter(|name| !name.is_empty());
    Home {
        microphone: named(&file.microphone),
        loudspeaker: named(&file.loudspeaker),
        start_phrase: file.start_phrase.as_ref().and_then(|typed| phrase(typed, sayable, faults)),
        quiet: quiet(file, faults),
        tell_faults_to: file.tell_faults_to.as_ref().map(|typed| {
            text::check(typed, "tell_faults_to", SaidBy::Tool, sayable.0, faults);
            typed.value.trim().to_owned()
        }),
    }
}

fn phrase(typed: &At<String>, (hearing, spoken_form): Sayable<'_>, faults: &mut Finder<'_>) -> Option<String> {
    check_said(typed, "start_phrase", hearing, spoken_form, faults);
    let spoken = spoken_form(&typed.value);
    if spoken.split_whitespace().count() < 2 {
        let what = "`start_phrase` is one word, which would be heard in any talk".to_owned();
        faults.add(FaultKind::OutOfRange, typed.span.clone(), what, "Take two words or more, such as \"begin our exercises\".");
        return None;
    }
    Some(spoken)
}

fn quiet(file: &HomeFile, faults: &mut Finder<'_>) -> Option<QuietHours> {
    let (from, to) = match (&file.quiet_from, &file.quiet_to) {
        (None, None) => return None,
        (Some(from), Some(to)) => (from, to),
        (Some(one), None) | (None, Some(one)) => {
            let what = "quiet hours need both `quiet_from` and `quiet_to`";
            faults.add(FaultKind::Missing, one.span.clone(), what, "Add the other one, or take this one out.");
            return None;
        }
    };
    let mut minutes = |typed: &At<String>, key: &str| {
        let found = minutes_of(&typed.value);
        if found.is_none() {
            let what = format!("`{key}` is \"{}\", which is no time of day", routine::shape::printable(&typed.value));
            faults.add(FaultKind::OutOfRange, typed.span.clone(), what, "Write hours from 00 to 23 and minutes, such as \"21:30\".");
        }
        found
    };
    let (from_min, to_min) = (minutes(from, "quiet_from"), minutes(to, "quiet_to"));
    Some(QuietHours { from_min: from_min?, to_min: to_min? })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn quiet_hours_may_pass_midnight() {
        let night = QuietHours { from_min: 1290, to_min: 420 };
        assert!(night.holds(1290) && night.holds(0) && night.holds(419));
        assert!(!night.holds(420) && !night.holds(720) && !night.holds(1289));
        let noon = QuietHours { from_min: 720, to_min: 840 };
        assert!(noon.holds(720) && !noon.holds(840) && !noon.holds(60));
        assert!(!Home::default().is_quiet_at(0));
    }
}
