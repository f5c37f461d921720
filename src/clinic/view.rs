//! What is shown: the whole caseload from its sums, one client from a few short lists.

use super::adherence::Share;
use super::attention::{Attention, ReasonKind, Standing, attention, caseload};
use super::digest::Digest;
use super::engine::{list, one};
use super::error::ClinicError;
use super::facts::EventKind;
use super::refresh;
use super::store::Clinic;
use super::value::{Row, values};
use jiff::ZonedDateTime;
use jiff::civil::Date;

/// Something that was to be told.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct SeenEvent {
    pub kind: EventKind,
    pub what: String,
    pub exercise: Option<String>,
    pub day: Date,
}

pub(super) fn event(row: &Row) -> Result<SeenEvent, ClinicError> {
    let kind = EventKind::of_word(&row.text(0)?).unwrap_or(EventKind::Trouble);
    Ok(SeenEvent { kind, what: row.text(1)?, exercise: row.maybe_text(2)?, day: row.parsed(3)? })
}

/// One practice at a glance.
#[derive(Debug, Clone, PartialEq)]
pub struct SessionRow {
    pub started_at: ZonedDateTime,
    pub routine: String,
    pub steps_done: u32,
    pub steps_prescribed: u32,
    pub practised_s: f64,
    /// None where it was interrupted and may yet be gone on with.
    pub end_reason: Option<String>,
    pub package: Option<String>,
    pub software: String,
    pub trials: u32,
    /// Trials with a value that stands in no figure.
    pub discarded: u32,
}

/// One day's adherence.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct DayRow {
    pub day: Date,
    pub sessions: u32,
    pub done: u32,
    pub share: Share,
    /// By a plan of days.
    pub planned: bool,
}

/// One measure of one exercise.
#[derive(Debug, Clone, PartialEq)]
pub struct MeasureRow {
    pub exercise: String,
    /// Its id, "hold-s".
    pub measure: String,
    /// What the figures refer to; empty where there is nothing to say.
    pub label: String,
    pub since: Date,
    pub until: Date,
    pub trials: u32,
    pub baseline: Option<f64>,
    pub latest: Option<f64>,
    pub smallest_change: Option<f64>,
    /// "unchanged", "fallen", "risen".
    pub verdict: String,
}

/// All that is shown of one client.
#[derive(Debug, Clone, PartialEq)]
pub struct ClientSheet {
    pub digest: Digest,
    pub attention: Attention,
    /// Newest first.
    pub sessions: Vec<SessionRow>,
    /// Oldest first.
    pub days: Vec<DayRow>,
    pub measures: Vec<MeasureRow>,
    /// Newest first, each with whether it was seen.
    pub events: Vec<(SeenEvent, bool)>,
    /// When somebody looked, and the note; newest first.
    pub looks: Vec<(ZonedDateTime, Option<String>)>,
    /// Packages and when they were made.
    pub packages: Vec<(String, String)>,
}

/// The statements of the views. The newest 20 practices, 42 days, 30 events and 5 looks are shown.
pub(super) const VIEWS: [(&str, &str); 6] = [
    (
        "sessions",
        "SELECT s.started_at, r.title, s.steps_done, s.steps_prescribed, s.practised_s, s.end_reason, s.package, s.software,
             (SELECT count(*) FROM trial t WHERE t.session = s.id), (SELECT count(*) FROM trial t WHERE t.session = s.id AND t.discarded IS NOT NULL)
         FROM session s JOIN routine r ON r.id = s.routine WHERE s.client = $1 ORDER BY s.began_s DESC, s.number DESC LIMIT 20",
    ),
    ("days", "SELECT day, sessions, done, counted, prescribed, planned FROM day WHERE client = $1 ORDER BY day DESC LIMIT 42"),
    ("measures", "SELECT exercise, measure, label, since, until, trials, baseline, latest, smallest_change, verdict FROM measure WHERE client = $1 ORDER BY exercise, measure"),
    ("events", "SELECT kind, what, exercise, day, look IS NOT NULL FROM event WHERE client = $1 ORDER BY day DESC, session DESC, seq DESC LIMIT 30"),
    ("looks", "SELECT at, note FROM look WHERE client = $1 ORDER BY id DESC LIMIT 5"),
    ("packages", "SELECT id, made_at FROM package WHERE client = $1 ORDER BY made_at, id"),
];

fn view(name: &str) -> &'static str {
    VIEWS.iter().find(|(of, _)| *of == name).map_or("", |(_, sql)| sql)
}

impl Clinic {
    /// Every client in the order of need. No trial is looked at.
    ///
    /// # Errors
    /// The database refuses.
    pub fn caseload(&mut self, today: Date, why: Option<ReasonKind>) -> Result<Vec<Standing>, ClinicError> {
        let digests = self.read(|engine| list(engine, &refresh::all_sql(), &[], refresh::read))?;
        Ok(caseload(digests, today, why))
    }

    /// The number of the client who is named: `#12`, a short name, or `NAME@DESK`.
    ///
    /// # Errors
    /// There is none, or there are several; then all of them are named.
    pub fn client(&mut self, named: &str) -> Result<i64, ClinicError> {
        let all = "SELECT c.id, c.name, d.name FROM client c JOIN desk d ON d.id = c.desk";
        let read = |row: &Row| Ok((row.int(0)?, row.text(1)?, row.text(2)?));
        let number = named.strip_prefix('#').and_then(|number| number.parse::<i64>().ok());
        let mut found = match number {
            Some(number) => self.read(|engine| list(engine, &format!("{all} WHERE c.id = $1"), &values![number], read))?,
            None => self.read(|engine| list(engine, &format!("{all} WHERE c.name = $1 ORDER BY c.id"), &values![named], read))?,
        };
        if let Some((name, desk)) = named.rsplit_once('@').filter(|_| found.is_empty()) {
            found = self.read(|engine| {
                list(engine, &format!("{all} WHERE c.name = $1 AND d.name = $2 ORDER BY c.id"), &values![name, desk], read)
            })?;
        }
        match found.as_slice() {
            [(id, ..)] => Ok(*id),
            [] => Err(ClinicError::Client(format!(
                "there is no client {named:?} in {}: `tidecount clinic caseload --all` lists them",
                self.place()
            ))),
            several => {
                let list: Vec<String> = several.iter().map(|(id, name, desk)| format!("#{id} ({name} of {desk})")).collect();
                Err(ClinicError::Client(format!("several clients are called {named:?}: name one by number: {}", list.join(", "))))
            }
        }
    }

    /// One client's sheet.
    ///
    /// # Errors
    /// There is no such client, or the database refuses.
    pub fn sheet(&mut self, client: i64, today: Date) -> Result<ClientSheet, ClinicError> {
        self.read(|engine| {
            let values = values![client];
            let digest = one(engine, &refresh::of_client_sql(), &values, refresh::read)?
                .ok_or_else(|| ClinicError::Client(format!("client #{client} is not there any more")))?;
            let sessions = list(engine, view("sessions"), &values, |row| {
                Ok(SessionRow {
                    started_at: row.parsed(0)?,
                    routine: row.text(1)?,
                    steps_done: row.count(2)?,
                    steps_prescribed: row.count(3)?,
                    practised_s: row.real(4)?,
                    end_reason: row.maybe_text(5)?,
                    package: row.maybe_text(6)?,
                    software: row.text(7)?,
                    trials: row.count(8)?,
                    discarded: row.count(9)?,
                })
            })?;
            let mut days = list(engine, view("days"), &values, |row| {
                let share = Share { counted: row.count(3)?, prescribed: row.count(4)? };
                Ok(DayRow { day: row.parsed(0)?, sessions: row.count(1)?, done: row.count(2)?, share, planned: row.flag(5)? })
            })?;
            days.reverse();
            let measures = list(engine, view("measures"), &values, |row| {
                Ok(MeasureRow {
                    exercise: row.text(0)?,
                    measure: row.text(1)?,
                    label: row.text(2)?,
                    since: row.parsed(3)?,
                    until: row.parsed(4)?,
                    trials: row.count(5)?,
                    baseline: row.maybe_real(6)?,
                    latest: row.maybe_real(7)?,
                    smallest_change: row.maybe_real(8)?,
                    verdict: row.text(9)?,
                })
            })?;
            let events = list(engine, view("events"), &values, |row| Ok((event(row)?, row.flag(4)?)))?;
            let looks = list(engine, view("looks"), &values, |row| Ok((row.parsed(0)?, row.maybe_text(1)?)))?;
            let packages = list(engine, view("packages"), &values, |row| Ok((row.text(0)?, row.text(1)?)))?;
            Ok(ClientSheet { attention: attention(&digest, today), digest, sessions, days, measures, events, looks, packages })
        })
    }

    /// How the database answers each view: its name and the database's own words.
    ///
    /// # Errors
    /// The database refuses.
    pub fn plans(&mut self) -> Result<Vec<(String, String)>, ClinicError> {
        self.read(|engine| {
            let caseload = refresh::all_sql();
            let all = std::iter::once(("caseload", caseload.as_str())).chain(VIEWS);
            all.map(|(name, sql)| Ok((name.to_owned(), engine.explain(sql)?))).collect()
        })
    }
}
