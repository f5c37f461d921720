//! All that is kept of one client, read as the arithmetic wants it.

use super::engine::{Engine, list};
use super::error::ClinicError;
use super::measured::{self, Measured};
use super::rows::{ConditionRow, SessionRow, StepRow, TrialRow};
use super::typed::Columns;
use super::value::{Row, values};
use jiff::civil::Date;
use jiff::{Span, Timestamp, ZonedDateTime};
use model::{Measure, TrialKind};
use progress::{Conditions, Led, Practice, Practised, StepResult, Trial, Window, misdated};
use std::collections::{BTreeSet, HashMap};

/// What is kept of one client, as the arithmetic wants it.
pub(super) struct Found {
    pub practised: Practised,
    pub trials: u32,
    pub known_to: Option<Date>,
    /// Packages with when they were made, oldest first.
    pub packages: Vec<(String, Timestamp)>,
}

impl Found {
    pub(super) fn zone(&self) -> jiff::tz::TimeZone {
        self.practised.practices.last().map_or(jiff::tz::TimeZone::UTC, |practice| practice.began.time_zone().clone())
    }

    pub(super) fn window(&self) -> Option<Window> {
        let first = self.practised.practices.iter().map(|practice| practice.day).min()?;
        let to = self.known_to?;
        (first <= to).then_some(Window { from: first, to })
    }

    pub(super) fn adherence(&self) -> progress::Adherence {
        self.window().map(|window| progress::adherence(&self.practised, window)).unwrap_or_default()
    }
}

/// Reads all of a client.
pub(super) fn load(engine: &mut dyn Engine, client: i64) -> Result<Found, ClinicError> {
    let mut packages: Vec<(String, Timestamp)> =
        list(engine, "SELECT id, made_at FROM package WHERE client = $1", &values![client], |row| Ok((row.text(0)?, row.parsed(1)?)))?;
    packages.sort_by(|one, other| (one.1, &one.0).cmp(&(other.1, &other.0)));
    let handed = list(engine, "SELECT made_at FROM arrival WHERE client = $1", &values![client], |row| row.parsed::<Timestamp>(0))?
        .into_iter()
        .max();
    let mut steps: HashMap<i64, Vec<StepResult>> = HashMap::new();
    let sql = format!(
        "SELECT {} FROM session s JOIN step t ON t.session = s.id WHERE s.client = $1 ORDER BY t.session, t.step",
        StepRow::of("t")
    );
    engine.each(&sql, &values![client], &mut |row| {
        let StepRow { session, step, exercise, ramp_stage, done, prescribed, stopped } = StepRow::read(row)?;
        steps.entry(session).or_default().push(StepResult { step, exercise, ramp_stage, done, prescribed, stopped });
        Ok(())
    })?;
    let mut parts: HashMap<i64, Vec<ZonedDateTime>> = HashMap::new();
    let (mut practices, mut numbers): (Vec<Practice>, Vec<i64>) = (Vec::new(), Vec::new());
    let sql = format!(
        "SELECT {}, r.title, r.body FROM session s JOIN routine r ON r.id = s.routine WHERE s.client = $1 ORDER BY s.began_s, s.number, s.started_at",
        SessionRow::of("s")
    );
    engine.each(&sql, &values![client], &mut |row| {
        let session = SessionRow::read(row)?;
        let behind = SessionRow::NAMES.len();
        let (began, id) = (session.started_at, session.id);
        let starts: Vec<ZonedDateTime> = session.part_starts.lines().filter_map(|line| line.parse().ok()).collect();
        practices.push(Practice {
            session: id,
            day: began.date(),
            began,
            routine_title: row.text(behind)?,
            routine_text: row.text(behind + 1)?,
            package: session.package,
            software: session.software,
            end_reason: session.end_reason,
            steps_done: session.steps_done,
            steps_prescribed: session.steps_prescribed,
            minutes: session.practised_s / 60.0,
            parts: u32::try_from(starts.len()).unwrap_or(u32::MAX),
            steps: steps.remove(&id).unwrap_or_default(),
            misdated: false,
        });
        numbers.push(session.number);
        parts.insert(id, starts);
        Ok(())
    })?;
    let zone = practices.last().map_or(jiff::tz::TimeZone::UTC, |practice| practice.began.time_zone().clone());
    let known_to = handed.map(|made| made.to_zoned_datetime(zone).date());
    let wrong = mark_misdated(&mut practices, &numbers, known_to);
    let conditions = conditions(engine, client)?;
    let (mut trials, mut count) = (Vec::new(), 0_u32);
    let known = Known { parts, conditions, wrong };
    let sql = format!(
        "SELECT {}, {} FROM session s JOIN trial t ON t.session = s.id WHERE s.client = $1 ORDER BY s.began_s, s.number, s.started_at, t.seq",
        TrialRow::of("t"),
        measured::selected("t")
    );
    let measured = Measured::default();
    engine.each(&sql, &values![client], &mut |row| {
        count = count.saturating_add(1);
        trials.extend(known.trial(row, &measured)?);
        Ok(())
    })?;
    let practised = Practised { practices, trials, today: known_to, ..Practised::default() };
    Ok(Found { practised, trials: count, known_to, packages })
}

/// The home computer's numbers tell the true order of its practices.
fn mark_misdated(practices: &mut [Practice], numbers: &[i64], known_to: Option<Date>) -> BTreeSet<i64> {
    let Some(today) = known_to else { return BTreeSet::new() };
    let mut led: Vec<(i64, Led)> = practices
        .iter()
        .zip(numbers)
        .map(|(practice, number)| (*number, Led { session: practice.session, began: practice.began.clone(), here: true }))
        .collect();
    led.sort_by(|one, other| (one.0, &one.1.began).cmp(&(other.0, &other.1.began)));
    let led: Vec<Led> = led.into_iter().map(|(_, led)| led).collect();
    let (wrong, _) = misdated(&led, today);
    let wrong: BTreeSet<i64> = led.iter().zip(wrong).filter(|(_, wrong)| *wrong).map(|(led, _)| led.session).collect();
    for practice in practices {
        practice.misdated = wrong.contains(&practice.session);
    }
    wrong
}

fn conditions(engine: &mut dyn Engine, client: i64) -> Result<HashMap<i64, Conditions>, ClinicError> {
    let sql = format!("SELECT {}, c.id FROM condition c WHERE c.client = $1", ConditionRow::of("c"));
    let rows = list(engine, &sql, &values![client], |row| Ok((row.int(ConditionRow::NAMES.len())?, ConditionRow::read(row)?.into())))?;
    Ok(rows.into_iter().collect())
}

/// What is known of the sessions while their trials are read.
struct Known {
    parts: HashMap<i64, Vec<ZonedDateTime>>,
    conditions: HashMap<i64, Conditions>,
    /// Sessions whose date cannot be believed.
    wrong: BTreeSet<i64>,
}

impl Known {
    /// A trial as the arithmetic wants it; none where nothing of it was measured that is followed.
    fn trial(&self, row: &Row, measured: &Measured) -> Result<Option<Trial>, ClinicError> {
        let kept = TrialRow::read(row)?;
        let Some(kind) = TrialKind::of_name(&kept.kind).filter(|kind| Measure::followed(*kind).next().is_some()) else { return Ok(None) };
        let start = self.parts.get(&kept.session).and_then(|starts| starts.get(usize::try_from(kept.part).ok()?.checked_sub(1)?));
        let Some(start) = start else { return Ok(None) };
        // Saturates, and a span too long for the calendar leaves the start.
        #[allow(clippy::cast_possible_truncation, reason = "saturates")]
        let when = Span::new()
            .try_milliseconds((kept.at_s * 1000.0).round() as i64)
            .ok()
            .and_then(|span| start.checked_add(span).ok())
            .unwrap_or_else(|| start.clone());
        let (masked_s, breaks) = (measured.value(row, kind, Measure::MaskedS)?, measured.value(row, kind, Measure::Breaks)?);
        let conditions = Conditions {
            clipped_s: kept.clipped_s.unwrap_or(0.0),
            masked_s: masked_s.unwrap_or(0.0),
            // Saturates.
            breaks: breaks.map_or(0, |breaks| breaks as u32),
            in_noise: kept.in_noise == Some(true),
            over_room_db: kept.over_room_db,
            ..kept.condition.and_then(|id| self.conditions.get(&id)).cloned().unwrap_or_default()
        };
        let mut values = Vec::new();
        for measure in Measure::followed(kind) {
            if let Some(value) = measured.value(row, kind, measure)? {
                values.push(progress::Value { measure, value, discard: None });
            }
        }
        let mut trial = Trial {
            when,
            day: start.date(),
            session: kept.session,
            seq: kept.seq,
            exercise: kept.exercise,
            position: None,
            values,
            conditions,
            complete: kept.complete,
            duration_s: measured.duration_s(row, kind)?.unwrap_or(0.0),
            misdated: self.wrong.contains(&kept.session),
        };
        trial.judge();
        Ok(Some(trial))
    }
}
