//! The limits that join fields, as the catalogue has them (`catalogue/safe-doses.toml`).

use std::sync::LazyLock;

use serde::Deserialize;

use super::bound::Bound;
use super::dose_status::DoseStatus;

/// What an exercise may add up to.
#[derive(Debug, Clone, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct SafeDose {
    /// Ids of the exercises, each by itself.
    exercises: Vec<String>,
    /// Efforts of one group tire the same muscles, or stop the same breath: rest and rows are counted over all of them.
    pub group: Option<String>,
    /// Paced: counts in × beat, s.
    pub breath_in_s: Option<Bound>,
    /// Paced: counts out × beat, s.
    pub breath_out_s: Option<Bound>,
    /// Paced: a whole breath, s.
    pub breath_s: Option<Bound>,
    /// Paced: a whole breath, s, at least.
    pub breath_least_s: Option<Bound>,
    /// Timed: all phases of one repetition together, s.
    pub hold_s: Option<Bound>,
    /// Timed: the rest after a hold, at least, as a multiple of the hold.
    pub rest_per_hold: Option<Bound>,
    /// Repeated: so many of the group one after another.
    pub in_a_row: Option<Row>,
    /// Repetitions in one practice.
    pub times: Option<Bound>,
    /// Repetitions in one day.
    pub day_times: Option<Bound>,
    /// Seconds in one practice.
    pub seconds: Option<Bound>,
    /// Seconds in one day.
    pub day_seconds: Option<Bound>,
}

/// How many one after another, and the rest that ends a row.
#[derive(Debug, Clone, PartialEq, Deserialize)]
pub struct Row {
    #[serde(flatten)]
    pub most: Bound,
    /// A break at least this long ends a row, s.
    pub rest_s: f64,
}

/// What a practice as a whole may add up to.
#[derive(Debug, Clone, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct SafePractice {
    /// From beginning to end, s, without standing still.
    pub length_s: Bound,
    /// Practices in one day.
    pub a_day: Bound,
    /// Loud holds of one practice, s.
    pub loud_s: Bound,
    /// Loud holds of one day, s.
    pub loud_day_s: Bound,
}

/// How long it takes to get up from lying.
#[derive(Debug, Clone, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct GettingUp {
    /// On the side, s.
    pub side_s: f64,
    /// Sitting, before what is done sitting, s.
    pub sit_s: f64,
    /// Sitting, before standing up, s.
    pub sit_before_standing_s: f64,
    /// Standing, before what is done standing, s.
    pub stand_s: f64,
    pub why: String,
    pub source: String,
    pub status: DoseStatus,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct File {
    practice: SafePractice,
    getting_up: GettingUp,
    safe: Vec<SafeDose>,
}

const TEXT: &str = include_str!("catalogue/safe-doses.toml");

static FILE: LazyLock<Option<File>> = LazyLock::new(|| toml::from_str(TEXT).ok());

/// What this exercise may add up to; none: nothing is limited but the practice as a whole.
#[must_use]
pub fn safe_dose(exercise: &str) -> Option<&'static SafeDose> {
    FILE.as_ref()?.safe.iter().find(|safe| safe.exercises.iter().any(|id| id == exercise))
}

/// What a practice as a whole may add up to.
#[must_use]
pub fn safe_practice() -> Option<&'static SafePractice> {
    FILE.as_ref().map(|file| &file.practice)
}

/// How long it takes to get up from lying.
#[must_use]
pub fn getting_up() -> Option<&'static GettingUp> {
    FILE.as_ref().map(|file| &file.getting_up)
}

impl SafeDose {
    /// Its limits by name, for whoever shows them.
    #[must_use]
    pub fn bounds(&self) -> Vec<(&'static str, &Bound)> {
        [
            ("one breath in, seconds", &self.breath_in_s),
            ("one breath out, seconds", &self.breath_out_s),
            ("one whole breath, seconds", &self.breath_s),
            ("one whole breath, seconds at least", &self.breath_least_s),
            ("one repetition held, seconds", &self.hold_s),
            ("rest after a hold, at least, as a multiple of the hold", &self.rest_per_hold),
            ("times in one practice", &self.times),
            ("times in one day", &self.day_times),
            ("seconds in one practice", &self.seconds),
            ("seconds in one day", &self.day_seconds),
        ]
        .into_iter()
        .filter_map(|(name, bound)| Some((name, bound.as_ref()?)))
        .chain(self.in_a_row.as_ref().map(|row| ("times in a row", &row.most)))
        .collect()
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::{Timing, catalogue, find};

    #[test]
    fn the_file_can_be_read_and_each_exercise_stands_in_it_once() {
        let file = toml::from_str::<File>(TEXT).expect("safe-doses.toml");
        let mut ids: Vec<&String> = file.safe.iter().flat_map(|safe| &safe.exercises).collect();
        ids.sort();
        let all = ids.len();
        ids.dedup();
        assert_eq!(ids.len(), all, "twice");
        assert!(ids.iter().all(|id| find(id).is_some()), "{ids:?}");
        for entry in catalogue().iter().filter(|entry| entry.timing != Timing::Rest) {
            assert!(ids.contains(&&entry.id), "{} has no limits that join fields", entry.id);
        }
    }

    /// What holds the breath or a muscle has a total for a practice and for a day, and a rest.
    #[test]
    fn every_exercise_has_totals_and_every_effort_has_a_rest() {
        for entry in catalogue().iter().filter(|entry| entry.timing != Timing::Rest) {
            let safe = safe_dose(&entry.id).expect("known");
            assert!(safe.times.is_some() || safe.seconds.is_some(), "{}", entry.id);
            assert_eq!((safe.times.is_some(), safe.seconds.is_some()), (safe.day_times.is_some(), safe.day_seconds.is_some()));
            assert_eq!(safe.rest_per_hold.is_some() || safe.in_a_row.is_some(), safe.group.is_some(), "{}", entry.id);
            let timed = entry.timing == Timing::Timed;
            assert_eq!(safe.hold_s.is_some(), timed, "{}", entry.id);
            assert!(safe.rest_per_hold.is_none() || timed);
            assert!(safe.in_a_row.is_none() || entry.timing == Timing::Repeated);
            assert_eq!(safe.breath_s.is_some(), entry.timing == Timing::Paced);
            // Static effort and swallows that stop the breath.
            let effort = entry.cautions.iter().any(|key| ["static-effort", "breath-break-heart"].contains(&key.as_str()));
            assert!(!effort || safe.group.is_some(), "{}", entry.id);
        }
    }

    /// A source, or the words that there is none; the limits in their order.
    #[test]
    fn every_limit_has_a_reason_and_a_source_or_says_that_it_has_none() {
        let practice = safe_practice().expect("practice");
        let whole = [&practice.length_s, &practice.a_day, &practice.loud_s, &practice.loud_day_s];
        let mut seen = 0;
        for bound in FILE.iter().flat_map(|file| &file.safe).flat_map(SafeDose::bounds).map(|(_, bound)| bound).chain(whole) {
            seen += 1;
            assert!(bound.why.len() > 15, "{bound:?}");
            assert_eq!(bound.source.is_none(), bound.status == DoseStatus::CommonPractice, "{bound:?}");
            assert!(bound.refused > 0.0 && bound.word.is_none_or(|word| word > 0.0), "{bound:?}");
        }
        assert!(seen > 60, "{seen}");
        for safe in FILE.iter().flat_map(|file| &file.safe) {
            let least = [&safe.breath_least_s, &safe.rest_per_hold];
            for bound in least.into_iter().flatten() {
                assert!(bound.word.is_none_or(|word| word > bound.refused));
            }
            for (name, bound) in safe.bounds().into_iter().filter(|(name, _)| !name.contains("at least")) {
                assert!(bound.word.is_none_or(|word| word < bound.refused), "{name} of {:?}", safe.exercises);
            }
        }
    }
}
