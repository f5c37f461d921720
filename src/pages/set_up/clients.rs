//! Everybody who is known here.

use std::collections::BTreeSet;

use super::household;
use super::site::{PageError, Site};

/// Everybody who is known here: in the household, in the record, in a routine.
pub fn clients(site: &Site) -> Result<Vec<String>, PageError> {
    let mut names: Vec<String> = household::read(site).unwrap_or_default().names();
    let mut others: BTreeSet<String> = site.store()?.map_or_else(|| Ok(Vec::new()), |store| store.clients())?.into_iter().collect();
    let of_routines = site.routines.names().into_iter().filter_map(|name| site.routines.read(&name).ok());
    others.extend(of_routines.filter_map(|read| routine::doses_of(&read.text)?.client));
    names.extend(others.into_iter().filter(|name| !names.contains(name)).collect::<Vec<_>>());
    Ok(names)
}
