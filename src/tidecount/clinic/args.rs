//! What can be typed after `tidecount clinic`.

use std::path::PathBuf;

use jiff::civil::Date;

use crate::options::GlobalDataFolder;
use ::clinic::ReasonKind;

/// Arguments of `tidecount clinic`.
#[derive(Debug, clap::Args)]
pub struct ClinicArgs {
    #[command(subcommand)]
    pub command: ClinicCommand,
    /// Use this clinic database: a file, or postgres://USER@HOST/DATABASE where several desks share one [default: $TIDECOUNT_CLINIC,
    /// else clinic.sqlite in the data folder]
    #[arg(long, value_name = "FILE|URL", global = true)]
    pub clinic: Option<String>,
    #[command(flatten)]
    pub data: GlobalDataFolder,
}

/// What can be done with the clinic database.
#[derive(Debug, clap::Subcommand)]
pub enum ClinicCommand {
    /// Take in files of results, each whole or not at all, and only once however often it comes
    Import(ImportArgs),
    /// Make this desk's packages known, so that their results can be imported at every desk
    Adopt {
        /// Name this desk in the caseload
        #[arg(long, value_name = "NAME")]
        desk: Option<String>,
    },
    /// List who needs attention, and why
    Caseload(CaseloadArgs),
    /// Show one client: reasons, adherence, measures with their conditions, practices, events
    Show(ShowArgs),
    /// Mark a client as seen: what is known until now is not told again
    Seen {
        /// Short name, NAME@DESK or #NUMBER
        client: String,
        /// Leave a word to yourself and the other desks
        #[arg(long, value_name = "TEXT")]
        note: Option<String>,
    },
    /// Forget a client: delete all that is kept here, for good
    Forget {
        /// Short name, NAME@DESK or #NUMBER
        client: String,
        /// Do not ask first
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
    /// Name this desk in the caseload
    #[arg(long, value_name = "NAME")]
    pub desk: Option<String>,
}

/// How a view is written.
#[derive(Debug, Clone, Copy, PartialEq, Eq, clap::ValueEnum)]
pub enum Format {
    /// Text to read
    Text,
    /// One JSON document
    Json,
}

/// Arguments of `tidecount clinic caseload`.
#[derive(Debug, clap::Args)]
pub struct CaseloadArgs {
    /// List at most this many clients
    #[arg(long, value_name = "N", default_value_t = 30)]
    pub limit: usize,
    /// List all clients, also those who need no attention
    #[arg(long, conflicts_with = "limit")]
    pub all: bool,
    /// List only clients with this reason
    #[arg(long, value_name = "REASON", value_parser = reason)]
    pub why: Option<ReasonKind>,
    /// Write text to read, or one JSON document
    #[arg(long, value_enum, default_value_t = Format::Text)]
    pub format: Format,
    /// Show how things stand on this day [default: today]
    #[arg(long, value_name = "YYYY-MM-DD")]
    pub on: Option<Date>,
}

/// Arguments of `tidecount clinic show`.
#[derive(Debug, clap::Args)]
pub struct ShowArgs {
    /// Short name, NAME@DESK or #NUMBER
    pub client: String,
    /// Write text to read, or one JSON document
    #[arg(long, value_enum, default_value_t = Format::Text)]
    pub format: Format,
    /// Show how things stand on this day [default: today]
    #[arg(long, value_name = "YYYY-MM-DD")]
    pub on: Option<Date>,
}

fn reason(word: &str) -> Result<ReasonKind, String> {
    ReasonKind::of_word(word).ok_or_else(|| format!("one of {}", ReasonKind::ALL.map(ReasonKind::word).join(", ")))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn reasons_have_names() {
        assert_eq!(reason("decline"), Ok(ReasonKind::Decline));
        assert!(reason("boredom").is_err_and(|text| text.contains("no-practice")));
    }
}
