//! `tidecount pages`: today, results and set-up; practices can be started there.

use std::path::{Path, PathBuf};
use std::process::ExitCode;

use crate::options::{ALOUD, DataFolder, Sound};
use crate::serving;
use ::clinic::{Address, Clinic};
use files::clinic_address::address;
use files::error::Failure;
use pages::follow::server::Wanted;
use pages::set_up::site::Place;
use record::Store;

/// Open the pages in this computer's browser: start a practice, look at results, set everything up
#[derive(Debug, Clone, clap::Args)]
#[command(mut_arg("speaker", |speaker| speaker.help(ALOUD)))]
pub struct PagesArgs {
    /// Household file: who lives here and what they practise; routines lie beside it [default: household.toml in the data folder]
    pub household: Option<PathBuf>,
    #[command(flatten)]
    pub sound: Sound,
    #[command(flatten)]
    pub data: DataFolder,
    /// Serve on this port of this computer; 0 takes any that is free
    #[arg(long, value_name = "N", default_value_t = 0)]
    pub port: u16,
    /// Print the address and open no browser
    #[arg(long)]
    pub no_open: bool,
    /// Show the caseload of this clinic database: a file, or postgres://USER@HOST/DATABASE [default: $TIDECOUNT_CLINIC, else
    /// clinic.sqlite in the data folder, if there is one]
    #[arg(long, value_name = "FILE|URL")]
    pub clinic: Option<String>,
}

/// The clinic database that the pages show; none where none was named and there is none.
fn clinic(named: Option<&str>, data: &Path) -> Result<Option<Address>, Failure> {
    let address = address(named, data)?;
    let is_there = match &address {
        Address::File(path) => path.exists(),
        Address::Server(_) => true,
    };
    if is_there || named.is_some() {
        // Faults are told now, where somebody is at the terminal; so is a passphrase asked for.
        drop(Clinic::open_existing(&address)?);
        return Ok(Some(address));
    }
    Ok(None)
}

/// Serves the pages until Ctrl-C.
///
/// # Errors
/// The port is taken, or words or data folder cannot be had.
pub fn run(args: &PagesArgs) -> Result<ExitCode, Failure> {
    let data = args.data.folder()?;
    // A record that is encrypted asks for its passphrase now, where somebody is at the terminal, and not in the middle of a page.
    drop(Store::open_existing(&data)?);
    let clinic = clinic(args.clinic.as_deref(), &data)?;
    let sound = args.sound.meant_aloud();
    let place = Place {
        household: args.household.clone().unwrap_or_else(|| data.join("household.toml")),
        data,
        mic: sound.mic,
        speaker: sound.speaker,
        voice: sound.voice,
        model: sound.model,
        recogniser: None,
        clinic,
        today: None,
    };
    serving::until_ended(place, Wanted { port: args.port, opens_browser: !args.no_open })
}
