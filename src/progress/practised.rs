//! What a client has practised, as the record tells it: what goes into the arithmetic.

use super::cueing::Cueing;
use super::goal::Goal;
use super::trial::Trial;
use jiff::{ZonedDateTime, civil::Date};
use model::{MissedReason, RatedOver, Rating, SignAnswer, StepReason, SwallowSign, Symptom};
use serde::Serialize;

/// One live practice.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Practice {
    /// Its number in this record.
    pub session: i64,
    /// Local time of day at which it began, with its zone.
    pub began: ZonedDateTime,
    /// The civil day on which it began.
    pub day: Date,
    pub routine_title: String,
    /// The routine file as it was practised.
    #[serde(skip)]
    pub routine_text: String,
    /// The package that was in force, where it came from a home computer or one had been taken here.
    pub package: Option<String>,
    pub software: String,
    /// How it ended; none where it was interrupted or is under way.
    pub end_reason: Option<String>,
    pub steps_done: u32,
    pub steps_prescribed: u32,
    /// Time practised, all parts together, min.
    pub minutes: f64,
    /// Parts: more than one where it was interrupted and gone on with.
    pub parts: u32,
    /// What came of each step that was begun.
    pub steps: Vec<StepResult>,
    /// Its date cannot be believed: the clock was wrong. It stands in no figure.
    pub misdated: bool,
}

/// What came of one step of one practice.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct StepResult {
    /// Its number in the routine, from 1.
    pub step: u32,
    pub exercise: String,
    /// The stage of a dose that grows, from 1.
    pub ramp_stage: Option<u32>,
    pub done: u32,
    /// None where the practice broke off within it: the routine says how much it was.
    pub prescribed: Option<u32>,
    /// Why it was ended early; none where it was not.
    pub stopped: Option<StepReason>,
}

/// A step that was left out whole.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct LeftOutStep {
    pub session: i64,
    pub day: Date,
    pub exercise: String,
    /// Or a step's own reason where it was ended before its first repetition.
    pub reason: StepReason,
}

/// The client said that something was wrong.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct SafetyStop {
    pub session: i64,
    pub when: ZonedDateTime,
    pub day: Date,
    /// None outside a step.
    pub exercise: Option<String>,
    /// Outside a step, the exercise that was led last; none before the first.
    pub after: Option<String>,
    pub reason: Symptom,
}

/// What a note is about.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum NoteKind {
    /// A trouble of room or devices; the text is its name, "room-talks".
    Trouble,
    /// A calibration ceased to hold; the text says why.
    CalibrationVoid,
    /// Loud holds reached the routine's limit.
    LoudLimit,
    /// Holds or level fell beyond this person's usual scatter within a practice; the text says what and by how much.
    Fall,
    /// Sound was lost on its way from the microphone.
    SoundLost,
    /// The practice ended before its end; the text is the reason.
    EndedEarly,
}

/// Something worth a clinician's glance.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Note {
    pub session: i64,
    pub when: ZonedDateTime,
    pub day: Date,
    pub kind: NoteKind,
    pub exercise: Option<String>,
    pub text: String,
}

/// How long a step of a practice took, from its beginning to its end, rests within it counted.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct StepTime {
    pub session: i64,
    /// Its number in the routine, from 1.
    pub step: u32,
    pub time_s: f64,
}

/// One rating that was given, or passed over.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
pub struct Rated {
    pub session: i64,
    pub day: Date,
    pub what: Rating,
    pub over: RatedOver,
    /// 0 to 10; none where it was passed over.
    pub value: Option<u8>,
}

/// What a client answered to whether there was a warning sign about swallowing.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct SignAnswered {
    pub session: i64,
    pub day: Date,
    pub sign: SwallowSign,
    pub answer: SignAnswer,
}

/// Why planned days of a week were missed, as the client said.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct DaysMissed {
    pub session: i64,
    /// When it was asked.
    pub day: Date,
    pub days: u32,
    /// None where the question was passed over.
    pub reason: Option<MissedReason>,
}

/// A moment of the week when the voice did what was wanted, as the client told it at the end of a practice.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Moment {
    pub session: i64,
    pub day: Date,
    /// Part of the practice, from 1, and from where to where on its sample clock, s.
    pub part: u32,
    pub from_s: f64,
    pub until_s: f64,
    /// Written down; none where there was no model that could.
    pub text: Option<String>,
    /// It can be heard until this day; none where its sound is not there, or no more.
    pub heard_until: Option<Date>,
}

/// A practice that is dated before the one led before it.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct ClockJump {
    pub session: i64,
    pub began: ZonedDateTime,
    /// When the practice led before it began.
    pub before: ZonedDateTime,
}

/// Everything that one client has practised live, here or on a computer whose results were received.
#[derive(Debug, Clone, PartialEq, Default, Serialize)]
pub struct Practised {
    pub client: String,
    /// The day on which it was read, which is not over.
    pub today: Option<Date>,
    /// By the time at which they began.
    pub practices: Vec<Practice>,
    /// By day, practice and entry.
    pub trials: Vec<Trial>,
    pub left_out: Vec<LeftOutStep>,
    pub safety_stops: Vec<SafetyStop>,
    pub notes: Vec<Note>,
    pub clock_jumps: Vec<ClockJump>,
    /// How long each step took, where the journal tells it.
    pub step_times: Vec<StepTime>,
    /// What help was given and asked for, by practice.
    pub cueing: Vec<Cueing>,
    /// By practice and entry; of one practice the last of each kind, for an answer can be corrected.
    pub ratings: Vec<Rated>,
    /// The last answer of each practice to each sign.
    pub signs: Vec<SignAnswered>,
    pub days_missed: Vec<DaysMissed>,
    /// Of each practice the one told last.
    pub moments: Vec<Moment>,
    /// In the order in which they were set, those that were removed among them.
    pub goals: Vec<Goal>,
}
