//! What can be kept of a practice.
//!
//! Each kind of fact is declared once, with its name in the journal; [`FactKind`] and the reading of a line whose kind is known
//! ([`Fact::read`]) come from the same declaration.

use crate::by_kind::KindAndBody;
use crate::command::Command;
use crate::leading::{Fall, Response, Trouble};
use crate::level::LevelTerms;
use crate::looking_back::{MissedReason, SignAnswer, SwallowSign};
use crate::rating::{RatedOver, Rating};
use crate::reason::{AgreementAnswer, EndReason, EndedBy, FrequencyWeighting, MicrophoneNote, StepReason, Symptom};
use crate::rung::Climb;
use crate::voice::{Prosody, VoiceQuality};
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

macro_rules! facts {
    ($(#[$about:meta])* pub enum Fact { $($(#[$kind:meta])* $Kind:ident = $name:literal { $($body:tt)* },)+ }) => {
        $(#[$about])*
        #[derive(Debug, Clone, PartialEq, Serialize, Deserialize, JsonSchema)]
        #[serde(tag = "kind")]
        pub enum Fact {
            $($(#[$kind])* #[serde(rename = $name)] $Kind { $($body)* },)+
        }

        /// The same, read from a line whose kind is already known.
        #[derive(Deserialize, JsonSchema)]
        #[serde(remote = "Fact")]
        enum KnownKind {
            $($(#[$kind])* #[serde(rename = $name)] $Kind { $($body)* },)+
        }

        /// The kinds of [`Fact`].
        #[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
        pub enum FactKind {
            $($(#[$kind])* $Kind,)+
        }

        impl FactKind {
            /// As it stands in the journal, "hold_measured".
            #[must_use]
            pub const fn name(self) -> &'static str {
                match self { $(Self::$Kind => $name,)+ }
            }

            /// The kind of that name; none where this version knows none.
            #[must_use]
            pub fn of_name(name: &str) -> Option<Self> {
                match name { $($name => Some(Self::$Kind),)+ _ => None }
            }
        }

        impl Fact {
            /// Its kind.
            #[must_use]
            pub fn kind(&self) -> FactKind {
                match self { $(Self::$Kind { .. } => FactKind::$Kind,)+ }
            }
        }
    };
}

facts! {
    /// What can be kept. Units are in the names. A value that could not be measured is NaN here and `null` in the journal.
    pub enum Fact {
        SessionBegun = "session_begun" {
            routine: String,
            steps: u32,
            software: String,
        },
        /// Went on from here after an interruption.
        SessionResumed = "session_resumed" {
            from: String,
        },
        /// The spoken answer to the cautions of an exercise (before version 0.2: of several together); `given` false also where none came.
        Agreement = "agreement" {
            given: bool,
            exercises: Vec<String>,
            answer: Option<AgreementAnswer>,
            /// For how much of it: thirds of what needs no clinician's word, 1 to 3; 4 is more than that.
            dose_band: Option<u32>,
            /// In which posture: lying, sitting, standing.
            posture: Option<String>,
        },
        /// The spoken answer to whether the sound of practices may be kept for so many days, as the page asks; `null` where none came.
        SoundConsent = "sound_consent" {
            given: Option<bool>,
            days: u32,
        },
        /// Left out for want of agreement.
        StepLeftOut = "step_left_out" {
            exercise: String,
            reason: StepReason,
        },
        StepBegun = "step_begun" {
            exercise: String,
            /// The stage of a dose that grows over the weeks, from 1.
            #[serde(default, skip_serializing_if = "Option::is_none")]
            ramp_stage: Option<u32>,
        },
        /// A voiced trial.
        HoldMeasured = "hold_measured" {
            exercise: String,
            onset_s: f64,
            offset_s: f64,
            duration_s: f64,
            #[serde(with = "crate::measured")]
            #[schemars(with = "Option<f64>")]
            f0_median_hz: f64,
            #[serde(with = "crate::measured")]
            #[schemars(with = "Option<f64>")]
            f0_span_st: f64,
            #[serde(with = "crate::measured")]
            #[schemars(with = "Option<f64>")]
            level_mean_db: f64,
            #[serde(with = "crate::measured")]
            #[schemars(with = "Option<f64>")]
            level_fall_db: f64,
            level_weighting: FrequencyWeighting,
            level_calibrated: bool,
            /// Standard deviation of F0 about its median, semitones.
            #[serde(default, skip_serializing_if = "Option::is_none")]
            f0_sd_st: Option<f64>,
            /// Slope of the level over the hold, dB a second; negative where the voice fades.
            #[serde(default, skip_serializing_if = "Option::is_none")]
            level_slope_db_per_s: Option<f64>,
            #[serde(default, skip_serializing_if = "Option::is_none")]
            level_terms: Option<LevelTerms>,
            /// For the clinician's page alone. A louder voice alone makes these figures better.
            #[serde(default, skip_serializing_if = "Option::is_none")]
            quality: Option<VoiceQuality>,
            /// Where it is a step of a ladder of loudness or pitch.
            #[serde(default, skip_serializing_if = "Option::is_none")]
            climb: Option<Climb>,
            breaks: u32,
            masked_s: f64,
            /// False where it was cut off by a command.
            complete: bool,
        },
        /// A posture or phase sequence was held.
        PostureHeld = "posture_held" {
            exercise: String,
            duration_s: f64,
            prescribed_s: f64,
            complete: bool,
        },
        /// One paced cycle.
        RoundPaced = "round_paced" {
            exercise: String,
            duration_s: f64,
            beat_s: f64,
            complete: bool,
        },
        /// One self-paced repetition; `ended_by` is "done" or "next cue".
        RepetitionDone = "repetition_done" {
            exercise: String,
            duration_s: f64,
            ended_by: EndedBy,
            /// The clue or category that was asked, where nothing of the answer could be heard and nothing is judged.
            #[serde(default, skip_serializing_if = "Option::is_none")]
            asked: Option<String>,
        },
        PhraseRead = "phrase_read" {
            exercise: String,
            phrase: String,
            duration_s: f64,
            #[serde(with = "crate::measured")]
            #[schemars(with = "Option<f64>")]
            level_mean_db: f64,
            #[serde(with = "crate::measured")]
            #[schemars(with = "Option<f64>")]
            f0_median_hz: f64,
            level_weighting: FrequencyWeighting,
            level_calibrated: bool,
            #[serde(default, skip_serializing_if = "Option::is_none")]
            level_terms: Option<LevelTerms>,
            /// How it was intoned, and how fast it was said.
            #[serde(default, skip_serializing_if = "Option::is_none")]
            prosody: Option<Prosody>,
        },
        /// Talk on a prompt, or a passage read aloud: `duration_s` from the first word to the last, `speaking_s` without the pauses
        /// of a quarter of a second and more, of which there are `pauses`. `prompt` is none for a passage.
        Talked = "talked" {
            exercise: String,
            prompt: Option<String>,
            duration_s: f64,
            speaking_s: f64,
            pauses: u32,
            #[serde(with = "crate::measured")]
            #[schemars(with = "Option<f64>")]
            pause_share_pct: f64,
            #[serde(with = "crate::measured")]
            #[schemars(with = "Option<f64>")]
            level_mean_db: f64,
            #[serde(with = "crate::measured")]
            #[schemars(with = "Option<f64>")]
            f0_median_hz: f64,
            level_weighting: FrequencyWeighting,
            level_calibrated: bool,
            #[serde(default, skip_serializing_if = "Option::is_none")]
            level_terms: Option<LevelTerms>,
            complete: bool,
        },
        SyllablesCounted = "syllables_counted" {
            exercise: String,
            syllables: u32,
            duration_s: f64,
            #[serde(with = "crate::measured")]
            #[schemars(with = "Option<f64>")]
            rate_hz: f64,
            #[serde(with = "crate::measured")]
            #[schemars(with = "Option<f64>")]
            irregularity_pct: f64,
        },
        QuestionAnswered = "question_answered" {
            exercise: String,
            clue: String,
            answer: Option<String>,
            correct: bool,
            hint_given: bool,
            duration_s: f64,
        },
        /// What was named of a category, each once, in the order in which it was heard.
        CategoryNamed = "category_named" {
            exercise: String,
            category: String,
            named: Vec<String>,
            duration_s: f64,
            complete: bool,
        },
        Rested = "rested" {
            duration_s: f64,
        },
        /// How long the client took, from the end of our line.
        ResponseTimed = "response_timed" {
            to: Response,
            after_s: f64,
        },
        /// Holds or level fell over the last trials beyond this person's usual scatter; s or dB, as `of` says.
        FallNoticed = "fall_noticed" {
            exercise: String,
            of: Fall,
            reference: f64,
            latest: f64,
            usual: f64,
        },
        /// A rest was offered because of it; `taken` also where nobody answered.
        RestOffered = "rest_offered" {
            taken: bool,
        },
        /// A measured result was told: after so many trials, or because the client asked.
        ResultTold = "result_told" {
            exercise: String,
            asked: bool,
        },
        /// The client's own rating of a practice or a week, 0 to 10; `null` where the question was passed over.
        Rated = "rated" {
            what: Rating,
            over: RatedOver,
            #[schemars(range(max = 10))]
            value: Option<u8>,
        },
        /// A warning sign about swallowing over the last week, as the client answered.
        SwallowSign = "swallow_sign" {
            sign: SwallowSign,
            answer: SignAnswer,
        },
        /// So many planned days of the last week went by without practice, and why; `null` where the question was passed over.
        DaysMissed = "days_missed" {
            days: u32,
            reason: Option<MissedReason>,
        },
        /// A moment of the last week when the voice did what was wanted, told in the client's own words: from where to where on the sample
        /// clock of the part. `null` where nothing was told, or it was passed over. The last one counts.
        MomentTold = "moment_told" {
            from_s: Option<f64>,
            until_s: Option<f64>,
            /// As a model with a full vocabulary wrote it down, where there is one.
            #[serde(default, skip_serializing_if = "Option::is_none")]
            text: Option<String>,
        },
        /// Loud holds have reached the routine's limit for one practice.
        LoudLimitReached = "loud_limit_reached" {
            loud_s: f64,
            limit_s: f64,
        },
        CommandHeard = "command_heard" {
            command: Command,
            text: String,
            confidence: f64,
        },
        /// A repetition that nobody made.
        NoAnswer = "no_answer" {
            asked: u32,
        },
        StepDone = "step_done" {
            exercise: String,
            repetitions_done: u32,
            repetitions_prescribed: u32,
        },
        StepStopped = "step_stopped" {
            exercise: String,
            reason: StepReason,
            repetitions_done: u32,
            repetitions_prescribed: u32,
        },
        /// Said by the client: dizzy, pain, chest pain, can't breathe, choking, feels sick, help.
        SafetyStop = "safety_stop" {
            exercise: Option<String>,
            /// Where none was under way: the one led last, which may be what it came from.
            #[serde(default, skip_serializing_if = "Option::is_none")]
            exercise_before: Option<String>,
            reason: Symptom,
        },
        /// The recogniser died and was restarted.
        RecogniserRestarted = "recogniser_restarted" {
            lost_s: f64,
        },
        /// Hearing or measuring was doubtful from here on; each trouble is kept once.
        Troubled = "troubled" {
            trouble: Trouble,
        },
        /// The microphone of a live practice, as the sound system knows it; `gain` is "unknown" where that does not tell.
        MicrophoneUsed = "microphone_used" {
            system: String,
            name: String,
            rate_hz: u32,
            gain: String,
        },
        /// Something about the microphone's scale that bears on the figures, told once: `what` is "calibration" (what holds) or
        /// "calibration-void".
        MicrophoneNoted = "microphone_noted" {
            what: MicrophoneNote,
            text: String,
        },
        /// The room has become too loud to measure in, or quiet enough again; its level, dB re full scale, A-weighted.
        RoomLoud = "room_loud" {
            loud: bool,
            room_db: f64,
        },
        /// The hold just measured stood so little over the room that its figures are doubtful.
        HoldInNoise = "hold_in_noise" {
            exercise: String,
            over_room_db: f64,
        },
        /// Microphone frames were lost.
        SoundLost = "sound_lost" {
            lost_s: f64,
        },
        SessionEnded = "session_ended" {
            reason: EndReason,
            steps_done: u32,
            steps_prescribed: u32,
            duration_s: f64,
        },
    }
}

impl Fact {
    /// Reads the fact of a journal's line whose kind is known beforehand; costs a fraction of reading a whole [`crate::Entry`].
    ///
    /// # Errors
    /// The line tells no such fact.
    pub fn read(kind: FactKind, line: &str) -> Result<Self, serde_json::Error> {
        KnownKind::deserialize(KindAndBody { kind: kind.name(), line })
    }
}
