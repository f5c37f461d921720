//! The commands that only read and write text: routines and the catalogue.

use std::io::IsTerminal;
use std::process::ExitCode;

use super::routine;
use crate::history::{HistoryArgs, run_history};
use crate::routine::command::{ExercisesArgs, RoutineArgs, RoutineCommand, run_exercises, run_routine};
use crate::routine::pack::{PackArgs, run_pack};
use ::routine::Hearing;
use command_ear::Lexicon;
use files::error::AppError;
use files::load;
use files::spoken::spoken_form;
use session::Line;
use speak::Words;

/// `tidecount routine …`.
///
/// # Errors
/// The output cannot be written. Without a recognition model the words of answers are not checked.
pub fn routine(args: &RoutineArgs) -> Result<ExitCode, AppError> {
    checking(|words, hearing, fancy| {
        let look_up = |key: &str| words.text(&Line { key: key.to_owned(), args: Vec::new() }).ok();
        let out = &mut std::io::stdout().lock();
        match &args.command {
            RoutineCommand::New(args) => routine::new::run(args, &look_up, hearing),
            RoutineCommand::Show(args) => routine::show::run(args, words, hearing, out).map(|()| ExitCode::SUCCESS),
            RoutineCommand::Templates { exercise } => done(routine::templates::run(exercise.as_deref(), &look_up, out)),
            RoutineCommand::Check { .. } | RoutineCommand::Schema => done(run_routine(args, hearing, fancy, out)),
        }
    })
}

/// `tidecount pack …`.
///
/// # Errors
/// As [`routine`].
pub fn pack(args: &PackArgs) -> Result<ExitCode, AppError> {
    checking(|_, hearing, fancy| done(run_pack(args, hearing, fancy, &mut std::io::stdout().lock())))
}

/// Runs a check with the words, the commands and what the recogniser knows at hand; true where the output is a terminal.
fn checking(check: impl FnOnce(&Words, Hearing<'_>, bool) -> Result<ExitCode, AppError>) -> Result<ExitCode, AppError> {
    let words = Words::english()?;
    let commands = load::command_words(&words);
    let lexicon = load::model_folder(None).ok().and_then(|model| Lexicon::open(&model).ok());
    let knows = |word: &str| lexicon.as_ref().and_then(|lexicon| lexicon.knows(&spoken_form(word))).unwrap_or(true);
    let hearing = Hearing { commands: &commands, knows_word: Some(&knows), ..Hearing::default() };
    check(&words, hearing, std::io::stdout().is_terminal())
}

/// `tidecount exercises [ID]`.
///
/// # Errors
/// The output cannot be written.
pub fn exercises(args: &ExercisesArgs) -> Result<ExitCode, AppError> {
    let words = Words::english()?;
    let look_up = |key: &str| words.text(&Line { key: key.to_owned(), args: Vec::new() }).ok();
    done(run_exercises(args, &look_up, &mut std::io::stdout().lock()))
}

/// `tidecount history`.
///
/// # Errors
/// The record cannot be read.
pub fn history(args: &HistoryArgs) -> Result<ExitCode, AppError> {
    run_history(args, &mut std::io::stdout().lock()).map(|()| ExitCode::SUCCESS)
}

/// A reader that went away (`| head`) is no fault of ours.
fn done(outcome: std::io::Result<bool>) -> Result<ExitCode, AppError> {
    match outcome {
        Ok(true) => Ok(ExitCode::SUCCESS),
        Ok(false) => Ok(ExitCode::FAILURE),
        Err(error) if error.kind() == std::io::ErrorKind::BrokenPipe => Ok(ExitCode::SUCCESS),
        Err(error) => Err(AppError::Usage(format!("the output cannot be written: {error}"))),
    }
}
