//! `tidecount language list|check`: the languages there are, and what a language pack lacks.

use std::fmt::Write as _;
use std::io::Write as _;
use std::path::PathBuf;
use std::process::ExitCode;
use std::sync::Arc;

use files::error::{Failure, delivered};
use files::load::command_words;
use routine::{Faults, Hearing, check_pack};
use speak::words::{CommandsBy, check};
use speak::{Language, Words};

/// Arguments of `tidecount language`.
#[derive(Debug, Clone, clap::Args)]
pub struct LanguageArgs {
    #[command(subcommand)]
    what: What,
}

#[derive(Debug, Clone, clap::Subcommand)]
enum What {
    /// List the languages that are built in
    List,
    /// Say what a language pack lacks, compared with English: file, line and remedy of each fault
    Check {
        /// Check the pack of this folder, or a built-in one by its tag
        #[arg(value_name = "DIR|TAG")]
        pack: PathBuf,
    },
}

/// Runs the command. A pack with faults is a failure.
///
/// # Errors
/// The folder is no language pack, or the output cannot be written.
pub fn run(args: &LanguageArgs) -> Result<ExitCode, Failure> {
    let (text, code) = match &args.what {
        What::List => (list()?, ExitCode::SUCCESS),
        What::Check { pack } => {
            let built_in = pack.to_str().filter(|_| !pack.exists()).and_then(|tag| Language::find(tag).ok());
            let language = match built_in {
                Some(language) => language,
                None => Arc::new(Language::open(pack)?),
            };
            let (text, is_whole) = checked(&language)?;
            (text, if is_whole { ExitCode::SUCCESS } else { ExitCode::FAILURE })
        }
    };
    delivered(std::io::stdout().write_all(model::visible(&text).as_bytes())).map(|()| code)
}

fn list() -> Result<String, Failure> {
    let mut text = String::new();
    for language in Language::built_in()? {
        let commands = match language.commands {
            CommandsBy::Vosk => "commands by voice",
            CommandsBy::None => "commands by keys and page; by voice with --model DIR",
        };
        let _ = writeln!(text, "{:<6} {:<10} {commands}", language.tag, language.name);
    }
    Ok(text)
}

/// What is wrong with a pack, in words, and whether nothing is.
///
/// # Errors
/// Its words cannot be read at all.
pub fn checked(language: &Arc<Language>) -> Result<(String, bool), Failure> {
    let faults = check::faults(language)?;
    let mut text = String::new();
    for fault in &faults {
        let _ = writeln!(text, "{fault}");
    }
    let of_games = faults_of_games(language)?;
    for faults in &of_games {
        let _ = writeln!(text, "{faults}");
    }
    let faults = faults.len() + of_games.iter().map(|faults| faults.list.len()).sum::<usize>();
    let _ = match faults {
        0 => writeln!(text, "{} ({}): the pack is whole.", language.tag, language.name),
        1 => writeln!(text, "{} ({}): 1 fault.", language.tag, language.name),
        n => writeln!(text, "{} ({}): {n} faults.", language.tag, language.name),
    };
    Ok((text, faults == 0))
}

/// The pack's word games against its own commands, each with all its faults. Games that it lacks are asked in English, as any message is.
fn faults_of_games(language: &Arc<Language>) -> Result<Vec<Faults>, Failure> {
    let words = Words::of(Arc::clone(language))?;
    let commands = command_words(&words);
    let hearing = Hearing { commands: &commands, language: Some(&language.tag), games: &language.games, ..Hearing::default() };
    let faults = |(name, text): &(String, String)| check_pack(&format!("games/{name}.toml"), text.as_bytes(), hearing).err();
    Ok(language.games.iter().filter_map(faults).collect())
}
