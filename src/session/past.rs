//! What a client has managed before, as plain data for specific and true encouragement.

use std::collections::BTreeMap;

use routine::Weekday;

/// Earlier results of one client. Empty for a first session and for every replay, so that a replay always runs the same.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct PastResults {
    /// Keyed by the exercise's id, "long-ah".
    pub by_exercise: BTreeMap<String, PastExercise>,
}

/// Earlier holds of one exercise; cut-off holds do not count.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct PastExercise {
    /// The best hold of the latest earlier session that had one.
    pub last: Option<Past>,
    /// The best hold of the present calendar month.
    pub best_this_month: Option<Past>,
    /// How many earlier sessions had at least one hold of this exercise.
    pub sessions: u32,
    /// How many of the newest trials `mean_s` and `sd_s` rest on, at most [`PastExercise::RECENT_TRIALS`].
    pub recent_trials: u32,
    /// Mean duration of those trials, s; none without trials.
    pub mean_s: Option<f64>,
    /// Their scatter: sample standard deviation (n - 1), s; none under two trials.
    pub sd_s: Option<f64>,
    /// Scatter of their levels, dB, as `sd_s`; only of trials whose levels can be compared.
    pub level_sd_db: Option<f64>,
}

impl PastExercise {
    /// The newest trials that tell what is usual now. Common practice, no source.
    pub const RECENT_TRIALS: usize = 10;
    /// Fewer trials tell nothing of the scatter. Common practice, no source.
    pub const ENOUGH_TRIALS: u32 = 5;

    /// True where `duration_s` lies outside the usual scatter: more than one standard deviation from the mean, on at least
    /// five trials. What lies inside is not worth remark. One SD and five trials: common practice, no source.
    #[must_use]
    pub fn is_unusual(&self, duration_s: f64) -> bool {
        match (self.mean_s, self.sd_s) {
            (Some(mean_s), Some(sd_s)) if self.recent_trials >= Self::ENOUGH_TRIALS => (duration_s - mean_s).abs() > sd_s,
            _ => false,
        }
    }
}

/// One earlier hold.
#[derive(Debug, Clone, PartialEq)]
pub struct Past {
    /// Its duration, s.
    pub duration_s: f64,
    /// The day of the week on which it was made.
    pub weekday: Weekday,
    /// The local date on which it was made, ISO 8601: "2026-11-24".
    pub date: String,
    /// Whole days between then and now; under 7 the weekday alone names the day.
    pub days_ago: u32,
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn only_a_result_outside_the_scatter_is_unusual() {
        let past = PastExercise { recent_trials: 5, mean_s: Some(12.0), sd_s: Some(1.5), ..PastExercise::default() };
        assert!(!past.is_unusual(13.4));
        assert!(past.is_unusual(13.6));
        assert!(past.is_unusual(10.4));
    }

    #[test]
    fn too_few_trials_tell_nothing() {
        let past = PastExercise { recent_trials: 4, mean_s: Some(12.0), sd_s: Some(1.0), ..PastExercise::default() };
        assert!(!past.is_unusual(40.0));
        assert!(!PastExercise::default().is_unusual(40.0));
    }
}
