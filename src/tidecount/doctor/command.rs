//! `tidecount doctor`.

use std::io::Write;
use std::path::PathBuf;
use std::process::ExitCode;

use jiff::ZonedDateTime;

use super::checks::{all_is_well, findings};
use super::gather::{Wanted, gather};
use super::report::{on_terminal, to_send};
use crate::options::{DataFolder, Sound};
use crate::terminal::told;
use files::error::Failure;

/// Look whether everything is ready; say what is wrong and how to mend it
#[derive(Debug, Clone, clap::Args)]
pub struct DoctorArgs {
    /// Household file to look at [default: household.toml in the data folder]
    pub household: Option<PathBuf>,
    #[command(flatten)]
    pub sound: Sound,
    #[command(flatten)]
    pub data: DataFolder,
    /// Write what was found to this file, without names, paths or devices
    #[arg(long, value_name = "FILE")]
    pub report: Option<PathBuf>,
}

/// Runs the command. Exit code 1 where something is wrong.
///
/// # Errors
/// The report cannot be written.
pub fn run(args: &DoctorArgs) -> Result<ExitCode, Failure> {
    let data = args.data.folder()?;
    let household = args.household.clone().unwrap_or_else(|| data.join("household.toml"));
    let facts = gather(&Wanted { sound: args.sound.meant_aloud(), data, household }, &ZonedDateTime::now())?;
    let findings = findings(&facts);
    if let Some(path) = &args.report {
        std::fs::write(path, to_send(&facts, &findings)).map_err(|why| Failure::file(path, format!("cannot be written: {why}")))?;
    }
    let written = std::io::stdout().write_all(on_terminal(&findings).as_bytes());
    told(written.map(|()| all_is_well(&findings)))
}
