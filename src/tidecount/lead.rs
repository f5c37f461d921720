//! `tidecount lead`: counts, paces and keeps time for a class while its clinician demonstrates. Nobody is measured and no
//! record is kept.

use std::path::PathBuf;
use std::process::ExitCode;

use crate::options::{ALOUD, DataFolder, Fast, Screen, Sound};
use files::error::Failure;
use files::load;
use live::follow::SharedScreen;
use live::practice::Practice;
use pages::follow::server;
use record::Source;
use screen::TerminalScreen;
use session::Line;
use speak::Words;

/// Lead a class: count, pace and keep time while the clinician demonstrates
///
/// Nobody is measured and nothing is recorded. The clinician moves the class on by voice ("here we go", "next exercise",
/// "once more", "everyone rest", "slow down", "a little louder", "stop", "pause") or by keys, which a page-turner has, too:
/// space or page down goes on, page up repeats, full stop pauses, escape stops, s skips an exercise, r rests, + and - change
/// the loudness, < and > the pace, q ends.
#[derive(Debug, Clone, clap::Args)]
#[command(mut_arg("mic", |mic| mic.value_name("default|NAME|FILE.wav|none")
    .help("Listen to a microphone from `tidecount devices`, to a recording, or to `none` and lead by keys alone")))]
#[command(mut_arg("speaker", |speaker| speaker.help(ALOUD)))]
#[command(mut_arg("data", |data| data.help("Keep spoken lines in this folder [default: $TIDECOUNT_DATA, else the user data folder]")))]
pub struct LeadArgs {
    /// Routine to lead, a TOML file
    pub routine: PathBuf,
    #[command(flatten)]
    pub sound: Sound,
    #[command(flatten)]
    pub fast: Fast,
    #[command(flatten)]
    pub data: DataFolder,
    #[command(flatten)]
    pub screen: Screen,
}

/// Runs the command.
///
/// # Errors
/// Routine, devices, model or voice cannot be used.
pub fn run(args: &LeadArgs) -> Result<ExitCode, Failure> {
    let sound = args.sound.meant_aloud();
    let fast = args.fast.with(&sound)?;
    let loaded = load::all(&args.routine, sound.model.as_deref())?;
    print_cautions(&loaded.words, &loaded.prescription.routine);
    let io = audio::open(&sound.mic, &sound.speaker, fast)?;
    let source = if sound.recording { Source::Replay } else { Source::Live };
    let practice = Practice {
        hears_itself: sound.hears_itself,
        voice: sound.voice,
        ..Practice::of(loaded, source, "class".into(), args.data.folder()?)
    };
    let pages = server::open(args.screen.wanted()?)?;
    let screen = SharedScreen::new(TerminalScreen::stdout());
    let fault = practice.lead_class(io, screen.clone(), server::followers(pages.as_ref())?)?;
    screen.finish();
    if let Some(pages) = pages {
        pages.finish();
    }
    Ok(match fault {
        Some(fault) => {
            eprintln!("{fault}");
            ExitCode::FAILURE
        }
        None => ExitCode::SUCCESS,
    })
}

/// The clinician reads the cautions; the class hears one sentence.
fn print_cautions(words: &Words, routine: &routine::Routine) {
    let text = |key: String| words.text(&Line { key, args: Vec::new() }).unwrap_or_default();
    println!("Before you begin: should anyone in the class leave something out?\n");
    for step in &routine.steps {
        let Some(entry) = routine::find(&step.exercise.id) else { continue };
        if entry.cautions.is_empty() && entry.not_for.is_empty() {
            continue;
        }
        println!("{}", text(format!("ex-{}-name", entry.id)));
        for caution in &entry.cautions {
            println!("  - {}", text(format!("caution-{caution}")));
        }
        for group in &entry.not_for {
            println!("  not for: {}", text(format!("notfor-{group}")));
        }
    }
    println!();
}
