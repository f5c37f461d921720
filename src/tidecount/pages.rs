//! `tidecount pages`: the set-up pages while no practice runs.

use std::io::Write;
use std::path::{Path, PathBuf};
use std::process::ExitCode;
use std::sync::Arc;

use crate::clinic;
use ::clinic::{Address, Clinic};
use files::error::Failure;
use pages::follow;
use pages::set_up::site::{Place, Site};
use pages::web::Server;
use record::{Store, data_folder};
use speak::Words;

/// Opens the set-up pages in this computer's browser: microphone, calibration, routines, cautions, history, progress.
#[derive(Debug, Clone, clap::Args)]
pub struct PagesArgs {
    /// Who lives here and what they practise; routines lie beside it. Default: household.toml in the data folder.
    pub household: Option<PathBuf>,
    /// Where the record is kept. Default: $TIDECOUNT_DATA, else the user's data folder.
    #[arg(long, value_name = "DIR")]
    pub data: Option<PathBuf>,
    /// The port on this computer. Default: any that is free.
    #[arg(long, value_name = "N", default_value_t = 0)]
    pub port: u16,
    /// Only prints the address and opens no browser.
    #[arg(long)]
    pub no_open: bool,
    /// The clinic database, whose caseload is shown then: a file, or postgres://USER@HOST/DATABASE. Default: $TIDECOUNT_CLINIC, else
    /// clinic.sqlite in the data folder, where there is one.
    #[arg(long, value_name = "FILE|URL")]
    pub clinic: Option<String>,
    /// Microphone to begin with: `default`, a name from `tidecount devices`, or a recording.
    #[arg(long, default_value = "default", value_name = "default|NAME|FILE.wav")]
    pub mic: String,
    /// Loudspeaker to begin with: `default`, a name, a WAV file to write, or `none`.
    #[arg(long, default_value = "default", value_name = "default|NAME|FILE.wav|none")]
    pub speaker: String,
    /// Voice: `espeak-ng[:VARIANT]`, `piper[:FILE.onnx]` or `system`. Default: Piper where installed, else espeak-ng.
    #[arg(long, value_name = "NAME")]
    pub voice: Option<String>,
    /// Recognition model, a folder in the Vosk layout. Default: the built-in English model.
    #[arg(long, value_name = "DIR")]
    pub model: Option<PathBuf>,
}

/// The clinic database that the pages show; none where none was named and there is none.
fn clinic(named: Option<&str>, data: &Path) -> Result<Option<Address>, Failure> {
    let address = clinic::command::address(named, data)?;
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
    let data = data_folder(args.data.as_deref())?;
    // A record that is encrypted asks for its passphrase now, where somebody is at the terminal, and not in the middle of a page.
    drop(Store::open_existing(&data)?);
    let clinic = clinic(args.clinic.as_deref(), &data)?;
    let place = Place {
        household: args.household.clone().unwrap_or_else(|| data.join("household.toml")),
        data,
        mic: args.mic.clone(),
        speaker: args.speaker.clone(),
        voice: args.voice.clone(),
        model: args.model.clone(),
        recogniser: None,
        clinic,
        today: None,
    };
    let words = Words::english()?;
    let address_told = words.text(&session::Line { key: "page-told-address".into(), args: Vec::new() })?;
    let server = Server::start(args.port, |guard| pages::set_up::alone(Arc::new(Site::new(place, words, guard))))
        .map_err(|why| Failure::Options(why.to_string()))?;
    let address = server.address();
    // Where nobody reads it the browser is all that is left.
    let _ = writeln!(std::io::stdout(), "{address_told}\n{address}").and_then(|()| std::io::stdout().flush());
    if !args.no_open && follow::server::has_display() {
        follow::server::open_browser(address);
    }
    let runtime = tokio::runtime::Builder::new_current_thread()
        .enable_all()
        .build()
        .map_err(|why| Failure::Again(format!("the program cannot start its threads: {why}; close other programs and try again")))?;
    let waited = runtime.block_on(tokio::signal::ctrl_c());
    drop(server);
    waited.map(|()| ExitCode::SUCCESS).map_err(|why| Failure::Again(format!("Ctrl-C cannot be waited for: {why}")))
}
