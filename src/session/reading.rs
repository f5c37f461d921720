//! Reading aloud: a phrase is shown large and spoken, then the client says it; level and duration are measured.

use super::engine::{Engine, State, Then};
use super::patience::Patience;
use super::{Arg, Command, Fact, Line, LineId, listening};
use model::{Utterance, VoiceTask};
use routine::Work;

/// The quiet after which a phrase is over, s. Slow speakers pause inside phrases (trade notes: 1.0 to 1.5 s).
const END_PAUSE_S: f64 = 1.2;
/// A task takes effect within a block or two, s.
const BEFORE_S: f64 = 0.05;
/// Shorter sounds are no phrase, s.
const MIN_PHRASE_S: f64 = 0.3;
/// Reading aloud takes about 15 letters a second (150 words a minute of six letters with their space; common practice, no
/// source). What takes less than this share of it is a part of the phrase.
const LETTERS_PER_S: f64 = 15.0;
const WHOLE_FROM: f64 = 0.5;
/// Behind a part the rest may come within this, s.
const REST_COMES_S: f64 = 5.0;

/// One phrase under way.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct ReadingRun {
    pub patience: Patience,
    /// The client is speaking since, s.
    began_s: Option<f64>,
    /// What was read of it so far, and until when the rest may come, s.
    part: Option<(Utterance, f64)>,
    /// The client has made a sound already: how long that took is known.
    tried: bool,
}

/// Two parts of a phrase as one: from the first onset to the last offset; level and F0 by the longer part.
fn joined(first: &Utterance, second: &Utterance) -> Utterance {
    let longer = if first.duration_s > second.duration_s { first } else { second };
    Utterance { onset_s: first.onset_s, offset_s: second.offset_s, duration_s: second.offset_s - first.onset_s, ..longer.clone() }
}

impl Engine {
    /// The phrase of this repetition; the list begins again where the dose is longer than the list.
    fn phrase(&self) -> Option<String> {
        match &self.step()?.work {
            Work::ReadAloud { phrases } if !phrases.is_empty() => {
                let index = self.turn() % phrases.len();
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
        self.turn_began_s = self.now_s;
        self.state = State::Reading(ReadingRun { patience: Patience::opened(self.now_s), began_s: None, part: None, tried: false });
    }

    pub(super) fn speech_began(&mut self, onset_s: f64) {
        let now_s = self.now_s;
        let begins = match &self.state {
            State::Reading(run) => !run.tried,
            State::Rapid(run) => !run.begun,
            _ => false,
        };
        if begins {
            self.responded();
        }
        match &mut self.state {
            State::Reading(run) => {
                run.began_s = Some(onset_s);
                run.tried = true;
                run.patience.heard(now_s);
            }
            // Nothing is said into syllables that are being counted, not even that the time is over.
            State::Rapid(run) => {
                run.begun = true;
                run.patience.heard(now_s);
            }
            State::Question(run) => run.speaks(now_s),
            _ => self.somebody_speaks(onset_s),
        }
    }

    pub(super) fn spoken(&mut self, utterance: &Utterance) {
        // What was said before its turn came is no answer; it only ends now, because another task begins.
        if utterance.offset_s <= self.turn_began_s + BEFORE_S {
            self.somebody_spoke(utterance);
            return;
        }
        match &self.state {
            State::Reading(_) => self.phrase_read(utterance),
            State::Rapid(_) => self.syllables_counted(utterance),
            State::Question(_) => self.said_something(),
            _ => self.somebody_spoke(utterance),
        }
    }

    fn phrase_read(&mut self, utterance: &Utterance) {
        if utterance.duration_s < MIN_PHRASE_S {
            if let State::Reading(run) = &mut self.state {
                run.began_s = None;
            }
            return;
        }
        let phrase = self.phrase().unwrap_or_default();
        let part = if let State::Reading(run) = &mut self.state { run.part.take() } else { None };
        let whole = part.map_or_else(|| utterance.clone(), |(part, _)| joined(&part, utterance));
        if whole.duration_s < WHOLE_FROM * phrase.chars().count() as f64 / LETTERS_PER_S {
            let until_s = self.now_s + REST_COMES_S;
            if let State::Reading(run) = &mut self.state {
                run.began_s = None;
                run.part = Some((whole, until_s));
            }
            return;
        }
        self.keep_phrase(phrase, &whole);
    }

    fn keep_phrase(&mut self, phrase: String, utterance: &Utterance) {
        let fact = Fact::PhraseRead {
            exercise: self.exercise_id(),
            phrase,
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
        // Nothing more came: what there is counts, short as it is.
        if let Some((part, until_s)) = run.part
            && self.now_s >= until_s
        {
            let phrase = self.phrase().unwrap_or_default();
            self.keep_phrase(phrase, &part);
            return;
        }
        if self.is_speaking() {
            return;
        }
        self.wait_kindly("reading-again", "reading-once-more", "wait-for-ready");
    }
}
