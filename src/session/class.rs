//! Leading a class: the tool counts, paces and keeps time while the clinician demonstrates.
//!
//! Nobody is measured, asked again or hurried. What has a clock runs by the clock; what has none waits for the clinician's
//! voice or key. Each exercise begins when the clinician says so.

use super::engine::{Engine, State, Then};
use super::{Command, Effect, Line, listening};
use model::VoiceTask;
use routine::{Phase, Work};

/// A room full of people needs a louder voice, dB, and a slower one. Older listeners in noise want speech 15 dB over it
/// (trade notes 5.3); what the loudspeaker can give is for the clinician to set, this is a step in that direction.
const LOUDER_DB: f64 = 4.0;
const SLOWER: f64 = 1.15;
/// A hold without a goal is counted so long, s; no source.
const HOLD_S: f64 = 10.0;
/// Seconds are counted aloud at these.
const COUNT_EVERY_S: u32 = 5;
const COUNT_LAST_S: u32 = 3;

impl Engine {
    pub(super) fn greet_class(&mut self) {
        self.effect(Effect::Volume { change_db: LOUDER_DB });
        self.effect(Effect::SpeechRate { factor: SLOWER });
        self.listen(listening::READY, VoiceTask::Idle);
        let args =
            [("title", super::Arg::Text(self.routine.title.clone())), ("steps", super::Arg::Number(self.routine.steps.len() as f64))];
        let last = self.say("class-greeting", &args);
        self.show_prompt(Line { key: "class-shown".into(), args: Vec::new() }, &[Command::Stop, Command::Pause]);
        self.after(last, 0.4, Then::Cautions);
    }

    /// The clinician in the room knows each exercise's cautions (they are printed for them); the class hears the common one.
    pub(super) fn safety_of_class(&mut self) {
        let last = self.say("class-safety", &[]);
        self.after(last, 0.4, Then::AskStart);
        self.go_on = Then::Cautions;
    }

    /// Does what a class does in place of what is measured of one client; false: the same as for a client.
    pub(super) fn perform_in_class(&mut self, work: &Work) -> bool {
        match work {
            Work::Voiced { target_s, .. } => self.count_for_class(target_s.unwrap_or(HOLD_S)),
            Work::Rapid { length_s, .. } => self.count_for_class(*length_s),
            // Who has read in chorus is known to the clinician alone.
            Work::ReadAloud { .. } => self.open_repeated(),
            _ => return false,
        }
        true
    }

    fn count_for_class(&mut self, length_s: f64) {
        let phases = vec![Phase { name: String::new(), length_s }];
        self.count_phases(phases, COUNT_EVERY_S, COUNT_LAST_S);
    }

    /// The forward key: whatever waits goes ahead, whatever runs is over.
    pub(super) fn move_on(&mut self) {
        match &self.state {
            State::Speaking { then, .. } => {
                let then = *then;
                self.hush();
                self.proceed(then);
            }
            State::Posture(_) | State::Paced(_) | State::Naming(_) => {
                self.cut_repetition();
                self.hush();
                self.repetition_complete();
                self.proceed(Then::AfterRepetition);
            }
            State::Question(run) => {
                let run = run.clone();
                self.hush();
                self.close_question(&run, None);
            }
            State::Repeated(_) => self.repeated_done("done"),
            _ => {}
        }
    }

    /// "Once more": what was done last is done again, however often the clinician wishes.
    pub(super) fn once_more(&mut self) {
        let running =
            matches!(self.state, State::Posture(_) | State::Paced(_) | State::Naming(_) | State::Question(_) | State::Repeated(_));
        self.cut_repetition();
        self.hush();
        // Right behind an exercise, and while the next one is being named, "once more" means the one that was done.
        if !running && self.repetitions_done() == 0 && self.here.step > 1 {
            self.here.step -= 1;
            self.steps_done.remove(&self.step_index());
            self.in_step = true;
        }
        if !running {
            if let Some(done) = self.counts.get_mut(&self.step_index()) {
                *done = done.saturating_sub(1);
            }
            let (done, repetitions) = (self.repetitions_done(), self.step().map_or(1, |step| step.repetitions.max(1)));
            self.here.set = done / repetitions + 1;
            self.here.repetition = done % repetitions + 1;
        }
        self.begin_repetition();
    }
}
