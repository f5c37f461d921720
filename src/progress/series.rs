//! One exercise and measure over time, parted where the values may not be joined.

use super::baseline::{Baseline, baseline};
use super::change::{Change, change};
use super::conditions::{Conditions, Microphone};
use super::day_value::DayValue;
use super::discard::Discard;
use super::practised::Practised;
use super::slope::{Slope, sd_about_line, slope};
use super::trial::{Trial, Value};
use super::weeks::{WeekMedian, week_medians};
use super::window::Window;
use jiff::civil::Date;
use model::{LevelCalibration, Measure};
use serde::Serialize;
use statistics::median;
use std::collections::BTreeMap;

/// Why two stretches may not be joined.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[serde(rename_all = "kebab-case", tag = "reason")]
pub enum BreakReason {
    /// So many days without a trial.
    Gap { days: u32 },
    /// Another microphone.
    Microphone { from: String, to: String },
    /// Of a relative level: the microphone's gain was changed.
    Gain { from: String, to: String },
    /// Of a level: what gives it its scale changed.
    Calibration { from: String, to: String },
    /// Of a level: its weighting changed.
    Weighting { from: String, to: String },
    /// Of a level: the distance for which it holds changed; "unknown" where nobody said.
    Distance { from: String, to: String },
}

impl BreakReason {
    /// A few plain words.
    #[must_use]
    pub fn words(&self) -> String {
        match self {
            Self::Gap { days } => format!("{days} days without a trial"),
            Self::Microphone { from, to } => format!("another microphone: \"{to}\", before \"{from}\""),
            Self::Gain { from, to } => format!("the microphone's gain: {to}, before {from}"),
            Self::Calibration { from, to } => format!("what the level stands on: {to}, before {from}"),
            Self::Weighting { from, to } => format!("weighting: {to}, before {from}"),
            Self::Distance { from, to } => format!("distance: {to}, before {from}"),
        }
    }
}

/// Where a series is broken.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Break {
    /// The last day before it and the first behind it. The same day where the microphone was changed between two practices.
    pub before: Date,
    pub after: Date,
    pub reasons: Vec<BreakReason>,
}

/// A stretch within which values may be compared.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Segment {
    /// What parts it from the one before; none for the first.
    pub broken_by: Option<Break>,
    /// Every day of it, also those before the window.
    pub days: Vec<DayValue>,
    /// From its first days, which may lie before the window.
    pub baseline: Option<Baseline>,
    /// Weeks that reach into the window.
    pub weeks: Vec<WeekMedian>,
    /// Over its days in the window; none under five days or within two weeks.
    pub slope: Option<Slope>,
    /// From all its days.
    pub change: Option<Change>,
    /// Those of its last trial; what changed within it without breaking it (distance of a hold time) is told by the trials.
    pub conditions: Conditions,
}

/// One exercise and measure over time.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Series {
    pub exercise: String,
    pub measure: Measure,
    /// Oldest first; those that end before the window are not here.
    pub segments: Vec<Segment>,
    /// Values in the window that stand in no figure, by reason.
    pub discarded: Vec<(Discard, u32)>,
    /// Values in the window that count.
    pub counted: u32,
}

/// Every series that has a value in the window, by exercise in the order in which they were first practised, then measure. What
/// comes behind the window is not looked at.
#[must_use]
pub fn series(practised: &Practised, window: Window) -> Vec<Series> {
    let mut exercises: Vec<&str> = Vec::new();
    let mut by_exercise: BTreeMap<&str, Vec<&Trial>> = BTreeMap::new();
    for trial in practised.trials.iter().filter(|trial| trial.day <= window.to) {
        by_exercise.entry(&trial.exercise).or_insert_with(|| {
            exercises.push(&trial.exercise);
            Vec::new()
        });
        if let Some(trials) = by_exercise.get_mut(trial.exercise.as_str()) {
            trials.push(trial);
        }
    }
    let of = |exercise: &&str| by_exercise.get(*exercise).map(Vec::as_slice).unwrap_or_default();
    exercises
        .iter()
        .flat_map(|exercise| Measure::FOLLOWED.into_iter().filter_map(|measure| one(exercise, measure, of(exercise), window)))
        .collect()
}

/// One series alone, as [`series`] has it.
pub(super) fn series_of(practised: &Practised, exercise: &str, measure: Measure, window: Window) -> Option<Series> {
    let trials: Vec<&Trial> = practised.trials.iter().filter(|trial| trial.day <= window.to && trial.exercise == exercise).collect();
    one(exercise, measure, &trials, window)
}

/// None where the window holds no value.
fn one(exercise: &str, measure: Measure, trials: &[&Trial], window: Window) -> Option<Series> {
    let values: Vec<(&Trial, &Value)> = trials.iter().filter_map(|trial| Some((*trial, trial.value(measure)?))).collect();
    let in_window = || values.iter().filter(|(trial, _)| window.has(trial.day)).map(|(_, value)| value.discard);
    in_window().next()?;
    let of = |why| u32::try_from(in_window().filter(|discard| *discard == why).count()).unwrap_or(u32::MAX);
    let discarded = Discard::ALL.into_iter().map(|why| (why, of(Some(why)))).filter(|(_, count)| *count > 0).collect();
    let counted: Vec<(&Trial, f64)> =
        values.iter().filter(|(_, value)| value.discard.is_none()).map(|(trial, value)| (*trial, value.value)).collect();
    let segments = stretches(measure, &counted).into_iter().filter(|stretch| stretch.days.last().is_some_and(|day| day.day >= window.from));
    Some(Series {
        exercise: exercise.to_owned(),
        measure,
        segments: segments.map(|stretch| segment(stretch, window)).collect(),
        discarded,
        counted: of(None),
    })
}

/// Days that belong together, before anything is worked out of them.
struct Stretch<'a> {
    broken_by: Option<Break>,
    days: Vec<DayValue>,
    last: &'a Trial,
}

/// Parts the values, which are in order, where they may not be joined.
fn stretches<'a>(measure: Measure, counted: &[(&'a Trial, f64)]) -> Vec<Stretch<'a>> {
    let longest = longest_pause(counted);
    let mut stretches: Vec<Stretch<'a>> = Vec::new();
    let mut microphone: Option<&Microphone> = None;
    for (trial, value) in counted {
        let joined = stretches.last_mut().map(|stretch| (breaks(measure, stretch.last, trial, microphone, longest), stretch));
        match joined {
            Some((reasons, stretch)) if reasons.is_empty() => {
                match stretch.days.last_mut().filter(|day| day.day == trial.day) {
                    Some(day) => day.trials.push(*value),
                    None => stretch.days.push(DayValue { day: trial.day, trials: vec![*value], median: *value }),
                }
                stretch.last = trial;
            }
            broken => {
                let broken_by = broken.map(|(reasons, stretch)| Break { before: stretch.last.day, after: trial.day, reasons });
                let day = DayValue { day: trial.day, trials: vec![*value], median: *value };
                stretches.push(Stretch { broken_by, days: vec![day], last: trial });
            }
        }
        // One that is not told has not been changed, for all that is known.
        microphone = trial.conditions.microphone.as_ref().or(microphone);
    }
    for day in stretches.iter_mut().flat_map(|stretch| &mut stretch.days) {
        day.median = median(&day.trials).unwrap_or(day.median);
    }
    stretches
}

/// Why two values that follow each other may not be joined; empty: they may. `microphone`: the last that was told.
fn breaks(measure: Measure, before: &Trial, after: &Trial, microphone: Option<&Microphone>, longest: i64) -> Vec<BreakReason> {
    let mut reasons = Vec::new();
    let pause = before.day.duration_until(after.day).as_hours() / 24;
    if pause > longest {
        reasons.push(BreakReason::Gap { days: u32::try_from(pause - 1).unwrap_or(u32::MAX) });
    }
    let microphones = microphone.zip(after.conditions.microphone.as_ref());
    let other = microphones.filter(|(one, other)| (&one.system, &one.name) != (&other.system, &other.name));
    if let Some((one, other)) = other {
        let (mut from, mut to) = (one.name.clone(), other.name.clone());
        if from == to {
            // The same name in another sound system.
            (from, to) = (format!("{from} ({})", one.system), format!("{to} ({})", other.system));
        }
        reasons.push(BreakReason::Microphone { from, to });
    }
    if measure.is_level() {
        let gains = microphones.filter(|_| other.is_none() && is_relative(before) && is_relative(after));
        if let Some((one, other)) = gains.filter(|(one, other)| one.gain != other.gain) {
            reasons.push(BreakReason::Gain { from: one.gain.clone(), to: other.gain.clone() });
        }
        reasons.extend(level_breaks(before, after));
    }
    reasons
}

/// What a level stands on.
fn level_breaks(before: &Trial, after: &Trial) -> Vec<BreakReason> {
    let mut reasons = Vec::new();
    let (from, to) = (scale(before), scale(after));
    if from != to {
        reasons.push(BreakReason::Calibration { from: from.to_owned(), to: to.to_owned() });
    } else if let (false, Some(from), Some(to)) =
        (is_relative(before), &before.conditions.calibration_note, &after.conditions.calibration_note)
        && from != to
    {
        reasons.push(BreakReason::Calibration { from: from.clone(), to: to.clone() });
    }
    let weighting = |trial: &Trial| {
        let conditions = &trial.conditions;
        let (level, time) = (conditions.level_weighting.as_deref(), conditions.time_weighting.as_deref());
        format!("{}, {}", level.unwrap_or("unknown"), time.unwrap_or("unknown"))
    };
    let (from, to) = (weighting(before), weighting(after));
    if from != to {
        reasons.push(BreakReason::Weighting { from, to });
    }
    // Half a centimetre at 30 is 0.14 dB: nobody measures nearer than that. A calibrated level is given for one distance.
    let distance = |trial: &Trial| trial.conditions.distance_cm;
    let differs = match (distance(before), distance(after)) {
        (Some(one), Some(other)) => (one - other).abs() > 0.5,
        (one, other) => one.is_some() != other.is_some(),
    };
    if differs && from_same_scale(before, after) {
        let words = |cm: Option<f64>| cm.map_or_else(|| "unknown".to_owned(), |cm| format!("{cm} cm"));
        reasons.push(BreakReason::Distance { from: words(distance(before)), to: words(distance(after)) });
    }
    reasons
}

fn from_same_scale(before: &Trial, after: &Trial) -> bool {
    scale(before) == scale(after)
}

fn is_relative(trial: &Trial) -> bool {
    matches!(trial.conditions.calibration, LevelCalibration::None | LevelCalibration::Void)
}

/// A level that is not calibrated and one whose calibration is void are on the same scale: that of the microphone.
fn scale(trial: &Trial) -> &'static str {
    match trial.conditions.calibration {
        LevelCalibration::None | LevelCalibration::Void => "relative",
        LevelCalibration::Meter => "sound level meter",
        LevelCalibration::Source => "known source",
        LevelCalibration::Rough => "a phone's number, rough",
    }
}

/// A longer pause than this between two days breaks the series, days: a whole week without, or three times this person's own
/// rhythm where that is slower, but never more than four weeks; own choice, no source.
fn longest_pause(counted: &[(&Trial, f64)]) -> i64 {
    let mut days: Vec<Date> = counted.iter().map(|(trial, _)| trial.day).collect();
    days.dedup();
    let pauses: Vec<f64> =
        days.iter().zip(days.iter().skip(1)).map(|(one, other)| (one.duration_until(*other).as_hours() / 24) as f64).collect();
    let usual = median(&pauses).unwrap_or(1.0);
    ((3.0 * usual) as i64).clamp(7, 28)
}

fn segment(stretch: Stretch<'_>, window: Window) -> Segment {
    let Stretch { broken_by, days, last } = stretch;
    let from = days.partition_point(|day| day.day < window.from);
    let inside = days.get(from..).unwrap_or_default();
    let baseline = baseline(&days);
    let monday = super::weeks::monday_of(window.from);
    let week_from = days.partition_point(|day| day.day < monday);
    let change = change(&days, sd_about_line(&days), baseline.as_ref());
    Segment {
        broken_by,
        weeks: week_medians(days.get(week_from..).unwrap_or_default()),
        slope: slope(inside),
        change,
        baseline,
        conditions: last.conditions.clone(),
        days,
    }
}

#[cfg(test)]
#[path = "tests/series.rs"]
mod tests;
