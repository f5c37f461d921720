//! What is said about a result: a number, a comparison with this person's own past, or nothing.

use super::outlet::{count, tenth};
use super::past::PastExercise;
use super::practice::Practice;
use model::{Arg, Fact, LineId};
use routine::Work;

/// What is true and worth saying about a hold.
#[derive(Debug, Clone, PartialEq)]
enum Remark {
    LongestThisMonth,
    /// Longer than the last session's best by so many seconds; the message that names its day, within a week.
    MoreThanLast(f64, Option<&'static str>),
    /// Within what is usual for this person, or nothing to compare with.
    Plain,
}

/// A difference of less than a second is not worth a word, whatever the scatter.
const LEAST_DIFFERENCE_S: f64 = 1.0;
/// Days for which the weekday alone names the day.
const WEEK_DAYS: u32 = 7;

/// Compares with the person's own past. Shorter than last time is never remarked on (design: no blame), and no
/// comparison is made inside the usual scatter (no false cheer).
fn remark(held_s: f64, past: Option<&PastExercise>) -> Remark {
    let Some(past) = past else { return Remark::Plain };
    // With too few trials to know the scatter, only the number is said.
    if !past.is_unusual(held_s) {
        return Remark::Plain;
    }
    if past.best_this_month.as_ref().is_some_and(|best| held_s > best.duration_s) {
        return Remark::LongestThisMonth;
    }
    match &past.last {
        Some(last) if held_s - last.duration_s >= LEAST_DIFFERENCE_S => {
            let weekday = (1..WEEK_DAYS).contains(&last.days_ago).then(|| last.weekday.key());
            Remark::MoreThanLast(held_s - last.duration_s, weekday)
        }
        _ => Remark::Plain,
    }
}

/// Weeks after which the number is told half as often, then a third as often, and so on. Less feedback is kept better
/// (Maas et al. 2008); the steps of two weeks are common practice, no source.
const FADE_WEEKS: u32 = 2;

/// The number is told after so many trials in this week of practice; 0: only when asked.
fn fades(every: u32, week: u32) -> u32 {
    every.saturating_mul(1 + week / FADE_WEEKS)
}

impl Practice {
    fn is_result_due(&self) -> bool {
        let every = fades(self.routine.feedback_every, self.context.practice_week);
        every > 0 && self.trials.untold >= every
    }

    /// The number after each n-th trial of the practice; the last trial of a step is left to the step's own result.
    pub fn say_trial_result(&mut self) -> Option<LineId> {
        let is_last = self.repetitions_done() >= self.prescribed();
        if is_last || !self.is_result_due() {
            return None;
        }
        let held_s = self.trials.last_s()?;
        self.result_told(false);
        Some(self.say_held("held", held_s))
    }

    fn result_told(&mut self, asked: bool) {
        self.trials.untold = 0;
        self.record(Fact::ResultTold { exercise: self.exercise_id(), asked });
    }

    /// `what` is "held" for one trial, "best" for the best of several.
    fn say_held(&mut self, what: &str, held_s: f64) -> LineId {
        let past = self.context.past.by_exercise.get(&self.exercise_id()).cloned();
        let seconds = ("seconds", Arg::Number(tenth(held_s)));
        match remark(held_s, past.as_ref()) {
            Remark::LongestThisMonth => self.say(&format!("{what}-longest-this-month"), &[seconds]),
            Remark::MoreThanLast(more_s, None) => {
                self.say(&format!("{what}-more-than-last"), &[seconds, ("more", Arg::Number(more_s.round()))])
            }
            Remark::MoreThanLast(more_s, Some(weekday)) => {
                let more = ("more", Arg::Number(more_s.round()));
                self.say(&format!("{what}-more-than-weekday"), &[seconds, more, ("weekday", Arg::Message(weekday.into()))])
            }
            Remark::Plain => self.say(what, &[seconds]),
        }
    }

    /// What is said at the end of a step: the best of its trials where a result is due, else that it is done.
    pub fn say_step_result(&mut self) -> LineId {
        let best_s = self.trials.best_s();
        if best_s.is_nan() || !self.is_result_due() {
            // A rest is no achievement.
            let rested = matches!(self.step().map(|step| &step.work), Some(Work::Rest { .. }));
            return self.say(if rested { "rest-done" } else { "step-done" }, &[]);
        }
        self.result_told(false);
        self.say_held(if self.trials.len() > 1 { "best" } else { "held" }, best_s)
    }

    /// "How did I do": the last trial and the best of this exercise, or how much is done.
    pub fn tell_how_it_went(&mut self) {
        match self.trials.last_s() {
            Some(last_s) if self.in_step => {
                self.result_told(true);
                self.say_held("held", last_s);
                let best_s = self.trials.best_s();
                if self.trials.len() > 1 && best_s > last_s {
                    self.say("best-so-far", &[("seconds", Arg::Number(tenth(best_s)))]);
                }
            }
            _ => {
                let (done, all) = (self.steps_done.len(), self.routine.steps.len());
                self.say("done-so-far", &[("done", count(done)), ("all", count(all))]);
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::{Past, Weekday};

    fn past(month_best_s: f64) -> PastExercise {
        let hold = |duration_s, days_ago| Past { duration_s, weekday: Weekday::Tuesday, date: "2026-11-24".into(), days_ago };
        PastExercise {
            last: Some(hold(12.0, 2)),
            best_this_month: Some(hold(month_best_s, 9)),
            sessions: 5,
            recent_trials: 10,
            mean_s: Some(12.0),
            sd_s: Some(0.8),
            level_sd_db: None,
        }
    }

    #[test]
    fn compares_only_beyond_the_usual_scatter() {
        assert_eq!(remark(12.5, Some(&past(15.0))), Remark::Plain);
        assert_eq!(remark(14.0, Some(&past(15.0))), Remark::MoreThanLast(2.0, Some("weekday-tuesday")));
        assert_eq!(remark(15.2, Some(&past(15.0))), Remark::LongestThisMonth);
        assert_eq!(remark(9.0, Some(&past(15.0))), Remark::Plain, "less is never remarked on");
        assert_eq!(remark(14.0, None), Remark::Plain);
    }

    /// The default: each fifth at first, then each tenth, then each fifteenth.
    #[test]
    fn feedback_fades_over_the_weeks() {
        let told: Vec<u32> = [0, 1, 2, 3, 4, 5].map(|week| fades(5, week)).to_vec();
        assert_eq!(told, [5, 5, 10, 10, 15, 15]);
        assert_eq!(fades(0, 7), 0);
    }
}
