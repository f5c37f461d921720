//! `tidecount enrol`: learns how a client says the commands.

use std::io::Write;
use std::process::ExitCode;

use crate::options::{DataFolder, Sound};
use audio::file::names_file;
use files::error::Failure;
use files::load;
use live::enrol::enrolment::Enrolment;
use live::enrol::event::Learnt;
use live::follow::SharedScreen;
use record::{Source, Store};
use screen::TerminalScreen;
use session::{Arg, Line};
use speak::Words;

/// Learn how you say the commands, led by voice; show or forget what is kept
#[derive(Debug, Clone, clap::Args)]
pub struct EnrolArgs {
    /// Learn the voice of this client, named as in the routine or `practise --client`
    #[arg(long, value_name = "NAME", default_value = "client")]
    pub client: String,
    #[command(flatten)]
    pub sound: Sound,
    #[command(flatten)]
    pub data: DataFolder,
    /// Show what is kept of the client's voice, and do nothing else
    #[arg(long, conflicts_with = "forget")]
    pub show: bool,
    /// Delete what is kept of the client's voice, and do nothing else
    #[arg(long)]
    pub forget: bool,
}

/// Runs the command. A recording as microphone is heard as fast as the machine allows.
///
/// # Errors
/// Devices, model, voice or record cannot be used.
pub fn run(args: &EnrolArgs) -> Result<ExitCode, Failure> {
    let words = Words::usual()?;
    let data = args.data.folder()?;
    if args.show || args.forget {
        return show_or_forget(args, &words, &data);
    }
    let sound = args.sound.meant();
    let silent = names_file(&sound.speaker) || sound.speaker == "none";
    let io = audio::open(&sound.mic, &sound.speaker, sound.recording && silent)?;
    let enrolment = Enrolment {
        words: words.clone(),
        model: load::models(sound.model.as_deref(), words.language())?,
        hears_itself: sound.hears_itself,
        voice: sound.voice,
        source: if sound.recording { Source::Replay } else { Source::Live },
        client: args.client.clone(),
        data,
        recogniser: None,
    };
    let screen = SharedScreen::new(TerminalScreen::stdout());
    let (learnt, fault) = enrolment.lead(io, screen.clone(), Vec::new())?;
    screen.finish();
    print!("\n{}", model::visible(&summary(&words, &args.client, &learnt)?));
    if let Some(fault) = fault {
        eprintln!("{fault}");
        return Ok(ExitCode::FAILURE);
    }
    Ok(ExitCode::SUCCESS)
}

fn show_or_forget(args: &EnrolArgs, words: &Words, data: &std::path::Path) -> Result<ExitCode, Failure> {
    let client = ("client", Arg::Text(args.client.clone()));
    let text = |key: &str, args: Vec<(&'static str, Arg)>| words.text(&Line { key: key.to_owned(), args });
    let store = Store::open_existing(data)?;
    let mut out = std::io::stdout().lock();
    let kept = store.as_ref().map(|store| store.own_words(&args.client)).transpose()?.unwrap_or_default();
    let shown = match store {
        Some(mut store) if args.forget => {
            let forgotten = store.forget_own_voice(&args.client)?;
            text("enrol-forgotten", vec![("words", Arg::Number(forgotten as f64)), client])?
        }
        _ if kept.is_empty() => text("enrol-none-kept", vec![client])?,
        _ => {
            let rows = kept.iter().map(|word| {
                let day = word.said_at.get(..10).unwrap_or_default();
                let bytes: usize = word.takes.iter().map(Vec::len).sum();
                format!("\n  {:<12} {} takes, {day}, {bytes} bytes of figures", word.wording, word.takes.len())
            });
            text("enrol-summary-head", vec![client])? + &rows.collect::<String>()
        }
    };
    // A reader that went away (`| head`) is no fault of ours.
    let _ = writeln!(out, "{shown}");
    Ok(ExitCode::SUCCESS)
}

/// What is left on the terminal.
fn summary(words: &Words, client: &str, learnt: &[Learnt]) -> Result<String, Failure> {
    let text = |key: &str, args: Vec<(&'static str, Arg)>| words.text(&Line { key: key.to_owned(), args });
    let client = ("client", Arg::Text(client.to_owned()));
    if learnt.is_empty() {
        return Ok(text("enrol-none-kept", vec![client])? + "\n");
    }
    let mut shown = text("enrol-summary-head", vec![client])? + "\n";
    for word in learnt {
        let how = text(if word.doubtful { "enrol-summary-doubtful" } else { "enrol-summary-surer" }, Vec::new())?;
        shown += &format!("  {:<12} {}/{}  {how}\n", word.wording, word.takes, live::enrol::dialogue::TAKES);
    }
    Ok(shown)
}
