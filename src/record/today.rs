//! What a client has already done today, so that several practices of a day together keep its limits.

use std::collections::BTreeMap;

use jiff::ZonedDateTime;

use super::error::RecordError;
use super::store::{Store, later};
use model::{Entry, Fact, SessionId, Symptom, parse_line};
use routine::{Amount, is_soft};
use session::EarlierToday;

impl Store {
    /// What was done in live practices on the local day of `now`, not counting `present` (a session that is gone on with).
    ///
    /// # Errors
    /// The database refuses or holds a line that cannot be read.
    pub fn earlier_today(&self, client: &str, now: &ZonedDateTime, present: Option<SessionId>) -> Result<EarlierToday, RecordError> {
        // A practice that was begun yesterday may have gone on past midnight.
        let since = now.date().yesterday().unwrap_or(now.date()).to_string();
        let rows: Vec<(i64, u32, String, String)> = self.read(|db| {
            db.prepare(
                "SELECT s.id, e.seq, p.started_at, e.json FROM session s JOIN client c ON c.id = s.client
                 JOIN entry e ON e.session = s.id JOIN part p ON p.session = s.id AND p.number = e.part
                 WHERE c.name = ?1 AND s.source = 'live' AND s.id IS NOT ?2 AND substr(p.started_at, 1, 10) >= ?3
                   AND s.id NOT IN (SELECT session FROM received)
                   AND e.kind IN ('hold_measured', 'posture_held', 'round_paced', 'repetition_done', 'phrase_read', 'syllables_counted',
                                  'question_answered', 'category_named')
                 ORDER BY s.id, e.seq",
            )?
            .query_map((client, present.map(|id| id.0), &since), |row| Ok((row.get(0)?, row.get(1)?, row.get(2)?, row.get(3)?)))?
            .collect()
        })?;
        let mut today = EarlierToday::default();
        let mut last_session = None;
        for (session, seq, started, json) in rows {
            let entry = parse_line(&json).map_err(|cause| self.bad_line(SessionId(session), seq as usize, cause))?;
            let Some(made) = later(&started, entry.at_s).map(|made| made.with_time_zone(now.time_zone().clone())) else { continue };
            if made.date() != now.date() {
                continue;
            }
            if last_session != Some(session) {
                last_session = Some(session);
                today.practices += 1;
            }
            add(&mut today.done, &entry);
            if let Fact::HoldMeasured { exercise, duration_s, .. } = &entry.fact
                && !is_soft(exercise)
            {
                today.loud_s += duration_s;
            }
            // A clock that was set back makes it recent, which is the careful reading.
            let ago_s = made.duration_until(now).as_secs_f64().max(0.0);
            today.ago_s = Some(today.ago_s.map_or(ago_s, |before: f64| before.min(ago_s)));
        }
        today.unwell = self.unwell_today(client, now)?;
        Ok(today)
    }

    /// What this client said was wrong in live practices on the local day of `now`, and during which exercise or after which, in order. A practice
    /// that is gone on with is among them: what was wrong then still is a reason for care.
    fn unwell_today(&self, client: &str, now: &ZonedDateTime) -> Result<Vec<(Symptom, Option<String>)>, RecordError> {
        let since = now.date().yesterday().unwrap_or(now.date()).to_string();
        let rows: Vec<(i64, u32, String, String)> = self.read(|db| {
            db.prepare(
                "SELECT s.id, e.seq, p.started_at, e.json FROM session s JOIN client c ON c.id = s.client
                 JOIN entry e ON e.session = s.id JOIN part p ON p.session = s.id AND p.number = e.part
                 WHERE c.name = ?1 AND s.source = 'live' AND substr(p.started_at, 1, 10) >= ?2
                   AND s.id NOT IN (SELECT session FROM received) AND e.kind = 'safety_stop'
                 ORDER BY s.id, e.seq",
            )?
            .query_map((client, &since), |row| Ok((row.get(0)?, row.get(1)?, row.get(2)?, row.get(3)?)))?
            .collect()
        })?;
        let mut unwell = Vec::new();
        for (session, seq, started, json) in rows {
            let entry = parse_line(&json).map_err(|cause| self.bad_line(SessionId(session), seq as usize, cause))?;
            let said = later(&started, entry.at_s).map(|said| said.with_time_zone(now.time_zone().clone()));
            if let (Some(said), Fact::SafetyStop { exercise, exercise_before, reason }) = (said, entry.fact)
                && said.date() == now.date()
            {
                unwell.push((reason, exercise.or(exercise_before)));
            }
        }
        Ok(unwell)
    }
}

/// What these entries say was done, cut-off repetitions among it, by exercise.
#[must_use]
pub fn amounts_in(entries: &[Entry]) -> BTreeMap<String, Amount> {
    let mut done = BTreeMap::new();
    entries.iter().for_each(|entry| add(&mut done, entry));
    done
}

/// Seconds that these entries of one session span, each of its parts by itself.
#[must_use]
pub fn led_in(entries: &[Entry]) -> f64 {
    let (mut led_s, mut last_s) = (0.0, 0.0_f64);
    for entry in entries {
        // Each part has a clock of its own.
        if entry.at_s < last_s {
            led_s += last_s;
            last_s = 0.0;
        }
        last_s = last_s.max(entry.at_s);
    }
    led_s + last_s
}

fn add(done: &mut BTreeMap<String, Amount>, entry: &Entry) {
    let (exercise, seconds) = match &entry.fact {
        Fact::HoldMeasured { exercise, duration_s, .. }
        | Fact::PostureHeld { exercise, duration_s, .. }
        | Fact::RoundPaced { exercise, duration_s, .. } => (exercise, *duration_s),
        Fact::RepetitionDone { exercise, .. }
        | Fact::PhraseRead { exercise, .. }
        | Fact::Talked { exercise, .. }
        | Fact::SyllablesCounted { exercise, .. }
        | Fact::QuestionAnswered { exercise, .. }
        | Fact::CategoryNamed { exercise, .. } => (exercise, 0.0),
        _ => return,
    };
    let amount = done.entry(exercise.clone()).or_default();
    *amount = amount.and(Amount { times: 1, seconds });
}

#[cfg(test)]
#[path = "tests/today.rs"]
mod tests;
