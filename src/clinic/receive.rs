//! One results file into the database: whole or not at all, once however often it comes.

use super::arriving::arriving;
use super::engine::{Engine, one};
use super::error::ClinicError;
use super::facts::ArrivingSession;
use super::keep::{Arrival, keep_session};
use super::refresh;
use super::store::Clinic;
use super::value::values;
use handover::{HandoverError, Opened, Results, hex};
use jiff::Timestamp;
use sha2::{Digest, Sha256};
use std::collections::BTreeSet;

/// A results file whose seal fits, read and ready. Nothing is known yet of whose it is.
#[derive(Debug, Clone)]
pub struct Arriving {
    /// Public half of the key that sealed it, hexadecimal.
    pub by: String,
    /// The package and the client that it names.
    pub package: String,
    pub client: String,
    pub made_at: Timestamp,
    /// SHA-256 of its content, hexadecimal.
    pub hash: String,
    pub sessions: Vec<ArrivingSession>,
}

impl Arriving {
    /// Reads what stood under a seal that fits.
    ///
    /// # Errors
    /// It is not what results hold, or one of its practices cannot be read.
    pub fn read(opened: &Opened) -> Result<Self, ClinicError> {
        let results = Results::read(opened)?;
        let sessions = results
            .sessions
            .iter()
            .map(arriving)
            .collect::<Result<Vec<_>, _>>()
            .map_err(|error| ClinicError::NotTaken(error.to_string()))?;
        let mut seen = BTreeSet::new();
        for session in &sessions {
            if !seen.insert((&session.started_at, session.number)) {
                return Err(ClinicError::NotTaken(format!("the practice of {} stands in it twice", session.started_at)));
            }
        }
        let hash = hex(&Sha256::digest(&opened.content));
        Ok(Self { by: opened.by.to_hex(), package: results.package, client: results.client, made_at: results.made_at, hash, sessions })
    }
}

/// What came of a file.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Arrived {
    /// The client's number here, name, and the desk that made the package.
    pub client: i64,
    pub name: String,
    pub desk: String,
    /// Practices that were not known before, of which more has come, and that were known.
    pub new: u32,
    pub more: u32,
    pub known: u32,
    /// Trials of the new ones and those of which more has come.
    pub trials: u32,
}

impl Clinic {
    /// Takes one results file into the history of the client whose package's key sealed it.
    ///
    /// # Errors
    /// The key is that of no package known here, the file names another package or client than the key belongs to, or a
    /// practice differs from what came of it before. Nothing of it is added then.
    pub fn import(&mut self, file: &Arriving) -> Result<Arrived, ClinicError> {
        self.change(|engine| import(engine, file))
    }
}

fn import(engine: &mut dyn Engine, file: &Arriving) -> Result<Arrived, ClinicError> {
    let owner = one(
        engine,
        "SELECT p.id, c.id, c.name, d.name FROM package p JOIN client c ON c.id = p.client JOIN desk d ON d.id = c.desk WHERE p.reply_key = $1",
        &values![&file.by],
        |row| Ok((row.text(0)?, row.int(1)?, row.text(2)?, row.text(3)?)),
    )?;
    let Some((package, client, name, desk)) = owner else { return Err(unknown(engine, file)?) };
    if (&package, &name) != (&file.package, &file.client) {
        return Err(HandoverError::Content("it names another package or client than the key that sealed it belongs to".to_owned()).into());
    }
    // From here on this client's rows are ours: two desks that import for one client take turns.
    refresh::lock(engine, client)?;
    let mut arrived = Arrived { client, name, desk, new: 0, more: 0, known: 0, trials: 0 };
    let known =
        one(engine, "SELECT sessions FROM arrival WHERE client = $1 AND hash = $2", &values![client, &file.hash], |row| row.count(0))?;
    if let Some(sessions) = known {
        arrived.known = sessions;
        return Ok(arrived);
    }
    for session in &file.sessions {
        of_this_client(engine, client, session)?;
        let trials = u32::try_from(session.trials.len()).unwrap_or(u32::MAX);
        match keep_session(engine, client, session)? {
            Arrival::New => (arrived.new, arrived.trials) = (arrived.new + 1, arrived.trials.saturating_add(trials)),
            Arrival::More => (arrived.more, arrived.trials) = (arrived.more + 1, arrived.trials.saturating_add(trials)),
            Arrival::Known => arrived.known += 1,
        }
    }
    engine.run(
        "INSERT INTO arrival (client, hash, package, made_at, sessions) VALUES ($1, $2, $3, $4, $5)",
        &values![client, &file.hash, &file.package, file.made_at.to_string(), file.sessions.len()],
    )?;
    let news = if arrived.new + arrived.more > 0 { refresh::News::Practices } else { refresh::News::None };
    refresh::refresh(engine, client, news)?;
    Ok(arrived)
}

fn unknown(engine: &mut dyn Engine, file: &Arriving) -> Result<ClinicError, ClinicError> {
    let forgotten = one(engine, "SELECT package FROM forgotten WHERE reply_key = $1", &values![&file.by], |_| Ok(()))?;
    Ok(ClinicError::NotTaken(if forgotten.is_some() {
        "the client of this package was forgotten here with `tidecount clinic forget`, and stays so: make a new package if they practise again".to_owned()
    } else {
        "it was not sealed with the reply key of a package that is known to this clinic database: \
         run `tidecount clinic adopt` once at the desk that made the client's package, then import the file again; results for another clinic cannot be taken in"
            .to_owned()
    }))
}

/// A practice that was led under a package of somebody else is never taken as this client's.
fn of_this_client(engine: &mut dyn Engine, client: i64, session: &ArrivingSession) -> Result<(), ClinicError> {
    let Some(package) = &session.package else { return Ok(()) };
    let sql = "SELECT c.id, c.name, d.name FROM package p JOIN client c ON c.id = p.client JOIN desk d ON d.id = c.desk WHERE p.id = $1";
    let owner = one(engine, sql, &values![package], |row| Ok((row.int(0)?, row.text(1)?, row.text(2)?)))?;
    match owner {
        Some((other, name, desk)) if other != client => Err(ClinicError::NotTaken(format!(
            "its practice of {} was led under package {package}, which was made for another client, {name} of {desk} (#{other}). \
             If it is the same person, have the practices since the change handed back again with `hand results --since DATE`",
            session.started_at
        ))),
        _ => Ok(()),
    }
}
