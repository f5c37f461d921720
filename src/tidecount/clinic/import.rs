//! `tidecount clinic import` and `adopt`: files of results, and whose they are.

use std::path::Path;
use std::process::ExitCode;

use crate::clinic::args::ImportArgs;
use crate::terminal::desk::Desk;
use clinic::{Adopted, Arrived, Arriving, Clinic, ClinicError, DeskPackage};
use files::error::Failure;
use files::number_words::counted;
use files::packages::sealed::{clinician_key, open_sealed};
use handover::Kind;
use model::visible;
use record::Store;

/// Takes in each file that can be taken in; the others are named with the reason.
///
/// # Errors
/// The database cannot be used any more; the files behind are named.
pub fn import(args: &ImportArgs, clinic: &mut Clinic, data: &Path, desk: &mut Desk<'_>) -> Result<ExitCode, Failure> {
    // What was made at this desk is known from here on; a desk that makes no packages has none.
    match made_here(args.desk.as_deref(), clinic, data) {
        Ok(Some(adopted)) => tell_adopted(&adopted, desk),
        Ok(None) => {}
        // The packages of other desks, and those that are known already, can be imported all the same.
        Err(error) => warn(&format!("this desk's own packages could not be read: {error}")),
    }
    let (mut taken, mut refused) = (0_usize, 0_usize);
    for (index, path) in args.files.iter().enumerate() {
        let done = open_sealed(path, Kind::Results).and_then(|(_, opened)| Ok(Arriving::read(&opened)?)).map_err(|error| error.to_string());
        // `open_sealed` names the file itself.
        let named = |text: String| if text.starts_with(&path.display().to_string()) { text } else { format!("{}: {text}", path.display()) };
        let arrived = match done {
            Ok(arriving) => match clinic.import(&arriving) {
                Ok(arrived) => Ok(arrived),
                Err(error @ (ClinicError::NotTaken(_) | ClinicError::Handover(_) | ClinicError::Client(_))) => Err(error.to_string()),
                Err(error) => {
                    let left: Vec<String> = args.files.iter().skip(index).map(|file| file.display().to_string()).collect();
                    return Err(Failure::Again(format!("{error}\nNot imported: {}", left.join(", "))));
                }
            },
            Err(text) => Err(text),
        };
        match arrived {
            Ok(arrived) => {
                taken += 1;
                desk.say(&format!("{}: {}", path.display(), in_words(&arrived)));
            }
            Err(text) => {
                refused += 1;
                warn(&format!("refused: {}", named(text)));
            }
        }
    }
    if args.files.len() > 1 || refused > 0 {
        desk.say(&format!("Imported {taken} of {}, refused {refused}.", counted(args.files.len(), "file")));
    }
    Ok(if refused == 0 { ExitCode::SUCCESS } else { ExitCode::FAILURE })
}

fn warn(text: &str) {
    // Where even that cannot be written, the exit code alone remains.
    let _ = std::io::Write::write_fmt(&mut std::io::stderr(), format_args!("tidecount: {}\n", visible(text)));
}

fn in_words(arrived: &Arrived) -> String {
    let Arrived { client, name, desk, new, more, known, trials } = arrived;
    format!(
        "{name} of {desk} (#{client}): {}: {new} new, {more} continued, {known} already known; {}",
        counted(new + more + known, "practice"),
        counted(*trials, "trial")
    )
}

/// Makes this desk's packages known.
///
/// # Errors
/// There are none, or the record or the database cannot be used.
pub fn adopt(name: Option<&str>, clinic: &mut Clinic, data: &Path, desk: &mut Desk<'_>) -> Result<(), Failure> {
    match made_here(name, clinic, data)? {
        Some(adopted) => {
            tell_adopted(&adopted, desk);
            desk.say(&format!(
                "This desk's packages are now known in {}: their results can be imported at every desk that shares it.",
                clinic.place()
            ));
            Ok(())
        }
        None => Err(Failure::Missing(format!(
            "no package was made here: there is none in the record in {}. Make one with `tidecount hand make`, or name the folder of the record with --data DIR",
            data.display()
        ))),
    }
}

fn made_here(name: Option<&str>, clinic: &mut Clinic, data: &Path) -> Result<Option<Adopted>, Failure> {
    let made = Store::open_existing(data)?.map(|store| store.packages_made()).transpose()?.unwrap_or_default();
    if made.is_empty() {
        return Ok(None);
    }
    if !data.join("handover").join("clinician.key").exists() {
        return Err(Failure::Missing(format!(
            "the key with which this desk seals its packages is missing in {}: put handover/clinician.key back from a backup",
            data.display()
        )));
    }
    let key = clinician_key(data)?.public().to_hex();
    let packages: Vec<DeskPackage> = made
        .into_iter()
        .map(|package| DeskPackage { id: package.id, client: package.client, made_at: package.made_at, reply_key: package.reply_key })
        .collect();
    Ok(Some(clinic.adopt(&key, name, &packages)?))
}

fn tell_adopted(adopted: &Adopted, desk: &mut Desk<'_>) {
    if !adopted.clients.is_empty() {
        desk.say(&format!("New in the clinic database: {}.", adopted.clients.join(", ")));
    }
    for name in &adopted.namesakes {
        desk.say(&format!(
            "{name}: this desk had a client of that name before whose packages its record does not know. They are kept apart, as two clients: see `tidecount clinic caseload --all`."
        ));
    }
}
