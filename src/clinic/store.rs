//! The clinic database: opened, changed in whole transactions, copied.

use super::address::Address;
use super::engine::Engine;
use super::error::ClinicError;
use super::schema::content;
#[cfg(feature = "postgres")]
use super::server::Postgres;
use super::sqlite::Sqlite;
use super::value::Value;
use std::path::Path;
use std::time::Duration;

/// How often a transaction is tried that got in another's way. Each waits longer.
const TRIES: u32 = 6;

/// The clinic database.
#[derive(Debug)]
pub struct Clinic {
    pub(super) engine: Box<dyn Engine>,
}

impl Clinic {
    /// Opens it, making it where it is missing.
    ///
    /// # Errors
    /// It cannot be reached, or is damaged, foreign or newer (it is left as it is).
    pub fn open(address: &Address) -> Result<Self, ClinicError> {
        Self::open_or(address, true)
    }

    /// Opens it where it is, and makes nothing.
    ///
    /// # Errors
    /// As [`Clinic::open`]; or there is none.
    pub fn open_existing(address: &Address) -> Result<Self, ClinicError> {
        Self::open_or(address, false)
    }

    fn open_or(address: &Address, create: bool) -> Result<Self, ClinicError> {
        let engine: Box<dyn Engine> = match address {
            Address::File(path) => Box::new(Sqlite::open(path, create)?),
            #[cfg(feature = "postgres")]
            Address::Server(server) => Box::new(Postgres::open(server, create)?),
            #[cfg(not(feature = "postgres"))]
            Address::Server(none) => match **none {},
        };
        Ok(Self { engine })
    }

    /// The file, or the address without its password.
    #[must_use]
    pub fn place(&self) -> &str {
        self.engine.place()
    }

    /// The database itself, for measuring it.
    pub fn engine(&mut self) -> &mut dyn Engine {
        &mut *self.engine
    }

    /// Does `work` whole or not at all. It is done again where another desk got in its way or the connection broke, so it
    /// must come to the same when done twice.
    pub(super) fn change<T>(&mut self, mut work: impl FnMut(&mut dyn Engine) -> Result<T, ClinicError>) -> Result<T, ClinicError> {
        let mut tries = 0;
        loop {
            tries += 1;
            match self.change_once(&mut work) {
                Err(ClinicError::Conflict { .. }) if tries < TRIES => std::thread::sleep(Duration::from_millis(20) * tries.pow(2)),
                Err(ClinicError::Lost { .. }) if tries < 3 && self.engine.reconnect() => {}
                done => return done,
            }
        }
    }

    fn change_once<T>(&mut self, work: &mut impl FnMut(&mut dyn Engine) -> Result<T, ClinicError>) -> Result<T, ClinicError> {
        self.engine.begin()?;
        let done = work(&mut *self.engine).and_then(|value| self.engine.commit().map(|()| value));
        if done.is_err() {
            self.engine.rollback();
        }
        done
    }

    /// Reads; once more where the connection broke.
    pub(super) fn read<T>(&mut self, mut work: impl FnMut(&mut dyn Engine) -> Result<T, ClinicError>) -> Result<T, ClinicError> {
        match work(&mut *self.engine) {
            Err(ClinicError::Lost { .. }) if self.engine.reconnect() => work(&mut *self.engine),
            done => done,
        }
    }

    /// Writes a whole copy beside, while others go on.
    ///
    /// # Errors
    /// It cannot be written, or the database is on a server, which has its own tools.
    pub fn backup(&mut self, to: &Path) -> Result<(), ClinicError> {
        self.engine.backup(to)
    }

    /// All that is kept, in an order of its own: equal for two databases that hold the same. Times of arrival and numbers that
    /// the database gives by itself are not in it.
    ///
    /// # Errors
    /// The database refuses.
    pub fn content(&mut self) -> Result<String, ClinicError> {
        self.read(|engine| {
            let mut lines = Vec::new();
            for (table, sql) in content() {
                engine.each(&sql, &[], &mut |row| {
                    let values: Vec<String> = row.values().iter().map(shown).collect();
                    lines.push(format!("{table}: {}", values.join(" | ")));
                    Ok(())
                })?;
            }
            lines.sort();
            Ok(lines.join("\n"))
        })
    }
}

fn shown(value: &Value) -> String {
    match value {
        Value::Null => "-".to_owned(),
        Value::Int(value) => value.to_string(),
        Value::Real(value) => format!("{value:?}"),
        Value::Text(value) => format!("{value:?}"),
        Value::Blob(value) => handover::hex(value),
    }
}
