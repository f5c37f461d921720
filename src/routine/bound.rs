//! A limit of two severities.

use serde::Deserialize;

use super::dose_status::DoseStatus;

/// A limit of two severities: beyond `word` a clinician must have said so in the routine, beyond `refused` nobody can.
#[derive(Debug, Clone, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Bound {
    /// Up to here nothing more is asked; left out where no word lifts anything.
    pub word: Option<f64>,
    /// Nobody goes beyond this.
    pub refused: f64,
    /// The reason, a clause.
    pub why: String,
    /// Where the number stands; none for common practice.
    pub source: Option<String>,
    pub status: DoseStatus,
}

/// How much a value asks for.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Severity {
    Allowed,
    /// Only with a clinician's word in the routine.
    NeedsWord,
    Refused,
}

/// Sums of seconds are compared with this grace, s: a nine made of tenths is a nine.
const GRACE: f64 = 1e-6;

impl Bound {
    /// The end of what may be led, with or without a clinician's word.
    #[must_use]
    pub fn in_force(&self, word: bool) -> f64 {
        if word { self.refused } else { self.word.unwrap_or(self.refused) }
    }

    /// How a value stands to a limit that it must not exceed. What is no number is refused.
    #[must_use]
    pub fn at_most(&self, value: f64) -> Severity {
        if value.is_nan() || value > self.refused + GRACE {
            Severity::Refused
        } else if value > self.in_force(false) + GRACE {
            Severity::NeedsWord
        } else {
            Severity::Allowed
        }
    }

    /// How a value stands to a limit that it must reach.
    #[must_use]
    pub fn at_least(&self, value: f64) -> Severity {
        if value.is_nan() || value < self.refused - GRACE {
            Severity::Refused
        } else if value < self.in_force(false) - GRACE {
            Severity::NeedsWord
        } else {
            Severity::Allowed
        }
    }

    /// The reason with its source, a clause.
    #[must_use]
    pub fn reason(&self) -> String {
        match &self.source {
            Some(source) => format!("{} ({source}; {})", self.why, self.status),
            None => format!("{} ({})", self.why, self.status),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn bound(word: Option<f64>, refused: f64) -> Bound {
        Bound { word, refused, why: "x".into(), source: None, status: DoseStatus::CommonPractice }
    }

    #[test]
    fn two_severities_on_either_side() {
        let most = bound(Some(10.0), 12.0);
        assert_eq!([9.0, 10.0, 10.1, 12.0, 12.1].map(|value| most.at_most(value)), {
            use Severity::*;
            [Allowed, Allowed, NeedsWord, NeedsWord, Refused]
        });
        let least = bound(Some(1.0), 0.5);
        assert_eq!([1.0, 0.9, 0.5, 0.4].map(|value| least.at_least(value)), {
            use Severity::*;
            [Allowed, NeedsWord, NeedsWord, Refused]
        });
        assert_eq!((most.at_most(f64::NAN), least.at_least(f64::NAN)), (Severity::Refused, Severity::Refused));
        assert_eq!((most.in_force(false), most.in_force(true), bound(None, 3.0).in_force(false)), (10.0, 12.0, 3.0));
    }
}
