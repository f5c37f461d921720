//! Rapid syllables: as fast and even as possible for a given time, counted from the sound.

use super::listening;
use super::next::{NextAction, Speaking, Turn};
use super::outlet::line;
use super::patience::Patience;
use super::practice::Practice;
use super::waiting::Reminders;
use model::{Command, Fact, Response, Utterance, VoiceTask};
use routine::Amount;

/// The quiet after which the syllables are over, s.
const END_PAUSE_S: f64 = 0.8;
/// Fewer syllables are a false start.
const MIN_SYLLABLES: u32 = 3;
const REMINDERS: Reminders = Reminders { again: "voice-again", once_more: "voice-once-more", waits: "wait-for-ready" };

/// One run of syllables under way.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct RapidRun {
    pub patience: Patience,
    /// The client has begun: how long that took is known.
    begun: bool,
}

pub(super) fn cue(practice: &mut Practice) -> Speaking {
    practice.listen(listening::READING, VoiceTask::Idle);
    let last = practice.say_cue();
    practice.show_prompt(line(practice.exercise_key("cue")), &[Command::Skip, Command::Stop]);
    practice.after(last, 0.0, NextAction::Perform)
}

impl RapidRun {
    pub fn open(practice: &mut Practice) -> Self {
        practice.listen(listening::READING, VoiceTask::Speech { end_pause_s: END_PAUSE_S });
        practice.turn_began_s = practice.now_s;
        Self { patience: Patience::opened(practice.now_s), begun: false }
    }

    pub fn tick(&mut self, practice: &mut Practice) -> Turn {
        practice.wait_kindly(&mut self.patience, Response::Voice, REMINDERS)
    }

    /// Nothing is said into syllables that are being counted, not even that the time is over.
    pub fn speech_began(&mut self, practice: &mut Practice) {
        let now_s = practice.now_s;
        if !self.begun {
            practice.responded(Response::Voice, self.patience.response_s(now_s));
            practice.did(Amount { times: 1, seconds: 0.0 });
        }
        self.begun = true;
        self.patience.heard(now_s);
    }

    pub fn spoken(&self, practice: &mut Practice, utterance: &Utterance) -> Turn {
        if utterance.syllables < MIN_SYLLABLES {
            return Turn::Stay;
        }
        practice.record(Fact::SyllablesCounted {
            exercise: practice.exercise_id(),
            syllables: utterance.syllables,
            duration_s: utterance.duration_s,
            rate_hz: utterance.syllable_rate_hz,
            irregularity_pct: utterance.syllable_irregularity_pct,
        });
        practice.repetition_complete();
        practice.listen(listening::READY, VoiceTask::Idle);
        practice.show_figure(&utterance.syllables.to_string());
        Turn::Go(NextAction::AfterRepetition)
    }
}
