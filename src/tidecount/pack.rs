//! `tidecount pack list`, `pack show NAME` and `pack check FILE…`: word games as data.

use std::io::{self, IsTerminal, Write};
use std::path::PathBuf;
use std::process::ExitCode;

use crate::terminal::told;
use files::checker::Checker;
use files::error::Failure;
use files::routine_files::{read_limited, write_faults};
use routine::{Faults, Hearing, Pack, check_pack, packs_with};

/// Arguments of `tidecount pack`.
#[derive(Debug, clap::Args)]
pub struct PackArgs {
    #[command(subcommand)]
    pub command: PackCommand,
}

/// What can be done with word packs.
#[derive(Debug, clap::Subcommand)]
pub enum PackCommand {
    /// List the packs of the language
    List,
    /// Show every item of a pack, built in or a file
    Show {
        /// A built-in pack's name, or a file
        pack: String,
    },
    /// Check pack files and name every fault with its line and remedy
    Check {
        /// Pack files, TOML
        #[arg(required = true)]
        files: Vec<PathBuf>,
    },
}

/// Runs the command. Without a recognition model the words of answers are not checked.
///
/// # Errors
/// The output cannot be written.
pub fn run(args: &PackArgs) -> Result<ExitCode, Failure> {
    let fancy = std::io::stdout().is_terminal();
    Checker::new()?.with_hearing(|hearing| told(go(args, hearing, fancy, &mut std::io::stdout().lock())))
}

/// True: all is well; false: faults were found and written to `out`.
///
/// # Errors
/// `out` cannot be written.
fn go(args: &PackArgs, hearing: Hearing<'_>, fancy: bool, out: &mut dyn Write) -> io::Result<bool> {
    match &args.command {
        PackCommand::List => {
            for (name, text) in packs_with(hearing.games) {
                match check_pack(&name, text.as_bytes(), hearing) {
                    Ok(pack) => writeln!(out, "{name:<18} {:>3} {}", items(&pack), pack.title)?,
                    Err(faults) => write_faults(&faults, fancy, out)?,
                }
            }
            Ok(true)
        }
        PackCommand::Show { pack } => match load(pack, hearing) {
            Ok(pack) => show(&pack, out).map(|()| true),
            Err(faults) => write_faults(&faults, fancy, out).map(|()| false),
        },
        PackCommand::Check { files } => {
            let mut all_well = true;
            for file in files {
                match load(&file.display().to_string(), hearing) {
                    Ok(pack) => writeln!(out, "{}: no faults; {} items", file.display(), items(&pack))?,
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

fn load(name: &str, hearing: Hearing<'_>) -> Result<Pack, Faults> {
    let built_in = packs_with(hearing.games).into_iter().find(|(known, _)| known == name);
    let bytes = match built_in {
        Some((_, text)) => text.into_bytes(),
        None => read_limited(name.as_ref()).map_err(|error| {
            Faults::of_file(name, format!("cannot be read: {error}"), "Name a file that you may read, or one of `tidecount pack list`.")
        })?,
    };
    check_pack(name, &bytes, hearing)
}

fn items(pack: &Pack) -> usize {
    pack.questions.len() + pack.categories.len()
}

fn show(pack: &Pack, out: &mut dyn Write) -> io::Result<()> {
    writeln!(out, "{} ({}, {} items)", pack.title, pack.kind.name(), items(pack))?;
    for item in &pack.questions {
        writeln!(out, "\n{}\n  answer: {}", item.clue, item.answers.join(", "))?;
        if !item.near.is_empty() {
            writeln!(out, "  near:   {}", item.near.join(", "))?;
        }
        for (name, text) in [("hint", &item.hint), ("fact", &item.fact)] {
            if let Some(text) = text {
                writeln!(out, "  {name}:   {text}")?;
            }
        }
    }
    for item in &pack.categories {
        writeln!(out, "\n{}\n  {} {}: {}", item.clue, item.members.len(), item.category, item.members.join(", "))?;
    }
    Ok(())
}
