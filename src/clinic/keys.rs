//! Whose results are whose: packages and their reply keys, from each desk that makes them.

use super::engine::{Engine, list, one};
use super::error::ClinicError;
use super::refresh;
use super::store::Clinic;
use super::value::values;
use jiff::Timestamp;
use std::collections::{BTreeMap, HashMap};

/// A package that a desk has made, as its record knows it.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct DeskPackage {
    pub id: String,
    /// The client's short name at that desk.
    pub client: String,
    pub made_at: Timestamp,
    /// Public half of the key that its results are sealed with, hexadecimal.
    pub reply_key: String,
}

/// What became known.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct Adopted {
    /// Packages that were not known before.
    pub packages: u32,
    /// Clients who were not known before, by name.
    pub clients: Vec<String>,
    /// Of them those whose name another client of this desk had before: not the same person as far as can be known.
    pub namesakes: Vec<String>,
    /// Packages of clients who were forgotten here on purpose; they stay so.
    pub forgotten: u32,
}

impl Clinic {
    /// Makes a desk's packages known, so that their results can be imported at any desk.
    ///
    /// A client is the same as before where one of the packages was known before. Where none was, but a client of this name is
    /// there, the desk's record was begun anew or the name was given to somebody else: then this is another client.
    ///
    /// # Errors
    /// A package or key is known as that of somebody else, or the database refuses; nothing is added.
    pub fn adopt(&mut self, desk_key: &str, desk_name: Option<&str>, packages: &[DeskPackage]) -> Result<Adopted, ClinicError> {
        let mut by_client: BTreeMap<&str, Vec<&DeskPackage>> = BTreeMap::new();
        for package in packages {
            by_client.entry(&package.client).or_default().push(package);
        }
        self.change(|engine| {
            let desk = desk_row(engine, desk_key, desk_name)?;
            let known = known_of(engine, desk)?;
            let mut adopted = Adopted::default();
            for (name, packages) in &by_client {
                adopt_client(engine, (desk, &known), (name, packages), &mut adopted)?;
            }
            Ok(adopted)
        })
    }
}

/// The desk's row, ours until the transaction ends: two programs of one desk take turns.
fn desk_row(engine: &mut dyn Engine, key: &str, name: Option<&str>) -> Result<i64, ClinicError> {
    let usual = || {
        handover::PublicKey::from_hex(key)
            .map_or_else(String::new, |key| key.fingerprint().to_string().split(' ').next().unwrap_or_default().to_owned())
    };
    let new_name = name.map_or_else(|| format!("desk {}", usual()), str::to_owned);
    engine.run("INSERT INTO desk (key, name) VALUES ($1, $2) ON CONFLICT DO NOTHING", &values![key, new_name])?;
    let sql = format!("SELECT id, name FROM desk WHERE key = $1{}", engine.lock_rows());
    let (id, known) = one(engine, &sql, &values![key], |row| Ok((row.int(0)?, row.text(1)?)))?.ok_or_else(|| ClinicError::Unreadable {
        place: engine.place().to_owned(),
        cause: "a desk that was just added is not there".to_owned(),
    })?;
    if let Some(name) = name.filter(|name| *name != known) {
        engine.run("UPDATE desk SET name = $2 WHERE id = $1", &values![id, name])?;
    }
    Ok(id)
}

/// What is known of a desk already, by package: reply key, client and their name. Mostly that is all there is to do.
type Known = HashMap<String, (String, i64, String)>;

fn known_of(engine: &mut dyn Engine, desk: i64) -> Result<Known, ClinicError> {
    let sql = "SELECT p.id, p.reply_key, c.id, c.name FROM client c JOIN package p ON p.client = c.id WHERE c.desk = $1";
    list(engine, sql, &values![desk], |row| Ok((row.text(0)?, (row.text(1)?, row.int(2)?, row.text(3)?))))
        .map(|rows| rows.into_iter().collect())
}

fn adopt_client(
    engine: &mut dyn Engine,
    (desk, all): (i64, &Known),
    (name, packages): (&str, &[&DeskPackage]),
    adopted: &mut Adopted,
) -> Result<(), ClinicError> {
    let mut known: Option<(Timestamp, i64)> = None;
    let mut new = Vec::new();
    for package in packages {
        if let Some((_, client, _)) = all.get(&package.id).filter(|(key, _, called)| *key == package.reply_key && called == name) {
            known = known.max(Some((package.made_at, *client)));
            continue;
        }
        let forgotten = one(
            engine,
            "SELECT package FROM forgotten WHERE package = $1 OR reply_key = $2",
            &values![&package.id, &package.reply_key],
            |_| Ok(()),
        )?;
        if forgotten.is_some() {
            adopted.forgotten += 1;
            continue;
        }
        let found =
            one(engine, "SELECT id FROM package WHERE id = $1 OR reply_key = $2", &values![&package.id, &package.reply_key], |_| Ok(()))?;
        match found {
            None => new.push(*package),
            Some(()) => {
                return Err(ClinicError::NotTaken(format!(
                    "package {} of {name:?} or its reply key is known already as that of another package, client or desk: two packages must never share them. \
                     Make a new package for this client; if the record of this desk was put together from another's, use the other's",
                    package.id
                )));
            }
        }
    }
    if new.is_empty() {
        return Ok(());
    }
    let client = match known {
        Some((_, client)) => client,
        None => {
            let namesake = one(engine, "SELECT id FROM client WHERE desk = $1 AND name = $2", &values![desk, name], |_| Ok(()))?;
            if namesake.is_some() {
                adopted.namesakes.push(name.to_owned());
            }
            adopted.clients.push(name.to_owned());
            one(engine, "INSERT INTO client (desk, name) VALUES ($1, $2) RETURNING id", &values![desk, name], |row| row.int(0))?
                .ok_or_else(|| ClinicError::Unreadable {
                    place: engine.place().to_owned(),
                    cause: "a client that was just added is not there".to_owned(),
                })?
        }
    };
    for package in new {
        let made_at = package.made_at.to_string();
        engine.run(
            "INSERT INTO package (id, client, reply_key, made_at) VALUES ($1, $2, $3, $4)",
            &values![&package.id, client, &package.reply_key, made_at],
        )?;
        adopted.packages += 1;
    }
    refresh::lock(engine, client)?;
    refresh::refresh(engine, client, refresh::News::None)
}
