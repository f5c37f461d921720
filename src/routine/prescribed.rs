//! What was prescribed, as plain data: a routine, its steps, and how a repetition runs.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use model::{Climbs, Rating, Rung};

use super::clinician::ClinicianWords;
use super::placed::Posture;

/// One file of prescribed steps, checked and with every default filled in.
#[derive(Debug, Clone, PartialEq)]
pub struct Routine {
    /// What it is called aloud, "Evening routine".
    pub title: String,
    /// The steps in order, at least one.
    pub steps: Vec<Step>,
    /// What to do when nobody answers.
    pub no_answer: NoAnswer,
    /// Words of the clinician before a loud trial, "strong voice"; none by default.
    pub cue_words: Option<String>,
    /// The number is told after each n-th trial and when asked. 0: only when asked.
    pub feedback_every: u32,
    /// Loud holds of one practice together, s; what goes beyond is left for another day.
    pub loud_limit_s: f64,
    /// What the clinician has said about doses beyond those that need no word.
    pub clinician: ClinicianWords,
    /// What is asked at the end.
    pub looking_back: LookingBack,
}

/// What a client is asked at the end of a practice. Nothing by default.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct LookingBack {
    /// Rated 0 to 10 after each practice, in this order.
    pub ratings: Vec<Rating>,
    /// Once a week: the voice in daily life, why planned days were missed, and warning signs where there is swallow work.
    pub weekly: bool,
}

/// How patiently silence is taken.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct NoAnswer {
    /// Seconds of silence before it asks again. Default 12.
    pub ask_again_after_s: f64,
    /// How many times it asks again. Default 2.
    pub asks: u32,
    /// Seconds without any answer after which the session ends with all kept. Default 600.
    pub give_up_after_s: f64,
}

/// One exercise with its dose.
#[derive(Debug, Clone, PartialEq)]
pub struct Step {
    /// The catalogue entry.
    pub exercise: Exercise,
    /// Number of sets, at least 1.
    pub sets: u32,
    /// Repetitions in a set, at least 1 (rounds for paced, phrases or items asked for read aloud and question).
    pub repetitions: u32,
    /// Rest between repetitions, s.
    pub rest_s: f64,
    /// Rest between sets, s.
    pub set_rest_s: f64,
    /// How a repetition runs.
    pub work: Work,
    /// In which posture it is done; none where any will do.
    pub posture: Option<Posture>,
    /// The stage of a dose that grows over the weeks, from 1; none where it does not grow.
    pub ramp_stage: Option<u32>,
}

/// How a repetition runs, with the numbers of this routine.
#[derive(Debug, Clone, PartialEq)]
pub enum Work {
    /// From voice onset to offset.
    Voiced {
        /// Goal that is said and shown, s.
        target_s: Option<f64>,
        /// Breaks up to this long do not end the hold, s.
        max_break_s: f64,
        /// Shorter voicing is not a trial, s.
        min_hold_s: f64,
        /// The pitch is meant to move.
        glide: bool,
        /// Brief cues during the hold at these seconds; empty: silent until the offset.
        cues_at_s: Vec<f64>,
        /// Each hold is a step of a ladder of loudness or pitch; none: each is like the other.
        ladder: Option<Ladder>,
    },
    /// A posture held in silence through phases, counted aloud.
    Timed {
        phases: Vec<Phase>,
        /// Seconds are counted aloud each second in the last `count_last_s` of a phase and each `count_every_s` before.
        count_every_s: u32,
        count_last_s: u32,
    },
    /// A cycle of counts on the beat; one cycle is one repetition.
    Paced {
        phases: Vec<CountedPhase>,
        /// Seconds from count to count.
        beat_s: f64,
    },
    /// Self-paced, ended by "done" or by the next cue.
    Repeated {
        /// The next cue comes by itself after this long, s; none: waits for "done".
        next_cue_after_s: Option<f64>,
        /// A sip of water is offered after each n-th repetition; none: saliva only.
        sip_every: Option<u32>,
        /// What the clinician has set for this client, said before the first one; none where nothing is to be set.
        setting: Option<String>,
    },
    /// Phrases shown large and spoken by the tool, then by the client.
    ReadAloud {
        phrases: Vec<String>,
        /// Rising at the end where the phrase ends in a question mark, falling elsewhere; what was done is told.
        melody: bool,
        /// A beat that is counted in and then shown, s; none: at the client's own pace.
        beat_s: Option<f64>,
    },
    /// Talk on a prompt for this long, s, or a passage read aloud, which may take no longer than this.
    Talk {
        /// Shown, not spoken; none: talk on a prompt.
        passage: Option<String>,
        /// Said one by one; empty: the exercise's own cue says what to talk about.
        prompts: Vec<String>,
        length_s: f64,
    },
    /// Syllables as fast and even as possible for this long, s.
    Rapid { syllables: String, length_s: f64 },
    /// A clue, time to think, a spoken answer.
    Question { items: Vec<QuestionItem>, think_s: f64 },
    /// As many of a category as come to mind in this time, s.
    Naming { items: Vec<NamingItem>, length_s: f64 },
    /// Rest for a time, or until "ready" where none is given.
    Rest { length_s: Option<f64> },
}

/// Holds in steps, each against the one before.
#[derive(Debug, Clone, PartialEq)]
pub struct Ladder {
    pub climbs: Climbs,
    /// The steps in order, at least two; it begins again with each set, and where a set has more repetitions than steps.
    pub rungs: Vec<Rung>,
    /// How large a step is meant to be, dB or semitones.
    pub goal: f64,
}

impl Ladder {
    /// The step of this repetition of a set, counted from 1, and the one before it; none where that is the same, as it may be where the
    /// ladder begins again: that is no step.
    #[must_use]
    pub fn at(&self, repetition: u32) -> Option<(Rung, Option<Rung>)> {
        let index = repetition.saturating_sub(1) as usize;
        let rung = |index: usize| self.rungs.get(index % self.rungs.len().max(1)).copied();
        let here = rung(index)?;
        Some((here, index.checked_sub(1).and_then(rung).filter(|before| *before != here)))
    }
}

/// One phase of a timed posture.
#[derive(Debug, Clone, PartialEq)]
pub struct Phase {
    /// Which phase of the exercise it is; names the words to say: message `ex-ID-phase-NAME`.
    pub name: String,
    /// How long, s.
    pub length_s: f64,
}

/// One phase of a paced cycle.
#[derive(Debug, Clone, PartialEq)]
pub struct CountedPhase {
    /// "in", "out", "hold"; the word that stands in place of the first count: message `paced-NAME`.
    pub name: String,
    /// How many counts.
    pub counts: u32,
}

/// One word question.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct QuestionItem {
    /// The sort of game, said before the first clue of its sort; none for a routine's own questions.
    #[serde(default)]
    pub kind: Option<PackKind>,
    pub clue: String,
    /// Accepted answers; the first is the one that is told.
    pub answers: Vec<String>,
    /// Plausible answers that come near; they bring the hint.
    #[serde(default)]
    pub near: Vec<String>,
    pub hint: Option<String>,
    pub fact: Option<String>,
}

/// One category to name members of.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct NamingItem {
    pub clue: String,
    /// What it is called in "you named nine animals".
    pub category: String,
    /// What counts; wordings of one member parted by `|`.
    pub members: Vec<String>,
    pub fact: Option<String>,
}

/// The nine ways of timing.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Timing {
    Voiced,
    Timed,
    Paced,
    Repeated,
    ReadAloud,
    Talk,
    Rapid,
    Question,
    Rest,
}

/// What the engine needs of a catalogue entry. The catalogue itself holds more (doses with sources, limits).
///
/// Its words are the messages `ex-ID-name`, `ex-ID-purpose`, `ex-ID-instruction` (the whole),
/// `ex-ID-short` (from the second time on), `ex-ID-cue` (starts one repetition).
#[derive(Debug, Clone, PartialEq)]
pub struct Exercise {
    /// Kebab-case, "long-ah".
    pub id: String,
    pub timing: Timing,
    /// Keys of the cautions said before a first session: messages `caution-KEY`.
    pub cautions: Vec<String>,
    /// Left out unless a spoken "yes" says that a clinician has agreed.
    pub needs_agreement: bool,
    /// The client must first get into a position: it waits for "ready" before the first repetition of a set.
    pub waits_for_ready: bool,
}

/// What sort of game a pack holds.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum PackKind {
    /// Two meanings, one word.
    DoubleMeaning,
    Opposite,
    /// The end of a saying.
    Saying,
    OddOneOut,
    Definition,
    /// What goes with it.
    Pair,
    /// As many as come to mind.
    Category,
}

impl PackKind {
    pub(super) const NAMES: [(&'static str, PackKind); 7] = [
        ("double-meaning", PackKind::DoubleMeaning),
        ("opposite", PackKind::Opposite),
        ("saying", PackKind::Saying),
        ("odd-one-out", PackKind::OddOneOut),
        ("definition", PackKind::Definition),
        ("pair", PackKind::Pair),
        ("category", PackKind::Category),
    ];

    /// As it stands in files, and in the message `question-kind-NAME` that opens such questions.
    #[must_use]
    pub fn name(self) -> &'static str {
        Self::NAMES.iter().find(|(_, kind)| *kind == self).map_or("", |(name, _)| name)
    }
}
