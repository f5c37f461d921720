//! `tidecount hand take`: the home computer's side. A package is taken whole or not at all.

use std::path::Path;

use jiff::Timestamp;
use jiff::tz::TimeZone;

use crate::hand::args::TakeArgs;
use crate::terminal::desk::Desk;
use files::checker::Checker;
use files::error::Failure;
use files::packages::check::check_all;
use files::packages::goals;
use files::packages::sealed::{Filling, open_sealed, package_folder};
use files::packages::settings;
use handover::{Fingerprint, HandoverError, Kind, Opened, Package, PublicKey};
use record::{PackageAgreement, Store, TakenPackage};
use routine::Prescription;

/// The package as it came, in the client's folder.
pub const PACKAGE_FILE: &str = "package.tidepack";

/// Runs it.
///
/// # Errors
/// The package is damaged, foreign, older than the one in force, or holds something that cannot be used; nothing is changed.
pub fn run(args: &TakeArgs, data: &Path, desk: &mut Desk<'_>) -> Result<(), Failure> {
    let refuse = |error: HandoverError| Failure::file(&args.file, error);
    let (bytes, opened) = open_sealed(&args.file, Kind::Package)?;
    let package = Package::read(&opened).map_err(refuse)?;
    let place = package_folder(data, &package.client).map_err(refuse)?;
    let store = Store::open_existing(data)?;
    goals::taken(&package.goals).map_err(refuse)?;
    let taken = store.map(|store| store.packages_taken(&package.client)).transpose()?.unwrap_or_default();
    let in_force = taken.last();
    let known = in_force.and_then(|package| PublicKey::from_hex(&package.clinician_key));
    let typed = args.accept.as_deref().map(|typed| typed_fingerprint(typed, opened.by.fingerprint())).transpose().map_err(refuse)?;
    let confirmed = known_key(known, &opened, typed.is_some(), args.change_clinician).map_err(refuse)?;
    if in_force.is_some_and(|now| now.id == package.id) && std::fs::read(place.join(PACKAGE_FILE)).is_ok_and(|here| here == bytes) {
        desk.say(&format!("Package {} for {} is already in force; nothing was changed.", package.id, package.client));
        return Ok(());
    }
    if let Some(now) = in_force.filter(|now| package.made_at < now.made_at && !args.older) {
        return Err(refuse(HandoverError::Older { found: local(package.made_at), known: local(now.made_at) }));
    }
    let name = args.file.file_name().unwrap_or_default().to_string_lossy().into_owned();
    let prescriptions = check_all(&Checker::new()?, &format!("{name}: "), &package.routines, &package.packs).map_err(|faults| {
        Failure::Contents(format!("nothing was taken; ask the clinician to correct the package and make it again:\n{faults}"))
    })?;
    show(&package, &opened, &prescriptions, desk);
    if !confirmed && !desk.yes("Is this the key that the clinician read out to you? Type yes or no:") {
        return Err(refuse(HandoverError::NotAccepted { found: opened.by.fingerprint() }));
    }
    put_in_force(&package, &opened, &bytes, &place, data, in_force.map_or("unknown", |now| &now.id))?;
    settings::warn_of_voice(package.settings.voice.as_deref());
    desk.say(&format!("\nTaken into {}. Next:", place.display()));
    for file in &package.routines {
        desk.say(&format!("  tidecount practise \"{}\" --client \"{}\"", place.join(&file.name).display(), package.client));
    }
    Ok(())
}

fn typed_fingerprint(typed: &str, found: Fingerprint) -> Result<(), HandoverError> {
    if Fingerprint::from_typed(typed) == Some(found) { Ok(()) } else { Err(HandoverError::AcceptedOther { found }) }
}

/// True where the key needs no question any more.
fn known_key(known: Option<PublicKey>, opened: &Opened, typed: bool, change: bool) -> Result<bool, HandoverError> {
    match known {
        Some(known) if known == opened.by => Ok(true),
        Some(_) if typed && change => Ok(true),
        Some(known) => Err(HandoverError::ForeignPackage { known: known.fingerprint(), found: opened.by.fingerprint() }),
        None => Ok(typed),
    }
}

fn local(time: Timestamp) -> String {
    time.to_zoned_datetime(TimeZone::system()).strftime("%a %Y-%m-%d %H:%M").to_string()
}

fn show(package: &Package, opened: &Opened, prescriptions: &[Prescription], desk: &mut Desk<'_>) {
    desk.say(&format!(
        "Package {} for {}, made {}, sealed with the key\n\n    {}\n",
        package.id,
        package.client,
        local(package.made_at),
        opened.by.fingerprint()
    ));
    for (file, checked) in package.routines.iter().zip(prescriptions) {
        let minutes = (checked.routine.planned_duration_s() / 60.0).ceil();
        desk.say(&format!("  {}: {}, {} steps, about {minutes} minutes", file.name, checked.routine.title, checked.routine.steps.len()));
    }
    for file in &package.packs {
        desk.say(&format!("  {}: word pack", file.name));
    }
    let agreed: Vec<&str> = package.agreed.iter().map(|one| one.exercise.as_str()).collect();
    if !agreed.is_empty() {
        desk.say(&format!("  The clinician agreed to: {}", agreed.join(", ")));
    }
    for goal in &package.goals {
        desk.say(&format!("  Goal by {}: {}", goal.due, goal.words));
    }
    if let Some(note) = &package.note {
        desk.say(&format!("\n{note}\n"));
    }
}

fn put_in_force(package: &Package, opened: &Opened, bytes: &[u8], place: &Path, data: &Path, earlier: &str) -> Result<(), Failure> {
    let mut store = Store::open(data)?;
    let filling = Filling::begin(place)?;
    for file in package.routines.iter().chain(&package.packs) {
        filling.add(&file.name, &file.text)?;
    }
    filling.add(settings::FILE_NAME, &package.settings.to_toml())?;
    filling.add(PACKAGE_FILE, &String::from_utf8_lossy(bytes))?;
    let taken = TakenPackage {
        id: package.id.clone(),
        client: package.client.clone(),
        made_at: package.made_at,
        taken_at: Timestamp::now(),
        clinician_key: opened.by.to_hex(),
    };
    let agreed: Vec<PackageAgreement> = package
        .agreed
        .iter()
        .map(|one| PackageAgreement { exercise: one.exercise.clone(), agreed_at: one.agreed_at, by: one.by.clone() })
        .collect();
    store.take_package(&taken, &agreed, &goals::taken(&package.goals)?, || filling.put(earlier))?
}
