//! One attempt of a measured exercise.

use super::conditions::Conditions;
use super::discard::Discard;
use jiff::{ZonedDateTime, civil::Date};
use model::{Fact, Measure, Position};
use serde::Serialize;

/// One measured value of a trial. Always finite.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct Value {
    pub measure: Measure,
    pub value: f64,
    /// Why it stands in no figure; none where it counts.
    pub discard: Option<Discard>,
}

impl Value {
    /// What a trial's fact tells of the measures that are followed; what could not be measured is not among them. None is judged.
    #[must_use]
    pub fn all_of(fact: &Fact) -> Vec<Self> {
        // The holds of a ladder differ on purpose: only its steps are followed.
        let ladder = matches!(fact, Fact::HoldMeasured { climb: Some(_), .. });
        let followed = fact.trial().into_iter().flat_map(|trial| Measure::followed(trial.kind));
        let followed = followed.filter(|measure| !ladder || matches!(measure, Measure::StepDb | Measure::StepSt));
        followed.filter_map(|measure| Some(Self { measure, value: measure.measured(fact)?, discard: None })).collect()
    }
}

/// One attempt of a measured exercise.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Trial {
    /// When it was made, in the zone of its part.
    pub when: ZonedDateTime,
    /// The client's civil day: the day on which its part of the practice began, so that a practice over midnight stays one.
    pub day: Date,
    /// The practice's number in this record, and the entry's in it.
    pub session: i64,
    pub seq: i64,
    pub exercise: String,
    pub position: Option<Position>,
    /// What was measured; what could not be is not here.
    pub values: Vec<Value>,
    pub conditions: Conditions,
    /// False where a command cut it off.
    pub complete: bool,
    /// How long it took, s.
    pub duration_s: f64,
    /// Its practice's date cannot be believed.
    pub misdated: bool,
}

impl Trial {
    /// The value of a measure, whether it counts or not.
    #[must_use]
    pub fn value(&self, measure: Measure) -> Option<&Value> {
        self.values.iter().find(|value| value.measure == measure)
    }

    /// Says of each value whether it counts.
    pub fn judge(&mut self) {
        for value in &mut self.values {
            let why = Discard::of(value.measure, &self.conditions, self.complete, self.duration_s);
            value.discard = if self.misdated { Some(Discard::Misdated) } else { why };
        }
    }

    /// The value of a measure, if it counts.
    #[must_use]
    pub fn counted(&self, measure: Measure) -> Option<f64> {
        self.value(measure).filter(|value| value.discard.is_none()).map(|value| value.value)
    }
}
