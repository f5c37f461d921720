//! `tidecount clinic …`: results of many clients in one database, and who needs attention.

use std::path::{Path, PathBuf};
use std::process::ExitCode;

use jiff::ZonedDateTime;
use jiff::civil::Date;

use crate::clinic::import;
use crate::clinic::show;
use crate::hand::command::Desk;
use clinic::{Address, CLINIC_FILE, CLINIC_VARIABLE, Clinic, ClinicError, ReasonKind};
use files::error::Failure;
use record::data_folder;

/// Arguments of `tidecount clinic`.
#[derive(Debug, clap::Args)]
pub struct ClinicArgs {
    #[command(subcommand)]
    command: ClinicCommand,
    /// The clinic database: a file, or postgres://USER@HOST/DATABASE where several desks share [default: TIDECOUNT_CLINIC, else
    /// clinic.sqlite in the folder of the record]
    #[arg(long, value_name = "FILE|URL", global = true)]
    clinic: Option<String>,
    /// The folder of this desk's record [default: TIDECOUNT_DATA, else this system's place for a program's data]
    #[arg(long, value_name = "DIR", global = true)]
    data: Option<PathBuf>,
}

#[derive(Debug, clap::Subcommand)]
enum ClinicCommand {
    /// Take in files of results; each whole or not at all, and once however often it comes
    Import(ImportArgs),
    /// Make this desk's packages known, so that their results can be imported at every desk
    Adopt {
        /// What this desk is called in the caseload
        #[arg(long, value_name = "NAME")]
        desk: Option<String>,
    },
    /// Who needs attention, and why
    Caseload(CaseloadArgs),
    /// One client: reasons, adherence, measures with their conditions, practices, events
    Show(ShowArgs),
    /// Note that you have looked at a client: what is known until now is not told again
    Seen {
        /// Short name, NAME@DESK or #NUMBER
        client: String,
        /// A word to yourself and the other desks
        #[arg(long, value_name = "TEXT")]
        note: Option<String>,
    },
    /// Remove all that is kept of a client here, for good
    Forget {
        /// Short name, NAME@DESK or #NUMBER
        client: String,
        /// Do not ask
        #[arg(long)]
        yes: bool,
    },
    /// Write a whole copy of the database to a new file
    Backup {
        /// The file to write
        file: PathBuf,
    },
}

/// Arguments of `tidecount clinic import`.
#[derive(Debug, clap::Args)]
pub struct ImportArgs {
    /// The .tideback files
    #[arg(required = true, value_name = "FILE")]
    pub files: Vec<PathBuf>,
    /// What this desk is called in the caseload
    #[arg(long, value_name = "NAME")]
    pub desk: Option<String>,
}

/// How a view is written.
#[derive(Debug, Clone, Copy, PartialEq, Eq, clap::ValueEnum)]
pub enum Format {
    /// For reading.
    Text,
    /// One JSON document.
    Json,
}

/// Arguments of `tidecount clinic caseload`.
#[derive(Debug, clap::Args)]
pub struct CaseloadArgs {
    /// At most so many clients
    #[arg(long, value_name = "N", default_value_t = 30)]
    pub limit: usize,
    /// All clients, also those who need no attention
    #[arg(long, conflicts_with = "limit")]
    pub all: bool,
    /// Only clients with this reason
    #[arg(long, value_name = "REASON", value_parser = reason)]
    pub why: Option<ReasonKind>,
    #[arg(long, value_enum, default_value_t = Format::Text)]
    pub format: Format,
    /// As it stands on this day [default: today]
    #[arg(long, value_name = "YYYY-MM-DD")]
    pub on: Option<Date>,
}

/// Arguments of `tidecount clinic show`.
#[derive(Debug, clap::Args)]
pub struct ShowArgs {
    /// Short name, NAME@DESK or #NUMBER
    pub client: String,
    #[arg(long, value_enum, default_value_t = Format::Text)]
    pub format: Format,
    /// As it stands on this day [default: today]
    #[arg(long, value_name = "YYYY-MM-DD")]
    pub on: Option<Date>,
}

fn reason(word: &str) -> Result<ReasonKind, String> {
    ReasonKind::of_word(word).ok_or_else(|| format!("one of {}", ReasonKind::ALL.map(ReasonKind::word).join(", ")))
}

/// Where the clinic database is: named, or in the environment, or in the folder of the record.
pub fn address(named: Option<&str>, data: &Path) -> Result<Address, ClinicError> {
    let variable = std::env::var_os(CLINIC_VARIABLE).filter(|value| !value.is_empty());
    match (named, variable) {
        (Some(named), _) => Address::of(named),
        (None, Some(variable)) => match variable.to_str() {
            Some(text) => Address::of(text),
            None => Ok(Address::File(variable.into())),
        },
        (None, None) => Ok(Address::File(data.join(CLINIC_FILE))),
    }
}

/// Runs the command.
///
/// # Errors
/// The database cannot be used, there is no such client, or no file could be taken in.
pub fn run(args: &ClinicArgs) -> Result<ExitCode, Failure> {
    let data = data_folder(args.data.as_deref())?;
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
            desk.say(&format!("Removed: {whose}. Results sealed for this client's packages are not taken in again. The record of the desk is another file: see `tidecount history`."));
        }
        ClinicCommand::Backup { file } => {
            let mut clinic = Clinic::open_existing(&address)?;
            clinic.backup(file)?;
            desk.say(&format!(
                "{}: a whole copy of {}. Put it back by naming it with --clinic, or by renaming it.",
                file.display(),
                clinic.place()
            ));
        }
    }
    Ok(ExitCode::SUCCESS)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_option_goes_before_the_folder_of_the_record() {
        let data = Path::new("data");
        assert_eq!(address(Some("other.sqlite"), data).expect("an address").to_string(), "other.sqlite");
        assert!(address(Some("mysql://x"), data).is_err());
    }

    #[test]
    fn reasons_have_names() {
        assert_eq!(reason("decline"), Ok(ReasonKind::Decline));
        assert!(reason("boredom").is_err_and(|text| text.contains("no-practice")));
    }
}
