//! What a journal's lines tell of progress: trials with their conditions, steps, notes, stops.
//!
//! Lines are read into one flat structure that costs a tenth of a whole [`model::Entry`].

use std::collections::BTreeMap;

use jiff::{SignedDuration, ZonedDateTime};
use serde::Deserialize;
use serde::de::IgnoredAny;

use hear::VoiceQuality;
use progress::{
    Conditions, Discard, LeftOutStep, Measure, Microphone, Note, NoteKind, Practice, Practised, SafetyStop, StepResult, Trial, Value,
};
use session::{LevelTerms, Position};

/// How a practice ends that was led to its end.
const COMPLETED: &str = "completed";

/// One entry as it stands in the record.
pub(super) struct Line<'a> {
    pub session: i64,
    pub seq: i64,
    pub part: i64,
    pub at_s: f64,
    pub kind: &'a str,
    pub position: Option<Position>,
    pub json: &'a str,
}

/// The kinds whose lines are read; of the others only the time counts.
const KINDS: [&str; 22] = [
    "session_begun",
    "session_ended",
    "step_begun",
    "step_done",
    "step_stopped",
    "step_left_out",
    "hold_measured",
    "hold_in_noise",
    "posture_held",
    "round_paced",
    "repetition_done",
    "phrase_read",
    "syllables_counted",
    "question_answered",
    "category_named",
    "microphone_used",
    "microphone_noted",
    "safety_stop",
    "troubled",
    "loud_limit_reached",
    "fall_noticed",
    "sound_lost",
];

/// All that is taken out of a line; which fields are there depends on its kind.
#[derive(Debug, Default, Deserialize)]
#[serde(default)]
struct Fields {
    exercise: Option<String>,
    duration_s: Option<f64>,
    f0_median_hz: Option<f64>,
    f0_span_st: Option<f64>,
    f0_sd_st: Option<f64>,
    level_mean_db: Option<f64>,
    level_slope_db_per_s: Option<f64>,
    level_weighting: Option<String>,
    level_terms: Option<LevelTerms>,
    quality: Option<VoiceQuality>,
    breaks: Option<u32>,
    masked_s: Option<f64>,
    complete: Option<bool>,
    over_room_db: Option<f64>,
    rate_hz: Option<f64>,
    irregularity_pct: Option<f64>,
    named: Option<Vec<IgnoredAny>>,
    ramp_stage: Option<u32>,
    repetitions_done: Option<u32>,
    repetitions_prescribed: Option<u32>,
    reason: Option<String>,
    trouble: Option<String>,
    what: Option<String>,
    text: Option<String>,
    of: Option<String>,
    reference: Option<f64>,
    latest: Option<f64>,
    loud_s: Option<f64>,
    limit_s: Option<f64>,
    lost_s: Option<f64>,
    system: Option<String>,
    name: Option<String>,
    gain: Option<String>,
    steps: Option<u32>,
    steps_done: Option<u32>,
    steps_prescribed: Option<u32>,
}

/// Takes entries in order and sorts what they tell.
pub(super) struct Reader {
    parts: BTreeMap<(i64, i64), ZonedDateTime>,
    practices: BTreeMap<i64, Practice>,
    out: Practised,
    /// What is known of the session and part under way.
    open: Option<Open>,
}

/// The part under way.
struct Open {
    session: i64,
    part: i64,
    began: ZonedDateTime,
    last_s: f64,
    microphone: Option<Microphone>,
    calibration_note: Option<String>,
    /// Steps that were ended, with or without all repetitions; of the others the repetitions are counted.
    ended: Vec<u32>,
}

impl Reader {
    /// Nothing read yet of these practices, whose parts began then.
    pub fn new(practices: impl Iterator<Item = Practice>, parts: BTreeMap<(i64, i64), ZonedDateTime>) -> Self {
        let practices = practices.map(|practice| (practice.session, practice)).collect();
        Self { parts, practices, out: Practised::default(), open: None }
    }

    /// Takes the next line.
    ///
    /// # Errors
    /// It cannot be read; the text says why.
    pub fn take(&mut self, line: &Line<'_>) -> Result<(), String> {
        self.enter(line);
        if !KINDS.contains(&line.kind) {
            return Ok(());
        }
        let fields: Fields = serde_json::from_str(line.json).map_err(|error| error.to_string())?;
        self.sort(line, fields);
        Ok(())
    }

    /// What was read; the practices by their number.
    pub fn close_all(mut self) -> Practised {
        self.close();
        self.out.practices = self.practices.into_values().collect();
        self.out
    }

    /// Opens the session and part of a line where they are new.
    fn enter(&mut self, line: &Line<'_>) {
        if self.open.as_ref().is_none_or(|open| (open.session, open.part) != (line.session, line.part)) {
            let of_session = self.practices.get(&line.session).map(|practice| practice.began.clone());
            let Some(began) = self.parts.get(&(line.session, line.part)).cloned().or(of_session) else { return };
            let ended = match self.open.take_if(|open| open.session == line.session) {
                Some(open) => {
                    self.add_minutes(line.session, open.last_s);
                    open.ended
                }
                None => {
                    self.close();
                    Vec::new()
                }
            };
            self.open =
                Some(Open { session: line.session, part: line.part, began, last_s: 0.0, microphone: None, calibration_note: None, ended });
            if let Some(practice) = self.practices.get_mut(&line.session) {
                practice.parts += 1;
            }
        }
        if let Some(open) = &mut self.open {
            open.last_s = open.last_s.max(line.at_s);
        }
    }

    fn add_minutes(&mut self, session: i64, seconds: f64) {
        if let Some(practice) = self.practices.get_mut(&session) {
            practice.minutes += seconds / 60.0;
        }
    }

    /// Ends the session under way.
    fn close(&mut self) {
        let Some(open) = self.open.take() else { return };
        self.add_minutes(open.session, open.last_s);
        let Some(practice) = self.practices.get(&open.session) else { return };
        if practice.end_reason.as_deref() != Some(COMPLETED) {
            let text = practice.end_reason.clone().unwrap_or_else(|| "broken off".to_owned());
            let when = later(&open.began, open.last_s);
            self.out.notes.push(Note { session: open.session, when, day: practice.day, kind: NoteKind::EndedEarly, exercise: None, text });
        }
    }

    fn sort(&mut self, line: &Line<'_>, fields: Fields) {
        let Some(open) = &mut self.open else { return };
        match line.kind {
            "microphone_used" => {
                open.microphone = fields.system.zip(fields.name).map(|(system, name)| Microphone {
                    system,
                    name,
                    rate_hz: fields.rate_hz.map_or(0, |rate| rate as u32),
                    gain: fields.gain.unwrap_or_else(|| "unknown".to_owned()),
                });
            }
            "microphone_noted" => self.microphone_noted(line, fields),
            "hold_in_noise" => {
                let exercise = fields.exercise.unwrap_or_default();
                let of_hold = |trial: &&mut Trial| trial.session == line.session && trial.exercise == exercise;
                if let Some(trial) = self.out.trials.last_mut().filter(of_hold) {
                    trial.conditions.in_noise = true;
                    trial.conditions.over_room_db = fields.over_room_db;
                    judge(trial);
                }
            }
            "hold_measured" | "phrase_read" | "syllables_counted" | "category_named" => self.trial(line, fields),
            "posture_held" | "round_paced" | "repetition_done" | "question_answered" => self.count(line, &fields),
            "session_begun" | "session_ended" | "step_begun" | "step_done" | "step_stopped" | "step_left_out" => self.step(line, fields),
            _ => self.note(line, fields),
        }
    }

    fn microphone_noted(&mut self, line: &Line<'_>, fields: Fields) {
        let void = fields.what.as_deref() == Some("calibration-void");
        if let Some(open) = &mut self.open {
            open.calibration_note = fields.text.clone().filter(|_| !void);
        }
        if void {
            self.add_note(line, NoteKind::CalibrationVoid, None, fields.text.unwrap_or_default());
        }
    }

    fn trial(&mut self, line: &Line<'_>, fields: Fields) {
        self.count(line, &fields);
        let Some(open) = &self.open else { return };
        let Some(practice) = self.practices.get(&line.session) else { return };
        let Some(exercise) = fields.exercise.clone() else { return };
        let terms = fields.level_terms.clone();
        let conditions = Conditions {
            level_weighting: fields.level_weighting.clone(),
            time_weighting: terms.as_ref().map(|terms| terms.time_weighting.clone()),
            distance_cm: terms.as_ref().and_then(|terms| terms.distance_cm),
            calibration: terms.as_ref().map(|terms| terms.calibration).unwrap_or_default(),
            calibration_note: open.calibration_note.clone(),
            microphone: open.microphone.clone(),
            auto_gain: terms.as_ref().is_some_and(|terms| terms.auto_gain),
            clipped_s: terms.as_ref().map_or(0.0, |terms| terms.clipped_s),
            masked_s: fields.masked_s.unwrap_or(0.0),
            breaks: fields.breaks.unwrap_or(0),
            in_noise: false,
            over_room_db: None,
        };
        let values = values(line.kind, &fields);
        // A part that began on a misdated clock cannot be believed either.
        let mut trial = Trial {
            when: later(&open.began, line.at_s),
            day: open.began.date(),
            session: line.session,
            seq: line.seq,
            exercise,
            position: line.position,
            values,
            conditions,
            complete: fields.complete.unwrap_or(true),
            duration_s: fields.duration_s.unwrap_or(0.0),
            misdated: practice.misdated,
        };
        judge(&mut trial);
        self.out.trials.push(trial);
    }

    /// Counts a repetition of a step that has not been ended; what ends it tells the number itself.
    fn count(&mut self, line: &Line<'_>, fields: &Fields) {
        let Some((at, practice)) = line.position.zip(self.practices.get_mut(&line.session)) else { return };
        if fields.complete != Some(false)
            && let Some(result) = practice.steps.iter_mut().rev().find(|result| result.step == at.step)
        {
            result.done = result.done.saturating_add(1);
        }
    }

    fn step(&mut self, line: &Line<'_>, fields: Fields) {
        let (Some(open), Some(practice)) = (&mut self.open, self.practices.get_mut(&line.session)) else { return };
        let day = practice.day;
        match line.kind {
            "session_begun" => practice.steps_prescribed = fields.steps.unwrap_or(practice.steps_prescribed),
            "session_ended" => {
                practice.steps_done = fields.steps_done.unwrap_or(practice.steps_done);
                practice.steps_prescribed = fields.steps_prescribed.unwrap_or(practice.steps_prescribed);
            }
            "step_left_out" => {
                let (exercise, reason) = (fields.exercise.unwrap_or_default(), fields.reason.unwrap_or_default());
                let left = LeftOutStep { session: line.session, day, exercise, reason };
                // Said again where an interrupted practice is gone on with.
                if !self.out.left_out.contains(&left) {
                    self.out.left_out.push(left);
                }
            }
            kind => {
                let (Some(at), Some(exercise)) = (line.position, fields.exercise) else { return };
                let known = practice.steps.iter().position(|result| result.step == at.step);
                let index = known.unwrap_or(practice.steps.len());
                if known.is_none() {
                    practice.steps.push(StepResult {
                        step: at.step,
                        exercise: exercise.clone(),
                        ramp_stage: None,
                        done: 0,
                        prescribed: None,
                        stopped: None,
                    });
                }
                let Some(result) = practice.steps.get_mut(index) else { return };
                if kind == "step_begun" {
                    result.ramp_stage = fields.ramp_stage.or(result.ramp_stage);
                    return;
                }
                result.done = fields.repetitions_done.unwrap_or(result.done);
                result.prescribed = fields.repetitions_prescribed.or(result.prescribed);
                result.stopped = fields.reason.filter(|_| kind == "step_stopped");
                if kind == "step_done" && !open.ended.contains(&at.step) {
                    open.ended.push(at.step);
                    practice.steps_done = u32::try_from(open.ended.len()).unwrap_or(u32::MAX);
                }
                if let (0, Some(reason)) = (result.done, &result.stopped) {
                    self.out.left_out.push(LeftOutStep { session: line.session, day, exercise, reason: reason.clone() });
                }
            }
        }
    }

    fn note(&mut self, line: &Line<'_>, fields: Fields) {
        let exercise = fields.exercise.clone();
        let seconds = |value: Option<f64>| value.map_or_else(String::new, |value| format!("{value:.0} s"));
        let figure = |value: Option<f64>| value.map_or_else(String::new, |value| format!("{value:.1}"));
        match line.kind {
            "safety_stop" => {
                let Some(open) = &self.open else { return };
                let (when, reason) = (later(&open.began, line.at_s), fields.reason.unwrap_or_default());
                let day = self.practices.get(&line.session).map_or_else(|| when.date(), |practice| practice.day);
                self.out.safety_stops.push(SafetyStop { session: line.session, when, day, exercise, reason });
            }
            "troubled" => self.add_note(line, NoteKind::Trouble, exercise, fields.trouble.unwrap_or_default()),
            "loud_limit_reached" => {
                self.add_note(line, NoteKind::LoudLimit, exercise, format!("{} of {}", seconds(fields.loud_s), seconds(fields.limit_s)));
            }
            "fall_noticed" => {
                let unit = if fields.of.as_deref() == Some("level") { "dB" } else { "s" };
                let of = fields.of.clone().unwrap_or_default();
                let text = format!("{of} from {} to {} {unit}", figure(fields.reference), figure(fields.latest));
                self.add_note(line, NoteKind::Fall, exercise, text);
            }
            "sound_lost" => self.add_note(line, NoteKind::SoundLost, exercise, format!("{} s", figure(fields.lost_s))),
            _ => {}
        }
    }

    fn add_note(&mut self, line: &Line<'_>, kind: NoteKind, exercise: Option<String>, text: String) {
        let Some(open) = &self.open else { return };
        let when = later(&open.began, line.at_s);
        let day = self.practices.get(&line.session).map_or_else(|| when.date(), |practice| practice.day);
        self.out.notes.push(Note { session: line.session, when, day, kind, exercise, text });
    }
}

/// `at_s` seconds after the begin of a part; the begin itself where that is beyond the calendar.
fn later(began: &ZonedDateTime, at_s: f64) -> ZonedDateTime {
    // Saturates, and is 0 for NaN.
    began.checked_add(SignedDuration::from_millis((at_s * 1000.0).round() as i64)).unwrap_or_else(|_| began.clone())
}

/// Says of each value whether it counts.
fn judge(trial: &mut Trial) {
    for value in &mut trial.values {
        let why = Discard::of(value.measure, &trial.conditions, trial.complete, trial.duration_s);
        value.discard = if trial.misdated { Some(Discard::Misdated) } else { why };
    }
}

/// The values of an entry; what could not be measured, also where it is written as 0, is not among them.
fn values(kind: &str, fields: &Fields) -> Vec<Value> {
    let f0 = fields.f0_median_hz.filter(|hz| *hz > 0.0);
    let positive = |value: Option<f64>| value.filter(|value| *value > 0.0);
    let quality = fields.quality.as_ref();
    let known: Vec<(Measure, Option<f64>)> = match kind {
        "hold_measured" => vec![
            (Measure::HoldS, fields.duration_s),
            (Measure::LevelDb, fields.level_mean_db),
            (Measure::F0MedianHz, f0),
            (Measure::F0SpanSt, f0.and(fields.f0_span_st)),
            (Measure::F0SdSt, f0.and(fields.f0_sd_st)),
            (Measure::LevelSlopeDbPerS, fields.level_slope_db_per_s),
            (Measure::CppsDb, quality.map(|quality| quality.cpps_db)),
            (Measure::HnrDb, quality.map(|quality| quality.hnr_db)),
            (Measure::JitterPct, quality.map(|quality| quality.jitter_local_pct)),
            (Measure::ShimmerPct, quality.map(|quality| quality.shimmer_local_pct)),
        ],
        "phrase_read" => vec![(Measure::PhraseLevelDb, fields.level_mean_db), (Measure::PhraseF0Hz, f0)],
        "syllables_counted" => {
            vec![(Measure::SyllableRateHz, positive(fields.rate_hz)), (Measure::SyllableIrregularityPct, positive(fields.irregularity_pct))]
        }
        "category_named" => vec![(Measure::NamedCount, fields.named.as_ref().map(|named| named.len() as f64))],
        _ => Vec::new(),
    };
    let finite = known.into_iter().filter_map(|(measure, value)| Some((measure, value.filter(|value| value.is_finite())?)));
    finite.map(|(measure, value)| Value { measure, value, discard: None }).collect()
}
