//! `tidecount hand results` and `tidecount hand read`: practices back to the clinician.

use std::path::{Path, PathBuf};

use jiff::{Timestamp, ZonedDateTime};

use crate::hand::args::ResultsArgs;
use crate::hand::take::PACKAGE_FILE;
use crate::terminal::desk::Desk;
use files::error::Failure;
use files::number_words::counted;
use files::packages::goals;
use files::packages::practices::{handed, whole};
use files::packages::sealed::{self, open_sealed, package_folder};
use handover::{HandoverError, Kind, Package, Results, client_name};
use record::{Store, TakenPackage, WholeSession};

/// Home: writes what has not been handed back yet.
///
/// # Errors
/// No package is in force, or the file cannot be written.
pub fn write(args: &ResultsArgs, data: &Path, desk: &mut Desk<'_>) -> Result<(), Failure> {
    let store = Store::open_existing(data)?;
    let in_force = store.as_ref().map(Store::packages_in_force).transpose()?.unwrap_or_default();
    let taken = choose(in_force, args.client.as_deref())?;
    let Some(mut store) = store else { return Err(none_taken(None)) };
    // The package as it was taken; its seal is checked again, for its key seals the results.
    let kept = package_folder(data, &taken.client)?.join(PACKAGE_FILE);
    let (_, opened) =
        open_sealed(&kept, Kind::Package).map_err(|error| Failure::Contents(format!("{error}. Take the client's package again")))?;
    let package = Package::read(&opened).map_err(|error| Failure::file(&kept, error))?;
    if (&package.id, &package.client) != (&taken.id, &taken.client) || opened.by.to_hex() != taken.clinician_key {
        return Err(Failure::file(&kept, "this is not the package that was taken last; take the client's package again"));
    }
    let sessions = store.whole_sessions(&taken.client, args.since)?;
    if sessions.is_empty() {
        desk.say("There is nothing new to hand back, so no file was written. Use --since DATE to hand back earlier practices again.");
        return Ok(());
    }
    let now = Timestamp::now();
    let results = Results {
        package: package.id.clone(),
        client: package.client.clone(),
        made_at: now,
        sessions: sessions.iter().map(handed).collect::<Result<_, _>>()?,
        goals: goals::handed(&store.goals(&taken.client)?),
    };
    let sealed = package.reply_key().and_then(|key| results.seal(&key))?;
    let short: String = package.id.chars().take(4).collect();
    let path = args.output.clone().unwrap_or_else(|| PathBuf::from(format!("results-{}-{short}.tideback", ZonedDateTime::now().date())));
    sealed::write_new(&path, &sealed)?;
    store.note_handed_back(&sessions, now)?;
    desk.say(&format!(
        "{}: {} of {}. It holds what was measured and done, but no sound. Anyone who has the file can read it.\n\
         Give it to the clinician, who reads it with: tidecount hand read FILE",
        path.display(),
        counted(sessions.len(), "practice"),
        package.client
    ));
    Ok(())
}

fn none_taken(client: Option<&str>) -> Failure {
    let whose = client.map_or_else(String::new, |client| format!(" for {client:?}"));
    Failure::Missing(format!(
        "no clinician's package is in force here{whose}, so nobody could check the results: take one first with `tidecount hand take FILE`"
    ))
}

fn choose(in_force: Vec<TakenPackage>, client: Option<&str>) -> Result<TakenPackage, Failure> {
    let names: Vec<String> = in_force.iter().map(|package| package.client.clone()).collect();
    let mut fitting = in_force.into_iter().filter(|package| client.is_none_or(|client| client == package.client));
    match (fitting.next(), fitting.next()) {
        (Some(one), None) => Ok(one),
        (Some(_), Some(_)) => {
            Err(Failure::Options(format!("packages of several clients are in force: name one with --client: {}", names.join(", "))))
        }
        (None, _) => Err(none_taken(client)),
    }
}

/// Clinician: adds what is new in a file of results to the client's history.
///
/// # Errors
/// The file is damaged, was not sealed for a package made here, or does not fit what came before; nothing is added.
pub fn read(file: &Path, data: &Path, desk: &mut Desk<'_>) -> Result<(), Failure> {
    let refuse = |error: HandoverError| Failure::file(file, error);
    let (_, opened) = open_sealed(file, Kind::Results)?;
    let store = Store::open_existing(data)?;
    let made = store.as_ref().map(|store| store.made_for_reply_key(&opened.by.to_hex())).transpose()?.flatten();
    let (Some(mut store), Some(made)) = (store, made) else { return Err(refuse(HandoverError::ForeignResults)) };
    let results = Results::read(&opened).map_err(refuse)?;
    if (&results.package, &results.client) != (&made.id, &made.client) {
        return Err(refuse(HandoverError::Content("it names another package or client than the key that sealed it belongs to".to_owned())));
    }
    client_name(&made.client).map_err(refuse)?;
    let goals = goals::taken(&results.goals).map_err(refuse)?;
    let sessions: Vec<WholeSession> = results.sessions.into_iter().map(whole).collect();
    let received = store.receive(&made.client, &sessions).map_err(|error| Failure::file(file, error))?;
    store.receive_goals(&made.client, &goals)?;
    desk.say(&format!(
        "{} of {}: {} new, {} continued, {} already known.\nSee them with: tidecount history --client \"{}\"",
        counted(sessions.len(), "practice"),
        made.client,
        received.new,
        received.more,
        received.known,
        made.client
    ));
    Ok(())
}
