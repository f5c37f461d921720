//! Who has practised live, for commands that are about one person.

use super::{RecordError, Store};

impl Store {
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
