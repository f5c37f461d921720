//! Paced cycles: every count begins on its beat, round after round without a gap.

use super::engine::{Engine, State, Then};
use super::posture::{LOOK_AHEAD_S, UPBEAT_S};
use super::{Arg, Command, Fact, Line, listening};
use model::VoiceTask;
use routine::{CountedPhase, Work};

/// Beats of quiet before the last round, in which it is announced.
const ANNOUNCE_BEATS: u32 = 2;

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

impl Engine {
    /// The cue is given before the first round of a set (and after a break); then the counts lead.
    pub(super) fn cue_paced(&mut self) {
        self.listen(listening::PACED, VoiceTask::Idle);
        let cue = self.exercise_key("cue");
        let last = self.say(&cue, &[]);
        self.show_prompt(Line { key: cue, args: Vec::new() }, &[Command::Slower, Command::Faster, Command::Stop]);
        self.after(last, 0.0, Then::Perform);
    }

    pub(super) fn start_paced(&mut self) {
        let begins_s = self.now_s + UPBEAT_S;
        self.listen(listening::PACED, VoiceTask::Idle);
        self.begin_round(begins_s);
    }

    fn begin_round(&mut self, begins_s: f64) {
        let Some(Work::Paced { phases, beat_s }) = self.step().map(|step| step.work.clone()) else { return };
        let beat_s = beat_s * self.pace;
        let last = self.step().is_some_and(|step| step.repetitions > 1 && step.repetitions == self.here.repetition);
        let begins_s = if last {
            self.say_on_beat("paced-last-round", &[], begins_s);
            begins_s + f64::from(ANNOUNCE_BEATS) * beat_s
        } else {
            begins_s
        };
        self.state = State::Paced(PacedRun { phases, begins_s, beat_s, next_beat: 0 });
    }

    pub(super) fn tick_paced(&mut self, mut run: PacedRun) {
        let at_s = run.begins_s + f64::from(run.next_beat) * run.beat_s;
        if self.now_s >= run.begins_s {
            let beat = ((self.now_s - run.begins_s) / run.beat_s).floor() as u32;
            if let Some((phase, count)) = run.at(beat) {
                let prompt = Line { key: format!("paced-{}", phase.name), args: Vec::new() };
                self.show_prompt_with(prompt, &[Command::Slower, Command::Faster, Command::Stop], &count.to_string());
            }
        }
        if self.now_s + LOOK_AHEAD_S < at_s {
            return;
        }
        match run.at(run.next_beat) {
            Some((phase, 1)) => {
                let key = format!("paced-{}", phase.name);
                self.say_on_beat(&key, &[], at_s);
            }
            Some((_, count)) => {
                self.say_on_beat("count", &[("n", Arg::Number(f64::from(count)))], at_s);
            }
            None => {
                self.end_round(&run);
                return;
            }
        }
        run.next_beat += 1;
        self.state = State::Paced(run);
    }

    /// The next round follows on the beat; behind the last one the set is over.
    fn end_round(&mut self, run: &PacedRun) {
        let ends_s = run.ends_s();
        self.record_at(ends_s, self.round_paced(run, ends_s - run.begins_s, true));
        self.repetition_complete();
        let more = self.step().is_some_and(|step| self.here.repetition < step.repetitions);
        let rests = self.step().is_some_and(|step| step.rest_s > 0.0);
        if more && !rests {
            self.here.repetition += 1;
            self.begin_round(ends_s);
        } else {
            let last = self.say_on_beat("paced-over", &[], ends_s);
            self.after(last, 0.5, Then::AfterRepetition);
        }
    }

    /// A command cut it off now.
    pub(super) fn record_cut_round(&mut self, run: &PacedRun) {
        let duration_s = (self.now_s - run.begins_s).clamp(0.0, run.ends_s() - run.begins_s);
        let fact = self.round_paced(run, duration_s, false);
        self.record(fact);
    }

    fn round_paced(&self, run: &PacedRun, duration_s: f64, complete: bool) -> Fact {
        Fact::RoundPaced { exercise: self.exercise_id(), duration_s, beat_s: run.beat_s, complete }
    }
}
