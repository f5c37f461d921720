//! What was agreed to on a page, and how it stands beside what was said aloud and what a package brought.

use super::clients::client_row;
use super::error::RecordError;
use super::store::{Store, later};
use jiff::{Timestamp, ToSpan, ZonedDateTime};
use model::{Fact, SessionId, Symptom, parse_line};
use routine::{Posture, Prescription, dose_band};
use rusqlite::params;
use std::collections::{BTreeMap, BTreeSet};

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
    /// For how much of it ([`routine::dose_band`]); none: however much the routine holds.
    pub dose_band: Option<u32>,
    /// In which posture, "sitting"; none: in any.
    pub posture: Option<String>,
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
        for aloud in self.agreed_aloud(client)? {
            take(&mut all, aloud);
        }
        for one in self.agreed_by_package(client)? {
            let (how, at) = (AgreedHow::Package { by: one.by }, one.agreed_at.to_string());
            take(&mut all, Agreement { exercise: one.exercise, how, at, dose_band: None, posture: None });
        }
        for row in self.page_rows(client)? {
            if row.given {
                let how = AgreedHow::Page { by: row.by };
                take(&mut all, Agreement { exercise: row.exercise, how, at: row.at, dose_band: None, posture: None });
            } else if all.get(&row.exercise).is_some_and(|one| moment(&one.at) <= moment(&row.at)) {
                all.remove(&row.exercise);
            }
        }
        Ok(all.into_values().collect())
    }

    /// The exercises of this routine to which an agreement holds at `now`: it has not expired, covers the dose and the posture of every
    /// step, and nobody has said since that the exercise hurt or made them dizzy.
    ///
    /// # Errors
    /// The database refuses or holds a line that cannot be read.
    pub fn agreed_now(&self, client: &str, prescription: &Prescription, now: &ZonedDateTime) -> Result<BTreeSet<String>, RecordError> {
        let upset = self.last_upsets(client)?;
        let first = now.checked_sub(i64::from(prescription.agreement_months).months()).map_or(Timestamp::MIN, |first| first.timestamp());
        let covers = |one: &Agreement| {
            let steps = prescription.routine.steps.iter().filter(|step| step.exercise.id == one.exercise);
            let mut asked = steps.map(|step| (dose_band(step), step.posture.map(Posture::name)));
            let at = moment(&one.at);
            at >= first
                && upset.get(&one.exercise).is_none_or(|upset| *upset < at)
                && asked.all(|(band, posture)| {
                    one.dose_band.is_none_or(|agreed| band <= agreed)
                        && one.posture.as_deref().is_none_or(|agreed| posture.is_none_or(|posture| posture == agreed))
                })
        };
        Ok(self.agreements(client)?.into_iter().filter(|one| covers(one)).map(|one| one.exercise).collect())
    }

    /// When each exercise was last said, in a live practice, to hurt or to make the client unwell. A call for help alone is no such word.
    fn last_upsets(&self, client: &str) -> Result<BTreeMap<String, Timestamp>, RecordError> {
        let rows: Vec<(i64, u32, String, String)> = self.read(|db| {
            db.prepare(
                "SELECT s.id, e.seq, p.started_at, e.json FROM session s JOIN client c ON c.id = s.client
                 JOIN entry e ON e.session = s.id JOIN part p ON p.session = s.id AND p.number = e.part
                 WHERE c.name = ?1 AND s.source = 'live' AND e.kind = 'safety_stop' ORDER BY s.id, e.seq",
            )?
            .query_map([client], |row| Ok((row.get(0)?, row.get(1)?, row.get(2)?, row.get(3)?)))?
            .collect()
        })?;
        let mut last = BTreeMap::new();
        for (session, seq, started, json) in rows {
            let entry = parse_line(&json).map_err(|cause| self.bad_line(SessionId(session), seq as usize, cause))?;
            let (Some(at), Fact::SafetyStop { exercise, exercise_before, reason }) = (later(&started, entry.at_s), entry.fact) else {
                continue;
            };
            // Said just after an exercise, it is taken as said of that one.
            if let Some(exercise) = exercise.or(exercise_before)
                && reason != Symptom::Help
            {
                let before = last.entry(exercise).or_insert(Timestamp::MIN);
                *before = (*before).max(at.timestamp());
            }
        }
        Ok(last)
    }

    /// What was agreed to aloud, with the dose and the posture that were asked about where the entry tells them.
    fn agreed_aloud(&self, client: &str) -> Result<Vec<Agreement>, RecordError> {
        let rows: Vec<(i64, String, String, Option<String>)> = self.read(|db| {
            db.prepare(
                "SELECT a.session, a.exercise, a.given_at,
                        (SELECT e.json FROM entry e, json_each(e.json, '$.exercises') x
                         WHERE e.session = a.session AND e.kind = 'agreement' AND x.value = a.exercise ORDER BY e.seq DESC LIMIT 1)
                 FROM agreement a JOIN client c ON c.id = a.client JOIN session s ON s.id = a.session
                 WHERE c.name = ?1 AND s.source = 'live' ORDER BY a.session",
            )?
            .query_map([client], |row| Ok((row.get(0)?, row.get(1)?, row.get(2)?, row.get(3)?)))?
            .collect()
        })?;
        let of_row = |(session, exercise, at, json): (i64, String, String, Option<String>)| {
            let entry = json.map(|json| parse_line(&json).map_err(|cause| self.bad_line(SessionId(session), 0, cause))).transpose()?;
            let (dose_band, posture) = match entry.map(|entry| entry.fact) {
                Some(Fact::Agreement { dose_band, posture, .. }) => (dose_band, posture),
                _ => (None, None),
            };
            Ok(Agreement { exercise, how: AgreedHow::Aloud, at, dose_band, posture })
        };
        rows.into_iter().map(of_row).collect()
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
