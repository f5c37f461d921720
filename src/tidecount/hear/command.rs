//! `tidecount hear`: what the two ears hear, in recordings or live.

use crate::hear::args::HearArgs;
use crate::hear::evaluate;
use crate::hear::microphone;
use crate::hear::recordings;
use files::error::Failure;
use std::process::ExitCode;

/// Runs the command.
///
/// # Errors
/// The arguments cannot be served, or the result cannot be written. Recordings that cannot be read are named on standard
/// error and make the exit code 1; the others are heard all the same.
pub fn run(args: &HearArgs) -> Result<ExitCode, Failure> {
    let outcome = if let (Some(list), Some(phrases)) = (&args.evaluation.labels, &args.commands) {
        let how = (phrases.as_str(), args.model.model.as_deref(), args.json);
        evaluate::run(&args.evaluation, list, how, &mut std::io::stdout().lock(), &mut std::io::stderr())
    } else if args.files.is_empty() {
        microphone::run(args)
    } else {
        recordings::run(args, &mut std::io::stdout().lock(), &mut std::io::stderr())
    };
    outcome.map(|all| if all { ExitCode::SUCCESS } else { ExitCode::FAILURE })
}
