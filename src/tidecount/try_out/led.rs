//! The weeks of one simulated client, each practice led by the engine.

use std::collections::BTreeSet;

use jiff::civil::Date;
use jiff::tz::TimeZone;
use jiff::{SignedDuration, ZonedDateTime};

use super::people::Person;
use crate::simulated::course::{ROUTINE, planned};
use crate::simulated::practice::lead;
use files::error::Failure;
use model::{Entry, Fact};
use record::{WholePart, WholeSession, journal_text};
use routine::{Hearing, Prescription, check_text};
use session::{SessionContext, WeekToAsk};

/// What stands as the program in a practice that nobody made.
const SOFTWARE: &str = concat!("tidecount ", env!("CARGO_PKG_VERSION"), ", simulated");
/// Weeks of practice.
pub const WEEKS: u32 = 8;
/// When they practise: hours and minutes.
const AT: (i8, i8) = (10, 0);

/// One practice.
pub struct Led {
    pub began: ZonedDateTime,
    pub ended: ZonedDateTime,
    /// Why it ended.
    pub reason: Option<String>,
    pub entries: Vec<Entry>,
}

impl Led {
    /// As it stands in a record, whole.
    ///
    /// # Errors
    /// An entry cannot be written as a line.
    pub fn session(&self, number: i64, package: Option<&str>, title: &str, text: &str) -> Result<WholeSession, Failure> {
        let lines = journal_text(&self.entries)?.lines().map(str::to_owned).collect();
        Ok(WholeSession {
            number,
            package: package.map(str::to_owned),
            started_at: self.began.to_string(),
            end: self.reason.clone().map(|reason| (self.ended.to_string(), reason)),
            routine_title: title.to_owned(),
            routine_text: text.to_owned(),
            software: SOFTWARE.to_owned(),
            parts: vec![WholePart { started_at: self.began.to_string(), lines }],
        })
    }
}

/// The routine of one client, marked as simulated, with its plan.
pub fn routine_text(name: &str) -> String {
    let plan =
        format!("client = \"{name}\"\nplan = [{{ days = [\"monday\", \"wednesday\", \"friday\"], at = \"{:02}:{:02}\" }}]", AT.0, AT.1);
    format!("# Simulated: nobody real practises this.\n{}", ROUTINE.1.replace("client = \"household\"", &plan))
}

/// The routine as the engine takes it.
///
/// # Errors
/// It has faults.
pub fn prescription(text: &str) -> Result<Prescription, Failure> {
    Ok(check_text("the simulated routine", text, Hearing::default())?)
}

/// Every practice of this client, oldest first.
///
/// # Errors
/// A day has no such hour here.
pub fn weeks(person: &Person, prescription: &Prescription, today: Date) -> Result<Vec<Led>, Failure> {
    let days = planned(WEEKS, today);
    let last = days.len().saturating_sub(1).max(1);
    let mut led = Vec::new();
    let mut known = BTreeSet::new();
    for (nth, day) in days.iter().enumerate() {
        let back = (today - *day).get_days();
        if !person.practises(nth, back) {
            continue;
        }
        let began = day
            .at(AT.0, AT.1, 0, 0)
            .to_zoned_datetime(TimeZone::system())
            .map_err(|why| Failure::Again(format!("{day} has no {}:{:02} here: {why}", AT.0, AT.1)))?;
        let context = SessionContext {
            first_session: known.is_empty(),
            // Their clinician agreed before the first practice.
            agreed: prescription.routine.steps.iter().map(|step| step.exercise.id.clone()).collect(),
            known: known.clone(),
            practice_week: nth as u32 / 3,
            // Three practices a week: asked at the first of each.
            week_to_ask: (nth > 0 && nth % 3 == 0).then(WeekToAsk::default),
            ..SessionContext::default()
        };
        let entries = lead(&prescription.routine, context, &person.on(nth, nth as f64 / last as f64, back));
        known.extend(prescription.routine.steps.iter().map(|step| step.exercise.id.clone()));
        let length_s = entries.last().map_or(0.0, |last| last.at_s);
        let reason = entries.iter().rev().find_map(|entry| match &entry.fact {
            Fact::SessionEnded { reason, .. } => Some(reason.to_string()),
            _ => None,
        });
        let length = SignedDuration::try_from_secs_f64(length_s).unwrap_or(SignedDuration::ZERO);
        let ended = began.checked_add(length).unwrap_or_else(|_| began.clone());
        led.push(Led { began, ended, reason, entries });
    }
    Ok(led)
}
