//! What a journal's lines tell of progress: trials with their conditions, steps, notes, stops.
//!
//! The kind of each entry stands in a column of its own, so its fact is read in one go ([`Fact::read`]), which costs a tenth of a
//! whole [`model::Entry`]; kinds that tell nothing of progress are not read at all.

use std::collections::BTreeMap;

use jiff::{SignedDuration, ZonedDateTime};

use model::{Command, EndReason, Fact, FactKind, MicrophoneNote, Position, Unit};
use progress::{
    Conditions, Cueing, DaysMissed, LeftOutStep, Microphone, Moment, Note, NoteKind, Practice, Practised, Rated, SafetyStop, SignAnswered,
    StepResult, StepTime, Trial, Value,
};

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
    /// The step under way, and since when in this part.
    step: Option<(u32, f64)>,
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
        let Some(kind) = FactKind::of_name(line.kind).filter(|kind| bears_on_progress(*kind)) else { return Ok(()) };
        let fact = Fact::read(kind, line.json).map_err(|error| error.to_string())?;
        self.add_cue(line.session, &fact);
        self.add_step_time(line, &fact);
        self.sort(line, &fact);
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
                    self.end_part(&open);
                    open.ended
                }
                None => {
                    self.close();
                    Vec::new()
                }
            };
            self.open = Some(Open {
                session: line.session,
                part: line.part,
                began,
                last_s: 0.0,
                microphone: None,
                calibration_note: None,
                ended,
                step: None,
            });
            if let Some(practice) = self.practices.get_mut(&line.session) {
                practice.parts += 1;
            }
        }
        if let Some(open) = &mut self.open {
            open.last_s = open.last_s.max(line.at_s);
        }
    }

    /// What a part adds to the time of its practice, and to that of the step in which it was broken off.
    fn end_part(&mut self, open: &Open) {
        if let Some(practice) = self.practices.get_mut(&open.session) {
            practice.minutes += open.last_s / 60.0;
        }
        self.out.step_times.extend(step_time(open.session, open.step, open.last_s));
    }

    /// Help that was given or asked for; lines come practice by practice.
    fn add_cue(&mut self, session: i64, fact: &Fact) {
        let count: fn(&mut Cueing) -> &mut u32 = match fact {
            Fact::QuestionAnswered { correct: true, hint_given: false, .. } => |cueing| &mut cueing.answered_alone,
            Fact::QuestionAnswered { correct: true, hint_given: true, .. } => |cueing| &mut cueing.answered_with_hint,
            Fact::QuestionAnswered { correct: false, .. } => |cueing| &mut cueing.not_answered,
            Fact::CommandHeard { command: Command::Again, .. } => |cueing| &mut cueing.asked_again,
            Fact::NoAnswer { .. } => |cueing| &mut cueing.no_answer,
            _ => return,
        };
        if self.out.cueing.last().is_none_or(|last| last.session != session) {
            self.out.cueing.push(Cueing::of_session(session));
        }
        if let Some(cueing) = self.out.cueing.last_mut() {
            *count(cueing) += 1;
        }
    }

    /// Ends the session under way.
    fn close(&mut self) {
        let Some(open) = self.open.take() else { return };
        self.end_part(&open);
        let Some(practice) = self.practices.get(&open.session) else { return };
        if practice.end_reason.as_deref() != Some(EndReason::Completed.as_str()) {
            let text = practice.end_reason.clone().unwrap_or_else(|| EndReason::Interrupted.as_str().to_owned());
            let when = later(&open.began, open.last_s);
            self.out.notes.push(Note { session: open.session, when, day: practice.day, kind: NoteKind::EndedEarly, exercise: None, text });
        }
    }

    /// A step lasts from its beginning to its end; one that is gone on with in another part begins there again.
    fn add_step_time(&mut self, line: &Line<'_>, fact: &Fact) {
        let begins = matches!(fact, Fact::StepBegun { .. });
        let ends = begins || matches!(fact, Fact::StepDone { .. } | Fact::StepStopped { .. } | Fact::SessionEnded { .. });
        let Some(open) = self.open.as_mut().filter(|_| ends) else { return };
        self.out.step_times.extend(step_time(line.session, open.step.take(), line.at_s));
        open.step = line.position.filter(|_| begins).map(|at| (at.step, line.at_s));
    }

    fn sort(&mut self, line: &Line<'_>, fact: &Fact) {
        let Some(open) = &mut self.open else { return };
        let practice = self.practices.get_mut(&line.session);
        match fact {
            Fact::MicrophoneUsed { system, name, rate_hz, gain } => {
                let (system, name, gain) = (system.clone(), name.clone(), gain.clone());
                open.microphone = Some(Microphone { system, name, rate_hz: *rate_hz, gain });
            }
            Fact::MicrophoneNoted { what: MicrophoneNote::CalibrationVoid, text } => {
                open.calibration_note = None;
                self.add_note(line, NoteKind::CalibrationVoid, None, text.clone());
            }
            Fact::MicrophoneNoted { text, .. } => open.calibration_note = Some(text.clone()),
            Fact::HoldInNoise { exercise, over_room_db } => {
                let of_hold = |trial: &&mut Trial| trial.session == line.session && trial.exercise == *exercise;
                if let Some(trial) = self.out.trials.last_mut().filter(of_hold) {
                    trial.conditions.in_noise = true;
                    trial.conditions.over_room_db = Some(*over_room_db);
                    trial.judge();
                }
            }
            Fact::HoldMeasured { .. }
            | Fact::PhraseRead { .. }
            | Fact::Talked { .. }
            | Fact::SyllablesCounted { .. }
            | Fact::CategoryNamed { .. }
            | Fact::PostureHeld { .. }
            | Fact::RoundPaced { .. }
            | Fact::RepetitionDone { .. }
            | Fact::QuestionAnswered { .. } => self.trial(line, fact),
            Fact::SessionBegun { steps, .. } => {
                if let Some(practice) = practice {
                    practice.steps_prescribed = *steps;
                }
            }
            Fact::SessionEnded { steps_done, steps_prescribed, .. } => {
                if let Some(practice) = practice {
                    (practice.steps_done, practice.steps_prescribed) = (*steps_done, *steps_prescribed);
                }
            }
            Fact::StepLeftOut { exercise, reason } => {
                let Some(practice) = practice else { return };
                let (exercise, reason) = (exercise.clone(), reason.clone());
                let left = LeftOutStep { session: line.session, day: practice.day, exercise, reason };
                // Said again where an interrupted practice is gone on with.
                if !self.out.left_out.contains(&left) {
                    self.out.left_out.push(left);
                }
            }
            Fact::StepBegun { exercise, ramp_stage } => {
                if let Some(result) = practice.and_then(|practice| result_of(practice, line, exercise)) {
                    result.ramp_stage = ramp_stage.or(result.ramp_stage);
                }
            }
            Fact::StepDone { exercise, repetitions_done, repetitions_prescribed } => {
                let (Some(practice), Some(at)) = (practice, line.position) else { return };
                let Some(result) = result_of(practice, line, exercise) else { return };
                (result.done, result.prescribed, result.stopped) = (*repetitions_done, Some(*repetitions_prescribed), None);
                if !open.ended.contains(&at.step) {
                    open.ended.push(at.step);
                    practice.steps_done = u32::try_from(open.ended.len()).unwrap_or(u32::MAX);
                }
            }
            Fact::StepStopped { exercise, reason, repetitions_done, repetitions_prescribed } => {
                let Some(practice) = practice else { return };
                let day = practice.day;
                let Some(result) = result_of(practice, line, exercise) else { return };
                (result.done, result.prescribed, result.stopped) = (*repetitions_done, Some(*repetitions_prescribed), Some(reason.clone()));
                if result.done == 0 {
                    let (exercise, reason) = (exercise.clone(), reason.clone());
                    self.out.left_out.push(LeftOutStep { session: line.session, day, exercise, reason });
                }
            }
            Fact::SafetyStop { exercise, exercise_before, reason } => {
                let when = later(&open.began, line.at_s);
                let day = practice.map_or_else(|| when.date(), |practice| practice.day);
                let (exercise, after, reason) = (exercise.clone(), exercise_before.clone(), reason.clone());
                self.out.safety_stops.push(SafetyStop { session: line.session, when, day, exercise, after, reason });
            }
            Fact::Troubled { trouble } => self.add_note(line, NoteKind::Trouble, None, trouble.name().to_owned()),
            Fact::LoudLimitReached { loud_s, limit_s } => {
                self.add_note(line, NoteKind::LoudLimit, None, format!("{loud_s:.0} s of {limit_s:.0} s"));
            }
            Fact::FallNoticed { exercise, of, reference, latest, .. } => {
                let text = format!("{} from {reference:.1} to {latest:.1} {}", of.name(), of.unit().printed());
                self.add_note(line, NoteKind::Fall, Some(exercise.clone()), text);
            }
            Fact::Rated { what, over, value } => {
                let Some(practice) = practice.filter(|practice| !practice.misdated) else { return };
                // Corrected right after it was said: the last one counts.
                self.out.ratings.retain(|rated| (rated.session, rated.what, rated.over) != (line.session, *what, *over));
                self.out.ratings.push(Rated { session: line.session, day: practice.day, what: *what, over: *over, value: *value });
            }
            Fact::SwallowSign { sign, answer } => {
                let Some(practice) = practice.filter(|practice| !practice.misdated) else { return };
                self.out.signs.retain(|told| (told.session, &told.sign) != (line.session, sign));
                let (sign, answer) = (sign.clone(), answer.clone());
                self.out.signs.push(SignAnswered { session: line.session, day: practice.day, sign, answer });
            }
            Fact::DaysMissed { days, reason } => {
                let Some(practice) = practice.filter(|practice| !practice.misdated) else { return };
                self.out.days_missed.retain(|told| told.session != line.session);
                self.out.days_missed.push(DaysMissed { session: line.session, day: practice.day, days: *days, reason: reason.clone() });
            }
            Fact::MomentTold { from_s, until_s, text } => {
                let Some(practice) = practice.filter(|practice| !practice.misdated) else { return };
                // Taken back, or told anew: the last one counts.
                self.out.moments.retain(|told| told.session != line.session);
                let (Some(from_s), Some(until_s)) = (*from_s, *until_s) else { return };
                let part = u32::try_from(line.part).unwrap_or(u32::MAX);
                let (session, day, text) = (line.session, practice.day, text.clone());
                self.out.moments.push(Moment { session, day, part, from_s, until_s, text, heard_until: None });
            }
            Fact::SoundLost { lost_s } => self.add_note(line, NoteKind::SoundLost, None, format!("{lost_s:.1} {}", Unit::Second.printed())),
            _ => {}
        }
    }

    fn trial(&mut self, line: &Line<'_>, fact: &Fact) {
        let Some((open, of)) = self.open.as_ref().zip(fact.trial()) else { return };
        let Some(practice) = self.practices.get_mut(&line.session) else { return };
        // Counts a repetition of a step that has not been ended; what ends it tells the number itself.
        if let Some(at) = line.position.filter(|_| of.complete)
            && let Some(result) = practice.steps.iter_mut().rev().find(|result| result.step == at.step)
        {
            result.done = result.done.saturating_add(1);
        }
        let has_measures = model::Measure::followed(of.kind).next().is_some();
        if !has_measures {
            return;
        }
        // A part that began on a misdated clock cannot be believed either.
        let mut trial = Trial {
            when: later(&open.began, line.at_s),
            day: open.began.date(),
            session: line.session,
            seq: line.seq,
            exercise: of.exercise.to_owned(),
            position: line.position,
            values: Value::all_of(fact),
            conditions: Conditions::of(fact, open.calibration_note.as_deref(), open.microphone.as_ref()),
            complete: of.complete,
            duration_s: of.duration_s,
            misdated: practice.misdated,
        };
        trial.judge();
        self.out.trials.push(trial);
    }

    fn add_note(&mut self, line: &Line<'_>, kind: NoteKind, exercise: Option<String>, text: String) {
        let Some(open) = &self.open else { return };
        let when = later(&open.began, line.at_s);
        let day = self.practices.get(&line.session).map_or_else(|| when.date(), |practice| practice.day);
        self.out.notes.push(Note { session: line.session, when, day, kind, exercise, text });
    }
}

/// The time of a step that is over at `to_s` of its part.
fn step_time(session: i64, step: Option<(u32, f64)>, to_s: f64) -> Option<StepTime> {
    step.map(|(step, since_s)| StepTime { session, step, time_s: (to_s - since_s).max(0.0) })
}

/// Of the others only the time counts.
fn bears_on_progress(kind: FactKind) -> bool {
    match kind {
        FactKind::SessionBegun
        | FactKind::SessionEnded
        | FactKind::StepBegun
        | FactKind::StepDone
        | FactKind::StepStopped
        | FactKind::StepLeftOut
        | FactKind::HoldMeasured
        | FactKind::HoldInNoise
        | FactKind::PostureHeld
        | FactKind::RoundPaced
        | FactKind::RepetitionDone
        | FactKind::PhraseRead
        | FactKind::Talked
        | FactKind::SyllablesCounted
        | FactKind::QuestionAnswered
        | FactKind::CategoryNamed
        | FactKind::CommandHeard
        | FactKind::NoAnswer
        | FactKind::Rated
        | FactKind::SwallowSign
        | FactKind::DaysMissed
        | FactKind::MomentTold
        | FactKind::MicrophoneUsed
        | FactKind::MicrophoneNoted
        | FactKind::SafetyStop
        | FactKind::Troubled
        | FactKind::LoudLimitReached
        | FactKind::FallNoticed
        | FactKind::SoundLost => true,
        FactKind::SessionResumed
        | FactKind::Agreement
        | FactKind::SoundConsent
        | FactKind::Rested
        | FactKind::ResponseTimed
        | FactKind::RestOffered
        | FactKind::ResultTold
        | FactKind::RecogniserRestarted
        | FactKind::RoomLoud => false,
    }
}

/// What came of a line's step so far; none outside a step.
fn result_of<'p>(practice: &'p mut Practice, line: &Line<'_>, exercise: &str) -> Option<&'p mut StepResult> {
    let step = line.position?.step;
    let known = practice.steps.iter().position(|result| result.step == step);
    let index = known.unwrap_or_else(|| {
        let exercise = exercise.to_owned();
        practice.steps.push(StepResult { step, exercise, ramp_stage: None, done: 0, prescribed: None, stopped: None });
        practice.steps.len() - 1
    });
    practice.steps.get_mut(index)
}

/// `at_s` seconds after the begin of a part; the begin itself where that is beyond the calendar.
fn later(began: &ZonedDateTime, at_s: f64) -> ZonedDateTime {
    // Saturates, and is 0 for NaN.
    began.checked_add(SignedDuration::from_millis((at_s * 1000.0).round() as i64)).unwrap_or_else(|_| began.clone())
}
