//! What may still be done: the limits that join fields, watched while they are used up.
//!
//! The check of a routine keeps a plan within them. What is said on the way ("once more", "go back", "slower"), what an interrupted
//! practice brings along and what was done earlier today are known only here. The numbers are the catalogue's.

use super::practice::{Practice, is_loud};
use model::StepReason;
use routine::{Amount, Bound, Step, Work, limit_of, safe_dose, safe_practice};

/// Amounts are compared with this grace: seconds are sums of tenths.
const GRACE: f64 = 1e-6;

/// Saying what comes takes about so long, s.
const CUE_S: f64 = 6.0;

/// Whether the next repetition may begin.
#[derive(Debug, Clone, PartialEq)]
pub(super) enum Gate {
    Open,
    /// First a rest of so many seconds.
    Rest(f64),
    /// That was enough of this exercise.
    Enough(StepReason),
    /// That was enough practice.
    Over,
}

impl Practice {
    /// A clinician has spoken for this exercise, or is in the room.
    pub fn has_word(&self, exercise: &str) -> bool {
        self.context.class || self.routine.clinician.lift(exercise)
    }

    /// Seconds that this practice has been led, without those in which it stood still.
    pub fn led_s(&self) -> f64 {
        self.context.resume_led_s + self.now_s - self.began_s - self.still_s
    }

    /// Whether a repetition of the present step may begin now.
    pub fn gate(&self) -> Gate {
        let Some(step) = self.step() else { return Gate::Open };
        let one = self.one(step);
        if safe_practice().is_some_and(|whole| self.led_s() + CUE_S + one.seconds > whole.length_s.refused + GRACE) {
            return Gate::Over;
        }
        if let Some(reason) = self.enough(step, one) {
            return Gate::Enough(reason);
        }
        let id = step.exercise.id.as_str();
        let rest_s = self.efforts.rest_before_s(id, self.has_word(id), self.now_s);
        if rest_s > GRACE { Gate::Rest(rest_s) } else { Gate::Open }
    }

    /// One repetition of it at the pace of this moment.
    fn one(&self, step: &Step) -> Amount {
        let one = step.one();
        let pace = if matches!(step.work, Work::Paced { .. }) { self.pace_of(step) } else { 1.0 };
        Amount { seconds: one.seconds * pace, ..one }
    }

    fn enough(&self, step: &Step, one: Amount) -> Option<StepReason> {
        let id = step.exercise.id.as_str();
        let safe = safe_dose(id)?;
        let word = self.has_word(id);
        let past = |bound: &Option<Bound>, amount: f64| bound.as_ref().is_some_and(|bound| amount > bound.in_force(word) + GRACE);
        let practice = self.done.get(id).copied().unwrap_or_default().and(one);
        if past(&safe.times, f64::from(practice.times)) || past(&safe.seconds, practice.seconds) {
            return Some(StepReason::PracticeLimit);
        }
        let day = practice.and(self.context.today.done.get(id).copied().unwrap_or_default());
        if past(&safe.day_times, f64::from(day.times)) || past(&safe.day_seconds, day.seconds) {
            return Some(StepReason::DayLimit);
        }
        let whole = safe_practice().filter(|_| is_loud(step) && !self.context.class)?;
        let loud_s = self.context.today.loud_s + self.loud_s + one.seconds;
        (loud_s > whole.loud_day_s.in_force(self.routine.clinician.whole.is_some()) + GRACE).then_some(StepReason::DayLimit)
    }

    /// This client has practised often enough today.
    pub fn practised_enough(&self) -> bool {
        let word = self.context.class || self.routine.clinician.whole.is_some();
        safe_practice().is_some_and(|whole| f64::from(self.context.today.practices) + 1.0 > whole.a_day.in_force(word))
    }

    /// The factors on the beat between which a breath of this step keeps its limits.
    pub fn pace_range(&self, step: &Step) -> (f64, f64) {
        let (Some(breath), Work::Paced { beat_s, .. }) = (step.breath(), &step.work) else { return (1.0, 1.0) };
        let word = self.has_word(&step.exercise.id);
        let (mut least, mut most) = (0.0_f64, f64::INFINITY);
        if let Some(beat) = limit_of(None, "beat_s") {
            (least, most) = (beat.min / beat_s, beat.max / beat_s);
        }
        if let Some(safe) = safe_dose(&step.exercise.id) {
            let tops = [(&safe.breath_in_s, breath.in_s), (&safe.breath_out_s, breath.out_s), (&safe.breath_s, breath.whole_s)];
            for (bound, seconds) in tops {
                most = bound.as_ref().map_or(most, |bound| most.min(bound.in_force(word) / seconds));
            }
            least = safe.breath_least_s.as_ref().map_or(least, |bound| least.max(bound.in_force(word) / breath.whole_s));
        }
        if least <= most { (least, most) } else { (1.0, 1.0) }
    }

    /// The factor on the beat of this step: what the client wished, as far as its limits go.
    pub fn pace_of(&self, step: &Step) -> f64 {
        let (least, most) = self.pace_range(step);
        self.pace.max(least).min(most)
    }

    /// A repetition that ends by itself begins: it counts in its row, and once, whatever becomes of it.
    pub fn begins_repeated(&mut self) {
        let id = self.exercise_id();
        self.efforts.begins(&id, self.now_s);
        self.did(Amount { times: 1, seconds: 0.0 });
    }

    /// An effort of the present exercise ended at `at_s`, after `held_s`.
    pub fn effort_ended(&mut self, held_s: f64, at_s: f64) {
        let id = self.exercise_id();
        let word = self.has_word(&id);
        self.efforts.ended(&id, word, held_s, at_s);
    }

    /// So much of the present exercise was done.
    pub fn did(&mut self, amount: Amount) {
        let id = self.exercise_id();
        self.did_of(id, amount);
    }

    pub fn did_of(&mut self, exercise: String, amount: Amount) {
        let done = self.done.entry(exercise).or_default();
        *done = done.and(amount);
    }

    /// What was done before this practice began still tires: the careful reading of how lately that was.
    pub fn remember_earlier(&mut self) {
        let today = self.context.today.clone();
        let Some(ago_s) = today.ago_s else { return };
        self.remember(today.done.keys(), ago_s);
    }

    /// The interrupted practice goes on: what it did counts here.
    pub fn take_up(&mut self) {
        self.done = self.context.resume_amounts.clone();
        let done = self.done.clone();
        self.remember(done.keys(), self.context.resume_ago_s.unwrap_or(0.0));
    }

    /// It does not: what it did was done earlier today.
    pub fn leave_behind(&mut self) {
        let left = std::mem::take(&mut self.context.resume_amounts);
        self.context.resume_led_s = 0.0;
        if left.is_empty() {
            return;
        }
        self.remember(left.keys(), self.context.resume_ago_s.unwrap_or(0.0));
        if self.context.resume_other_day {
            return;
        }
        let today = &mut self.context.today;
        today.practices += 1;
        today.loud_s += std::mem::take(&mut self.context.resume_loud_s);
        for (exercise, amount) in left {
            let done = today.done.entry(exercise).or_default();
            *done = done.and(amount);
        }
    }

    fn remember<'a>(&mut self, exercises: impl Iterator<Item = &'a String>, ago_s: f64) {
        let at_s = self.now_s - ago_s;
        for id in exercises {
            // How long the last one was held is not known; no hold may be longer than this.
            let longest_s = safe_dose(id).and_then(|safe| safe.hold_s.as_ref()).map_or(0.0, |bound| bound.refused);
            let word = self.has_word(id);
            self.efforts.just_done(id, word, longest_s, at_s);
        }
    }
}
