//! `tidecount pages`: the set-up pages while no practice runs.

use std::io::Write;
use std::path::{Path, PathBuf};
use std::process::ExitCode;
use std::sync::Arc;

use crate::options::{ALOUD, DataFolder, Sound};
use ::clinic::{Address, Clinic};
use files::clinic_address::address;
use files::error::Failure;
use files::load;
use live::interrupt::Endings;
use pages::follow;
use pages::set_up::site::{Place, Site};
use pages::web::Server;
use record::Store;
use speak::{Language, Words};

/// Open the set-up pages in this computer's browser: microphone, calibration, routines, cautions, history, progress
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
    let words = Words::of(Language::of_tag(load::language_of(&place.household).as_deref())?)?;
    let address_told = words.text(&session::Line { key: "page-told-address".into(), args: Vec::new() })?;
    let server = Server::start(args.port, |guard| pages::set_up::alone(Arc::new(Site::new(place, words, guard))))
        .map_err(|why| Failure::Options(why.to_string()))?;
    let address = server.address();
    // Where nobody reads it the browser is all that is left.
    let _ = writeln!(std::io::stdout(), "{address_told}\n{address}").and_then(|()| std::io::stdout().flush());
    if !args.no_open && follow::server::has_display() {
        follow::server::open_browser(server.address_for_browser());
    }
    let runtime = tokio::runtime::Builder::new_current_thread()
        .enable_all()
        .build()
        .map_err(|why| Failure::Again(format!("the program cannot start its threads: {why}; close other programs and try again")))?;
    let waited = runtime.block_on(async { Endings::watch()?.next().await });
    drop(server);
    waited.map(|_| ExitCode::SUCCESS).map_err(|why| Failure::Again(format!("Ctrl-C cannot be waited for: {why}")))
}
