//! What was agreed to on a page, and how it stands beside what was said aloud and what a package brought.

use super::error::RecordError;
use super::packages::client_row;
use super::store::Store;
use jiff::{Timestamp, ZonedDateTime};
use rusqlite::params;
use std::collections::BTreeMap;

/// How an agreement came about.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum AgreedHow {
    /// Aloud, in a live practice led here.
    Aloud,
    /// On a page; who agreed, as it was typed.
    Page { by: String },
    /// In the clinician's package that is in force; the fingerprint of the clinician's key.
    Package { by: String },
}

/// One exercise of one client.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Agreement {
    pub exercise: String,
    pub how: AgreedHow,
    /// When, as it was kept.
    pub at: String,
}

struct PageRow {
    exercise: String,
    given: bool,
    by: String,
    at: String,
}

impl Store {
    /// Keeps that a clinician has agreed, as somebody told on a page.
    ///
    /// # Errors
    /// The database refuses.
    pub fn agree_by_page(&mut self, client: &str, exercises: &[String], by: &str, now: &ZonedDateTime) -> Result<(), RecordError> {
        self.keep_on_page(client, exercises, (true, by), now)
    }

    /// Keeps that an agreement is withdrawn, however it came about. A later one counts again.
    ///
    /// # Errors
    /// The database refuses.
    pub fn withdraw_by_page(&mut self, client: &str, exercise: &str, by: &str, now: &ZonedDateTime) -> Result<(), RecordError> {
        self.keep_on_page(client, &[exercise.to_owned()], (false, by), now)
    }

    fn keep_on_page(
        &mut self,
        client: &str,
        exercises: &[String],
        (given, by): (bool, &str),
        now: &ZonedDateTime,
    ) -> Result<(), RecordError> {
        self.change(|tx| {
            let client = client_row(tx, client)?;
            for exercise in exercises {
                tx.execute(
                    "INSERT INTO page_agreement (client, exercise, given, agreed_by, at) VALUES (?1, ?2, ?3, ?4, ?5)",
                    params![client, exercise, given, by, now.to_string()],
                )?;
            }
            Ok(())
        })
    }

    /// Every agreement of a client that counts now, by exercise: of what was said aloud, kept on a page and brought by the
    /// package in force, the latest decides; a withdrawal on the page is one of them.
    ///
    /// # Errors
    /// The database refuses.
    pub fn agreements(&self, client: &str) -> Result<Vec<Agreement>, RecordError> {
        let mut all: BTreeMap<String, Agreement> = BTreeMap::new();
        let aloud: Vec<(String, String)> = self.read(|db| {
            db.prepare(
                "SELECT a.exercise, a.given_at FROM agreement a JOIN client c ON c.id = a.client JOIN session s ON s.id = a.session
                 WHERE c.name = ?1 AND s.source = 'live' ORDER BY a.session",
            )?
            .query_map([client], |row| Ok((row.get(0)?, row.get(1)?)))?
            .collect()
        })?;
        for (exercise, at) in aloud {
            take(&mut all, Agreement { exercise, how: AgreedHow::Aloud, at });
        }
        for one in self.agreed_by_package(client)? {
            take(&mut all, Agreement { exercise: one.exercise, how: AgreedHow::Package { by: one.by }, at: one.agreed_at.to_string() });
        }
        for row in self.page_rows(client)? {
            if row.given {
                take(&mut all, Agreement { exercise: row.exercise, how: AgreedHow::Page { by: row.by }, at: row.at });
            } else if all.get(&row.exercise).is_some_and(|one| moment(&one.at) <= moment(&row.at)) {
                all.remove(&row.exercise);
            }
        }
        Ok(all.into_values().collect())
    }

    fn page_rows(&self, client: &str) -> Result<Vec<PageRow>, RecordError> {
        self.read(|db| {
            db.prepare(
                "SELECT p.exercise, p.given, p.agreed_by, p.at FROM page_agreement p JOIN client c ON c.id = p.client
                 WHERE c.name = ?1 ORDER BY p.number",
            )?
            .query_map([client], |row| Ok(PageRow { exercise: row.get(0)?, given: row.get(1)?, by: row.get(2)?, at: row.get(3)? }))?
            .collect()
        })
    }
}

/// The later one stays.
fn take(all: &mut BTreeMap<String, Agreement>, one: Agreement) {
    match all.get(&one.exercise) {
        Some(before) if moment(&before.at) > moment(&one.at) => {}
        _ => {
            all.insert(one.exercise.clone(), one);
        }
    }
}

/// The instant of a kept time; what cannot be read is before all others.
fn moment(at: &str) -> Timestamp {
    let zoned = at.parse::<ZonedDateTime>().map(|zoned| zoned.timestamp());
    zoned.or_else(|_| at.parse::<Timestamp>()).unwrap_or(Timestamp::MIN)
}

#[cfg(test)]
#[path = "tests/agreement.rs"]
mod tests;
