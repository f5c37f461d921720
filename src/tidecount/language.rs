//! `tidecount language list|check`: the languages there are, and what a language pack lacks.

use std::fmt::Write as _;
use std::io::Write as _;
use std::path::PathBuf;
use std::process::ExitCode;
use std::sync::Arc;

use command_ear::{SECOND_EAR_FOLDER, SecondEarFiles};
use files::error::{Failure, delivered};
use files::load::command_words;
use routine::{Faults, Hearing, check_pack};
use speak::words::{CommandsBy, PACK_FILE, check};
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
            CommandsBy::SecondEar => "commands by voice; word games too with --model DIR",
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
    if let Some(unheard) = unheard(language)? {
        let _ = writeln!(text, "{unheard}");
    }
    let faults = faults.len() + of_games.iter().map(|faults| faults.list.len()).sum::<usize>();
    let _ = match faults {
        0 => writeln!(text, "{} ({}): the pack is whole.", language.tag, language.name),
        1 => writeln!(text, "{} ({}): 1 fault.", language.tag, language.name),
        n => writeln!(text, "{} ({}): {n} faults.", language.tag, language.name),
    };
    Ok((text, faults == 0))
}

/// Which wordings of its commands a language's second ear cannot hear; none where it hears all of them, or where it needs no such ear. That is no
/// fault: keys and pages give every command.
fn unheard(language: &Arc<Language>) -> Result<Option<String>, Failure> {
    if language.commands != CommandsBy::SecondEar {
        return Ok(None);
    }
    let second_ear = match &language.folder {
        Some(pack) => SecondEarFiles::of_pack(pack),
        None => SecondEarFiles::of_language(&language.tag)?,
    };
    if second_ear == SecondEarFiles::None {
        let file = format!("{SECOND_EAR_FOLDER}/network.onnx");
        return Ok(Some(format!("{PACK_FILE}: commands are to be heard by the second ear, but there is no {file}: keys and pages lead.")));
    }
    let learnt = second_ear.phrases()?;
    let words = Words::of(Arc::clone(language))?;
    let keys = words.keys().filter(|key| ["cmd-", "class-cmd-", "answer-"].iter().any(|kind| key.starts_with(kind)));
    let mut missing: Vec<String> = keys.flat_map(|key| words.wordings_of(key)).filter(|wording| !learnt.contains(wording)).collect();
    missing.sort();
    missing.dedup();
    Ok((!missing.is_empty()).then(|| format!("The second ear has not learnt: {}. They are not heard.", missing.join(", "))))
}

/// The pack's word games against its own commands, each with all its faults. Games that it lacks are asked in English, as any message is.
fn faults_of_games(language: &Arc<Language>) -> Result<Vec<Faults>, Failure> {
    let words = Words::of(Arc::clone(language))?;
    let commands = command_words(&words);
    let hearing = Hearing { commands: &commands, language: Some(&language.tag), games: &language.games, ..Hearing::default() };
    let faults = |(name, text): &(String, String)| check_pack(&format!("games/{name}.toml"), text.as_bytes(), hearing).err();
    Ok(language.games.iter().filter_map(faults).collect())
}
