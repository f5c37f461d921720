//! The tables' rows by name.

use super::typed::columns;
use jiff::ZonedDateTime;
use jiff::civil::Date;
use model::{FrequencyWeighting, LevelCalibration, StepReason, TimeWeighting};
use progress::{Conditions, Microphone};

columns! {
    /// All that the caseload needs of one client.
    pub(super) struct DigestRow {
        client: i64,
        newest_made_at: Option<Date>,
        follows_newest: Option<bool>,
        first_day: Option<Date>,
        last_day: Option<Date>,
        known_to: Option<Date>,
        sessions: u32,
        trials: u32,
        practised_s: f64,
        planned_week: Option<u32>,
        gap_days: u32,
        recent_counted: u32,
        recent_prescribed: u32,
        before_counted: u32,
        before_prescribed: u32,
        planned: bool,
        chest_pain: u32,
        breathless: u32,
        choking: u32,
        dizzy: u32,
        pain: u32,
        sick: u32,
        help: u32,
        said_else: u32,
        last_safety: Option<Date>,
        signs: u32,
        signs_what: Option<String>,
        left_out: u32,
        left_out_what: Option<String>,
        tired: u32,
        fallen: u32,
        fallen_what: Option<String>,
        risen: u32,
        microphone: String,
        microphone_since: Option<Date>,
        clock_wrong: u32,
        fresh: bool,
        seen_day: Option<Date>,
        seen_note: Option<String>,
    }
}

columns! {
    /// One day's adherence.
    pub(super) struct DayRow {
        client: i64,
        day: Date,
        sessions: u32,
        done: u32,
        counted: u32,
        prescribed: u32,
        planned: bool,
    }
}

columns! {
    /// One measure of one exercise.
    pub(super) struct MeasureRow {
        client: i64,
        exercise: String,
        measure: String,
        label: String,
        since: Date,
        until: Date,
        trials: u32,
        baseline: Option<f64>,
        latest: Option<f64>,
        smallest_change: Option<f64>,
        verdict: String,
    }
}

columns! {
    /// What came of a step that was begun.
    pub(super) struct StepRow {
        session: i64,
        step: u32,
        exercise: String,
        ramp_stage: Option<u32>,
        done: u32,
        prescribed: Option<u32>,
        stopped: Option<StepReason>,
    }
}

columns! {
    /// What the arithmetic asks of a session.
    pub(super) struct SessionRow {
        id: i64,
        started_at: ZonedDateTime,
        number: i64,
        end_reason: Option<String>,
        package: Option<String>,
        software: String,
        practised_s: f64,
        steps_done: u32,
        steps_prescribed: u32,
        part_starts: String,
    }
}

columns! {
    /// A trial without its figures, which are `measured`.
    pub(super) struct TrialRow {
        session: i64,
        seq: i64,
        exercise: String,
        kind: String,
        part: u32,
        at_s: f64,
        step: Option<u32>,
        set_no: Option<u32>,
        repetition: Option<u32>,
        complete: bool,
        clipped_s: Option<f64>,
        in_noise: Option<bool>,
        over_room_db: Option<f64>,
        correct: Option<bool>,
        condition: Option<i64>,
        discarded: Option<String>,
    }
}

columns! {
    /// What figures were taken under.
    pub(super) struct ConditionRow {
        weighting: Option<FrequencyWeighting>,
        time_weighting: Option<TimeWeighting>,
        calibration: LevelCalibration,
        calibration_note: Option<String>,
        distance_cm: Option<f64>,
        auto_gain: bool,
        microphone_system: Option<String>,
        microphone_name: Option<String>,
        microphone_rate_hz: Option<u32>,
        microphone_gain: Option<String>,
    }
}

impl From<&Conditions> for ConditionRow {
    fn from(conditions: &Conditions) -> Self {
        let microphone = conditions.microphone.as_ref();
        Self {
            weighting: conditions.level_weighting.clone(),
            time_weighting: conditions.time_weighting.clone(),
            calibration: conditions.calibration,
            calibration_note: conditions.calibration_note.clone(),
            distance_cm: conditions.distance_cm,
            auto_gain: conditions.auto_gain,
            microphone_system: microphone.map(|mic| mic.system.clone()),
            microphone_name: microphone.map(|mic| mic.name.clone()),
            microphone_rate_hz: microphone.map(|mic| mic.rate_hz),
            microphone_gain: microphone.map(|mic| mic.gain.clone()),
        }
    }
}

impl From<ConditionRow> for Conditions {
    fn from(row: ConditionRow) -> Self {
        let microphone = match (row.microphone_system, row.microphone_name, row.microphone_rate_hz, row.microphone_gain) {
            (Some(system), Some(name), Some(rate_hz), Some(gain)) => Some(Microphone { system, name, rate_hz, gain }),
            _ => None,
        };
        Self {
            level_weighting: row.weighting,
            time_weighting: row.time_weighting,
            calibration: row.calibration,
            calibration_note: row.calibration_note,
            distance_cm: row.distance_cm,
            auto_gain: row.auto_gain,
            microphone,
            ..Self::default()
        }
    }
}
