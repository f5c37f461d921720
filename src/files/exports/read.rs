//! Which practices an export takes out of the record.

use std::collections::BTreeMap;
use std::path::{Path, PathBuf};
use std::sync::Arc;

use jiff::ZonedDateTime;
use jiff::civil::Date;

use crate::error::Failure;
use crate::number_words::counted;
use export::{Outline, Practice};
use progress::{GoalState, Led, goals, misdated};
use record::{KeptHead, SessionId, Source, Store};

/// Which practices.
#[derive(Debug, Clone)]
pub struct Selection {
    /// Of this client; none: everybody's.
    pub client: Option<String>,
    pub from: Option<Date>,
    pub to: Option<Date>,
    /// None: live ones; where there are none, what there is.
    pub source: Option<Sources>,
    /// The folder of the record.
    pub data: PathBuf,
}

/// Sources that are wanted.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Sources {
    All,
    Only(Source),
}

impl Sources {
    fn allow(self, source: Source) -> bool {
        matches!(self, Self::All) || self == Self::Only(source)
    }
}

/// The practices of an export, read one at a time.
pub struct Chosen {
    store: Store,
    /// Those of the sources that are wanted, in the order in which they began, whatever their day.
    all: Vec<KeptHead>,
    from: Option<Date>,
    to: Option<Date>,
    misdated: BTreeMap<SessionId, bool>,
    outlines: BTreeMap<Arc<str>, Outline>,
}

impl Chosen {
    /// Looks up what there is.
    ///
    /// # Errors
    /// There is no record, no such client, or nothing in those days.
    pub fn find(selection: &Selection) -> Result<Self, Failure> {
        let (from, to) = (selection.from, selection.to);
        if let Some((from, to)) = from.zip(to).filter(|(from, to)| from > to) {
            return Err(Failure::Options(format!("--from {from} is after --to {to}: there are no days between them")));
        }
        let folder = &selection.data;
        let store = open(folder)?;
        let client = selection.client.as_deref();
        let clients = store.clients()?;
        if let Some(client) = client.filter(|client| clients.iter().all(|known| known != client)) {
            return Err(Failure::Options(no_such_client(client, &clients)));
        }
        let mut heads = store.kept_heads(client)?;
        let misdated = misdated_of(&heads);
        let under_way = heads.iter().filter(|head| head.under_way).count();
        heads.retain(|head| !head.under_way);
        if under_way > 0 {
            eprintln!("Left out because it is still going on: {}.", counted(under_way, "practice"));
        }
        let live = heads.iter().any(|head| head.source == Source::Live);
        let wanted = match selection.source {
            Some(wanted) => wanted,
            None if live => Sources::Only(Source::Live),
            None => Sources::All,
        };
        if selection.source.is_none() && !live && !heads.is_empty() {
            eprintln!(
                "Nobody has practised at a microphone here: what is exported comes from recordings or the simulated client, and is marked as such."
            );
        }
        let before = heads.len();
        heads.retain(|head| wanted.allow(head.source));
        if heads.is_empty() {
            let whose = client.map_or_else(String::new, |client| format!(" of {client:?}"));
            let other = if before > 0 { format!(": there are {before} from other sources; try --source all") } else { String::new() };
            return Err(Failure::Missing(format!("there are no practices{whose} in {} to export{other}", folder.display())));
        }
        let chosen = Self { store, all: heads, from, to, misdated, outlines: BTreeMap::new() };
        if chosen.heads().next().is_none() {
            let days = |head: Option<&KeptHead>| head.map_or_else(String::new, |head| head.started_at.date().to_string());
            let (first, last) = (days(chosen.all.first()), days(chosen.all.last()));
            return Err(Failure::Options(format!(
                "there are no practices on these days: the record has {} from {first} to {last}",
                chosen.all.len()
            )));
        }
        Ok(chosen)
    }

    /// The practices of the days that are wanted.
    pub fn heads(&self) -> impl Iterator<Item = &KeptHead> {
        self.all.iter().filter(|head| {
            let day = head.started_at.date();
            self.from.is_none_or(|from| day >= from) && self.to.is_none_or(|to| day <= to)
        })
    }

    /// All of them, whatever their day.
    #[must_use]
    pub fn all_heads(&self) -> &[KeptHead] {
        &self.all
    }

    /// Whose practices they are.
    #[must_use]
    pub fn clients(&self) -> Vec<String> {
        let mut clients: Vec<String> = self.heads().map(|head| head.client.clone()).collect();
        clients.sort();
        clients.dedup();
        clients
    }

    #[must_use]
    pub fn store(&self) -> &Store {
        &self.store
    }

    /// The day for which goals are judged: the last of the export, or today.
    #[must_use]
    pub fn judged_on(&self) -> Date {
        let today = ZonedDateTime::now().date();
        self.to.map_or(today, |to| to.min(today))
    }

    /// The goals that stand on that day, of everybody whose practices are exported.
    ///
    /// # Errors
    /// The record cannot be read.
    pub fn goals(&self) -> Result<Vec<(String, Vec<GoalState>)>, Failure> {
        let day = self.judged_on();
        let of = |client: String| {
            let practised = self.store.practised(&client, day)?;
            let goals = goals(&practised, day);
            Ok((client, goals))
        };
        self.clients().into_iter().map(of).collect()
    }

    /// Reads each practice in turn, of which only one is held at a time.
    ///
    /// # Errors
    /// The record cannot be read, or `take` fails.
    pub fn each(mut self, mut take: impl FnMut(&Practice<'_>) -> Result<(), Failure>) -> Result<(), Failure> {
        let heads: Vec<KeptHead> = self.heads().cloned().collect();
        for head in heads {
            let misdated = self.misdated.get(&head.id).copied().unwrap_or(false);
            let kept = self.store.kept(head)?;
            let text = Arc::clone(&kept.head.routine_text);
            let outline = self.outlines.entry(text).or_insert_with_key(|text| Outline::of(text));
            take(&Practice::of(&kept, outline, misdated))?;
        }
        Ok(())
    }
}

/// The record in this folder.
///
/// # Errors
/// There is none.
pub fn open(folder: &Path) -> Result<Store, Failure> {
    Store::open_to_read(folder)?
        .ok_or_else(|| Failure::Missing(format!("there is no record in {}: name its folder with --data DIR", folder.display())))
}

/// In words, with those that there are.
pub fn no_such_client(client: &str, clients: &[String]) -> String {
    let known = if clients.is_empty() { "nobody yet".to_owned() } else { format!("the clients are: {}", clients.join(", ")) };
    format!("there is no client {client:?} in this record; {known}")
}

/// By the rule of the progress arithmetic, for each client in the order in which the practices were entered here.
fn misdated_of(heads: &[KeptHead]) -> BTreeMap<SessionId, bool> {
    let today = ZonedDateTime::now().date();
    let mut by_client: BTreeMap<&str, Vec<&KeptHead>> = BTreeMap::new();
    // Only live practices are history; a replay may well be of another day.
    for head in heads.iter().filter(|head| head.source == Source::Live) {
        by_client.entry(&head.client).or_default().push(head);
    }
    let mut wrong = BTreeMap::new();
    for mut heads in by_client.into_values() {
        heads.sort_by_key(|head| head.id);
        let led: Vec<Led> =
            heads.iter().map(|head| Led { session: head.id.0, began: head.started_at.clone(), here: !head.received }).collect();
        wrong.extend(heads.iter().map(|head| head.id).zip(misdated(&led, today).0));
    }
    wrong
}
