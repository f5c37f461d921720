//! What can be typed after `tidecount routine`.

use std::path::PathBuf;

/// Arguments of `tidecount routine`.
#[derive(Debug, clap::Args)]
pub struct RoutineArgs {
    #[command(subcommand)]
    pub command: RoutineCommand,
}

/// What can be done with routines.
#[derive(Debug, clap::Subcommand)]
pub enum RoutineCommand {
    /// Write a programme by answering questions
    New(NewArgs),
    /// Check routine files and name every fault with its line and remedy
    Check {
        /// Routine files, TOML
        #[arg(required = true)]
        files: Vec<PathBuf>,
    },
    /// Show a routine as a handout in large type, or write it as PDF
    Show(ShowArgs),
    /// Show published doses beside each other, with their sources
    Templates {
        /// Only this exercise
        exercise: Option<String>,
    },
    /// Print the JSON Schema of routine files
    Schema,
}

/// Arguments of `tidecount routine new`.
#[derive(Debug, Clone, clap::Args)]
pub struct NewArgs {
    /// File to write; asked for if left out
    pub file: Option<PathBuf>,
    /// Write plain lines and never move the cursor, for a screen reader
    #[arg(long)]
    pub plain: bool,
}

/// Arguments of `tidecount routine show`.
#[derive(Debug, Clone, clap::Args)]
pub struct ShowArgs {
    /// The routine, a TOML file
    pub file: PathBuf,
    /// Write it as a PDF to this file, A4 in large type
    #[arg(long, value_name = "OUT.pdf")]
    pub pdf: Option<PathBuf>,
}
