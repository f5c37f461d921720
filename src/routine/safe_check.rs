//! What the fields of a routine add up to, against the limits that join them: every step by itself, an exercise over all its
//! steps, the rests between efforts, a day, the whole.
//!
//! A ramped step counts with the largest of its stages, for that is where it leads.

use std::collections::{BTreeMap, BTreeSet};
use std::ops::Range;

use super::amount::Amount;
use super::bound::{Bound, Severity};
use super::catalogue::find;
use super::clinician::ClinicianWords;
use super::effort::Efforts;
use super::fault::{FaultKind, Finder};
use super::file::{At, RoutineFile, StepFile};
use super::plan::{PlannedTime, Weekday};
use super::posture::rise_s;
use super::prescribed::{Step, Work};
use super::ramp::Ramp;
use super::safe::{safe_dose, safe_practice};

/// A step with its places in the text.
pub(super) struct PlacedStep<'f> {
    typed: &'f At<StepFile>,
    /// The step, or each of its stages, with the place that says its dose.
    stages: Vec<(Step, Range<usize>)>,
}

impl<'f> PlacedStep<'f> {
    pub fn new(typed: &'f At<StepFile>, built: &Step, ramp: Option<&Ramp>) -> Self {
        let step = &typed.value;
        let field = step.repetitions.as_ref().map(|at| &at.span).or(step.sets.as_ref().map(|at| &at.span));
        let place = field.or(step.exercise.as_ref().map(|at| &at.span)).unwrap_or(&typed.span).clone();
        let given = step.ramp.as_ref().and_then(|ramp| ramp.value.stages.as_ref()).map_or(&[][..], |stages| &stages.value);
        let stages = match ramp {
            Some(ramp) => ramp.stages.iter().zip(given).map(|(stage, at)| (stage.clone(), at.span.clone())).collect(),
            None => vec![(built.clone(), place)],
        };
        Self { typed, stages }
    }

    fn id(&self) -> &str {
        self.stages.first().map_or("", |(step, _)| step.exercise.id.as_str())
    }

    /// The largest of its stages, and where it stands.
    fn most(&self, of: impl Fn(Amount) -> f64) -> Option<(&Step, &Range<usize>)> {
        let larger = |a: &&(Step, Range<usize>), b: &&(Step, Range<usize>)| of(a.0.amount()).total_cmp(&of(b.0.amount()));
        self.stages.iter().max_by(larger).map(|(step, place)| (step, place))
    }

    fn exercise_place(&self) -> Range<usize> {
        self.typed.value.exercise.as_ref().map_or(self.typed.span.clone(), |at| at.span.clone())
    }

    /// Where the rest between holds is said, else the dose.
    fn rest_place(&self, stage: usize) -> Range<usize> {
        let step = &self.typed.value;
        let said = step.rest_s.as_ref().or(step.set_rest_s.as_ref()).map(|at| at.span.clone());
        said.or(self.stages.get(stage).map(|(_, place)| place.clone())).unwrap_or(self.typed.span.clone())
    }
}

/// Notes everything that goes past a limit.
pub(super) fn check(file: &RoutineFile, steps: &[PlacedStep<'_>], words: &ClinicianWords, plan: &[PlannedTime], faults: &mut Finder<'_>) {
    for step in steps {
        for (stage, place) in &step.stages {
            one_repetition(stage, step.typed, place, words, faults);
        }
    }
    rests(steps, words, faults);
    let a_day = most_a_day(plan);
    totals(steps, words, a_day, faults);
    whole(file, steps, words, a_day, faults);
}

/// A finding, with how much it asks for and what may be done about it.
struct Finding<'a> {
    place: Range<usize>,
    what: String,
    /// "Give fewer counts": a clause that begins the remedy.
    remedy: String,
    severity: Severity,
    bound: &'a Bound,
    /// Where the clinician's word belongs.
    word_in: &'static str,
}

fn note(finding: Finding<'_>, word: bool, faults: &mut Finder<'_>) {
    let Finding { place, what, remedy, severity, bound, word_in } = finding;
    let reason = bound.reason();
    match severity {
        Severity::Refused => {
            let remedy = format!("{remedy}. Nobody can lift this limit. Why: {reason}.");
            faults.add(FaultKind::PastLimit, place, what, remedy);
        }
        Severity::NeedsWord if !word => {
            let what = format!("{what}, which needs the clinician's word");
            let remedy = format!(
                "{remedy}, or add what the client's own clinician said {word_in}: `clinician_word = {{ who = \"…\", why = \"…\" }}`. Why: {reason}."
            );
            faults.add(FaultKind::NeedsClinicianWord, place, what, remedy);
        }
        Severity::NeedsWord | Severity::Allowed => {}
    }
}

const IN_STEP: &str = "in the step";
const AT_TOP: &str = "at the top of the file";

/// 12.5, 3, 0.25.
fn plain(value: f64) -> String {
    format!("{}", (value * 100.0).round() / 100.0)
}

/// The end that was passed, as it is said.
fn end_of(bound: &Bound, severity: Severity) -> String {
    plain(bound.in_force(severity == Severity::Refused))
}

fn one_repetition(step: &Step, typed: &At<StepFile>, place: &Range<usize>, words: &ClinicianWords, faults: &mut Finder<'_>) {
    let id = step.exercise.id.as_str();
    let Some(safe) = safe_dose(id) else { return };
    let word = words.lift(id);
    if let (Some(breath), Work::Paced { phases, beat_s }) = (step.breath(), &step.work) {
        let counts = |name: &str| phases.iter().filter(|phase| phase.name == name).map(|phase| phase.counts).sum::<u32>();
        let file = &typed.value;
        let field = |at: Option<Range<usize>>| at.or(file.beat_s.as_ref().map(|at| at.span.clone())).unwrap_or(place.clone());
        let counted_out = field(file.counts_out.as_ref().map(|at| at.span.clone()));
        let breaths = [
            ("in", &safe.breath_in_s, breath.in_s, field(file.counts_in.as_ref().map(|at| at.span.clone()))),
            ("out", &safe.breath_out_s, breath.out_s, counted_out.clone()),
        ];
        // A stage of a ramp says its own counts.
        let place_of = |own: Range<usize>| if step.ramp_stage.is_some() { place.clone() } else { own };
        for (name, bound, seconds, own) in breaths {
            let Some(bound) = bound else { continue };
            let severity = bound.at_most(seconds);
            let what = format!(
                "a breath {name} of `{id}` takes {} s ({} counts of {} s), more than {} s",
                plain(seconds),
                counts(name),
                plain(*beat_s),
                end_of(bound, severity)
            );
            let remedy = "Give fewer counts or a shorter beat".to_owned();
            note(Finding { place: place_of(own), what, remedy, severity, bound, word_in: IN_STEP }, word, faults);
        }
        if let Some(bound) = &safe.breath_s {
            let severity = bound.at_most(breath.whole_s);
            let what = format!("a whole breath of `{id}` takes {} s, more than {} s", plain(breath.whole_s), end_of(bound, severity));
            let remedy = "Give fewer counts or a shorter beat".to_owned();
            note(Finding { place: place_of(counted_out.clone()), what, remedy, severity, bound, word_in: IN_STEP }, word, faults);
        }
        if let Some(bound) = &safe.breath_least_s {
            let severity = bound.at_least(breath.whole_s);
            let what = format!("a whole breath of `{id}` takes {} s, less than {} s", plain(breath.whole_s), end_of(bound, severity));
            let remedy = "Give more counts or a longer beat".to_owned();
            note(Finding { place: place_of(counted_out), what, remedy, severity, bound, word_in: IN_STEP }, word, faults);
        }
    }
    if let (Some(bound), Work::Timed { .. }) = (&safe.hold_s, &step.work) {
        let held_s = step.one().seconds;
        let severity = bound.at_most(held_s);
        let what = format!(
            "one repetition of `{id}` is held for {} s, all phases together, more than {} s",
            plain(held_s),
            end_of(bound, severity)
        );
        let own = typed.value.phases.as_ref().filter(|_| step.ramp_stage.is_none()).map_or(place.clone(), |at| at.span.clone());
        let remedy = "Give shorter or fewer phases".to_owned();
        note(Finding { place: own, what, remedy, severity, bound, word_in: IN_STEP }, word, faults);
    }
}

/// An effort that comes too soon.
struct TooSoon {
    step: usize,
    stage: usize,
    missing_s: f64,
    /// The rest there is before it, s.
    rest_s: f64,
    /// Between two repetitions of one step.
    within: bool,
}

/// Follows the routine from effort to effort, in the time that is certain to pass, and finds those that come too soon.
fn rests(steps: &[PlacedStep<'_>], words: &ClinicianWords, faults: &mut Finder<'_>) {
    let key = |found: &TooSoon| (found.step, found.within);
    let hardest = too_soon(steps, &|_| true);
    let refused: BTreeSet<usize> = hardest.iter().map(|found| found.step).collect();
    // Of each step the one that lacks most: who mends that has mended all of it.
    let mut worst: BTreeMap<_, TooSoon> = BTreeMap::new();
    for found in too_soon(steps, &|id| words.lift(id)).into_iter().chain(hardest) {
        let lacks_more = worst.get(&key(&found)).is_none_or(|before| found.missing_s > before.missing_s);
        if lacks_more {
            worst.insert(key(&found), found);
        }
    }
    for found in worst.into_values() {
        let Some(step) = steps.get(found.step) else { continue };
        let id = step.id();
        let Some(safe) = safe_dose(id) else { continue };
        let Some(bound) = safe.in_a_row.as_ref().map(|row| &row.most).or(safe.rest_per_hold.as_ref()) else { continue };
        // Where another exercise of the group comes next, a practice rests first by itself, and says so. The same exercise once more is
        // one dose cut in pieces.
        let before =
            steps.iter().take(found.step).rev().find(|before| safe_dose(before.id()).is_some_and(|other| other.group == safe.group));
        if !found.within && before.is_some_and(|before| before.id() != id) {
            continue;
        }
        let severity = if refused.contains(&found.step) { Severity::Refused } else { Severity::NeedsWord };
        let (end, missing_s) = (end_of(bound, severity), plain(found.missing_s.ceil()));
        let place = if found.within { step.rest_place(found.stage) } else { step.exercise_place() };
        // The remedy is one that needs no word, so that nobody has to mend it twice.
        let (what, remedy) = match (&safe.in_a_row, found.within) {
            (Some(row), true) => {
                let (most, rest_s) = (plain(bound.in_force(words.lift(id))), plain(row.rest_s));
                (
                    format!("`{id}` asks for more than {end} in a row without a rest of {rest_s} s"),
                    format!("Make sets of at most {most} with `set_rest_s = {rest_s}`"),
                )
            }
            (None, true) => {
                let needed_s = plain((found.rest_s + found.missing_s).ceil());
                (
                    format!("the rest between the holds of `{id}` is {} s, less than {end} times the hold", plain(found.rest_s)),
                    format!("Give `rest_s` and `set_rest_s` of {needed_s} or more, or shorter holds"),
                )
            }
            (_, false) => (
                format!("`{id}` begins {missing_s} s too soon after the effort in the step before"),
                format!("Put a step `rest` with `length_s = {missing_s}` or more between them"),
            ),
        };
        note(Finding { place, what, remedy, severity, bound, word_in: IN_STEP }, false, faults);
    }
}

fn too_soon(steps: &[PlacedStep<'_>], lifted: &dyn Fn(&str) -> bool) -> Vec<TooSoon> {
    let mut found = Vec::new();
    let (mut efforts, mut now_s, mut posture) = (Efforts::default(), 0.0, None);
    for (number, step) in steps.iter().enumerate() {
        let own = step.stages.first().and_then(|(dose, _)| dose.posture);
        now_s += rise_s(posture, own);
        posture = own.or(posture);
        // Each stage is followed from the same moment; the routine goes on behind the one that leaves the least rest.
        let followed: Vec<(Efforts, f64)> = step
            .stages
            .iter()
            .enumerate()
            .map(|(stage, (dose, _))| {
                let (mut efforts, mut now_s) = (efforts.clone(), now_s);
                follow(dose, &mut efforts, &mut now_s, lifted, |missing_s, rest_s, within| {
                    found.push(TooSoon { step: number, stage, missing_s, rest_s, within });
                });
                (efforts, now_s)
            })
            .collect();
        let tired = |(efforts, now_s): &(Efforts, f64)| efforts.rest_before_s(step.id(), lifted(step.id()), *now_s);
        if let Some(hardest) = followed.into_iter().max_by(|a, b| tired(a).total_cmp(&tired(b))) {
            (efforts, now_s) = hardest;
        }
    }
    found
}

/// One step, repetition by repetition. `found` hears by how much one comes too soon, the rest there is, and whether it follows one of
/// the same step.
fn follow(step: &Step, efforts: &mut Efforts, now_s: &mut f64, lifted: &dyn Fn(&str) -> bool, mut found: impl FnMut(f64, f64, bool)) {
    let id = step.exercise.id.as_str();
    let (word, one) = (lifted(id), step.one());
    let certain_s = match &step.work {
        Work::Timed { .. } | Work::Paced { .. } => one.seconds,
        Work::Repeated { next_cue_after_s, .. } => next_cue_after_s.unwrap_or(0.0),
        Work::Rest { length_s } => length_s.unwrap_or(0.0),
        _ => 0.0,
    };
    for turn in 0..step.sets.saturating_mul(step.repetitions) {
        let rest_s = match turn % step.repetitions.max(1) {
            _ if turn == 0 => 0.0,
            0 => step.set_rest_s,
            _ => step.rest_s,
        };
        *now_s += rest_s;
        let missing_s = efforts.rest_before_s(id, word, *now_s);
        // A millisecond is no rest.
        if missing_s > 1e-3 {
            found(missing_s, rest_s, turn > 0);
            *now_s += missing_s;
        }
        efforts.begins(id, *now_s);
        *now_s += certain_s;
        efforts.ended(id, word, one.seconds, *now_s);
    }
}

/// How often a day it is planned at most; once where nothing is planned.
fn most_a_day(plan: &[PlannedTime]) -> u32 {
    let on = |day: &Weekday| plan.iter().filter(|time| time.days.contains(day)).count();
    u32::try_from(Weekday::ALL.iter().map(on).max().unwrap_or(0)).unwrap_or(u32::MAX).max(1)
}

/// Each exercise over all its steps, in one practice and in one day.
fn totals(steps: &[PlacedStep<'_>], words: &ClinicianWords, a_day: u32, faults: &mut Finder<'_>) {
    let mut by_id: BTreeMap<&str, Vec<&PlacedStep<'_>>> = BTreeMap::new();
    for step in steps {
        by_id.entry(step.id()).or_default().push(step);
    }
    for (id, steps) in by_id {
        let Some(safe) = safe_dose(id) else { continue };
        let kinds: [(&str, &Option<Bound>, &Option<Bound>, &dyn Fn(Amount) -> f64); 2] = [
            ("times", &safe.times, &safe.day_times, &|amount| f64::from(amount.times)),
            ("s", &safe.seconds, &safe.day_seconds, &|amount| amount.seconds),
        ];
        for (unit, practice, day, of) in kinds {
            let (mut total, mut place) = (0.0, 0..0);
            let mut past = None;
            for step in &steps {
                let Some((most, at)) = step.most(of) else { continue };
                total += of(most.amount());
                if past.is_none() && practice.as_ref().is_some_and(|bound| bound.at_most(total) != Severity::Allowed) {
                    past = Some(at.clone());
                }
                place = at.clone();
            }
            let over = if steps.len() > 1 { format!(", over {} steps", steps.len()) } else { String::new() };
            let remedy = || "Ask for fewer or shorter repetitions, or fewer sets".to_owned();
            let mut told = false;
            if let Some(bound) = practice {
                let severity = bound.at_most(total);
                told = severity != Severity::Allowed;
                let what =
                    format!("`{id}` adds up to {} {unit} in one practice{over}, more than {}", plain(total), end_of(bound, severity));
                let place = past.unwrap_or(place.clone());
                note(Finding { place, what, remedy: remedy(), severity, bound, word_in: IN_STEP }, words.lift(id), faults);
            }
            if let Some(bound) = day.as_ref().filter(|_| a_day > 1 || !told) {
                let total = total * f64::from(a_day);
                let severity = bound.at_most(total);
                let what = format!(
                    "`{id}` adds up to {} {unit} in one day, in {a_day} practices{over}, more than {}",
                    plain(total),
                    end_of(bound, severity)
                );
                note(Finding { place, what, remedy: remedy(), severity, bound, word_in: IN_STEP }, words.lift(id), faults);
            }
        }
    }
}

/// Length, practices a day, loud holds.
fn whole(file: &RoutineFile, steps: &[PlacedStep<'_>], words: &ClinicianWords, a_day: u32, faults: &mut Finder<'_>) {
    let Some(practice) = safe_practice() else { return };
    let word = words.whole.is_some();
    let top = file.title.as_ref().map_or(0..0, |at| at.span.clone());
    let longest: Vec<Step> = steps.iter().filter_map(|step| longest(step).cloned()).collect();
    let length_s = super::duration::planned_s(&longest);
    let severity = practice.length_s.at_most(length_s);
    let minutes = |seconds: f64| plain((seconds / 60.0).round());
    let what = format!(
        "the whole practice is planned for {} min, more than {} min",
        minutes(length_s),
        minutes(practice.length_s.in_force(severity == Severity::Refused))
    );
    let remedy = "Take out steps, or ask for less in them".to_owned();
    note(Finding { place: top.clone(), what, remedy, severity, bound: &practice.length_s, word_in: AT_TOP }, word, faults);
    let severity = practice.a_day.at_most(f64::from(a_day));
    let what = format!("the plan has {a_day} practices in one day, more than {}", end_of(&practice.a_day, severity));
    let place = file.plan.as_ref().map_or(top.clone(), |plan| plan.span.clone());
    let remedy = "Plan fewer".to_owned();
    note(Finding { place, what, remedy, severity, bound: &practice.a_day, word_in: AT_TOP }, word, faults);
    loud(file, steps, word, a_day, &top, faults);
}

fn longest<'s>(step: &'s PlacedStep<'_>) -> Option<&'s Step> {
    let stages = step.stages.iter().map(|(step, _)| step);
    stages.max_by(|a, b| a.planned_duration_s().total_cmp(&b.planned_duration_s()))
}

fn loud(file: &RoutineFile, steps: &[PlacedStep<'_>], word: bool, a_day: u32, top: &Range<usize>, faults: &mut Finder<'_>) {
    let Some(practice) = safe_practice() else { return };
    // A soft wind-down is voiced and not loud.
    let soft = |step: &Step| find(&step.exercise.id).is_some_and(|entry| entry.soft);
    let is_loud = |step: &&PlacedStep<'_>| step.stages.iter().any(|(step, _)| matches!(step.work, Work::Voiced { .. }) && !soft(step));
    let most = steps.iter().filter(is_loud).filter_map(|step| step.most(|amount| amount.seconds));
    let (mut asked_s, mut place) = (0.0, top.clone());
    for (step, at) in most {
        asked_s += step.amount().seconds;
        place = at.clone();
    }
    let severity = practice.loud_s.at_most(asked_s);
    let what = format!("loud holds add up to about {} s in one practice, more than {}", plain(asked_s), end_of(&practice.loud_s, severity));
    let remedy = "Ask for fewer or shorter holds".to_owned();
    let told = severity != Severity::Allowed;
    note(Finding { place: place.clone(), what, remedy, severity, bound: &practice.loud_s, word_in: AT_TOP }, word, faults);
    if let Some(limit) = file.loud_limit_s.as_ref().filter(|limit| practice.loud_s.at_most(limit.value) == Severity::NeedsWord) {
        let what =
            format!("`loud_limit_s` allows {} s of loud holds, more than {}", plain(limit.value), plain(practice.loud_s.in_force(false)));
        let remedy = "Give a smaller limit".to_owned();
        let (severity, bound) = (Severity::NeedsWord, &practice.loud_s);
        note(Finding { place: limit.span.clone(), what, remedy, severity, bound, word_in: AT_TOP }, word, faults);
    }
    if a_day > 1 || !told {
        let day_s = asked_s * f64::from(a_day);
        let severity = practice.loud_day_s.at_most(day_s);
        let what = format!(
            "loud holds add up to about {} s in one day, in {a_day} practices, more than {}",
            plain(day_s),
            end_of(&practice.loud_day_s, severity)
        );
        let remedy = "Ask for fewer or shorter holds, or plan fewer practices".to_owned();
        note(Finding { place, what, remedy, severity, bound: &practice.loud_day_s, word_in: AT_TOP }, word, faults);
    }
}

#[cfg(test)]
#[path = "tests/safe_check.rs"]
mod tests;
