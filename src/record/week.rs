//! Whether the questions about the week are due, and how many planned days it missed.

use jiff::{Span, ZonedDateTime, civil::Date};
use rusqlite::OptionalExtension;

use super::error::RecordError;
use super::store::{Store, later};
use progress::{PlanBasis, Window, adherence};
use session::WeekToAsk;

/// Asked again after so many days.
const WEEK_DAYS: i32 = 7;

impl Store {
    /// What to ask this client about the week; none where that was asked less than a week ago.
    ///
    /// # Errors
    /// The database refuses or holds a line that cannot be read.
    pub fn week_to_ask(&self, client: &str, now: &ZonedDateTime) -> Result<Option<WeekToAsk>, RecordError> {
        let today = now.date();
        let days_ago = |days: i32| today.checked_sub(Span::new().days(days)).unwrap_or(today);
        // A day in the future is of a clock that was wrong: that must not silence the questions for good.
        let recent = days_ago(WEEK_DAYS - 1)..=today;
        if self.week_asked_on(client, now)?.is_some_and(|asked| recent.contains(&asked)) {
            return Ok(None);
        }
        let practised = self.practised(client, today)?;
        let last_days = Window { from: days_ago(WEEK_DAYS), to: days_ago(1) };
        let days = adherence(&practised, last_days).days;
        let missed = days.iter().filter(|day| day.basis == PlanBasis::Planned && day.planned > 0 && day.practices == 0).count();
        Ok(Some(WeekToAsk { days_missed: u32::try_from(missed).unwrap_or(u32::MAX) }))
    }

    /// The local day on which this client was last asked about a week, in a live practice led here.
    fn week_asked_on(&self, client: &str, now: &ZonedDateTime) -> Result<Option<Date>, RecordError> {
        let last: Option<(String, f64)> = self.read(|db| {
            db.query_row(
                "SELECT p.started_at, e.at_s FROM session s JOIN client c ON c.id = s.client
                 JOIN entry e ON e.session = s.id JOIN part p ON p.session = s.id AND p.number = e.part
                 WHERE c.name = ?1 AND s.source = 'live' AND s.id NOT IN (SELECT session FROM received)
                   AND (e.kind IN ('swallow_sign', 'days_missed', 'moment_told') OR (e.kind = 'rated' AND json_extract(e.json, '$.over') = 'week'))
                 ORDER BY s.id DESC, e.seq DESC LIMIT 1",
                [client],
                |row| Ok((row.get(0)?, row.get(1)?)),
            )
            .optional()
        })?;
        let asked = last.and_then(|(started, at_s)| later(&started, at_s));
        Ok(asked.map(|asked| asked.with_time_zone(now.time_zone().clone()).date()))
    }
}

#[cfg(test)]
#[path = "tests/week.rs"]
mod tests;
