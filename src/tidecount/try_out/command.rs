//! `tidecount try`: everything there is to look at, made in a minute.

use std::io::{IsTerminal as _, Write as _};
use std::path::{Path, PathBuf};
use std::process::ExitCode;

use jiff::civil::Date;

use super::people::Person;
use super::{desk, home};
use crate::serving;
use ::pages::follow::server::{self, Wanted};
use files::error::Failure;
use files::reports::{Format, Page, Wanted as WantedReport, make};
use speak::Words;

/// Make a sample household and a sample clinic of simulated clients, and look through caseload, report and progress
#[derive(Debug, Clone, clap::Args)]
pub struct TryArgs {
    /// Write everything into this folder, which must not be there yet
    #[arg(long, default_value = "tidecount-try", value_name = "DIR")]
    pub out: PathBuf,
    /// Make so many clients for the clinic
    #[arg(long, default_value_t = 30, value_name = "N", value_parser = clap::value_parser!(u32).range(1..=200))]
    pub clients: u32,
    /// Make as if it were this day [default: today]
    #[arg(long, value_name = "YYYY-MM-DD")]
    pub on: Option<Date>,
    /// Make everything and say where it is, but open nothing
    #[arg(long)]
    pub no_open: bool,
}

/// What stands beside everything else.
const NOTE: &str = "Everything in this folder is simulated. Nobody real practised, and no sound was heard: the program's own engine led invented\n\
                    clients. Delete the folder when you have looked through it.\n";

/// Makes everything; where somebody sits at a terminal, the clinic's pages are then served until Ctrl-C.
///
/// # Errors
/// The folder is there already or cannot be written.
pub fn run(args: &TryArgs) -> Result<ExitCode, Failure> {
    let out = &args.out;
    if out.exists() {
        return Err(Failure::file(out, "is there already: delete it, or name another folder with --out".to_owned()));
    }
    let today = args.on.unwrap_or_else(|| jiff::ZonedDateTime::now().date());
    let (household, clinic) = (out.join("household"), out.join("clinic"));
    disk::private::folder(out).map_err(|why| Failure::file(out, format!("cannot be made: {why}; name another folder with --out")))?;
    written(&out.join("SIMULATED.txt"), NOTE.as_bytes())?;
    let practices = home::make(&household, today)?;
    let made = desk::make(&clinic, args.clients as usize, today)?;
    let report = out.join("simulated-report.html");
    let wanted = WantedReport {
        client: Some(Person::of_clinic(0).name),
        weeks: super::led::WEEKS + 1,
        format: Format::Html,
        page: Page::Whole,
        data: clinic.clone(),
    };
    written(&report, &make(&wanted, today, &Words::usual()?)?.1)?;
    let mut told = std::io::stdout();
    let (household, clinic_shown) = (household.display(), clinic.display());
    // Nothing depends on its being read.
    let _ = writeln!(
        told,
        "Everything here is simulated.\n\
         \n\
         The household:  2 persons, {practices} practices     tidecount pages --data {household}\n\
         The clinic:     {} clients, {} practices   tidecount pages --data {clinic_shown}\n\
         The caseload:   tidecount clinic caseload --data {clinic_shown}\n\
         Progress:       tidecount report --client \"{}\" --format chart --data {clinic_shown}\n\
         The report:     {}",
        made.clients,
        made.practices,
        Person::of_clinic(0).name,
        report.display()
    );
    let looks = std::io::stdout().is_terminal() && !args.no_open;
    if !looks {
        return Ok(ExitCode::SUCCESS);
    }
    if server::has_display() {
        server::open_browser(report.display().to_string());
    }
    let _ = writeln!(told, "\nThe clinic’s pages: caseload and progress are under “Results”.");
    serving::until_ended(serving::usual_place(&clinic), Wanted { port: 0, opens_browser: true })
}

fn written(path: &Path, bytes: &[u8]) -> Result<(), Failure> {
    disk::private::write(path, bytes).map_err(|why| Failure::file(path, format!("cannot be written: {why}")))
}
