//! One practice, read for an export: its trials with their conditions, its steps, and what bore on them.

use super::ids::uuid;
use super::moment::{INTERRUPTED, Moment, entries, moment};
use super::outline::Outline;
use super::steps::{StepOutcome, outcomes};
use super::trial::{Trial, trials};
use model::{KeptEntry, KeptPractice};

/// A practice as an export needs it.
#[derive(Debug, Clone)]
pub struct Practice<'a> {
    pub kept: &'a KeptPractice,
    pub outline: &'a Outline,
    /// Names the practice in every export, wherever it is made: from its start and its number where it was led.
    pub id: String,
    /// Its date cannot be believed.
    pub misdated: bool,
    pub trials: Vec<Trial<'a>>,
    pub steps: Vec<StepOutcome>,
}

impl<'a> Practice<'a> {
    /// `misdated`: its date cannot be believed ([`progress::misdated`]).
    #[must_use]
    pub fn of(kept: &'a KeptPractice, outline: &'a Outline, misdated: bool) -> Self {
        let id = uuid(&["practice", &kept.head.started_at.to_string(), &kept.head.number.to_string()]);
        let trials = trials(kept, misdated);
        let steps = outcomes(kept, outline, &trials);
        Self { kept, outline, id, misdated, trials, steps }
    }

    /// Every entry with the number of its part, in order.
    pub fn entries(&self) -> impl Iterator<Item = (u32, &'a KeptEntry)> {
        entries(self.kept)
    }

    /// Why it ended; "interrupted" where nobody ended it.
    #[must_use]
    pub fn end_reason(&self) -> &str {
        self.kept.head.end.as_ref().map_or(INTERRUPTED, |(_, reason)| reason)
    }

    /// The last moment of which something is kept.
    #[must_use]
    pub fn end(&self) -> Option<Moment> {
        let (part, last) = self.entries().last()?;
        moment(self.kept, part, last.entry.at_s)
    }

    /// Time practised, all parts together, s.
    #[must_use]
    pub fn duration_s(&self) -> f64 {
        self.kept.parts.iter().map(|part| part.entries.iter().map(|kept| kept.entry.at_s).fold(0.0, f64::max)).sum()
    }
}
