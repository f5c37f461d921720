//! Measured change beyond a person's own scatter: which way, and whether it asks for a look. Pure; the arithmetic is that of
//! `progress`.

use jiff::civil::Date;
use model::Measure;
use progress::{Conditions, Series};

/// What can be said of one measure of one exercise.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Verdict {
    /// Too little, or no larger than this person's own scatter.
    Unchanged,
    /// Larger than the scatter, downwards.
    Fallen,
    /// Larger than the scatter, upwards.
    Risen,
}

impl Verdict {
    /// As it stands in the database.
    #[must_use]
    pub fn word(self) -> &'static str {
        match self {
            Self::Unchanged => "unchanged",
            Self::Fallen => "fallen",
            Self::Risen => "risen",
        }
    }
}

/// One measure of one exercise, over the latest stretch within which values may be compared.
#[derive(Debug, Clone, PartialEq)]
pub struct Change {
    pub exercise: String,
    pub measure: Measure,
    /// What the stretch was measured under.
    pub conditions: Conditions,
    pub since: Date,
    pub until: Date,
    /// Values that count.
    pub trials: u32,
    /// Median of the days of the baseline, and of the latest days.
    pub baseline: Option<f64>,
    pub latest: Option<f64>,
    /// Smallest change that exceeds the scatter in 95 of 100 cases.
    pub smallest: Option<f64>,
    pub verdict: Verdict,
}

impl Change {
    /// From a series; none where it has no stretch with values.
    #[must_use]
    pub fn of(series: &Series) -> Option<Self> {
        let segment = series.segments.last()?;
        let (first, last) = (segment.days.first()?, segment.days.last()?);
        let change = segment.change.as_ref();
        let moved = change.filter(|change| change.exceeds_95 == Some(true)).and_then(|change| change.from_baseline);
        let verdict = match moved {
            Some(by) if by < 0.0 => Verdict::Fallen,
            Some(by) if by > 0.0 => Verdict::Risen,
            _ => Verdict::Unchanged,
        };
        let trials: usize = segment.days.iter().map(|day| day.trials.len()).sum();
        Some(Self {
            exercise: series.exercise.clone(),
            measure: series.measure,
            conditions: segment.conditions.clone(),
            since: first.day,
            until: last.day,
            trials: u32::try_from(trials).unwrap_or(u32::MAX),
            baseline: segment.baseline.as_ref().map(|baseline| baseline.median),
            latest: change.and_then(|change| change.latest),
            smallest: change.map(|change| change.mdc95),
            verdict,
        })
    }

    /// A fall of it asks for a look: longer, louder, wider and faster is what is practised. Pitch itself, evenness and voice
    /// quality have no better side that could be told from a number alone.
    #[must_use]
    pub fn asks(&self) -> bool {
        self.verdict == Verdict::Fallen
            && matches!(
                self.measure,
                Measure::HoldS
                    | Measure::LevelDb
                    | Measure::PhraseLevelDb
                    | Measure::TalkLevelDb
                    | Measure::F0SpanSt
                    | Measure::SyllableRateHz
                    | Measure::NamedCount
            )
    }
}
