//! Rapid syllables: as fast and even as possible for a given time, counted from the sound.

use super::engine::{Engine, State, Then};
use super::patience::Patience;
use super::{Command, Fact, Line, listening};
use model::{Utterance, VoiceTask};

/// The quiet after which the syllables are over, s.
const END_PAUSE_S: f64 = 0.8;
/// Fewer syllables are a false start.
const MIN_SYLLABLES: u32 = 3;

/// One run of syllables under way.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct RapidRun {
    pub patience: Patience,
    /// The client has begun: how long that took is known.
    pub begun: bool,
}

impl Engine {
    pub(super) fn cue_rapid(&mut self) {
        self.listen(listening::READING, VoiceTask::Idle);
        let last = self.say_cue();
        self.show_prompt(Line { key: self.exercise_key("cue"), args: Vec::new() }, &[Command::Skip, Command::Stop]);
        self.after(last, 0.0, Then::Perform);
    }

    pub(super) fn open_rapid(&mut self) {
        self.listen(listening::READING, VoiceTask::Speech { end_pause_s: END_PAUSE_S });
        self.turn_began_s = self.now_s;
        self.state = State::Rapid(RapidRun { patience: Patience::opened(self.now_s), begun: false });
    }

    pub(super) fn tick_rapid(&mut self) {
        if self.is_speaking() {
            return;
        }
        self.wait_kindly("voice-again", "voice-once-more", "wait-for-ready");
    }

    pub(super) fn syllables_counted(&mut self, utterance: &Utterance) {
        if utterance.syllables < MIN_SYLLABLES {
            return;
        }
        let fact = Fact::SyllablesCounted {
            exercise: self.exercise_id(),
            syllables: utterance.syllables,
            duration_s: utterance.duration_s,
            rate_hz: utterance.syllable_rate_hz,
            irregularity_pct: utterance.syllable_irregularity_pct,
        };
        self.record(fact);
        self.repetition_complete();
        self.listen(listening::READY, VoiceTask::Idle);
        self.show_figure(&utterance.syllables.to_string());
        self.proceed(Then::AfterRepetition);
    }
}
