//! Baselines and re-tests: what each task gave, and whether a re-test differs by more than the person's own scatter.

use super::conditions::Conditions;
use super::practised::Practised;
use super::series::series;
use super::window::Window;
use jiff::ZonedDateTime;
use jiff::civil::Date;
use model::Measure;
use serde::Serialize;
use statistics::median;

/// How the trials of one task make one value.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum Taken {
    /// The largest of the trials: what a test of the most asks for.
    Best,
    /// The middle one.
    Median,
}

/// What a baseline reads off its tasks, in this order.
const READ: [(&str, Measure, Taken); 14] = [
    ("long-ah", Measure::HoldS, Taken::Best),
    ("comfortable-ah", Measure::F0MedianHz, Taken::Median),
    ("comfortable-ah", Measure::F0SdSt, Taken::Median),
    ("comfortable-ah", Measure::LevelDb, Taken::Median),
    ("glide-up", Measure::F0SpanSt, Taken::Best),
    ("glide-down", Measure::F0SpanSt, Taken::Best),
    ("reading-passage", Measure::TalkLevelDb, Taken::Median),
    ("reading-passage", Measure::TalkF0Hz, Taken::Median),
    ("reading-passage", Measure::PauseSharePct, Taken::Median),
    ("talk-on-a-prompt", Measure::TalkLevelDb, Taken::Median),
    ("talk-on-a-prompt", Measure::TalkF0Hz, Taken::Median),
    ("talk-on-a-prompt", Measure::PauseSharePct, Taken::Median),
    ("syllable-repetition", Measure::SyllableRateHz, Taken::Best),
    ("syllable-repetition", Measure::SyllableIrregularityPct, Taken::Median),
];

/// One figure of a baseline.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Reading {
    pub exercise: String,
    pub measure: Measure,
    pub taken: Taken,
    pub value: f64,
    /// Those that count, in their order.
    pub trials: Vec<f64>,
    /// Trials that were made and do not count.
    pub discarded: u32,
    pub conditions: Conditions,
}

/// One baseline or re-test.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Assessment {
    /// Its number in the record.
    pub session: i64,
    pub began: ZonedDateTime,
    /// Its date cannot be believed.
    pub misdated: bool,
    /// Every task was made.
    pub whole: bool,
    pub readings: Vec<Reading>,
}

/// How a re-test stands beside the first baseline.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
#[serde(rename_all = "kebab-case", tag = "kind")]
pub enum Compared {
    /// Made under other conditions: the two may not be set beside each other.
    OtherConditions,
    /// How far the person's own values scatter is not known; it comes from days of practice with the same exercise.
    ScatterUnknown {
        difference: f64,
    },
    /// `mdc95`: the smallest change that exceeds the person's own scatter (Weir 2005), from practice.
    Within {
        difference: f64,
        mdc95: f64,
    },
    Beyond {
        difference: f64,
        mdc95: f64,
    },
}

/// One figure over all baselines.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct BaselineFigure {
    /// As it was measured first, and on which day.
    pub first: Reading,
    pub first_on: Date,
    /// As it was measured last, where that was another time.
    pub latest: Option<(Date, Reading)>,
    /// How the two differ.
    pub compared: Option<Compared>,
}

/// Every figure that a baseline gave, first and latest.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Baselines {
    pub figures: Vec<BaselineFigure>,
    /// The days of all, oldest first, and whether every task was made.
    pub led: Vec<(Date, bool)>,
}

/// What all baselines up to `today` tell together; none where none was led. One whose date cannot be believed is left out.
#[must_use]
pub fn baselines(assessed: &Practised, practised: &Practised, today: Date) -> Option<Baselines> {
    let mut all = assessments(assessed);
    all.retain(|one| !one.misdated && one.began.date() <= today);
    let figure = |(exercise, measure, _): &(&str, Measure, Taken)| {
        let of =
            |one: &Assessment| one.readings.iter().find(|reading| reading.exercise == *exercise && reading.measure == *measure).cloned();
        let (first_at, first) = all.iter().enumerate().find_map(|(n, one)| Some((n, of(one)?)))?;
        let found = all.iter().enumerate().rev().find_map(|(n, one)| Some((n, of(one)?)));
        let latest = found.filter(|(n, _)| *n != first_at);
        let (one, first_on) = (all.get(first_at)?, all.get(first_at)?.began.date());
        let compared = latest.as_ref().and_then(|(_, latest)| compared(latest, one, practised, today));
        let latest = latest.and_then(|(n, latest)| Some((all.get(n)?.began.date(), latest)));
        Some(BaselineFigure { first, first_on, latest, compared })
    };
    let figures: Vec<BaselineFigure> = READ.iter().filter_map(figure).collect();
    (!figures.is_empty()).then(|| Baselines { figures, led: all.iter().map(|one| (one.began.date(), one.whole)).collect() })
}

/// Every baseline and re-test, oldest first.
#[must_use]
pub fn assessments(assessed: &Practised) -> Vec<Assessment> {
    let of = |practice: &super::practised::Practice| Assessment {
        session: practice.session,
        began: practice.began.clone(),
        misdated: practice.misdated,
        whole: practice.end_reason.as_deref() == Some("completed"),
        readings: READ
            .iter()
            .filter_map(|(exercise, measure, taken)| reading(assessed, practice.session, exercise, *measure, *taken))
            .collect(),
    };
    assessed.practices.iter().map(of).collect()
}

fn reading(assessed: &Practised, session: i64, exercise: &str, measure: Measure, taken: Taken) -> Option<Reading> {
    let made: Vec<_> = assessed.trials.iter().filter(|trial| trial.session == session && trial.exercise == exercise).collect();
    let values = || made.iter().filter_map(|trial| Some((*trial, trial.value(measure)?)));
    let trials: Vec<f64> = values().filter(|(_, value)| value.discard.is_none()).map(|(_, value)| value.value).collect();
    let value = match taken {
        Taken::Best => trials.iter().copied().max_by(f64::total_cmp)?,
        Taken::Median => median(&trials)?,
    };
    let discarded = u32::try_from(made.len() - trials.len()).unwrap_or(u32::MAX);
    let conditions = values().next_back().map(|(trial, _)| trial.conditions.clone())?;
    Some(Reading { exercise: exercise.to_owned(), measure, taken, value, trials, discarded, conditions })
}

/// A re-test beside the first baseline that has the same figure; none where there is none. `practised`: the person's practices up to
/// `today`, whose days tell the scatter.
#[must_use]
pub fn compared(reading: &Reading, first: &Assessment, practised: &Practised, today: Date) -> Option<Compared> {
    let before = first.readings.iter().find(|before| before.exercise == reading.exercise && before.measure == reading.measure)?;
    if reading.measure.is_level() && !alike(&before.conditions, &reading.conditions) {
        return Some(Compared::OtherConditions);
    }
    let difference = reading.value - before.value;
    let window = Window { from: Date::MIN, to: today };
    let all = series(practised, window);
    let of_this = all.iter().find(|series| series.exercise == reading.exercise && series.measure == reading.measure);
    let mdc95 = of_this.and_then(|series| series.segments.last()?.change).map(|change| change.mdc95);
    Some(match mdc95 {
        None => Compared::ScatterUnknown { difference },
        Some(mdc95) if difference.abs() > mdc95 => Compared::Beyond { difference, mdc95 },
        Some(mdc95) => Compared::Within { difference, mdc95 },
    })
}

/// Two levels that may be compared: on the same scale, at the same distance, by the same microphone. What is not known is not the same.
fn alike(one: &Conditions, other: &Conditions) -> bool {
    one.calibration == other.calibration
        && one.level_weighting == other.level_weighting
        && one.distance_cm.is_some()
        && one.distance_cm == other.distance_cm
        && one.microphone.is_some()
        && one.microphone == other.microphone
        && !one.auto_gain
        && !other.auto_gain
}

#[cfg(test)]
#[path = "tests/assessment.rs"]
mod tests;
