//! How a client says the commands: kept by word, listed, and forgotten for good.

use super::error::RecordError;
use super::store::Store;
use model::Source;
use rusqlite::params;

/// One command as a client says it.
#[derive(Debug, Clone, PartialEq)]
pub struct StoredWord {
    /// Its kebab-case name.
    pub command: String,
    /// What was said.
    pub wording: String,
    /// When the client agreed that this is kept, and when it was said; times of day with their zone.
    pub agreed_at: String,
    pub said_at: String,
    /// Pictures of the takes, never sound; what is in them is known to the command ear alone.
    pub takes: Vec<Vec<u8>>,
}

impl Store {
    /// Keeps a word with its takes in place of what was kept of it before.
    ///
    /// # Errors
    /// The database refuses.
    pub fn keep_own_word(&mut self, client: &str, word: &StoredWord, source: Source) -> Result<(), RecordError> {
        self.change(|tx| {
            tx.execute("INSERT INTO client (name) VALUES (?1) ON CONFLICT (name) DO NOTHING", [client])?;
            let id: i64 = tx.query_row("SELECT id FROM client WHERE name = ?1", [client], |row| row.get(0))?;
            tx.execute("DELETE FROM own_word WHERE client = ?1 AND command = ?2", params![id, word.command])?;
            tx.execute(
                "INSERT INTO own_word (client, command, wording, source, agreed_at, said_at) VALUES (?1, ?2, ?3, ?4, ?5, ?6)",
                params![id, word.command, word.wording, source.as_str(), word.agreed_at, word.said_at],
            )?;
            for (number, picture) in (1_i64..).zip(&word.takes) {
                tx.execute(
                    "INSERT INTO own_take (client, command, number, picture) VALUES (?1, ?2, ?3, ?4)",
                    params![id, word.command, number, picture],
                )?;
            }
            Ok(())
        })
    }

    /// What is kept of a client's voice, by name of command; empty where nothing is.
    ///
    /// # Errors
    /// The database refuses.
    pub fn own_words(&self, client: &str) -> Result<Vec<StoredWord>, RecordError> {
        self.read(|db| {
            let mut words = db
                .prepare(
                    "SELECT w.command, w.wording, w.agreed_at, w.said_at FROM own_word w JOIN client c ON c.id = w.client
                     WHERE c.name = ?1 ORDER BY w.command",
                )?
                .query_map([client], |row| {
                    Ok(StoredWord {
                        command: row.get(0)?,
                        wording: row.get(1)?,
                        agreed_at: row.get(2)?,
                        said_at: row.get(3)?,
                        takes: Vec::new(),
                    })
                })?
                .collect::<Result<Vec<StoredWord>, _>>()?;
            let mut takes = db.prepare(
                "SELECT t.picture FROM own_take t JOIN client c ON c.id = t.client WHERE c.name = ?1 AND t.command = ?2 ORDER BY t.number",
            )?;
            for word in &mut words {
                word.takes = takes.query_map([client, word.command.as_str()], |row| row.get(0))?.collect::<Result<_, _>>()?;
            }
            Ok(words)
        })
    }

    /// Forgets a client's voice and gives how many words were kept. Nothing of it is left in the file: freed pages are overwritten
    /// (`secure_delete`) and the write-ahead log is emptied.
    ///
    /// # Errors
    /// The database refuses.
    pub fn forget_own_voice(&mut self, client: &str) -> Result<usize, RecordError> {
        self.read(|db| db.pragma_update_and_check(None, "secure_delete", true, |_| Ok(())))?;
        let words =
            self.change(|tx| tx.execute("DELETE FROM own_word WHERE client = (SELECT id FROM client WHERE name = ?1)", [client]))?;
        self.read(|db| db.query_row("PRAGMA wal_checkpoint(TRUNCATE)", [], |_| Ok(())))?;
        Ok(words)
    }

    /// Names of all clients of whom a voice is kept.
    ///
    /// # Errors
    /// The database refuses.
    pub fn enrolled_clients(&self) -> Result<Vec<String>, RecordError> {
        self.read(|db| {
            db.prepare("SELECT DISTINCT c.name FROM client c JOIN own_word w ON w.client = c.id ORDER BY c.name")?
                .query_map([], |row| row.get(0))?
                .collect()
        })
    }
}

#[cfg(test)]
#[path = "tests/own_voice.rs"]
mod tests;
