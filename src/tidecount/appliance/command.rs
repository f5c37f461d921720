//! `tidecount appliance`.

use std::io::{BufReader, IsTerminal};
use std::path::{Path, PathBuf};
use std::process::ExitCode;

use super::autostart::{SwitchedOn, switch_on};
use super::draft::Draft;
use super::sounds::OfComputer;
use super::steps::Steps;
use crate::options::{DataFolder, Model, Voice};
use crate::terminal::ask::{Ask, Plain, Terminal};
use command_ear::Lexicon;
use files::error::Failure;
use files::households::check_household;
use files::load::models;
use files::packages::household::household_of_packages;
use session::Line;
use speak::Words;

/// Set this computer up for a home, step by step: devices, household, start phrase, quiet hours, autostart
#[derive(Debug, Clone, clap::Args)]
pub struct ApplianceArgs {
    /// Household file to write [default: household.toml in the data folder]
    pub household: Option<PathBuf>,
    /// Take what stands in each step, or what is usual, and wait for no answer
    #[arg(long)]
    pub yes: bool,
    /// Write plain lines and never move the cursor, for a screen reader
    #[arg(long)]
    pub plain: bool,
    #[command(flatten)]
    pub data: DataFolder,
    #[command(flatten)]
    pub voice: Voice,
    #[command(flatten)]
    pub model: Model,
}

/// Runs the command on the terminal, or line by line where answers are piped in.
///
/// # Errors
/// The answers end too early, what stands in the household file cannot be read, or it cannot be written.
pub fn run(args: &ApplianceArgs) -> Result<ExitCode, Failure> {
    let words = Words::usual()?;
    let lexicon = Lexicon::of(&models(args.model.model.as_deref(), words.language())?)?;
    let data = args.data.folder()?;
    // The unit of the package starts `tidecount attend` without options.
    let usual = args.household.is_none() && DataFolder::default().folder().is_ok_and(|usual| usual == data);
    let path = args.household.clone().unwrap_or_else(|| data.join("household.toml"));
    let before = standing(&path, &data)?;
    let draft = Draft::of(&before).map_err(|why| Failure::file(&path, why))?;

    let judge = |text: &str| {
        let judged = check_household(&path.display().to_string(), &path, text.as_bytes(), &words, &lexicon);
        judged.err().map(|why| why.to_string())
    };
    let line = words.text(&Line { key: "page-spoken-test".to_owned(), args: Vec::new() })?;
    let sounds = OfComputer { voice: args.voice.voice.clone(), data, line };
    let at_terminal = std::io::stdin().is_terminal() && std::io::stdout().is_terminal() && !args.plain;
    let nobody: &[u8] = if args.yes { &[b'\n'; 100] } else { &[] };
    let mut plain: Plain<Box<dyn std::io::BufRead>, _> =
        Plain::new(if args.yes { Box::new(nobody) } else { Box::new(BufReader::new(std::io::stdin())) }, std::io::stdout());
    let ask: &mut dyn Ask = if at_terminal && !args.yes { &mut Terminal } else { &mut plain };
    let manager: &dyn Fn() -> SwitchedOn = &switch_on;
    let folder = path.parent().unwrap_or_else(|| Path::new(".")).to_owned();
    let mut steps = Steps { ask, sounds: &sounds, judge: &judge, folder, switch_on: usual.then_some(manager) };

    let declined = |why: crate::terminal::ask::AskError| Failure::Declined(why.to_string());
    let draft = steps.household(draft).map_err(declined)?;
    if draft.persons().is_empty() {
        return Err(Failure::Declined(
            "nobody practises here yet, so nothing was written: run this again with a name, or take a package with `tidecount hand take`"
                .into(),
        ));
    }
    if let Some(why) = judge(&draft.text()) {
        return Err(Failure::Contents(why));
    }
    write(&path, &draft.text())?;
    steps.ask.say(&format!("\nWritten to {}.", path.display())).map_err(declined)?;
    steps.autostart().map_err(declined)?;
    steps.ask.say("\nTo look whether everything is ready: tidecount doctor").map_err(declined)?;
    Ok(ExitCode::SUCCESS)
}

/// The household file as it stands; whoever wrote none is led by the packages that were taken here.
fn standing(path: &Path, data: &Path) -> Result<String, Failure> {
    match std::fs::read_to_string(path) {
        Ok(text) => Ok(text),
        Err(why) if why.kind() == std::io::ErrorKind::NotFound => Ok(household_of_packages(data).unwrap_or_default()),
        Err(why) => Err(Failure::file(path, why)),
    }
}

/// The old file is kept beside it.
fn write(path: &Path, text: &str) -> Result<(), Failure> {
    if let Some(folder) = path.parent().filter(|folder| !folder.as_os_str().is_empty()) {
        record::create_folder(folder)?;
    }
    if let Ok(before) = std::fs::read(path)
        && before != text.as_bytes()
    {
        record::replace_file(&path.with_extension("toml.before"), &before)?;
    }
    Ok(record::replace_file(path, text.as_bytes())?)
}
