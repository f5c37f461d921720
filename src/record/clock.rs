//! A clock that jumped. Practices are ordered by their numbers and timed by the sample clock, so nothing breaks; but somebody should know.

use super::error::RecordError;
use super::store::Store;
use super::time;
use jiff::{SignedDuration, ZonedDateTime};

/// A clock may be set back by so much without a word: time servers do.
const SLACK: SignedDuration = SignedDuration::from_mins(10);
/// A longer break between two practices makes the clock doubtful.
const LONG: SignedDuration = SignedDuration::from_hours(24 * 366);

impl Store {
    /// What is strange about the clock, in words for the person at the machine; none where it goes well with the last practice.
    /// Time zones and daylight saving do not matter: instants are compared.
    ///
    /// # Errors
    /// The database refuses.
    pub fn clock_note(&self, now: &ZonedDateTime) -> Result<Option<String>, RecordError> {
        let last: Option<String> = self.read(|db| {
            let mut last = db.prepare("SELECT p.started_at FROM part p ORDER BY p.session DESC, p.number DESC LIMIT 1")?;
            let mut rows = last.query([])?;
            rows.next()?.map(|row| row.get(0)).transpose()
        })?;
        let Some(last) = last.and_then(|text| time::read(&text)) else { return Ok(None) };
        let passed = last.duration_until(now);
        let said = |time: &ZonedDateTime| time.strftime("%Y-%m-%d %H:%M").to_string();
        let odd = if passed < -SLACK {
            "before the last practice in the record"
        } else if passed > LONG {
            "more than a year after the last practice in the record"
        } else {
            return Ok(None);
        };
        Ok(Some(format!(
            "The clock of this computer says {}, which is {odd} ({}). Practices keep their order and their lengths all the same. \
             See that date and time are right, or days and weeks will not be.",
            said(now),
            said(&last)
        )))
    }
}

#[cfg(test)]
#[path = "tests/clock.rs"]
mod tests;
