//! `tidecount hand make`: the clinician's side, one signed package for one client.

use std::collections::BTreeSet;
use std::path::{Path, PathBuf};

use jiff::{Timestamp, ZonedDateTime};

use crate::hand::args::MakeArgs;
use crate::terminal::desk::Desk;
use files::checker::Checker;
use files::error::Failure;
use files::number_words::counted;
use files::packages::check::check_all;
use files::packages::goals;
use files::packages::sealed;
use handover::{AgreedExercise, Fingerprint, Household, Package, SecretKey, Settings, TextFile, client_name, file_name};
use progress::Goal;
use record::{MadePackage, Store};
use routine::{CatalogueEntry, MAX_FILE_BYTES, Prescription, find};

/// Runs it.
///
/// # Errors
/// A routine has faults, a name or a setting cannot be used, or the file cannot be written.
pub fn run(args: &MakeArgs, data: &Path, desk: &mut Desk<'_>) -> Result<(), Failure> {
    client_name(&args.client)?;
    let settings = settings(args);
    settings.check()?;
    if args.output.symlink_metadata().is_ok() {
        return Err(Failure::file(&args.output, "this file already exists and was left as it is: name another with -o FILE"));
    }
    let (routines, packs) = (texts(&args.routines)?, texts(&args.packs)?);
    let checker = Checker::new()?;
    let prescriptions =
        check_all(&checker, "", &routines, &packs).map_err(|faults| Failure::Contents(format!("no package was made:\n{faults}")))?;

    let key = sealed::clinician_key(data)?;
    let reply_key = SecretKey::from_bytes(&sealed::random()?);
    let now = Timestamp::now();
    let mut package = Package::new(&sealed::random_id()?, now, &args.client, &reply_key);
    package.note = args.note.clone();
    package.settings = settings;
    (package.routines, package.packs) = (routines, packs);
    package.agreed = agreed(&args.client, &prescriptions, &checker, key.public().fingerprint(), desk);
    package.goals = goals::handed(&standing_goals(&args.client, data)?);
    let sealed = package.seal(&key)?;
    // Noted first: a package that was never written does no harm, one whose results are not known would.
    let made = MadePackage { id: package.id.clone(), client: args.client.clone(), made_at: now, reply_key: reply_key.public().to_hex() };
    Store::open(data)?.note_made(&made)?;
    sealed::write_new(&args.output, &sealed)?;
    desk.say(&format!(
        "{}: package {} for {}: {}, {}, {}, {}.\n\
         Bring it to the home computer and take it there with: tidecount hand take FILE\n\
         The household will ask for your key: {}\n\
         Whoever has the file can read it, and send results in the client's name: give it to the household alone.",
        args.output.display(),
        package.id,
        args.client,
        counted(package.routines.len(), "routine"),
        counted(package.packs.len(), "word pack"),
        counted(package.agreed.len(), "agreement"),
        counted(package.goals.len(), "goal"),
        key.public().fingerprint()
    ));
    Ok(())
}

/// The client's goals that stand today.
fn standing_goals(client: &str, data: &Path) -> Result<Vec<Goal>, Failure> {
    let goals = Store::open_existing(data)?.map(|store| store.goals(client)).transpose()?.unwrap_or_default();
    Ok(goals.into_iter().filter(|goal| goal.stands_on(ZonedDateTime::now().date())).collect())
}

fn settings(args: &MakeArgs) -> Settings {
    let household = Household { pronoun: args.pronoun.clone(), call_names: args.call_names.clone() };
    Settings { voice: args.voice.clone(), feedback_every: args.feedback_every, household }
}

fn texts(paths: &[PathBuf]) -> Result<Vec<TextFile>, Failure> {
    let read = |path: &PathBuf| {
        let name = path.file_name().unwrap_or_default().to_string_lossy().into_owned();
        let text = sealed::text_file(path, MAX_FILE_BYTES)?;
        file_name(&name).map_err(|error| Failure::file(path, error))?;
        Ok(TextFile { name, text })
    };
    paths.iter().map(read).collect()
}

/// Asks for each exercise that needs it. Whatever is not answered with "yes" is asked of the client at home, aloud.
fn agreed(client: &str, prescriptions: &[Prescription], checker: &Checker, by: Fingerprint, desk: &mut Desk<'_>) -> Vec<AgreedExercise> {
    let mut seen = BTreeSet::new();
    let steps = prescriptions.iter().flat_map(|prescription| &prescription.routine.steps);
    let needing =
        steps.filter(|step| step.exercise.needs_agreement && seen.insert(&step.exercise.id)).filter_map(|step| find(&step.exercise.id));
    let mut agreed = Vec::new();
    for entry in needing {
        show_cautions(entry, checker, desk);
        if desk.yes(&format!("Has {client}'s clinician considered this and agreed to it? Type yes or no:")) {
            agreed.push(AgreedExercise { exercise: entry.id.clone(), agreed_at: Timestamp::now(), by: by.to_string() });
        } else {
            desk.say("Not agreed: the client will be asked aloud at home, and without a yes the exercise is left out.");
        }
    }
    agreed
}

fn show_cautions(entry: &CatalogueEntry, checker: &Checker, desk: &mut Desk<'_>) {
    desk.say(&format!("\n{} ({}) needs a clinician's agreement.", checker.message(format!("ex-{}-name", entry.id)), entry.id));
    for key in &entry.cautions {
        desk.say(&format!("  - {}", checker.message(format!("caution-{key}"))));
    }
    if !entry.not_for.is_empty() {
        desk.say("Not for, unless their own clinician says otherwise:");
    }
    for key in &entry.not_for {
        desk.say(&format!("  - {}", checker.message(format!("notfor-{key}"))));
    }
}
