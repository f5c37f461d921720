//! `tidecount demo`: a simulated client in a simulated room goes through a routine, closed loop, through the real ears.

use std::io::IsTerminal as _;
use std::path::{Path, PathBuf};
use std::process::ExitCode;

use super::weeks;
use crate::options::{Model, Screen, Voice};
use crate::serving;
use ::pages::follow::server::{self, Wanted};
use command_ear::Lexicon;
use files::error::Failure;
use files::load::{self, Loaded};
use live::follow::SharedScreen;
use live::practice::Practice;
use live::rehearsal::{self, ClientsEar, ROOM_HZ, write_truth};
use record::Source;
use rehearse::Script;
use routine::{Hearing, check_text};
use screen::TerminalScreen;
use speak::{Language, Words};

/// The invented household.
const ROUTINE: (&str, &str) = ("demo/evening.toml", include_str!("../../../demo/evening.toml"));
const CLIENT: (&str, &str) = ("demo/client.toml", include_str!("../../../demo/client.toml"));

/// The invented household in this language: routine and client. A language without one of its own is shown with English phrases.
fn household(language: &str) -> [(&'static str, &'static str); 2] {
    match language {
        "de" => [
            ("demo/de/evening.toml", include_str!("../../../demo/de/evening.toml")),
            ("demo/de/client.toml", include_str!("../../../demo/de/client.toml")),
        ],
        "es" => [
            ("demo/es/evening.toml", include_str!("../../../demo/es/evening.toml")),
            ("demo/es/client.toml", include_str!("../../../demo/es/client.toml")),
        ],
        _ => [ROUTINE, CLIENT],
    }
}

/// Show a whole practice with a simulated client
#[derive(Debug, Clone, clap::Args)]
pub struct DemoArgs {
    /// Play both sides on the loudspeaker, in real time
    #[arg(long)]
    pub aloud: bool,
    /// Play on a loudspeaker from `tidecount devices`
    #[arg(long, default_value = "default", value_name = "default|NAME", requires = "aloud")]
    pub speaker: String,
    /// Write the recording of both sides and the journal to this folder, in place of an earlier demo
    #[arg(long, default_value = "tidecount-demo", value_name = "DIR")]
    pub out: PathBuf,
    /// Take this routine instead of the invented household's
    #[arg(long, value_name = "FILE.toml")]
    pub routine: Option<PathBuf>,
    /// Take this client instead of the invented one
    #[arg(long, value_name = "FILE.toml")]
    pub client: Option<PathBuf>,
    /// Make a record of so many simulated weeks instead, three practices a week, and its report [default: 12]
    #[arg(long, value_name = "N", num_args = 0..=1, default_missing_value = "12", value_parser = clap::value_parser!(u32).range(1..=52))]
    #[arg(conflicts_with_all = ["aloud", "routine", "client"])]
    pub weeks: Option<u32>,
    #[command(flatten)]
    pub voice: Voice,
    #[command(flatten)]
    pub model: Model,
    #[command(flatten)]
    pub screen: Screen,
}

/// Runs the command.
///
/// # Errors
/// Routine, client script, model, voice, loudspeaker or output folder cannot be used.
pub fn run(args: &DemoArgs) -> Result<ExitCode, Failure> {
    if let Some(weeks) = args.weeks {
        let now = jiff::ZonedDateTime::now();
        let made = weeks::lead(&args.out, weeks, args.model.model.as_deref(), &now)?;
        // Somebody sits before a screen: what was made is opened.
        if std::io::stdout().is_terminal() && server::has_display() {
            server::open_browser(made.report.display().to_string());
            return show_pages(&made.data);
        }
        return Ok(ExitCode::SUCCESS);
    }
    let of_routine = args.routine.as_deref().and_then(load::language_of);
    let words = Words::of(Language::of_tag(of_routine.as_deref())?)?;
    let model = load::models(args.model.model.as_deref(), words.language())?;
    let lexicon = Lexicon::of(&model)?;
    let [own_routine, own_client] = household(&words.language().tag);
    let (prescription, routine_text) = match &args.routine {
        Some(path) => load::routine(path, &words, &lexicon)?,
        None => {
            let commands = load::command_words(&words);
            (
                check_text(
                    own_routine.0,
                    own_routine.1,
                    Hearing { commands: &commands, games: &words.language().games, ..Hearing::default() },
                )?,
                own_routine.1.to_owned(),
            )
        }
    };
    let script = match &args.client {
        Some(path) => Script::open(path)?,
        None => Script::parse(own_client.0, own_client.1)?,
    };
    let (wav, journal, data) = fresh_folder(&args.out)?;

    let loudspeaker = args.aloud.then(|| audio::open("none", &args.speaker, false)).transpose()?;
    let rate_hz = loudspeaker.as_ref().map_or(ROOM_HZ, |io| io.speaker_rate_hz());
    let (mut io, rehearsal) = rehearsal::devices(script, rate_hz)?;
    io.write_wav(&wav)?;
    if let Some(loudspeaker) = loudspeaker {
        io.aloud(loudspeaker)?;
    }

    let pages = server::open(args.screen.wanted()?, &words)?;
    let loaded = Loaded { words, model, lexicon, prescription, routine_text };
    let practice = Practice {
        hears_itself: true,
        voice: args.voice.voice.clone(),
        journal: Some(journal.clone()),
        ..Practice::of(loaded, Source::Rehearsal, "household".into(), data)
    };
    let screen = SharedScreen::new(TerminalScreen::stdout());
    let mut observers = server::followers(pages.as_ref());
    observers.push(Box::new(ClientsEar(rehearsal.clone())));
    let outcome = practice.lead(Box::new(io), screen.clone(), observers)?;
    outcome.report(&screen);
    if let Some(pages) = pages {
        pages.finish();
    }
    let truth = args.out.join("client.jsonl");
    write_truth(&truth, &rehearsal)?;
    println!("Both sides as sound (left the room, right the tool): {}", wav.display());
    println!("The journal, one fact a line:                         {}", journal.display());
    println!("What the simulated client really did:                 {}", truth.display());
    Ok(outcome.exit_code())
}

/// The pages of a record, until Ctrl-C.
fn show_pages(data: &Path) -> Result<ExitCode, Failure> {
    serving::until_ended(serving::usual_place(data), Wanted { port: 0, opens_browser: true })
}

/// Makes the folder and takes away what an earlier demo left in it: these three and nothing else.
fn fresh_folder(out: &Path) -> Result<(PathBuf, PathBuf, PathBuf), Failure> {
    let (wav, journal, data) = (out.join("both-sides.wav"), out.join("journal.jsonl"), out.join("record"));
    let gone = |outcome: std::io::Result<()>| match outcome {
        Err(why) if why.kind() != std::io::ErrorKind::NotFound => Err(why),
        _ => Ok(()),
    };
    disk::private::folder(out)
        .and_then(|()| gone(std::fs::remove_file(&wav)))
        .and_then(|()| gone(std::fs::remove_file(&journal)))
        .and_then(|()| gone(std::fs::remove_dir_all(&data)))
        .map_err(|why| Failure::file(out, format!("cannot be used for the demo: {why}; name another folder with --out")))?;
    Ok((wav, journal, data))
}
