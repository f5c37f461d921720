//! What a client's earlier sessions tell about how to lead: how long this person takes, what was asked already, since when
//! there has been practice.

use std::collections::BTreeMap;

use jiff::ZonedDateTime;
use rusqlite::OptionalExtension;

use super::error::RecordError;
use super::store::Store;
use super::time;
use model::{SessionId, parse_line};
use session::{Entry, Fact, Habits};

/// Repetitions that are looked through for what was asked where no answer could be heard; most are of other exercises.
const NEWEST_REPETITIONS: u32 = 2_000;
/// So many of the newest responses are read.
const NEWEST: u32 = 200;

impl Store {
    /// How long this client took in earlier live sessions.
    ///
    /// # Errors
    /// The database refuses or holds a line that cannot be read.
    pub fn habits(&self, client: &str) -> Result<Habits, RecordError> {
        let mut habits = Habits::default();
        for entry in self.newest(client, "response_timed", NEWEST)?.into_iter().rev() {
            if let Fact::ResponseTimed { to, after_s } = entry.fact {
                habits.add(to, after_s);
            }
        }
        Ok(habits)
    }

    /// How often each clue of a question, and each category, was asked of this client in live sessions.
    ///
    /// # Errors
    /// The database refuses or holds a line that cannot be read.
    pub fn asked(&self, client: &str) -> Result<BTreeMap<String, u32>, RecordError> {
        let mut asked = BTreeMap::new();
        for (kind, limit) in [("question_answered", u32::MAX), ("category_named", u32::MAX), ("repetition_done", NEWEST_REPETITIONS)] {
            for entry in self.newest(client, kind, limit)? {
                if let Fact::QuestionAnswered { clue: what, .. }
                | Fact::CategoryNamed { category: what, .. }
                | Fact::RepetitionDone { asked: Some(what), .. } = entry.fact
                {
                    *asked.entry(what).or_insert(0) += 1;
                }
            }
        }
        Ok(asked)
    }

    /// Whole weeks since this client's first live session; 0 before there was one.
    ///
    /// # Errors
    /// The database refuses.
    pub fn practice_week(&self, client: &str, now: &ZonedDateTime) -> Result<u32, RecordError> {
        let first: Option<String> = self.read(|db| {
            db.query_row(
                "SELECT s.started_at FROM session s JOIN client c ON c.id = s.client WHERE c.name = ?1 AND s.source = 'live' ORDER BY s.id LIMIT 1",
                [client],
                |row| row.get(0),
            )
            .optional()
        })?;
        let weeks = first.and_then(|first| time::read(&first)).map_or(0, |first| first.duration_until(now).as_hours() / (24 * 7));
        Ok(u32::try_from(weeks).unwrap_or(0))
    }

    /// Entries of one kind of a client's live sessions, the newest first, at most `limit`.
    fn newest(&self, client: &str, kind: &str, limit: u32) -> Result<Vec<Entry>, RecordError> {
        let rows: Vec<(i64, u32, String)> = self.read(|db| {
            db.prepare(
                "SELECT s.id, e.seq, e.json FROM session s JOIN client c ON c.id = s.client JOIN entry e ON e.session = s.id
                 WHERE c.name = ?1 AND s.source = 'live' AND e.kind = ?2 ORDER BY s.id DESC, e.seq DESC LIMIT ?3",
            )?
            .query_map((client, kind, limit), |row| Ok((row.get(0)?, row.get(1)?, row.get(2)?)))?
            .collect()
        })?;
        rows.into_iter()
            .map(|(session, seq, json)| parse_line(&json).map_err(|cause| self.bad_line(SessionId(session), seq as usize, cause)))
            .collect()
    }
}

#[cfg(test)]
#[path = "tests/habits.rs"]
mod tests;
