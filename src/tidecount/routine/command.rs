//! `tidecount routine`: wiring.

use std::io::{IsTerminal, Write};
use std::process::ExitCode;

use crate::routine::args::{RoutineArgs, RoutineCommand};
use crate::routine::{check, new, show, templates};
use crate::terminal::told;
use ::routine::schema;
use files::checker::Checker;
use files::error::Failure;

/// Runs the command. Without a recognition model the words of answers are not checked.
///
/// # Errors
/// A file cannot be used, or the output cannot be written.
pub fn run(args: &RoutineArgs) -> Result<ExitCode, Failure> {
    let checker = match &args.command {
        RoutineCommand::Show(args) => Checker::of_routine(&args.file)?,
        // Several files have one language between them: the first one's.
        RoutineCommand::Check { files } => files.first().map_or_else(Checker::new, |file| Checker::of_routine(file))?,
        _ => Checker::new()?,
    };
    let look_up = |key: &str| checker.look_up(key);
    let out = &mut std::io::stdout().lock();
    let fancy = std::io::stdout().is_terminal();
    checker.with_hearing(|hearing| match &args.command {
        RoutineCommand::Check { files } => told(check::check(files, hearing, fancy, out)),
        RoutineCommand::Schema => told(writeln!(out, "{:#}", schema()).map(|()| true)),
        RoutineCommand::New(args) => new::run(args, &look_up, hearing),
        RoutineCommand::Show(args) => show::run(args, &checker.words, hearing, out).map(|()| ExitCode::SUCCESS),
        RoutineCommand::Templates { exercise } => told(templates::run(exercise.as_deref(), &look_up, out)),
    })
}
