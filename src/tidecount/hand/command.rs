//! `tidecount hand …`: a client's package out, results back. Nothing goes over a network.

use std::io::{BufRead, Write};
use std::path::PathBuf;
use std::process::ExitCode;

use jiff::civil::Date;

use crate::hand::make;
use crate::hand::results;
use crate::hand::take;
use files::error::Failure;
use files::packages::sealed;
use handover::PublicKey;
use record::{Store, data_folder};

/// Arguments of `tidecount hand`.
#[derive(Debug, clap::Args)]
pub struct HandArgs {
    #[command(subcommand)]
    command: HandCommand,
    /// The folder of the record [default: TIDECOUNT_DATA, else this system's place for a program's data]
    #[arg(long, value_name = "DIR", global = true)]
    data: Option<PathBuf>,
}

#[derive(Debug, clap::Subcommand)]
enum HandCommand {
    /// Clinician: put a client's routines, word packs, settings and agreements into one signed file
    Make(MakeArgs),
    /// Home: check a clinician's package and put it in force
    Take(TakeArgs),
    /// Home: put the practices since the last time into one signed file for the clinician
    Results(ResultsArgs),
    /// Clinician: check a file of results and add what is new in it to the client's history
    Read {
        /// The .tideback file
        file: PathBuf,
    },
    /// Show this computer's fingerprint, to be read out on the phone, and whose packages are in force here
    Key,
}

/// Arguments of `tidecount hand make`.
#[derive(Debug, clap::Args)]
pub struct MakeArgs {
    /// The client's short name; no real name is needed
    #[arg(long, value_name = "NAME")]
    pub client: String,
    /// Routine files, TOML
    #[arg(required = true, value_name = "ROUTINE.toml")]
    pub routines: Vec<PathBuf>,
    /// A word pack that goes along; may be given more than once
    #[arg(long = "pack", value_name = "PACK.toml")]
    pub packs: Vec<PathBuf>,
    /// Voice at home: `espeak-ng[:VARIANT]`, `piper` or `system`
    #[arg(long, value_name = "NAME")]
    pub voice: Option<String>,
    /// The number is told after each n-th trial, whatever the routines say; 0: only when asked
    #[arg(long, value_name = "N")]
    pub feedback_every: Option<u32>,
    /// How the household speaks of the client: he, she or they
    #[arg(long, value_name = "PRONOUN")]
    pub pronoun: Option<String>,
    /// What the client is called aloud; may be given more than once
    #[arg(long = "call-name", value_name = "NAME")]
    pub call_names: Vec<String>,
    /// A word to the household, shown when the package is taken
    #[arg(long, value_name = "TEXT")]
    pub note: Option<String>,
    /// The package to write
    #[arg(short, long, value_name = "FILE.tidepack")]
    pub output: PathBuf,
}

/// Arguments of `tidecount hand take`.
#[derive(Debug, clap::Args)]
pub struct TakeArgs {
    /// The .tidepack file
    pub file: PathBuf,
    /// The clinician's fingerprint as it was read out, instead of the question
    #[arg(long, value_name = "FINGERPRINT")]
    pub accept: Option<String>,
    /// Take the package of another key than before; only with --accept
    #[arg(long, requires = "accept")]
    pub change_clinician: bool,
    /// Take a package that is older than the one in force
    #[arg(long)]
    pub older: bool,
}

/// Arguments of `tidecount hand results`.
#[derive(Debug, clap::Args)]
pub struct ResultsArgs {
    /// Whose results; needed where packages of several clients are in force
    #[arg(long, value_name = "NAME")]
    pub client: Option<String>,
    /// All practices since this day instead of those not handed back yet
    #[arg(long, value_name = "YYYY-MM-DD")]
    pub since: Option<Date>,
    /// The file to write [default: results-DATE-PACKAGE.tideback, without a name of the client]
    #[arg(short, long, value_name = "FILE.tideback")]
    pub output: Option<PathBuf>,
}

/// Where a command asks and answers.
pub struct Desk<'a> {
    pub input: &'a mut dyn BufRead,
    pub out: &'a mut dyn Write,
}

impl Desk<'_> {
    /// Shows a text. A reader that went away (`| head`) is no reason to break off half-way.
    pub fn say(&mut self, text: &str) {
        let _ = writeln!(self.out, "{}", plain(text));
    }

    /// True where "yes" is typed. The end of the input is no yes.
    pub fn yes(&mut self, question: &str) -> bool {
        let _ = write!(self.out, "{} ", plain(question));
        let _ = self.out.flush();
        let mut line = Vec::new();
        // A line without end is no answer.
        let read = std::io::Read::take(&mut *self.input, 1000).read_until(b'\n', &mut line);
        let yes = read.is_ok() && String::from_utf8_lossy(&line).trim().eq_ignore_ascii_case("yes");
        if line.last() != Some(&b'\n') {
            let _ = writeln!(self.out);
        }
        yes
    }
}

/// Text from elsewhere must not steer the terminal.
pub fn plain(text: &str) -> String {
    text.chars().map(|c| if c.is_control() && c != '\n' { ' ' } else { c }).collect()
}

/// Runs the command.
///
/// # Errors
/// A file is refused, with the reason and the remedy; nothing has been taken or written then.
pub fn run(args: &HandArgs) -> Result<ExitCode, Failure> {
    let data = data_folder(args.data.as_deref())?;
    let (mut input, mut out) = (std::io::stdin().lock(), std::io::stdout().lock());
    let mut desk = Desk { input: &mut input, out: &mut out };
    match &args.command {
        HandCommand::Make(args) => make::run(args, &data, &mut desk)?,
        HandCommand::Take(args) => take::run(args, &data, &mut desk)?,
        HandCommand::Results(args) => results::write(args, &data, &mut desk)?,
        HandCommand::Read { file } => results::read(file, &data, &mut desk)?,
        HandCommand::Key => {
            let own = sealed::clinician_key(&data)?.public().fingerprint();
            desk.say(&format!("Packages made on this computer carry the key\n\n    {own}\n\nRead it out when the household asks."));
            let in_force = Store::open_existing(&data)?.map(|store| store.packages_in_force()).transpose()?.unwrap_or_default();
            for package in in_force {
                let key = PublicKey::from_hex(&package.clinician_key)
                    .map_or_else(|| "an unreadable key".to_owned(), |key| key.fingerprint().to_string());
                desk.say(&format!("\nIn force here for {}: package {} with the clinician's key\n\n    {key}", package.client, package.id));
            }
        }
    }
    Ok(ExitCode::SUCCESS)
}
