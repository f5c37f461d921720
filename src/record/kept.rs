//! Whole practices as they are kept, one at a time, for exports.

use super::chain;
use super::error::RecordError;
use super::running;
use super::store::Store;
use jiff::ZonedDateTime;
use model::{KeptEntry, KeptHead, KeptPart, KeptPractice, SessionId, Source, parse_line};
use std::collections::BTreeSet;
use std::sync::Arc;

impl Store {
    /// The practices of one client, or of all, that hold at least one entry, in the order in which they began.
    ///
    /// # Errors
    /// The database refuses, or a practice is damaged, whoever's it is: its client's name may be what is damaged.
    pub fn kept_heads(&self, client: Option<&str>) -> Result<Vec<KeptHead>, RecordError> {
        self.whole(chain::damaged_heads)?;
        // Looked for in the rows themselves: an index that is damaged would leave a practice out.
        let mut texts: BTreeSet<Arc<str>> = BTreeSet::new();
        let mut heads: Vec<KeptHead> = self.read(|db| {
            db.prepare(
                "SELECT s.id, coalesce(r.number, s.id), c.name, s.started_at, s.ended_at, s.end_reason, s.routine_title, s.routine_text,
                        s.source, s.software, r.session IS NOT NULL
                 FROM session s NOT INDEXED JOIN client c NOT INDEXED ON c.id = s.client LEFT JOIN received r ON r.session = s.id
                 WHERE (?1 IS NULL OR c.name = ?1) AND EXISTS (SELECT 1 FROM entry WHERE session = s.id)
                   AND s.id NOT IN (SELECT session FROM assessment) ORDER BY s.id",
            )?
            .query_map([client], |row| {
                let text: String = row.get(7)?;
                let routine_text = match texts.get(text.as_str()) {
                    Some(known) => Arc::clone(known),
                    None => {
                        let new: Arc<str> = text.into();
                        texts.insert(Arc::clone(&new));
                        new
                    }
                };
                let word: String = row.get(8)?;
                let ended: Option<ZonedDateTime> =
                    if row.get_ref(4)? == rusqlite::types::ValueRef::Null { None } else { Some(time(row, 4)?) };
                let reason: Option<String> = row.get(5)?;
                Ok(KeptHead {
                    id: SessionId(row.get(0)?),
                    number: row.get(1)?,
                    client: row.get(2)?,
                    started_at: time(row, 3)?,
                    end: ended.zip(reason),
                    routine_title: row.get(6)?,
                    routine_text,
                    source: Source::from_word(&word).ok_or_else(|| unreadable(8, &word))?,
                    software: row.get(9)?,
                    received: row.get(10)?,
                    under_way: false,
                })
            })?
            .collect()
        })?;
        for head in &mut heads {
            head.under_way = head.end.is_none() && running::is_led(&self.folder, head.id.0);
        }
        // What came from elsewhere was added later than it was led.
        heads.sort_by(|one, other| one.started_at.timestamp().cmp(&other.started_at.timestamp()).then(one.id.cmp(&other.id)));
        Ok(heads)
    }

    /// A practice with its entries.
    ///
    /// # Errors
    /// The database refuses, or an entry is damaged; it is named.
    pub fn kept(&self, head: KeptHead) -> Result<KeptPractice, RecordError> {
        self.whole(|db| chain::damage_of(db, head.id.0))?;
        let starts: Vec<(i64, ZonedDateTime)> = self.read(|db| {
            db.prepare_cached("SELECT number, started_at FROM part WHERE session = ?1 ORDER BY number")?
                .query_map([head.id.0], |row| Ok((row.get(0)?, time(row, 1)?)))?
                .collect()
        })?;
        let mut parts: Vec<KeptPart> =
            starts.iter().map(|(_, started_at)| KeptPart { started_at: started_at.clone(), entries: Vec::new() }).collect();
        let rows: Vec<(u32, i64, String)> = self.read(|db| {
            db.prepare_cached("SELECT seq, part, json FROM entry WHERE session = ?1 ORDER BY seq")?
                .query_map([head.id.0], |row| Ok((row.get(0)?, row.get(1)?, row.get(2)?)))?
                .collect()
        })?;
        for (number, part, line) in rows {
            let entry = parse_line(&line).map_err(|cause| self.bad_line(head.id, number as usize, cause))?;
            let place = starts.iter().position(|(known, _)| *known == part);
            if let Some(part) = place.and_then(|place| parts.get_mut(place)) {
                part.entries.push(KeptEntry { number, entry, line });
            }
        }
        Ok(KeptPractice { head, parts })
    }
}

impl Store {
    fn whole(&self, look: impl FnOnce(&rusqlite::Connection) -> Result<Vec<chain::Damage>, rusqlite::Error>) -> Result<(), RecordError> {
        let damage = self.read(look)?;
        if damage.is_empty() { Ok(()) } else { Err(RecordError::DamagedEntries { path: self.path(), damage }) }
    }
}

fn unreadable(column: usize, text: &str) -> rusqlite::Error {
    let cause = format!("cannot read {text:?}");
    rusqlite::Error::FromSqlConversionFailure(column, rusqlite::types::Type::Text, cause.into())
}

fn time(row: &rusqlite::Row<'_>, column: usize) -> Result<ZonedDateTime, rusqlite::Error> {
    let text: String = row.get(column)?;
    text.parse().map_err(|_| unreadable(column, &text))
}

#[cfg(test)]
#[path = "tests/kept.rs"]
mod tests;
