//! The history a page at a time.

use super::error::RecordError;
use super::history::{SUMMARY, SessionSummary, summary};
use super::store::Store;
use jiff::ZonedDateTime;
use model::SessionId;

/// One entry's place in its practice.
#[derive(Debug, Clone, PartialEq)]
pub struct PartStart {
    /// From 1.
    pub number: u32,
    pub started_at: ZonedDateTime,
    /// Entries of it.
    pub entries: u32,
}

impl Store {
    /// The routine that a practice followed, as it was read.
    ///
    /// # Errors
    /// There is no such practice, or the database refuses.
    pub fn routine_text(&self, session: SessionId) -> Result<String, RecordError> {
        self.summary(session)?;
        self.read(|db| db.query_row("SELECT routine_text FROM session WHERE id = ?1", [session.0], |row| row.get(0)))
    }

    /// How many practices there are, of one client or of all.
    ///
    /// # Errors
    /// The database refuses.
    pub fn practices(&self, client: Option<&str>) -> Result<u64, RecordError> {
        let count: i64 = self.read(|db| {
            db.query_row(
                "SELECT count(*) FROM session s JOIN client c ON c.id = s.client WHERE ?1 IS NULL OR c.name = ?1",
                [client],
                |row| row.get(0),
            )
        })?;
        Ok(u64::try_from(count).unwrap_or(0))
    }

    /// Practices newest first, without the first `skip`, at most `limit`.
    ///
    /// # Errors
    /// The database refuses or holds a line that cannot be read.
    pub fn history_page(&self, client: Option<&str>, skip: u64, limit: u32) -> Result<Vec<SessionSummary>, RecordError> {
        let skip = i64::try_from(skip).unwrap_or(i64::MAX);
        let rows: Vec<SessionSummary> = self.read(|db| {
            db.prepare(&format!("{SUMMARY} WHERE ?1 IS NULL OR c.name = ?1 ORDER BY s.id DESC LIMIT ?2 OFFSET ?3"))?
                .query_map((client, limit, skip), summary)?
                .collect()
        })?;
        rows.into_iter().map(|row| self.history_of(row.id)).collect()
    }

    /// The parts of a practice in order, each with when it began and how many entries it has.
    ///
    /// # Errors
    /// The database refuses or holds a time that cannot be read.
    pub fn parts_of(&self, session: SessionId) -> Result<Vec<PartStart>, RecordError> {
        let rows: Vec<(u32, String, u32)> = self.read(|db| {
            db.prepare(
                "SELECT p.number, p.started_at, (SELECT count(*) FROM entry e WHERE e.session = p.session AND e.part = p.number)
                 FROM part p WHERE p.session = ?1 ORDER BY p.number",
            )?
            .query_map([session.0], |row| Ok((row.get(0)?, row.get(1)?, row.get(2)?)))?
            .collect()
        })?;
        let read = |(number, started, entries): (u32, String, u32)| {
            let started_at = started.parse().map_err(|_| self.bad_line(session, 0, format!("part {number} began at {started:?}")))?;
            Ok(PartStart { number, started_at, entries })
        };
        rows.into_iter().map(read).collect()
    }
}

#[cfg(test)]
#[path = "tests/browse.rs"]
mod tests;
