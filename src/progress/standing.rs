//! How goals stand: a goal with a measure is judged by the arithmetic that there is, an activity by people alone.

use super::change::LATEST_WITHIN_DAYS;
use super::goal::{Aim, Goal, MarkKind};
use super::practised::Practised;
use super::series::{Segment, Series, series_of};
use super::window::Window;
use jiff::civil::Date;
use model::{Climbs, LevelCalibration, Measure, TrialKind};
use routine::{CatalogueEntry, Timing};
use serde::Serialize;

/// Why it is too early to say.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum TooEarly {
    /// No trial that counts in the last four weeks.
    NoTrials,
    /// Fewer days than a baseline, latest days and a scatter need.
    FewDays,
    /// The goal is a sound pressure level, and the latest levels are relative or rough.
    NotCalibrated,
    /// The day has not come, and the goal is not met yet.
    BeforeDue,
    /// An activity, and nobody has said.
    NotMarked,
}

/// Why a goal is not met.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum NotMet {
    /// The typical value has not reached the target.
    Short,
    /// It has, but it differs from the baseline by no more than this person's own scatter.
    WithinScatter,
    /// A person said so.
    Marked,
}

/// How a goal stands.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum Standing {
    Met,
    NotMet(NotMet),
    TooEarly(TooEarly),
}

/// A goal and how it stands on a day.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct GoalState {
    pub goal: Goal,
    pub standing: Standing,
    /// Median of the latest days, as a change is judged by; none for an activity, and where it cannot be given.
    pub typical: Option<f64>,
}

/// Every goal that stands on a day, in the order in which they were set.
#[must_use]
pub fn goals(practised: &Practised, today: Date) -> Vec<GoalState> {
    let window = Window { from: Date::MIN, to: today };
    let state = |goal: &Goal| {
        let (standing, typical) = match &goal.aim {
            Some(aim) => judged(aim, goal.due, series_of(practised, &aim.exercise, aim.measure, window).as_ref(), today),
            None => (marked(goal, today), None),
        };
        GoalState { goal: goal.clone(), standing, typical }
    };
    practised.goals.iter().filter(|goal| goal.stands_on(today)).map(state).collect()
}

fn marked(goal: &Goal, today: Date) -> Standing {
    match goal.mark_on(today).map(|mark| mark.kind) {
        Some(MarkKind::Met) => Standing::Met,
        Some(MarkKind::NotMet) => Standing::NotMet(NotMet::Marked),
        Some(MarkKind::Removed) | None if today < goal.due => Standing::TooEarly(TooEarly::BeforeDue),
        Some(MarkKind::Removed) | None => Standing::TooEarly(TooEarly::NotMarked),
    }
}

/// Met: the typical value has reached the target, and it lies further from the baseline, that way, than the smallest change that
/// exceeds this person's own scatter (`change`: Weir 2005). Where that cannot be said, or the day has not come: too early.
fn judged(aim: &Aim, due: Date, series: Option<&Series>, today: Date) -> (Standing, Option<f64>) {
    let early = |why| (Standing::TooEarly(why), None);
    let Some(segment) = series.and_then(|series| series.segments.last()).filter(|segment| is_recent(segment, today)) else {
        return early(TooEarly::NoTrials);
    };
    if aim.measure.is_level() && !is_sound_pressure(segment) {
        return early(TooEarly::NotCalibrated);
    }
    let known = segment.change.and_then(|change| Some((change.latest?, change.from_baseline?, change.exceeds_95?)));
    let Some((typical, from_baseline, exceeds)) = known else { return early(TooEarly::FewDays) };
    let reached = aim.direction.reached(typical, aim.target);
    let standing = match (reached, exceeds && aim.direction.is_towards(from_baseline)) {
        (true, true) => Standing::Met,
        _ if today < due => Standing::TooEarly(TooEarly::BeforeDue),
        (true, false) => Standing::NotMet(NotMet::WithinScatter),
        (false, _) => Standing::NotMet(NotMet::Short),
    };
    (standing, Some(typical))
}

fn is_recent(segment: &Segment, today: Date) -> bool {
    segment.days.last().is_some_and(|last| last.day.duration_until(today).as_hours() / 24 < LATEST_WITHIN_DAYS)
}

/// A number that a phone showed is too rough to be a goal's.
fn is_sound_pressure(segment: &Segment) -> bool {
    matches!(segment.conditions.calibration, LevelCalibration::Meter | LevelCalibration::Source)
}

/// The measures that a goal for this exercise may have. Voice quality is none: a louder voice alone makes its figures better.
#[must_use]
pub fn goal_measures(entry: &CatalogueEntry) -> Vec<Measure> {
    let kind = match entry.timing {
        Timing::Voiced => TrialKind::Hold,
        Timing::Timed => TrialKind::Posture,
        Timing::Paced => TrialKind::Round,
        Timing::Repeated => TrialKind::Repetition,
        Timing::ReadAloud => TrialKind::Phrase,
        Timing::Talk => TrialKind::Talk,
        Timing::Rapid => TrialKind::Syllables,
        Timing::Question if entry.naming => TrialKind::Category,
        Timing::Question => TrialKind::Question,
        Timing::Rest => return Vec::new(),
    };
    let suits = |measure: &Measure| match measure {
        Measure::StepDb => entry.climbs == Some(Climbs::Level),
        Measure::StepSt => entry.climbs == Some(Climbs::Pitch),
        other => entry.climbs.is_none() && !other.is_quality(),
    };
    Measure::followed(kind).filter(suits).collect()
}

#[cfg(test)]
#[path = "tests/standing.rs"]
mod tests;
