//! Who is in the record, for commands that are about one person.

use super::error::RecordError;
use super::store::Store;
use rusqlite::Transaction;

impl Store {
    /// Everybody who has a name here, those without a practice among them; by name.
    ///
    /// # Errors
    /// The database refuses.
    pub fn clients(&self) -> Result<Vec<String>, RecordError> {
        self.read(|db| db.prepare("SELECT name FROM client ORDER BY name COLLATE NOCASE")?.query_map([], |row| row.get(0))?.collect())
    }

    /// Clients with live practices, here or received, and how many; by name.
    ///
    /// # Errors
    /// The database refuses.
    pub fn live_clients(&self) -> Result<Vec<(String, u32)>, RecordError> {
        self.read(|db| {
            db.prepare(
                "SELECT c.name, count(*) FROM client c JOIN session s ON s.client = c.id WHERE s.source = 'live' GROUP BY c.id ORDER BY c.name COLLATE NOCASE",
            )?
            .query_map([], |row| Ok((row.get(0)?, row.get(1)?)))?
            .collect()
        })
    }
}

/// The client's row, made where it is missing.
pub(super) fn client_row(tx: &Transaction<'_>, client: &str) -> Result<i64, rusqlite::Error> {
    tx.execute("INSERT INTO client (name) VALUES (?1) ON CONFLICT (name) DO NOTHING", [client])?;
    tx.query_row("SELECT id FROM client WHERE name = ?1", [client], |row| row.get(0))
}
