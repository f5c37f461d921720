//! Packages that were made here, or taken here from a clinician.

use super::clients::client_row;
use super::error::RecordError;
use super::goals::take_goals;
use super::store::Store;
use jiff::Timestamp;
use progress::Goal;
use rusqlite::{OptionalExtension, Row, params};

/// A package that this computer made.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct MadePackage {
    pub id: String,
    pub client: String,
    pub made_at: Timestamp,
    /// Public half of the key that its results are sealed with, hexadecimal.
    pub reply_key: String,
}

/// A package that this computer took.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct TakenPackage {
    pub id: String,
    pub client: String,
    pub made_at: Timestamp,
    pub taken_at: Timestamp,
    /// The clinician's public key, hexadecimal.
    pub clinician_key: String,
}

/// What a clinician agreed to in a package.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct PackageAgreement {
    pub exercise: String,
    pub agreed_at: Timestamp,
    /// Fingerprint of the clinician's key.
    pub by: String,
}

/// A time kept as text.
pub(super) fn time(row: &Row<'_>, column: usize) -> Result<Timestamp, rusqlite::Error> {
    let text: String = row.get(column)?;
    text.parse().map_err(|_| {
        let cause = format!("cannot read {text:?}");
        rusqlite::Error::FromSqlConversionFailure(column, rusqlite::types::Type::Text, cause.into())
    })
}

fn taken(row: &Row<'_>) -> Result<TakenPackage, rusqlite::Error> {
    Ok(TakenPackage { id: row.get(0)?, client: row.get(1)?, made_at: time(row, 2)?, taken_at: time(row, 3)?, clinician_key: row.get(4)? })
}

const TAKEN: &str = "SELECT p.id, c.name, p.made_at, p.taken_at, p.clinician_key FROM package_taken p JOIN client c ON c.id = p.client";

impl Store {
    /// Notes a package before it is handed out, so that its results will be known.
    ///
    /// # Errors
    /// The database refuses.
    pub fn note_made(&mut self, package: &MadePackage) -> Result<(), RecordError> {
        self.change(|tx| {
            let client = client_row(tx, &package.client)?;
            tx.execute(
                "INSERT INTO package_made (id, client, made_at, reply_key) VALUES (?1, ?2, ?3, ?4)",
                params![package.id, client, package.made_at.to_string(), package.reply_key],
            )
            .map(|_| ())
        })
    }

    /// The package made here whose results are sealed with this key.
    ///
    /// # Errors
    /// The database refuses.
    pub fn made_for_reply_key(&self, reply_key: &str) -> Result<Option<MadePackage>, RecordError> {
        self.read(|db| {
            db.query_row(
                "SELECT p.id, c.name, p.made_at, p.reply_key FROM package_made p JOIN client c ON c.id = p.client WHERE p.reply_key = ?1",
                [reply_key],
                |row| Ok(MadePackage { id: row.get(0)?, client: row.get(1)?, made_at: time(row, 2)?, reply_key: row.get(3)? }),
            )
            .optional()
        })
    }

    /// Every package that was made here, the oldest first.
    ///
    /// # Errors
    /// The database refuses.
    pub fn packages_made(&self) -> Result<Vec<MadePackage>, RecordError> {
        self.read(|db| {
            db.prepare(
                "SELECT p.id, c.name, p.made_at, p.reply_key FROM package_made p JOIN client c ON c.id = p.client ORDER BY p.made_at, p.id",
            )?
            .query_map([], |row| Ok(MadePackage { id: row.get(0)?, client: row.get(1)?, made_at: time(row, 2)?, reply_key: row.get(3)? }))?
            .collect()
        })
    }

    /// All packages that a client took, the one in force last.
    ///
    /// # Errors
    /// The database refuses.
    pub fn packages_taken(&self, client: &str) -> Result<Vec<TakenPackage>, RecordError> {
        self.read(|db| db.prepare(&format!("{TAKEN} WHERE c.name = ?1 ORDER BY p.number"))?.query_map([client], taken)?.collect())
    }

    /// The package in force of each client who has one.
    ///
    /// # Errors
    /// The database refuses.
    pub fn packages_in_force(&self) -> Result<Vec<TakenPackage>, RecordError> {
        self.read(|db| {
            db.prepare(&format!("{TAKEN} WHERE p.number IN (SELECT max(number) FROM package_taken GROUP BY client) ORDER BY c.name"))?
                .query_map([], taken)?
                .collect()
        })
    }

    /// Takes a package: it, its agreements and goals are noted, and `place` puts its files where they belong. Where `place` fails,
    /// nothing is noted; its reason is given back inside.
    ///
    /// # Errors
    /// The database refuses.
    pub fn take_package<E>(
        &mut self,
        package: &TakenPackage,
        agreed: &[PackageAgreement],
        goals: &[Goal],
        place: impl FnOnce() -> Result<(), E>,
    ) -> Result<Result<(), E>, RecordError> {
        let mut failed = None;
        let done = self.change(|tx| {
            let client = client_row(tx, &package.client)?;
            tx.execute(
                "INSERT INTO package_taken (id, client, made_at, taken_at, clinician_key) VALUES (?1, ?2, ?3, ?4, ?5)",
                params![package.id, client, package.made_at.to_string(), package.taken_at.to_string(), package.clinician_key],
            )?;
            let number = tx.last_insert_rowid();
            for one in agreed {
                tx.execute(
                    "INSERT INTO package_agreement (package, exercise, agreed_at, agreed_by) VALUES (?1, ?2, ?3, ?4) ON CONFLICT DO NOTHING",
                    params![number, one.exercise, one.agreed_at.to_string(), one.by],
                )?;
            }
            take_goals(tx, client, goals, Some(&package.id))?;
            place().map_err(|error| {
                failed = Some(error);
                // Any error rolls back; this one is not looked at.
                rusqlite::Error::ExecuteReturnedResults
            })
        });
        match failed {
            Some(error) => Ok(Err(error)),
            None => done.map(Ok),
        }
    }

    /// The exercises to which the clinician agreed in the package that is in force.
    ///
    /// # Errors
    /// The database refuses.
    pub fn agreed_by_package(&self, client: &str) -> Result<Vec<PackageAgreement>, RecordError> {
        self.read(|db| {
            db.prepare(
                "SELECT a.exercise, a.agreed_at, a.agreed_by FROM package_agreement a
                 WHERE a.package = (SELECT max(p.number) FROM package_taken p JOIN client c ON c.id = p.client WHERE c.name = ?1)
                 ORDER BY a.exercise",
            )?
            .query_map([client], |row| Ok(PackageAgreement { exercise: row.get(0)?, agreed_at: time(row, 1)?, by: row.get(2)? }))?
            .collect()
        })
    }
}

#[cfg(test)]
#[path = "tests/packages.rs"]
mod tests;
