//! A routine as it stands in its file: every field optional, each value with its place.
//!
//! The published JSON Schema is made from these types; their comments are what an editor shows.

use std::ops::Range;

use schemars::{JsonSchema, Schema, SchemaGenerator};
use serde::{Deserialize, Deserializer};

/// A value and where it stands in the text, bytes.
#[derive(Debug, Clone, PartialEq)]
pub struct At<T> {
    pub value: T,
    pub span: Range<usize>,
}

impl<'de, T: Deserialize<'de>> Deserialize<'de> for At<T> {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        let spanned = toml::Spanned::<T>::deserialize(deserializer)?;
        let span = spanned.span();
        Ok(Self { value: spanned.into_inner(), span })
    }
}

impl<T: JsonSchema> JsonSchema for At<T> {
    fn inline_schema() -> bool {
        true
    }
    fn schema_name() -> std::borrow::Cow<'static, str> {
        T::schema_name()
    }
    fn json_schema(generator: &mut SchemaGenerator) -> Schema {
        T::json_schema(generator)
    }
}

/// A tidecount routine: an ordered list of exercises with a dose each.
///
/// What a step leaves out is taken from the catalogue; `tidecount exercises ID` shows it.
#[derive(Debug, Clone, Default, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub(super) struct RoutineFile {
    /// What it is called aloud, such as "Evening routine".
    #[schemars(required)]
    pub title: Option<At<String>>,
    /// The language it is led in. Default "en".
    pub language: Option<At<String>>,
    /// Whose routine it is: a short name of your own choosing, kept with the journal. No real name is needed.
    pub client: Option<At<String>>,
    /// The clinician's words before a loud trial, such as "strong voice".
    pub cue_words: Option<At<String>>,
    /// The measured number is told after each n-th trial. 0: only when asked. Default 5.
    pub feedback_every: Option<At<i64>>,
    /// Loud holds of one practice together, seconds; what goes beyond is left for another day. Default 300.
    pub loud_limit_s: Option<At<f64>>,
    /// A spoken agreement to an exercise holds for so many months; then it is asked for again. Default 6.
    pub agreement_months: Option<At<i64>>,
    /// What the client rates aloud at the end of a practice, 0 to 10: "effort", "tiredness", "pain". Left out: nothing is asked.
    #[schemars(extend("examples" = [["effort", "tiredness", "pain"]]))]
    pub ratings: Option<At<Vec<At<String>>>>,
    /// True: once a week, at the end, the client is asked how the voice served them, why planned days were missed, and, where there is
    /// swallow work, for warning signs. Default false.
    pub weekly_questions: Option<At<bool>>,
    /// The clinician's word for a practice that is longer, louder or more often a day than needs none; shown on the report.
    pub clinician_word: Option<At<ClinicianWordFile>>,
    /// What to do when nobody answers.
    pub no_answer: Option<At<NoAnswerFile>>,
    /// When it is meant to be done. Left out: whenever the client likes.
    pub plan: Option<At<Vec<At<PlanFile>>>>,
    /// The steps, in order.
    #[schemars(required)]
    pub step: Option<At<Vec<At<StepFile>>>>,
}

/// A time of day on some days of the week.
#[derive(Debug, Clone, Default, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub(super) struct PlanFile {
    /// The days, "monday" to "sunday". Left out: every day.
    pub days: Option<At<Vec<At<String>>>>,
    /// Local time of day, hours 0 to 23 and minutes, such as "18:30".
    #[schemars(required, extend("examples" = ["18:30"]))]
    pub at: Option<At<String>>,
}

/// What a clinician has said, so that a dose may go beyond what needs no word.
#[derive(Debug, Clone, Default, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub(super) struct ClinicianWordFile {
    /// Who said it, such as "the client's speech therapist". No real name is needed.
    #[schemars(required, extend("examples" = ["the client's speech therapist"]))]
    pub who: Option<At<String>>,
    /// Why this dose.
    #[schemars(required, extend("examples" = ["goes on from the hospital's programme"]))]
    pub why: Option<At<String>>,
}

/// How patiently silence is taken.
#[derive(Debug, Clone, Default, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub(super) struct NoAnswerFile {
    /// Seconds of silence before it asks again. Default 12.
    pub ask_again_after_s: Option<At<f64>>,
    /// How many times it asks again. Default 2.
    pub asks: Option<At<i64>>,
    /// Seconds without any answer after which the session ends, with everything kept. Default 600.
    pub give_up_after_s: Option<At<f64>>,
}

/// One exercise with its dose.
#[derive(Debug, Clone, Default, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub(super) struct StepFile {
    /// Which exercise of the catalogue.
    #[schemars(required)]
    pub exercise: Option<At<String>>,
    /// True: the cautions of this exercise were read, and the client's clinician agrees to it.
    pub cautions_acknowledged: Option<At<bool>>,
    /// Sitting or standing, where the exercise may be done either way. Default: its first.
    pub posture: Option<At<String>>,
    /// The clinician's word for a dose of this exercise that is beyond what needs none; shown on the report.
    pub clinician_word: Option<At<ClinicianWordFile>>,
    /// Number of sets.
    pub sets: Option<At<i64>>,
    /// Repetitions in a set; rounds of a paced exercise; how many of the phrases or questions are asked.
    pub repetitions: Option<At<i64>>,
    /// Rest between repetitions, seconds.
    pub rest_s: Option<At<f64>>,
    /// Rest between sets, seconds.
    pub set_rest_s: Option<At<f64>>,
    /// Voiced: the goal that is said and shown, seconds.
    pub target_s: Option<At<f64>>,
    /// Voiced: breaks up to this long do not end the hold, seconds.
    pub max_break_s: Option<At<f64>>,
    /// Voiced: shorter voicing is not a trial, seconds.
    pub min_hold_s: Option<At<f64>>,
    /// Voiced: brief cues during the hold at these seconds. Empty: silent until the voice ends.
    pub cues_at_s: Option<At<Vec<At<f64>>>>,
    /// Ladder: the steps in order, "soft", "medium", "strong", or "low", "middle", "high". A set begins with the first.
    #[schemars(extend("examples" = [["soft", "medium", "strong", "medium"]]))]
    pub rungs: Option<At<Vec<At<String>>>>,
    /// Ladder of loudness: how large a step is meant to be, decibels.
    pub step_db: Option<At<f64>>,
    /// Ladder of pitch: how large a step is meant to be, semitones.
    pub step_st: Option<At<f64>>,
    /// Timed: the phases of the posture, in order.
    pub phases: Option<At<Vec<At<PhaseFile>>>>,
    /// Timed: seconds are counted aloud each so many seconds.
    pub count_every_s: Option<At<i64>>,
    /// Timed: each second is counted aloud in the last so many seconds of a phase.
    pub count_last_s: Option<At<i64>>,
    /// Paced: counts of the breath in.
    #[serde(rename = "in")]
    pub counts_in: Option<At<i64>>,
    /// Paced: counts of the breath out.
    #[serde(rename = "out")]
    pub counts_out: Option<At<i64>>,
    /// Paced: seconds from count to count. Phrases to a beat: seconds from beat to beat.
    pub beat_s: Option<At<f64>>,
    /// Repeated: the next cue comes by itself after this long, seconds. Left out: it waits for "done".
    pub next_cue_after_s: Option<At<f64>>,
    /// Repeated: a sip of water is offered after each n-th repetition. Only with `sips_enabled_by_clinician = true`.
    pub sip_every: Option<At<i64>>,
    /// Repeated: true where the client's clinician has enabled sips of water.
    pub sips_enabled_by_clinician: Option<At<bool>>,
    /// Only with the clinician's settings: what the clinician has set for this client, said before the first one.
    #[schemars(extend("examples" = ["two turns of the dial"]))]
    pub setting: Option<At<String>>,
    /// Read aloud: the phrases.
    pub phrases: Option<At<Vec<At<String>>>>,
    /// Talk: what to talk about, one prompt a repetition. Left out: what comes to mind.
    pub prompts: Option<At<Vec<At<String>>>>,
    /// Talk: the passage that is read aloud.
    pub passage: Option<At<String>>,
    /// Rapid: the syllables, such as "pa-ta-ka".
    pub syllables: Option<At<String>>,
    /// Rapid, talk, rest, naming: how long, seconds. A rest without a length waits for "ready".
    pub length_s: Option<At<f64>>,
    /// Question: the questions.
    pub questions: Option<At<Vec<At<QuestionFile>>>>,
    /// Question: word packs, by the name of a built-in one or by a file beside the routine. `repetitions` says how many are asked.
    pub packs: Option<At<Vec<At<String>>>>,
    /// Question: time to think, seconds.
    pub think_s: Option<At<f64>>,
    /// A dose that grows over the weeks: stages, and on how many days each is done whole before the next.
    pub ramp: Option<At<RampFile>>,
}

/// A dose that grows over the weeks.
#[derive(Debug, Clone, Default, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub(super) struct RampFile {
    /// On how many different days all repetitions are done at a stage before the next. Default 3.
    pub days: Option<At<i64>>,
    /// The stages, from the first. What a stage leaves out is the step's own.
    #[schemars(required)]
    pub stages: Option<At<Vec<At<StageFile>>>>,
}

/// The dose of one stage.
#[derive(Debug, Clone, Default, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub(super) struct StageFile {
    /// Number of sets.
    pub sets: Option<At<i64>>,
    /// Repetitions in a set.
    pub repetitions: Option<At<i64>>,
    /// Timed, of one phase: how long it is held, seconds.
    pub hold_s: Option<At<f64>>,
    /// Timed: the phases of the posture, in order.
    pub phases: Option<At<Vec<At<PhaseFile>>>>,
    /// Voiced: the goal, seconds.
    pub target_s: Option<At<f64>>,
    /// Paced: counts of the breath in.
    #[serde(rename = "in")]
    pub counts_in: Option<At<i64>>,
    /// Paced: counts of the breath out.
    #[serde(rename = "out")]
    pub counts_out: Option<At<i64>>,
    /// Rapid: how long, seconds.
    pub length_s: Option<At<f64>>,
}

/// One phase of a timed posture.
#[derive(Debug, Clone, Default, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub(super) struct PhaseFile {
    /// One of the exercise's phases, such as "press".
    #[schemars(required)]
    pub name: Option<At<String>>,
    /// How long, seconds.
    #[schemars(required)]
    pub length_s: Option<At<f64>>,
}

/// One word question.
#[derive(Debug, Clone, Default, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub(super) struct QuestionFile {
    /// What is asked.
    #[schemars(required)]
    pub clue: Option<At<String>>,
    /// Accepted answers; the first is the one that is told.
    #[schemars(required)]
    pub answers: Option<At<Vec<At<String>>>>,
    /// Plausible answers that come near; they bring the hint.
    pub near: Option<At<Vec<At<String>>>>,
    /// Told when an answer was near, when half the time is over, or when the client asks for it.
    pub hint: Option<At<String>>,
    /// Told after the answer.
    pub fact: Option<At<String>>,
}

macro_rules! present {
    ($self:ident: $($name:literal $field:ident),* $(,)?) => {{
        let mut found = Vec::new();
        $(if let Some(at) = &$self.$field { found.push(($name, at.span.clone())); })*
        found
    }};
}

impl StageFile {
    /// The fields that were given, with their places.
    pub fn present(&self) -> Vec<(&'static str, Range<usize>)> {
        present!(self:
            "sets" sets, "repetitions" repetitions, "hold_s" hold_s, "phases" phases, "target_s" target_s,
            "in" counts_in, "out" counts_out, "length_s" length_s,
        )
    }
}

impl StepFile {
    /// The dose's fields that were given, with their places.
    pub fn present(&self) -> Vec<(&'static str, Range<usize>)> {
        present!(self:
            "sets" sets, "repetitions" repetitions, "rest_s" rest_s, "set_rest_s" set_rest_s,
            "target_s" target_s, "max_break_s" max_break_s, "min_hold_s" min_hold_s, "cues_at_s" cues_at_s,
            "phases" phases, "count_every_s" count_every_s, "count_last_s" count_last_s,
            "in" counts_in, "out" counts_out, "beat_s" beat_s,
            "next_cue_after_s" next_cue_after_s, "sip_every" sip_every,
            "sips_enabled_by_clinician" sips_enabled_by_clinician, "setting" setting,
            "rungs" rungs, "step_db" step_db, "step_st" step_st,
            "phrases" phrases, "prompts" prompts, "passage" passage, "syllables" syllables, "length_s" length_s, "questions" questions, "packs" packs, "think_s" think_s,
            "ramp" ramp,
        )
    }

    /// Every number that was given, by the name of its limit.
    pub fn numbers(&self) -> Vec<(&'static str, f64, Range<usize>)> {
        #[allow(clippy::cast_precision_loss, reason = "limits are far below 2^53; larger values are refused as well")]
        let whole = |name, at: &Option<At<i64>>| at.as_ref().map(|at| (name, at.value as f64, at.span.clone()));
        let number = |name, at: &Option<At<f64>>| at.as_ref().map(|at| (name, at.value, at.span.clone()));
        let mut all: Vec<_> = [
            whole("sets", &self.sets),
            whole("repetitions", &self.repetitions),
            number("rest_s", &self.rest_s),
            number("set_rest_s", &self.set_rest_s),
            number("target_s", &self.target_s),
            number("max_break_s", &self.max_break_s),
            number("min_hold_s", &self.min_hold_s),
            number("step_db", &self.step_db),
            number("step_st", &self.step_st),
            whole("count_every_s", &self.count_every_s),
            whole("count_last_s", &self.count_last_s),
            whole("in", &self.counts_in),
            whole("out", &self.counts_out),
            number("beat_s", &self.beat_s),
            number("next_cue_after_s", &self.next_cue_after_s),
            whole("sip_every", &self.sip_every),
            number("length_s", &self.length_s),
            number("think_s", &self.think_s),
        ]
        .into_iter()
        .flatten()
        .collect();
        for cue in self.cues_at_s.iter().flat_map(|cues| &cues.value) {
            all.push(("cues_at_s", cue.value, cue.span.clone()));
        }
        for phase in self.phases.iter().flat_map(|phases| &phases.value) {
            if let Some(length) = &phase.value.length_s {
                all.push(("phase_s", length.value, length.span.clone()));
            }
        }
        all
    }
}
