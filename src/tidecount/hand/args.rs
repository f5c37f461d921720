//! What can be typed after `tidecount hand`.

use std::path::PathBuf;

use jiff::civil::Date;

use crate::options::GlobalDataFolder;

/// Arguments of `tidecount hand`.
#[derive(Debug, clap::Args)]
pub struct HandArgs {
    #[command(subcommand)]
    pub command: HandCommand,
    #[command(flatten)]
    pub data: GlobalDataFolder,
}

/// What can be handed over.
#[derive(Debug, clap::Subcommand)]
pub enum HandCommand {
    /// Make a signed file of a client's routines, word packs, settings and agreements (for the clinician)
    Make(MakeArgs),
    /// Take a clinician's package: check it and put it in force (at home)
    Take(TakeArgs),
    /// Write the practices since the last time into one signed file for the clinician (at home)
    Results(ResultsArgs),
    /// Check a file of results and add what is new to the client's history (for the clinician)
    Read {
        /// The .tideback file
        file: PathBuf,
    },
    /// Show this computer's fingerprint, to read out on the phone, and whose packages are in force here
    Key,
}

/// Arguments of `tidecount hand make`.
#[derive(Debug, clap::Args)]
pub struct MakeArgs {
    /// Make the package for this client; a short name will do, no real name is needed
    #[arg(long, value_name = "NAME")]
    pub client: String,
    /// Routine files, TOML
    #[arg(required = true, value_name = "ROUTINE.toml")]
    pub routines: Vec<PathBuf>,
    /// Add a word pack; repeat the option for more
    #[arg(long = "pack", value_name = "PACK.toml")]
    pub packs: Vec<PathBuf>,
    /// Speak with this voice at home: `espeak-ng[:VARIANT]`, `piper` or `system`
    #[arg(long, value_name = "NAME")]
    pub voice: Option<String>,
    /// Tell the number after every Nth trial, whatever the routines say; 0: only when asked
    #[arg(long, value_name = "N")]
    pub feedback_every: Option<u32>,
    /// Say how the household speaks of the client: he, she or they
    #[arg(long, value_name = "PRONOUN")]
    pub pronoun: Option<String>,
    /// Say what the client is called aloud; repeat the option for more names
    #[arg(long = "call-name", value_name = "NAME")]
    pub call_names: Vec<String>,
    /// Add a word to the household, shown when the package is taken
    #[arg(long, value_name = "TEXT")]
    pub note: Option<String>,
    /// Write the package to this file
    #[arg(short, long, value_name = "FILE.tidepack")]
    pub output: PathBuf,
}

/// Arguments of `tidecount hand take`.
#[derive(Debug, clap::Args)]
pub struct TakeArgs {
    /// The .tidepack file
    pub file: PathBuf,
    /// Confirm the clinician's fingerprint, as it was read out, instead of being asked
    #[arg(long, value_name = "FINGERPRINT")]
    pub accept: Option<String>,
    /// Take a package sealed with another key than before; only with --accept
    #[arg(long, requires = "accept")]
    pub change_clinician: bool,
    /// Take a package that is older than the one in force
    #[arg(long)]
    pub older: bool,
}

/// Arguments of `tidecount hand results`.
#[derive(Debug, clap::Args)]
pub struct ResultsArgs {
    /// Hand back this client's results; needed where packages of several clients are in force
    #[arg(long, value_name = "NAME")]
    pub client: Option<String>,
    /// Hand back all practices since this day, not only those not handed back yet
    #[arg(long, value_name = "YYYY-MM-DD")]
    pub since: Option<Date>,
    /// Write to this file [default: results-DATE-PACKAGE.tideback, without the client's name]
    #[arg(short, long, value_name = "FILE.tideback")]
    pub output: Option<PathBuf>,
}
