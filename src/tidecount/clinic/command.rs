//! `tidecount clinic …`: results of many clients in one database, and who needs attention.

use std::process::ExitCode;

use jiff::ZonedDateTime;

use crate::clinic::args::{ClinicArgs, ClinicCommand};
use crate::clinic::import;
use crate::clinic::show;
use crate::terminal::desk::Desk;
use ::clinic::Clinic;
use files::clinic_address::address;
use files::error::Failure;

/// Runs the command.
///
/// # Errors
/// The database cannot be used, there is no such client, or no file could be taken in.
pub fn run(args: &ClinicArgs) -> Result<ExitCode, Failure> {
    let data = args.data.folder()?;
    let address = address(args.clinic.as_deref(), &data)?;
    let (mut input, mut out) = (std::io::stdin().lock(), std::io::stdout().lock());
    let mut desk = Desk { input: &mut input, out: &mut out };
    let now = ZonedDateTime::now();
    match &args.command {
        ClinicCommand::Import(import) => return import::import(import, &mut Clinic::open(&address)?, &data, &mut desk),
        ClinicCommand::Adopt { desk: name } => import::adopt(name.as_deref(), &mut Clinic::open(&address)?, &data, &mut desk)?,
        ClinicCommand::Caseload(caseload) => {
            let mut clinic = Clinic::open_existing(&address)?;
            let today = caseload.on.unwrap_or_else(|| now.date());
            let standings = clinic.caseload(today, caseload.why)?;
            desk.say(&show::caseload(caseload, &standings, clinic.place(), today));
        }
        ClinicCommand::Show(show) => {
            let mut clinic = Clinic::open_existing(&address)?;
            let client = clinic.client(&show.client)?;
            let today = show.on.unwrap_or_else(|| now.date());
            let sheet = clinic.sheet(client, today)?;
            desk.say(&show::sheet(&sheet, show.format, today));
        }
        ClinicCommand::Seen { client, note } => {
            let mut clinic = Clinic::open_existing(&address)?;
            let number = clinic.client(client)?;
            let seen = clinic.seen(number, &now, note.as_deref())?;
            desk.say(&show::seen(client, &seen));
        }
        ClinicCommand::Forget { client, yes } => {
            let mut clinic = Clinic::open_existing(&address)?;
            let number = clinic.client(client)?;
            let sheet = clinic.sheet(number, now.date())?;
            let whose = format!(
                "{} of {} (#{number}): {} practices, {} trials",
                sheet.digest.name, sheet.digest.desk, sheet.digest.sessions, sheet.digest.trials
            );
            if !*yes && !desk.yes(&format!("{whose}. Remove all of it from {} for good? Type yes or no:", clinic.place())) {
                return Err(Failure::Declined("nothing was removed".to_owned()));
            }
            clinic.forget(number)?;
            desk.say(&format!("Removed: {whose}. Results sealed for this client's packages will not be imported again. This desk's own record is kept elsewhere: see `tidecount history`."));
        }
        ClinicCommand::Backup { file } => {
            let mut clinic = Clinic::open_existing(&address)?;
            clinic.backup(file)?;
            desk.say(&format!(
                "{}: a complete copy of {}. To use it, name it with --clinic, or rename it.",
                file.display(),
                clinic.place()
            ));
        }
    }
    Ok(ExitCode::SUCCESS)
}
