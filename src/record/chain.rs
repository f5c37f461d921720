//! Checksums against bits that flip on the disk: SQLite looks at how its pages hang together, and not at what stands in a cell.
//!
//! Each entry has the SHA-256 of its row and of the checksum before it, a chain for each practice; and each practice has one over all else
//! that is kept of it. They find damage, not forgery: whoever can write the file can write the checksums, too. (In an encrypted record
//! each page has an HMAC besides.)

use rusqlite::types::ValueRef;
use rusqlite::{Connection, Row, params};
use sha2::{Digest, Sha256};
use std::collections::{BTreeMap, BTreeSet};
use std::fmt;

type Sum = [u8; 32];

/// What of an entry is summed.
const ENTRY: &str = "seq, part, at_s, kind, step, set_no, repetition, json";
/// What of a practice is summed besides; joined so that a row that leads nowhere is summed as nothing.
const HEAD: &str = "SELECT s.id, c.name, s.routine_title, s.routine_text, s.source, s.software, s.started_at, s.ended_at, s.end_reason,
        a.protocol, r.number, r.package
    FROM session s LEFT JOIN client c ON c.id = s.client LEFT JOIN assessment a ON a.session = s.id
        LEFT JOIN received r ON r.session = s.id
    WHERE s.id = ?1";

/// One place where the record is not as it was written.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Damage {
    /// The practice's number.
    pub practice: i64,
    pub what: Damaged,
}

/// What is damaged.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Damaged {
    /// Whose it is, its routine, its times or its parts.
    Head,
    /// This entry, or its checksum.
    Entry(i64),
    /// This entry is gone.
    Missing(i64),
}

impl fmt::Display for Damage {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let practice = self.practice;
        match self.what {
            Damaged::Head => write!(f, "practice {practice}: its client, routine or times are not as they were written"),
            Damaged::Entry(seq) => write!(f, "practice {practice}, entry {seq} is not as it was written"),
            Damaged::Missing(seq) => write!(f, "practice {practice}, entry {seq} is missing"),
        }
    }
}

/// So that no two rows give the same bytes: each value with its kind and length.
fn feed(hash: &mut Sha256, value: ValueRef<'_>) {
    let number;
    let (kind, bytes): (u8, &[u8]) = match value {
        ValueRef::Null => (0, &[]),
        ValueRef::Integer(value) => {
            number = value.to_be_bytes();
            (1, &number)
        }
        ValueRef::Real(value) => {
            number = value.to_bits().to_be_bytes();
            (2, &number)
        }
        ValueRef::Text(text) => (3, text),
        ValueRef::Blob(bytes) => (4, bytes),
    };
    hash.update([kind]);
    hash.update((bytes.len() as u64).to_be_bytes());
    hash.update(bytes);
}

fn feed_row(hash: &mut Sha256, row: &Row<'_>) -> Result<(), rusqlite::Error> {
    (0..row.as_ref().column_count()).try_for_each(|column| {
        feed(hash, row.get_ref(column)?);
        Ok(())
    })
}

fn entry_sum(before: Sum, session: i64, row: &Row<'_>) -> Result<Sum, rusqlite::Error> {
    let mut hash = Sha256::new_with_prefix(b"tidecount entry 1\n");
    hash.update(before);
    hash.update(session.to_be_bytes());
    feed_row(&mut hash, row)?;
    Ok(hash.finalize().into())
}

fn head_sum(db: &Connection, session: i64) -> Result<Sum, rusqlite::Error> {
    let mut hash = Sha256::new_with_prefix(b"tidecount practice 1\n");
    for sql in [HEAD, "SELECT number, started_at FROM part WHERE session = ?1 ORDER BY number"] {
        let mut query = db.prepare_cached(sql)?;
        let mut rows = query.query([session])?;
        while let Some(row) = rows.next()? {
            feed_row(&mut hash, row)?;
        }
    }
    Ok(hash.finalize().into())
}

/// Sums those entries of a practice that were added since.
pub(super) fn seal_entries(tx: &Connection, session: i64) -> Result<(), rusqlite::Error> {
    let mut last = tx.prepare_cached("SELECT seq, sum FROM entry_sum WHERE session = ?1 ORDER BY seq DESC LIMIT 1")?;
    let mut rows = last.query([session])?;
    let (done, mut sum): (i64, Sum) = match rows.next()? {
        Some(row) => (row.get(0)?, row.get(1)?),
        None => (0, [0; 32]),
    };
    drop(rows);
    let mut query = tx.prepare_cached(&format!("SELECT {ENTRY} FROM entry WHERE session = ?1 AND seq > ?2 ORDER BY seq"))?;
    let mut rows = query.query([session, done])?;
    let mut fresh: Vec<(i64, Sum)> = Vec::new();
    while let Some(row) = rows.next()? {
        sum = entry_sum(sum, session, row)?;
        fresh.push((row.get(0)?, sum));
    }
    let mut insert = tx.prepare_cached("INSERT INTO entry_sum (session, seq, sum) VALUES (?1, ?2, ?3)")?;
    fresh.into_iter().try_for_each(|(seq, sum)| insert.execute(params![session, seq, sum]).map(|_| ()))
}

/// Sums what else is kept of a practice; done again whenever some of it has changed.
pub(super) fn seal_head(tx: &Connection, session: i64) -> Result<(), rusqlite::Error> {
    let sum = head_sum(tx, session)?;
    tx.prepare_cached("INSERT INTO practice_sum (session, sum) VALUES (?1, ?2) ON CONFLICT (session) DO UPDATE SET sum = excluded.sum")?
        .execute(params![session, sum])
        .map(|_| ())
}

/// Sums a whole record that was written before there were checksums: as it stands now, it counts as whole.
pub(super) fn seal_all(tx: &Connection) -> Result<(), rusqlite::Error> {
    for session in sessions(tx)? {
        seal_entries(tx, session)?;
        seal_head(tx, session)?;
    }
    Ok(())
}

fn sessions(db: &Connection) -> Result<BTreeSet<i64>, rusqlite::Error> {
    db.prepare("SELECT id FROM session")?.query_map([], |row| row.get(0))?.collect()
}

/// Where one practice is not as it was written.
pub(super) fn damage_of(db: &Connection, session: i64) -> Result<Vec<Damage>, rusqlite::Error> {
    let mut damage = Vec::new();
    if !head_is_whole(db, session)? {
        damage.push(Damage { practice: session, what: Damaged::Head });
    }
    let mut query = db.prepare_cached("SELECT seq, sum FROM entry_sum WHERE session = ?1")?;
    let mut sums: BTreeMap<i64, Option<Sum>> =
        query.query_map([session], |row| Ok((row.get(0)?, row.get(1).ok())))?.collect::<Result<_, _>>()?;
    let mut query = db.prepare_cached(&format!("SELECT {ENTRY} FROM entry WHERE session = ?1 ORDER BY seq"))?;
    let mut rows = query.query([session])?;
    let mut before: Sum = [0; 32];
    while let Some(row) = rows.next()? {
        let seq: i64 = row.get(0)?;
        let told = sums.remove(&seq).flatten();
        let made = entry_sum(before, session, row)?;
        if told != Some(made) {
            damage.push(Damage { practice: session, what: Damaged::Entry(seq) });
        }
        // One entry that is damaged accuses none of those after it.
        before = told.unwrap_or(made);
    }
    damage.extend(sums.into_keys().map(|seq| Damage { practice: session, what: Damaged::Missing(seq) }));
    damage.sort_by_key(|damage| match damage.what {
        Damaged::Head => 0,
        Damaged::Entry(seq) | Damaged::Missing(seq) => seq.max(1),
    });
    Ok(damage)
}

fn head_is_whole(db: &Connection, session: i64) -> Result<bool, rusqlite::Error> {
    let mut query = db.prepare_cached("SELECT sum FROM practice_sum WHERE session = ?1")?;
    let mut rows = query.query([session])?;
    let told: Option<Sum> = rows.next()?.and_then(|row| row.get(0).ok());
    drop(rows);
    Ok(told == Some(head_sum(db, session)?))
}

/// Every practice that is there, or of which at least a checksum or an entry is.
fn traces(db: &Connection) -> Result<BTreeSet<i64>, rusqlite::Error> {
    let mut all = sessions(db)?;
    for table in ["entry", "entry_sum", "practice_sum"] {
        let mut query = db.prepare(&format!("SELECT DISTINCT session FROM {table}"))?;
        for session in query.query_map([], |row| row.get(0))? {
            all.insert(session?);
        }
    }
    Ok(all)
}

/// Where the record is not as it was written.
pub(super) fn damage(db: &Connection) -> Result<Vec<Damage>, rusqlite::Error> {
    let mut damage = Vec::new();
    for session in traces(db)? {
        damage.extend(damage_of(db, session)?);
    }
    Ok(damage)
}

/// As [`damage`], without looking at the entries: which practices there are, and whose they are.
pub(super) fn damaged_heads(db: &Connection) -> Result<Vec<Damage>, rusqlite::Error> {
    let mut all = sessions(db)?;
    // A practice whose row is gone still has its checksum.
    for session in db.prepare("SELECT session FROM practice_sum")?.query_map([], |row| row.get(0))? {
        all.insert(session?);
    }
    let mut damage = Vec::new();
    for session in all {
        if !head_is_whole(db, session)? {
            damage.push(Damage { practice: session, what: Damaged::Head });
        }
    }
    Ok(damage)
}

#[cfg(test)]
#[path = "tests/chain.rs"]
mod tests;
