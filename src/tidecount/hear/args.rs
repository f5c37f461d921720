//! What can be typed after `tidecount hear`.

use std::path::PathBuf;

use crate::hear::evaluate::args::EvaluationArgs;
use crate::options::{DataFolder, Microphone, Model};

/// Show what is heard: held vowels and commands in recordings, how well commands are heard in labelled ones, or a live meter of the microphone
#[derive(Debug, Clone, Default, clap::Args)]
#[command(mut_arg("data", |data| data.requires("enrolled")))]
#[command(mut_arg("mic", |mic| mic.conflicts_with("files")))]
pub struct HearArgs {
    /// Recordings to hear: WAV, AIFF or FLAC [default: none; a live meter of the microphone]
    #[arg(value_name = "FILE")]
    pub files: Vec<PathBuf>,
    /// Print one JSON object a line instead of a table
    #[arg(long)]
    pub json: bool,
    /// Write time, F0, level and voicing of every 10 ms to this CSV file (one recording at a time)
    #[arg(long, value_name = "FILE.csv")]
    pub frames: Option<PathBuf>,
    /// Listen for these spoken commands, separated by commas, wordings of one command by bars: "ready|i'm ready,stop,go back"
    #[arg(long, value_name = "PHRASES")]
    pub commands: Option<String>,
    /// Let this client's voice weigh in, as `tidecount enrol` learnt it; only with --commands
    #[arg(long, value_name = "NAME", requires = "commands")]
    pub enrolled: Option<String>,
    /// Also show what was considered and did not count, what each ear found, and why; only with --commands
    #[arg(long, requires = "commands", conflicts_with = "labels")]
    pub why: bool,
    #[command(flatten)]
    pub data: DataFolder,
    #[command(flatten)]
    pub model: Model,
    /// Also show the voice quality of each hold, for the clinician; a louder voice alone makes the figures better
    #[arg(long)]
    pub voice: bool,
    /// Also show what a sound level meter would read of each recording: energy mean, highest Fast and Slow level, for A, C and Z
    #[arg(long)]
    pub levels: bool,
    #[command(flatten)]
    pub microphone: Microphone,
    #[command(flatten)]
    pub evaluation: EvaluationArgs,
}
