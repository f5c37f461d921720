//! Paced cycles: every count begins on its beat, round after round without a gap.

use super::beat::{LOOK_AHEAD_S, UPBEAT_S};
use super::limits::Gate;
use super::listening;
use super::next::{NextAction, Speaking, Turn};
use super::outlet::line;
use super::practice::Practice;
use model::{Arg, Command, Fact, VoiceTask};
use routine::{Amount, CountedPhase, Work};

/// Beats of quiet before the last round, in which it is announced.
const ANNOUNCE_BEATS: u32 = 2;
const CAN_SAY: &[Command] = &[Command::Slower, Command::Faster, Command::Stop];

/// The rounds of a paced exercise under way; one run spans all rounds of a set, so that the beat never breaks.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct PacedRun {
    phases: Vec<CountedPhase>,
    /// When this round begins, s.
    begins_s: f64,
    /// From count to count in this round, s.
    beat_s: f64,
    /// The next beat of this round, from 0.
    next_beat: u32,
}

impl PacedRun {
    fn beats(&self) -> u32 {
        self.phases.iter().map(|phase| phase.counts).sum()
    }

    fn ends_s(&self) -> f64 {
        self.begins_s + f64::from(self.beats()) * self.beat_s
    }

    /// Phase and count (from 1) of a beat.
    fn at(&self, beat: u32) -> Option<(&CountedPhase, u32)> {
        let mut left = beat;
        for phase in &self.phases {
            if left < phase.counts {
                return Some((phase, left + 1));
            }
            left -= phase.counts;
        }
        None
    }
}

/// The cue is given before the first round of a set (and after a break); then the counts lead.
pub(super) fn cue(practice: &mut Practice) -> Speaking {
    practice.listen(listening::PACED, VoiceTask::Idle);
    let cue = practice.exercise_key("cue");
    let last = practice.say(&cue, &[]);
    practice.show_prompt(line(cue), CAN_SAY);
    practice.after(last, 0.0, NextAction::Perform)
}

impl PacedRun {
    pub fn start(practice: &mut Practice) -> Option<Self> {
        let begins_s = practice.now_s + UPBEAT_S;
        practice.listen(listening::PACED, VoiceTask::Idle);
        Self::begin_round(practice, begins_s)
    }

    fn begin_round(practice: &mut Practice, begins_s: f64) -> Option<Self> {
        let step = practice.step()?;
        let Work::Paced { phases, beat_s } = step.work.clone() else { return None };
        let beat_s = beat_s * practice.pace_of(step);
        let last = practice.step().is_some_and(|step| step.repetitions > 1 && step.repetitions == practice.here.repetition);
        let begins_s = if last {
            practice.say_on_beat("paced-last-round", &[], begins_s);
            begins_s + f64::from(ANNOUNCE_BEATS) * beat_s
        } else {
            begins_s
        };
        Some(Self { phases, begins_s, beat_s, next_beat: 0 })
    }

    pub fn tick(&mut self, practice: &mut Practice) -> Turn {
        let now_s = practice.now_s;
        let at_s = self.begins_s + f64::from(self.next_beat) * self.beat_s;
        if now_s >= self.begins_s {
            let beat = ((now_s - self.begins_s) / self.beat_s).floor() as u32;
            if let Some((phase, count)) = self.at(beat) {
                practice.show_prompt_with(line(format!("paced-{}", phase.name)), CAN_SAY, &count.to_string());
            }
        }
        if now_s + LOOK_AHEAD_S < at_s {
            return Turn::Stay;
        }
        match self.at(self.next_beat) {
            Some((phase, 1)) => {
                practice.say_on_beat(&format!("paced-{}", phase.name), &[], at_s);
            }
            Some((_, count)) => {
                practice.say_on_beat("count", &[("n", Arg::Number(f64::from(count)))], at_s);
            }
            None => return self.end_round(practice),
        }
        self.next_beat += 1;
        Turn::Stay
    }

    /// The next round follows on the beat; behind the last one the set is over.
    fn end_round(&mut self, practice: &mut Practice) -> Turn {
        let ends_s = self.ends_s();
        practice.record_at(ends_s, self.paced(practice, ends_s - self.begins_s, true));
        practice.did(Amount { times: 1, seconds: ends_s - self.begins_s });
        practice.repetition_complete();
        let more = practice.step().is_some_and(|step| practice.here.repetition < step.repetitions);
        let rests = practice.step().is_some_and(|step| step.rest_s > 0.0);
        // Where the next one may not begin, the move behind this one says why.
        if more && !rests && practice.gate() == Gate::Open {
            practice.here.repetition += 1;
            if let Some(round) = Self::begin_round(practice, ends_s) {
                *self = round;
            }
            return Turn::Stay;
        }
        let last = practice.say_on_beat("paced-over", &[], ends_s);
        practice.after(last, 0.5, NextAction::AfterRepetition).into()
    }

    /// A command cut it off now.
    pub fn cut(&self, practice: &mut Practice) {
        let duration_s = (practice.now_s - self.begins_s).clamp(0.0, self.ends_s() - self.begins_s);
        practice.record(self.paced(practice, duration_s, false));
        practice.did(Amount { times: 1, seconds: duration_s });
    }

    fn paced(&self, practice: &Practice, duration_s: f64, complete: bool) -> Fact {
        Fact::RoundPaced { exercise: practice.exercise_id(), duration_s, beat_s: self.beat_s, complete }
    }
}
