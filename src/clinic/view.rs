//! What is shown: the whole caseload from its sums, one client from a few short lists.

use super::adherence::Share;
use super::attention::{Attention, ReasonKind, Standing, attention, caseload};
use super::digest::Digest;
use super::engine::{list, one};
use super::error::ClinicError;
use super::facts::EventKind;
use super::refresh;
use super::store::Clinic;
use super::typed::{Columns, columns};
use super::value::{Row, values};
use jiff::ZonedDateTime;
use jiff::civil::Date;

columns! {
    /// Something that was to be told.
    #[derive(Eq)]
    pub struct SeenEvent {
        kind: EventKind,
        what: String,
        exercise: Option<String>,
        day: Date,
    }
}

columns! {
    /// Whether somebody has looked since.
    struct SeenRow {
        seen: bool,
    }
}

columns! {
    /// One practice at a glance.
    pub struct SessionRow {
        started_at: ZonedDateTime,
        routine: String,
        steps_done: u32,
        steps_prescribed: u32,
        practised_s: f64,
        /// None where it was interrupted and may yet be gone on with.
        end_reason: Option<String>,
        package: Option<String>,
        software: String,
        trials: u32,
        /// Trials with a value that stands in no figure.
        discarded: u32,
    }
}

columns! {
    /// One day's adherence.
    #[derive(Eq)]
    pub struct DayRow {
        day: Date,
        sessions: u32,
        done: u32,
        counted: u32,
        prescribed: u32,
        /// By a plan of days.
        planned: bool,
    }
}

impl DayRow {
    /// What was done of what was prescribed.
    #[must_use]
    pub fn share(&self) -> Share {
        Share { counted: self.counted, prescribed: self.prescribed }
    }
}

columns! {
    /// One measure of one exercise.
    pub struct MeasureRow {
        exercise: String,
        /// Its id, "hold-s".
        measure: String,
        /// What the figures refer to; empty where there is nothing to say.
        label: String,
        since: Date,
        until: Date,
        trials: u32,
        baseline: Option<f64>,
        latest: Option<f64>,
        smallest_change: Option<f64>,
        /// "unchanged", "fallen", "risen".
        verdict: String,
    }
}

columns! {
    /// Somebody looked.
    #[derive(Eq)]
    pub struct LookRow {
        at: ZonedDateTime,
        note: Option<String>,
    }
}

columns! {
    /// A package that was made for the client.
    #[derive(Eq)]
    pub struct PackageRow {
        id: String,
        made_at: String,
    }
}

columns! {
    struct ClientRow {
        id: i64,
        name: String,
    }
}

columns! {
    struct DeskRow {
        name: String,
    }
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
    /// Newest first.
    pub looks: Vec<LookRow>,
    pub packages: Vec<PackageRow>,
}

/// The statements of the views. The newest 20 practices, 42 days, 30 events and 5 looks are shown.
fn sessions_sql() -> String {
    format!(
        "SELECT {} FROM (SELECT s.began_s, s.number, s.started_at, r.title AS routine, s.steps_done, s.steps_prescribed, s.practised_s,
             s.end_reason, s.package, s.software, (SELECT count(*) FROM trial t WHERE t.session = s.id) AS trials,
             (SELECT count(*) FROM trial t WHERE t.session = s.id AND t.discarded IS NOT NULL) AS discarded
         FROM session s JOIN routine r ON r.id = s.routine WHERE s.client = $1 ORDER BY s.began_s DESC, s.number DESC LIMIT 20) glance
         ORDER BY glance.began_s DESC, glance.number DESC",
        SessionRow::of("glance")
    )
}

fn days_sql() -> String {
    format!("SELECT {} FROM day WHERE client = $1 ORDER BY day DESC LIMIT 42", DayRow::of("day"))
}

fn measures_sql() -> String {
    format!("SELECT {} FROM measure WHERE client = $1 ORDER BY exercise, measure", MeasureRow::of("measure"))
}

fn events_sql() -> String {
    format!(
        "SELECT {}, event.look IS NOT NULL FROM event WHERE client = $1 ORDER BY day DESC, session DESC, seq DESC LIMIT 30",
        SeenEvent::of("event")
    )
}

fn looks_sql() -> String {
    format!("SELECT {} FROM look WHERE client = $1 ORDER BY look.id DESC LIMIT 5", LookRow::of("look"))
}

fn packages_sql() -> String {
    format!("SELECT {} FROM package WHERE client = $1 ORDER BY made_at, id", PackageRow::of("package"))
}

fn event_and_seen(row: &Row) -> Result<(SeenEvent, bool), ClinicError> {
    Ok((SeenEvent::read(row)?, SeenRow::read_from(row, SeenEvent::NAMES.len())?.seen))
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
        let all = format!("SELECT {}, {} FROM client c JOIN desk d ON d.id = c.desk", ClientRow::of("c"), DeskRow::of("d"));
        let read = |row: &Row| Ok((ClientRow::read(row)?, DeskRow::read_from(row, ClientRow::NAMES.len())?.name));
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
            [(client, _)] => Ok(client.id),
            [] => Err(ClinicError::Client(format!(
                "there is no client {named:?} in {}: `tidecount clinic caseload --all` lists them",
                self.place()
            ))),
            several => {
                let list: Vec<String> =
                    several.iter().map(|(client, desk)| format!("#{} ({} of {desk})", client.id, client.name)).collect();
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
            let sessions = list(engine, &sessions_sql(), &values, SessionRow::read)?;
            let mut days = list(engine, &days_sql(), &values, DayRow::read)?;
            days.reverse();
            let measures = list(engine, &measures_sql(), &values, MeasureRow::read)?;
            let events = list(engine, &events_sql(), &values, event_and_seen)?;
            let looks = list(engine, &looks_sql(), &values, LookRow::read)?;
            let packages = list(engine, &packages_sql(), &values, PackageRow::read)?;
            Ok(ClientSheet { attention: attention(&digest, today), digest, sessions, days, measures, events, looks, packages })
        })
    }

    /// How the database answers each view: its name and the database's own words.
    ///
    /// # Errors
    /// The database refuses.
    pub fn plans(&mut self) -> Result<Vec<(String, String)>, ClinicError> {
        self.read(|engine| {
            let views = [
                ("caseload", refresh::all_sql()),
                ("sessions", sessions_sql()),
                ("days", days_sql()),
                ("measures", measures_sql()),
                ("events", events_sql()),
                ("looks", looks_sql()),
                ("packages", packages_sql()),
            ];
            views.iter().map(|(name, sql)| Ok(((*name).to_owned(), engine.explain(sql)?))).collect()
        })
    }
}
