//! What is said about a result: a number, a comparison with this person's own past, or nothing.

use super::engine::Engine;
use super::interrupts::tenth;
use super::{Arg, LineId, PastExercise};

/// What is true and worth saying about a hold.
#[derive(Debug, Clone, Copy, PartialEq)]
enum Remark {
    LongestThisMonth,
    /// More, or less, than the last session by this much, s; beyond the usual scatter.
    MoreThanLast(f64),
    /// Within what is usual for this person, or nothing to compare with.
    Plain,
}

/// A difference of less than a second is not worth a word, whatever the scatter.
const LEAST_DIFFERENCE_S: f64 = 1.0;

/// Compares with the person's own past. Shorter than last time is never remarked on (design: no blame), and no
/// comparison is made inside the usual scatter (no false cheer).
fn remark(held_s: f64, past: Option<&PastExercise>) -> Remark {
    let Some(past) = past else { return Remark::Plain };
    let usual = past.mean_s.zip(past.sd_s).is_some_and(|(mean_s, sd_s)| (held_s - mean_s).abs() <= sd_s);
    if past.month_best_s.is_some_and(|best_s| held_s >= best_s + 0.1) && past.sessions > 1 && !usual {
        return Remark::LongestThisMonth;
    }
    match past.last_best_s {
        Some(last_s) if held_s - last_s >= LEAST_DIFFERENCE_S && !usual => Remark::MoreThanLast(held_s - last_s),
        _ => Remark::Plain,
    }
}

impl Engine {
    /// The number after each n-th trial, as the routine has it; the last trial is left to the step's own result.
    pub(super) fn say_trial_result(&mut self) -> Option<LineId> {
        let every = self.routine.feedback_every;
        let trials = u32::try_from(self.holds_s.len()).unwrap_or(u32::MAX);
        let is_last = self.repetitions_done >= self.prescribed();
        if every == 0 || trials == 0 || trials % every != 0 || is_last {
            return None;
        }
        let held_s = self.holds_s.last().copied()?;
        Some(self.say_held(held_s))
    }

    fn say_held(&mut self, held_s: f64) -> LineId {
        let past = self.start.past.by_exercise.get(&self.exercise_id()).cloned();
        let seconds = ("seconds", Arg::Number(tenth(held_s)));
        match remark(held_s, past.as_ref()) {
            Remark::LongestThisMonth => self.say("held-longest-this-month", &[seconds]),
            Remark::MoreThanLast(more_s) => {
                let weekday = past.and_then(|past| past.last_weekday).unwrap_or_default();
                let key = if weekday.is_empty() { "held-more-than-last" } else { "held-more-than-weekday" };
                let more = ("more", Arg::Number(more_s.round()));
                self.say(key, &[seconds, more, ("weekday", Arg::Text(weekday))])
            }
            Remark::Plain => self.say("held", &[seconds]),
        }
    }

    /// What is said at the end of a step: the best of its trials, else a word that it is done.
    pub(super) fn say_step_result(&mut self) -> Option<LineId> {
        let best_s = self.holds_s.iter().copied().fold(f64::NAN, f64::max);
        if best_s.is_nan() {
            return Some(self.say("step-done", &[]));
        }
        if self.holds_s.len() > 1 {
            self.say("step-done-best", &[]);
        }
        Some(self.say_held(best_s))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn past() -> PastExercise {
        PastExercise {
            sessions: 5,
            last_best_s: Some(12.0),
            last_weekday: Some("Tuesday".into()),
            month_best_s: Some(15.0),
            mean_s: Some(12.0),
            sd_s: Some(0.8),
        }
    }

    #[test]
    fn compares_only_beyond_the_usual_scatter() {
        assert_eq!(remark(12.5, Some(&past())), Remark::Plain);
        assert_eq!(remark(14.0, Some(&past())), Remark::MoreThanLast(2.0));
        assert_eq!(remark(15.2, Some(&past())), Remark::LongestThisMonth);
        assert_eq!(remark(9.0, Some(&past())), Remark::Plain, "less is never remarked on");
        assert_eq!(remark(14.0, None), Remark::Plain);
    }
}
