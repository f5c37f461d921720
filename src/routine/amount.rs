//! How much of an exercise is asked for, or was done: times and seconds.

use super::duration::HOLD_WITHOUT_GOAL_S;
use super::prescribed::{Step, Work};

/// How much was done or is asked for.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Amount {
    /// Repetitions, rounds, trials.
    pub times: u32,
    /// Seconds held, breathed on the beat or voiced.
    pub seconds: f64,
}

impl Amount {
    #[must_use]
    pub fn and(self, more: Self) -> Self {
        Self { times: self.times.saturating_add(more.times), seconds: self.seconds + more.seconds }
    }

    #[must_use]
    pub fn by(self, factor: u32) -> Self {
        Self { times: self.times.saturating_mul(factor), seconds: self.seconds * f64::from(factor) }
    }
}

/// The seconds of one breath on the beat.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Breath {
    pub in_s: f64,
    pub out_s: f64,
    /// In, out and whatever lies between.
    pub whole_s: f64,
}

impl Step {
    /// One repetition. A hold without a goal is a guess.
    #[must_use]
    pub fn one(&self) -> Amount {
        let seconds = match &self.work {
            Work::Timed { phases, .. } => phases.iter().map(|phase| phase.length_s).sum(),
            Work::Paced { .. } => self.breath().map_or(0.0, |breath| breath.whole_s),
            Work::Voiced { target_s, .. } => target_s.unwrap_or(HOLD_WITHOUT_GOAL_S),
            Work::Rapid { length_s, .. } | Work::Talk { length_s, .. } => *length_s,
            _ => 0.0,
        };
        Amount { times: 1, seconds }
    }

    /// The whole step.
    #[must_use]
    pub fn amount(&self) -> Amount {
        self.one().by(self.sets.saturating_mul(self.repetitions))
    }

    /// One breath of a paced step.
    #[must_use]
    pub fn breath(&self) -> Option<Breath> {
        let Work::Paced { phases, beat_s } = &self.work else { return None };
        let of = |name: Option<&str>| {
            let counts = phases.iter().filter(|phase| name.is_none_or(|name| phase.name == name)).map(|phase| f64::from(phase.counts));
            counts.sum::<f64>() * beat_s
        };
        Some(Breath { in_s: of(Some("in")), out_s: of(Some("out")), whole_s: of(None) })
    }
}
