//! Reading aloud: a phrase is shown large and spoken, then the client says it; level and duration are measured.

use super::engine::{Engine, State, Then};
use super::patience::Patience;
use super::{Arg, Command, Fact, Line, LineId, listening};
use crate::hear::{Utterance, VoiceTask};
use crate::routine::Work;

/// The quiet after which a phrase is over, s. Slow speakers pause inside phrases (trade notes: 1.0 to 1.5 s).
const END_PAUSE_S: f64 = 1.2;
/// Shorter sounds are no phrase, s.
const MIN_PHRASE_S: f64 = 0.3;

/// One phrase under way.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct ReadingRun {
    pub patience: Patience,
    /// The client is speaking since, s.
    began_s: Option<f64>,
}

impl Engine {
    /// The phrase of this repetition; the list begins again where the dose is longer than the list.
    fn phrase(&self) -> Option<String> {
        match &self.step()?.work {
            Work::ReadAloud { phrases } if !phrases.is_empty() => {
                let index = (self.here.repetition.max(1) - 1) as usize % phrases.len();
                phrases.get(index).cloned()
            }
            _ => None,
        }
    }

    pub(super) fn cue_reading(&mut self, phrases: &[String]) {
        self.listen(listening::READING, VoiceTask::Idle);
        let Some(phrase) = self.phrase().filter(|_| !phrases.is_empty()) else {
            self.end_step();
            return;
        };
        let args = vec![("phrase", Arg::Text(phrase))];
        let last: LineId = self.say("read-phrase", &args);
        self.show_prompt(Line { key: "read-phrase-shown".into(), args }, &[Command::Skip, Command::Stop]);
        self.after(last, 0.0, Then::Perform);
    }

    pub(super) fn open_reading(&mut self) {
        self.listen(listening::READING, VoiceTask::Speech { end_pause_s: END_PAUSE_S });
        self.state = State::Reading(ReadingRun { patience: Patience::opened(self.now_s), began_s: None });
    }

    pub(super) fn speech_began(&mut self, onset_s: f64) {
        let now_s = self.now_s;
        let begins = matches!(&self.state, State::Reading(run) if run.began_s.is_none()) || matches!(&self.state, State::Rapid(run) if !run.has_begun());
        if begins {
            self.responded();
        }
        match &mut self.state {
            State::Reading(run) => {
                run.began_s = Some(onset_s);
                run.patience.heard(now_s);
            }
            State::Rapid(run) => run.began(onset_s, now_s),
            State::Question(run) => run.speaks(now_s),
            _ => {}
        }
    }

    pub(super) fn spoken(&mut self, utterance: &Utterance) {
        match &self.state {
            State::Reading(_) => self.phrase_read(utterance),
            State::Rapid(_) => self.syllables_counted(utterance),
            State::Question(_) => self.said_something(),
            _ => {}
        }
    }

    fn phrase_read(&mut self, utterance: &Utterance) {
        if utterance.duration_s < MIN_PHRASE_S {
            if let State::Reading(run) = &mut self.state {
                run.began_s = None;
            }
            return;
        }
        let fact = Fact::PhraseRead {
            exercise: self.exercise_id(),
            phrase: self.phrase().unwrap_or_default(),
            duration_s: utterance.duration_s,
            level_mean_db: utterance.level_mean_db,
            f0_median_hz: utterance.f0_median_hz,
            level_weighting: "A".into(),
            level_calibrated: false,
            level_terms: Some(super::LevelTerms::default()),
        };
        self.record(fact);
        self.repetition_complete();
        self.listen(listening::READING, VoiceTask::Idle);
        self.proceed(Then::AfterRepetition);
    }

    pub(super) fn tick_reading(&mut self, run: ReadingRun) {
        if let Some(began_s) = run.began_s {
            if self.now_s - began_s >= self.routine.no_answer.give_up_after_s {
                self.give_up();
            }
            return;
        }
        if self.is_speaking() {
            return;
        }
        self.wait_kindly("reading-again", "reading-once-more", "wait-for-ready");
    }
}
