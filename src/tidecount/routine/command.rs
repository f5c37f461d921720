//! `tidecount routine check FILE…`, `tidecount routine schema` and `tidecount exercises [ID]`.

use std::io::{self, Write};
use std::path::PathBuf;

use crate::routine::new::NewArgs;
use crate::routine::show::ShowArgs;

use ::routine::{CatalogueEntry, Hearing, UsualDose, catalogue, find, limit_of, schema};
use files::routine_files::{load_routine, write_faults};

/// Arguments of `tidecount routine`.
#[derive(Debug, clap::Args)]
pub struct RoutineArgs {
    #[command(subcommand)]
    pub command: RoutineCommand,
}

/// What can be done with routines.
#[derive(Debug, clap::Subcommand)]
pub enum RoutineCommand {
    /// Check routine files and name every fault with its line and remedy
    Check {
        /// Routine files, TOML
        #[arg(required = true)]
        files: Vec<PathBuf>,
    },
    /// Print the JSON Schema of routine files
    Schema,
    /// Write a programme by answering questions
    New(NewArgs),
    /// Show a routine as a handout in large type, or write it as PDF
    Show(ShowArgs),
    /// Show published doses beside each other, with their sources
    Templates {
        /// Only this exercise
        exercise: Option<String>,
    },
}

/// Arguments of `tidecount exercises`.
#[derive(Debug, clap::Args)]
pub struct ExercisesArgs {
    /// Show this exercise whole: purpose, instruction, doses with their sources, cautions
    pub id: Option<String>,
}

/// Looks up a message of the catalogue of words by its key.
pub type Lookup<'a> = &'a dyn Fn(&str) -> Option<String>;

/// Runs `tidecount routine check` and `schema`; the others need more than an output and are run by [`super::texts`]. `fancy` shows faults with the lines they are about, for a terminal.
/// True: all is well; false: faults were found and written to `out`.
///
/// # Errors
/// `out` cannot be written.
pub fn run_routine(args: &RoutineArgs, hearing: Hearing<'_>, fancy: bool, out: &mut dyn Write) -> io::Result<bool> {
    match &args.command {
        RoutineCommand::Schema => {
            writeln!(out, "{:#}", schema())?;
            Ok(true)
        }
        RoutineCommand::New(_) | RoutineCommand::Show(_) | RoutineCommand::Templates { .. } => Ok(true),
        RoutineCommand::Check { files } => {
            let mut all_well = true;
            for file in files {
                match load_routine(file, hearing) {
                    Ok(checked) => {
                        let steps = checked.routine.steps.len();
                        let minutes = (checked.routine.planned_duration_s() / 60.0).ceil();
                        writeln!(out, "{}: well; {steps} steps, about {minutes} minutes", file.display())?;
                    }
                    Err(faults) => {
                        all_well = false;
                        write_faults(&faults, fancy, out)?;
                    }
                }
            }
            Ok(all_well)
        }
    }
}

/// Runs `tidecount exercises [ID]`. False: there is no such exercise, which was written to `out`.
///
/// # Errors
/// `out` cannot be written.
pub fn run_exercises(args: &ExercisesArgs, words: Lookup<'_>, out: &mut dyn Write) -> io::Result<bool> {
    let Some(id) = &args.id else {
        for entry in catalogue() {
            let agreement = if entry.needs_agreement { "  (only with a clinician's agreement)" } else { "" };
            writeln!(out, "{:<26}{}{agreement}", entry.id, say(words, &format!("ex-{}-name", entry.id)))?;
        }
        return Ok(true);
    };
    let Some(entry) = find(id) else {
        writeln!(out, "There is no exercise \"{}\". `tidecount exercises` lists them all.", id.escape_debug())?;
        return Ok(false);
    };
    write_entry(entry, words, out)?;
    Ok(true)
}

fn write_entry(entry: &CatalogueEntry, words: Lookup<'_>, out: &mut dyn Write) -> io::Result<()> {
    let message = |part: &str| say(words, &format!("ex-{}-{part}", entry.id));
    writeln!(out, "{}  ({})\n", message("name"), entry.id)?;
    writeln!(out, "Purpose      {}", message("purpose"))?;
    writeln!(out, "Instruction  {}", message("instruction"))?;
    writeln!(out, "Timing       {}", timing_name(entry))?;
    if entry.needs_agreement {
        writeln!(out, "Agreement    only where the client's own clinician has agreed")?;
    }
    writeln!(out, "\nUsual doses")?;
    for dose in &entry.usual_doses {
        write_dose(dose, out)?;
    }
    writeln!(out, "\nFields of a step, with their defaults and limits")?;
    let defaults = entry.defaults();
    for field in entry.dose_fields() {
        let default = defaults.get(field).map_or("-", String::as_str);
        write!(out, "  {field} = {default}")?;
        let (limited, each) = if field == "phases" { ("phase_s", "each ") } else { (field, "") };
        match limit_of(Some(entry), limited) {
            Some(limit) => writeln!(out, "    {each}{} to {}: {}", limit.min, limit.max, limit.why)?,
            None => writeln!(out)?,
        }
    }
    if !entry.cautions.is_empty() {
        writeln!(out, "\nCautions")?;
        for key in &entry.cautions {
            writeln!(out, "  - {}", say(words, &format!("caution-{key}")))?;
        }
    }
    if !entry.not_for.is_empty() {
        writeln!(out, "\nNot for, unless their own clinician says otherwise")?;
        for key in &entry.not_for {
            writeln!(out, "  - {}", say(words, &format!("notfor-{key}")))?;
        }
    }
    Ok(())
}

fn write_dose(dose: &UsualDose, out: &mut dyn Write) -> io::Result<()> {
    writeln!(out, "  - {}", dose.text)?;
    let source = if dose.source == "common practice" { String::new() } else { format!("; {}", dose.source) };
    writeln!(out, "    {}{source} [{}]", dose.who, dose.status)?;
    match &dose.note {
        Some(note) => writeln!(out, "    {note}"),
        None => Ok(()),
    }
}

/// The timing as it is written in the catalogue, "read-aloud".
fn timing_name(entry: &CatalogueEntry) -> String {
    serde_json::to_value(entry.timing).ok().and_then(|name| name.as_str().map(str::to_owned)).unwrap_or_default()
}

/// A message, or its key where it is missing.
fn say(words: Lookup<'_>, key: &str) -> String {
    words(key).unwrap_or_else(|| key.to_owned())
}
