//! Reading aloud: a phrase is shown large and spoken, then the client says it; level and duration are measured.

use super::ladder;
use super::listening;
use super::next::{NextAction, Turn};
use super::pacing_beat::PacingBeat;
use super::patience::Patience;
use super::practice::Practice;
use super::waiting::Reminders;
use model::{Arg, Command, Fact, LevelTerms, Line, Response, Utterance, VoiceTask};
use routine::Work;

/// The quiet after which a phrase is over, s. Slow speakers pause inside phrases (trade notes: 1.0 to 1.5 s).
const END_PAUSE_S: f64 = 1.2;
/// Shorter sounds are no phrase, s.
const MIN_PHRASE_S: f64 = 0.3;
/// Reading aloud takes about 15 letters a second (150 words a minute of six letters with their space; common practice, no
/// source). What takes less than this share of it is a part of the phrase.
const LETTERS_PER_S: f64 = 15.0;
const WHOLE_FROM: f64 = 0.5;
/// Behind a part the rest may come within this, s.
const REST_COMES_S: f64 = 5.0;
const REMINDERS: Reminders = Reminders { again: "reading-again", once_more: "reading-once-more", waits: "wait-for-ready" };

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
    /// The beat to read to; none: at the client's own pace.
    beat: Option<PacingBeat>,
}

/// Two parts of a phrase as one: from the first onset to the last offset; level, F0 and rate by the longer part, its end by the second.
fn joined(first: &Utterance, second: &Utterance) -> Utterance {
    let longer = if first.duration_s > second.duration_s { first } else { second };
    Utterance {
        onset_s: first.onset_s,
        offset_s: second.offset_s,
        duration_s: second.offset_s - first.onset_s,
        f0_final_st: second.f0_final_st,
        ..longer.clone()
    }
}

/// The phrase of this repetition; the list begins again where the dose is longer than the list.
fn phrase_of(practice: &Practice) -> Option<String> {
    match &practice.step()?.work {
        Work::ReadAloud { phrases, .. } if !phrases.is_empty() => phrases.get(practice.turn() % phrases.len()).cloned(),
        _ => None,
    }
}

pub(super) fn cue(practice: &mut Practice) -> Turn {
    practice.listen(listening::READING, VoiceTask::Idle);
    let Some(phrase) = phrase_of(practice) else { return Turn::Go(NextAction::EndStep) };
    let shown = match practice.step().map(|step| &step.work) {
        Some(Work::ReadAloud { melody: true, .. }) if ladder::rises(&phrase) => "read-rising-shown",
        Some(Work::ReadAloud { melody: true, .. }) => "read-falling-shown",
        _ => "read-phrase-shown",
    };
    let args = vec![("phrase", Arg::Text(phrase))];
    let last = practice.say("read-phrase", &args);
    practice.show_prompt(Line { key: shown.into(), args }, &[Command::Skip, Command::Stop]);
    practice.after(last, 0.0, NextAction::Perform).into()
}

impl ReadingRun {
    pub fn open(practice: &mut Practice) -> Self {
        practice.listen(listening::READING, VoiceTask::Speech { end_pause_s: END_PAUSE_S });
        practice.turn_began_s = practice.now_s;
        let beat = PacingBeat::begin(practice);
        let opened_s = beat.as_ref().map_or(practice.now_s, PacingBeat::counted_in_s);
        Self { patience: Patience::opened(opened_s), began_s: None, part: None, tried: false, beat }
    }

    pub fn speech_began(&mut self, practice: &mut Practice, onset_s: f64) {
        let now_s = practice.now_s;
        if !self.tried {
            practice.responded(Response::Voice, self.patience.response_s(now_s));
        }
        self.began_s = Some(onset_s);
        self.tried = true;
        self.patience.heard(now_s);
    }

    pub fn spoken(&mut self, practice: &mut Practice, utterance: &Utterance) -> Turn {
        if utterance.duration_s < MIN_PHRASE_S {
            self.began_s = None;
            return Turn::Stay;
        }
        let phrase = phrase_of(practice).unwrap_or_default();
        let whole = self.part.take().map_or_else(|| utterance.clone(), |(part, _)| joined(&part, utterance));
        if whole.duration_s < WHOLE_FROM * phrase.chars().count() as f64 / LETTERS_PER_S {
            self.began_s = None;
            self.part = Some((whole, practice.now_s + REST_COMES_S));
            return Turn::Stay;
        }
        keep(practice, phrase, &whole)
    }

    pub fn tick(&mut self, practice: &mut Practice) -> Turn {
        if let Some(beat) = &mut self.beat
            && beat.tick(practice)
        {
            return Turn::Stay;
        }
        if let Some(began_s) = self.began_s {
            let goes_on_s = practice.now_s - began_s;
            return if goes_on_s >= practice.routine.no_answer.give_up_after_s { Turn::Go(NextAction::GiveUp) } else { Turn::Stay };
        }
        // Nothing more came: what there is counts, short as it is.
        if let Some((part, until_s)) = &self.part
            && practice.now_s >= *until_s
        {
            let phrase = phrase_of(practice).unwrap_or_default();
            return keep(practice, phrase, part);
        }
        practice.wait_kindly(&mut self.patience, Response::Voice, REMINDERS)
    }
}

fn keep(practice: &mut Practice, phrase: String, utterance: &Utterance) -> Turn {
    ladder::melody(practice, &phrase, utterance);
    practice.record(Fact::PhraseRead {
        exercise: practice.exercise_id(),
        phrase,
        duration_s: utterance.duration_s,
        level_mean_db: utterance.level_mean_db,
        f0_median_hz: utterance.f0_median_hz,
        level_weighting: "A".into(),
        level_calibrated: false,
        level_terms: Some(LevelTerms::default()),
        prosody: Some(utterance.prosody()),
    });
    practice.repetition_complete();
    practice.listen(listening::READING, VoiceTask::Idle);
    Turn::Go(NextAction::AfterRepetition)
}
