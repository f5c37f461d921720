//! One practice of a results file as the rows that are kept of it. Pure.

use handover::HandedSession;
use jiff::ZonedDateTime;
use jiff::civil::Date;
use progress::{Conditions, Discard, Measure, Microphone, StepResult};
use session::{Entry, Fact, LevelTerms, Position};
use sha2::{Digest as _, Sha256};
use std::collections::BTreeMap;

/// Bytes kept of each entry's hash. Two entries that differ have the same with a chance of 1 in 2^64; the seal has ruled out
/// intent.
pub(super) const MARK_BYTES: usize = 8;

/// Why a practice cannot be read.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
#[error("the practice of {started} cannot be taken in ({cause})")]
pub struct SessionError {
    pub started: String,
    pub cause: String,
}

/// What a clinician wants to be told of.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum EventKind {
    /// The client said that something was wrong: "dizzy", "pain", "help".
    Safety,
    /// A step was left out whole; `what` is the reason.
    LeftOut,
    /// Holds or level fell within a practice beyond the usual scatter; `what` is "duration" or "level".
    Tired,
    /// Room or devices; `what` is the trouble's name.
    Trouble,
}

impl EventKind {
    /// As it stands in the database.
    #[must_use]
    pub fn word(self) -> &'static str {
        match self {
            Self::Safety => "safety",
            Self::LeftOut => "left-out",
            Self::Tired => "tired",
            Self::Trouble => "trouble",
        }
    }

    pub(super) fn of_word(word: &str) -> Option<Self> {
        [Self::Safety, Self::LeftOut, Self::Tired, Self::Trouble].into_iter().find(|kind| kind.word() == word)
    }
}

/// One thing to be told of.
#[derive(Debug, Clone, PartialEq)]
pub struct Event {
    /// The entry's number in its practice, from 1.
    pub seq: u32,
    pub kind: EventKind,
    pub what: String,
    pub exercise: Option<String>,
    pub day: Date,
}

/// One attempt, whatever was measured of it; units in the names. What could not be measured is none.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Trial {
    pub seq: u32,
    pub exercise: String,
    /// "hold", "posture", "round", "repetition", "phrase", "syllables", "question", "category".
    pub kind: &'static str,
    /// The part of the practice, from 1, and the place on its sample clock.
    pub part: u32,
    pub at_s: f64,
    pub position: Option<Position>,
    pub complete: bool,
    pub duration_s: Option<f64>,
    pub prescribed_s: Option<f64>,
    pub level_db: Option<f64>,
    pub level_fall_db: Option<f64>,
    pub level_slope_db_per_s: Option<f64>,
    pub f0_median_hz: Option<f64>,
    pub f0_span_st: Option<f64>,
    pub f0_sd_st: Option<f64>,
    pub rate_hz: Option<f64>,
    pub irregularity_pct: Option<f64>,
    pub correct: Option<bool>,
    pub named: Option<u32>,
    pub cpps_db: Option<f64>,
    pub jitter_local_pct: Option<f64>,
    pub shimmer_local_pct: Option<f64>,
    pub hnr_db: Option<f64>,
    pub conditions: Conditions,
    /// Measures that stand in no figure, with the reason.
    pub discarded: Vec<(Measure, Discard)>,
}

/// One practice, ready to be kept.
#[derive(Debug, Clone, PartialEq)]
pub struct ArrivingSession {
    /// Its number in the home computer's record.
    pub number: i64,
    pub started_at: String,
    pub day: Date,
    /// Seconds since 1970, for the order.
    pub began_s: i64,
    /// When and how it ended.
    pub end: Option<(String, String)>,
    pub routine_title: String,
    pub routine_text: String,
    pub package: Option<String>,
    pub software: String,
    /// Entries so far.
    pub entries: u32,
    /// A hash of each entry with its part, one after the other: what came before is known again by it.
    pub marks: Vec<u8>,
    /// When each part began.
    pub part_starts: Vec<String>,
    pub practised_s: f64,
    pub steps_done: u32,
    pub steps_prescribed: u32,
    pub steps: Vec<StepResult>,
    pub trials: Vec<Trial>,
    pub events: Vec<Event>,
}

fn finite(value: f64) -> Option<f64> {
    value.is_finite().then_some(value)
}

/// What cannot be 0 and could not be measured stands as 0 in old journals.
fn positive(value: f64) -> Option<f64> {
    finite(value).filter(|value| *value > 0.0)
}

/// Reads one practice.
///
/// # Errors
/// A time is no time, or an entry is no journal entry.
pub fn arriving(session: &HandedSession) -> Result<ArrivingSession, SessionError> {
    let short = |text: &str| text.chars().take(80).collect::<String>();
    let bad = |cause: String| SessionError { started: short(&session.started_at), cause };
    let time = |text: &str| text.parse::<ZonedDateTime>().map_err(|error| bad(format!("{:?} is no time of day: {error}", short(text))));
    let began = time(&session.started_at)?;
    if let Some(end) = &session.ended_at {
        time(end)?;
    }
    let mut reader = Reader::new();
    let mut marks = Vec::new();
    let mut seq = 0_u32;
    for (number, part) in (1_u32..).zip(&session.parts) {
        let started = time(&part.started_at)?;
        let mut last_s = 0.0_f64;
        for raw in &part.entries {
            seq = seq.saturating_add(1);
            let line = raw.get();
            let entry: Entry = serde_json::from_str(line).map_err(|error| {
                bad(format!(
                    "its entry {seq} is no journal entry that this version knows: {error}; it was led by {}",
                    short(&session.software)
                ))
            })?;
            marks.extend(mark(number, &part.started_at, line));
            last_s = last_s.max(entry.at_s);
            reader.take(seq, &entry, (number, started.date()));
        }
        reader.practised_s += last_s;
        // A later part begins with what is noted anew there.
        (reader.calibration_note, reader.microphone) = (None, None);
    }
    let Reader { trials, events, steps, practised_s, steps_prescribed, ended, .. } = reader;
    let done = steps.values().filter(|step| step.whole).count();
    let (steps_done, steps_prescribed) = ended.unwrap_or((u32::try_from(done).unwrap_or(u32::MAX), steps_prescribed));
    Ok(ArrivingSession {
        number: session.number,
        started_at: session.started_at.clone(),
        day: began.date(),
        began_s: began.timestamp().as_second(),
        end: session.ended_at.clone().zip(session.end_reason.clone()),
        routine_title: session.routine_title.clone(),
        routine_text: session.routine_text.clone(),
        package: session.package.clone(),
        software: session.software.clone(),
        entries: seq,
        marks,
        part_starts: session.parts.iter().map(|part| part.started_at.clone()).collect(),
        practised_s,
        steps_done,
        steps_prescribed,
        steps: steps.into_iter().map(|(number, step)| step.result(number)).collect(),
        trials,
        events,
    })
}

fn mark(part: u32, started: &str, line: &str) -> [u8; MARK_BYTES] {
    let hash = Sha256::new().chain_update(part.to_be_bytes()).chain_update(started).chain_update([0]).chain_update(line).finalize();
    let mut mark = [0; MARK_BYTES];
    mark.iter_mut().zip(hash).for_each(|(to, from)| *to = from);
    mark
}

/// A step as far as it has been read.
#[derive(Default)]
struct StepSoFar {
    exercise: String,
    ramp_stage: Option<u32>,
    /// Repetitions completed, counted.
    completed: u32,
    /// Done and prescribed, as said at its end.
    said: Option<(u32, u32)>,
    stopped: Option<String>,
    whole: bool,
}

impl StepSoFar {
    fn result(self, step: u32) -> StepResult {
        let (done, prescribed) = self.said.map_or((self.completed, None), |(done, prescribed)| (done, Some(prescribed)));
        StepResult { step, exercise: self.exercise, ramp_stage: self.ramp_stage, done, prescribed, stopped: self.stopped }
    }
}

/// Reads the entries of one practice in order.
struct Reader {
    trials: Vec<Trial>,
    events: Vec<Event>,
    steps: BTreeMap<u32, StepSoFar>,
    practised_s: f64,
    steps_prescribed: u32,
    /// Steps done and prescribed as said at the end.
    ended: Option<(u32, u32)>,
    calibration_note: Option<String>,
    microphone: Option<Microphone>,
}

impl Reader {
    fn new() -> Self {
        Self {
            trials: Vec::new(),
            events: Vec::new(),
            steps: BTreeMap::new(),
            practised_s: 0.0,
            steps_prescribed: 0,
            ended: None,
            calibration_note: None,
            microphone: None,
        }
    }

    fn event(&mut self, seq: u32, day: Date, kind: EventKind, what: &str, exercise: Option<&String>) {
        self.events.push(Event { seq, kind, what: what.to_owned(), exercise: exercise.cloned(), day });
    }

    fn end_step(&mut self, at: Option<Position>, exercise: &str, said: (u32, u32), stopped: Option<&String>) {
        let Some(at) = at else { return };
        let step = self.steps.entry(at.step).or_default();
        step.exercise = exercise.to_owned();
        // A step that was gone back to and ended again: the better end counts.
        if step.said.is_none_or(|(before, _)| said.0 >= before) {
            step.said = Some(said);
            step.stopped = stopped.cloned();
        }
        step.whole |= stopped.is_none();
    }

    fn take(&mut self, seq: u32, entry: &Entry, (part, day): (u32, Date)) {
        let at = entry.position;
        if let Some(trial) = self.trial(seq, entry, part) {
            if trial.complete
                && let Some(at) = at
            {
                let step = self.steps.entry(at.step).or_default();
                step.exercise.clone_from(&trial.exercise);
                step.completed = step.completed.saturating_add(1);
            }
            self.trials.push(trial);
            return;
        }
        match &entry.fact {
            Fact::SessionBegun { steps, .. } => self.steps_prescribed = *steps,
            Fact::StepBegun { exercise, ramp_stage } => {
                if let Some(at) = at {
                    let step = self.steps.entry(at.step).or_default();
                    step.exercise.clone_from(exercise);
                    step.ramp_stage = ramp_stage.or(step.ramp_stage);
                }
            }
            Fact::StepDone { exercise, repetitions_done, repetitions_prescribed } => {
                self.end_step(at, exercise, (*repetitions_done, *repetitions_prescribed), None)
            }
            Fact::StepStopped { exercise, reason, repetitions_done, repetitions_prescribed } => {
                self.end_step(at, exercise, (*repetitions_done, *repetitions_prescribed), Some(reason));
            }
            Fact::StepLeftOut { exercise, reason } => self.event(seq, day, EventKind::LeftOut, reason, Some(exercise)),
            Fact::SafetyStop { exercise, reason } => self.event(seq, day, EventKind::Safety, reason, exercise.as_ref()),
            Fact::FallNoticed { exercise, of, .. } => {
                let what = serde_json::to_value(of).ok().and_then(|word| word.as_str().map(str::to_owned)).unwrap_or_default();
                self.event(seq, day, EventKind::Tired, &what, Some(exercise));
            }
            Fact::Troubled { trouble } => self.event(seq, day, EventKind::Trouble, trouble.key().trim_start_matches("trouble-"), None),
            Fact::MicrophoneUsed { system, name, rate_hz, gain } => {
                self.microphone = Some(Microphone { system: system.clone(), name: name.clone(), rate_hz: *rate_hz, gain: gain.clone() });
            }
            Fact::MicrophoneNoted { what, text } if what == "calibration" => self.calibration_note = Some(text.clone()),
            Fact::MicrophoneNoted { .. } => self.calibration_note = None,
            Fact::HoldInNoise { over_room_db, .. } => {
                if let Some(trial) = self.trials.last_mut().filter(|trial| trial.kind == "hold" && trial.position == at) {
                    trial.conditions.in_noise = true;
                    trial.conditions.over_room_db = finite(*over_room_db);
                    trial.discarded = discarded(trial);
                }
            }
            Fact::SessionEnded { steps_done, steps_prescribed, .. } => self.ended = Some((*steps_done, *steps_prescribed)),
            _ => {}
        }
    }

    /// The trial that an entry tells of, if it does.
    fn trial(&self, seq: u32, entry: &Entry, part: u32) -> Option<Trial> {
        let base = Trial {
            seq,
            part,
            at_s: entry.at_s,
            position: entry.position,
            complete: true,
            conditions: self.conditions(None, None),
            ..Trial::default()
        };
        let mut trial = match &entry.fact {
            Fact::HoldMeasured {
                exercise,
                duration_s,
                f0_median_hz,
                f0_span_st,
                level_mean_db,
                level_fall_db,
                level_weighting,
                f0_sd_st,
                level_slope_db_per_s,
                level_terms,
                quality,
                breaks,
                masked_s,
                complete,
                ..
            } => {
                let figure = |of: fn(&model::VoiceQuality) -> f64| quality.as_ref().and_then(|quality| finite(of(quality)));
                let mut conditions = self.conditions(Some(level_weighting), level_terms.as_ref());
                (conditions.masked_s, conditions.breaks) = (*masked_s, *breaks);
                Trial {
                    kind: "hold",
                    exercise: exercise.clone(),
                    complete: *complete,
                    duration_s: finite(*duration_s),
                    level_db: finite(*level_mean_db),
                    level_fall_db: finite(*level_fall_db),
                    level_slope_db_per_s: level_slope_db_per_s.and_then(finite),
                    f0_median_hz: positive(*f0_median_hz),
                    f0_span_st: positive(*f0_median_hz).and(finite(*f0_span_st)),
                    f0_sd_st: positive(*f0_median_hz).and(f0_sd_st.and_then(finite)),
                    cpps_db: figure(|quality| quality.cpps_db),
                    jitter_local_pct: figure(|quality| quality.jitter_local_pct),
                    shimmer_local_pct: figure(|quality| quality.shimmer_local_pct),
                    hnr_db: figure(|quality| quality.hnr_db),
                    conditions,
                    ..base
                }
            }
            Fact::PhraseRead { exercise, duration_s, level_mean_db, f0_median_hz, level_weighting, level_terms, .. } => Trial {
                kind: "phrase",
                exercise: exercise.clone(),
                duration_s: finite(*duration_s),
                level_db: finite(*level_mean_db),
                f0_median_hz: positive(*f0_median_hz),
                conditions: self.conditions(Some(level_weighting), level_terms.as_ref()),
                ..base
            },
            Fact::PostureHeld { exercise, duration_s, prescribed_s, complete } => Trial {
                kind: "posture",
                exercise: exercise.clone(),
                complete: *complete,
                duration_s: finite(*duration_s),
                prescribed_s: finite(*prescribed_s),
                ..base
            },
            Fact::RoundPaced { exercise, duration_s, complete, .. } => {
                Trial { kind: "round", exercise: exercise.clone(), complete: *complete, duration_s: finite(*duration_s), ..base }
            }
            Fact::RepetitionDone { exercise, duration_s, .. } => {
                Trial { kind: "repetition", exercise: exercise.clone(), duration_s: finite(*duration_s), ..base }
            }
            Fact::SyllablesCounted { exercise, duration_s, rate_hz, irregularity_pct, .. } => Trial {
                kind: "syllables",
                exercise: exercise.clone(),
                duration_s: finite(*duration_s),
                rate_hz: positive(*rate_hz),
                irregularity_pct: positive(*irregularity_pct),
                ..base
            },
            Fact::QuestionAnswered { exercise, correct, duration_s, .. } => {
                Trial { kind: "question", exercise: exercise.clone(), duration_s: finite(*duration_s), correct: Some(*correct), ..base }
            }
            Fact::CategoryNamed { exercise, named, duration_s, complete, .. } => Trial {
                kind: "category",
                exercise: exercise.clone(),
                complete: *complete,
                duration_s: finite(*duration_s),
                named: Some(u32::try_from(named.len()).unwrap_or(u32::MAX)),
                ..base
            },
            _ => return None,
        };
        trial.discarded = discarded(&trial);
        Some(trial)
    }

    fn conditions(&self, weighting: Option<&String>, terms: Option<&LevelTerms>) -> Conditions {
        let mut conditions = Conditions {
            level_weighting: weighting.cloned(),
            calibration_note: self.calibration_note.clone(),
            microphone: self.microphone.clone(),
            ..Conditions::default()
        };
        if let Some(terms) = terms {
            conditions.time_weighting = Some(terms.time_weighting.clone());
            conditions.distance_cm = terms.distance_cm.filter(|distance| distance.is_finite());
            conditions.calibration = terms.calibration;
            conditions.auto_gain = terms.auto_gain;
            conditions.clipped_s = terms.clipped_s;
        }
        conditions
    }
}

/// The measures that a trial of a kind has.
pub(super) fn measures(kind: &str) -> &'static [Measure] {
    match kind {
        "hold" => &[
            Measure::HoldS,
            Measure::LevelDb,
            Measure::F0MedianHz,
            Measure::F0SpanSt,
            Measure::F0SdSt,
            Measure::LevelSlopeDbPerS,
            Measure::CppsDb,
            Measure::HnrDb,
            Measure::JitterPct,
            Measure::ShimmerPct,
        ],
        "phrase" => &[Measure::PhraseLevelDb, Measure::PhraseF0Hz],
        "syllables" => &[Measure::SyllableRateHz, Measure::SyllableIrregularityPct],
        "category" => &[Measure::NamedCount],
        _ => &[],
    }
}

impl Trial {
    /// What was measured of it.
    fn value(&self, measure: Measure) -> Option<f64> {
        match measure {
            Measure::HoldS => self.duration_s,
            Measure::LevelDb | Measure::PhraseLevelDb => self.level_db,
            Measure::F0MedianHz | Measure::PhraseF0Hz => self.f0_median_hz,
            Measure::F0SpanSt => self.f0_span_st,
            Measure::F0SdSt => self.f0_sd_st,
            Measure::LevelSlopeDbPerS => self.level_slope_db_per_s,
            Measure::SyllableRateHz => self.rate_hz,
            Measure::SyllableIrregularityPct => self.irregularity_pct,
            Measure::NamedCount => self.named.map(f64::from),
            Measure::CppsDb => self.cpps_db,
            Measure::HnrDb => self.hnr_db,
            Measure::JitterPct => self.jitter_local_pct,
            Measure::ShimmerPct => self.shimmer_local_pct,
        }
    }
}

/// Which of its values stand in no figure, and why.
fn discarded(trial: &Trial) -> Vec<(Measure, Discard)> {
    let known = measures(trial.kind).iter().filter(|measure| trial.value(**measure).is_some());
    let why = |measure: Measure| Discard::of(measure, &trial.conditions, trial.complete, trial.duration_s.unwrap_or(0.0));
    known.filter_map(|measure| why(*measure).map(|why| (*measure, why))).collect()
}

#[cfg(test)]
#[path = "tests/facts.rs"]
mod tests;
