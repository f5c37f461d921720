//! What is worked out of all that is kept of a client. Pure.

use super::adherence::Share;
use super::change::Change;
use super::digest::Microphone;
use super::found::Found;
use jiff::ToSpan;
use jiff::civil::Date;
use model::LevelCalibration;
use progress::{Conditions, PlanBasis, Practice, Trial};
use routine::{PlannedTime, Weekday, doses_of};
use std::collections::{BTreeMap, BTreeSet};

/// The window whose adherence is compared with the one before, days (own choice, no source).
const RECENT_DAYS: i64 = 14;
const BEFORE_DAYS: i64 = 28;
/// Where no days were agreed, so many days without practice are long (own choice, no source).
const UNPLANNED_GAP_DAYS: u32 = 7;
/// A newer package is expected to be followed so many days after it was made (own choice: it travels by hand; no source).
const TRAVEL_DAYS: i64 = 7;
/// A change of microphone or calibration is told while it is this recent, days (own choice, no source).
const CHANGE_TOLD_DAYS: i64 = 28;

/// What is worked out of what was found. Pure.
pub(super) struct Sums {
    pub newest_made: Option<Date>,
    pub follows_newest: Option<bool>,
    pub first_day: Option<Date>,
    pub last_day: Option<Date>,
    pub planned_week: Option<u32>,
    pub gap_days: u32,
    pub recent: Share,
    pub before: Share,
    pub planned: bool,
    pub adherence: progress::Adherence,
    pub changes: Vec<Change>,
    pub microphone: (Microphone, Option<Date>),
    pub clock_wrong: u32,
}

impl Sums {
    pub fn of(found: &Found) -> Self {
        let practices = &found.practised.practices;
        let known_to = found.known_to.unwrap_or(Date::MIN);
        let clock_wrong = practices.iter().filter(|practice| practice.misdated).count();
        let dated_well: Vec<&Practice> = practices.iter().filter(|practice| !practice.misdated).collect();
        let last_day = dated_well.iter().map(|practice| practice.day).max();
        let newest = found.packages.last();
        let newest_made = newest.map(|(_, made)| made.to_zoned_datetime(found.zone()).date());
        let last = dated_well.last();
        let follows_newest = last.zip(newest).and_then(|(last, (id, made))| {
            let followed = last.package.as_ref()?;
            let late = last.began.timestamp().duration_since(*made).as_hours() > TRAVEL_DAYS * 24;
            (followed == id || late).then_some(followed == id)
        });
        let planned_days = last.map(|last| planned_days(practices, last)).unwrap_or_default();
        let adherence = found.adherence();
        let shares = |from: i64, to: i64| -> Share {
            let at = |back: i64| known_to.checked_sub(back.days()).unwrap_or(Date::MIN);
            let days = adherence.days.iter().filter(|day| day.counts() && day.day > at(from) && day.day <= at(to));
            days.map(|day| Share { counted: day.counted_done(), prescribed: day.counted_prescribed() })
                .fold(Share::default(), |sum, one| sum + one)
        };
        let changes = found.window().map(|window| progress::series(&found.practised, window)).unwrap_or_default();
        Self {
            newest_made,
            follows_newest,
            first_day: dated_well.iter().map(|practice| practice.day).min(),
            last_day,
            planned_week: (!planned_days.is_empty()).then(|| u32::try_from(planned_days.len()).unwrap_or(7)),
            gap_days: longest_gap(&planned_days).map_or(UNPLANNED_GAP_DAYS, |gap| 2 * gap),
            recent: shares(RECENT_DAYS, 0),
            before: shares(RECENT_DAYS + BEFORE_DAYS, RECENT_DAYS),
            planned: adherence.days.iter().any(|day| day.basis == PlanBasis::Planned),
            adherence,
            changes: changes.iter().filter_map(Change::of).collect(),
            microphone: microphone(&found.practised.trials, known_to),
            clock_wrong: u32::try_from(clock_wrong).unwrap_or(u32::MAX),
        }
    }
}

/// The days of the week on which a practice is planned by the programme that the latest practice followed.
fn planned_days(practices: &[Practice], last: &Practice) -> BTreeSet<Weekday> {
    let mut texts: BTreeMap<&str, &str> = BTreeMap::new();
    for practice in practices.iter().filter(|practice| practice.package == last.package) {
        texts.insert(&practice.routine_title, &practice.routine_text);
    }
    let plans = texts.values().filter_map(|text| doses_of(text)).flat_map(|prescription| prescription.plan);
    plans.flat_map(|PlannedTime { days, .. }| days).collect()
}

/// The most days from one planned day to the next; none where no days are planned.
fn longest_gap(days: &BTreeSet<Weekday>) -> Option<u32> {
    let number = |day: &Weekday| Weekday::ALL.iter().position(|one| one == day).and_then(|number| u32::try_from(number).ok());
    let numbers: Vec<u32> = days.iter().filter_map(number).collect();
    let first = *numbers.first()?;
    let next = numbers.iter().skip(1).copied().chain([first + 7]);
    numbers.iter().zip(next).map(|(day, next)| next - day).max()
}

/// What bears on levels now, and since when.
fn microphone(trials: &[Trial], known_to: Date) -> (Microphone, Option<Date>) {
    let levels: Vec<&Trial> =
        trials.iter().filter(|trial| !trial.misdated && trial.values.iter().any(|value| value.measure.is_level())).collect();
    let Some(last) = levels.last() else { return (Microphone::Fine, None) };
    let differs = |one: &Conditions| {
        let now = &last.conditions;
        let key = |of: &Conditions| {
            (of.calibration, of.calibration_note.clone(), of.distance_cm.map(f64::to_bits), of.auto_gain, of.level_weighting.clone())
        };
        // A microphone that was not kept before is not another one.
        let other = one
            .microphone
            .as_ref()
            .zip(now.microphone.as_ref())
            .is_some_and(|(one, now)| (&one.system, &one.name, &one.gain) != (&now.system, &now.name, &now.gain));
        other || key(one) != key(now)
    };
    let stretch = levels.iter().rposition(|trial| differs(&trial.conditions));
    let since = levels.get(stretch.map_or(0, |before| before + 1)).map(|trial| trial.day);
    let recent = since.is_some_and(|since| known_to.checked_sub(CHANGE_TOLD_DAYS.days()).is_ok_and(|from| since >= from));
    let state = match last.conditions.calibration {
        _ if last.conditions.auto_gain => Microphone::AutoGain,
        LevelCalibration::Void => Microphone::Void,
        _ if stretch.is_some() && recent => Microphone::Changed,
        LevelCalibration::None => Microphone::Relative,
        _ => Microphone::Fine,
    };
    (state, since)
}

#[cfg(test)]
#[path = "tests/sums.rs"]
mod tests;
