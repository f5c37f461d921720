//! The steps of a ladder of voice: soft, medium, strong; or low, middle, high.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// What a ladder of voice climbs.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum Climbs {
    /// Vocal intensity, dB.
    Level,
    /// F0, semitones.
    Pitch,
}

/// A step of a ladder.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum Rung {
    /// Soft, or low.
    Low,
    /// Medium, or in the middle.
    Middle,
    /// Strong, or high.
    High,
}

impl Rung {
    /// Kebab-case, for the name of a message.
    #[must_use]
    pub fn name(self) -> &'static str {
        match self {
            Self::Low => "low",
            Self::Middle => "middle",
            Self::High => "high",
        }
    }

    /// As a routine file calls it.
    #[must_use]
    pub fn word(self, climbs: Climbs) -> &'static str {
        match (climbs, self) {
            (Climbs::Level, Self::Low) => "soft",
            (Climbs::Level, Self::Middle) => "medium",
            (Climbs::Level, Self::High) => "strong",
            (Climbs::Pitch, rung) => rung.name(),
        }
    }

    /// The step that a routine file calls so.
    #[must_use]
    pub fn of_word(word: &str, climbs: Climbs) -> Option<Self> {
        [Self::Low, Self::Middle, Self::High].into_iter().find(|rung| rung.word(climbs) == word)
    }
}

/// One held vowel as a step of a ladder.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct Climb {
    /// The step that was asked for.
    pub rung: Rung,
    /// The one before it; none for the first of a set.
    pub from: Option<Rung>,
    /// From the one before to this one, in the direction that was asked for, dB: below 0 where it went the other way. NaN (`null`) for
    /// the first, where it could not be measured, and on a ladder of pitch.
    #[serde(with = "crate::measured")]
    #[schemars(with = "Option<f64>")]
    pub step_db: f64,
    /// The same in semitones, on a ladder of pitch.
    #[serde(with = "crate::measured")]
    #[schemars(with = "Option<f64>")]
    pub step_st: f64,
    /// The step that was asked for, dB; none on a ladder of pitch.
    pub goal_db: Option<f64>,
    /// The same in semitones; none on a ladder of loudness.
    pub goal_st: Option<f64>,
}

impl Climb {
    /// What it climbs.
    #[must_use]
    pub fn climbs(&self) -> Climbs {
        if self.goal_st.is_some() { Climbs::Pitch } else { Climbs::Level }
    }

    /// Whether the step was as large as asked for; none where that is not known.
    #[must_use]
    pub fn reached(&self) -> Option<bool> {
        let (by, goal) = match self.climbs() {
            Climbs::Level => (self.step_db, self.goal_db?),
            Climbs::Pitch => (self.step_st, self.goal_st?),
        };
        (self.from.is_some() && by.is_finite()).then_some(by >= goal)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn words_go_there_and_back_and_a_step_is_judged_only_where_it_is_known() {
        for climbs in [Climbs::Level, Climbs::Pitch] {
            for rung in [Rung::Low, Rung::Middle, Rung::High] {
                assert_eq!(Rung::of_word(rung.word(climbs), climbs), Some(rung));
            }
        }
        assert_eq!(Rung::of_word("soft", Climbs::Pitch), None);
        let climb =
            |step_db| Climb { rung: Rung::Middle, from: Some(Rung::Low), step_db, step_st: f64::NAN, goal_db: Some(3.0), goal_st: None };
        assert_eq!([climb(3.0).reached(), climb(-1.0).reached(), climb(f64::NAN).reached()], [Some(true), Some(false), None]);
        assert_eq!(Climb { from: None, ..climb(4.0) }.reached(), None);
        let pitch = Climb { step_st: 2.0, goal_db: None, goal_st: Some(3.0), ..climb(f64::NAN) };
        assert_eq!((pitch.climbs(), pitch.reached()), (Climbs::Pitch, Some(false)));
    }
}
