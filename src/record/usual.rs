//! What is usual for a client's voice, as marks on the live bar. Never said, and no judgement.

use std::collections::BTreeMap;

use super::error::RecordError;
use super::store::Store;
use model::{SessionId, parse_line};
use session::{Fact, LevelCalibration, LevelTerms, PastExercise};

/// The voice in one exercise, from its newest trials; a value is there only where at least [`PastExercise::ENOUGH_TRIALS`] have it.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct UsualVoice {
    /// Median level, dB on the scale of `calibration`.
    pub level_db: Option<f64>,
    /// What that level refers to: it can be compared with no other scale.
    pub calibration: LevelCalibration,
    /// Median F0, Hz.
    pub f0_hz: Option<f64>,
}

/// One trial, as far as the voice is concerned.
struct Trial {
    level_db: Option<f64>,
    calibration: LevelCalibration,
    f0_hz: Option<f64>,
}

impl Store {
    /// What was usual in live sessions before, by exercise, not counting `present` (a session that is gone on with).
    ///
    /// # Errors
    /// The database refuses or holds a line that cannot be read.
    pub fn usual_voices(&self, client: &str, present: Option<SessionId>) -> Result<BTreeMap<String, UsualVoice>, RecordError> {
        let rows: Vec<(i64, u32, String)> = self.read(|db| {
            db.prepare(
                "SELECT s.id, e.seq, e.json FROM session s JOIN client c ON c.id = s.client JOIN entry e ON e.session = s.id
                 WHERE c.name = ?1 AND s.source = 'live' AND s.id IS NOT ?2 AND e.kind IN ('hold_measured', 'phrase_read', 'talked')
                 ORDER BY s.id DESC, e.seq DESC",
            )?
            .query_map((client, present.map(|id| id.0)), |row| Ok((row.get(0)?, row.get(1)?, row.get(2)?)))?
            .collect()
        })?;
        let mut newest: BTreeMap<String, Vec<Trial>> = BTreeMap::new();
        for (session, seq, json) in rows {
            let entry = parse_line(&json).map_err(|cause| self.bad_line(SessionId(session), seq as usize, cause))?;
            let (Fact::HoldMeasured { exercise, level_mean_db, f0_median_hz, level_terms, complete: true, .. }
            | Fact::PhraseRead { exercise, level_mean_db, f0_median_hz, level_terms, .. }
            | Fact::Talked { exercise, level_mean_db, f0_median_hz, level_terms, complete: true, .. }) = entry.fact
            else {
                continue;
            };
            let trials = newest.entry(exercise).or_default();
            if trials.len() < PastExercise::RECENT_TRIALS {
                trials.push(Trial::new(level_mean_db, f0_median_hz, &level_terms.unwrap_or_default()));
            }
        }
        Ok(newest.into_iter().map(|(exercise, trials)| (exercise, usual(&trials))).collect())
    }
}

impl Trial {
    /// A clipped level is too low, and a microphone that changes its own volume has none.
    fn new(level_db: f64, f0_hz: f64, terms: &LevelTerms) -> Self {
        let sound = !terms.auto_gain && terms.clipped_s <= 0.0;
        Self {
            level_db: Some(level_db).filter(|db| db.is_finite() && sound),
            calibration: terms.calibration,
            f0_hz: Some(f0_hz).filter(|hz| hz.is_finite() && *hz > 0.0),
        }
    }
}

/// `trials` with the newest first.
fn usual(trials: &[Trial]) -> UsualVoice {
    let calibration = trials.first().map(|trial| trial.calibration).unwrap_or_default();
    let levels = trials.iter().filter(|trial| trial.calibration == calibration).filter_map(|trial| trial.level_db);
    let levels: Vec<f64> = levels.collect();
    let pitches: Vec<f64> = trials.iter().filter_map(|trial| trial.f0_hz).collect();
    UsualVoice { level_db: median(&levels), calibration, f0_hz: median(&pitches) }
}

/// None where there are too few to tell what is usual.
fn median(values: &[f64]) -> Option<f64> {
    statistics::median(values).filter(|_| values.len() >= PastExercise::ENOUGH_TRIALS as usize)
}

#[cfg(test)]
#[path = "tests/usual.rs"]
mod tests;
