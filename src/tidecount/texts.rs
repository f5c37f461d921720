//! The commands that only read and write text: routines and the catalogue.

use std::io::IsTerminal;
use std::process::ExitCode;

use super::routine;
use crate::history::{HistoryArgs, run_history};
use crate::routine::command::{ExercisesArgs, RoutineArgs, RoutineCommand, run_exercises, run_routine};
use crate::routine::pack::{PackArgs, run_pack};
use ::routine::Hearing;
use command_ear::Lexicon;
use files::error::{Failure, delivered};
use files::load;
use files::spoken::spoken_form;
use session::Line;
use speak::Words;

/// `tidecount routine …`.
///
/// # Errors
/// The output cannot be written. Without a recognition model the words of answers are not checked.
pub fn routine(args: &RoutineArgs) -> Result<ExitCode, Failure> {
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
pub fn pack(args: &PackArgs) -> Result<ExitCode, Failure> {
    checking(|_, hearing, fancy| done(run_pack(args, hearing, fancy, &mut std::io::stdout().lock())))
}

/// Runs a check with the words, the commands and what the recogniser knows at hand; true where the output is a terminal.
fn checking(check: impl FnOnce(&Words, Hearing<'_>, bool) -> Result<ExitCode, Failure>) -> Result<ExitCode, Failure> {
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
pub fn exercises(args: &ExercisesArgs) -> Result<ExitCode, Failure> {
    let words = Words::english()?;
    let look_up = |key: &str| words.text(&Line { key: key.to_owned(), args: Vec::new() }).ok();
    done(run_exercises(args, &look_up, &mut std::io::stdout().lock()))
}

/// `tidecount history`.
///
/// # Errors
/// The record cannot be read.
pub fn history(args: &HistoryArgs) -> Result<ExitCode, Failure> {
    run_history(args, &mut std::io::stdout().lock()).map(|()| ExitCode::SUCCESS)
}

/// A reader that went away (`| head`) is no fault of ours.
fn done(outcome: std::io::Result<bool>) -> Result<ExitCode, Failure> {
    let all_well = outcome.as_ref().is_ok_and(|all_well| *all_well) || outcome.is_err();
    delivered(outcome.map(drop)).map(|()| if all_well { ExitCode::SUCCESS } else { ExitCode::FAILURE })
}
