//! Under which conditions the figures were taken, and what stands in none.

use std::collections::BTreeMap;

use jiff::civil::Date;
use serde::Serialize;

use super::dose;
use super::terms::{Terms, printable};
use crate::number::number;
use progress::{Conditions, Discard, Measure, Picture, Trial};
use session::LevelCalibration;

/// A condition with its values, a line each.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Condition {
    pub name: String,
    pub lines: Vec<String>,
}

/// What several trials have in common, from when to when.
struct Stretch {
    words: String,
    from: Date,
    to: Date,
    n: u32,
}

/// Trials of the same words together, in the order in which they first came.
fn stretches<'a>(trials: impl Iterator<Item = &'a Trial>, words: impl Fn(&Trial) -> Option<String>) -> Vec<Stretch> {
    let mut all: Vec<Stretch> = Vec::new();
    for trial in trials {
        let Some(words) = words(trial) else { continue };
        match all.iter_mut().find(|known| known.words == words) {
            Some(known) => {
                known.n += 1;
                known.from = known.from.min(trial.day);
                known.to = known.to.max(trial.day);
            }
            None => all.push(Stretch { words, from: trial.day, to: trial.day, n: 1 }),
        }
    }
    all
}

pub(super) fn conditions(picture: &Picture, terms: &Terms<'_>) -> Vec<Condition> {
    let condition = |name: &str, lines: Vec<String>| Condition { name: terms.plain(&format!("report-condition-{name}-shown")), lines };
    let mut all = vec![
        condition("routines", routines(picture, terms)),
        condition("cueing", dose::cueing(picture, terms)),
        condition("trials", trials(picture, terms)),
        condition("discarded", discarded(picture, terms)),
        condition("best", best(picture, terms)),
        condition("microphone", microphones(picture, terms)),
        condition("level", levels(picture, terms)),
        condition("calibration", calibrations(picture)),
        condition("software", software(picture)),
        condition("method", vec![terms.plain("report-condition-method-value-shown")]),
    ];
    all.retain(|condition| !condition.lines.is_empty());
    all
}

fn trials(picture: &Picture, terms: &Terms<'_>) -> Vec<String> {
    let told = terms.text("report-condition-trials-value-shown", &[("n", picture.trials.len().into())]);
    if picture.trials.is_empty() { Vec::new() } else { vec![told] }
}

fn routines(picture: &Picture, terms: &Terms<'_>) -> Vec<String> {
    let mut all: Vec<(&str, u32, Date, Date)> = Vec::new();
    for practice in &picture.practices {
        match all.iter_mut().find(|(title, ..)| *title == practice.routine_title) {
            Some((_, n, from, to)) => (*n, *from, *to) = (*n + 1, (*from).min(practice.day), (*to).max(practice.day)),
            None => all.push((&practice.routine_title, 1, practice.day, practice.day)),
        }
    }
    let line = |(title, n, from, to): (&str, u32, Date, Date)| {
        let given = [("routine", printable(title).into()), ("n", n.into()), ("span", terms.span(from, to).into())];
        terms.text("report-condition-routine-value-shown", &given)
    };
    all.into_iter().map(line).collect()
}

/// How many trials of each exercise have a value that stands in no figure, by reason.
fn discarded(picture: &Picture, terms: &Terms<'_>) -> Vec<String> {
    if picture.trials.is_empty() {
        return Vec::new();
    }
    if picture.discarded.is_empty() {
        return vec![terms.plain("report-condition-discarded-none-shown")];
    }
    let mut exercises: Vec<&str> = Vec::new();
    for trial in &picture.trials {
        if !exercises.contains(&trial.exercise.as_str()) {
            exercises.push(&trial.exercise);
        }
    }
    let name = |why: Discard| {
        serde_json::to_value(why).ok().and_then(|name| name.as_str().map(str::to_owned)).unwrap_or_else(|| why.words().to_owned())
    };
    let line = |exercise: &str| {
        let of = |why: Discard| {
            picture
                .trials
                .iter()
                .filter(|trial| trial.exercise == exercise && trial.values.iter().any(|value| value.discard == Some(why)))
                .count()
        };
        let counted = Discard::ALL.into_iter().map(|why| (why, of(why))).filter(|(_, n)| *n > 0);
        let list: Vec<String> = counted
            .map(|(why, n)| terms.text("report-counted-shown", &[("what", terms.why(&name(why)).into()), ("n", n.into())]))
            .collect();
        let given = [("exercise", terms.exercise(exercise).into()), ("list", list.join(", ").into())];
        (!list.is_empty()).then(|| terms.text("report-condition-discarded-value-shown", &given))
    };
    exercises.into_iter().filter_map(line).collect()
}

/// The latest best of three of each exercise, with all three.
fn best(picture: &Picture, terms: &Terms<'_>) -> Vec<String> {
    let mut latest: BTreeMap<&str, &progress::BestOfThree> = BTreeMap::new();
    for best in picture.best_of_three.iter().filter(|best| best.measure == Measure::HoldS) {
        latest.insert(&best.exercise, best);
    }
    let line = |best: &progress::BestOfThree| {
        let decimals = best.measure.decimals();
        let trials = best.trials.iter().map(|trial| terms.figure(number(*trial, decimals))).collect::<Vec<_>>().join(", ");
        let given = [
            ("exercise", terms.exercise(&best.exercise).into()),
            ("best", terms.value(best.measure, best.best).into()),
            ("trials", trials.into()),
            ("date", terms.date(best.day).into()),
        ];
        terms.text("report-condition-best-value-shown", &given)
    };
    latest.into_values().map(line).collect()
}

fn microphones(picture: &Picture, terms: &Terms<'_>) -> Vec<String> {
    // The words are made once for each microphone; what tells them apart is made for each trial.
    let known = stretches(picture.trials.iter(), |trial| {
        let microphone = trial.conditions.microphone.as_ref();
        Some(microphone.map_or_else(String::new, |m| format!("{}\u{0}{}\u{0}{}\u{0}{}", m.name, m.system, m.rate_hz, m.gain)))
    });
    let line = |stretch: &Stretch| {
        let span = ("span", terms.span(stretch.from, stretch.to).into());
        let n = ("n", stretch.n.into());
        let parts: Vec<&str> = stretch.words.split('\u{0}').collect();
        match parts[..] {
            [name, system, rate, gain] => terms.text(
                "report-condition-microphone-value-shown",
                &[
                    ("name", printable(name).into()),
                    ("system", printable(system).into()),
                    ("rate", rate.into()),
                    ("gain", printable(gain).into()),
                    span,
                    n,
                ],
            ),
            _ => terms.text("report-condition-microphone-unknown-shown", &[span, n]),
        }
    };
    known.iter().map(line).collect()
}

fn levels(picture: &Picture, terms: &Terms<'_>) -> Vec<String> {
    let with_level = picture.trials.iter().filter(|trial| trial.values.iter().any(|value| value.measure.is_level()));
    // What a level refers to differs seldom; it is put into words once for each kind.
    let mut kinds: Vec<(&Conditions, Stretch)> = Vec::new();
    for trial in with_level {
        match kinds.iter_mut().find(|(known, _)| same_terms(known, &trial.conditions)) {
            Some((_, stretch)) => {
                stretch.n += 1;
                stretch.from = stretch.from.min(trial.day);
                stretch.to = stretch.to.max(trial.day);
            }
            None => kinds.push((&trial.conditions, Stretch { words: String::new(), from: trial.day, to: trial.day, n: 1 })),
        }
    }
    let line = |(of, stretch): (&Conditions, Stretch)| {
        let unit = terms.unit(Measure::LevelDb, of.calibration);
        let time = of.time_weighting.as_ref().map(|time| match time.as_str() {
            "energy-mean" => terms.plain("report-time-energy-mean-shown"),
            other => printable(other),
        });
        let all = [Some(terms.level_terms(of)), time, Some(calibration(of.calibration, terms))];
        let given = [
            ("unit", unit.into()),
            ("terms", all.into_iter().flatten().collect::<Vec<_>>().join(", ").into()),
            ("span", terms.span(stretch.from, stretch.to).into()),
            ("n", stretch.n.into()),
        ];
        terms.text("report-condition-level-value-shown", &given)
    };
    kinds.into_iter().map(line).collect()
}

fn same_terms(one: &Conditions, other: &Conditions) -> bool {
    let of = |conditions: &Conditions| {
        (
            conditions.level_weighting.clone(),
            conditions.time_weighting.clone(),
            conditions.distance_cm.map(f64::to_bits),
            conditions.calibration,
        )
    };
    of(one) == of(other)
}

pub(super) fn calibration(calibration: LevelCalibration, terms: &Terms<'_>) -> String {
    let name = match calibration {
        LevelCalibration::None => "none",
        LevelCalibration::Void => "void",
        LevelCalibration::Meter => "meter",
        LevelCalibration::Source => "source",
        LevelCalibration::Rough => "rough",
    };
    terms.plain(&format!("report-calibration-{name}-shown"))
}

/// The calibrations in the record's own words.
fn calibrations(picture: &Picture) -> Vec<String> {
    let mut all: Vec<String> = Vec::new();
    for note in picture.trials.iter().filter_map(|trial| trial.conditions.calibration_note.as_ref()) {
        if !all.contains(note) {
            all.push(note.clone());
        }
    }
    all.iter().map(|note| note.split_whitespace().collect::<Vec<_>>().join(" ")).collect()
}

fn software(picture: &Picture) -> Vec<String> {
    let mut all: Vec<String> = picture.practices.iter().map(|practice| printable(&practice.software)).collect();
    all.sort();
    all.dedup();
    if all.is_empty() { all } else { vec![all.join(", ")] }
}
