//! `tidecount hear`: what the two ears hear, in recordings or live.

use crate::hear::evaluate;
use crate::hear::microphone;
use crate::hear::phrases::PhraseEar;
use crate::hear::recordings;
use command_ear::Mode;
use files::error::Failure;
use live::enrol;
use record::{Store, data_folder};
use std::path::PathBuf;
use std::process::ExitCode;

/// Shows what is heard: held vowels and commands in recordings, how well commands are heard in labelled ones, or a live meter of the microphone.
#[derive(Debug, Clone, Default, clap::Args)]
pub struct HearArgs {
    /// Recordings to hear (WAV, AIFF or FLAC). Without any: a live meter of the microphone.
    #[arg(value_name = "FILE")]
    pub files: Vec<PathBuf>,
    /// One JSON object per line instead of a table.
    #[arg(long)]
    pub json: bool,
    /// Writes time, F0, level and voicing of every 10 ms to this CSV file (one recording at a time).
    #[arg(long, value_name = "FILE.csv")]
    pub frames: Option<PathBuf>,
    /// Spoken commands to listen for, parted by commas: "ready,stop,go back".
    #[arg(long, value_name = "PHRASES")]
    pub commands: Option<String>,
    /// With --commands: lets the voice of this client weigh in, as `tidecount enrol` learnt it.
    #[arg(long, value_name = "NAME", requires = "commands")]
    pub enrolled: Option<String>,
    /// Where the record with that voice is kept. Default: $TIDECOUNT_DATA, else the user's data folder.
    #[arg(long, value_name = "DIR", requires = "enrolled")]
    pub data: Option<PathBuf>,
    /// Recognition model, a folder in the Vosk layout. Default: the built-in English model.
    #[arg(long, value_name = "DIR")]
    pub model: Option<PathBuf>,
    /// Also the figures of voice quality of each hold, for the clinician; a louder voice alone makes them better.
    #[arg(long)]
    pub voice: bool,
    /// Also what a sound level meter would read of each recording: energy mean, highest Fast and Slow level, for A, C and Z.
    #[arg(long)]
    pub levels: bool,
    /// Without recordings: the microphone, `default` or a name from `tidecount devices`.
    #[arg(long, value_name = "default|NAME", conflicts_with = "files")]
    pub mic: Option<String>,
    #[command(flatten)]
    pub evaluation: evaluate::EvaluationArgs,
}

/// Runs the command.
///
/// # Errors
/// The arguments cannot be served, or the result cannot be written. Recordings that cannot be read are named on standard
/// error and make the exit code 1; the others are heard all the same.
pub fn run(args: &HearArgs) -> Result<ExitCode, Failure> {
    let outcome = if let (Some(list), Some(phrases)) = (&args.evaluation.labels, &args.commands) {
        let how = (phrases.as_str(), args.model.as_deref(), args.json);
        evaluate::run(&args.evaluation, list, how, &mut std::io::stdout().lock(), &mut std::io::stderr())
    } else if args.files.is_empty() {
        microphone::run(args)
    } else {
        recordings::run(args, &mut std::io::stdout().lock(), &mut std::io::stderr())
    };
    outcome.map(|all| if all { ExitCode::SUCCESS } else { ExitCode::FAILURE })
}

/// The command ear that `--commands` asks for.
///
/// # Errors
/// The phrases or the model cannot be used.
pub fn phrase_ear(args: &HearArgs, mode: Mode) -> Result<Option<PhraseEar>, Failure> {
    let Some(phrases) = args.commands.as_deref() else { return Ok(None) };
    let mut ear = PhraseEar::start(phrases, args.model.as_deref(), mode)?;
    if let Some(client) = &args.enrolled {
        let store = Store::open_existing(&data_folder(args.data.as_deref())?)?;
        let own = store.map(|store| enrol::store::own_voice(&store, client)).transpose()?.unwrap_or_default();
        if own.words.is_empty() {
            return Err(Failure::Missing(format!(
                "--enrolled: nothing is kept of the voice of {client:?}; enrol it with `tidecount enrol --client NAME`, or name the folder of the record with --data DIR"
            )));
        }
        ear.weigh_in(&own);
    }
    Ok(Some(ear))
}

/// Whether writing failed only because the reader went away (`| head`).
pub fn reader_left(error: &std::io::Error) -> bool {
    error.kind() == std::io::ErrorKind::BrokenPipe
}

/// What a failed write of the result is reported as.
pub fn unwritten(error: &std::io::Error) -> Failure {
    Failure::Output(format!("the result cannot be written ({error}); write it to a place with room that you may write to"))
}
