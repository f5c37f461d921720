//! Earlier results of a client, for comparisons that are true.

use super::error::RecordError;
use super::store::{Store, later};
use jiff::ZonedDateTime;
use model::SessionId;
use model::parse_line;
use session::{Fact, LevelCalibration, Past, PastExercise, PastResults};
use statistics::{mean, sd};
use std::collections::BTreeMap;

struct Trial {
    session: i64,
    duration_s: f64,
    /// None where it can be compared with no other.
    level_db: Option<f64>,
    /// What the level refers to.
    calibration: LevelCalibration,
    made_at: ZonedDateTime,
}

impl Store {
    /// What the client has managed in live sessions before `now`, not counting `present` (a session that is gone on with).
    ///
    /// # Errors
    /// The database refuses or holds a line that cannot be read.
    pub fn past(&self, client: &str, now: &ZonedDateTime, present: Option<SessionId>) -> Result<PastResults, RecordError> {
        let rows: Vec<(i64, u32, String, String)> = self.read(|db| {
            db.prepare(
                "SELECT s.id, e.seq, p.started_at, e.json FROM session s JOIN client c ON c.id = s.client
                 JOIN entry e ON e.session = s.id JOIN part p ON p.session = s.id AND p.number = e.part
                 WHERE c.name = ?1 AND s.source = 'live' AND s.id NOT IN (SELECT session FROM assessment) AND s.id IS NOT ?2 AND e.kind = 'hold_measured' ORDER BY s.id, e.seq",
            )?
            .query_map((client, present.map(|id| id.0)), |row| Ok((row.get(0)?, row.get(1)?, row.get(2)?, row.get(3)?)))?
            .collect()
        })?;
        let mut trials: BTreeMap<String, Vec<Trial>> = BTreeMap::new();
        for (session, seq, started, json) in rows {
            let entry = parse_line(&json).map_err(|cause| self.bad_line(SessionId(session), seq as usize, cause))?;
            let Fact::HoldMeasured { exercise, duration_s, level_mean_db, level_terms, complete: true, .. } = entry.fact else { continue };
            let Some(made_at) = later(&started, entry.at_s) else { continue };
            let terms = level_terms.unwrap_or_default();
            let level_db = Some(level_mean_db).filter(|db| db.is_finite() && !terms.auto_gain);
            trials.entry(exercise).or_default().push(Trial { session, duration_s, level_db, calibration: terms.calibration, made_at });
        }
        let by_exercise = trials.into_iter().map(|(exercise, trials)| (exercise, summarise(&trials, now))).collect();
        Ok(PastResults { by_exercise })
    }
}

/// `trials` in the order in which they were made.
fn summarise(trials: &[Trial], now: &ZonedDateTime) -> PastExercise {
    let last_session = trials.last().map(|trial| trial.session);
    let in_month = |trial: &&Trial| {
        let made = trial.made_at.with_time_zone(now.time_zone().clone());
        (made.year(), made.month()) == (now.year(), now.month())
    };
    let mut sessions: Vec<i64> = trials.iter().map(|trial| trial.session).collect();
    sessions.dedup();
    let recent: Vec<f64> = trials.iter().rev().take(PastExercise::RECENT_TRIALS).map(|trial| trial.duration_s).collect();
    let mean_s = (!recent.is_empty()).then(|| mean(&recent));
    let sd_s = sd(&recent);
    // Levels on another scale have no common scatter with these.
    let scale = trials.last().map(|trial| trial.calibration);
    let same_scale = trials.iter().rev().take(PastExercise::RECENT_TRIALS).filter(|trial| Some(trial.calibration) == scale);
    let levels_db: Vec<f64> = same_scale.filter_map(|trial| trial.level_db).collect();
    PastExercise {
        last: best(trials.iter().filter(|trial| Some(trial.session) == last_session), now),
        best_this_month: best(trials.iter().filter(in_month), now),
        sessions: u32::try_from(sessions.len()).unwrap_or(u32::MAX),
        recent_trials: u32::try_from(recent.len()).unwrap_or(u32::MAX),
        mean_s,
        sd_s,
        level_sd_db: sd(&levels_db).filter(|_| levels_db.len() >= PastExercise::ENOUGH_TRIALS as usize),
    }
}

fn best<'a>(trials: impl Iterator<Item = &'a Trial>, now: &ZonedDateTime) -> Option<Past> {
    let trial = trials.max_by(|one, other| one.duration_s.total_cmp(&other.duration_s))?;
    let made = trial.made_at.with_time_zone(now.time_zone().clone()).date();
    let days = made.duration_until(now.date()).as_hours() / 24;
    Some(Past {
        duration_s: trial.duration_s,
        weekday: made.weekday().into(),
        date: made.to_string(),
        days_ago: u32::try_from(days).unwrap_or(0),
    })
}

impl Store {
    /// Exercises that this client has begun in earlier live sessions.
    ///
    /// # Errors
    /// The database refuses.
    pub fn exercises_begun(&self, client: &str) -> Result<std::collections::BTreeSet<String>, RecordError> {
        self.read(|db| {
            db.prepare(
                "SELECT DISTINCT json_extract(e.json, '$.exercise') FROM entry e
                 JOIN session s ON s.id = e.session JOIN client c ON c.id = s.client
                 WHERE c.name = ?1 AND s.source = 'live' AND e.kind = 'step_begun' AND json_extract(e.json, '$.exercise') IS NOT NULL",
            )?
            .query_map([client], |row| row.get(0))?
            .collect()
        })
    }
}

#[cfg(test)]
#[path = "tests/past.rs"]
mod tests;
