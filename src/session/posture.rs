//! Timed postures: phases held in silence, counted aloud on the beat, sparsely at first and each second at the end.

use super::beat::{LOOK_AHEAD_S, UPBEAT_S};
use super::listening;
use super::next::{NextAction, Speaking, Turn};
use super::outlet::line;
use super::practice::Practice;
use model::{Arg, Command, Fact, LineId, VoiceTask};
use routine::{Amount, Phase};

/// One posture under way.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct PostureRun {
    begins_s: f64,
    phases: Vec<Phase>,
    count_every_s: u32,
    count_last_s: u32,
    /// The next second to look at, from 0: whole seconds since `begins_s`.
    next_beat: u32,
    /// The line that opened the present phase; counts keep out of its way.
    opening: Option<LineId>,
}

/// What is said on a beat of a posture.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Beat {
    /// The n-th phase opens, from 0.
    Open(usize),
    /// This number is counted: the second that begins now, within its phase.
    Count(u32),
    Silent,
    /// All phases are over.
    End,
}

impl PostureRun {
    /// When the last phase ends, s.
    pub fn ends_s(&self) -> f64 {
        self.begins_s + self.phases.iter().map(|phase| phase.length_s).sum::<f64>()
    }

    fn prescribed_s(&self) -> f64 {
        self.ends_s() - self.begins_s
    }

    /// What belongs to the beat `beat` whole seconds after the begin. The second *k* is counted when it begins,
    /// as the design has it ("seven" begins when the seventh second does), so the phase's own word stands for "one".
    fn beat(&self, beat: u32) -> Beat {
        let mut opened_s = 0.0;
        for (index, phase) in self.phases.iter().enumerate() {
            let within_s = f64::from(beat) - opened_s;
            // A phase of broken length opens on the first beat at or after its begin.
            if within_s < phase.length_s {
                if within_s < 1.0 {
                    return Beat::Open(index);
                }
                let (second, length_s) = (within_s.floor() as u32 + 1, phase.length_s.round() as u32);
                let at_end = second + self.count_last_s > length_s;
                let sparse = self.count_every_s > 0 && second % self.count_every_s == 0;
                return if at_end || sparse { Beat::Count(second) } else { Beat::Silent };
            }
            opened_s += phase.length_s;
        }
        Beat::End
    }
}

pub(super) fn cue(practice: &mut Practice) -> Speaking {
    practice.listen(listening::POSTURE, VoiceTask::Idle);
    let last = practice.say_cue();
    practice.show_prompt(line(practice.exercise_key("cue")), &[Command::Stop]);
    practice.after(last, 0.0, NextAction::Perform)
}

impl PostureRun {
    /// Counts through phases from a moment on. A phase without a name opens silently: its cue has been said.
    pub fn start(practice: &mut Practice, phases: Vec<Phase>, count_every_s: u32, count_last_s: u32) -> Self {
        practice.listen(listening::POSTURE, VoiceTask::Idle);
        Self { begins_s: practice.now_s + UPBEAT_S, phases, count_every_s, count_last_s, next_beat: 0, opening: None }
    }

    pub fn tick(&mut self, practice: &mut Practice) -> Turn {
        let (now_s, ends_s) = (practice.now_s, self.ends_s());
        let elapsed_s = now_s - self.begins_s;
        if elapsed_s >= 0.0 && now_s < ends_s {
            practice.show_figure(&format!("{:.0}", elapsed_s.floor() + 1.0));
        }
        let beat_s = self.begins_s + f64::from(self.next_beat);
        match self.beat(self.next_beat) {
            // The end need not fall on a whole second.
            Beat::End if now_s + LOOK_AHEAD_S >= ends_s => return self.end(practice),
            Beat::End => return Turn::Stay,
            _ if now_s + LOOK_AHEAD_S < beat_s => return Turn::Stay,
            Beat::Open(index) => self.open_phase(practice, index, beat_s),
            // A count never talks over the word that opened the phase, nor over an answer.
            Beat::Count(second) if !practice.is_speaking() => {
                practice.say_on_beat("count", &[("n", Arg::Number(f64::from(second)))], beat_s);
            }
            Beat::Count(_) | Beat::Silent => {}
        }
        self.next_beat += 1;
        Turn::Stay
    }

    fn open_phase(&mut self, practice: &mut Practice, index: usize, beat_s: f64) {
        let name = self.phases.get(index).map(|phase| phase.name.clone()).unwrap_or_default();
        if name.is_empty() {
            return;
        }
        let key = practice.exercise_key(&format!("phase-{name}"));
        self.opening = Some(practice.say_on_beat(&key, &[], beat_s));
        practice.show_prompt(line(key), &[Command::Stop]);
    }

    fn end(&self, practice: &mut Practice) -> Turn {
        let ends_s = self.ends_s();
        let last = practice.say_on_beat("posture-over", &[], ends_s);
        practice.record_at(ends_s, self.held(practice, self.prescribed_s(), true));
        practice.did(Amount { times: 1, seconds: self.prescribed_s() });
        practice.effort_ended(self.prescribed_s(), ends_s);
        practice.repetition_complete();
        practice.after(last, 0.5, NextAction::AfterRepetition).into()
    }

    /// A command cut it off now.
    pub fn cut(&self, practice: &mut Practice) {
        let held_s = (practice.now_s - self.begins_s).clamp(0.0, self.prescribed_s());
        practice.record(self.held(practice, held_s, false));
        practice.did(Amount { times: 1, seconds: held_s });
        practice.effort_ended(held_s, practice.now_s);
    }

    fn held(&self, practice: &Practice, duration_s: f64, complete: bool) -> Fact {
        Fact::PostureHeld { exercise: practice.exercise_id(), duration_s, prescribed_s: self.prescribed_s(), complete }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn run(lengths_s: &[f64], count_every_s: u32, count_last_s: u32) -> PostureRun {
        let phases = lengths_s.iter().map(|&length_s| Phase { name: "hold".into(), length_s }).collect();
        PostureRun { begins_s: 0.0, phases, count_every_s, count_last_s, next_beat: 0, opening: None }
    }

    #[test]
    fn counts_sparsely_then_each_second_and_opens_phases() {
        let run = run(&[50.0, 10.0], 10, 5);
        let said: Vec<(u32, Beat)> = (0..=60).map(|beat| (beat, run.beat(beat))).filter(|(_, beat)| *beat != Beat::Silent).collect();
        let first: Vec<u32> = said.iter().map(|(beat, _)| *beat).collect();
        assert_eq!(first, [0, 9, 19, 29, 39, 45, 46, 47, 48, 49, 50, 55, 56, 57, 58, 59, 60]);
        assert_eq!(run.beat(9), Beat::Count(10));
        assert_eq!(run.beat(50), Beat::Open(1));
        assert_eq!(run.beat(60), Beat::End);
    }

    #[test]
    fn a_phase_of_broken_length_ends_when_it_should() {
        let run = run(&[2.5, 2.0], 0, 10);
        assert_eq!(run.beat(2), Beat::Count(3));
        assert_eq!(run.beat(3), Beat::Open(1));
        assert_eq!(run.ends_s(), 4.5);
        assert_eq!(run.beat(5), Beat::End);
    }
}
