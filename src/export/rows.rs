//! Practices as rows of the tables.

use super::columns::{EVENTS_TABLE, PRACTICES, STEPS, TRIALS};
use super::moment::moment;
use super::practice::Practice;
use super::steps::{StepOutcome, StepStatus};
use super::table::{BETWEEN, Row, Table};
use super::trial::{Level, Trial};
use model::{Fact, KeptEntry, Measure, MicrophoneNote, TrialKind};
use progress::Discard;

fn begin(table: &'static Table, practice: &Practice<'_>) -> Row {
    let mut row = Row::of(table);
    let head = &practice.kept.head;
    row.text("client", &head.client);
    row.word("practice", &practice.id);
    row.integer("practice_number", head.number);
    row.word("source", head.source.as_str());
    row
}

/// The row of a practice.
#[must_use]
pub fn practice_row(practice: &Practice<'_>) -> Row {
    let head = &practice.kept.head;
    let mut row = begin(&PRACTICES, practice);
    row.boolean("misdated", practice.misdated);
    row.boolean("received", head.received);
    row.text("routine", &head.routine_title);
    row.time("started_at", &head.started_at);
    row.time_if("ended_at", head.end.as_ref().map(|(at, _)| at));
    row.text_if("time_zone", head.started_at.time_zone().iana_name());
    row.text("end_reason", practice.end_reason());
    row.number("duration_s", (practice.duration_s() * 1000.0).round() / 1000.0);
    row.integer("parts", count(practice.kept.parts.len()));
    row.integer("steps_done", count(practice.steps.iter().filter(|step| step.status == StepStatus::Done).count()));
    if !practice.outline.exercises.is_empty() {
        row.integer("steps_prescribed", count(practice.outline.exercises.len()));
    }
    row.integer("trials", count(practice.trials.len()));
    row.integer("trials_discarded", count(practice.trials.iter().filter(|trial| !trial.counts()).count()));
    let stops = practice.entries().filter(|(_, kept)| matches!(kept.entry.fact, Fact::SafetyStop { .. })).count();
    row.integer("safety_stops", count(stops));
    row.text("software", &head.software);
    row
}

/// The row of a step.
#[must_use]
pub fn step_row(practice: &Practice<'_>, step: &StepOutcome) -> Row {
    let mut row = begin(&STEPS, practice);
    row.integer_if("step", step.step);
    row.text("exercise", &step.exercise);
    row.word("status", step.status.name());
    row.text_if("reason", step.reason.as_deref());
    row.integer_if("repetitions_done", step.repetitions_done);
    row.integer_if("repetitions_prescribed", step.repetitions_prescribed);
    row.integer_if("ramp_stage", step.ramp_stage);
    row.time_if("started_at", step.began.as_ref().map(|at| &at.time));
    row.time_if("ended_at", step.ended.as_ref().map(|at| &at.time));
    row.number_if("best_of_three_s", step.best_of_three_s);
    row
}

/// The row of a trial.
#[must_use]
pub fn trial_row(practice: &Practice<'_>, trial: &Trial<'_>) -> Row {
    let mut row = begin(&TRIALS, practice);
    row.integer("entry", trial.kept.number);
    row.integer("part", trial.ended.part);
    if let Some(at) = trial.position {
        row.integer("step", at.step);
        row.integer("set", at.set);
        row.integer("repetition", at.repetition);
    }
    row.text("exercise", trial.exercise);
    row.word("kind", trial.kind.name());
    row.time_if("started_at", trial.began.as_ref().map(|at| &at.time));
    row.time("ended_at", &trial.ended.time);
    if let Some(began) = &trial.began {
        row.number("onset_s", thousandths(began.at_s));
        row.number("offset_s", thousandths(trial.ended.at_s));
    }
    row.boolean("complete", trial.complete);
    row.boolean("counts", trial.counts());
    row.word("discarded_for", trial.discard.map_or("", Discard::name));
    row.word("level_discarded_for", trial.level_discard.map_or("", Discard::name));
    level(&mut row, trial);
    row.number_if("over_room_db", trial.over_room_db);
    if let Some((system, name, rate_hz, gain)) = trial.mic.used {
        row.text("microphone_name", name);
        row.text("microphone_system", system);
        row.integer("microphone_rate_hz", rate_hz);
        row.text("microphone_gain", gain);
    }
    row.text_if("calibration_note", trial.mic.note);
    figures(&mut row, trial.kind, &trial.kept.entry.fact);
    row
}

fn level(row: &mut Row, trial: &Trial<'_>) {
    match trial.level() {
        Level::Spl(db) => row.number("level_mean_db_spl", db),
        Level::Relative(db) => row.number("level_mean_db_fs", db),
        Level::None => {}
    }
    if let Some(level) = trial.kept.entry.fact.level() {
        row.text("level_weighting", level.weighting);
    }
    if let Some(terms) = trial.level_terms() {
        row.text("level_time_weighting", &terms.time_weighting);
        row.number_if("level_distance_cm", terms.distance_cm);
        row.word("level_calibration", terms.calibration.name());
        row.number("level_clipped_s", terms.clipped_s);
        row.boolean("level_auto_gain", terms.auto_gain);
    }
}

/// Every figure that is declared, and what else a trial tells. The level stands apart: it has a scale.
fn figures(row: &mut Row, kind: TrialKind, fact: &Fact) {
    for measure in Measure::of_kind(kind).filter(|measure| !measure.is_level()) {
        row.number_if(measure.declared().column, measure.of(fact));
    }
    match fact {
        Fact::HoldMeasured { quality: Some(quality), .. } => {
            row.number("quality_from_s", quality.from_s);
            row.number("quality_to_s", quality.to_s);
        }
        Fact::RepetitionDone { ended_by, .. } => row.text("ended_by", ended_by),
        Fact::PhraseRead { phrase, .. } => row.text("phrase", phrase),
        Fact::Talked { prompt, .. } => row.text_if("prompt", prompt.as_deref()),
        Fact::QuestionAnswered { clue, answer, correct, hint_given, .. } => {
            row.text("clue", clue);
            row.text_if("answer", answer.as_deref());
            row.boolean("correct", *correct);
            row.boolean("hint_given", *hint_given);
        }
        Fact::CategoryNamed { category, named, .. } => {
            row.text("category", category);
            row.text("named", &joined(named.iter().map(String::as_str)));
        }
        _ => {}
    }
}

/// The row of an entry that bears on the practice or its figures; none for others.
#[must_use]
pub fn event_row(practice: &Practice<'_>, part: u32, kept: &KeptEntry) -> Option<Row> {
    let (event, exercise, what, value) = event(&kept.entry.fact)?;
    let at = moment(practice.kept, part, kept.entry.at_s)?;
    let mut row = begin(&EVENTS_TABLE, practice);
    row.integer("entry", kept.number);
    row.integer("part", part);
    row.time("at", &at.time);
    row.number("at_s", at.at_s);
    row.word("event", event);
    row.text_if("exercise", exercise);
    row.text_if("what", what.as_deref());
    if let Some((value, unit)) = value {
        row.number("value", value);
        row.word("unit", unit);
    }
    Some(row)
}

/// What happened, in which exercise, which of its kind, and its figure with its unit.
type Event<'a> = (&'static str, Option<&'a str>, Option<String>, Option<(f64, &'static str)>);

fn event(fact: &Fact) -> Option<Event<'_>> {
    Some(match fact {
        Fact::SafetyStop { exercise, reason, .. } => ("safety-stop", exercise.as_deref(), Some(reason.to_string()), None),
        Fact::Troubled { trouble } => ("trouble", None, Some(trouble.name().to_owned()), None),
        Fact::MicrophoneUsed { system, name, rate_hz, gain } => {
            ("microphone", None, Some(format!("{name} ({system}, {rate_hz} Hz, gain {gain})")), None)
        }
        Fact::MicrophoneNoted { what, text } => {
            (if *what == MicrophoneNote::Calibration { "calibration" } else { "calibration-void" }, None, Some(text.clone()), None)
        }
        Fact::SoundConsent { given, days } => {
            let answer = given.map_or("no answer", |given| if given { "given" } else { "not given" });
            ("sound-consent", None, Some(format!("{answer}, {days} days")), None)
        }
        Fact::RoomLoud { loud, room_db } => (if *loud { "room-loud" } else { "room-quiet" }, None, None, Some((*room_db, "dB"))),
        Fact::SoundLost { lost_s } => ("sound-lost", None, None, Some((*lost_s, "s"))),
        Fact::RecogniserRestarted { lost_s } => ("recogniser-restarted", None, None, Some((*lost_s, "s"))),
        Fact::LoudLimitReached { loud_s, .. } => ("loud-limit", None, None, Some((*loud_s, "s"))),
        Fact::FallNoticed { exercise, of, reference, latest, .. } => {
            ("fall", Some(exercise), Some(of.name().to_owned()), Some((thousandths(latest - reference), of.unit().ucum())))
        }
        Fact::RestOffered { taken } => ("rest-offered", None, Some(if *taken { "taken" } else { "not taken" }.to_owned()), None),
        Fact::Rated { what, over, value } => {
            let of = format!("{}, {}", what.name(), over.name());
            ("rated", None, Some(of), value.map(|value| (f64::from(value), "1")))
        }
        Fact::SwallowSign { sign, answer } => ("swallow-sign", None, Some(format!("{sign}: {answer}")), None),
        Fact::MomentTold { from_s, until_s, text } => {
            let told = text.clone().or_else(|| from_s.is_none().then(|| "passed over".to_owned()));
            ("moment-told", None, told, from_s.zip(*until_s).map(|(from_s, until_s)| (thousandths(until_s - from_s), "s")))
        }
        Fact::DaysMissed { days, reason } => {
            let reason = reason.as_ref().map_or_else(|| "passed over".to_owned(), ToString::to_string);
            ("days-missed", None, Some(reason), Some((f64::from(*days), "d")))
        }
        Fact::NoAnswer { asked } => ("no-answer", None, None, Some((f64::from(*asked), "1"))),
        Fact::Agreement { given, exercises, .. } => {
            ("agreement", None, Some(format!("{}: {}", if *given { "given" } else { "not given" }, exercises.join(", "))), None)
        }
        Fact::SessionResumed { from } => ("resumed", Some(from), None, None),
        _ => return None,
    })
}

fn joined<'a>(words: impl Iterator<Item = &'a str>) -> String {
    words.collect::<Vec<_>>().join(BETWEEN)
}

fn count(n: usize) -> i64 {
    i64::try_from(n).unwrap_or(i64::MAX)
}

fn thousandths(value: f64) -> f64 {
    (value * 1000.0).round() / 1000.0
}
